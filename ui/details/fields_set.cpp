#include "core/plan/edits_entities.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_set.h"
#include "core/units/clock_time.h"
#include "ui/details/choice_words.h"
#include "ui/details/fields.h"
#include "ui/details/member_fields.h"

namespace wend::ui {
namespace {

using plan::Plan;
using plan::Point;

constexpr Word<plan::OpeningFill> kFills[] = {{"open", plan::OpeningFill::open},
                                              {"solid", plan::OpeningFill::solid},
                                              {"glass", plan::OpeningFill::glass},
                                              {"curtain", plan::OpeningFill::curtain}};
constexpr Word<plan::Surface> kSurfaces[] = {
    {"solid", plan::Surface::solid}, {"glass", plan::Surface::glass}, {"mirror", plan::Surface::mirror}};

using SetPoint = std::function<PlanEdit(const Plan&, Point)>;

void addPoint(Point at, const SetPoint& set, Fields& fields) {
  fields.push_back(lengthField("east x", at.x, [at, set](const Plan& p, double x) { return set(p, {x, at.y}); }));
  fields.push_back(lengthField("north y", at.y, [at, set](const Plan& p, double y) { return set(p, {at.x, y}); }));
}

Point cornerOf(const plan::Footprint& shape, std::size_t i) {
  if (const auto* disc = std::get_if<plan::Disc>(&shape)) return disc->centre;
  if (const auto* line = std::get_if<plan::Line>(&shape)) return line->points[i];
  return std::get<plan::Outline>(shape).points[i];
}

/// The radius of what stands on a disc.
template <class Reshape>
void addDisc(const plan::Footprint& shape, Reshape reshape, Fields& fields) {
  const auto* disc = std::get_if<plan::Disc>(&shape);
  if (!disc) return;
  addPoint(
      disc->centre,
      [reshape, at = *disc](const Plan& p, Point c) {
        return reshape(p, plan::Disc{c, at.radius});
      },
      fields);
  fields.push_back(lengthField("radius", disc->radius, [reshape, at = *disc](const Plan& p, double radius) {
    return reshape(p, plan::Disc{at.centre, radius});
  }));
}

void addWall(const plan::Wall& wall, int corner, Fields& fields) {
  const std::string id = wall.id.text();
  if (corner >= 0) {
    const auto i = std::size_t(corner);
    addPoint(
        wall.points[i], [id, i](const Plan& p, Point at) { return plan::movedWallPoint(p, id, i, at); }, fields);
  }
  fields.push_back(memberField<plan::Wall>("name", id, &plan::Wall::name, wall));
  fields.push_back(lengthField("thickness", wall.thickness,
                               [id](const Plan& p, double metres) { return plan::wallThicknessSet(p, id, metres); }));
  fields.push_back(lengthField("bottom", wall.bottom, [id](const Plan& p, double metres) {
    return plan::wallHeightsSet(p, id, metres, p.set.walls.find(id)->top);
  }));
  fields.push_back(lengthField("top", wall.top, [id](const Plan& p, double metres) {
    return plan::wallHeightsSet(p, id, p.set.walls.find(id)->bottom, metres);
  }));
  fields.push_back(optionalNumber<plan::Wall>("radio loss", id, &plan::Wall::radioLoss, wall, "dB", 1, "usual"));
}

void addRoom(const plan::Room& room, int corner, Fields& fields) {
  const std::string id = room.id.text();
  if (corner >= 0) {
    const auto i = std::size_t(corner);
    addPoint(
        room.outline[i], [id, i](const Plan& p, Point at) { return plan::movedRoomPoint(p, id, i, at); }, fields);
  }
  fields.push_back(memberField<plan::Room>("name", id, &plan::Room::name, room));
  fields.push_back(lengthField("floor", room.floor, [id](const Plan& p, double metres) {
    return plan::roomHeightsSet(p, id, metres, p.set.rooms.find(id)->ceiling);
  }));
  fields.push_back(lengthField("ceiling", room.ceiling, [id](const Plan& p, double metres) {
    return plan::roomHeightsSet(p, id, p.set.rooms.find(id)->floor, metres);
  }));
  fields.push_back(choiceOf("open above", room.openAbove, kYesNo, memberSet<plan::Room>(id, &plan::Room::openAbove)));
}

void addOpening(const plan::Opening& opening, Fields& fields) {
  const std::string id = opening.id.text();
  fields.push_back(memberField<plan::Opening>("name", id, &plan::Opening::name, opening));
  fields.push_back(lengthField("from", opening.along.from, [id](const Plan& p, double metres) {
    return plan::openingAlongSet(p, id, {metres, p.set.openings.find(id)->along.until});
  }));
  fields.push_back(lengthField("until", opening.along.until, [id](const Plan& p, double metres) {
    return plan::openingAlongSet(p, id, {p.set.openings.find(id)->along.from, metres});
  }));
  fields.push_back(lengthField("sill", opening.sill,
                               [id](const Plan& p, double metres) { return plan::openingSillSet(p, id, metres); }));
  fields.push_back(lengthField("head", opening.head,
                               [id](const Plan& p, double metres) { return plan::openingHeadSet(p, id, metres); }));
  fields.push_back(lengthField("threshold", opening.threshold, [id](const Plan& p, double metres) {
    return plan::openingThresholdSet(p, id, metres);
  }));
  fields.push_back(choiceOf("filled with", opening.fill, kFills,
                            [id](const Plan& p, plan::OpeningFill fill) { return plan::openingFillSet(p, id, fill); }));
  fields.push_back(
      choiceOf("shut bars", opening.barsWay, kYesNo, memberSet<plan::Opening>(id, &plan::Opening::barsWay)));
  fields.push_back(
      optionalNumber<plan::Opening>("radio loss", id, &plan::Opening::radioLoss, opening, "dB", 1, "usual"));
}

void addDoorKey(const plan::Opening& opening, std::size_t i, Fields& fields) {
  const plan::KeyRef key{plan::Axis::door, i, opening.id.text()};
  const plan::OpenKey& at = opening.open[i];
  fields.push_back(momentField("at", at.time.at, plan::KeyStart{key}));
  fields.push_back(secondsField("over", at.time.over,
                                [key](const Plan& p, double seconds) { return plan::keyOverSet(p, key, seconds); }));
  fields.push_back(
      percentField("open", at.share, [key](const Plan& p, double share) { return plan::keyShareSet(p, key, share); }));
  fields.push_back(wordsField("cue", at.name, [key, by = at.by](const Plan& p, const std::string& name) {
    return plan::keyNamed(p, key, name, by);
  }));
  fields.push_back(wordsField("given by", at.by, [key, name = at.name](const Plan& p, const std::string& by) {
    return plan::keyNamed(p, key, name, by);
  }));
}

void addPiece(const plan::Piece& piece, int corner, Fields& fields) {
  const std::string id = piece.id.text();
  if (corner >= 0 && !std::holds_alternative<plan::Disc>(piece.shape)) {
    const auto i = std::size_t(corner);
    addPoint(
        cornerOf(piece.shape, i), [id, i](const Plan& p, Point at) { return plan::movedPiecePoint(p, id, i, at); },
        fields);
  }
  fields.push_back(memberField<plan::Piece>("name", id, &plan::Piece::name, piece));
  addDisc(
      piece.shape, [id](const Plan& p, plan::Disc disc) { return plan::pieceReshaped(p, id, disc); }, fields);
  fields.push_back(lengthField("bottom", piece.bottom, [id](const Plan& p, double metres) {
    return plan::pieceHeightsSet(p, id, metres, p.set.pieces.find(id)->top);
  }));
  fields.push_back(lengthField("top", piece.top, [id](const Plan& p, double metres) {
    return plan::pieceHeightsSet(p, id, p.set.pieces.find(id)->bottom, metres);
  }));
  fields.push_back(choiceOf("surface", piece.surface, kSurfaces, [id](const Plan& p, plan::Surface surface) {
    return plan::pieceSurfaceSet(p, id, surface);
  }));
  fields.push_back(choiceOf("hot", piece.hot, kYesNo, memberSet<plan::Piece>(id, &plan::Piece::hot)));
  fields.push_back(choiceOf("glossy", piece.glossy, kYesNo, memberSet<plan::Piece>(id, &plan::Piece::glossy)));
}

/// The colour of the light in a state, kelvin.
Field stateColour(const plan::Area& area, std::size_t s, const std::string& label) {
  const auto set = [id = area.id.text(), s](const Plan& p, std::optional<double> kelvin) {
    plan::Area changed = *p.set.areas.find(id);
    changed.states[s].kelvin = kelvin;
    return plan::replaced(p, std::move(changed));
  };
  const auto& now = area.states[s].kelvin;
  return orNothing(
      numberField(label, now.value_or(0), "K", 100, 0, [set](const Plan& p, double kelvin) { return set(p, kelvin); }),
      !now, "not known", [set](const Plan& p) { return set(p, std::nullopt); });
}

/// Stop and colour of the readings that go by the clock, each under its time of day.
void addClockReadings(const plan::Area& area, Fields& fields) {
  for (std::size_t r = 0; r < area.byClock.size(); ++r) {
    const auto with = [id = area.id.text(), r](auto change) {
      return [id, r, change](const Plan& p, auto value) {
        plan::Area changed = *p.set.areas.find(id);
        change(changed.byClock[r], value);
        return plan::replaced(p, std::move(changed));
      };
    };
    const plan::ClockReading& reading = area.byClock[r];
    const std::string at = units::timeOfDayText(reading.timeOfDay);
    fields.push_back(stopField(at, reading.stop, with([](plan::ClockReading& one, double stop) { one.stop = stop; })));
    const auto setColour = with([](plan::ClockReading& one, std::optional<double> kelvin) { one.kelvin = kelvin; });
    fields.push_back(orNothing(
        numberField(at + " colour", reading.kelvin.value_or(0), "K", 100, 0,
                    [setColour](const Plan& p, double kelvin) { return setColour(p, std::optional(kelvin)); }),
        !reading.kelvin, "not known", [setColour](const Plan& p) { return setColour(p, std::optional<double>()); }));
  }
}

void addReadings(const plan::Area& area, Fields& fields) {
  for (std::size_t s = 0; s < area.states.size(); ++s) {
    const std::string state = area.states[s].name.empty() ? "state " + std::to_string(s + 1) : area.states[s].name;
    fields.push_back(stateColour(area, s, state + " colour"));
    for (std::size_t r = 0; r < area.states[s].readings.size(); ++r) {
      const std::string label = state + " " + std::to_string(r + 1);
      fields.push_back(
          stopField(label, area.states[s].readings[r].stop, [id = area.id.text(), s, r](const Plan& p, double stop) {
            auto readings = p.set.areas.find(id)->states[s].readings;
            readings[r].stop = stop;
            return plan::readingsSet(p, id, s, std::move(readings));
          }));
    }
  }
}

void addArea(const plan::Area& area, int corner, Fields& fields) {
  const std::string id = area.id.text();
  if (corner >= 0 && !std::holds_alternative<plan::Disc>(area.shape)) {
    const auto i = std::size_t(corner);
    addPoint(
        cornerOf(area.shape, i), [id, i](const Plan& p, Point at) { return plan::movedAreaPoint(p, id, i, at); },
        fields);
  }
  fields.push_back(memberField<plan::Area>("name", id, &plan::Area::name, area));
  addDisc(
      area.shape, [id](const Plan& p, plan::Disc disc) { return plan::areaReshaped(p, id, disc); }, fields);
  fields.push_back(optionalLength<plan::Area>("edge", id, &plan::Area::step, area, "none"));
  fields.push_back(optionalLength<plan::Area>("floor", id, &plan::Area::floor, area, "as room"));
  addReadings(area, fields);
  addClockReadings(area, fields);
}

void addUnderlay(const plan::Underlay& underlay, Fields& fields) {
  const auto with = [](auto change) {
    return [change](const Plan& p, double value) {
      plan::Underlay changed = *p.set.underlay;
      change(changed, value);
      return plan::underlaySet(p, changed);
    };
  };
  fields.push_back(lengthField("east x", underlay.pos.x, with([](plan::Underlay& u, double v) { u.pos.x = v; })));
  fields.push_back(lengthField("north y", underlay.pos.y, with([](plan::Underlay& u, double v) { u.pos.y = v; })));
  fields.push_back(angleField("bearing", underlay.bearing, with([](plan::Underlay& u, double v) { u.bearing = v; })));
  fields.push_back(numberField("metres a px", underlay.metresPerPixel, "m", 0, 3,
                               with([](plan::Underlay& u, double v) { u.metresPerPixel = v; })));
  fields.push_back(
      percentField("strength", underlay.opacity, with([](plan::Underlay& u, double v) { u.opacity = v; })));
}

}  // namespace

Fields fieldsOfSet(const Subject& subject) {
  Fields fields;
  const plan::Set& set = subject.plan.set;
  const auto& [kind, id, index] = subject.selection;
  if (kind == Kind::wall) addWall(*set.walls.find(id), index, fields);
  if (kind == Kind::room) addRoom(*set.rooms.find(id), index, fields);
  if (kind == Kind::opening && index < 0) addOpening(*set.openings.find(id), fields);
  if (kind == Kind::opening && index >= 0) addDoorKey(*set.openings.find(id), std::size_t(index), fields);
  if (kind == Kind::piece) addPiece(*set.pieces.find(id), index, fields);
  if (kind == Kind::area) addArea(*set.areas.find(id), index, fields);
  if (kind == Kind::underlay) addUnderlay(*set.underlay, fields);
  return fields;
}

}  // namespace wend::ui
