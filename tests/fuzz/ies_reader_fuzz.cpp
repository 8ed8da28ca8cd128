/// libFuzzer target for the photometric reader: build with -DWEND_FUZZ=ON and clang, run as
///   fuzz_ies_reader corpus -dict=tests/fuzz/ies.dict -timeout=2 -rss_limit_mb=512
#include "tests/fuzz/ies_reader_fuzz.h"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  wend::exchange::readsAsLightOrRefuses({reinterpret_cast<const char*>(data), size});
  return 0;
}
