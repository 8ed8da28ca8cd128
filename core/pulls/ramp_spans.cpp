#include "core/pulls/ramp_spans.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"

namespace wend::pulls {
namespace {

constexpr double kSame = 1e-9;

std::vector<double> triedIn(geometry::Span span, double step) {
  std::vector<double> times;
  for (double t = span.from; t < span.until - kSame; t += step) times.push_back(t);
  if (span.from <= span.until) times.push_back(span.until);
  return times;
}

/// What is allowed frame by frame, and the least of it between two times.
class Allowed {
 public:
  Allowed(const std::vector<CoverSpan>& covers, const RampQuestion& question) : frame_(question.frame) {
    first_ = std::ceil(question.starts.from / frame_);
    for (double k = first_; k * frame_ <= question.ends.until + kSame; ++k)
      allowed_.push_back(rateAllowed(covers, question.axis, k * frame_));
  }

  /// The frames at the very ends belong half to what is beside.
  double leastIn(geometry::Span span) const {
    double least = std::numeric_limits<double>::infinity();
    const double last = std::floor((span.until - frame_ / 2) / frame_);
    for (double k = std::ceil((span.from + frame_ / 2) / frame_); k <= last; ++k)
      if (const double i = k - first_; i >= 0 && i < double(allowed_.size()))
        least = std::min(least, allowed_[static_cast<std::size_t>(i)]);
    return least;
  }

 private:
  double frame_ = 0, first_ = 0;
  std::vector<double> allowed_;
};

}  // namespace

std::vector<RampSpan> rampSpans(const std::vector<CoverSpan>& covers, const RampQuestion& question) {
  WEND_CHECK(question.shortest > 0 && question.shortest <= question.longest && question.step > 0 && question.frame > 0);
  const Allowed allowed(covers, question);
  const auto ends = triedIn(question.ends, question.step);
  std::vector<RampSpan> found;
  for (const double from : triedIn(question.starts, question.step))
    for (const double until : ends)
      if (until - from >= question.shortest - kSame && until - from <= question.longest + kSame)
        found.push_back({{from, until}, allowed.leastIn({from, until})});
  return found;
}

}  // namespace wend::pulls
