// A zoom moves the balance of a rig that a person holds still: what the arms correct then shows in the picture.
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/plan/rig_balance.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

bool carried(plan::RigKind kind) {
  return kind == plan::RigKind::stabilised || kind == plan::RigKind::handheld;
}

/// Metres by which the balance moves over those parts of the move in which the camera stands, and where the first of
/// them begins and the last one ends.
struct WhileStanding {
  double metres = 0;
  std::optional<Span> span;
};

WhileStanding whileStanding(const Evidence& evidence, const Move& move) {
  const auto& samples = evidence.samples;
  const auto& balance = evidence.plan->lens->balance;
  WhileStanding sum;
  for (std::size_t i = 0; i + 1 < samples.size(); ++i) {
    const Instant &now = samples[i], &next = samples[i + 1];
    if (next.time <= move.from || now.time >= move.until || now.camera.moving || !now.lens || !next.lens) continue;
    sum.metres += balance.at(next.lens->focal) - balance.at(now.lens->focal);
    const double from = std::max(now.time, move.from), until = std::min(next.time, move.until);
    sum.span = Span{sum.span ? sum.span->from : from, until};
  }
  return sum;
}

std::string shiftText(const plan::Rig& rig, const Move& move, double shift) {
  std::string text = "the zoom from " + base::fixed(move.valueBefore, 0) + " to " + base::fixed(move.valueAfter, 0) +
                     " mm moves the rig's balance " + base::fixed(1000 * std::abs(shift), 1) + " mm " +
                     (shift > 0 ? "forward" : "back") + " while the camera stands";
  if (const auto kg = plan::rigMass(rig))
    text += ", " + base::fixed(plan::balanceMoment(*kg, std::abs(shift)), 2) + " N\u00b7m to hold";
  return text;
}

std::string mendText(const plan::Lens& lens, const Move& move) {
  const auto best = plan::bestBalance(lens.balance, std::min(move.valueBefore, move.valueAfter),
                                      std::max(move.valueBefore, move.valueAfter));
  return "zoom while the camera walks, or balance the rig at " + base::fixed(best.focal, 0) +
         " mm: never further off than " + base::fixed(1000 * best.most, 1) + " mm then";
}

}  // namespace

Findings zoomBalance(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  if (!plan.lens || plan.lens->balance.constant() || !carried(plan.camera.rig.kind)) return findings;
  const Threshold row = threshold(plan, "zoom-balance");
  for (const Move& move : evidence.moves) {
    if (move.axis != Move::Axis::zoom) continue;
    const WhileStanding stood = whileStanding(evidence, move);
    if (!stood.span || std::abs(stood.metres) < row.value) continue;
    findings.push_back({"zoom", "", stood.span->from, stood.span->until, std::nullopt, row.severity,
                        shiftText(plan.camera.rig, move, stood.metres), mendText(*plan.lens, move)});
  }
  return findings;
}

}  // namespace wend::snags
