/// libFuzzer target for the plan reader: build with -DWEND_FUZZ=ON and clang, run as
///   fuzz_plan_reader corpus samples samples/issues -dict=tests/fuzz/plan.dict -timeout=2 -rss_limit_mb=512
#include "tests/fuzz/plan_reader_fuzz.h"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  wend::file::readsAndWritesBack({reinterpret_cast<const char*>(data), size});
  return 0;
}
