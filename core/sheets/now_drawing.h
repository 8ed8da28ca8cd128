/// The now panel: clock and beat, who is sharp and how easily, the lens, the next cue, the worst snag; 240 px wide.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/answers/answers.h"
#include "core/geometry/drawing.h"

namespace wend::sheets {

/// A move that runs or comes: a pull, a zoom, an iris move.
struct NextCue {
  double at = 0, until = 0;
  std::string name;    ///< "zoom", "pull", "iris"
  std::string change;  ///< "28 → 35", distances in the trade's steps
};

/// The moves that are not over at t, in order of their start, at most `most`.
std::vector<NextCue> nextCues(const answers::Answers& answers, double t, std::size_t most);

/// Worst first: three bars before two, then soonest, among those that run or begin within five seconds and that nobody
/// accepted.
const snags::Snag* worstSnag(const snags::Snags& snags, double t);

/// `crew` is the one of the crew who is chosen: when they have to be gone is told, else of whoever is first.
///
/// Frame     px, y down. From 528 px of height on it stands as roomy as it is meant; below, lines that say least are
///           left out, down to 416 px.
/// Ensures   (1) no text is wider than what is kept for it, whatever the plan's names and numbers
geometry::Drawing nowDrawing(const answers::Answers& answers, const answers::Instant& instant, bool stale, double width,
                             double height, const std::string& crew = {});

/// Where the card of the worst snag begins in a panel of that height.
double snagCardTop(double height);

/// The panel in words: "1:00.0, beat 6, sharp on Tom at 2.80 m, 28 mm, T4".
std::string nowInWords(const answers::Answers& answers, const answers::Instant& instant);

}  // namespace wend::sheets
