#include "core/pulls/stands.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/geometry/point.h"
#include "core/pulls/choice.h"

namespace wend::pulls {
namespace {

constexpr double kGive = kTubeRounding / 2;

/// What `eased` needs to know of the way.
class Easing {
 public:
  Easing(const Passable& way, const MoveRules& rules, const Tube* asked)
      : tube_(way.wanted), rules_(rules), asked_(asked) {}

  void retime(Stand& a, bool first, Stand& b, bool last) const {
    if ((a.from == a.until && !first) || (b.from == b.until && !last)) return;
    const std::size_t earliest = first ? a.from : earliestLeave(a), latest = last ? b.until : latestArrival(b);
    std::size_t aUntil = a.until, bFrom = b.from;
    while (aUntil < latest && serves(aUntil + 1, a.value)) ++aUntil;
    while (bFrom > earliest && serves(bFrom - 1, b.value)) --bFrom;
    if (bFrom <= aUntil + 1)
      change(a, b, std::max(earliest, bFrom - std::min<std::size_t>(bFrom, 1)), std::min(latest, aUntil + 1));
    else
      drawOut(a, b, earliest, latest);
  }

  /// Towards the middle of what is asked over the whole rest, as far as that serves and the ramps on both sides stay
  /// possible.
  void recentre(const Stand* before, Stand& stand, const Stand* after) const {
    Choice serving{tube_[stand.from].lo, tube_[stand.from].hi};
    for (std::size_t i = stand.from + 1; i <= stand.until; ++i) serving = serving.cut({tube_[i].lo, tube_[i].hi});
    if (serving.empty() || !std::isfinite(serving.width())) return;
    const double now = stand.value, goal = middleAsked(stand, serving);
    double possible = 0, tried = 1;
    for (int k = 0; k < 24; ++k) {
      stand.value = geometry::lerp(now, goal, tried);
      const bool fits = (!before || clear(*before, stand)) && (!after || clear(stand, *after));
      if (fits) possible = tried;
      if (fits && tried == 1) return;
      tried = fits ? tried + std::exp2(-k - 1) : tried - std::exp2(-k - 1);
    }
    stand.value = geometry::lerp(now, goal, possible);
  }

 private:
  /// Of what serves where nothing else is asked for the whole of the rest.
  double middleAsked(const Stand& stand, const Choice& serving) const {
    if (!asked_ || !(tube_[stand.from].t < tube_[stand.until].t)) return serving.middle();
    Choice asked{-std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
    for (const TubeSample& sample : cutOut(*asked_, {tube_[stand.from].t, tube_[stand.until].t}))
      if (!sample.open) asked = asked.cut({sample.lo, sample.hi});
    return std::isfinite(asked.middle()) ? std::clamp(asked.middle(), serving.lo, serving.hi) : serving.middle();
  }

  bool serves(std::size_t i, double value) const {
    return value >= tube_[i].lo - kGive && value <= tube_[i].hi + kGive;
  }

  std::size_t earliestLeave(const Stand& a) const {
    std::size_t i = a.from;
    while (i < a.until && tube_[i].t - tube_[a.from].t < rules_.shortestHold) ++i;
    return i;
  }
  std::size_t latestArrival(const Stand& b) const {
    std::size_t i = b.until;
    while (i > b.from && tube_[b.until].t - tube_[i].t < rules_.shortestHold) --i;
    return i;
  }

  double seconds(std::size_t from, std::size_t until) const { return tube_[until].t - tube_[from].t; }

  bool clear(const Stand& a, const Stand& b) const {
    const double change = b.value - a.value, time = seconds(a.until, b.from);
    if (std::abs(change) > rules_.rate * time) return false;
    for (std::size_t i = a.until + 1; i < b.from; ++i)
      if (!serves(i, time > 0 ? a.value + change * (seconds(a.until, i) / time) : a.value)) return false;
    return true;
  }

  /// Both values serve strictly between samples p and q, a's at p, b's at q: the ramp may lie anywhere from p to q.
  void change(Stand& a, Stand& b, std::size_t p, std::size_t q) const {
    std::size_t from = p, until = q;
    while (from < q && !tube_[from].open) ++from;
    while (until > p && !tube_[until].open) --until;
    const bool gap = from <= until && tube_[from].open;
    if (gap) {
      from = std::max(p, from > 0 ? from - 1 : from);
      until = std::min(q, until + 1);
    } else {
      from = p;
      until = q;
    }
    const double centre = (tube_[from].t + tube_[until].t) / 2;
    const double time = std::max(rules_.easyTime(b.value - a.value), gap ? seconds(from, until) : 0);
    while (from > p && tube_[from].t > centre - time / 2) --from;
    while (from < until && tube_[from + 1].t <= centre - time / 2) ++from;
    while (until < q && tube_[until].t < centre + time / 2) ++until;
    while (until > from && tube_[until - 1].t >= centre + time / 2) --until;
    if (std::abs(b.value - a.value) > rules_.rate * seconds(from, until)) return;
    a.until = from;
    b.from = until;
  }

  void drawOut(Stand& a, Stand& b, std::size_t earliest, std::size_t latest) const {
    bool moved = true;
    while (moved && seconds(a.until, b.from) < rules_.easyTime(b.value - a.value)) {
      moved = false;
      if (a.until > earliest) {
        --a.until;
        if (clear(a, b))
          moved = true;
        else
          ++a.until;
      }
      if (b.from < latest) {
        ++b.from;
        if (clear(a, b))
          moved = true;
        else
          --b.from;
      }
    }
  }

  const Tube& tube_;
  const MoveRules& rules_;
  const Tube* asked_;  ///< null: nothing but what the way has
};

}  // namespace

double MoveRules::easyTime(double change) const {
  return change == 0 ? 0 : std::max(std::abs(change) / easyRate, easySeconds);
}

std::vector<Stand> eased(std::vector<Stand> stands, const Passable& way, const MoveRules& rules, const Tube* asked) {
  const Easing easing(way, rules, asked);
  const std::size_t last = stands.size() - 1;
  const auto retimeAll = [&] {
    for (std::size_t i = 0; i < last; ++i) easing.retime(stands[i], i == 0, stands[i + 1], i + 1 == last);
  };
  retimeAll();
  for (std::size_t i = 0; i <= last; ++i)
    if (stands[i].from < stands[i].until)
      easing.recentre(i ? &stands[i - 1] : nullptr, stands[i], i < last ? &stands[i + 1] : nullptr);
  retimeAll();
  return stands;
}

}  // namespace wend::pulls
