/// A plan of ten seconds with one of everything that a question needs: the camera stands at the origin, 1.5 m up, and
/// looks plan north through a lens that covers a fifth of the distance up and down. NORA stands 3 m in front of it.
#pragma once

#include <gtest/gtest.h>

#include "core/answers/answers.h"

namespace wend::answers {

inline plan::Mark markAt(const std::string& id, geometry::Point pos, double at = 0) {
  plan::Mark mark;
  mark.id = id;
  mark.at = {"", at};
  mark.pos = pos;
  return mark;
}

inline plan::Plan smallPlan() {
  plan::Plan plan;
  plan.clock.length = 10;
  plan.camera.gate = {24.9, 14.0};
  plan.camera.marks = {markAt("c1", {0, 0})};
  plan.camera.marks[0].height = 1.5;
  plan.camera.aims.push_back({{}, plan::OnBearing{0, 0}, {0, 0}, 0, {}});
  plan.lens = plan::Lens{};
  plan.lens->focal = {35, 35};
  plan::Performer nora;
  nora.id = base::Id<plan::Performer>("nora");
  nora.name = "NORA";
  nora.marks = {markAt("n1", {0, 3})};
  plan.performers.add(nora);
  return plan;
}

/// Somebody of the crew who stands at a place all take.
inline plan::Crew standing(const std::string& id, geometry::Point pos) {
  plan::Crew crew;
  crew.id = base::Id<plan::Crew>(id);
  crew.role = id;
  crew.marks = {markAt(id + "1", pos)};
  return crew;
}

/// One lamp behind the camera to its right, as high as NORA's eyes, which alone lights her face.
inline plan::Plan litBySideLamp() {
  plan::Plan plan = smallPlan();
  plan::Fixture lamp;
  lamp.id = base::Id<plan::Fixture>("f1");
  lamp.pos = {3, 0};
  lamp.height = 1.7;
  lamp.bearing = -45;
  lamp.tilt = 0;
  plan.fixtures.add(lamp);
  return plan;
}

inline TakePtr takeOf(const plan::Plan& plan) {
  auto take = Take::of(std::make_shared<const plan::Plan>(plan));
  if (!take.ok()) ADD_FAILURE() << base::toText(take.problems()[0]);
  return *take;
}

inline std::vector<Instant> samplesOf(const Take& take) {
  std::vector<Instant> samples;
  for (const double t : take.frameTimes()) samples.push_back(sampleAt(take, t));
  return samples;
}

}  // namespace wend::answers
