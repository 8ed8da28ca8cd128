#include "core/file/plan_writer.h"

#include <gtest/gtest.h>

#include "core/plan/numbers.h"
#include "tests/core/file/plan_text.h"

namespace wend::file {
namespace {

/// Laws (1) and (2): what was written reads back equal and writes the same bytes.
void expectRoundTrip(const plan::Plan& plan) {
  const std::string text = writePlan(plan);
  const auto back = readPlan(text);
  ASSERT_TRUE(back.ok()) << base::toText(back.problems().front()) << "\n" << text;
  EXPECT_TRUE(back->plan == plan) << text;
  EXPECT_EQ(writePlan(back->plan), text);
}

TEST(PlanWriter, ReadsBackEveryKeyOfTheFormat) {
  expectRoundTrip(planOf(kEveryKey));
  expectRoundTrip(plan::Plan());
}

TEST(PlanWriter, ReadsBackEverySample) {
  const auto samples = filesOf(sampleFolder(), ".wend");
  ASSERT_GE(samples.size(), 2u);
  for (const auto& sample : samples) {
    SCOPED_TRACE(sample);
    expectRoundTrip(planOf(fileText(sample)));
  }
}

TEST(PlanWriter, LosesNoValueOfTheEveryKeyPlan) {
  // Each number and word of the source is somewhere in what was written; only layout and spelling of numbers change.
  const std::string text = writePlan(planOf(kEveryKey));
  for (const char* part : {"30000, 1001",
                           "\"dropFrame\": true",
                           "\"06:14:00.250\"",
                           "\"drawings/hall.png\"",
                           "[\"06:14:30\", 11]",
                           "[\"05:50\", 3.14, {\"kelvin\": 9500}]",
                           "{\"beat\": \"b2\", \"plus\": -0.5}",
                           "\"until\": \"end\"",
                           "{\"distance\": null, \"deg\": 0}",
                           "\"sweep\": -360",
                           "\"expose\": {\"performer\": \"bo\"}",
                           "\"ies\": \"lamps/wide.ies\"",
                           "\"posture\": \"crouch\"",
                           "\"pan\": {\"share\": 1.1}",
                           "\"beats\": {\"b1\": 2.4, \"end\": 171.2}",
                           "\"aspect\": 2.39",
                           "\"date\": \"2031-06-21\"",
                           "\"transmission\": [[24, 0.9], [50, 0.9], [70, 0.8]]",
                           "\"breathing\": 0.05",
                           "\"balance\": [[24, 0], [70, 0.006]]",
                           "\"offset\": [2, 1], \"turn\": -90",
                           "\"sees\": \"subject\"",
                           "\"holds\": \"l1\"",
                           "\"reaches\": \"boom\"",
                           "\"from\": \"camera\"",
                           "\"gap\": [0.3, 1]",
                           "\"sizes\": {\"knees\": 0.75, \"medium\": 0.6}",
                           "\"cable\": {\"anchor\": [8, -1], \"length\": 25}"})
    EXPECT_NE(text.find(part), std::string::npos) << part;
}

TEST(PlanWriter, LeavesOutDefaults) {
  EXPECT_EQ(writePlan(plan::Plan()),
            "{\n  \"format\": \"wend-plan\",\n  \"version\": 1,\n  \"clock\": {},\n  \"camera\": {\"marks\": []}\n}\n");
}

TEST(PlanWriter, GivesEveryMarkAndKeyALine) {
  const plan::Plan plan = planOf(kEveryKey);
  const std::string text = writePlan(plan);
  EXPECT_NE(text.find("\n        {\"at\": \"b2\", \"until\": \"end\", \"pos\": [3, 5], \"posture\": \"kneel\"}\n"),
            std::string::npos)
      << text;
  EXPECT_NE(text.find("\n      {\"at\": 9, \"over\": 2, \"on\": {\"travel\": 180, \"tilt\": 2}}\n"), std::string::npos)
      << text;
}

TEST(PlanWriter, ChangesOneLineForOneMark) {
  plan::Plan plan = planOf(fileText(sampleFolder() / "first-batch.wend"));
  const std::string before = writePlan(plan);
  ASSERT_GT(plan.camera.marks.size(), 3u);
  plan.camera.marks[2].pos.x += 0.25;
  const std::string after = writePlan(plan);
  const auto [left, right] = std::mismatch(before.begin(), before.end(), after.begin(), after.end());
  const auto lineEnd = std::find(left, before.end(), '\n');
  const auto otherEnd = std::find(right, after.end(), '\n');
  EXPECT_EQ(std::string(lineEnd, before.end()), std::string(otherEnd, after.end()));
}

TEST(PlanWriter, KeepsUnknownKeysWithOrderAndNumberText) {
  const std::string json = planWith(
      R"("zeta": {"b": 1.50, "a": [1e2, -0, 123456789012345678901234567890, "\u00e9"]}, "alpha": null,
         "set": {"rooms": [{"id": "r", "outline": [[0, 0], [1, 0], [1, 1]], "colour": "red", "a/b~c": 1}], "hue": {} })");
  const plan::Plan plan = planOf(json);
  const std::string text = writePlan(plan);
  EXPECT_NE(text.find("\"zeta\": {\"b\": 1.50, \"a\": [1e2, -0, 123456789012345678901234567890, \"\\u00e9\"]},\n"
                      "  \"alpha\": null\n}"),
            std::string::npos)
      << text;
  EXPECT_NE(text.find("\"colour\": \"red\", \"a/b~c\": 1}"), std::string::npos) << text;
  EXPECT_NE(text.find("\"hue\": {}"), std::string::npos) << text;
  expectRoundTrip(plan);
}

TEST(PlanWriter, KeepsUnknownKeysInsideSmallObjects) {
  const std::string json = planWith(
      R"("beats": [{"id": "b", "time": 3}], "display": {"length": "m", "area": "m2"}, "thresholds": {"a/b": {"share": 2, "why": "x"}},
         "set": {"pieces": [{"id": "p", "disc": {"centre": [0, 0], "radius": 1, "tone": 1}}]},
         "performers": [{"id": "x"}], "iris": {"expose": {"follow": "focus", "soft": 1}},
         "fixtures": [{"id": "f", "pos": [0, 0], "output": {"candela": 9, "colour": 3200}}],
         "takes": [{"number": 1, "notes": [{"at": 1, "who": "DP"}]}])",
      R"("marks": [{"at": {"beat": "b", "slack": 1}, "pos": [0, 0], "leg": {"ease": 2}}], "aims": [{"at": 0, "on": {"performer": "x", "eye": "left"}}])");
  const plan::Plan plan = planOf(json);
  const std::string text = writePlan(plan);
  for (const char* part :
       {"\"display\": {\"area\": \"m2\"}", "\"a/b\": {\"share\": 2, \"why\": \"x\"}", "\"radius\": 1, \"tone\": 1}",
        "\"expose\": {\"follow\": \"focus\", \"soft\": 1}", "{\"candela\": 9, \"colour\": 3200}",
        "{\"at\": 1, \"who\": \"DP\"}", "{\"beat\": \"b\", \"slack\": 1}", "\"leg\": {\"ease\": 2}",
        "{\"performer\": \"x\", \"eye\": \"left\"}"})
    EXPECT_NE(text.find(part), std::string::npos) << part << "\n" << text;
  expectRoundTrip(plan);
}

TEST(PlanWriter, WritesTheSameBytesAfterASaveWithoutAnEdit) {
  for (const auto& sample : filesOf(sampleFolder(), ".wend")) {
    const std::string once = writePlan(planOf(fileText(sample)));
    EXPECT_EQ(writePlan(planOf(once)), once) << sample;
  }
}

TEST(PlanWriter, KeepsEveryCharacterOfText) {
  plan::Plan plan;
  for (char c = 1; c < 0x7F; ++c) plan.title += c;
  plan.notes = std::string("a\0b", 3) + "\u00e9\u221e\U0001F600";
  expectRoundTrip(plan);
}

TEST(PlanWriter, KeepsAwkwardNumbersToTheBit) {
  plan::Plan plan;
  for (const double x : {0.1, 1.0 / 3, 1e-300, -0.0, 5e-324, 9999.999999999998}) {
    plan.camera.marks = {plan::Mark()};
    plan.camera.marks[0].pos = {x, -x};
    expectRoundTrip(plan);
  }
}

/// Puts the k-th number of the part to an end of what an edit allows it; false when there is none.
template <class Part>
bool atAnEnd(Part& part, int k, bool most) {
  int index = 0;
  plan::eachNumber(part, [&](double& value, const plan::NumberKind& kind, const char*) {
    if (index++ == k) value = most ? kind.most : kind.least;
  });
  return k < index;
}

/// The reader's ranges hold everything an edit may make: for each number of `part` alone, both ends are read back or
/// refused for an order (a top below its bottom), never for the range of the number itself.
template <class Part, class Put>
void expectReadableEnds(const Part& part, Put put) {
  for (int k = 0;; ++k) {
    for (const bool most : {false, true}) {
      Part changed = part;
      if (!atAnEnd(changed, k, most)) return;
      plan::Plan plan = planOf(kEveryKey);
      put(plan, changed);
      const auto back = readPlan(writePlan(plan));
      if (back.ok()) continue;
      for (const auto& problem : back.problems())
        EXPECT_EQ(problem.expected.find("a number"), std::string::npos) << base::toText(problem);
    }
  }
}

TEST(PlanWriter, WritesOnlyNumbersThatTheReaderTakes) {
  const plan::Plan plan = planOf(kEveryKey);
  expectReadableEnds(plan.camera, [](auto& p, auto& part) { p.camera = part; });
  expectReadableEnds(*plan.lens, [](auto& p, auto& part) { p.lens = part; });
  expectReadableEnds(plan.wobble, [](auto& p, auto& part) { p.wobble = part; });
  expectReadableEnds(plan.focus, [](auto& p, auto& part) { p.focus = part; });
  expectReadableEnds(plan.zoom, [](auto& p, auto& part) { p.zoom = part; });
  expectReadableEnds(plan.iris, [](auto& p, auto& part) { p.iris = part; });
  expectReadableEnds(plan.sightRules, [](auto& p, auto& part) { p.sightRules = part; });
  expectReadableEnds(plan.clock, [](auto& p, auto& part) { p.clock = part; });
  expectReadableEnds(plan.set.rooms[0], [](auto& p, auto& part) { p.set.rooms.replace(0, part); });
  expectReadableEnds(plan.set.walls[0], [](auto& p, auto& part) { p.set.walls.replace(0, part); });
  expectReadableEnds(plan.set.openings[0], [](auto& p, auto& part) { p.set.openings.replace(0, part); });
  for (std::size_t i = 0; i < plan.set.pieces.size(); ++i)
    expectReadableEnds(plan.set.pieces[i], [i](auto& p, auto& part) { p.set.pieces.replace(i, part); });
  for (std::size_t i = 0; i < plan.set.areas.size(); ++i)
    expectReadableEnds(plan.set.areas[i], [i](auto& p, auto& part) { p.set.areas.replace(i, part); });
  expectReadableEnds(plan.performers[0], [](auto& p, auto& part) { p.performers.replace(0, part); });
  expectReadableEnds(plan.props[0], [](auto& p, auto& part) { p.props.replace(0, part); });
  expectReadableEnds(plan.crew[1], [](auto& p, auto& part) { p.crew.replace(1, part); });
  expectReadableEnds(plan.shelters[0], [](auto& p, auto& part) { p.shelters.replace(0, part); });
  expectReadableEnds(plan.gear[0], [](auto& p, auto& part) { p.gear.replace(0, part); });
  expectReadableEnds(plan.cables[0], [](auto& p, auto& part) { p.cables.replace(0, part); });
  expectReadableEnds(plan.poles[0], [](auto& p, auto& part) { p.poles.replace(0, part); });
  expectReadableEnds(plan.links[0], [](auto& p, auto& part) { p.links.replace(0, part); });
  expectReadableEnds(*plan.site, [](auto& p, auto& part) { p.site = part; });
  for (std::size_t i = 0; i < plan.fixtures.size(); ++i)
    expectReadableEnds(plan.fixtures[i], [i](auto& p, auto& part) { p.fixtures.replace(i, part); });
  expectReadableEnds(plan.takes, [](auto& p, auto& part) { p.takes = part; });
}

}  // namespace
}  // namespace wend::file
