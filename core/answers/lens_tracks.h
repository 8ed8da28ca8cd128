/// Where the lens is set along the take: iris and focus, from the plan's keys and pulls or planned inside the slack.
///
/// The iris comes first, because what is sharp depends on it. Focus moves in barrel degrees, iris in stops from T1
/// (2 log2 T); between knots both run straight.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "core/answers/camera_view.h"
#include "core/answers/subjects.h"
#include "core/light/face.h"
#include "core/optics/depth_of_field.h"
#include "core/optics/lens_scale.h"
#include "core/pulls/fewest_moves.h"
#include "core/snags/evidence.h"
#include "core/units/stop.h"

namespace wend::answers {

/// What iris tracks are measured in.
using units::stopsOf, units::tNumberOf;

/// The plan's lens at a focal length and T-number, as depth of field sees it. Requires a lens.
optics::Optics opticsOf(const plan::Plan& plan, double focal, double tNumber);

/// What planned moves keep to: the lens' limits, and what is easy on the hand and the eye.
pulls::MoveRules focusRules(const plan::Plan& plan);
pulls::MoveRules irisRules(const plan::Plan& plan);

/// A tube of stops from T1, with what the lens cannot show taken to the nearest stop that it can.
pulls::Tube withinLens(pulls::Tube irisTube, const plan::Plan& plan);

class LensTracks {
 public:
  /// Reads the rest once and keeps nothing of it. `times` are where the slack is looked at, in order, both ends of the
  /// take included.
  static LensTracks of(const plan::PlanPtr& plan, const Subjects& subjects, const CameraView& view,
                       const light::Lighting& lighting, const std::vector<double>& times);

  /// The same with another iris planned, and the focus planned for it: another stop has another slack.
  /// Requires  a planned iris, and what `of` was given
  LensTracks withIris(pulls::Track iris, const plan::PlanPtr& plan, const Subjects& subjects, const CameraView& view,
                      const light::Lighting& lighting, const std::vector<double>& times) const;

  /// T-number set at t. Without keys and without a need, the lens wide open.
  double irisAt(double t) const;
  /// T-number the exposed face needs; between the looked-at times blended in stops.
  std::optional<double> neededAt(double t) const;
  /// Metres from the sensor the lens is set at, infinity allowed.
  double focusAt(double t) const { return scale_.valueAt(barrelAt(t)); }
  double barrelAt(double t) const;      ///< degrees
  double barrelRateAt(double t) const;  ///< degrees per second, over 2 ms about t, less at the ends
  const optics::LensScale& focusScale() const { return scale_; }

  /// What focus and iris may show; open where anything goes.
  const pulls::Tube& focusTube() const { return focusTube_; }
  const pulls::Tube& irisTube() const { return irisTube_; }
  const pulls::Track& focus() const { return focus_; }
  const pulls::Track& iris() const { return iris_; }
  /// Spans in which the focus, planned or set by hand, or the planned iris lies outside its slack or has no light to go
  /// by, or an iris or zoom is faster than its limit, a cut by hand of any axis among them; in order of their starts.
  /// Two things are looked at elsewhere, instant by instant: a
  /// barrel that is too fast, and what an iris set by hand does to the faces. Where that one leaves its slack,
  /// iris().unmet says.
  std::vector<snags::Unmet> unmet() const;

 private:
  struct Maker;
  LensTracks() : scale_(optics::LensScale::uncharted(1)) {}

  optics::LensScale scale_;
  std::vector<geometry::KeySpan> irisKeys_, focusKeys_;  ///< set by hand; empty: planned
  std::vector<double> irisStops_, focusDegrees_;
  std::vector<std::pair<double, std::optional<double>>> needed_;
  pulls::Tube focusTube_, irisTube_;
  pulls::Track focus_, iris_;
  std::vector<snags::Unmet> beyond_;
};

}  // namespace wend::answers
