#include "core/answers/dimmers.h"

#include <algorithm>

#include "core/light/dimmer.h"

namespace wend::answers {
namespace {

/// Whom the iris is set for at t.
std::optional<light::Face> exposedFace(const Take& take, double t) {
  const std::string& exposed = take.plan().iris.exposePerformer;
  std::optional<geometry::Point3> place;
  if (!exposed.empty())
    place = take.people().lookAt(exposed, t);
  else if (take.subjects().any())
    place = take.subjects().placeOf(take.subjects().blendAt(t).after, t);
  if (!place) return std::nullopt;
  const geometry::Vec3 towards = take.view().pupilAt(t).at - *place;
  if (geometry::length(towards) == 0) return std::nullopt;
  return light::Face{*place, towards};
}

double sumOf(const std::vector<double>& lux) {
  double sum = 0;
  for (const double one : lux) sum += one;
  return sum;
}

constexpr double kFull = 1 + 1e-9;

}  // namespace

LampsInstead lampsInstead(const Take& take, const snags::Move& move) {
  LampsInstead found;
  const auto face = exposedFace(take, move.until);
  if (!face) return found;
  const light::FaceLight light = light::lightOnFace(take.lighting(), *face, move.until);
  if (!light.needed) return found;
  found.known = true;
  const double stops = stopsOf(move.valueAfter) - stopsOf(move.valueBefore);
  const auto shares = light::sharesInstead(light, stops);
  double brightest = 0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    if (light.fixtureLux[i] <= 0) continue;
    const double level = light::levelAt(take.lighting().fixtures[i], move.until);
    brightest = std::max(brightest, level);
    if (shares[i] && level * *shares[i] <= kFull)
      found.alone.push_back({take.plan().fixtures[i].id.text(), level, std::min(1.0, level * *shares[i])});
  }
  found.anyLight = brightest > 0;
  const auto together = light::shareInstead(light.lux, sumOf(light.fixtureLux), stops);
  if (together && brightest * *together <= kFull) found.together = together;
  return found;
}

}  // namespace wend::answers
