#include "core/answers/set_scene.h"

#include <cmath>

#include "core/answers/floors.h"
#include "core/answers/people.h"
#include "core/plan/footprint.h"
#include "core/sight/ray.h"

namespace wend::answers {

using geometry::Point;

namespace {

sight::Side sideOf(plan::WallSide side) {
  return side == plan::WallSide::left ? sight::Side::left : sight::Side::right;
}

sight::Fill fillOf(plan::OpeningFill fill) {
  switch (fill) {
    case plan::OpeningFill::solid:
      return sight::Fill::solid;
    case plan::OpeningFill::glass:
      return sight::Fill::glass;
    case plan::OpeningFill::curtain:
      return sight::Fill::curtain;
    case plan::OpeningFill::open:
      break;
  }
  return sight::Fill::open;
}

sight::LeafMotion motionOf(const plan::LeafMoves& moves) {
  sight::LeafMotion motion;
  motion.kind = moves.kind == plan::LeafKind::swing   ? sight::LeafKind::swing
                : moves.kind == plan::LeafKind::slide ? sight::LeafKind::slide
                                                      : sight::LeafKind::lift;
  motion.hinge = moves.hinge == plan::LeafHinge::start ? sight::End::start : sight::End::end;
  motion.towards = sideOf(moves.towards);
  motion.fullDegrees = moves.full;
  return motion;
}

sight::OpeningCut cutOf(const plan::Plan& plan, std::size_t index) {
  const plan::Opening& opening = plan.set.openings[index];
  sight::OpeningCut cut;
  cut.wall = plan.set.walls.indexOf(opening.wall);
  cut.along = opening.along;
  cut.sill = opening.sill;
  cut.head = opening.head;
  cut.fill = fillOf(opening.fill);
  cut.barsWay = opening.barsWay;
  if (opening.moves) cut.moves = motionOf(*opening.moves);
  cut.keys = resolvedKeys(plan, opening.open);
  for (const auto& key : opening.open) cut.shares.push_back(key.share);
  cut.tag = static_cast<int>(index);
  return cut;
}

sight::PieceIn pieceOf(const plan::Plan& plan, std::size_t index) {
  const plan::Piece& piece = plan.set.pieces[index];
  sight::PieceIn in;
  if (const auto* disc = std::get_if<plan::Disc>(&piece.shape)) in.shape = sight::DiscShape{disc->centre, disc->radius};
  if (const auto* outline = std::get_if<plan::Outline>(&piece.shape)) in.shape = sight::OutlineShape{outline->points};
  if (const auto* line = std::get_if<plan::Line>(&piece.shape)) in.shape = sight::LineShape{line->points};
  in.bottom = piece.bottom;
  in.top = piece.top;
  in.surface = piece.surface == plan::Surface::solid   ? sight::Surface::solid
               : piece.surface == plan::Surface::glass ? sight::Surface::glass
                                                       : sight::Surface::mirror;
  if (piece.reflects) in.reflects = sideOf(*piece.reflects);
  in.pivot = plan::centreOf(piece.shape);
  in.keys = resolvedKeys(plan, piece.moved);
  for (const auto& key : piece.moved) in.shifts.push_back({key.offset, key.turn});
  in.tag = static_cast<int>(index);
  in.foot = footOf(plan, in);
  return in;
}

light::Area areaOf(const plan::Plan& plan, const plan::Area& area) {
  light::Area in;
  if (const auto* disc = std::get_if<plan::Disc>(&area.shape)) in.shape = light::Disc{disc->centre, disc->radius};
  if (const auto* outline = std::get_if<plan::Outline>(&area.shape)) in.shape = light::Outline{outline->points};
  for (const auto& state : area.states) {
    light::AreaState resolvedState{resolved(plan, state.time), {}};
    for (const auto& reading : state.readings) resolvedState.readings.push_back({reading.pos, reading.stop});
    in.states.push_back(std::move(resolvedState));
  }
  in.byClock = clockReadingsOf(area);
  return in;
}

light::Distribution distributionFor(const plan::Fixture& fixture, const light::Luminaires& luminaires) {
  if (const auto* beam = std::get_if<plan::BeamOutput>(&fixture.output))
    return light::distributionOf({beam->candela, beam->beam, beam->field});
  const auto& ies = std::get<plan::IesOutput>(fixture.output);
  const auto luminaire = luminaires.find(ies.file);
  if (luminaire == luminaires.end()) return {};
  return light::distributionOf(luminaire->second, fixture.tilt, ies.scale);
}

light::Fixture fixtureOf(const plan::Plan& plan, const plan::Fixture& fixture, const light::Luminaires& luminaires) {
  light::Fixture in;
  in.pose = {geometry::at(fixture.pos, fixture.height), fixture.bearing, fixture.tilt};
  in.distribution = distributionFor(fixture, luminaires);
  for (const auto& key : fixture.level) in.level.push_back({resolved(plan, key.time), key.share});
  in.inReadings = fixture.inReadings;
  return in;
}

}  // namespace

sight::Scene sceneOf(const plan::Plan& plan) {
  sight::SceneInput input;
  for (std::size_t i = 0; i < plan.set.walls.size(); ++i) {
    const plan::Wall& wall = plan.set.walls[i];
    sight::WallBand band{wall.points, wall.thickness, wall.bottom, wall.top, static_cast<int>(i), std::nullopt};
    band.foot = footOf(plan, band);
    input.walls.push_back(std::move(band));
  }
  for (std::size_t i = 0; i < plan.set.openings.size(); ++i) input.openings.push_back(cutOf(plan, i));
  for (std::size_t i = 0; i < plan.set.pieces.size(); ++i) input.pieces.push_back(pieceOf(plan, i));
  return sight::Scene(input);
}

std::vector<light::DensityKey> densityKeys(const plan::Plan& plan) {
  std::vector<light::DensityKey> density;
  for (const auto& key : plan.camera.nd) density.push_back({resolved(plan, key.time), key.stops});
  return density;
}

light::Lighting lightingOf(const plan::Plan& plan, const sight::Scene& scene, const light::Luminaires& luminaires) {
  std::vector<light::Area> areas;
  for (const auto& area : plan.set.areas)
    if (!area.states.empty() || !area.byClock.empty()) areas.push_back(areaOf(plan, area));
  std::vector<light::Fixture> fixtures;
  for (const auto& fixture : plan.fixtures) fixtures.push_back(fixtureOf(plan, fixture, luminaires));
  const auto crosses = [&scene](Point a, Point b) { return sight::crossesWall(scene, a, b); };
  const plan::Camera& camera = plan.camera;
  return {light::Areas(std::move(areas), plan.clock.timeOfDay, crosses), std::move(fixtures),
          light::Exposure{camera.exposureIndex, camera.shutterDeg, plan.clock.rate(), camera.meter.constant,
                          camera.ndStops},
          camera.meter.receptor == plan::Receptor::dome ? light::Receptor::dome : light::Receptor::flat,
          // Leaves are left out: a lamp is not switched by a door that happens to swing.
          [set = std::make_shared<const sight::SceneAt>(scene.at(-1e9))](geometry::Point3 lamp, geometry::Point3 face) {
            return !sight::openBetween(*set, lamp, face);
          },
          densityKeys(plan)};
}

std::vector<light::ClockReading> clockReadingsOf(const plan::Area& area) {
  std::vector<light::ClockReading> readings;
  for (const auto& reading : area.byClock) readings.push_back({reading.timeOfDay, reading.stop, reading.kelvin});
  return readings;
}

std::string idOf(const plan::Plan& plan, const sight::Source& source) {
  const auto index = static_cast<std::size_t>(source.tag);
  switch (source.owner) {
    case sight::Owner::wall:
      return plan.set.walls[index].id.text();
    case sight::Owner::opening:
      return plan.set.openings[index].id.text();
    case sight::Owner::piece:
      return plan.set.pieces[index].id.text();
    case sight::Owner::other:
      break;
  }
  return {};
}

std::vector<Point> outlineOf(const plan::Footprint& shape) {
  if (const auto* outline = std::get_if<plan::Outline>(&shape)) return outline->points;
  if (const auto* line = std::get_if<plan::Line>(&shape)) return line->points;
  const auto& disc = std::get<plan::Disc>(shape);
  std::vector<Point> points;
  for (int i = 0; i < 64; ++i) points.push_back(disc.centre + geometry::direction(i * 360.0 / 64) * disc.radius);
  return points;
}

crew::NameOf namesOf(const plan::Plan& plan) {
  return [&plan](sight::Source source) {
    const bool piece = source.owner == sight::Owner::piece;
    return crew::Named{idOf(plan, source), piece && plan.set.pieces[static_cast<std::size_t>(source.tag)].hot};
  };
}

std::vector<crew::GroundEdge> groundEdges(const plan::Plan& plan) {
  std::vector<crew::GroundEdge> edges;
  for (const auto& area : plan.set.areas)
    if (area.step) edges.push_back({area.id.text(), outlineOf(area.shape), true, std::abs(*area.step)});
  for (const auto& opening : plan.set.openings) {
    const plan::Wall* wall = plan.set.walls.find(opening.wall);
    if (opening.threshold <= 0 || !wall) continue;
    const geometry::Course course(wall->points);
    edges.push_back(
        {opening.id.text(), {course.at(opening.along.from), course.at(opening.along.until)}, false, opening.threshold});
  }
  return edges;
}

}  // namespace wend::answers
