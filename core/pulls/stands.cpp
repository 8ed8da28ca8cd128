#include "core/pulls/stands.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/check.h"
#include "core/pulls/hold_reach.h"

namespace wend::pulls {
namespace {

constexpr double kGive = kTubeRounding / 2;

/// The straight lines out of one point that stay inside the tube, sample after sample.
class Cone {
 public:
  Cone(const Tube& tube, std::size_t from, double value, double rate)
      : tube_(tube), from_(from), value_(value), low_(-rate), high_(rate) {}

  /// The values straight lines reach at sample `at`; nothing when none does. Requires samples one after the other.
  std::optional<Choice> next(std::size_t at) {
    const TubeSample& s = tube_[at];
    const double seconds = s.t - tube_[from_].t;
    if (seconds > 0) {
      low_ = std::max(low_, (s.lo - kGive - value_) / seconds);
      high_ = std::min(high_, (s.hi + kGive - value_) / seconds);
    }
    if (low_ > high_) return std::nullopt;
    return Choice{std::clamp(value_ + low_ * seconds, s.lo, s.hi), std::clamp(value_ + high_ * seconds, s.lo, s.hi)};
  }

 private:
  const Tube& tube_;
  std::size_t from_;
  double value_, low_, high_;
};

/// A sample at which a ramp may leave, and the values it may leave from.
struct Departure {
  std::size_t at = 0;
  Choice values;
};

struct Ramp {
  std::size_t from = 0;
  double value = 0;
  bool holds = false;    ///< ends in a rest; else goes straight on to `reach`
  std::size_t land = 0;  ///< first sample of the rest
  Choice landing, left;  ///< values there, and those that stand until `reach`
  std::size_t reach = 0;
};

/// More is reached, or as much in rest, or with more choice left.
bool better(const Ramp& a, const Ramp& b) {
  if (a.reach != b.reach) return a.reach > b.reach;
  if (a.holds != b.holds) return a.holds;
  return a.from == b.from && a.left.width() > b.left.width() + kGive;
}

class Search {
 public:
  Search(const Tube& tube, const MoveRules& rules) : tube_(tube), rules_(rules), reach_(tube), last_(tube.size() - 1) {}

  std::vector<Stand> run() {
    const Choice all{tube_[0].lo, tube_[0].hi};
    const Standing first = reach_.standingFrom(0, all);
    if (first.last == last_) return {{0, last_, first.left.middle()}};
    std::vector<Stand> stands;
    Ramp before{0, 0, true, 0, all, first.left, first.last};
    auto departures = fromRest(before, 0);
    while (true) {
      const Ramp ramp = bestRamp(departures);
      stands.push_back({before.holds ? before.land : ramp.from, ramp.from, ramp.value});
      if (ramp.reach == last_) {
        stands.push_back({ramp.land, last_, ramp.left.middle()});
        return stands;
      }
      departures = ramp.holds ? fromRest(ramp, rules_.shortestHold) : fromRamp(ramp);
      before = ramp;
    }
  }

 private:
  /// Samples first..last from the last backwards, in steps that double.
  static std::vector<std::size_t> thinning(std::size_t first, std::size_t last) {
    std::vector<std::size_t> samples;
    for (std::size_t back = 0; back <= last - first; back = back ? 2 * back : 1) samples.push_back(last - back);
    if (samples.back() != first) samples.push_back(first);
    return samples;
  }

  std::vector<Departure> fromRest(const Ramp& ramp, double shortest) const {
    std::size_t first = ramp.land;
    while (first < ramp.reach && tube_[first].t - tube_[ramp.land].t < shortest) ++first;
    std::vector<Choice> left{ramp.landing};
    for (std::size_t i = ramp.land + 1; i <= ramp.reach; ++i) left.push_back(left.back().cut(tube_[i].lo, tube_[i].hi));
    std::vector<Departure> departures;
    for (const std::size_t at : thinning(first, ramp.reach)) departures.push_back({at, left[at - ramp.land]});
    return departures;
  }

  std::vector<Departure> fromRamp(const Ramp& ramp) const {
    Cone cone(tube_, ramp.from, ramp.value, rules_.rate);
    std::vector<Choice> reached;
    for (std::size_t i = ramp.from + 1; i <= ramp.reach; ++i) reached.push_back(cone.next(i).value());
    std::vector<Departure> departures;
    for (const std::size_t at : thinning(ramp.from + 1, ramp.reach))
      departures.push_back({at, reached[at - ramp.from - 1]});
    return departures;
  }

  Ramp bestRamp(const std::vector<Departure>& departures) const {
    std::optional<Ramp> best;
    for (const Departure& d : departures) {
      const double narrow = d.values.width() <= kTubeRounding;
      for (const double value : {d.values.middle(), d.values.lo, d.values.hi}) {
        const Ramp ramp = furthest(d.at, value);
        if (!best || better(ramp, *best)) best = ramp;
        if (narrow) break;
      }
    }
    return *best;
  }

  /// The best ramp out of one point. Requires a sample after it.
  Ramp furthest(std::size_t from, double value) const {
    Cone cone(tube_, from, value, rules_.rate);
    Ramp best{from, value, false, from, {}, {}, from};
    for (std::size_t at = from + 1; at <= last_; ++at) {
      const auto landing = cone.next(at);
      if (!landing) break;
      const Standing rest = reach_.standingFrom(at, *landing);
      const bool holds = rest.last == last_ || tube_[rest.last].t - tube_[at].t >= rules_.shortestHold;
      const Ramp ramp{from, value, holds, at, *landing, rest.left, holds ? rest.last : at};
      if (better(ramp, best)) best = ramp;
    }
    // A point inside the tube always sees the next sample: passable says so.
    WEND_CHECK(best.reach > from);
    return best;
  }

  const Tube& tube_;
  const MoveRules& rules_;
  HoldReach reach_;
  std::size_t last_;
};

/// What `eased` needs to know of the way.
class Easing {
 public:
  Easing(const Passable& way, const MoveRules& rules) : tube_(way.wanted), rules_(rules) {}

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

  /// Towards the middle of what serves over the whole rest, as far as the ramps on both sides stay possible.
  void recentre(const Stand* before, Stand& stand, const Stand* after) const {
    Choice serving{tube_[stand.from].lo, tube_[stand.from].hi};
    for (std::size_t i = stand.from + 1; i <= stand.until; ++i) serving = serving.cut(tube_[i].lo, tube_[i].hi);
    if (serving.empty() || !std::isfinite(serving.width())) return;
    const double now = stand.value, goal = serving.middle();
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
    const double time = std::max(std::abs(b.value - a.value) / rules_.easyRate, gap ? seconds(from, until) : 0);
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
    while (moved && std::abs(b.value - a.value) > rules_.easyRate * seconds(a.until, b.from)) {
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
};

}  // namespace

std::vector<Stand> standsThrough(const Passable& way, const MoveRules& rules) {
  return Search(way.reachable, rules).run();
}

std::vector<Stand> eased(std::vector<Stand> stands, const Passable& way, const MoveRules& rules) {
  const Easing easing(way, rules);
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
