// Glass that turns into a mirror as the light beyond it goes.
#include <algorithm>
#include <cmath>

#include "core/answers/whole_take.h"
#include "tests/core/answers/dark_window.h"
#include "tests/samples.h"

namespace wend::answers {
namespace {

std::vector<snags::PaneMirror> mirrorsOf(const plan::Plan& plan) {
  return *paneMirrors(*takeOf(plan), {});
}

std::vector<std::string> shownIn(const std::vector<snags::PaneMirror>& mirrors) {
  std::vector<std::string> who;
  for (const auto& mirror : mirrors) who.push_back(mirror.who);
  return who;
}

// Square on, a pane returns R = 7.7 %: a mirror once R Lnear >= (1 - R) Lfar / 2, 2.59 stops down from T8: T3.26.
TEST(PaneMirrors, TurnWhereTheFarSideIsDarkEnough) {
  EXPECT_TRUE(mirrorsOf(darkWindow(3.4)).empty());
  const auto turned = mirrorsOf(darkWindow(3.2));
  ASSERT_FALSE(turned.empty());
  EXPECT_EQ(turned[0].pane, "w1");
  EXPECT_NEAR(turned[0].span.from, 0, 1e-9);
  EXPECT_NEAR(turned[0].span.until, 10, 0.11);
  EXPECT_NEAR(turned[0].darker, 2 * std::log2(8 / 3.2), 1e-9);
}

TEST(PaneMirrors, ShowTheCameraThatLooksSquareAndWhoStandsBesideIt) {
  plan::Plan plan = darkWindow(2);
  plan.crew.add(standing("grip", {0.6, -0.5}));
  plan.crew.add(standing("aside", {4.5, 0}));
  const auto who = shownIn(mirrorsOf(plan));
  EXPECT_EQ(std::count(who.begin(), who.end(), "camera"), 1);
  EXPECT_EQ(std::count(who.begin(), who.end(), "grip"), 1);
  EXPECT_EQ(std::count(who.begin(), who.end(), "aside"), 0) << "the law of reflection leads past the window";
}

TEST(PaneMirrors, ShowNobodyBehindAScreen) {
  plan::Plan plan = darkWindow(2);
  plan.crew.add(standing("grip", {0.6, -2}));
  plan::Piece screen;
  screen.id = base::Id<plan::Piece>("screen");
  screen.shape = plan::Line{{{-0.3, -1}, {2, -1}}};
  screen.top = 3;
  plan.set.pieces.add(screen);
  const auto who = shownIn(mirrorsOf(plan));
  EXPECT_EQ(std::count(who.begin(), who.end(), "grip"), 0);
}

TEST(PaneMirrors, AreNoneOfAnOpenLeafAgainstAWallOrOfUnknownLight) {
  plan::Plan open = darkWindow(2);
  plan::Opening leaf = open.set.openings[0];
  leaf.open = {{{}, 1, "", "", {}}};
  open.set.openings.replace(0, leaf);
  EXPECT_TRUE(mirrorsOf(open).empty()) << "without motion an open leaf is gone";
  leaf.moves = plan::LeafMoves{plan::LeafKind::slide, plan::LeafHinge::start, plan::WallSide::right, 90, {}};
  open.set.openings.replace(0, leaf);
  EXPECT_TRUE(mirrorsOf(open).empty()) << "slid before its wall it hangs over stone";
  plan::Plan dark = darkWindow(2);
  dark.set.areas.remove(1);
  EXPECT_TRUE(mirrorsOf(dark).empty()) << "unknown is no mirror";
}

plan::PlanPtr streetAt(double stop) {
  return std::make_shared<const plan::Plan>(firstBatchWithStreetAt(stop));
}

bool flags(const snags::Snags& snags, const std::string& rule, const std::string& pane) {
  return std::any_of(snags.begin(), snags.end(), [&](const auto& snag) {
    return snag.rule == rule && snag.key.find("/" + pane + "/") != std::string::npos;
  });
}

TEST(PaneMirrors, OfTheShopWindowAreFlaggedWithAStreetAtT2AndNotAtT11) {
  const AnswersPtr dark = *answersOf(streetAt(2)), day = *answersOf(streetAt(11));
  EXPECT_TRUE(flags(*dark->snags, "glass-mirror", "w1"));
  EXPECT_TRUE(flags(*dark->snags, "glass-shows", "w1"));
  EXPECT_FALSE(flags(*day->snags, "glass-mirror", "w1"));
  EXPECT_FALSE(flags(*day->snags, "glass-shows", "w1"));
  // By day it returns enough only along a slant, as any pane does, out in the street.
  for (const auto& pane : day->evidence->panes) {
    if (pane.pane != "w1") continue;
    EXPECT_GT(pane.incidence, 70);
    EXPECT_LT(pane.darker, 1);
    EXPECT_EQ(pane.who, "");
  }
}

}  // namespace
}  // namespace wend::answers
