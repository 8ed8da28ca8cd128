// Links over takes written by hand: the margin of every sample is given.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

/// A link with 20 dB to spare, but for the seconds from 3 until `until`.
Snags linkWith(double margin, double until, LinkAt like = {12, 0, 0, 0, 0}) {
  return with([&](Evidence& evidence) {
    LinkOver link{"focus", {}};
    for (const auto& sample : evidence.samples) {
      like.margin = sample.time > 3 - 1e-9 && sample.time < until + 1e-9 ? margin : 20;
      link.at.push_back(like);
    }
    evidence.links = {link};
  });
}

TEST(LinkLost, CountsBelowTheBudgetFromAFifthOfASecondOn) {
  expectOne(linkWith(-0.1, 3.2), "link-lost", Severity::risks);
  EXPECT_TRUE(linkWith(-0.1, 3.1).empty()) << "a tenth of a second";
  const Snags lost = linkWith(-7, 4, {41.5, 0, 2, 1, 1});
  ASSERT_EQ(lost.size(), 1u);
  EXPECT_EQ(lost[0].key, "link-lost/focus//b1/1");
  EXPECT_NEAR(lost[0].from, 3, 1e-9);
  EXPECT_NEAR(lost[0].until, 4, 1e-9);
  EXPECT_EQ(lost[0].text, "focus is 7 dB short over 41.50 m through 2 walls, a door and a body");
}

TEST(LinkThin, CountsUnderSixDecibelsForHalfASecond) {
  expectOne(linkWith(5.9, 3.5), "link-thin", Severity::note);
  EXPECT_TRUE(linkWith(5.9, 3.4).empty());
  EXPECT_TRUE(linkWith(6, 4).empty());
  EXPECT_EQ(linkWith(2, 4, {8, 0, 1, 0, 0})[0].text, "focus has only 2 dB to spare over 8.00 m through a wall");
}

TEST(LinkThin, LeavesTheEdgesOfALossToTheLoss) {
  const Snags snags = with([](Evidence& evidence) {
    LinkOver link{"focus", {}};
    for (const auto& sample : evidence.samples)
      link.at.push_back(LinkAt{12, std::abs(sample.time - 5) * 10 - 10, 0, 0, 0});
    evidence.links = {link};
  });
  expectOne(snags, "link-lost", Severity::risks);
}

TEST(LinkLost, SaysNothingWhileAnEndIsNotThere) {
  EXPECT_TRUE(with([](Evidence& evidence) {
                evidence.links = {{"focus", std::vector<std::optional<LinkAt>>(evidence.samples.size())}};
              }).empty());
}

}  // namespace
}  // namespace wend::snags
