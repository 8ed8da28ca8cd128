// What the figures of a lens or light sheet hang on, and the same moves as the rings have them.
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"
#include "core/units/stop.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;
using base::fixed;

namespace {

std::string measuredText(plan::DistanceKind kind) {
  switch (kind) {
    case plan::DistanceKind::flat:
      return "along the lens to the plane of the eyes";
    case plan::DistanceKind::slant:
      return "on the slant to the eyes";
    case plan::DistanceKind::floor:
      return "along the floor";
  }
  return {};
}

/// "24", "23.98".
std::string rateText(const plan::Clock& clock) {
  return fixed(clock.rate(), clock.rateDenominator == 1 ? 0 : 2);
}

bool varies(const std::vector<plan::DensityKey>& keys) {
  return std::any_of(keys.begin(), keys.end(), [&](const auto& key) { return key.stops != keys.front().stops; });
}

/// What every ring and filter is set to before anything moves.
std::string startText(const answers::Take& take) {
  const plan::Plan& plan = take.plan();
  const Instant start = answers::sampleAt(take, 0);
  std::string text = "focus on " + focusNames(plan, start.focus);
  if (start.focus.known)
    text += " at " + units::lengthText(start.focus.setDistance, unitOf(plan), units::LengthStep::tape);
  return text + ", " + fixed(start.lens->focal, 0) + " mm, " + units::stopText(start.iris.set) +
         (start.iris.density > 0 ? ", " + fixed(start.iris.density, 1) + " stops of density in all" : ", no density");
}

TextTable setup(const answers::Take& take) {
  const plan::Plan& plan = take.plan();
  TextTable table({"what", "~figure"});
  if (plan.lens) table.add({"At 0.0", startText(take)});
  if (plan.lens)
    table.add({"Lens",
               {plan.lens->name + ", T" + base::shortest(plan.lens->stop[0]) + " to T" +
                    base::shortest(plan.lens->stop[1]) + ", close focus " + lengthText(plan, plan.lens->closeFocus),
                {{"widestTStop", plan.lens->stop[0]},
                 {"narrowestTStop", plan.lens->stop[1]},
                 {"closeFocusMetres", plan.lens->closeFocus}}}});
  if (const std::string uncharted = unchartedText(plan); !uncharted.empty()) table.add({"Barrel", uncharted});
  table.add({"Distances", figure("from the sensor, " + measuredText(plan.focus.distance) + "; sharp within " +
                                     base::shortest(plan.camera.blurCircle) + " mm of blur",
                                 "blurCircleMm", plan.camera.blurCircle)});
  std::string exposure = "EI " + fixed(plan.camera.exposureIndex, 0) + ", shutter " +
                         base::shortest(plan.camera.shutterDeg) + "\u00b0 at " + rateText(plan.clock) +
                         " frames a second";
  if (plan.camera.ndStops > 0) exposure += ", density " + fixed(plan.camera.ndStops, 1) + " stops";
  if (varies(plan.camera.nd))
    exposure += ", variable density as told below";
  else if (!plan.camera.nd.empty())
    exposure += ", variable density left at " + fixed(plan.camera.nd.front().stops, 1) + " stops";
  table.add({"Exposure",
             {exposure,
              {{"exposureIndex", plan.camera.exposureIndex},
               {"shutterDegrees", plan.camera.shutterDeg},
               {"framesPerSecond", plan.clock.rate()},
               {"densityStops", plan.camera.ndStops}}}});
  return table;
}

/// Every move whose ring is marked, in degrees of barrel, and the word or deed that gives the cue.
TextTable rings(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">#", "axis", ">barrel from", ">to", ">at most", "~after", "~on the cue"});
  std::size_t number = 0;
  for (const auto& move : answers.evidence->moves) {
    ++number;
    if (move.barrelBefore == 0 && move.barrelAfter == 0) continue;
    const plan::Beat* beat = plan.beats.find(move.beat);
    table.add({count("move", number), wordOf(move.axis), degreesCell("from", move.barrelBefore),
               degreesCell("to", move.barrelAfter),
               figure(degreesRateText(move.peakDegPerSecond), "peakDegreesPerSecond", move.peakDegPerSecond),
               figure(beatText(plan, move.beat, move.plus), "plusSeconds", move.plus),
               beat && !beat->cue.empty() ? beat->cue : "\u2013"});
  }
  return table;
}

}  // namespace

std::vector<SheetPart> setupParts(const Answers& answers) {
  return {{"What it is worked out for", setup(*answers.take)}};
}

std::vector<SheetPart> ringParts(const Answers& answers) {
  TextTable table = rings(answers);
  if (table.empty()) return {};
  return {{"The same on the rings, and what gives the cue", std::move(table)}};
}

}  // namespace wend::sheets
