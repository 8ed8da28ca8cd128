// The whole take: an instant a frame, and everything that takes a span of time to know.
#include <algorithm>
#include <cmath>

#include "core/answers/answers.h"
#include "core/answers/whole_take.h"

namespace wend::answers {

using namespace snags;

namespace {

base::Problem cancelled() {
  return {"cancelled", "", "", "", "a newer plan took its place"};
}

/// Instants in which somebody's size is out of the lens' reach.
std::vector<Span> clippedZoom(const Take& take) {
  return geometry::spansWhere({0, take.length()}, 1 / take.rate(), [&](double t) { return take.view().clippedAt(t); });
}

std::vector<Jump> aimCuts(const Take& take) {
  std::vector<Jump> jumps;
  for (const auto& cut : take.view().aim().cuts()) jumps.push_back({cut.at, std::hypot(cut.bearing, cut.tilt)});
  return jumps;
}

}  // namespace

base::Result<std::shared_ptr<const Evidence>> evidenceOf(const Take& take, const base::Cancel& cancel) {
  auto evidence = std::make_shared<Evidence>();
  evidence->plan = take.planPtr();
  evidence->length = take.length();
  evidence->step = 1 / take.rate();
  for (const double t : take.frameTimes()) {
    if (cancel.fired()) return cancelled();
    evidence->samples.push_back(sampleAt(take, t));
  }
  evidence->sightKnown = take.plan().lens.has_value();
  if (evidence->sightKnown) {
    auto sight = sightOfAll(take, cancel);
    if (!sight) return cancelled();
    evidence->sight = std::move(*sight);
    auto throughs = throughSights(take, cancel);
    if (!throughs) return cancelled();
    evidence->throughs = std::move(*throughs);
    evidence->marks = marksSeen(take, evidence->samples);
  }
  auto clearances = clearancesOf(take, evidence->samples, cancel);
  if (!clearances) return cancelled();
  evidence->clearances = std::move(*clearances);
  evidence->crossings = crossingsOf(take);
  evidence->leaves = leavesMet(take, evidence->samples);
  evidence->moves = movesOf(take);
  evidence->unmet = take.lens().unmet();
  evidence->aimCuts = aimCuts(take);
  evidence->zoomClipped = clippedZoom(take);
  return std::shared_ptr<const Evidence>(std::move(evidence));
}

base::Result<AnswersPtr> answersOf(const plan::PlanPtr& plan, const base::Cancel& cancel) {
  auto take = Take::of(plan);
  if (!take) return take.problems();
  auto evidence = evidenceOf(**take, cancel);
  if (!evidence) return evidence.problems();
  auto answers = std::make_shared<Answers>();
  answers->take = *take;
  answers->evidence = *evidence;
  answers->snags = std::make_shared<const Snags>(snagsOf(**evidence));
  return AnswersPtr(std::move(answers));
}

}  // namespace wend::answers
