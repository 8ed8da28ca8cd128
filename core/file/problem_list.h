/// Problems as they are found: the first hundred one by one, the rest as a number.
#pragma once

#include "core/base/problem.h"
#include "core/file/limits.h"

namespace wend::file {

class ProblemList {
 public:
  /// True while the next problem will still be told.
  bool open() const { return told_.size() < kMostProblems; }
  void add(base::Problem problem);
  /// Adds what `make` returns, without making it where it is only counted: a place can cost a walk over a long list.
  template <class Make>
  void addMade(Make make) {
    add(open() ? make() : base::Problem{});
  }
  std::size_t count() const { return count_; }
  /// What was told, and one more that counts the rest if there is a rest.
  base::Problems told() const;

 private:
  base::Problems told_;
  std::size_t count_ = 0;
};

}  // namespace wend::file
