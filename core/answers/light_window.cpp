#include "core/answers/light_window.h"

#include <algorithm>
#include <cmath>

#include "core/answers/answers.h"

namespace wend::answers {
namespace {

/// Lux of lamps that are added to what the areas read there.
double lampLuxOn(const light::Lighting& lighting, const light::Face& face, double t, double reading) {
  const light::FaceLight light = light::lightOnFace(lighting, face, t);
  return std::max(0.0, light.lux - light::luxOfReading(reading, lighting.exposure));
}

/// What a face asks of the clock; nothing where it asks nothing. Its readings are empty where it cannot be met.
std::optional<light::ClockNeed> needOf(const Take& take, const snags::PerformerAt& performer,
                                       const snags::CameraAt& camera, double t, const light::StopTolerance& tolerance) {
  const light::Lighting& lighting = take.lighting();
  const geometry::Point3 eyes = geometry::at(performer.pos, performer.eyes);
  auto course = lighting.areas.byClockAt(performer.pos, t);
  const light::AreaLight now = lighting.areas.lightAt(performer.pos, t);
  if (course.empty() && (!now.covered || now.stop)) return std::nullopt;
  if (!now.stop || !performer.needed) return light::ClockNeed{{}, t, {1, 1}};
  const double lamps = lampLuxOn(lighting, {eyes, camera.pupil.at - eyes}, t, *now.stop);
  return light::ClockNeed{std::move(course), t, light::allowedReadings(*now.stop, lamps, lighting.exposure, tolerance)};
}

}  // namespace

std::optional<geometry::Spans> lightWindow(const Take& take, double step, const light::StopTolerance& tolerance) {
  if (!take.plan().clock.timeOfDay || !take.plan().lens) return std::nullopt;
  std::vector<light::ClockNeed> needs;
  const int steps = static_cast<int>(std::ceil(take.length() / step));
  for (int i = 0; i <= steps; ++i) {
    const double t = std::min(i * step, take.length());
    const Instant instant = sampleAt(take, t);
    for (const auto& performer : instant.performers) {
      const bool shows = optics::shows(performer.inFrame);
      if (!performer.present || !shows) continue;
      if (auto need = needOf(take, performer, instant.camera, t, tolerance)) needs.push_back(std::move(*need));
    }
  }
  if (needs.empty()) return std::nullopt;
  return light::holdSpans(needs);
}

}  // namespace wend::answers
