/// What focus and iris have in common when they are set by hand: a list of entries in order of time, the first saying
/// how the take starts, every further one a move that is done `over` after it starts.
///
/// Frame     `valueOf` and `written` are as the plan has them, metres and T-numbers; `workingOf` and `tube` are degrees
///           of barrel and stops from T1.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "core/answers/take.h"
#include "core/plan/edits_camera.h"
#include "core/plan/edits_keys.h"
#include "core/plan/quantise.h"

namespace wend::answers {

/// The take must outlive it.
class HandFocus {
 public:
  using Entry = plan::HandPull;
  explicit HandFocus(const Take& take) : take_(take) {}

  const plan::Plan& plan() const { return take_.plan(); }
  const std::vector<Entry>& entries() const { return plan().focus.pulls; }
  std::string path() const { return "/focus/pulls"; }
  std::string unit() const { return "degrees of barrel"; }
  pulls::MoveRules rules() const { return focusRules(plan()); }
  const pulls::Tube& tube() const { return take_.lens().focusTube(); }

  double startOf(const Entry& entry) const { return plan::secondsOf(plan(), entry.at); }
  double overOf(const Entry& entry) const { return entry.over; }
  double valueOf(const Entry& entry) const { return entry.distance; }
  double workingOf(double distance) const { return take_.lens().focusScale().degreesAt(distance); }
  /// The nearest distance that can be written down. Beyond the farthest of them the lens hardly turns any more.
  double written(double degrees) const {
    const auto& kind = plan::kinds::kSize;
    const double distance = take_.lens().focusScale().valueAt(degrees);
    return plan::quantised(std::clamp(distance, kind.least, kind.most), kind);
  }
  /// How much one step of what is written changes the working coordinate.
  double stepAt(double degrees) const {
    const double distance = written(degrees);
    return std::abs(workingOf(distance + 1 / plan::kinds::kSize.perUnit) - workingOf(distance));
  }
  void startTake(Entry& entry) const {
    entry.at = {};
    entry.over = 0;
  }
  Entry entry(double at, double over, double distance) const { return {{"", at}, over, distance, {}}; }
  base::Result<plan::Plan> with(std::vector<Entry> entries) const { return plan::pullsSet(plan(), std::move(entries)); }

 private:
  const Take& take_;
};

/// The take must outlive it.
class HandIris {
 public:
  using Entry = plan::IrisKey;
  explicit HandIris(const Take& take) : take_(take), tube_(withinLens(take.lens().irisTube(), take.plan())) {}

  const plan::Plan& plan() const { return take_.plan(); }
  const std::vector<Entry>& entries() const { return plan().iris.keys; }
  std::string path() const { return "/iris/keys"; }
  std::string unit() const { return "stops"; }
  pulls::MoveRules rules() const { return irisRules(plan()); }
  const pulls::Tube& tube() const { return tube_; }

  double startOf(const Entry& entry) const { return plan::secondsOf(plan(), entry.time.at); }
  double overOf(const Entry& entry) const { return entry.time.over; }
  double valueOf(const Entry& entry) const { return entry.stop; }
  double workingOf(double tNumber) const { return stopsOf(tNumber); }
  double written(double stops) const {
    const auto& kind = plan::kinds::kStop;
    return plan::quantised(std::clamp(tNumberOf(stops), kind.least, kind.most), kind);
  }
  double stepAt(double stops) const {
    const double tNumber = written(stops);
    return stopsOf(tNumber + 1 / plan::kinds::kStop.perUnit) - stopsOf(tNumber);
  }
  void startTake(Entry& entry) const { entry.time = {}; }
  Entry entry(double at, double over, double tNumber) const {
    return {{{"", at}, over, plan::Pace::even}, tNumber, {}};
  }
  base::Result<plan::Plan> with(std::vector<Entry> entries) const {
    return plan::irisKeysSet(plan(), std::move(entries));
  }

 private:
  const Take& take_;
  pulls::Tube tube_;
};

}  // namespace wend::answers
