/// A value, or the problems that stand in its way. Carries input we cannot honour across module headers, where no
/// exception passes.
#pragma once

#include <utility>
#include <variant>

#include "core/base/check.h"
#include "core/base/problem.h"

namespace wend::base {

template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::in_place_index<0>, std::move(value)) {}
  Result(Problem problem) : state_(std::in_place_index<1>, Problems{std::move(problem)}) {}
  /// Requires at least one problem.
  Result(Problems problems) : state_(std::in_place_index<1>, std::move(problems)) {
    WEND_CHECK(!std::get<1>(state_).empty());
  }

  bool ok() const { return state_.index() == 0; }
  explicit operator bool() const { return ok(); }

  /// Require ok().
  const T& value() const& { return check(), std::get<0>(state_); }
  T& value() & { return check(), std::get<0>(state_); }
  T&& value() && { return check(), std::get<0>(std::move(state_)); }
  const T& operator*() const& { return value(); }
  const T* operator->() const { return &value(); }

  /// Requires !ok().
  const Problems& problems() const {
    WEND_CHECK(!ok());
    return std::get<1>(state_);
  }

 private:
  void check() const { WEND_CHECK(ok()); }
  std::variant<T, Problems> state_;
};

}  // namespace wend::base
