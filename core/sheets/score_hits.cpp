// What of crew and snags lies under a place on the score: what is drawn there, read back.
#include <algorithm>
#include <cmath>

#include "core/sheets/stave.h"
#include "core/sheets/stave_room.h"

namespace wend::sheets {

namespace {

constexpr double kLaneReach = 5, kBarReach = 3;

const StaveBox* boxAt(const std::vector<StaveBox>& boxes, const std::string& name, double y) {
  for (const auto& box : boxes) {
    const geometry::Span free = uncovered(boxes, box);
    if (box.name == name && !box.folded && y >= free.from && y < free.until) return &box;
  }
  return nullptr;
}

}  // namespace

std::optional<CrewOnScore> crewAt(const answers::Answers& answers, const ScoreView& view, geometry::Point px) {
  if (px.x < view.labels || px.x > view.width - view.scales) return std::nullopt;
  const auto boxes = stavesOf(answers.take->plan(), view);
  if (!boxAt(boxes, "crew", px.y)) return std::nullopt;
  for (const auto& lane : crewLanes(answers, view)) {
    if (std::abs(lane.y - px.y) > kLaneReach) continue;
    CrewOnScore found{lane.crew, std::nullopt};
    const double t = view.time(px.x);
    if (const auto* track = answers.take->people().crew(lane.crew)) {
      const auto& marks = track->marks();
      // Left already, and another one comes: they walk towards that.
      std::size_t mark = 0;
      while (mark + 1 < marks.size() && t > marks[mark].until) ++mark;
      found.mark = mark;
    }
    return found;
  }
  return std::nullopt;
}

const snags::Snag* snagAt(const answers::Answers& answers, const ScoreView& view, geometry::Point px) {
  const auto boxes = stavesOf(answers.take->plan(), view);
  const StaveBox* box = boxAt(boxes, "snags", px.y);
  if (!box || !answers.snags || px.x < view.labels - kSnagLozengeHalf) return nullptr;
  const snags::Snag* best = nullptr;
  double nearest = 0;
  for (const auto& snag : *answers.snags) {
    if (snag.accepted) continue;
    const double x = view.x(snag.from), down = px.y - box->top;
    const SnagRow row = snagRow(snag.severity);
    const bool lozenge = snag.severity == snags::Severity::stops &&
                         std::abs(px.x - x) + std::abs(down - kSnagLozenge) <= kSnagLozengeHalf + 1;
    const bool bar = px.x >= x - kBarReach && px.x <= view.x(snag.until) + kBarReach && down >= row.top - kBarReach &&
                     down <= row.top + row.thick + kBarReach;
    const double away = std::abs(px.x - x);
    if (!(lozenge || bar) ||
        (best && (snag.severity > best->severity || (snag.severity == best->severity && away >= nearest))))
      continue;
    best = &snag;
    nearest = away;
  }
  return best;
}

}  // namespace wend::sheets
