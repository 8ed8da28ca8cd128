/// Every number of every part of a plan, with its kind: the one list that quantising and range checks walk.
///
/// eachNumber(part, f) calls f(double& value, const NumberKind& kind, const char* name) for each number in `part`; the
/// name is the file's. A new field of a plan gets its line here.
#pragma once

#include <variant>

#include "core/plan/plan.h"
#include "core/plan/quantise.h"

namespace wend::plan {

template <class F>
void eachNumber(Point& point, F&& f, const char* name) {
  f(point.x, kinds::kPlace, name);
  f(point.y, kinds::kPlace, name);
}
template <class F>
void eachNumber(std::vector<Point>& points, F&& f, const char* name) {
  for (Point& point : points) eachNumber(point, f, name);
}
template <class F>
void eachNumber(std::optional<double>& value, F&& f, const NumberKind& kind, const char* name) {
  if (value) f(*value, kind, name);
}
template <class F>
void eachNumber(Moment& moment, F&& f, const char* name) {
  f(moment.seconds, kinds::kMoment, name);
}
template <class F>
void eachNumber(std::optional<Moment>& moment, F&& f, const char* name) {
  if (moment) eachNumber(*moment, f, name);
}
template <class F>
void eachNumber(KeyTime& time, F&& f) {
  eachNumber(time.at, f, "at");
  f(time.over, kinds::kDuration, "over");
}
template <class F>
void eachNumber(Target& on, F&& f) {
  if (auto* point = std::get_if<OnPoint>(&on)) {
    eachNumber(point->pos, f, "on/point");
    f(point->height, kinds::kHeight, "on/height");
  } else if (auto* bearing = std::get_if<OnBearing>(&on)) {
    f(bearing->bearing, kinds::kBearing, "on/bearing");
    f(bearing->tilt, kinds::kTilt, "on/tilt");
  } else if (auto* travel = std::get_if<OnTravel>(&on)) {
    f(travel->offset, kinds::kBearing, "on/travel");
    f(travel->tilt, kinds::kTilt, "on/tilt");
  } else if (auto* distance = std::get_if<OnDistance>(&on)) {
    f(distance->metres, kinds::kSize, "on/distance");
  }
}
template <class F>
void eachNumber(Footprint& shape, F&& f) {
  if (auto* disc = std::get_if<Disc>(&shape)) {
    eachNumber(disc->centre, f, "disc/centre");
    f(disc->radius, kinds::kSize, "disc/radius");
  } else if (auto* outline = std::get_if<Outline>(&shape)) {
    eachNumber(outline->points, f, "outline");
  } else {
    eachNumber(std::get<Line>(shape).points, f, "points");
  }
}

template <class F>
void eachNumber(OverFocal& over, F&& f, const NumberKind& kind, const char* name) {
  if (over.rows.empty()) f(over.everywhere, kind, name);
  for (FocalValue& row : over.rows) {
    f(row.focal, kinds::kFocal, name);
    f(row.value, kind, name);
  }
}

template <class F>
void eachNumber(Underlay& underlay, F&& f) {
  f(underlay.metresPerPixel, NumberKind{1e9, 1e-6, 100, "m"}, "metresPerPixel");
  eachNumber(underlay.pos, f, "pos");
  f(underlay.bearing, kinds::kBearing, "bearing");
  f(underlay.opacity, kinds::kShare, "opacity");
}
template <class F>
void eachNumber(Room& room, F&& f) {
  eachNumber(room.outline, f, "outline");
  f(room.floor, kinds::kHeight, "floor");
  f(room.ceiling, kinds::kHeight, "ceiling");
}
template <class F>
void eachNumber(Wall& wall, F&& f) {
  eachNumber(wall.points, f, "points");
  f(wall.thickness, kinds::kSize, "thickness");
  f(wall.bottom, kinds::kHeight, "bottom");
  f(wall.top, kinds::kHeight, "top");
  eachNumber(wall.radioLoss, f, kinds::kDecibels, "radioLoss");
}
template <class F>
void eachNumber(Opening& opening, F&& f) {
  f(opening.along.from, kinds::kExtent, "along");
  f(opening.along.until, kinds::kExtent, "along");
  f(opening.sill, kinds::kHeight, "sill");
  f(opening.head, kinds::kHeight, "head");
  f(opening.threshold, kinds::kExtent, "threshold");
  if (opening.moves) f(opening.moves->full, NumberKind{100, -180, 180, "degrees"}, "moves/full");
  for (OpenKey& key : opening.open) {
    eachNumber(key.time, f);
    f(key.share, kinds::kShare, "open/share");
  }
  eachNumber(opening.radioLoss, f, kinds::kDecibels, "radioLoss");
}
template <class F>
void eachNumber(Piece& piece, F&& f) {
  eachNumber(piece.shape, f);
  f(piece.bottom, kinds::kHeight, "bottom");
  f(piece.top, kinds::kHeight, "top");
  for (PieceKey& key : piece.moved) {
    eachNumber(key.time, f);
    f(key.offset.x, kinds::kOffset, "moved/offset");
    f(key.offset.y, kinds::kOffset, "moved/offset");
    f(key.turn, kinds::kBearing, "moved/turn");
  }
}
template <class F>
void eachNumber(Area& area, F&& f) {
  eachNumber(area.shape, f);
  for (AreaState& state : area.states) {
    eachNumber(state.time, f);
    for (Reading& reading : state.readings) {
      eachNumber(reading.pos, f, "readings/pos");
      f(reading.stop, kinds::kStop, "readings/stop");
    }
    eachNumber(state.kelvin, f, kinds::kKelvin, "states/kelvin");
  }
  for (ClockReading& reading : area.byClock) {
    f(reading.timeOfDay, kinds::kMinuteOfDay, "byClock");
    f(reading.stop, kinds::kStop, "byClock");
    eachNumber(reading.kelvin, f, kinds::kKelvin, "byClock/kelvin");
  }
  eachNumber(area.step, f, kinds::kExtent, "step");
  eachNumber(area.floor, f, kinds::kHeight, "floor");
}

template <class F>
void eachNumber(Mark& mark, F&& f) {
  eachNumber(mark.at, f, "marks/at");
  eachNumber(mark.until, f, "marks/until");
  eachNumber(mark.pos, f, "marks/pos");
  eachNumber(mark.height, f, kinds::kHeight, "marks/height");
  eachNumber(mark.facing, f, kinds::kBearing, "marks/facing");
  eachNumber(mark.leg.via, f, "marks/leg/via");
  eachNumber(mark.leg.centre, f, "marks/leg/centre");
  f(mark.leg.sweep, kinds::kBearing, "marks/leg/sweep");
}
template <class F>
void eachNumber(Performer& performer, F&& f) {
  f(performer.stature, kinds::kStature, "stature");
  f(performer.radius, kinds::kBody, "radius");
  for (Mark& mark : performer.marks) eachNumber(mark, f);
}
template <class F>
void eachNumber(Prop& prop, F&& f) {
  f(prop.wobble, kinds::kWobble, "wobble");
  for (PropEntry& entry : prop.track) {
    eachNumber(entry.at, f, "track/at");
    eachNumber(entry.pos, f, "track/pos");
    f(entry.height, kinds::kHeight, "track/height");
  }
}
template <class F>
void eachNumber(Crew& crew, F&& f) {
  f(crew.radius, kinds::kBody, "radius");
  f(crew.height, kinds::kStature, "height");
  f(crew.crouch, kinds::kStature, "crouch");
  f(crew.speed, kinds::kSpeed, "speed");
  for (Mark& mark : crew.marks) eachNumber(mark, f);
  for (Need& need : crew.needs) {
    if (auto* near = std::get_if<NearCamera>(&need.what)) f(near->within, kinds::kSize, "needs/within");
    eachNumber(need.from, f, "needs/from");
    eachNumber(need.until, f, "needs/until");
  }
}
template <class F>
void eachNumber(Shelter& shelter, F&& f) {
  eachNumber(shelter.pos, f, "pos");
  f(shelter.radius, kinds::kBody, "radius");
}
template <class F>
void eachNumber(Gear& gear, F&& f) {
  eachNumber(gear.pos, f, "pos");
  f(gear.radius, kinds::kBody, "radius");
  f(gear.height, kinds::kSize, "height");
}
template <class F>
void eachNumber(Cable& cable, F&& f) {
  eachNumber(cable.points, f, "points");
  f(cable.height, NumberKind{10000, 0, 1, "m"}, "height");
  eachNumber(cable.from, f, "from");
  eachNumber(cable.until, f, "until");
}
template <class F>
void eachNumber(Pole& pole, F&& f) {
  f(pole.reach, kinds::kBody, "reach");
  f(pole.shoulder, kinds::kStature, "shoulder");
  f(pole.above, NumberKind{10000, 0, 5, "m"}, "above");
  for (double& end : pole.gap) f(end, kinds::kBody, "gap");
}
template <class F>
void eachNumber(Link& link, F&& f) {
  f(link.mhz, kinds::kMegahertz, "mhz");
  f(link.budget, kinds::kDecibels, "budget");
  f(link.delay, NumberKind{10000, 0, 60, "s"}, "delay");
}
template <class F>
void eachNumber(Fixture& fixture, F&& f) {
  eachNumber(fixture.pos, f, "pos");
  f(fixture.height, kinds::kHeight, "height");
  f(fixture.bearing, kinds::kBearing, "bearing");
  f(fixture.tilt, kinds::kTilt, "tilt");
  if (auto* beam = std::get_if<BeamOutput>(&fixture.output)) {
    f(beam->candela, kinds::kCandela, "output/candela");
    f(beam->beam, kinds::kBeam, "output/beam");
    f(beam->field, kinds::kBeam, "output/field");
  } else {
    f(std::get<IesOutput>(fixture.output).scale, kinds::kFactor, "output/scale");
  }
  for (LevelKey& key : fixture.level) {
    eachNumber(key.time, f);
    f(key.share, kinds::kShare, "level/share");
  }
}
template <class F>
void eachNumber(Beat& beat, F&& f) {
  f(beat.time, kinds::kDuration, "time");
}
template <class F>
void eachNumber(Clock& clock, F&& f) {
  f(clock.length, NumberKind{1000, 0.001, 86400, "s"}, "length");
  eachNumber(clock.timeOfDay, f, kinds::kTimeOfDay, "timeOfDay");
  eachNumber(clock.cycleMinutes, f, NumberKind{1000, 0.001, 10000, "min"}, "cycleMinutes");
}
template <class F>
void eachNumber(Site& site, F&& f) {
  f(site.latitude, NumberKind{kinds::kDegreesOnEarth.perUnit, -90, 90, "degrees"}, "latitude");
  f(site.longitude, kinds::kDegreesOnEarth, "longitude");
  f(site.utcOffset, NumberKind{100, -14, 14, "h"}, "utcOffset");
  f(site.north, kinds::kBearing, "north");
}

template <class F>
void eachNumber(Camera& camera, F&& f) {
  for (Mark& mark : camera.marks) eachNumber(mark, f);
  for (AimKey& key : camera.aims) {
    eachNumber(key.time, f);
    eachNumber(key.on, f);
    for (double& part : key.place) f(part, kinds::kInFrame, "aims/place");
  }
  for (double& side : camera.gate) f(side, kinds::kGate, "gate");
  f(camera.squeeze, NumberKind{10000, 0.25, 4, ""}, "squeeze");
  eachNumber(camera.aspect, f, NumberKind{10000, 0.2, 10, ""}, "aspect");
  f(camera.blurCircle, kinds::kBlurCircle, "blurCircle");
  f(camera.exposureIndex, kinds::kIndex, "exposureIndex");
  f(camera.shutterDeg, NumberKind{100, 0.1, 360, "degrees"}, "shutterDeg");
  f(camera.ndStops, kinds::kStops, "ndStops");
  for (DensityKey& key : camera.nd) {
    eachNumber(key.time, f);
    f(key.stops, kinds::kStops, "nd/stops");
  }
  f(camera.meter.constant, NumberKind{100, 1, 10000, ""}, "meter/constant");
  f(camera.rig.radius, kinds::kBody, "rig/radius");
  for (double& end : camera.rig.payload) f(end, kinds::kMass, "rig/payload");
  for (RigItem& item : camera.rig.items) f(item.kg, kinds::kMass, "rig/items/kg");
  for (CarriedBody& body : camera.bodies) {
    f(body.behind, kinds::kHeight, "bodies/behind");
    f(body.right, kinds::kHeight, "bodies/right");
  }
  if (!camera.cable) return;
  eachNumber(camera.cable->anchor, f, "cable/anchor");
  f(camera.cable->length, kinds::kSize, "cable/length");
}
template <class F>
void eachNumber(Lens& lens, F&& f) {
  for (double& end : lens.focal) f(end, kinds::kFocal, "focal");
  for (double& end : lens.stop) f(end, kinds::kStop, "stop");
  f(lens.closeFocus, kinds::kSize, "closeFocus");
  f(lens.pupilAhead, NumberKind{10000, -2, 2, "m"}, "pupilAhead");
  eachNumber(lens.transmission, f, kinds::kTransmission, "transmission");
  eachNumber(lens.breathing, f, kinds::kBreathing, "breathing");
  eachNumber(lens.balance, f, kinds::kBalance, "balance");
  for (FocusMark& mark : lens.focusMarks) {
    eachNumber(mark.distance, f, kinds::kSize, "focusMarks/distance");
    f(mark.deg, kinds::kBearing, "focusMarks/deg");
  }
  for (IrisMark& mark : lens.irisMarks) {
    f(mark.stop, kinds::kStop, "irisMarks/stop");
    f(mark.deg, kinds::kBearing, "irisMarks/deg");
  }
  for (ZoomMark& mark : lens.zoomMarks) {
    f(mark.focal, kinds::kFocal, "zoomMarks/focal");
    f(mark.deg, kinds::kBearing, "zoomMarks/deg");
  }
  f(lens.limits.focusDegPerSecond, kinds::kDegreesPerSecond, "limits/focusDegPerSecond");
  f(lens.limits.irisStopsPerSecond, NumberKind{1000, 0.001, 1000, "stops/s"}, "limits/irisStopsPerSecond");
  f(lens.limits.zoomPercentPerSecond, NumberKind{100, 0.01, 100000, "%/s"}, "limits/zoomPercentPerSecond");
}
template <class F>
void eachNumber(Wobble& wobble, F&& f) {
  f(wobble.taped, kinds::kWobble, "taped");
  f(wobble.walking, kinds::kWobble, "walking");
  f(wobble.untaped, kinds::kWobble, "untaped");
  f(wobble.operatorMoving, kinds::kWobble, "operatorMoving");
  f(wobble.operatorStill, kinds::kWobble, "operatorStill");
  f(wobble.dolly, kinds::kWobble, "dolly");
}
template <class F>
void eachNumber(Focus& focus, F&& f) {
  f(focus.blurShare, NumberKind{10000, 0.01, 1, ""}, "blurShare");
  for (FocusKey& key : focus.keys) {
    eachNumber(key.time, f);
    eachNumber(key.on, f);
  }
  for (HandPull& pull : focus.pulls) {
    eachNumber(pull.at, f, "pulls/at");
    f(pull.over, kinds::kDuration, "pulls/over");
    f(pull.distance, kinds::kSize, "pulls/distance");
  }
}
template <class F>
void eachNumber(Zoom& zoom, F&& f) {
  f(zoom.slackShare, kinds::kShare, "slackShare");
  for (ZoomKey& key : zoom.keys) {
    eachNumber(key.time, f);
    if (key.size.empty()) f(key.focal, kinds::kFocal, "keys/focal");
    eachNumber(key.of, f);
  }
}
template <class F>
void eachNumber(Iris& iris, F&& f) {
  f(iris.slackStops, kinds::kStops, "slackStops");
  for (IrisKey& key : iris.keys) {
    eachNumber(key.time, f);
    f(key.stop, kinds::kStop, "keys/stop");
  }
}
template <class F>
void eachNumber(SightRules& rules, F&& f) {
  f(rules.margin, NumberKind{100, 0, 90, "degrees"}, "margin");
  f(rules.early, kinds::kDuration, "early");
  f(rules.late, kinds::kDuration, "late");
  f(rules.radius, kinds::kBody, "radius");
  f(rules.height, kinds::kStature, "height");
  f(rules.cell, NumberKind{10000, 0.01, 5, "m"}, "cell");
}
template <class F>
void eachNumber(std::vector<Speech>& speech, F&& f) {
  for (Speech& line : speech) {
    eachNumber(line.from, f, "from");
    eachNumber(line.until, f, "until");
  }
}
template <class F>
void eachNumber(std::vector<Handover>& handovers, F&& f) {
  for (Handover& handover : handovers) {
    eachNumber(handover.at, f, "at");
    f(handover.over, kinds::kDuration, "over");
  }
}
template <class F>
void eachNumber(std::vector<Take>& takes, F&& f) {
  for (Take& take : takes) {
    for (auto& tap : take.beats) f(tap.second, kinds::kMoment, "beats");
    for (TakeNote& note : take.notes) f(note.at, kinds::kMoment, "notes/at");
  }
}

}  // namespace wend::plan
