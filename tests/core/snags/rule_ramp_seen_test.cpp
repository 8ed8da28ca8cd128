// Ramps that show and zooms taken back, in takes written by hand.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Move ramp(double worst, double seconds) {
  Move move;
  move.axis = Move::Axis::iris;
  move.from = 3;
  move.until = 5;
  move.exposed = pulls::Exposed{worst, 4, 0.25 * worst, 0.25, seconds};
  return move;
}

Snags withMoves(const std::vector<Move>& moves) {
  return with([&](Evidence& evidence) { evidence.moves = moves; });
}

TEST(RampSeen, CountsWhatIsFasterThanItsCoverHides) {
  expectOne(withMoves({ramp(1.5, 1)}), "ramp-seen", Severity::note);
  expectOne(withMoves({ramp(2.5, 1)}), "ramp-seen", Severity::risks);
  EXPECT_TRUE(withMoves({ramp(1, 0)}).empty()) << "exactly what hides";
  EXPECT_TRUE(withMoves({ramp(1.5, 0.2)}).empty()) << "for a blink only";
}

TEST(RampSeen, LeavesAZoomAloneThatIsTheLesserPartOfWhatMoves) {
  Move zoom = ramp(2.5, 1);
  zoom.axis = Move::Axis::zoom;
  zoom.flowShare = 0.51;
  expectOne(withMoves({zoom}), "ramp-seen", Severity::risks);
  zoom.flowShare = 0.5;
  EXPECT_TRUE(withMoves({zoom}).empty());
}

TEST(RampSeen, NamesTheBetterPlace) {
  Move move = ramp(2.5, 1);
  EXPECT_NE(withMoves({move})[0].mend.find("make it slower"), std::string::npos);
  move.better = pulls::Slot{{6, 8}, 0.5, 1};
  move.betterCover = "D2";
  EXPECT_EQ(withMoves({move})[0].mend, "from 6.0 to 8.0 s all of it would hide: D2, at 0.50 stop/s");
}

Move zoom(double from, double until, double before, double after) {
  Move move;
  move.axis = Move::Axis::zoom;
  move.from = from;
  move.until = until;
  move.valueBefore = before;
  move.valueAfter = after;
  return move;
}

TEST(ZoomTurns, CountsAZoomTakenBackWithinFourSeconds) {
  expectOne(withMoves({zoom(1, 2, 30, 40), zoom(5.9, 7, 40, 35)}), "zoom-turns", Severity::note);
  EXPECT_TRUE(withMoves({zoom(1, 2, 30, 40), zoom(6, 7, 40, 35)}).empty()) << "four seconds after";
  EXPECT_TRUE(withMoves({zoom(1, 2, 30, 40), zoom(4, 7, 40, 50)}).empty()) << "goes on the same way";
}

}  // namespace
}  // namespace wend::snags
