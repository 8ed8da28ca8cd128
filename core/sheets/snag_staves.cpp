#include "core/sheets/snag_staves.h"

#include <map>

namespace wend::sheets {

namespace {

const std::map<std::string, std::string>& staveByRule() {
  static const std::map<std::string, std::string> table{{"subject-lost", "in frame"},
                                                        {"mark-in-frame", "in frame"},
                                                        {"through-sight", "in frame"},
                                                        {"lock-up", "in frame"},
                                                        {"glass-mirror", "in frame"},
                                                        {"glass-shows", "in frame"},
                                                        {"gloss", "in frame"},
                                                        {"hot-focus", "sharp"},
                                                        {"too-close", "sharp"},
                                                        {"barrel-fast", "sharp"},
                                                        {"link-late", "sharp"},
                                                        {"handover-hot", "sharp"},
                                                        {"zoom-turns", "zoom"},
                                                        {"zoom-clipped", "zoom"},
                                                        {"zoom-balance", "zoom"},
                                                        {"exposure", "iris, faces"},
                                                        {"faces-apart", "iris, faces"},
                                                        {"opens-at-hot-pull", "iris, faces"},
                                                        {"distances-apart", "sharp"},
                                                        {"light-unknown", "iris, faces"},
                                                        {"pan-fast", "pan, speed"},
                                                        {"jump", "pan, speed"},
                                                        {"backwards", "pan, speed"},
                                                        {"speed", "pan, speed"},
                                                        {"step-crossed", "pan, speed"},
                                                        {"clearance", "pan, speed"},
                                                        {"cable-short", "pan, speed"},
                                                        {"cable-shut-in", "doors, lights"},
                                                        {"door-late", "doors, lights"},
                                                        {"shadow", "doors, lights"},
                                                        {"surface-shadow", "doors, lights"},
                                                        {"flicker", "doors, lights"},
                                                        {"sun-in-lens", "doors, lights"},
                                                        {"sun-shadow", "doors, lights"},
                                                        {"boom-lamp", "speech"},
                                                        {"boom-gap", "speech"},
                                                        {"boom-reach", "speech"},
                                                        {"noisy-step", "speech"},
                                                        {"crew-seen", "crew"},
                                                        {"route-impossible", "crew"},
                                                        {"need-unmet", "crew"},
                                                        {"bodies-meet", "crew"},
                                                        {"exit-lane", "crew"},
                                                        {"hazard", "crew"},
                                                        {"keep-out", "crew"},
                                                        {"shelter-full", "crew"},
                                                        {"lens-near", "crew"},
                                                        {"link-lost", "crew"},
                                                        {"link-thin", "crew"}};
  return table;
}

}  // namespace

std::string staveOf(const snags::Snag& snag) {
  const auto known = staveByRule().find(snag.rule);
  if (known != staveByRule().end()) return known->second;
  if (snag.who == "focus") return "sharp";
  if (snag.who == "zoom") return "zoom";
  if (snag.who == "iris" || snag.who == "density") return "iris, faces";
  return "snags";
}

}  // namespace wend::sheets
