// A zoom turns round soon after it ended: the eye forgives one change of size, not one taken back.
#include "core/base/text.h"
#include "core/pulls/zoom_feather.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::vector<pulls::Move> zoomsOf(const Evidence& evidence) {
  std::vector<pulls::Move> zooms;
  for (const Move& move : evidence.moves) {
    if (move.axis != Move::Axis::zoom) continue;
    pulls::Move zoom;
    zoom.from = move.from;
    zoom.until = move.until;
    zoom.valueBefore = move.valueBefore;
    zoom.valueAfter = move.valueAfter;
    zooms.push_back(zoom);
  }
  return zooms;
}

std::string zoomText(const pulls::Move& zoom) {
  return base::fixed(zoom.valueBefore, 0) + " to " + base::fixed(zoom.valueAfter, 0) + " mm";
}

}  // namespace

Findings zoomTurns(const Evidence& evidence) {
  Findings findings;
  const Threshold row = threshold(*evidence.plan, "zoom-turns");
  const auto zooms = zoomsOf(evidence);
  for (const std::size_t k : pulls::reversals(zooms, row.value)) {
    const pulls::Move &before = zooms[k - 1], &back = zooms[k];
    findings.push_back({"zoom", "", before.until, back.from, std::nullopt, row.severity,
                        "the zoom turns round after " + seconds(back.from - before.until) + ": " + zoomText(before) +
                            ", then " + zoomText(back),
                        "leave " + seconds(row.value) + " between them, or leave one of them out"});
  }
  return findings;
}

}  // namespace wend::snags
