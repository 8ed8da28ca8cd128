#include "core/pulls/ramp_reach.h"

#include <algorithm>
#include <optional>

#include "core/base/check.h"
#include "core/pulls/slope_edge.h"

namespace wend::pulls {
namespace {

// The search may leave the tube by this much, so that a tube without any width still has lines in it.
constexpr double kSearchGive = kTubeRounding / 4;

struct Instant {
  double t = 0;
  Choice bounds;
};

Instant between(const Instant& a, const Instant& b, double share) {
  const auto lerp = [share](double x, double y) { return x + (y - x) * share; };
  return {lerp(a.t, b.t), {lerp(a.bounds.lo, b.bounds.lo), lerp(a.bounds.hi, b.bounds.hi)}};
}

/// How far from a to b the range from low to high, its ends on straight lines, still meets the bounds; nothing when it
/// does at b.
std::optional<double> shareKept(const Instant& a, const Instant& b, Choice before, Choice after) {
  const auto kept = [](double roomBefore, double roomAfter) {
    if (roomAfter >= 0) return 2.0;
    return roomBefore <= 0 ? 0.0 : roomBefore / (roomBefore - roomAfter);
  };
  const double share = std::min(kept(before.hi - a.bounds.lo, after.hi - b.bounds.lo),
                                kept(a.bounds.hi - before.lo, b.bounds.hi - after.lo));
  return share > 1 ? std::nullopt : std::optional(share);
}

/// Straight lines in flight: for each slope a range.
class Flight {
 public:
  Flight(const Instant& now, double rate)
      : floor_(-rate, rate, now.t, now.bounds.lo), ceiling_(-rate, rate, now.t, now.bounds.hi) {}

  Choice at(double t) const { return {floor_.lowestAt(t), ceiling_.highestAt(t)}; }

  /// Lines that leave the tube fall away.
  void keepInside(const Instant& now) {
    ceiling_.lower(now.t, now.bounds.hi);
    floor_.raise(now.t, now.bounds.lo);
    ceiling_.dropBelow(now.t, now.bounds.lo);
    floor_.dropAbove(now.t, now.bounds.hi);
    const double least = std::max(ceiling_.leastSlope(), floor_.leastSlope());
    const double most = std::min(ceiling_.mostSlope(), floor_.mostSlope());
    ceiling_.keepSlopes(std::min(least, most), most);
    floor_.keepSlopes(std::min(least, most), most);
  }

  /// As keepInside, while every slope may start anew from what is reached.
  void startFrom(const Instant& now, Choice reached) {
    ceiling_.lower(now.t, now.bounds.hi);
    ceiling_.raise(now.t, reached.hi);
    floor_.raise(now.t, now.bounds.lo);
    floor_.lower(now.t, reached.lo);
  }

 private:
  SlopeEdge floor_, ceiling_;
};

class Sweep {
 public:
  Sweep(const Instant& first, double rate) : rate_(rate), now_(first), reached_(first.bounds), next_(first, rate) {
    record(true);
  }

  void goTo(const Instant& sample) {
    while (true) {
      // Whoever flies may come to rest anywhere on the way: rests end only after the flight has.
      const std::optional<double> share = flight_ ? shareKept(now_, sample, flight_->at(now_.t), flight_->at(sample.t))
                                                  : shareKept(now_, sample, reached_, reached_);
      if (!share) return moveTo(sample, true);
      moveTo(between(now_, sample, *share), false);
      if (flight_)
        flight_.reset();
      else
        goOnWithOneMore();
    }
  }

  std::vector<Mark> take() { return std::move(marks_); }

 private:
  void moveTo(const Instant& to, bool sample) {
    Choice whole = reached_;
    if (flight_) {
      const Choice flown = flight_->at(to.t);
      whole = {std::min(whole.lo, flown.lo), std::max(whole.hi, flown.hi)};
      flight_->keepInside(to);
    }
    now_ = to;
    reached_ = {std::clamp(whole.lo, to.bounds.lo, to.bounds.hi), std::clamp(whole.hi, to.bounds.lo, to.bounds.hi)};
    next_.startFrom(now_, reached_);
    record(sample);
  }

  void goOnWithOneMore() {
    ++ramps_;
    flight_ = std::move(next_);
    next_ = Flight(now_, rate_);
    reached_ = now_.bounds;
  }

  void record(bool sample) {
    Choice flying = kNoChoice;
    if (flight_) {
      flying = flight_->at(now_.t).cut(now_.bounds);
    }
    marks_.push_back({now_.t, now_.bounds, ramps_, reached_, flying, sample});
  }

  double rate_;
  Instant now_;
  Choice reached_;  ///< by ramps_ ramps, from where one more may leave
  std::size_t ramps_ = 0;
  std::optional<Flight> flight_;  ///< on the last of ramps_ ramps
  Flight next_;                   ///< on the one after
  std::vector<Mark> marks_;
};

}  // namespace

std::vector<Mark> rampReach(const Tube& tube, double rate) {
  WEND_CHECK(!tube.empty() && rate > 0);
  const auto instant = [&tube](std::size_t i) {
    return Instant{tube[i].t, {tube[i].lo - kSearchGive, tube[i].hi + kSearchGive}};
  };
  Sweep sweep(instant(0), rate);
  for (std::size_t i = 1; i < tube.size(); ++i)
    if (tube[i].t > tube[i - 1].t) sweep.goTo(instant(i));
  return sweep.take();
}

}  // namespace wend::pulls
