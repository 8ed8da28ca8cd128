#include "core/base/check.h"

#include <cstdio>
#include <cstdlib>

namespace wend::base {

void failCheck(const char* condition, const char* file, int line) {
  std::fprintf(stderr, "wend: internal failure: %s does not hold (%s:%d)\n", condition, file, line);
  std::abort();
}

}  // namespace wend::base
