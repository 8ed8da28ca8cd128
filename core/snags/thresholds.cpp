#include "core/snags/thresholds.h"

#include <algorithm>

#include "core/base/check.h"

namespace wend::snags {

namespace {

constexpr const char* kPractice = "common practice, no source";

const std::vector<Threshold> kTable = {
    {"crew-seen", 0, "s in sight", 0, Severity::stops, "what the word clear means; no number"},
    {"route-impossible", 0, "s seen at best", 0, Severity::stops, "what the word unseen means; no number"},
    {"need-unmet", 0.5, "s away from what somebody needs", 0, Severity::note, kPractice},
    {"subject-lost", 0.5, "s out or hidden", 0.5, Severity::risks, kPractice},
    {"warmth", 1, "sharp half band over wobble", 0.5, Severity::risks, kPractice},
    {"too-close", 1, "of the close focus", 0, Severity::stops, "the lens' own scale"},
    {"lens-limits", 0, "s outside the lens", 0, Severity::stops, "the lens' own scales"},
    {"barrel", 1, "of the lens' limit, deg/s", 0.1, Severity::risks, kPractice},
    {"slack-unmet", 0, "s outside the slack or the limit", 0, Severity::risks, "what the word slack means; no number"},
    {"zoom-clipped", 0, "s out of the zoom's reach", 0, Severity::note, "the lens' own scale"},
    {"exposure", 2.0 / 3, "stop", 1, Severity::risks, kPractice},
    {"pan", 1.0 / 7, "of the field of view a second", 0.5, Severity::note,
     "7 s across the frame: the judder rule of a cinematographers' handbook, figures in tests/published"},
    {"pan-held", 0.1, "frame a second: a subject slower than this is held", 0, Severity::note, kPractice},
    {"clearance-red", 0.15, "m", 0, Severity::stops, kPractice},
    {"clearance-tight", 0.30, "m", 0, Severity::note, kPractice},
    {"clearance-hot", 0.30, "m more beside hot things", 0, Severity::stops, kPractice},
    {"bodies-meet", 0, "m between two bodies", 0, Severity::stops, "what the word overlap means; no number"},
    {"door-late", 0, "s before it is open", 0, Severity::stops, "what the word shut means; no number"},
    {"lens-speed", 1.3, "m/s", 0, Severity::risks, kPractice},
    {"backwards", 0, "s of walking backwards", 0.2, Severity::note, kPractice},
    {"backwards-brisk", 0.8, "m/s", 0, Severity::risks, kPractice},
    {"backwards-most", 1.1, "m/s", 0, Severity::stops, kPractice},
    {"crew-speed", 1.0, "m/s", 0, Severity::note, kPractice},
    {"mark-in-frame", 0.5, "s in the frame", 0.5, Severity::note, kPractice},
    {"aim-cut", 0.5, "degree", 0, Severity::risks, kPractice},
    {"through-sight", 0, "s", 0, Severity::note, kPractice},
    {"step", 0.01, "m high", 0, Severity::note, kPractice},
    {"link-lost", 0, "dB left of the budget", 0.2, Severity::risks, "what the word budget means; no number"},
    {"link-thin", 6, "dB left of the budget", 0.5, Severity::note, kPractice},
    {"link-late", 1, "of the sharp band's nearer half", 0.5, Severity::note, kPractice},
    {"boom-gap", 1, "of the pole's longest gap to the mouth", 0.3, Severity::risks, kPractice},
    {"boom-reach", 1, "of the pole's reach", 0.3, Severity::risks, kPractice},
    {"shadow", 0.1, "of the light on a face", 0.2, Severity::risks, kPractice},
    {"surface-shadow", 0.1, "of the light on a wall or the ground", 0.2, Severity::risks, kPractice},
    {"cable-shut-in", 0, "s shut", 0, Severity::risks, kPractice},
    {"cable-short", 1, "of the cable's length", 0, Severity::stops, "the cable's own length"},
    {"exit-lane", 0, "s taken", 0, Severity::stops, kPractice},
    {"hazard", 0, "s in it", 0, Severity::risks, kPractice},
    {"keep-out", 0, "s in it", 0, Severity::risks, kPractice},
    {"shelter-full", 0, "s with more people than it holds", 2, Severity::risks, kPractice},
    {"lens-near", 0.9, "m from the lens to a performer", 0, Severity::risks, kPractice},
    {"lock-up", 0, "s seen", 0.5, Severity::note, kPractice},
    {"noisy-step", 0, "s of walking on noisy ground under a line", 0.3, Severity::note, kPractice},
    {"ramp-seen", 1, "of the rate that hides", 0.25, Severity::note, kPractice},
    {"ramp-seen-twice", 2, "of the rate that hides", 0.25, Severity::risks, kPractice},
    {"ramp-unnoticed", 0.05, "stop/s: slower than this is noticed in no frame", 0, Severity::note, kPractice},
    {"zoom-turns", 4, "s from a zoom to one back", 0, Severity::note, kPractice},
    {"zoom-balance", 0.003, "m of balance moved while the camera stands", 0, Severity::note, kPractice},
    {"handover-hot", 0, "s outside a quiet stretch", 0, Severity::risks, kPractice},
    {"glass-mirror", 0.5, "of the brightness that comes through, looked at square on", 0.2, Severity::note,
     "Fresnel's equations for clear glass; the half itself is common practice, no source"},
    {"glass-shows", 0, "s in the glass", 0.2, Severity::risks, kPractice},
    {"gloss", 20, "degrees off the mirror that would show somebody", 0.4, Severity::note, kPractice},
    {"sun-in-lens", 10, "degrees off the frame", 0.2, Severity::note, kPractice},
    {"sun-shadow", 0, "s in frame", 0.2, Severity::risks, kPractice},
    {"faces-apart", 2, "stops between two faces in frame", 0.5, Severity::risks, kPractice},
    {"opens-at-hot-pull", 0.5, "s between an iris that opens and hot focus", 0, Severity::risks, kPractice},
    {"distances-apart", 0.5, "of the sharp band's nearer half", 0.5, Severity::note, kPractice},
    {"flicker", 0.1, "stop from frame to frame", 0, Severity::risks, kPractice},
    {"light-unknown", 0, "s with a face in frame whose light is not known", 0.5, Severity::note, kPractice},
    {"boom-lamp", 0.3, "m from the pole to a lamp", 0, Severity::risks, kPractice},
};

}  // namespace

const std::vector<Threshold>& thresholdTable() {
  return kTable;
}

Threshold threshold(const plan::Plan& plan, const std::string& name) {
  const auto found = std::find_if(kTable.begin(), kTable.end(), [&](const Threshold& row) { return row.name == name; });
  WEND_CHECK(found != kTable.end());
  Threshold row = *found;
  const auto factor = plan.thresholds.find(name);
  if (factor != plan.thresholds.end()) row.value *= factor->second;
  return row;
}

}  // namespace wend::snags
