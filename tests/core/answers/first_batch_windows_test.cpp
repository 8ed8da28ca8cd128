// First Batch against figures worked out by an independent sampler at 0.02 s, written from the definitions alone.
#include "core/answers/whole_take.h"
#include "tests/core/answers/first_batch.h"

namespace wend::answers {
namespace {

const snags::SightOf& sightOf(const std::string& id) {
  for (const auto& sight : firstBatch().evidence->sight)
    if (sight.id == id) return sight;
  throw std::runtime_error("nobody called " + id);
}

struct Expected {
  double from, until;
  const char* via;
};

void expectSeen(const std::string& id, const std::vector<Expected>& expected) {
  const auto& seen = sightOf(id).seen;
  ASSERT_EQ(seen.size(), expected.size()) << id;
  for (std::size_t i = 0; i < expected.size(); ++i) {
    EXPECT_NEAR(seen[i].span.from, expected[i].from, 0.2) << id << " " << i;
    EXPECT_NEAR(seen[i].span.until, expected[i].until, 0.2) << id << " " << i;
    EXPECT_EQ(seen[i].via, expected[i].via) << id << " " << i;
  }
}

TEST(FirstBatch, ShowsTheOneAtTheNorthernPavementInTheMirrorAndThenDirectly) {
  expectSeen("ad2", {{121.74, 123.54, "m1"}, {133.10, 138.46, "direct"}});
}

// The sampler tells both ways at once: it has the mirror until 92.28 and direct sight from 91.64. Wend names one way at
// a time, direct sight first (core/sight/body.h), so here the mirror ends where direct sight begins; the union is the
// same.
TEST(FirstBatch, ShowsTheOneAcrossTheStreetEightTimes) {
  expectSeen("loc", {{27.24, 36.32, "direct"},
                     {60.26, 62.08, "direct"},
                     {66.96, 67.26, "direct"},
                     {85.38, 87.32, "m1"},
                     {89.74, 91.64, "m1"},
                     {91.64, 96.52, "direct"},
                     {115.24, 120.36, "direct"},
                     {126.74, 133.32, "direct"}});
}

TEST(FirstBatch, NeverShowsThoseWhoStandAndWalkWell) {
  for (const char* id : {"ac1", "ac2", "boom1", "boom2", "dp", "gaf", "ad1", "op", "spot", "camera"})
    EXPECT_TRUE(sightOf(id).seen.empty()) << id;
}

TEST(FirstBatch, ShowsNobodyFarBehindItsWalls) {
  EXPECT_TRUE(sightOfSpot(*firstBatch().take, {-200, 4}, 1.8, 0.28).seen.empty());
  EXPECT_FALSE(sightOfSpot(*firstBatch().take, {25, 6}, 1.8, 0.28).seen.empty());
}

TEST(FirstBatch, MeasuresTheWayOfTheCamera) {
  const motion::Track& camera = firstBatch().take->people().camera();
  EXPECT_NEAR(camera.totalLength(), 57.21, 0.01);
  EXPECT_NEAR(camera.speed(55), 0.7226, 1e-3);
}

TEST(FirstBatch, SetsDistancesAndBandsOfTheSampler) {
  struct Row {
    double t, distance, near, far;
  };
  // Floor distance, circle of confusion 0.025 mm, set on the subject.
  for (const Row& row : {Row{15, 2.10, 1.84, 2.45}, Row{22, 1.27, 1.22, 1.33}, Row{32, 1.76, 1.52, 2.08},
                         Row{45, 3.05, 2.20, 4.97}, Row{94, 1.82, 1.60, 2.11}, Row{107, 3.05, 2.41, 4.18}}) {
    const Instant instant = instantAt(*firstBatch().take, row.t);
    EXPECT_NEAR(instant.focus.wantedDistance, row.distance, 0.011) << row.t;
    EXPECT_NEAR(instant.focus.wantedBand.near, row.near, 0.011) << row.t;
    EXPECT_NEAR(instant.focus.wantedBand.far, row.far, 0.012) << row.t;
  }
}

TEST(FirstBatch, KeepsTheFocusInsideItsSlackAtEveryFrame) {
  for (const auto& sample : firstBatch().evidence->samples) {
    if (!sample.focus.known || sample.focus.changing) continue;
    EXPECT_GE(sample.focus.setDistance, sample.focus.slackNear - 1e-6) << sample.time;
    EXPECT_LE(sample.focus.setDistance, sample.focus.slackFar + 1e-6) << sample.time;
    EXPECT_LE(std::abs(sample.focus.barrelRate), 120 + 1e-6) << sample.time;
  }
  EXPECT_TRUE(firstBatch().evidence->unmet.empty());
}

bool found(const std::string& rule, const std::string& who, double from, double until, double tolerance = 0.2) {
  for (const auto& snag : *firstBatch().snags)
    if (snag.rule == rule && (who.empty() || snag.who == who) && std::abs(snag.from - from) < tolerance &&
        std::abs(snag.until - until) < tolerance)
      return true;
  return false;
}

TEST(FirstBatch, ReportsThePlantedFaults) {
  EXPECT_TRUE(found("hot-focus", "hands", 18, 26));
  EXPECT_TRUE(found("hot-focus", "ilse", 27, 32.5));
  EXPECT_TRUE(found("hot-focus", "ilse", 83.4, 99.65));
  EXPECT_TRUE(found("exposure", "ilse", 0, 34));
  EXPECT_TRUE(found("hot-focus", "ilse", 124.65, 125.95));
  EXPECT_TRUE(found("exposure", "ilse", 81.5, 82.85));
  EXPECT_TRUE(found("exposure", "ilse", 126.7, 128.6));
  EXPECT_TRUE(found("exposure", "tom", 28.55, 34.1));
  EXPECT_TRUE(found("exposure", "tom", 74, 81.5));
  EXPECT_TRUE(found("exposure", "tom", 145, 147.8));
  EXPECT_TRUE(found("exposure", "tom", 150, 168));
  EXPECT_TRUE(found("exposure", "mrsa", 115, 119.95));
  EXPECT_TRUE(found("backwards", "camera", 98.6, 102.9));
  EXPECT_TRUE(found("backwards", "camera", 139.6, 160));
  EXPECT_TRUE(found("step-crossed", "camera", 138.0, 138.0));
  EXPECT_TRUE(found("subject-lost", "ilse", 45.85, 46.6));
  EXPECT_TRUE(found("subject-lost", "tom", 55.45, 56.2));
  for (const char* place : {"d1", "d2", "oven", "counter"})
    EXPECT_TRUE(std::any_of(firstBatch().snags->begin(), firstBatch().snags->end(), [&](const snags::Snag& snag) {
      return snag.rule == "clearance" && snag.key.find(place) != std::string::npos;
    })) << place;
  EXPECT_TRUE(std::any_of(firstBatch().snags->begin(), firstBatch().snags->end(), [](const snags::Snag& snag) {
    return snag.rule == "through-sight" && snag.severity == snags::Severity::risks;
  }));
}

TEST(FirstBatch, GivesTheSameAnswersTwice) {
  const auto again = answersOf(firstBatch().take->planPtr());
  ASSERT_TRUE(again.ok());
  ASSERT_EQ((*again)->snags->size(), firstBatch().snags->size());
  for (std::size_t i = 0; i < firstBatch().snags->size(); ++i) {
    EXPECT_EQ((*(*again)->snags)[i].key, (*firstBatch().snags)[i].key);
    EXPECT_EQ((*(*again)->snags)[i].from, (*firstBatch().snags)[i].from);
    EXPECT_EQ((*(*again)->snags)[i].text, (*firstBatch().snags)[i].text);
  }
}

TEST(FirstBatch, SeesTheSameOnOneThreadAsOnTwo) {
  // evidenceOf looks for people on a thread of its own; here the same is asked on this one.
  const auto alone = sightOfAll(*firstBatch().take, {});
  ASSERT_TRUE(alone.has_value());
  const auto& together = firstBatch().evidence->sight;
  ASSERT_EQ(alone->size(), together.size());
  for (std::size_t i = 0; i < together.size(); ++i) {
    ASSERT_EQ((*alone)[i].seen.size(), together[i].seen.size()) << together[i].id;
    for (std::size_t k = 0; k < together[i].seen.size(); ++k)
      EXPECT_EQ((*alone)[i].seen[k].span, together[i].seen[k].span);
    ASSERT_EQ((*alone)[i].clear.size(), together[i].clear.size()) << together[i].id;
    for (std::size_t k = 0; k < together[i].clear.size(); ++k)
      EXPECT_EQ((*alone)[i].clear[k].span, together[i].clear[k].span);
  }
}

TEST(Evidence, PublishesNothingWhenCancelledAtAnyPollAndComesOutRightAfterwards) {
  const auto take = *Take::of(sharedSample("one-room.wend"));
  const base::Cancel counting;
  const auto whole = evidenceOf(*take, counting);
  ASSERT_TRUE(whole.ok());
  const auto polls = counting.polls();
  ASSERT_GT(polls, 10);
  for (std::int64_t k = 1; k <= polls; k += std::max<std::int64_t>(1, polls / 40)) {
    const auto cut = evidenceOf(*take, base::Cancel::atPoll(k));
    ASSERT_FALSE(cut.ok()) << k;
    EXPECT_EQ(cut.problems().front().code, "cancelled");
  }
  EXPECT_EQ((*evidenceOf(*take))->samples.size(), (*whole)->samples.size());
}

TEST(Take, WithoutALensKnowsNoSightAndSaysSo) {
  plan::Plan plan = *sharedSample("first-batch.wend");
  plan.lens.reset();
  const auto answers = answersOf(std::make_shared<const plan::Plan>(plan));
  ASSERT_TRUE(answers.ok());
  EXPECT_FALSE((*answers)->evidence->sightKnown);
  EXPECT_TRUE((*answers)->evidence->sight.empty());
  EXPECT_FALSE(instantAt(*(*answers)->take, 10).lens.has_value());
  EXPECT_FALSE(groundOf(*(*answers)->take).ok());
}

TEST(Take, WithoutReadingsKnowsNoExposure) {
  plan::Plan plan = *sharedSample("first-batch.wend");
  plan.set.areas = {};
  const auto take = *Take::of(std::make_shared<const plan::Plan>(plan));
  const Instant instant = instantAt(*take, 60);
  EXPECT_FALSE(instant.iris.needed.has_value());
  for (const auto& performer : instant.performers) EXPECT_FALSE(performer.offset.has_value());
}

}  // namespace
}  // namespace wend::answers
