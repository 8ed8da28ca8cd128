/// What focus, iris and zoom have in common when they are set by hand: a list of entries in order of time, the first
/// saying how the take starts, every further one a move that is done `over` after it starts.
///
/// Frame     `valueOf` and `written` are as the plan has them, metres, T-numbers and mm; `workingOf` and `tube` are
///           degrees of barrel, stops from T1, and the logarithm to base 2 of the focal length.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "core/answers/iris_cover.h"
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
  /// Without entries it is planned throughout.
  static constexpr bool kPlannedWhenEmpty = true;
  bool byHand() const { return !entries().empty(); }
  const std::vector<Entry>& entries() const { return plan().focus.pulls; }
  std::string path() const { return "/focus/pulls"; }
  std::string unit() const { return "degrees of barrel"; }
  pulls::MoveRules rules() const { return focusRules(plan()); }
  const pulls::Tube& tube() const { return take_.lens().focusTube(); }
  /// The track as planned in that tube: nothing is gained by another time.
  static pulls::Track laid(pulls::Track planned, const pulls::Tube&, const pulls::MoveRules&) { return planned; }

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
  static constexpr bool kPlannedWhenEmpty = true;
  bool byHand() const { return !entries().empty(); }
  const std::vector<Entry>& entries() const { return plan().iris.keys; }
  std::string path() const { return "/iris/keys"; }
  std::string unit() const { return "stops"; }
  pulls::MoveRules rules() const { return irisRules(plan()); }
  const pulls::Tube& tube() const { return tube_; }
  /// Its moves where they hide.
  pulls::Track laid(pulls::Track planned, const pulls::Tube& tube, const pulls::MoveRules& rules) const {
    return underCover(take_, std::move(planned), tube, rules);
  }

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

/// Keys by focal length are set by hand, keys by shot size are planned; the tube is the slack about what they ask for
/// together. Requires a lens; the take must outlive it.
class HandZoom {
 public:
  using Entry = plan::ZoomKey;
  explicit HandZoom(const Take& take) : take_(take), tube_(zoomTube(take)) {}

  const plan::Plan& plan() const { return take_.plan(); }
  /// Without keys nothing says what is asked for, and the lens stays wide.
  static constexpr bool kPlannedWhenEmpty = false;
  bool byHand() const {
    return std::none_of(entries().begin(), entries().end(), [](const Entry& key) { return !key.size.empty(); });
  }
  const std::vector<Entry>& entries() const { return plan().zoom.keys; }
  std::string path() const { return "/zoom/keys"; }
  std::string unit() const { return "doublings of the focal length"; }
  pulls::MoveRules rules() const { return zoomRules(plan()); }
  const pulls::Tube& tube() const { return tube_; }
  /// The track as planned in that tube: nothing is gained by another time.
  static pulls::Track laid(pulls::Track planned, const pulls::Tube&, const pulls::MoveRules&) { return planned; }

  double startOf(const Entry& entry) const { return plan::secondsOf(plan(), entry.time.at); }
  double overOf(const Entry& entry) const { return entry.time.over; }
  /// Requires a key by focal length.
  double valueOf(const Entry& entry) const { return entry.focal; }
  double workingOf(double focal) const { return std::log2(focal); }
  double written(double doublings) const {
    const auto& focal = plan().lens->focal;
    return std::clamp(plan::quantised(std::exp2(doublings), plan::kinds::kFocal), focal[0], focal[1]);
  }
  double stepAt(double doublings) const {
    const double focal = std::exp2(doublings);
    return std::log2(focal + 1 / plan::kinds::kFocal.perUnit) - doublings;
  }
  void startTake(Entry& entry) const { entry.time = {}; }
  Entry entry(double at, double over, double focal) const {
    return {{{"", at}, over, plan::Pace::even}, focal, "", plan::OnPerformer{}, {}};
  }
  base::Result<plan::Plan> with(std::vector<Entry> entries) const {
    return plan::zoomKeysSet(plan(), std::move(entries));
  }

 private:
  const Take& take_;
  pulls::Tube tube_;
};

}  // namespace wend::answers
