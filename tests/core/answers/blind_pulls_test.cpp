// Pulls by somebody behind a wall, of plans written by hand and of First Batch, whose plan says where its walls stand.
#include "core/answers/blind_pulls.h"

#include "tests/core/answers/small_plan.h"
#include "tests/samples.h"

namespace wend::answers {
namespace {

snags::Move pull(double from, double until, snags::Move::Axis axis = snags::Move::Axis::focus) {
  snags::Move move;
  move.axis = axis;
  move.from = from;
  move.until = until;
  return move;
}

/// The focus is on NORA, three metres north of the camera; an assistant stands two metres to its right.
plan::Plan withAssistant(const char* role = "first assistant camera") {
  plan::Plan plan = smallPlan();
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan::Crew ac = standing("ac", {2, 0});
  ac.role = role;
  ac.marks[0].until = plan::Moment{"", 10};
  plan.crew.add(ac);
  return plan;
}

/// A wall a metre in front of the assistant, from floor to `top`.
plan::Plan walled(double top = 3) {
  plan::Plan plan = withAssistant();
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w");
  wall.points = {{0.5, 1}, {4, 1}};
  wall.top = top;
  plan.set.walls.add(wall);
  return plan;
}

std::vector<BlindPull> pullsOf(const plan::Plan& plan, const std::vector<snags::Move>& moves) {
  return blindPulls(*takeOf(plan), moves);
}

TEST(BlindPulls, AreThoseWithAWallInBetween) {
  const auto blind = pullsOf(walled(), {pull(1, 2, snags::Move::Axis::zoom), pull(2, 4)});
  ASSERT_EQ(blind.size(), 1u);
  EXPECT_EQ(blind[0].move, 1u);
  EXPECT_EQ(blind[0].who, "ac");
  EXPECT_EQ(blind[0].pos, (Point{2, 0}));
  EXPECT_NEAR(blind[0].blind, 2, 1e-9);
  EXPECT_TRUE(pullsOf(withAssistant(), {pull(2, 4)}).empty());
  EXPECT_TRUE(pullsOf(walled(1), {pull(2, 4)}).empty()) << "they look over it";
}

// The wall is 0.1 m thick, so that the corner of its end nearest to the assistant at 2, 0 is 0.5, 0.95. The line past it
// meets NORA's way, y = 3, at x = 2 - 1.5 * 3 / 0.95; she goes half a metre a second.
TEST(BlindPulls, CountTheSecondsUntilTheSubjectComesOutOfCover) {
  plan::Plan plan = walled();
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {0, 3}), markAt("n2", {-5, 3}, 10)};
  plan.performers.replace(0, nora);
  const auto blind = pullsOf(plan, {pull(2, 8)});
  ASSERT_EQ(blind.size(), 1u);
  const double comesOut = (1.5 * 3 / 0.95 - 2) / 0.5;
  EXPECT_NEAR(blind[0].blind, comesOut - 2, 0.01);
  EXPECT_TRUE(pullsOf(plan, {pull(6, 8)}).empty());
}

TEST(BlindPulls, AreNobodysWhereNobodyPullsOrNobodyKnowsWhereTheyAre) {
  plan::Plan plan = walled();
  plan::Crew ac = plan.crew[0];
  ac.role = "boom operator";
  plan.crew.replace(0, ac);
  EXPECT_TRUE(pullsOf(plan, {pull(2, 4)}).empty());
  ac.role = "first assistant camera";
  ac.marks.clear();
  plan.crew.replace(0, ac);
  EXPECT_TRUE(pullsOf(plan, {pull(2, 4)}).empty());
  EXPECT_TRUE(pullsOf(walled(), {pull(2, 2)}).empty()) << "a cut";
}

TEST(BlindPullsOfFirstBatch, AreThoseFromTheDryStore) {
  const auto answers = *answersOf(takeOf(samplePlan("first-batch.wend")));
  const auto blind = blindPulls(*answers->take, answers->evidence->moves);
  std::size_t fromStore = 0;
  for (const auto& pull : blind) fromStore += geometry::distance(pull.pos, Point{7.2, -1.2}) <= 0.8;
  // Three pulls start while the assistant is in KB, 68.5 s to 100.5 s, and walls stand between it and all rooms.
  EXPECT_EQ(fromStore, 3u);
}

}  // namespace
}  // namespace wend::answers
