/// Problems as they are found: the first hundred one by one, the rest as a number.
#pragma once

#include "core/base/problem.h"
#include "core/file/limits.h"

namespace wend::file {

class ProblemList {
 public:
  /// True while the next problem will still be told; spares the making of ones that will not.
  bool open() const { return told_.size() < kMostProblems; }
  void add(base::Problem problem);
  std::size_t count() const { return count_; }
  /// What was told, and one more that counts the rest if there is a rest.
  base::Problems told() const;

 private:
  base::Problems told_;
  std::size_t count_ = 0;
};

}  // namespace wend::file
