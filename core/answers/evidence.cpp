// The whole take: an instant a frame, and everything that takes a span of time to know.
#include <algorithm>
#include <cmath>
#include <future>

#include "core/answers/answers.h"
#include "core/answers/covers.h"
#include "core/answers/focus_rests.h"
#include "core/answers/hand_windows.h"
#include "core/answers/lens_work.h"
#include "core/answers/reuse.h"
#include "core/answers/route_needs.h"
#include "core/answers/who_is_sharp.h"
#include "core/answers/whole_take.h"

namespace wend::answers {

using namespace snags;

namespace {

base::Problem cancelled() {
  return {"cancelled", "", "", "", "a newer plan took its place"};
}

std::vector<Jump> aimCuts(const Take& take) {
  std::vector<Jump> jumps;
  for (const auto& cut : take.view().aim().cuts()) jumps.push_back({cut.at, std::hypot(cut.bearing, cut.tilt)});
  return jumps;
}

Instant sampled(const Take& take, double t, std::size_t k, const std::optional<Before>& before) {
  if (before && before->shot) return sampleLike(take, before->take, before->evidence.samples[k]);
  if (before && before->stage) return sampleNear(take, before->take, before->evidence.samples[k]);
  return sampleAt(take, t);
}

/// `alike`: whether the plans have all that is asked alike but the eye, widened by `margin`.
template <class Found>
ByInstant<Found> byInstant(const Take& take, const std::optional<Before>& before, bool alike, double margin,
                           std::vector<Found> KnownInstants::*found) {
  if (!before || !alike || !before->evidence.known) return {};
  return {take, before->take, before->evidence.known.get()->*found, margin};
}

bool sameThresholds(const Take& take, const std::optional<Before>& before) {
  return before && take.plan().thresholds == before->take.plan().thresholds;
}

/// A sample a frame and what is read off them; false when cancelled.
bool addSamples(const Take& take, const std::optional<Before>& before, const base::Cancel& cancel, Evidence& evidence,
                KnownInstants& known) {
  for (const double t : take.frameTimes()) {
    if (cancel.fired()) return false;
    evidence.samples.push_back(sampled(take, t, evidence.samples.size(), before));
  }
  auto clearances = clearancesOf(take, evidence.samples, cancel, before ? &*before : nullptr);
  if (!clearances) return false;
  evidence.clearances = std::move(*clearances);
  if (evidence.sightKnown) evidence.marks = before && before->view ? before->evidence.marks : marksSeen(take);
  evidence.leaves = leavesMet(take, evidence.samples);
  evidence.links = linksOver(take, evidence.samples);
  evidence.boom = boomLines(take, evidence.samples);
  evidence.shadows = shadowsOn(take, evidence.samples, evidence.boom);
  auto fallen = byInstant(take, before, sameThresholds(take, before) && before->stage, 0, &KnownInstants::fallen);
  evidence.surfaceShadows = surfaceShadows(take, evidence.samples, evidence.boom, &fallen);
  known.fallen = std::move(fallen).kept();
  evidence.sunInLens = sunInLens(take, evidence.samples);
  evidence.sunShadows = sunShadows(take, evidence.samples, evidence.boom);
  evidence.unmetNeeds = unmetNeeds(take);
  evidence.lanes = lanesTaken(take, evidence.samples);
  return true;
}

/// What the lens sees of people and ground.
struct Sights {
  std::vector<SightOf> people;
  std::vector<ThroughSight> throughs;
  std::vector<OutsideSeen> outside;
  std::vector<PaneMirror> panes;
  std::vector<snags::Glint> glints;
  std::vector<GlassAt> glass;             ///< of the panes
  std::vector<sight::ThroughStep> steps;  ///< of the throughs
};

/// Glass that has turned and glossy things, and whom they show; false when cancelled.
bool addPanes(const Take& take, const std::optional<Before>& before, const base::Cancel& cancel, Sights& sights) {
  // Lamps and people may have changed, and both turn glass, or gloss, into a mirror that shows somebody.
  if (before && before->evidence.known && samePanes(take, before->take)) {
    sights.panes = before->evidence.panes;
    // Those on found routes are looked for anew once their routes are.
    const auto& routed = before->evidence.routed;
    std::erase_if(sights.panes,
                  [&](const PaneMirror& pane) { return std::ranges::find(routed, pane.who) != routed.end(); });
    sights.glints = before->evidence.glints;
    sights.glass = before->evidence.known->glass;
    return true;
  }
  auto glass =
      byInstant(take, before, sameThresholds(take, before), take.plan().sightRules.margin, &KnownInstants::glass);
  auto panes = paneMirrors(take, cancel, &glass);
  if (!panes) return false;
  sights.panes = std::move(*panes);
  sights.glints = glintsOf(take, snags::threshold(take.plan(), "gloss").value);
  sights.glass = std::move(glass).kept();
  return true;
}

/// Nothing when cancelled.
std::optional<Sights> sightsOf(const Take& take, const std::optional<Before>& before, const base::Cancel& cancel) {
  if (!take.plan().lens) return Sights{};
  std::optional<KnownSights> known;
  if (before) known.emplace(take, before->take, before->evidence.sight);
  Sights sights;
  auto people = sightOfAll(take, cancel, known ? &*known : nullptr);
  if (!people || !addPanes(take, before, cancel, sights)) return std::nullopt;
  sights.people = std::move(*people);
  if (before && before->view && before->evidence.known) {
    sights.steps = before->evidence.known->throughs;
    sights.throughs = before->evidence.throughs;
    sights.outside = before->evidence.outside;
    return sights;
  }
  auto throughs = throughSights(take, cancel, before ? &*before : nullptr, &sights.steps);
  if (!throughs) return std::nullopt;
  sights.throughs = std::move(*throughs);
  auto outside = outsideSeen(take, cancel);
  if (!outside) return std::nullopt;
  sights.outside = std::move(*outside);
  return sights;
}

}  // namespace

base::Result<std::shared_ptr<const Evidence>> evidenceOf(const Take& take, const base::Cancel& cancel,
                                                         const Answers* earlier) {
  const std::optional<Before> before = beforeOf(take, earlier);
  auto evidence = std::make_shared<Evidence>();
  evidence->plan = take.planPtr();
  evidence->length = take.length();
  evidence->step = 1 / take.rate();
  evidence->sightKnown = take.plan().lens.has_value();
  // What is seen is half of the work and shares nothing with the rest but the take: the same answers in half the time.
  auto sights = std::async(std::launch::async, [&] { return sightsOf(take, before, cancel); });
  KnownInstants known;
  const bool sampled = addSamples(take, before, cancel, *evidence, known);
  auto seen = sights.get();
  if (!sampled || !seen) return cancelled();
  evidence->sight = std::move(seen->people);
  evidence->throughs = std::move(seen->throughs);
  evidence->outside = std::move(seen->outside);
  evidence->panes = std::move(seen->panes);
  evidence->glints = std::move(seen->glints);
  known.glass = std::move(seen->glass);
  known.throughs = std::move(seen->steps);
  evidence->known = std::make_shared<const KnownInstants>(std::move(known));
  evidence->crossings = crossingsOf(take);
  evidence->cablesShutIn = cablesShutIn(take);
  evidence->cameraCableOut = cameraCableOut(take);
  evidence->covers = coversOf(take, evidence->samples);
  evidence->moves = movesOf(take, evidence->samples, evidence->covers);
  evidence->work = lensWork(take.plan(), evidence->moves);
  evidence->handWindows = handWindows(take, evidence->samples, evidence->moves);
  evidence->sharp = sharpSpans(take, evidence->samples);
  evidence->together = togetherInFrame(take, evidence->samples);
  evidence->unmet = take.lens().unmet();
  evidence->rests = focusRests(take, evidence->samples);
  evidence->aimCuts = aimCuts(take);
  evidence->zoomClipped = take.view().zoom().clipped();
  return std::shared_ptr<const Evidence>(std::move(evidence));
}

base::Result<AnswersPtr> answersOf(const plan::PlanPtr& plan, const base::Cancel& cancel) {
  auto take = Take::of(plan);
  if (!take) return take.problems();
  return answersOf(*take, cancel);
}

base::Result<AnswersPtr> answersOf(const TakePtr& take, const base::Cancel& cancel) {
  auto evidence = evidenceOf(*take, cancel);
  if (!evidence) return evidence.problems();
  auto answers = std::make_shared<Answers>();
  answers->take = take;
  answers->evidence = *evidence;
  answers->snags = std::make_shared<const Snags>(snagsOf(**evidence));
  return AnswersPtr(std::move(answers));
}

}  // namespace wend::answers
