/// libFuzzer target for the chart reader: build with -DWEND_FUZZ=ON and clang, run as
///   fuzz_chart_file corpus resources/charts -dict=tests/fuzz/plan.dict -timeout=2 -rss_limit_mb=512
#include "tests/fuzz/chart_file_fuzz.h"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  wend::file::chartReadsAndWritesBack({reinterpret_cast<const char*>(data), size});
  return 0;
}
