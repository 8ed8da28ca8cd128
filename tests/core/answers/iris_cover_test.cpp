// A planned iris goes where a doorway hides it.
#include "core/answers/iris_cover.h"

#include <cmath>

#include "core/answers/covers.h"
#include "core/answers/move_cover.h"
#include "core/answers/replanned.h"
#include "core/answers/whole_take.h"
#include "tests/core/answers/first_batch.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

plan::AreaState reading(double at, double stops) {
  plan::AreaState state;
  state.time.at = {"", at};
  state.readings = {{{0, 3}, tNumberOf(stops), {}}};
  return state;
}

/// NORA's face needs 0.45 stop more at 4 s and again at 12 s, so that one move would do anywhere between. She walks
/// away north from 9 s on and is 2.5 m from the camera, which stands, at 10.06 s.
plan::Plan brightening() {
  plan::Plan plan = smallPlan();
  plan.clock.length = 16;
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {0, 1.6}), markAt("n2", {0, 5}, 13)};
  nora.marks[0].until = plan::Moment{"", 9};
  plan.performers.replace(0, nora);
  plan::Area floor;
  floor.id = base::Id<plan::Area>("floor");
  floor.shape = plan::Disc{{0, 3}, 20};
  floor.states = {reading(0, 4), reading(4, 4.45), reading(12, 4.9)};
  plan.set.areas.add(floor);
  return plan;
}

/// A doorway that she passes at 10.06 s: it covers from 6.06 s on.
plan::Plan throughADoorway() {
  plan::Plan plan = brightening();
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w");
  wall.points = {{-5, 2.5}, {5, 2.5}};
  plan.set.walls.add(wall);
  plan::Opening door;
  door.id = base::Id<plan::Opening>("d");
  door.name = "DOOR";
  door.wall = "w";
  door.along = {4.4, 5.6};
  plan.set.openings.add(door);
  return plan;
}

TEST(IrisUnderCover, LiesInTheDoorway) {
  const auto behind = takeOf(throughADoorway());
  ASSERT_EQ(behind->lens().iris().moves.size(), 1u) << "no move more";
  const auto& covered = behind->lens().iris();
  const pulls::Track plain =
      pulls::fewestMoves(withinLens(behind->lens().irisTube(), behind->plan()), irisRules(behind->plan()));
  ASSERT_EQ(plain.moves.size(), 1u);
  EXPECT_LT(plain.moves[0].until, 6) << "else the doorway would hide it as it is";
  EXPECT_GE(covered.moves[0].from, 10.06 - kDoorwayLead - 0.05);
  // Who passes is looked at every quarter of a second.
  EXPECT_LE(covered.moves[0].until, 10.06 + 0.25 + kDoorwayLinger + 0.05);
  EXPECT_EQ(covered.leastRamps, plain.leastRamps);
  EXPECT_EQ(covered.ramps(), plain.ramps());
  EXPECT_TRUE(covered.unmet.empty());
  EXPECT_TRUE(pulls::outside(covered, withinLens(behind->lens().irisTube(), behind->plan())).empty());
}

TEST(IrisUnderCover, IsSlowEnoughForAnyFrameWhereNothingCovers) {
  const auto take = takeOf(brightening());
  const auto samples = samplesOf(*take);
  const pulls::Track plain =
      pulls::fewestMoves(withinLens(take->lens().irisTube(), take->plan()), irisRules(take->plan()));
  ASSERT_EQ(plain.moves.size(), 1u);
  EXPECT_GT(plain.moves[0].peakRate, 0.05) << "what nobody notices, common practice, no source";
  for (const auto& move : movesOf(*take, samples, coversOf(*take, samples)))
    if (move.axis == snags::Move::Axis::iris) {
      EXPECT_LE(move.peakStopsPerSecond, 0.05);
      EXPECT_LE(move.exposed->worst, 1);
    }
}

TEST(IrisUnderCover, HidesByTheEvidenceToo) {
  const auto take = takeOf(throughADoorway());
  const auto samples = samplesOf(*take);
  std::size_t moves = 0;
  for (const auto& move : movesOf(*take, samples, coversOf(*take, samples))) {
    if (move.axis != snags::Move::Axis::iris) continue;
    ++moves;
    ASSERT_TRUE(move.exposed);
    EXPECT_LE(move.exposed->worst, 1) << "at " << move.exposed->at;
    EXPECT_NE(move.cover.find("DOOR"), std::string::npos) << move.cover;
  }
  EXPECT_EQ(moves, 1u);
}

TEST(IrisUnderCover, StaysWhereAFaceWouldGetFurtherOff) {
  // OTTO, beside NORA, needs three stops less than she does: he is under, and any stop more puts him further under.
  plan::Plan plan = throughADoorway();
  plan::Performer otto = plan.performers[0];
  otto.id = base::Id<plan::Performer>("otto");
  otto.marks = {markAt("o1", {0.7, 2.2})};
  plan.performers.add(otto);
  plan::Area pool;
  pool.id = base::Id<plan::Area>("pool");
  pool.shape = plan::Disc{{0.7, 2.2}, 0.2};
  pool.states = {reading(0, 1)};
  plan.set.areas.add(pool);
  EXPECT_LT(takeOf(plan)->lens().iris().moves.at(0).until, 6) << "it stays as planned";
  plan.thresholds["exposure"] = 10;
  EXPECT_GT(takeOf(plan)->lens().iris().moves.at(0).from, 6) << "where he may be as far off as that";
}

TEST(IrisUnderCover, StaysThereWhenTakenInHand) {
  const auto take = takeOf(throughADoorway());
  const pulls::Move& planned = take->lens().iris().moves.at(0);
  const auto taken = inHand(*take, plan::Axis::iris);
  ASSERT_TRUE(taken.ok());
  ASSERT_EQ(taken->iris.keys.size(), 2u);
  EXPECT_NEAR(taken->iris.keys[1].time.at.seconds, planned.from, 0.1);
  EXPECT_NEAR(taken->iris.keys[1].time.over, planned.until - planned.from, 0.1);
}

TEST(IrisUnderCover, LeavesAnIrisSetByHandAlone) {
  plan::Plan plan = throughADoorway();
  plan.iris.keys.resize(2);
  plan.iris.keys[0].stop = 4;
  plan.iris.keys[1].time = {{"", 9}, 2, plan::Pace::even};
  plan.iris.keys[1].stop = 4.8;
  EXPECT_FALSE(irisUnderCover(*takeOf(plan)));
}

TEST(IrisUnderCover, CostsNoMoveWheneverTheDoorwayIsPassed) {
  std::size_t laid = 0;
  for (double leaves = 1; leaves < 14; leaves += 0.7) {
    plan::Plan plan = throughADoorway();
    plan::Performer nora = plan.performers[0];
    nora.marks[0].until = plan::Moment{"", leaves};
    nora.marks[1].at.seconds = leaves + 1.9;
    plan.performers.replace(0, nora);
    const auto take = takeOf(plan);
    const pulls::Tube tube = withinLens(take->lens().irisTube(), plan);
    const pulls::Track plain = pulls::fewestMoves(tube, irisRules(plan));
    const pulls::Track& covered = take->lens().iris();
    ASSERT_EQ(covered.moves.size(), plain.moves.size()) << leaves;
    EXPECT_EQ(covered.ramps(), plain.ramps()) << leaves;
    EXPECT_TRUE(pulls::outside(covered, tube).empty()) << leaves;
    EXPECT_LE(covered.moves[0].peakRate, irisRules(plan).rate * (1 + 1e-9)) << leaves;
    if (covered.knots == plain.knots) continue;
    ++laid;
    const auto samples = samplesOf(*take);
    for (const auto& move : movesOf(*take, samples, coversOf(*take, samples)))
      if (move.axis == snags::Move::Axis::iris) {
        EXPECT_LE(move.exposed->worst, 1 + 1e-6) << leaves;
      }
  }
  EXPECT_GT(laid, 5u) << "else this test says little";
}

/// The light on NORA rises by 0.7 stop from 5 to 8 s, while the camera creeps: no value before and no value
/// after would do at one instant, so that a ramp has to run along the tube.
plan::Plan rising() {
  plan::Plan plan = brightening();
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {0, 3})};
  plan.performers.replace(0, nora);
  plan.camera.marks = {markAt("c1", {0, -2}), markAt("c2", {1.2, -2}, 16)};
  for (auto& mark : plan.camera.marks) mark.height = 1.5;
  plan::Area floor = plan.set.areas[0];
  floor.states = {reading(0, 4), reading(5, 4.7)};
  floor.states[1].time.over = 3;
  plan.set.areas.replace(0, floor);
  plan.iris.slackStops = 0.15;
  return plan;
}

TEST(IrisUnderCover, RunsAlongASlopingSlackWhereThatHides) {
  const auto take = takeOf(rising());
  const pulls::Track& iris = take->lens().iris();
  ASSERT_EQ(iris.moves.size(), 1u);
  EXPECT_LE(iris.moves[0].peakRate, 0.25 + 1e-9) << "what hides in a moving frame";
  EXPECT_TRUE(pulls::outside(iris, withinLens(take->lens().irisTube(), take->plan())).empty());
  const auto samples = samplesOf(*take);
  for (const auto& move : movesOf(*take, samples, coversOf(*take, samples)))
    if (move.axis == snags::Move::Axis::iris) {
      EXPECT_LE(move.exposed->worst, 1);
      EXPECT_NEAR(move.peakStopsPerSecond, iris.moves[0].peakRate, 1e-9) << "not counted in engraved thirds";
    }
}

TEST(CoversOfAStretch, AreThoseOfTheTakeCutOff) {
  const Take& take = *firstBatch().take;
  const double from = 84, until = 120;
  std::vector<Instant> stretch;
  for (const auto& sample : firstBatch().evidence->samples)
    if (sample.time >= from && sample.time <= until) stretch.push_back(sample);
  const auto covers = coversOf(take, stretch);
  std::size_t compared = 0;
  for (const auto& whole : firstBatch().evidence->covers) {
    if (whole.span.until < from + 0.1 || whole.span.from > until - 0.1) continue;
    ++compared;
    EXPECT_TRUE(std::any_of(covers.begin(), covers.end(),
                            [&](const pulls::CoverSpan& c) {
                              const double frame = 1 / take.rate();
                              return c.kind == whole.kind && c.by == whole.by &&
                                     std::abs(std::max(c.span.from, from) - std::max(whole.span.from, from)) <= frame &&
                                     std::abs(std::min(c.span.until, until) - std::min(whole.span.until, until)) <=
                                         frame;
                            }))
        << wordsOf(whole) << " " << whole.span.from << " " << whole.span.until;
  }
  EXPECT_GT(compared, 5u);
}

}  // namespace
}  // namespace wend::answers
