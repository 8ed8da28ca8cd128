#include "core/pulls/least_stands.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/base/check.h"
#include "core/geometry/point.h"
#include "core/pulls/ramp_reach.h"

namespace wend::pulls {
namespace {

// Beyond what the sweep gave way, so that its outermost lines are found again.
constexpr double kTraceGive = kTubeRounding / 8;

/// Some value of these is reached at `t` by `count` ramps.
struct Place {
  double t = 0;
  std::size_t mark = 0;  ///< the last at or before t
  Choice values;
  std::size_t count = 0;
};

/// A rest, or a bend.
struct Rest {
  double from = 0, until = 0, value = 0;
};

/// A track found, and where it took a ramp more than the sweep needs: the turn that would save it lies between samples.
struct Traced {
  std::vector<Rest> rests;
  std::vector<geometry::Span> lost;
};

class Trace {
 public:
  Trace(std::vector<Mark> marks, double rate) : marks_(std::move(marks)), rate_(rate * (1 + 1e-12)) {}

  Traced run() const {
    Traced traced;
    std::vector<Rest>& rests = traced.rests;
    Place place = placeAt(marks_.size() - 1, marks_.back().reached, marks_.back().ramps);
    while (true) {
      const std::vector<Place> landings = landingsOf(place);
      if (place.count == 0 || (!landings.empty() && landings.back().mark == 0)) {
        const Choice values = place.count == 0 ? place.values : landings.back().values;
        rests.push_back({marks_[0].t, place.t, values.middle()});
        break;
      }
      const Ramp ramp = rampInto(place, landings);
      rests.push_back({ramp.landing.t, place.t, ramp.landing.values.middle()});
      if (ramp.departure.count >= place.count)
        traced.lost.push_back({std::min(ramp.departure.t, lastOf(place.count - 1)), place.t});
      place = ramp.departure;
    }
    std::reverse(rests.begin(), rests.end());
    std::reverse(traced.lost.begin(), traced.lost.end());
    return traced;
  }

 private:
  struct Ramp {
    Place landing, departure;
  };

  Place placeAt(std::size_t mark, Choice values, std::size_t count) const {
    return {marks_[mark].t, mark, values, count};
  }
  /// The last instant that so many ramps reach.
  double lastOf(std::size_t count) const {
    const auto after = std::upper_bound(marks_.begin(), marks_.end(), count,
                                        [](std::size_t c, const Mark& mark) { return c < mark.ramps; });
    return after == marks_.begin() ? after->t : std::prev(after)->t;
  }
  bool onSample(const Place& place) const { return marks_[place.mark].sample && marks_[place.mark].t == place.t; }

  /// Where a rest that still stands at `place` may have begun, the latest first.
  std::vector<Place> landingsOf(const Place& place) const {
    std::vector<Place> landings;
    if (marks_[place.mark].t < place.t) landings.push_back(place);
    Choice standing = place.values;
    for (std::size_t back = 0; back <= place.mark; ++back) {
      const std::size_t at = place.mark - back;
      standing = standing.cut(marks_[at].bounds);
      if (standing.empty()) break;
      const Choice landed = standing.cut(marks_[at].flownTo(place.count));
      if (!landed.empty()) landings.push_back(placeAt(at, landed, place.count));
      if (at > 0 && landed.empty()) addLandingBefore(at, standing.middle(), place.count, landings);
    }
    return landings;
  }

  /// Between the mark before and this one, whatever flies may pass the value without being there at either.
  void addLandingBefore(std::size_t at, double value, std::size_t count, std::vector<Place>& landings) const {
    const Mark &a = marks_[at - 1], &b = marks_[at];
    const Choice before = a.flownTo(count), after = b.flownTo(count);
    if (before.empty() || after.empty()) return;
    const std::array<std::array<double, 2>, 3> ways = {
        {{before.middle(), after.middle()}, {before.lo, after.lo}, {before.hi, after.hi}}};
    for (const auto& [from, until] : ways)
      if ((from < value) != (until < value))
        landings.push_back({geometry::lerp(a.t, b.t, (value - from) / (until - from)), at - 1, {value, value}, count});
  }

  Ramp rampInto(const Place& place, const std::vector<Place>& landings) const {
    const std::vector<Place> liked = inOrderOfLiking(landings);
    for (const std::size_t from : {place.count - 1, place.count}) {
      for (const Place& landing : liked) {
        const Choice values = landing.values;
        for (const double value : {values.middle(), values.lo, values.hi})
          if (const auto departure = departureTo(landing, value, from))
            return {{landing.t, landing.mark, {value, value}, place.count}, *departure};
      }
    }
    return stepBack(place);
  }

  /// The longest rest with some choice first.
  std::vector<Place> inOrderOfLiking(const std::vector<Place>& landings) const {
    double widest = 0;
    for (const Place& landing : landings) widest = std::max(widest, landing.values.width());
    std::vector<Place> first, then;
    for (std::size_t i = landings.size(); i-- > 0;)
      (onSample(landings[i]) && landings[i].values.width() >= widest / 4 ? first : then).push_back(landings[i]);
    first.insert(first.end(), then.begin(), then.end());
    return first;
  }

  /// The straight lines that lead to one point, at the mark looked at last.
  struct Pencil {
    double least, most;  ///< slopes
    Choice here;         ///< values
    Choice from;         ///< values at which a ramp may leave
  };

  /// The latest place from which a straight line leads to the point, out of what `count` ramps reach; one of the next
  /// few where the choice is wider.
  std::optional<Place> departureTo(const Place& landing, double value, std::size_t count) const {
    constexpr int kLooked = 12;
    const bool onMark = marks_[landing.mark].t == landing.t;
    Pencil pencil{-rate_, rate_, {value, value}, onMark ? marks_[landing.mark].reachedBy(count) : kNoChoice};
    std::optional<Place> best;
    int since = 0;
    for (std::size_t at = landing.mark + (onMark ? 0 : 1); at-- > 0 && since < kLooked;) {
      const Pencil after = pencil;
      if (!follow(pencil, at, landing.t, value)) break;
      pencil.from = marks_[at].reachedBy(count);
      if (best) ++since;
      const Place found = placeAt(at, pencil.here.cut(pencil.from), count);
      if (!found.values.empty()) {
        if (!best || liked(found, *best)) best = found;
      } else if (!best) {
        best = crossing(after, pencil, at, landing, value, count);
      }
    }
    return best;
  }

  bool liked(const Place& a, const Place& b) const {
    return onSample(a) && (!onSample(b) || a.values.width() > 1.25 * b.values.width());
  }

  /// The pencil one mark further back; false when no line of it gets there.
  bool follow(Pencil& pencil, std::size_t at, double t, double value) const {
    const Mark& mark = marks_[at];
    const double seconds = t - mark.t;
    pencil.least = std::max(pencil.least, (value - mark.bounds.hi - kTraceGive) / seconds);
    pencil.most = std::min(pencil.most, (value - mark.bounds.lo + kTraceGive) / seconds);
    pencil.here = Choice{value - pencil.most * seconds, value - pencil.least * seconds}.cut(mark.bounds);
    return pencil.least <= pencil.most;
  }

  /// Where the pencil passes from one side of what is reached to the other between two marks.
  std::optional<Place> crossing(const Pencil& after, const Pencil& before, std::size_t at, const Place& landing,
                                double value, std::size_t count) const {
    if (after.from.empty() || before.from.empty()) return std::nullopt;
    const bool upward = before.here.hi < before.from.lo && after.here.lo > after.from.hi;
    const bool downward = before.here.lo > before.from.hi && after.here.hi < after.from.lo;
    if (!upward && !downward) return std::nullopt;
    const Choice both = before.from.cut(after.from);
    const double a = both.empty() ? before.from.middle() : both.middle(), b = both.empty() ? after.from.middle() : a;
    const double slope = (before.least + before.most) / 2, from = marks_[at].t;
    const double until = at + 1 <= landing.mark ? marks_[at + 1].t : landing.t;
    const double missBefore = value - slope * (landing.t - from) - a,
                 missAfter = value - slope * (landing.t - until) - b;
    const double share = missBefore / (missBefore - missAfter), there = geometry::lerp(a, b, share);
    return Place{geometry::lerp(from, until, share), at, {there, there}, count};
  }

  /// A ramp from the mark before, whatever it takes to be there.
  Ramp stepBack(const Place& place) const {
    const double value = place.values.middle();
    const std::size_t at = marks_[place.mark].t < place.t ? place.mark : place.mark - 1;
    const double step = rate_ * (place.t - marks_[at].t),
                 near = std::clamp(value, marks_[at].bounds.lo, marks_[at].bounds.hi);
    const Choice from = Choice{value - step, value + step}.cut(marks_[at].bounds);
    return {{place.t, place.mark, {value, value}, place.count},
            placeAt(at, from.empty() ? Choice{near, near} : from, marks_[at].ramps + 1)};
  }

  std::vector<Mark> marks_;
  double rate_;
};

/// What lies between two samples at `t`.
TubeSample within(const Tube& tube, std::size_t i, double t) {
  const TubeSample &a = tube[i - 1], &b = tube[i];
  const double share = (t - a.t) / (b.t - a.t);
  if (a.open || b.open) return {t, -HUGE_VAL, HUGE_VAL, true};
  return {t, geometry::lerp(a.lo, b.lo, share), geometry::lerp(a.hi, b.hi, share), false};
}

/// Gives the way samples at these times, which are in order, where it has none.
void addSamples(Passable& way, const std::vector<double>& times) {
  Passable more;
  std::size_t next = 0;
  for (std::size_t i = 0; i < way.reachable.size(); ++i) {
    for (; next < times.size() && times[next] <= way.reachable[i].t; ++next) {
      const double t = times[next];
      if (t == way.reachable[i].t || (!more.reachable.empty() && more.reachable.back().t >= t)) continue;
      more.reachable.push_back(within(way.reachable, i, t));
      more.wanted.push_back(within(way.wanted, i, t));
      more.forced.push_back(way.forced[i - 1] && way.forced[i]);
    }
    more.reachable.push_back(way.reachable[i]);
    more.wanted.push_back(way.wanted[i]);
    more.forced.push_back(way.forced[i]);
  }
  way = std::move(more);
}

std::size_t sampleIndexAt(const Tube& tube, double t) {
  const auto at =
      std::lower_bound(tube.begin(), tube.end(), t, [](const TubeSample& s, double time) { return s.t < time; });
  return static_cast<std::size_t>(at - tube.begin());
}

/// The same tube with more samples in and about these spans, which are in order of their starts and of
/// their ends.
Tube refined(const Tube& tube, const std::vector<geometry::Span>& spans, int parts) {
  Tube fine{tube[0]};
  std::size_t next = 0;
  for (std::size_t i = 1; i < tube.size(); ++i) {
    const TubeSample &a = tube[i - 1], &b = tube[i], &before = tube[i > 1 ? i - 2 : 0];
    while (next < spans.size() && spans[next].until < before.t) ++next;
    const bool wanted = next < spans.size() && spans[next].from <= b.t;
    for (int part = 1; wanted && part < parts; ++part) {
      const double share = static_cast<double>(part) / parts;
      fine.push_back({geometry::lerp(a.t, b.t, share), geometry::lerp(a.lo, b.lo, share),
                      geometry::lerp(a.hi, b.hi, share), false});
    }
    fine.push_back(b);
  }
  return fine;
}

/// What is reached along `fine`, whose samples count as such only where `tube` has them.
std::vector<Mark> finerReach(const Tube& fine, const Tube& tube, double rate) {
  std::vector<Mark> marks = rampReach(fine, rate);
  std::size_t i = 0;
  for (Mark& mark : marks) {
    while (tube[i].t < mark.t) ++i;
    mark.sample = mark.sample && tube[i].t == mark.t;
  }
  return marks;
}

/// The best track found: where a ramp was lost it is looked for again among denser samples, until none is.
std::vector<Rest> leastRests(const Tube& tube, double rate, std::size_t& least) {
  const std::vector<Mark> marks = rampReach(tube, rate);
  least = marks.back().ramps;
  Traced last = Trace(marks, rate).run();
  std::vector<Rest> best = last.rests;
  Tube fine = tube;
  for (const int parts : {8, 5, 3, 7, 13, 40}) {
    if (best.size() <= least + 1) break;
    fine = refined(tube, last.lost, parts);
    last = Trace(finerReach(fine, tube, rate), rate).run();
    if (last.rests.size() < best.size()) best = last.rests;
  }
  return best;
}

}  // namespace

LeastStands leastStands(Passable& way, double rate) {
  LeastStands result;
  const std::vector<Rest> found = leastRests(way.reachable, rate, result.least);
  std::vector<double> times;
  for (const Rest& rest : found)
    for (const double t : {rest.from, rest.until}) times.push_back(t);
  addSamples(way, times);
  for (const Rest& rest : found)
    result.stands.push_back(
        {sampleIndexAt(way.reachable, rest.from), sampleIndexAt(way.reachable, rest.until), rest.value});
  // A sample that shares the last instant is passed too.
  result.stands.back().until = way.reachable.size() - 1;
  return result;
}

}  // namespace wend::pulls
