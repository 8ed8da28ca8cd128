// Links and poles that are needed, over takes written by hand.
#include "core/sheets/need_state.h"

#include "tests/core/snags/quiet_take.h"

namespace wend::sheets {
namespace {

using snags::Evidence;

Evidence linked(std::optional<double> margin, double lostFrom, double lostUntil) {
  Evidence evidence = snags::quietTake();
  snags::LinkOver over{"focus", {}};
  for (const auto& sample : evidence.samples) {
    std::optional<snags::LinkAt> at;
    const bool lost = sample.time > lostFrom - 1e-9 && sample.time < lostUntil + 1e-9;
    if (margin) at = snags::LinkAt{10, lost ? -3.0 : *margin, 0, 0, 0};
    over.at.push_back(at);
  }
  evidence.links = {over};
  return evidence;
}

TEST(NeedState, OfALinkTellsTheLeastToSpareOrTheMostItIsShort) {
  EXPECT_EQ(linkState(linked(6, 20, 20), "focus", {0, 10}), "met, 6 dB to spare at least");
  const std::string lost = linkState(linked(6, 4, 4.9), "focus", {0, 10});
  EXPECT_EQ(lost.rfind("not met for 1.0 s, first at ", 0), 0u) << lost;
  EXPECT_TRUE(lost.ends_with(", up to 3 dB short")) << lost;
  EXPECT_EQ(linkState(linked(6, 4, 4.9), "focus", {6, 10}), "met, 6 dB to spare at least") << "not needed then";
  EXPECT_EQ(linkState(linked(std::nullopt, 4, 5), "focus", {0, 10}), "unknown: an end of it has no place");
}

std::string pole(double gap, std::optional<double> reach) {
  Evidence evidence = snags::quietTake();
  auto plan = std::make_shared<plan::Plan>(*evidence.plan);
  plan::Pole boom;
  boom.id = base::Id<plan::Pole>("p1");
  boom.reach = 3;
  boom.gap = {0.2, 0.9};
  plan->poles.add(boom);
  evidence.plan = plan;
  snags::BoomLine line{0, "p1", "ilse", {3, 4}, {}};
  for (int i = 0; i < 10; ++i) line.at.push_back({3 + i * 0.1, 2.0, gap, reach, "", 0, false, {}, {}});
  evidence.boom = {line};
  return poleState(evidence, "p1", {0, 10});
}

TEST(NeedState, OfAPoleTellsTheWidestGapOrHowMuchItIsShort) {
  EXPECT_EQ(pole(0.62, 2.5), "met, 0.62 m from the mouth at most");
  EXPECT_TRUE(pole(1.1, 2.5).starts_with("not met for 1.0 s, first at ")) << pole(1.1, 2.5);
  EXPECT_TRUE(pole(1.1, 2.5).ends_with(", 1.10 m from the mouth at most")) << pole(1.1, 2.5);
  EXPECT_TRUE(pole(0.62, 3.3).ends_with(", up to 0.30 m short")) << pole(0.62, 3.3);
  EXPECT_TRUE(pole(0.62, std::nullopt).starts_with("unknown")) << pole(0.62, std::nullopt);
}

}  // namespace
}  // namespace wend::sheets
