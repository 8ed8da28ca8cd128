#include "core/plan/edits_camera.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "core/plan/invariants.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

using test::smallPlan;

std::string codeOf(const base::Result<Plan>& result) {
  return result ? "" : result.problems().front().code;
}

/// A typed number: how it is set, how it is read back, one value that is taken and one that is refused.
struct TypedNumber {
  const char* name;
  std::function<base::Result<Plan>(const Plan&, double)> set;
  std::function<double(const Plan&)> get;
  double good, bad;
};

std::vector<TypedNumber> typedNumbers() {
  const auto camera = [](double Camera::*m) { return [m](const Plan& p) { return p.camera.*m; }; };
  const auto lens = [](double Lens::*m) { return [m](const Plan& p) { return (*p.lens).*m; }; };
  const auto along = [](OverFocal Lens::*m) { return [m](const Plan& p) { return ((*p.lens).*m).at(35); }; };
  return {
      {"gate", [](const Plan& p, double v) { return gateSet(p, v, 14); },
       [](const Plan& p) { return p.camera.gate[0]; }, 35.99, 0},
      {"squeeze", squeezeSet, camera(&Camera::squeeze), 2, 0},
      {"aspect", [](const Plan& p, double v) { return aspectSet(p, v); },
       [](const Plan& p) { return *p.camera.aspect; }, 2.39, 0},
      {"blurCircle", blurCircleSet, camera(&Camera::blurCircle), 0.0295, 0},
      {"exposureIndex", exposureIndexSet, camera(&Camera::exposureIndex), 1600, 0},
      {"shutter", shutterSet, camera(&Camera::shutterDeg), 172.8, 361},
      {"density", densitySet, camera(&Camera::ndStops), 3, -1},
      {"meter", [](const Plan& p, double v) { return meterSet(p, Receptor::flat, v); },
       [](const Plan& p) { return p.camera.meter.constant; }, 250, 0},
      {"rigRadius", rigRadiusSet, [](const Plan& p) { return p.camera.rig.radius; }, 0.4, 0},
      {"closeFocus", closeFocusSet, lens(&Lens::closeFocus), 0.45, 0},
      {"pupilAhead", pupilAheadSet, lens(&Lens::pupilAhead), -0.05, 9},
      {"transmission", transmissionSet, along(&Lens::transmission), 0.8, 0},
      {"breathing", breathingSet, along(&Lens::breathing), 0.04, 5},
      {"balance", balanceSet, along(&Lens::balance), 0.004, 2},
      {"barrelLimit", barrelLimitSet, [](const Plan& p) { return p.lens->limits.focusDegPerSecond; }, 90, 0},
      {"blurShare", blurShareSet, [](const Plan& p) { return p.focus.blurShare; }, 0.5, 0},
      {"slackShare", slackShareSet, [](const Plan& p) { return p.zoom.slackShare; }, 0.04, 2},
      {"slackStops", slackStopsSet, [](const Plan& p) { return p.iris.slackStops; }, 0.25, -1},
  };
}

TEST(TypedNumbers, AreTakenAsTyped) {
  for (const TypedNumber& number : typedNumbers()) {
    const auto set = number.set(smallPlan(), number.good);
    ASSERT_TRUE(set.ok()) << number.name << " " << base::toText(set.problems().front());
    EXPECT_EQ(number.get(*set), number.good) << number.name;
    EXPECT_TRUE(problemsOf(*set).empty()) << number.name;
  }
}

TEST(TypedNumbers, AreRefusedOutOfRangeWithTheRange) {
  for (const TypedNumber& number : typedNumbers()) {
    for (const double bad : {number.bad, std::numeric_limits<double>::quiet_NaN(), 1e300}) {
      const auto set = number.set(smallPlan(), bad);
      ASSERT_FALSE(set.ok()) << number.name << " " << bad;
      EXPECT_EQ(set.problems().front().code, "out-of-range") << number.name;
      EXPECT_NE(set.problems().front().expected.find("from"), std::string::npos) << number.name;
    }
  }
}

TEST(AspectSet, GoesBackToTheWholeGate) {
  EXPECT_EQ(aspectSet(*aspectSet(smallPlan(), 2.39), std::nullopt)->camera.aspect, std::nullopt);
}

TEST(RigFields, AreSet) {
  EXPECT_EQ(rigKindSet(smallPlan(), RigKind::crane)->camera.rig.kind, RigKind::crane);
  EXPECT_EQ(payloadSet(smallPlan(), 4, 11)->camera.rig.payload, (std::array<double, 2>{4, 11}));
  EXPECT_EQ(codeOf(payloadSet(smallPlan(), 11, 4)), "range-backwards");
  EXPECT_EQ(rigItemsSet(smallPlan(), {{"lens", 1.9, {}}})->camera.rig.items[0].kg, 1.9);
  EXPECT_EQ(bodiesSet(smallPlan(), {{"op", 0.6, 0.1, {}}})->camera.bodies[0].behind, 0.6);
  EXPECT_EQ(codeOf(bodiesSet(smallPlan(), {{"nobody", 0.6, 0, {}}})), "missing-reference");
}

TEST(LensRanges, RunFromSmallToLarge) {
  EXPECT_EQ(lensFocalSet(smallPlan(), 35, 35)->lens->focal, (std::array<double, 2>{35, 35}));
  EXPECT_EQ(codeOf(lensFocalSet(smallPlan(), 70, 24)), "range-backwards");
  EXPECT_EQ(lensStopSet(smallPlan(), 2, 16)->lens->stop, (std::array<double, 2>{2, 16}));
  EXPECT_EQ(codeOf(lensStopSet(smallPlan(), 16, 2)), "range-backwards");
  EXPECT_EQ(lensNamed(smallPlan(), "prime 35")->lens->name, "prime 35");
}

TEST(LensSet, TakesAnotherOneOrNone) {
  Lens prime;
  prime.name = "prime 50";
  prime.focal = {50, 50};
  EXPECT_EQ(lensSet(smallPlan(), prime)->lens, prime);
  prime.focal = {60, 50};
  EXPECT_EQ(codeOf(lensSet(smallPlan(), prime)), "range-backwards");
  const auto none = lensSet(smallPlan(), std::nullopt);
  ASSERT_TRUE(none.ok());
  EXPECT_FALSE(none->lens);
  EXPECT_EQ(codeOf(closeFocusSet(*none, 0.5)), "not-there");
}

TEST(Priorities, AreSet) {
  EXPECT_EQ(focusDistanceSet(smallPlan(), DistanceKind::slant)->focus.distance, DistanceKind::slant);
  EXPECT_EQ(exposeForSet(smallPlan(), "tom")->iris.exposePerformer, "tom");
  EXPECT_EQ(codeOf(exposeForSet(smallPlan(), "nobody")), "missing-reference");
  EXPECT_EQ(exposeForSet(smallPlan(), "")->iris.exposePerformer, "");
  Wobble wobble;
  wobble.taped = 0.1;
  EXPECT_EQ(wobbleSet(smallPlan(), wobble)->wobble.taped, 0.1);
  SightRules rules;
  rules.cell = 0.05;
  EXPECT_EQ(sightRulesSet(smallPlan(), rules)->sightRules.cell, 0.05);
  rules.cell = 0;
  EXPECT_EQ(codeOf(sightRulesSet(smallPlan(), rules)), "out-of-range");
}

TEST(PullsSet, KeepsPullsByHandInOrder) {
  EXPECT_TRUE(pullsSet(smallPlan(), {{test::at(2), 1, 3, {}}, {test::at(3), 1, 2, {}}}).ok());
  EXPECT_EQ(codeOf(pullsSet(smallPlan(), {{test::at(2), 2, 3, {}}, {test::at(3), 1, 2, {}}})), "pull-order");
}

}  // namespace
}  // namespace wend::plan
