// Links, booms and cables at an instant, in words.
#include "core/base/text.h"
#include "core/sheets/text_tables.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"

namespace wend::sheets {

using namespace snags;
using base::fixed;

namespace {

std::string linkWords(const plan::Plan& plan, const std::optional<LinkAt>& at) {
  if (!at) return "unknown: an end is not there";
  return fixed(at->margin, 0) + " dB to spare over " + lengthText(plan, at->metres) + "; walls " +
         std::to_string(at->walls) + ", doors " + std::to_string(at->leaves) + ", bodies " + std::to_string(at->bodies);
}

std::string boomWords(const plan::Plan& plan, const TrapsNow::Line& line) {
  const BoomAt& at = line.at;
  std::string words = nameOf(plan, line.pole) + " over " + nameOf(plan, line.who) + ": to mouth " +
                      (at.gap ? lengthText(plan, *at.gap) : "unknown") + ", reach " +
                      (at.reach ? lengthText(plan, *at.reach) : "unknown");
  if (!at.lamp.empty()) words += ", " + nameOf(plan, at.lamp) + " at " + lengthText(plan, at.lampMetres);
  return words + (at.walled ? ", through the set" : "");
}

}  // namespace

std::string trapsText(const plan::Plan& plan, const TrapsNow& traps) {
  std::string text;
  for (const auto& [id, at] : traps.links) text += "link     " + nameOf(plan, id) + ": " + linkWords(plan, at) + "\n";
  for (const auto& line : traps.booms) text += "boom     " + boomWords(plan, line) + "\n";
  for (const auto& shut : traps.shutIn)
    text += "cable    " + cableNameOf(plan, shut.cable) + " is shut in by " + nameOf(plan, shut.opening) + "\n";
  if (traps.cameraCableOut)
    text += "cable    the camera's, " + lengthText(plan, *traps.cameraCableOut) + " out of " +
            lengthText(plan, plan.camera.cable->length) + "\n";
  return text;
}

}  // namespace wend::sheets
