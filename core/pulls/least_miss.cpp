#include "core/pulls/least_miss.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

#include "core/base/check.h"
#include "core/pulls/choice.h"

namespace wend::pulls {
namespace {

constexpr double kLeastSeconds = 1e-6;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// A place where the slope of a convex function changes by so much.
struct Bend {
  double at = 0, change = 0;
};
struct Lower {
  bool operator()(const Bend& a, const Bend& b) const { return a.at < b.at; }
};
struct Higher {
  bool operator()(const Bend& a, const Bend& b) const { return a.at > b.at; }
};

/// The least integral so far, as a function of the value now: bends to the left of its least values and to the right.
class Worth {
 public:
  Choice best() const {
    const Choice between{falling_.empty() ? -kInfinity : falling_.top().at - spread_,
                         rising_.empty() ? kInfinity : rising_.top().at + spread_};
    // Where they meet, rounding may part them the wrong way round.
    return between.empty() ? Choice{between.middle(), between.middle()} : between;
  }
  void wait(double reach) { spread_ += reach; }
  /// weight * max(value - hi, 0)
  void addCeiling(double hi, double weight) {
    falling_.push({hi + spread_, weight});
    for (const Bend& bend : taken(falling_, weight)) rising_.push({bend.at - 2 * spread_, bend.change});
  }
  /// weight * max(lo - value, 0)
  void addFloor(double lo, double weight) {
    rising_.push({lo - spread_, weight});
    for (const Bend& bend : taken(rising_, weight)) falling_.push({bend.at + 2 * spread_, bend.change});
  }

 private:
  /// Bends of that much change in all, from the innermost on.
  template <class Side>
  static std::vector<Bend> taken(Side& side, double weight) {
    std::vector<Bend> bends;
    while (weight > 0 && !side.empty()) {
      Bend bend = side.top();
      side.pop();
      if (bend.change > weight) {
        side.push({bend.at, bend.change - weight});
        bend.change = weight;
      }
      weight -= bend.change;
      bends.push_back(bend);
    }
    return bends;
  }

  std::priority_queue<Bend, std::vector<Bend>, Lower> falling_;  ///< kept further right by spread_
  std::priority_queue<Bend, std::vector<Bend>, Higher> rising_;  ///< kept further left
  double spread_ = 0;
};

}  // namespace

double secondsAt(const Tube& tube, std::size_t i) {
  const double before = i > 0 ? tube[i].t - tube[i - 1].t : 0;
  const double after = i + 1 < tube.size() ? tube[i + 1].t - tube[i].t : 0;
  return std::max((before + after) / 2, kLeastSeconds);
}

double missAt(const TubeSample& sample, double value) {
  if (sample.open) return 0;
  const double most = std::max(sample.lo - value, value - sample.hi);
  return std::max(most, 0.0);
}

double missOf(const Tube& tube, const std::vector<double>& values) {
  WEND_CHECK(values.size() == tube.size());
  double sum = 0;
  for (std::size_t i = 0; i < tube.size(); ++i) sum += missAt(tube[i], values[i]) * secondsAt(tube, i);
  return sum;
}

std::vector<double> leastMiss(const Tube& tube, std::size_t from, std::size_t until, double rate) {
  WEND_CHECK(from <= until && until < tube.size() && rate > 0);
  Worth worth;
  std::vector<Choice> best;
  for (std::size_t i = from; i <= until; ++i) {
    if (i > from) worth.wait(rate * (tube[i].t - tube[i - 1].t));
    if (!tube[i].open) {
      const double middle = (tube[i].lo + tube[i].hi) / 2, weight = secondsAt(tube, i);
      worth.addCeiling(std::max(tube[i].hi, middle), weight);
      worth.addFloor(std::min(tube[i].lo, middle), weight);
    }
    best.push_back(worth.best());
  }
  std::vector<double> values(best.size(), kNowhere);
  if (!std::isfinite(best.back().width())) return values;
  values.back() = best.back().middle();
  for (std::size_t k = best.size() - 1; k-- > 0;) {
    const double step = rate * (tube[from + k + 1].t - tube[from + k].t), next = values[k + 1];
    values[k] = std::clamp(std::clamp(next, best[k].lo, best[k].hi), next - step, next + step);
  }
  return values;
}

}  // namespace wend::pulls
