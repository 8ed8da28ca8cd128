#include "core/file/problem_list.h"

#include <utility>

namespace wend::file {

void ProblemList::add(base::Problem problem) {
  ++count_;
  if (open()) told_.push_back(std::move(problem));
}

base::Problems ProblemList::told() const {
  base::Problems all = told_;
  if (count_ > told_.size())
    all.push_back({"more-problems", "the whole file", "and " + std::to_string(count_ - told_.size()) + " more", "",
                   "mend the ones above first"});
  return all;
}

}  // namespace wend::file
