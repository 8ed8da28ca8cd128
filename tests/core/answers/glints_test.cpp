// Whom glossy things may show, by the law of reflection and so many degrees.
#include <algorithm>

#include "core/answers/whole_take.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

/// The camera looks square at a cabinet 4 m away, its front 1 m wide and in frame at its middle.
plan::Plan cabinet() {
  plan::Plan plan = smallPlan();
  plan::Piece piece;
  piece.id = base::Id<plan::Piece>("cabinet");
  piece.shape = plan::Outline{{{-0.5, 4}, {0.5, 4}, {0.5, 4.4}, {-0.5, 4.4}}};
  piece.bottom = 0.6;
  piece.top = 1.8;
  piece.glossy = true;
  plan.set.pieces.add(piece);
  return plan;
}

std::vector<std::string> shown(const plan::Plan& plan, double degrees = 20) {
  std::vector<std::string> who;
  for (const snags::Glint& glint : glintsOf(*takeOf(plan), degrees))
    who.insert(who.end(), glint.who.begin(), glint.who.end());
  std::sort(who.begin(), who.end());
  return who;
}

// At 4.5 m to the side of where the lens stands, as seen from the middle of the front 48 degrees off square: a mirror
// that showed them would have to be turned by 24, from the near end of the front by 23.
TEST(Glints, AreOfWhomAMirrorTurnedByTwentyDegreesWouldShow) {
  plan::Plan plan = cabinet();
  plan.crew.add(standing("grip", {0.6, -0.5}));
  plan.crew.add(standing("aside", {4.5, 0}));
  plan.crew.add(standing("behind", {0, 6}));
  EXPECT_EQ(shown(plan), (std::vector<std::string>{"camera", "grip"}));
  EXPECT_EQ(shown(plan, 26), (std::vector<std::string>{"aside", "camera", "grip"}));
}

TEST(Glints, AreNoneOfWhatIsDullOutOfFrameOrHidden) {
  plan::Plan dull = cabinet();
  plan::Piece piece = dull.set.pieces[0];
  piece.glossy = false;
  dull.set.pieces.replace(0, piece);
  EXPECT_TRUE(shown(dull).empty());
  plan::Plan away = cabinet();
  away.camera.aims[0].on = plan::OnBearing{90, 0};
  EXPECT_TRUE(shown(away).empty());
  plan::Plan screened = cabinet();
  plan::Piece screen;
  screen.id = base::Id<plan::Piece>("screen");
  screen.shape = plan::Line{{{-3, 2}, {3, 2}}};
  screen.top = 3;
  screened.set.pieces.add(screen);
  EXPECT_TRUE(shown(screened).empty());
}

TEST(Glints, GoOnAsLongAsTheyAreThere) {
  plan::Plan plan = cabinet();
  const auto glints = glintsOf(*takeOf(plan), 20);
  ASSERT_EQ(glints.size(), 1U);
  EXPECT_EQ(glints[0].piece, "cabinet");
  EXPECT_NEAR(glints[0].span.from, 0, 1e-9);
  EXPECT_NEAR(glints[0].span.until, 10, 0.21);
}

}  // namespace
}  // namespace wend::answers
