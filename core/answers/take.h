/// The take: a plan resolved to tracks on one clock. Cheap to make, so that it can be made anew on every mouse move.
///
/// Order     positions, wanted distances, zoom, aims, sight and exposure, iris, what hides its moves, focus.
#pragma once

#include <memory>

#include "core/answers/camera_view.h"
#include "core/answers/lens_tracks.h"
#include "core/answers/people.h"
#include "core/answers/set_scene.h"
#include "core/answers/subjects.h"
#include "core/base/result.h"
#include "core/plan/plan.h"
#include "core/sight/scene.h"
#include "core/units/timecode.h"

namespace wend::answers {

class Take;
using TakePtr = std::shared_ptr<const Take>;

class Take {
 public:
  /// `luminaires` are the photometric files that the plan's lamps name, read by whoever may read files.
  /// Fails with what keeps the plan from being resolved, `where` a pointer into the plan.
  static base::Result<TakePtr> of(const plan::PlanPtr& plan, light::Luminaires luminaires = {});
  Take(const Take&) = delete;
  Take& operator=(const Take&) = delete;

  const plan::Plan& plan() const { return *plan_; }
  const plan::PlanPtr& planPtr() const { return plan_; }
  double length() const { return plan_->clock.length; }  ///< seconds
  double rate() const { return plan_->clock.rate(); }    ///< frames a second
  const units::FrameRate& frameRate() const { return rate_; }
  /// SMPTE label of the frame shown at t.
  std::string timecodeAt(double t) const;
  /// Frame times k / rate up to the take's end, which comes last.
  std::vector<double> frameTimes() const;

  const People& people() const { return *people_; }
  const Subjects& subjects() const { return *subjects_; }
  const CameraView& view() const { return *view_; }
  const sight::Scene& scene() const { return scene_; }
  const light::Lighting& lighting() const { return *lighting_; }
  const light::Luminaires& luminaires() const { return luminaires_; }
  const LensTracks& lens() const { return *lens_; }

  /// The pupil and the delivered frame, widened by `marginDegrees`. Nothing without a lens.
  std::optional<sight::Eye> eyeAt(double t, double marginDegrees) const;
  /// Performer i as a figure, for the frame and for hiding others. Nothing while absent.
  std::optional<optics::Figure> figureAt(std::size_t i, double t) const;
  /// The stop that performer's face or that place needs at t.
  std::optional<double> neededAt(Point3 place, double t) const;

 private:
  Take(plan::PlanPtr plan, light::Luminaires luminaires);
  void setLens();
  plan::PlanPtr plan_;
  light::Luminaires luminaires_;
  units::FrameRate rate_;
  std::unique_ptr<People> people_;
  std::unique_ptr<Subjects> subjects_;
  std::unique_ptr<CameraView> view_;
  sight::Scene scene_;
  std::unique_ptr<light::Lighting> lighting_;
  std::unique_ptr<LensTracks> lens_;
};

}  // namespace wend::answers
