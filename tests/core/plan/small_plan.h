/// A small plan with one of everything: what edits are tried on.
#pragma once

#include "core/plan/plan.h"
#include "core/plan/references.h"

namespace wend::plan::test {

inline Mark mark(Moment at, Point pos, std::optional<Moment> until = std::nullopt) {
  Mark made;
  made.at = std::move(at);
  made.pos = pos;
  made.until = std::move(until);
  return made;
}

inline Moment at(double seconds) {
  return {"", seconds};
}
inline Moment on(const std::string& beat, double plus = 0) {
  return {beat, plus};
}

inline void addBeats(Plan& plan) {
  const auto beat = [&](const char* id, const char* name, double time) {
    plan.beats.add({base::Id<Beat>(id), name, "", time, {}});
  };
  beat("b1", "start", 0);
  beat("b2", "door", 20);
  beat("b3", "window", 40);
}

inline void addSet(Plan& plan) {
  plan.set.rooms.add({base::Id<Room>("hall"), "hall", {{0, 0}, {10, 0}, {10, 8}, {0, 8}}, 0, 3, {}});
  plan.set.walls.add({base::Id<Wall>("w1"), "south", {{0, 0}, {10, 0}, {10, 8}}, 0.2, 0, 3, {}});
  Opening door;
  door.id = base::Id<Opening>("d1");
  door.name = "D1";
  door.wall = "w1";
  door.along = {2, 3};
  door.moves = LeafMoves{};
  door.open = {{{at(0), 0, Pace::even}, 0, "", "", {}}, {{on("b2"), 1, Pace::even}, 1, "D1 opens", "ad1", {}}};
  plan.set.openings.add(door);
  Piece bench;
  bench.id = base::Id<Piece>("bench");
  bench.shape = Outline{{{3, 3}, {5, 3}, {5, 4}, {3, 4}}};
  plan.set.pieces.add(bench);
  Piece mirror;
  mirror.id = base::Id<Piece>("m1");
  mirror.shape = Line{{{9, 2}, {9, 4}}};
  mirror.surface = Surface::mirror;
  mirror.reflects = WallSide::left;
  plan.set.pieces.add(mirror);
  Piece column;
  column.id = base::Id<Piece>("column");
  column.shape = Disc{{7, 6}, 0.3};
  plan.set.pieces.add(column);
  Area pool;
  pool.id = base::Id<Area>("pool");
  pool.shape = Disc{{4, 4}, 2};
  pool.use = {AreaUse::light};
  pool.states = {{{at(0), 0, Pace::even}, "", "", {{{4, 4}, 2.8, {}}}, {}},
                 {{on("b2", 1), 0, Pace::even}, "LIGHT 1", "gaffer", {{{4, 4}, 4, {}}}, {}}};
  plan.set.areas.add(pool);
}

inline void addPeople(Plan& plan) {
  Performer ilse;
  ilse.id = base::Id<Performer>("ilse");
  ilse.name = "ILSE";
  ilse.letter = "A";
  ilse.marks = {mark(at(0), {1, 1}, at(5)), mark(on("b2", -2), {4, 5}), mark(at(30), {6, 5}, on("b3")),
                mark(at(50), {8, 7})};
  plan.performers.add(ilse);
  Performer tom;
  tom.id = base::Id<Performer>("tom");
  tom.name = "TOM";
  tom.marks = {mark(at(0), {2, 6})};
  plan.performers.add(tom);
  Prop hands;
  hands.id = base::Id<Prop>("hands");
  hands.track = {{at(0), {0, 2}, "", 1, {}}, {on("b2"), {}, "ilse", 1.1, {}}};
  plan.props.add(hands);
  plan.shelters.add({base::Id<Shelter>("KA"), "alley", {-3, -4}, 0.8, 4, {}});
  plan.gear.add({base::Id<Gear>("g1"), "cart", {-2, -5}, 0.5, 1.4, {}});
  Crew ac;
  ac.id = base::Id<Crew>("ac1");
  ac.role = "first assistant";
  Mark sheltered = mark(at(0), {}, at(10));
  sheltered.shelter = "KA";
  ac.marks = {sheltered, mark(at(20), {-3, -1})};
  ac.needs = {{Sees{"ilse"}, on("b1"), on("b3"), {}}, {Stays{"KA"}, at(0), at(10), {}}};
  plan.crew.add(ac);
  Crew op;
  op.id = base::Id<Crew>("op");
  op.role = "operator";
  plan.crew.add(op);
}

/// A full turn about (4.5, 3.7), a quarter turn, a straight leg round a corner, and a smooth one.
inline void addCamera(Plan& plan) {
  const auto place = [&](const char* id, Moment time, Point pos) {
    Mark made = mark(std::move(time), pos);
    made.id = id;
    made.height = 1.5;
    plan.camera.marks.push_back(made);
  };
  place("c0", at(0), {4.5, 1.4});
  place("c1", at(20), {4.5, 1.4});
  place("c2", at(30), {2.2, 3.7});
  place("c3", on("b3"), {1, 7});
  place("c4", at(55), {8, 7.5});
  auto& marks = plan.camera.marks;
  marks[0].leg.shape = marks[1].leg.shape = LegShape::arc;
  marks[0].leg.centre = marks[1].leg.centre = {4.5, 3.7};
  marks[0].leg.sweep = -360;
  marks[1].leg.sweep = 90;
  marks[2].leg.via = {{1, 3.7}};
  marks[3].leg.shape = LegShape::smooth;
  plan.camera.bodies = {{"op", 0.5, 0, {}}};
}

inline void addKeys(Plan& plan) {
  AimKey first, second;
  second.time = {on("b2"), 2, Pace::eased};
  second.on = OnPerformer{"ilse"};
  plan.camera.aims = {first, second};
  plan.focus.keys = {{{at(0), 0, Pace::even}, OnPerformer{"ilse"}, {}},
                     {{on("b2"), 3, Pace::even}, OnProp{"hands"}, {}},
                     {{at(45), 2, Pace::even}, OnSplit{{"ilse", "tom"}}, {}}};
  plan.zoom.keys = {{{at(0), 0, Pace::even}, 32, "", {}, {}},
                    {{at(25), 5, Pace::even}, 0, "medium", OnPerformer{"ilse"}, {}}};
  plan.iris.keys = {{{at(0), 0, Pace::even}, 2.8, {}}, {{on("b2"), 1.5, Pace::even}, 4, {}}};
  Fixture pendant;
  pendant.id = base::Id<Fixture>("f1");
  pendant.pos = {4, 4};
  pendant.level = {{{at(0), 0, Pace::even}, 0, "", "", {}}, {{on("b2"), 0, Pace::even}, 1, "", "", {}}};
  plan.fixtures.add(pendant);
}

inline Plan smallPlan() {
  Plan plan;
  plan.title = "Small";
  addBeats(plan);
  addSet(plan);
  addPeople(plan);
  addCamera(plan);
  addKeys(plan);
  plan.lens = Lens{};
  plan.lens->focal = {24, 70};
  plan.speech = {{"ilse", on("b2"), on("b2", 4), "Come in.", {}}};
  plan.handovers = {{"focus", "ac1", "op", on("b3"), 1, {}}};
  plan.accepted = {{"exposure/ilse/hall/b1/1", "DP", "night", {}}};
  Take take;
  take.beats = {{"b1", 0.4}, {"b2", 21.0}};
  plan.takes = {take};
  return plan;
}

/// The same with what is laid, held and sent, and a bench that is carried away.
inline Plan equippedPlan() {
  Plan plan = smallPlan();
  Piece bench = plan.set.pieces[0];
  bench.moved = {{{at(0), 0, Pace::even}, {}, 0, "", "", {}},
                 {{on("b2", 1), 4, Pace::eased}, {2, 0}, 90, "bench away", "props", {}}};
  plan.set.pieces.replace(0, bench);
  plan.camera.nd = {{{at(0), 0, Pace::even}, 1, {}}, {{on("b2"), 3, Pace::even}, 2, {}}};
  plan.cables.add({base::Id<Cable>("k1"), "mains", {{0, 0}, {3, 0}}, 0.02, on("b1"), on("b3"), {}});
  plan.poles.add({base::Id<Pole>("boom"), "boom", "ac1", 3, 1.45, 0.15, {0.4, 0.9}, {}});
  plan.links.add({base::Id<Link>("l1"), "focus", LinkKind::control, "camera", "g1", 2400, 95, 0, {}});
  Crew ac = plan.crew[0];
  ac.marks[0].id = "k0";
  ac.needs.push_back({Holds{"l1"}, std::nullopt, std::nullopt, {}});
  ac.needs.push_back({Reaches{"boom"}, std::nullopt, std::nullopt, {}});
  ac.needs.push_back({Sees{kFocusSubject}, std::nullopt, std::nullopt, {}});
  plan.crew.replace(0, ac);
  plan.speech[0].pole = "boom";
  plan.lens->focusMarks = {{std::nullopt, 0}, {2, 100}, {0.6, 300}};
  return plan;
}

inline MarkRef ilse(std::size_t index) {
  return {Owner::performer, "ilse", index};
}

}  // namespace wend::plan::test
