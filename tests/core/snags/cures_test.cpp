// What would cool a hot focus, on a take written by hand.
#include "core/snags/cures.h"

#include <cmath>

#include "core/optics/warmth.h"
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

using Change = HotCure::Change;

/// The quiet take, hot from 3 to 4 s: ILSE walks 2 m before a walking operator.
Evidence hotTake(std::array<double, 2> focal) {
  Evidence evidence = quietTake();
  auto plan = std::make_shared<plan::Plan>(*evidence.plan);
  plan->lens->focal = focal;
  evidence.plan = plan;
  for (Instant& s : evidence.samples) {
    if (s.time < 3 - 1e-9 || s.time > 4 + 1e-9) continue;
    s.focus.wobble = std::hypot(0.2, 0.2);
    s.camera.moving = true;
    const optics::Optics optics{35, optics::fNumberOf(4, plan->lens->transmission.at(35)), plan->camera.blurCircle};
    s.focus.warmth = optics::warmthOf(2 - plan->lens->pupilAhead, optics, *s.focus.wobble) - (s.time > 3.45 ? 0 : 0.1);
  }
  return evidence;
}

const HotCure* find(const std::vector<HotCure>& cures, Change change) {
  for (const HotCure& cure : cures)
    if (cure.change == change) return &cure;
  return nullptr;
}

TEST(HotCures, GiveEachChangeItsBandAndWhatItComesTo) {
  const Evidence evidence = hotTake({18, 35});
  const Instant& hot = evidence.samples[38];
  ASSERT_TRUE(isHot(*evidence.plan, hot));
  const auto cures = curesAt(*evidence.plan, hot);
  const HotCure* widen = find(cures, Change::widen);
  ASSERT_TRUE(widen);
  EXPECT_TRUE(widen->enough);
  EXPECT_NEAR(*widen->warmth, 1, 1e-9);
  EXPECT_LT(*widen->value, 35);
  // Half the band on the nearer side is one wobble then.
  EXPECT_NEAR(2 - widen->band->near, *hot.focus.wobble, 1e-9);
  const HotCure* closed = find(cures, Change::stopDown);
  ASSERT_TRUE(closed);
  EXPECT_NEAR(*closed->moreLight, 2 * std::log2(*closed->value / 4), 1e-9);
  EXPECT_NE(changeText(*evidence.plan, *widen).find("widen to "), std::string::npos);
}

TEST(HotCures, LeaveOutWhatWouldChangeNothing) {
  const Evidence prime = hotTake({35, 35});
  EXPECT_FALSE(find(curesAt(*prime.plan, prime.samples[38]), Change::widen)) << "a prime does not widen";
  Evidence closed = hotTake({18, 35});
  auto plan = std::make_shared<plan::Plan>(*closed.plan);
  plan->lens->stop = {2.8, 4};
  EXPECT_FALSE(find(curesAt(*plan, closed.samples[38]), Change::stopDown)) << "T4 is where this lens ends";
}

TEST(HotCures, SayNotEnoughOfWhateverIsNot) {
  const Evidence evidence = hotTake({35, 35});
  Instant straying = evidence.samples[38];
  straying.focus.wobble = 0.8;
  *straying.focus.warmth *= std::hypot(0.2, 0.2) / 0.8;
  const auto cures = curesAt(*evidence.plan, straying);
  const HotCure* still = find(cures, Change::standStill);
  ASSERT_TRUE(still);
  ASSERT_LT(*still->warmth, 1);
  EXPECT_FALSE(still->enough);
  const std::string text = curesText(*evidence.plan, {*still});
  EXPECT_NE(text.find("\u00d7 wobble, not enough)"), std::string::npos) << text;
}

TEST(HotCures, AreNoneWhereNothingIsHot) {
  const Evidence evidence = hotTake({18, 35});
  EXPECT_FALSE(isHot(*evidence.plan, evidence.samples[10]));
  EXPECT_TRUE(curesAt(*evidence.plan, evidence.samples[10]).empty());
}

TEST(HotSpots, AreTheWorstOfAStretchAndTheArrivalOfAPull) {
  Evidence evidence = hotTake({18, 35});
  Move pull;
  pull.from = 3;
  pull.until = 3.72;
  Move cool = pull;
  cool.from = 6;
  cool.until = 7;
  evidence.moves = {cool, pull};
  const auto spots = hotSpots(evidence);
  ASSERT_EQ(spots.size(), 2u);
  EXPECT_EQ(spots[0].move, 0u);
  EXPECT_NEAR(spots[0].at->time, 3.0, 1e-9) << "least until 3.4";
  EXPECT_EQ(spots[1].move, 2u);
  EXPECT_NEAR(spots[1].at->time, 3.8, 1e-9) << "the first sample after it has arrived";
  EXPECT_FALSE(spots[1].cures.empty());
}

}  // namespace
}  // namespace wend::snags
