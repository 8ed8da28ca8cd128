/// Where the lens is set along the take: iris and focus, from the plan's keys and pulls or planned inside the slack.
///
/// The iris comes first, because what is sharp depends on it. Focus moves in barrel degrees, iris in stops.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/answers/camera_view.h"
#include "core/answers/subjects.h"
#include "core/light/face.h"
#include "core/optics/lens_scale.h"
#include "core/snags/evidence.h"

namespace wend::answers {

/// The slack of an instant in the axis' own coordinate (barrel degrees; stops above T1). Free where anything goes:
/// during a change of subject, or where nothing is known.
struct Slack {
  double t = 0;
  double low = 0, high = 0;
  bool free = false;
};

/// A corner of a track; straight between corners.
struct Knot {
  double t = 0;
  double value = 0;
};

class LensTracks {
 public:
  /// Reads the rest once and keeps nothing of it but the plan. `times` are where the slack is looked at, in order.
  static LensTracks of(const plan::PlanPtr& plan, const Subjects& subjects, const CameraView& view,
                       const light::Lighting& lighting, const std::vector<double>& times);

  /// T-number set at t. Without keys and without a need, the lens wide open.
  double irisAt(double t) const;
  /// T-number the exposed face needs at t, between the looked-at times in stops.
  std::optional<double> neededAt(double t) const;
  /// Metres from the sensor the lens is set at, infinity allowed.
  double focusAt(double t) const;
  double barrelAt(double t) const;
  double barrelRateAt(double t) const;  ///< degrees per second
  const optics::LensScale& focusScale() const { return scale_; }

  const std::vector<Slack>& focusSlack() const { return focusSlack_; }
  const std::vector<Slack>& irisSlack() const { return irisSlack_; }
  const std::vector<Knot>& focusKnots() const { return focus_; }
  const std::vector<Knot>& irisKnots() const { return iris_; }
  const std::vector<snags::Unmet>& unmet() const { return unmet_; }

 private:
  LensTracks() : scale_(optics::LensScale::uncharted(1)) {}
  optics::LensScale scale_;
  double widest_ = 2.8;
  std::vector<Knot> iris_, focus_;
  std::vector<Slack> irisSlack_, focusSlack_;
  std::vector<std::pair<double, std::optional<double>>> needed_;
  std::vector<snags::Unmet> unmet_;
};

}  // namespace wend::answers
