/// Checks of our own reasoning, on in every build: a failed check is a bug in Wend, never a fault of the plan.
#pragma once

namespace wend::base {

/// Prints the place and the broken expectation on standard error and aborts.
[[noreturn]] void failCheck(const char* condition, const char* file, int line);

}  // namespace wend::base

#define WEND_CHECK(condition) \
  ((condition) ? static_cast<void>(0) : ::wend::base::failCheck(#condition, __FILE__, __LINE__))
