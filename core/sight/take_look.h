/// What the lens sees of a set during every step of a take, ready to be asked about one body after another. A step is
/// looked at when it is first asked about.
///
/// Frame     step k stands for the time from `take.from + k / rate` to the next, both included; the last one ends with
///           the take.
/// Tests     tests/core/sight/windows_test.cpp
#pragma once

#include <memory>
#include <vector>

#include "core/base/cancel.h"
#include "core/sight/body.h"
#include "core/sight/ray.h"
#include "core/sight/set_view.h"

namespace wend::sight {

/// Who is looked at, at any time: nothing while there is no body.
using BodyAt = std::function<std::optional<Body>(double)>;
/// Those who hide others, at any time.
using HidersAt = std::function<std::vector<Hider>(double)>;

/// What is asked about.
struct TakeSpec {
  Span take;
  double rate = 24;           ///< steps a second
  Heights bodies{-0.5, 2.2};  ///< from the lowest floor to the highest crown of whoever is asked about
  geometry::Extent ground;    ///< where they may be
  Walls walls = Walls::whole;
  bool operator==(const TakeSpec&) const = default;
};

/// One step's or a shorter span's way of a body.
struct BodyStep {
  Segment way;
  double radius = 0;  ///< with what the body may leave the straight way by
  Heights heights;
};

/// Nothing when there is no body at either end. Looks at the quarters, as `eyeStep` does.
std::optional<BodyStep> bodyStep(const BodyAt& body, Span time);
/// The same with the body at both ends known before.
std::optional<BodyStep> bodyStep(const BodyAt& body, Span time, const std::optional<Body>& from,
                                 const std::optional<Body>& until);

class TakeLook {
 public:
  /// Requires  rate > 0; the scene and what the functions refer to outlive it.
  /// Cost      memory: some kilobytes a step.
  /// Fails     when cancelled: nothing.
  static std::unique_ptr<TakeLook> over(const Scene& scene, EyeAt eye, const TakeSpec& spec, HidersAt hiders = {},
                                        const base::Cancel& cancel = {});

  const TakeSpec& spec() const { return spec_; }
  const Scene& scene() const { return scene_; }
  const EyeAt& eye() const { return eye_; }
  std::size_t steps() const { return looks_.size(); }
  Span timeOf(std::size_t step) const;
  /// Who looks when that step starts; when the last one ends, for `steps()`.
  const std::optional<Eye>& eyeFrom(std::size_t step) const { return ends_[step]; }

  /// The set as it hides at an instant, with all who hide but `self`.
  SceneAt sceneAt(double t, int self = kNobody) const;

  /// Whether the body may be seen at some instant of a step.
  ///
  /// Ensures   false only when `bodySight` finds it unseen at every instant of the step, those who hide included; so a
  ///           body that leaves the ground or the heights asked about is always said to be.
  /// Error     out of frame is told by the angle to its nearest side at the ends and quarters of the step, less half as
  ///           much again as that angle changes from one of them to the next: what `eyeStep` holds is held. Of an eye
  ///           that whirls from one to the next nothing is told.
  bool maySee(std::size_t step, const BodyStep& body, int self = kNobody);
  /// The same for a span of its own. Finds the look anew.
  bool maySee(Span time, const BodyStep& body, int self = kNobody);

  /// Whether all instants of a span are alike: eye and body rest, nothing of the set starts or ceases to hide, and no
  /// mirror moves. Then whoever is unseen at one of them is unseen.
  /// Error     rest is told by the ends and quarters, as in `eyeStep`; where people hide others none is told.
  bool rests(Span time, const BodyAt& body) const;

 private:
  TakeLook(const Scene& scene, EyeAt eye, TakeSpec spec, HidersAt hiders);
  void find(Span time, const EyeStep& eye, SetLook& look);
  bool maySee(const SetLook& look, Span time, const BodyStep& body, int self) const;
  /// Whether the body stays out of the widened frame all the while, above and below it too.
  bool outOfFrame(Span time, const BodyStep& body) const;

  const Scene& scene_;
  EyeAt eye_;
  TakeSpec spec_;
  HidersAt hiders_;
  std::vector<double> changes_;  ///< of the scene
  std::unique_ptr<SetView> view_;
  EyeSteps eyes_;
  std::vector<std::optional<SetLook>> looks_;  ///< nothing: not asked yet
  std::vector<std::optional<Eye>> ends_;       ///< of the steps
  SetLook fresh_;
};

}  // namespace wend::sight
