// An iris, a density or a zoom changes faster than what covers it hides: over the rate by a little worth knowing, by
// twice a risk. A zoom that is the lesser part of what moves in the picture hides in that.
#include <cmath>

#include "core/base/text.h"
#include "core/pulls/zoom_cover.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

std::string rateText(const Move& move, double rate) {
  return move.axis == Move::Axis::zoom ? base::fixed(rate, 1) + " %/s" : base::fixed(rate, 2) + " stop/s";
}

std::string allowedText(const Move& move) {
  if (move.exposed->allowed <= 0) return "nothing hides it: the frame stands still";
  return "the fastest that hides there is " + rateText(move, move.exposed->allowed);
}

std::string mendText(const Move& move) {
  if (!move.better) return "make it slower, or give it a doorway, a body that crosses, a pan or a cue of light";
  return "from " + base::fixed(move.better->span.from, 1) + " to " + seconds(move.better->span.until) +
         " all of it would hide: " + move.betterCover + ", at " + rateText(move, move.better->rate);
}

std::string changeText(const Move& move) {
  const std::string axis = wordOf(move.axis);
  if (move.cut()) return axis + " cut shows: in no time at all at " + seconds(move.from) + ", and " + allowedText(move);
  return axis + (move.axis == Move::Axis::zoom ? "" : " ramp") + " shows: " + rateText(move, move.exposed->rate) +
         " at " + seconds(move.exposed->at) + ", and " + allowedText(move) + "; " + seconds(move.exposed->seconds) +
         " of it over that";
}

}  // namespace

Findings rampSeen(const Evidence& evidence) {
  Findings findings;
  const Threshold some = threshold(*evidence.plan, "ramp-seen"), much = threshold(*evidence.plan, "ramp-seen-twice");
  for (const Move& move : evidence.moves) {
    // A cut is over before anybody has held it, and seen all the same.
    if (!move.exposed || move.exposed->worst <= some.value) continue;
    if (!move.cut() && move.exposed->seconds < some.hold) continue;
    if (pulls::hidesInFlow(move.flowShare)) continue;
    findings.push_back({wordOf(move.axis), "", move.from, move.until, std::nullopt,
                        move.exposed->worst > much.value ? much.severity : some.severity, changeText(move),
                        mendText(move)});
  }
  return findings;
}

}  // namespace wend::snags
