/// What the camera shows along the take: zoom, field of view, aim and pose.
///
/// Order     wanted slant distance -> zoom -> field of view with breathing -> aim. So no field of view waits for the
///           pulls, and an aim at somebody at a place of the frame knows how wide the frame is.
#pragma once

#include "core/answers/people.h"
#include "core/answers/subjects.h"
#include "core/answers/zoom_track.h"
#include "core/motion/aim.h"
#include "core/optics/frame.h"

namespace wend::answers {

class CameraView {
 public:
  /// `people` and `subjects` must outlive it and stay where they are.
  static base::Result<CameraView> of(const plan::PlanPtr& plan, const People& people, const Subjects& subjects);

  /// mm; the lens' shortest without keys. Nothing without a lens.
  std::optional<double> focalAt(double t) const { return zoom_.focalAt(t); }
  /// Percent of the focal length per second, over 20 ms about t, less at the ends of the take.
  double zoomRateAt(double t) const;
  /// Of the delivered frame. Nothing without a lens.
  std::optional<optics::HalfTangents> halfTangentsAt(double t) const { return zoom_.halfTangentsAt(t); }
  const ZoomTrack& zoom() const { return zoom_; }
  optics::FrameSize frameSize() const { return zoom_.frame(); }

  geometry::Pose sensorAt(double t) const;
  geometry::Pose pupilAt(double t) const { return sensorAt(t).advanced(pupilAhead_); }
  const motion::AimTrack& aim() const { return *aim_; }

 private:
  CameraView() = default;
  const People* people_ = nullptr;
  ZoomTrack zoom_;
  double pupilAhead_ = 0;
  double length_ = 0;
  std::optional<motion::AimTrack> aim_;
};

}  // namespace wend::answers
