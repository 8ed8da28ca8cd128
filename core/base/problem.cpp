#include "core/base/problem.h"

namespace wend::base {

std::string toText(const Problem& problem) {
  std::string text = problem.where.empty() ? std::string() : problem.where + ": ";
  if (!problem.found.empty()) text += "found " + problem.found;
  if (!problem.expected.empty()) text += (problem.found.empty() ? "expected " : ", expected ") + problem.expected;
  if (!problem.remedy.empty()) text += "; " + problem.remedy;
  return text + " (" + problem.code + ")";
}

}  // namespace wend::base
