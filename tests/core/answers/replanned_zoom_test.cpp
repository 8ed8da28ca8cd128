// A zoom set by keys, planned anew: against the line that the keys draw, worked out here.
#include <cmath>
#include <random>

#include "core/answers/replanned.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

using plan::Axis;

plan::ZoomKey by(double at, double over, double focal, plan::Pace pace = plan::Pace::even) {
  return {{{"", at}, over, pace}, focal, "", plan::OnPerformer{}, {}};
}

plan::ZoomKey bySize(double at, double over, const std::string& size) {
  return {{{"", at}, over, plan::Pace::even}, 0, size, plan::OnPerformer{"nora"}, {}};
}

plan::Plan zoomPlan(std::vector<plan::ZoomKey> keys) {
  plan::Plan plan = smallPlan();
  plan.lens->focal = {20, 80};
  plan.lens->limits.zoomPercentPerSecond = 50;
  plan.zoom.slackShare = 0.06;
  plan.zoom.keys = std::move(keys);
  return plan;
}

plan::Plan mustReplan(const plan::Plan& plan, geometry::Span span) {
  const auto result = replanned(*takeOf(plan), Axis::zoom, span);
  if (!result.ok()) ADD_FAILURE() << base::toText(result.problems()[0]);
  return result.ok() ? *result : plan;
}

std::string codeOf(const base::Result<plan::Plan>& result) {
  return result.ok() ? "" : result.problems()[0].code;
}

/// The keyed line by its definition: straight, or a smoothstep, in the logarithm of the focal length.
double lineAt(const std::vector<plan::ZoomKey>& keys, double t) {
  double now = std::log2(keys[0].focal);
  for (const auto& key : keys) {
    const double at = key.time.at.seconds, to = std::log2(key.focal);
    if (t < at) break;
    double share = key.time.over > 0 ? std::min(1.0, (t - at) / key.time.over) : 1;
    if (key.time.pace == plan::Pace::eased) share = share * share * (3 - 2 * share);
    now += share * (to - now);
  }
  return std::exp2(now);
}

TEST(ReplannedZoom, DoesWithOneMoveWhatHandsSetInSteps) {
  // Five little steps along one straight line in the logarithm, from 30 mm to 40 mm.
  std::vector<plan::ZoomKey> keys{by(0, 0, 30)};
  for (int i = 1; i <= 5; ++i) keys.push_back(by(i, 0.7, 30 * std::pow(4.0 / 3, i / 5.0)));
  for (auto& key : keys) key.focal = std::round(key.focal * 100) / 100;
  keys.push_back(by(8, 1, 60));
  const plan::Plan plan = zoomPlan(keys), next = mustReplan(plan, {0.5, 7});
  ASSERT_EQ(next.zoom.keys.size(), 3u) << "the start, one move, and the kept one";
  EXPECT_EQ(next.zoom.keys.front(), keys.front());
  EXPECT_EQ(next.zoom.keys.back(), keys.back());
  EXPECT_EQ(next.zoom.keys[1].focal, keys[5].focal) << "the kept one starts from where it did";
  EXPECT_GT(next.zoom.keys[1].time.over, 2);
}

TEST(ReplannedZoom, StaysWithinTheSlackOfTheLineAndChangesNothingOutside) {
  int followed = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    std::mt19937_64 random(seed);
    const auto uniform = [&](double a, double b) {
      return a + (b - a) * static_cast<double>(random() >> 11) * 0x1p-53;
    };
    const auto stepped = [&](double a, double b, double perUnit) {
      return std::round(uniform(a, b) * perUnit) / perUnit;
    };
    std::vector<plan::ZoomKey> keys{by(0, 0, stepped(25, 60, 100))};
    for (double t = stepped(0.3, 1.5, 1000); t < 8.4;) {
      const double over = stepped(0.5, 1.5, 1000);
      // Within the limit of 50 % a second, the smoothstep's 1.5 times included.
      const double most = 0.9 * 0.5 * over / 1.5;
      const double focal = std::clamp(keys.back().focal * std::exp(uniform(-most, most)), 22.0, 75.0);
      keys.push_back(by(t, over, std::round(focal * 100) / 100, seed % 2 ? plan::Pace::eased : plan::Pace::even));
      t = std::round((t + over + uniform(0, 1.2)) * 1000) / 1000;
    }
    const plan::Plan plan = zoomPlan(keys);
    const double from = seed % 4 ? stepped(0.1, 5, 1000) : 0, until = seed % 3 ? from + stepped(1, 4, 1000) : 10;
    const TakePtr before = takeOf(plan);
    const auto next = replanned(*before, Axis::zoom, {from, until});
    if (!next.ok()) {
      ASSERT_EQ(codeOf(next), "span-cuts-move");
      continue;
    }
    ++followed;
    ASSERT_LE(next->zoom.keys.size(), keys.size() + 2) << seed;
    const TakePtr after = takeOf(*next);
    for (int i = 0; i <= 2000; ++i) {
      const double t = i / 200.0, focal = *after->view().focalAt(t);
      if (t < from - 1e-9 || (t > until + 1e-9)) {
        ASSERT_EQ(focal, *before->view().focalAt(t)) << seed << " at " << t;
      } else {
        // Between two frames an eased line bends away from its chord.
        const double off = std::abs(std::log2(focal / lineAt(keys, t)));
        ASSERT_LE(off, std::log2(1.06) + 2e-3) << seed << " at " << t;
      }
    }
  }
  std::cout << followed << " of 200 replanned\n";
  EXPECT_GT(followed, 60);
}

TEST(ReplannedZoom, OfAWholeTakeHasNewKeysAndNoneByNobody) {
  const plan::Plan plan = zoomPlan({by(0, 0, 30), by(2, 1, 31), by(4, 1, 30.5), by(6, 1, 50)});
  const plan::Plan next = mustReplan(plan, {0, 10});
  ASSERT_EQ(next.zoom.keys.size(), 2u) << "30 to 31 and back is inside the slack";
  EXPECT_NEAR(next.zoom.keys[0].focal, 30.5, 30.5 * 0.06);
  EXPECT_NEAR(next.zoom.keys[1].focal, 50, 50 * 0.06);
}

TEST(ReplannedZoom, LeavesASizeAloneAndRefusesToCutOne) {
  const plan::Plan plan = zoomPlan({bySize(0, 0, "medium"), by(5, 1, 40), by(7, 1, 45)});
  EXPECT_EQ(mustReplan(plan, {0, 4}), plan) << "what keeps a size is planned already";
  const auto cut = replanned(*takeOf(plan), Axis::zoom, {4, 9});
  ASSERT_EQ(codeOf(cut), "span-cuts-size");
  EXPECT_EQ(cut.problems()[0].where, "/zoom/keys/0");
  EXPECT_EQ(cut.problems()[0].found, "a shot size kept from 0 s to 6 s");
  const plan::Plan next = mustReplan(plan, {6, 9});
  EXPECT_EQ(next.zoom.keys[0], plan.zoom.keys[0]);
  EXPECT_EQ(next.zoom.keys[1], plan.zoom.keys[1]);
}

TEST(ReplannedZoom, TakesACutOutOfASizeOrIntoOneForAPartOfIt) {
  const plan::Plan out = zoomPlan({bySize(0, 0, "medium"), by(5, 0, 40), by(7, 1, 45)});
  EXPECT_EQ(codeOf(replanned(*takeOf(out), Axis::zoom, {5, 9})), "span-cuts-size");
  EXPECT_TRUE(replanned(*takeOf(out), Axis::zoom, {5.5, 9}).ok());
  const plan::Plan into = zoomPlan({by(0, 0, 40), by(3, 1, 45), bySize(6, 0, "medium")});
  EXPECT_EQ(codeOf(replanned(*takeOf(into), Axis::zoom, {2, 6})), "span-cuts-size");
  EXPECT_TRUE(replanned(*takeOf(into), Axis::zoom, {2, 5}).ok());
  EXPECT_EQ(codeOf(replanned(*takeOf(into), Axis::zoom, {3.5, 5})), "span-cuts-move");
}

TEST(ReplannedZoom, RefusesWithoutALensAndWithoutSlack) {
  plan::Plan plan = zoomPlan({by(0, 0, 30), by(2, 1, 40)});
  plan.zoom.slackShare = 0;
  EXPECT_EQ(codeOf(replanned(*takeOf(plan), Axis::zoom, {0, 10})), "zoom-no-slack");
  plan.zoom.slackShare = 0.06;
  plan.lens.reset();
  EXPECT_EQ(codeOf(replanned(*takeOf(plan), Axis::zoom, {0, 10})), "lens-unknown");
}

TEST(ZoomInHand, WritesThePlannedSizeAsKeysByFocalLength) {
  plan::Plan plan = zoomPlan({bySize(0, 0, "medium")});
  plan::Performer nora = plan.performers[0];
  nora.marks = {markAt("n1", {0, 3}), markAt("n2", {0, 5}, 6)};
  plan.performers.replace(0, nora);
  const auto next = inHand(*takeOf(plan), Axis::zoom);
  ASSERT_TRUE(next.ok());
  ASSERT_GE(next->zoom.keys.size(), 2u);
  for (const auto& key : next->zoom.keys) EXPECT_TRUE(key.size.empty());
  const auto before = takeOf(plan), after = takeOf(*next);
  for (const double t : before->frameTimes())
    EXPECT_LE(std::abs(std::log2(*after->view().focalAt(t) / before->view().zoom().askedAt(t))),
              std::log2(1.06) + 1e-6);
  EXPECT_EQ(*inHand(*takeOf(*next), Axis::zoom), *next) << "by hand already";
}

}  // namespace
}  // namespace wend::answers
