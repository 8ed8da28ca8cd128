// Lines of speech of a whole plan under its poles.
#include "core/answers/whole_take.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

plan::Pole poleOf(const std::string& id, const std::string& crew) {
  plan::Pole pole;
  pole.id = base::Id<plan::Pole>(id);
  pole.crew = crew;
  return pole;
}

/// NORA speaks from 2 to 4 s; the holder stands 2 m to her right.
plan::Plan spoken() {
  plan::Plan plan = smallPlan();
  plan.crew.add(standing("boom", {2, 3}));
  plan.poles.add(poleOf("p1", "boom"));
  plan.speech.push_back({"nora", {"", 2}, {"", 4}, "Snow.", "", {}});
  return plan;
}

snags::BoomLine lineOf(const plan::Plan& plan) {
  const auto take = takeOf(plan);
  const auto lines = boomLines(*take, samplesOf(*take));
  EXPECT_EQ(lines.size(), 1u);
  EXPECT_FALSE(lines.at(0).at.empty());
  return lines.at(0);
}

TEST(BoomLines, HoldTheMicrophoneOverTheTopOfTheFrame) {
  const auto line = lineOf(spoken());
  EXPECT_EQ(line.pole, "p1");
  EXPECT_EQ(line.at.size(), 49u) << "two seconds at 24 frames, both ends";
  const auto take = takeOf(spoken());
  const double mouth = take->people().performerAt(0, 2).eyes - 0.08;
  EXPECT_NEAR(*line.at[0].top, 1.5 + 3 * 0.2, 1e-9);
  EXPECT_NEAR(*line.at[0].gap, 2.1 + 0.15 - mouth, 1e-9);
  EXPECT_NEAR(*line.at[0].reach, 2, 1e-9);
  EXPECT_FALSE(line.at[0].walled);
}

TEST(BoomLines, ComeCloseToWhoIsOutOfThePicture) {
  plan::Plan plan = spoken();
  plan.camera.aims[0].on = plan::OnBearing{180, 0};
  const auto line = lineOf(plan);
  EXPECT_FALSE(line.at[0].top);
  EXPECT_NEAR(*line.at[0].gap, 0.4, 1e-9);
}

TEST(BoomLines, KnowNoGapWithoutALens) {
  plan::Plan plan = spoken();
  plan.lens.reset();
  EXPECT_FALSE(lineOf(plan).at[0].gap);
  EXPECT_TRUE(lineOf(plan).at[0].reach);
}

TEST(BoomLines, TakeThePoleThatLeavesLeastUndone) {
  plan::Plan plan = spoken();
  plan.crew.add(standing("second", {-1, 3}));
  plan.poles.add(poleOf("p2", "second"));
  EXPECT_EQ(lineOf(plan).pole, "p2") << "both reach, it is nearer";
  plan.speech[0].pole = "p1";
  EXPECT_EQ(lineOf(plan).pole, "p1") << "the plan says so";
}

TEST(BoomLines, FollowAHandoverOfTheBoom) {
  plan::Plan plan = spoken();
  plan.crew.add(standing("second", {-1, 3}));
  plan.handovers.push_back({"boom", "boom", "second", {"", 3}, 0, {}});
  const auto line = lineOf(plan);
  EXPECT_NEAR(*line.at.front().reach, 2, 1e-9);
  EXPECT_NEAR(*line.at.back().reach, 1, 1e-9);
}

TEST(BoomLines, MeetLampsAndWalls) {
  plan::Plan plan = spoken();
  plan::Fixture lamp;
  lamp.id = base::Id<plan::Fixture>("f1");
  lamp.pos = {1, 3.1};
  lamp.height = 1.85;
  plan.fixtures.add(lamp);
  plan::Wall wall;
  wall.id = base::Id<plan::Wall>("w1");
  wall.points = {{1.5, 2}, {1.5, 4}};
  plan.set.walls.add(wall);
  const auto line = lineOf(plan);
  EXPECT_EQ(line.at[0].lamp, "f1");
  EXPECT_NEAR(line.at[0].lampMetres, 0.1, 0.01);
  EXPECT_TRUE(line.at[0].walled);
}

TEST(BoomLines, AreNoneWithoutPoles) {
  plan::Plan plan = smallPlan();
  plan.speech.push_back({"nora", {"", 2}, {"", 4}, "Snow.", "", {}});
  const auto take = takeOf(plan);
  EXPECT_TRUE(boomLines(*take, samplesOf(*take)).empty());
}

}  // namespace
}  // namespace wend::answers
