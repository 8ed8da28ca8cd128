#include "core/sheets/stave_room.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace wend::sheets {

namespace {

struct Least {
  const char* name;
  double height;
};
/// What curves still read at.
constexpr Least kCurves[] = {{"sharp", 64}, {"iris, faces", 48}};
/// Who folds first.
constexpr const char* kFoldFirst[] = {"speech", "pan, speed", "doors, lights", "zoom", "iris, faces", "in frame"};
/// The least that is left between what is pinned.
constexpr double kBetween = 40;

const Least* curveOf(const StaveBox& box) {
  const auto* found =
      std::find_if(std::begin(kCurves), std::end(kCurves), [&](const Least& least) { return box.name == least.name; });
  return box.folded || found == std::end(kCurves) ? nullptr : found;
}

StaveBox* named(std::vector<StaveBox>& boxes, const std::string& name) {
  const auto found = std::find_if(boxes.begin(), boxes.end(), [&](const StaveBox& box) { return box.name == name; });
  return found == boxes.end() ? nullptr : &*found;
}

double heightOf(const std::vector<StaveBox>& boxes) {
  double height = 0;
  for (const auto& box : boxes) height += box.height;
  return height;
}

void shrinkCurves(double over, std::vector<StaveBox>& boxes) {
  double give = 0;
  for (const auto& box : boxes)
    if (const Least* least = curveOf(box)) give += std::max(0.0, box.height - least->height);
  if (over <= 0 || give <= 0) return;
  for (auto& box : boxes)
    if (const Least* least = curveOf(box))
      box.height -= std::ceil(std::min(1.0, over / give) * std::max(0.0, box.height - least->height));
}

/// Folds until all is in sight, then opens again what room was left for, the most wanted first.
void foldByNeed(const ScoreView& view, std::vector<StaveBox>& boxes) {
  std::vector<std::pair<StaveBox*, double>> folded;
  for (const char* name : kFoldFirst) {
    if (heightOf(boxes) <= view.shownHeight) break;
    StaveBox* box = named(boxes, name);
    if (!box || box->folded || std::find(view.opened.begin(), view.opened.end(), name) != view.opened.end()) continue;
    folded.emplace_back(box, box->height);
    box->folded = true;
    box->height = kFoldedStave;
  }
  for (auto at = folded.rbegin(); at != folded.rend(); ++at) {
    if (heightOf(boxes) + at->second - kFoldedStave > view.shownHeight) continue;
    at->first->folded = false;
    at->first->height = at->second;
  }
}

void growCurves(double left, std::vector<StaveBox>& boxes) {
  auto count = std::count_if(boxes.begin(), boxes.end(), [](const StaveBox& box) { return curveOf(box); });
  for (StaveBox& box : boxes) {
    if (left <= 0 || !curveOf(box)) continue;
    const double more = std::min(box.height, std::floor(left / static_cast<double>(count--)));
    box.height += more;
    left -= more;
  }
}

void stack(std::vector<StaveBox>& boxes) {
  double top = 0;
  for (auto& box : boxes) {
    box.top = top;
    top += box.height;
  }
}

/// Each where it lies or, scrolled out of sight, at the edge.
void pin(const ScoreView& view, std::vector<StaveBox>& boxes) {
  double upper = view.shownFrom, lower = view.shownFrom + view.shownHeight;
  for (const char* name : {"clock", "beats"})
    if (StaveBox* box = named(boxes, name)) {
      box->top = upper;
      box->pinned = true;
      upper += box->height;
    }
  for (const char* name : {"snags", "crew"}) {
    StaveBox* box = named(boxes, name);
    if (!box || lower - box->height - upper < kBetween) return;
    box->top = std::min(box->top, lower - box->height);
    box->pinned = true;
    lower = box->top;
  }
}

}  // namespace

void shareRoom(const ScoreView& view, std::vector<StaveBox>& boxes) {
  const bool scrolls = view.shownHeight > 0;
  if (scrolls) {
    shrinkCurves(heightOf(boxes) - view.shownHeight, boxes);
    foldByNeed(view, boxes);
  }
  growCurves(view.height - heightOf(boxes), boxes);
  stack(boxes);
  if (scrolls && heightOf(boxes) > view.shownHeight) pin(view, boxes);
}

geometry::Span uncovered(const std::vector<StaveBox>& boxes, const StaveBox& box) {
  geometry::Span free{box.top, box.top + box.height};
  if (box.pinned) return free;
  // Pinned staves keep the order of all: those before this one cover it from above, those behind it from below.
  bool before = true;
  for (const auto& other : boxes) {
    if (other.name == box.name) before = false;
    if (other.pinned && before) free.from = std::max(free.from, other.top + other.height);
    if (other.pinned && !before) free.until = std::min(free.until, other.top);
  }
  free.until = std::max(free.until, free.from);
  return free;
}

}  // namespace wend::sheets
