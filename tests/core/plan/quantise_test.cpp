#include "core/plan/quantise.h"

#include <gtest/gtest.h>

#include <limits>
#include <random>

#include "core/base/text.h"
#include "core/plan/numbers.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

TEST(Quantised, PutsNumbersOnTheirStep) {
  EXPECT_EQ(quantised(3.25004, kinds::kPlace), 3.25);
  EXPECT_EQ(quantised(3.25006, kinds::kPlace), 3.2501);
  EXPECT_EQ(quantised(12.0004999, kinds::kMoment), 12.0);
  EXPECT_EQ(quantised(45.678, kinds::kBearing), 45.68);
  EXPECT_EQ(quantised(6 * 3600 + 14 * 60 + 29.0, kinds::kMinuteOfDay), 6 * 3600 + 14 * 60.0);
}

TEST(Quantised, RoundsHalvesAwayFromZero) {
  EXPECT_EQ(quantised(0.5, NumberKind{1, -10, 10, ""}), 1);
  EXPECT_EQ(quantised(-0.5, NumberKind{1, -10, 10, ""}), -1);
}

TEST(Quantised, NeverGivesNegativeZero) {
  EXPECT_FALSE(std::signbit(quantised(-0.00001, kinds::kPlace)));
  EXPECT_FALSE(std::signbit(quantised(-0.0, kinds::kPlace)));
}

TEST(Quantised, LeavesWhatIsOutOfRangeAsItWasTyped) {
  EXPECT_EQ(quantised(12345.67891, kinds::kPlace), 12345.67891);
  EXPECT_TRUE(std::isnan(quantised(std::numeric_limits<double>::quiet_NaN(), kinds::kPlace)));
  EXPECT_TRUE(std::isinf(quantised(std::numeric_limits<double>::infinity(), kinds::kPlace)));
}

TEST(Quantised, IsIdempotentWithinHalfAStepAndPrintsShort) {
  const unsigned seed = 20;
  std::mt19937_64 random(seed);
  for (const NumberKind& kind : {kinds::kPlace, kinds::kMoment, kinds::kBearing, kinds::kStop, kinds::kFocal,
                                 kinds::kBlurCircle, kinds::kGate, kinds::kShare}) {
    for (int i = 0; i < 2000; ++i) {
      const double share = static_cast<double>(random() >> 11) * 0x1.0p-53;
      const double value = kind.least + (kind.most - kind.least) * share;
      const double once = quantised(value, kind);
      ASSERT_EQ(quantised(once, kind), once) << "seed " << seed << " value " << value;
      ASSERT_LE(std::abs(once - value), 0.5 / kind.perUnit + 1e-11) << "seed " << seed;
      ASSERT_LE(base::shortest(std::abs(once)).size(), 12u) << "seed " << seed << " value " << value;
    }
  }
}

TEST(RangeText, NamesBothEndsAndTheUnit) {
  EXPECT_EQ(rangeText(kinds::kTilt), "from -90 to 90 degrees");
  EXPECT_EQ(rangeText(kinds::kShare), "from 0 to 1");
}

TEST(EachNumber, ReachesEveryNumberOfAMark) {
  Mark mark = test::mark(test::at(1), {2, 3}, test::at(4));
  mark.height = 5;
  mark.facing = 6;
  mark.leg.via = {{7, 8}};
  mark.leg.centre = {9, 10};
  mark.leg.sweep = 11;
  std::vector<double> seen;
  eachNumber(mark, [&](double& value, const NumberKind&, const char*) { seen.push_back(value); });
  EXPECT_EQ(seen, (std::vector<double>{1, 4, 2, 3, 5, 6, 7, 8, 9, 10, 11}));
}

TEST(EachNumber, ReachesEveryNumberOfEquipment) {
  const auto seen = [](auto part) {
    std::vector<double> numbers;
    eachNumber(part, [&](double& value, const NumberKind&, const char*) { numbers.push_back(value); });
    return numbers;
  };
  Cable cable;
  cable.points = {{1, 2}};
  cable.height = 3;
  cable.from = test::at(4);
  EXPECT_EQ(seen(cable), (std::vector<double>{1, 2, 3, 4}));
  EXPECT_EQ(seen(Pole{}), (std::vector<double>{3, 1.45, 0.15, 0.4, 0.9}));
  EXPECT_EQ(seen(Link{}), (std::vector<double>{2400, 95, 0}));
  EXPECT_EQ(seen(Site{1, 2, {}, 3, 4, {}}), (std::vector<double>{1, 2, 3, 4}));
  Lens plain, charted;
  charted.breathing = OverFocal(std::vector<FocalValue>{{24, 0}, {70, 0.1}});
  charted.balance = OverFocal(std::vector<FocalValue>{{24, 0}, {70, 0.006}});
  EXPECT_EQ(seen(charted).size(), seen(plain).size() + 2 * 3);  // two rows of two for one number, twice
}

TEST(EachNumber, ReachesEveryKindOfTarget) {
  const auto count = [](Target on) {
    int n = 0;
    eachNumber(on, [&](double&, const NumberKind&, const char*) { ++n; });
    return n;
  };
  EXPECT_EQ(count(OnPoint{{1, 2}, 3}), 3);
  EXPECT_EQ(count(OnBearing{1, 2}), 2);
  EXPECT_EQ(count(OnTravel{1, 2}), 2);
  EXPECT_EQ(count(OnDistance{1}), 1);
  EXPECT_EQ(count(OnPerformer{"a"}), 0);
  EXPECT_EQ(count(OnSplit{{"a", "b"}}), 0);
}

TEST(EachNumber, TakesEveryDefaultInRange) {
  const Plan equipped = test::equippedPlan();
  Plan plan = equipped;
  const auto check = [](double& value, const NumberKind& kind, const char* name) {
    EXPECT_TRUE(value >= kind.least && value <= kind.most) << name << " " << value;
  };
  SightRules rules;
  Gear gear;
  Fixture fixture;
  Underlay underlay;
  eachNumber(plan.camera, check);
  eachNumber(*plan.lens, check);
  eachNumber(plan.wobble, check);
  eachNumber(plan.focus, check);
  eachNumber(plan.zoom, check);
  eachNumber(plan.iris, check);
  eachNumber(plan.clock, check);
  eachNumber(rules, check);
  eachNumber(gear, check);
  eachNumber(fixture, check);
  eachNumber(underlay, check);
  Cable cable = equipped.cables[0];
  Pole pole = equipped.poles[0];
  Link link = equipped.links[0];
  Site site;
  eachNumber(cable, check);
  eachNumber(pole, check);
  eachNumber(link, check);
  eachNumber(site, check);
}

}  // namespace
}  // namespace wend::plan
