/// The score: the take laid out along the clock, one stave a department. To add a stave write stave_<name>.cpp with a
/// function of StavePainter, and give it a line in the list in score_drawing.cpp.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/answers/answers.h"
#include "core/geometry/drawing.h"

namespace wend::sheets {

struct ScoreView {
  double width = 1920;
  double height = 0;             ///< px there are; what the staves do not need goes to sharp and iris, up to double
  double from = 0, until = 168;  ///< seconds shown
  double labels = 136, scales = 104;      ///< px left and right of the clock
  std::vector<std::string> folded;        ///< names of staves shown as a line of 16 px
  std::vector<std::string> opened;        ///< of those that do not fold when room is short
  double shownFrom = 0, shownHeight = 0;  ///< px of the score that are in sight; no height: all of it
  bool searching = false;                 ///< routes are being looked for: who has none yet may get one
  bool spotLane = false;                  ///< room over the crew for the lane of a clicked spot
  std::string chosenCrew;                 ///< the id of the crew member who is chosen, by a mark or as a whole
  std::string chosenKey;  ///< "focus/2", "pull/0", "zoom/1", "iris/3", "nd/1", "beat/b4", or a snag's key

  double x(double t) const { return labels + (t - from) * pxPerSecond(); }
  double time(double px) const { return from + (px - labels) / pxPerSecond(); }
  double pxPerSecond() const { return (width - labels - scales) / (until - from); }
};

/// Where a stave lies.
struct StaveBox {
  std::string name;
  double top = 0, height = 0;
  bool folded = false;
  bool pinned = false;  ///< at an edge of what is in sight, whatever is scrolled under it
};

/// In the order in which they lie when nothing is scrolled; how they share the height is told in stave_room.h. A
/// variable density has a stave where the plan has one.
std::vector<StaveBox> stavesOf(const plan::Plan& plan, const ScoreView& view);
double scoreHeight(const plan::Plan& plan, const ScoreView& view);

/// All staves there are, from top to bottom.
std::vector<std::string> staveNames();

/// Whose score it is.
enum class Role { everybody, assistant, photography, director, operating, floor, sound };

/// The staves that are folded for somebody: everybody reads clock, beats and snags.
std::vector<std::string> foldedFor(Role role);

/// Behind the name of a key's handle: the handle of where the key begins. Without it: where it is done.
inline const std::string kStartOfKey = "/start";

/// Something on the score that can be taken hold of: a beat, or where a key is done or begins.
struct ScoreHandle {
  std::string key;  ///< as ScoreView::chosenKey, with kStartOfKey where the key begins
  double time = 0;
  double x = 0, y = 0;
  double value = 0;  ///< in the stave's own coordinate: 1/distance, log2 mm, stops
  double perPx = 0;  ///< of it, a px further up; 0: it has no value to be dragged
  bool cut = false;  ///< the key takes no time: begin and end are one
};
/// Ensures   (1) of a key both handles, or the end's alone where it is a cut or says how the take starts
///           (2) where there are hand pulls, they have handles on the sharp stave, and so do changes of subject
std::vector<ScoreHandle> scoreHandles(const answers::Answers& answers, const ScoreView& view);

/// A lane of the crew stave.
struct CrewLane {
  std::size_t crew = 0;  ///< in the plan's order
  double y = 0;          ///< of its line
};
/// Of everybody who does not go along with the camera. Empty while the stave is folded.
std::vector<CrewLane> crewLanes(const answers::Answers& answers, const ScoreView& view);

/// Of the crew, by a place on their lanes; with the mark that they stand on then or walk towards, where a way is drawn.
struct CrewOnScore {
  std::size_t crew = 0;
  std::optional<std::size_t> mark;
};
std::optional<CrewOnScore> crewAt(const answers::Answers& answers, const ScoreView& view, geometry::Point px);

/// The snag whose lozenge or bar is there, the worst where several are. Null where none is.
const snags::Snag* snagAt(const answers::Answers& answers, const ScoreView& view, geometry::Point px);

/// Everything but the playhead. `snags` and evidence of an older take may be shown: then `stale` dims them.
geometry::Drawing scoreDrawing(const answers::Answers& answers, const ScoreView& view, bool stale = false);
/// The playhead with its tag.
geometry::Drawing playheadDrawing(const plan::Plan& plan, const ScoreView& view, double t);

/// The ends of a chosen span over all staves, its seconds on the ruler.
geometry::Drawing spanDrawing(const plan::Plan& plan, const ScoreView& view, geometry::Span span);

/// The lane of a clicked spot: clear flat, seen as a box, above the crew.
void drawSpotLane(geometry::Drawing& drawing, const ScoreView& view, double top, const snags::SightOf& sight);

}  // namespace wend::sheets
