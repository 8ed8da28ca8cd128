// What `wend pulls` answers: the moves of the lens and everything that is judged of them.
#include <nlohmann/json.hpp>

#include "core/answers/dimmers.h"
#include "core/answers/zoom_feather.h"
#include "core/exchange/json_values.h"
#include "core/exchange/verbs_json.h"
#include "core/pulls/zoom_cover.h"
#include "core/snags/stretch.h"

namespace wend::exchange {

using namespace snags;

namespace {

const char* wordOf(pulls::CoverKind kind) {
  switch (kind) {
    case pulls::CoverKind::movingFrame:
      return "movingFrame";
    case pulls::CoverKind::travel:
      return "travel";
    case pulls::CoverKind::pan:
      return "pan";
    case pulls::CoverKind::fastPan:
      return "fastPan";
    case pulls::CoverKind::leaf:
      return "leaf";
    case pulls::CoverKind::doorway:
      return "doorway";
    case pulls::CoverKind::crossing:
      return "crossing";
    case pulls::CoverKind::lightCue:
      return "lightCue";
    case pulls::CoverKind::swish:
      return "swish";
    case pulls::CoverKind::wipe:
      return "wipe";
  }
  return "";
}

/// What of a change stays seen; null for focus.
Json exposedOf(const Move& move) {
  if (!move.exposed) return nullptr;
  return {{"hides", move.exposed->worst <= 1},
          {"inFlow", pulls::hidesInFlow(move.flowShare)},
          {"at", move.exposed->at},
          {"rate", number(move.exposed->rate)},
          {"allowed", number(move.exposed->allowed)},
          {"seconds", move.exposed->seconds}};
}

Json betterOf(const Move& move) {
  if (!move.better) return nullptr;
  Json json = spanned(move.better->span);
  json["rate"] = number(move.better->rate);
  json["allowed"] = number(move.better->allowed);
  json["cover"] = idOrNull(move.betterCover);
  return json;
}

/// What lamps could do instead of an iris move; null where the face's light is not known.
Json lampsOf(const answers::LampsInstead& lamps) {
  if (!lamps.known) return nullptr;
  Json json = {{"anyLight", lamps.anyLight}, {"alone", Json::array()}, {"together", number(lamps.together)}};
  for (const auto& one : lamps.alone) json["alone"].push_back({{"lamp", one.lamp}, {"level", pair(one.from, one.to)}});
  return json;
}

/// Metres by which the rig's balance moves, forward positive; null where nobody measured it.
Json balanceOf(const plan::Lens& lens, const Move& move) {
  if (lens.balance.constant()) return nullptr;
  return lens.balance.at(move.valueAfter) - lens.balance.at(move.valueBefore);
}

Json moveOf(const answers::Take& take, const Move& move) {
  Json json = {{"axis", wordOf(move.axis)},
               {"value", pair(move.valueBefore, move.valueAfter)},
               {"from", move.from},
               {"until", move.until},
               {"trigger", {{"beat", idOrNull(move.beat)}, {"plus", move.plus}}},
               {"barrel", pair(move.barrelBefore, move.barrelAfter)},
               {"peakDegPerSecond", number(move.peakDegPerSecond)},
               {"cover", idOrNull(move.cover)},
               {"coversPart", !move.cover.empty() && move.exposed && move.exposed->worst > 1},
               {"hands", move.hands},
               {"exposed", exposedOf(move)},
               {"better", betterOf(move)},
               {"latest", number(move.latest)},
               {"ease", move.ease ? pair(move.ease->front(), move.ease->back()) : Json(nullptr)}};
  if (move.axis == Move::Axis::focus) json["on"] = idOrNull(move.on);
  if (move.axis == Move::Axis::density) json["peakStopsPerSecond"] = number(move.peakStopsPerSecond);
  if (move.axis == Move::Axis::iris) {
    json["peakStopsPerSecond"] = number(move.peakStopsPerSecond);
    json["lamps"] = lampsOf(answers::lampsInstead(take, move));
  }
  if (move.axis == Move::Axis::zoom) {
    json["peakPercentPerSecond"] = number(move.peakPercentPerSecond);
    json["flowShare"] = number(move.flowShare);
    const auto feather = answers::zoomFeather(take.plan(), move);
    json["feather"] = pair(feather[0], feather[1]);
    json["balance"] = balanceOf(*take.plan().lens, move);
  }
  return json;
}

Json coverOf(const pulls::CoverSpan& cover) {
  Json json = spanned(cover.span);
  json["kind"] = wordOf(cover.kind);
  json["by"] = idOrNull(cover.by);
  json["strength"] = number(cover.strength);
  json["stopsPerSecond"] = number(pulls::rateUnder(cover.kind, pulls::Hidden::iris));
  json["percentPerSecond"] = number(pulls::rateUnder(cover.kind, pulls::Hidden::zoom));
  return json;
}

Json unmetOf(const Unmet& unmet) {
  Json json = spanned(unmet.span);
  json["reason"] = unmet.reason;
  return json;
}

/// A hot stretch at its worst instant, or a pull as it arrives.
Json hotOf(const HotSpot& spot) {
  Json json = spanned(spot.span);
  json["move"] = spot.move == 0 ? Json(nullptr) : Json(spot.move);
  json["at"] = spot.at->time;
  json["on"] = spot.at->focus.on.front();
  json["warmth"] = number(spot.at->focus.warmth);
  json["cures"] = curesJson(spot.cures);
  return json;
}

Json restOf(const FocusRest& rest) {
  Json json = spanned(rest.span);
  json["setting"] = rest.setting;
  json["near"] = rest.near;
  json["hyperfocal"] = rest.hyperfocal;
  return json;
}

Json sharpOf(const SharpSpan& sharp) {
  Json json = spanned(sharp.span);
  json["who"] = sharp.who;
  json["followed"] = sharp.followed;
  return json;
}

Json togetherOf(const Together& together) {
  Json json = spanned(together.span);
  json["who"] = together.who;
  json["holds"] = together.holds;
  json["settings"] = together.settings ? pair(together.settings->near, together.settings->far) : Json(nullptr);
  json["stop"] = number(together.stop);
  json["focal"] = number(together.focal);
  return json;
}

Json axesOf(const std::vector<Move::Axis>& axes) {
  Json json = Json::array();
  for (const auto axis : axes) json.push_back(wordOf(axis));
  return json;
}

Json workOf(const LensWork& work) {
  Json json = {{"who", idOrNull(work.who)},          {"axes", axesOf(work.axes)},  {"mostHands", work.load.mostHands},
               {"mostStarts", work.load.mostStarts}, {"stretches", Json::array()}, {"pressed", Json::array()}};
  for (const auto& stretch : work.load.stretches) {
    Json one = spanned(stretch.span);
    one["hands"] = stretch.hands;
    one["degreesPerSecond"] = number(stretch.degreesPerSecond);
    json["stretches"].push_back(std::move(one));
  }
  for (const auto& start : work.load.starts)
    if (start.pressed) json["pressed"].push_back(start.at);
  return json;
}

Json windowsOf(const HandWindows& windows) {
  Json json = {{"what", windows.what}, {"spans", Json::array()}};
  for (const auto& span : windows.spans) json["spans"].push_back(spanned(span));
  return json;
}

template <class T, class Of>
Json listOf(const std::vector<T>& list, Of of) {
  Json json = Json::array();
  for (const auto& one : list) json.push_back(of(one));
  return json;
}

}  // namespace

std::string pullsJson(const answers::Answers& answers) {
  const Evidence& evidence = *answers.evidence;
  return text({{"moves", listOf(evidence.moves, [&](const Move& move) { return moveOf(*answers.take, move); })},
               {"unmet", listOf(evidence.unmet, unmetOf)},
               {"hot", listOf(hotSpots(evidence), hotOf)},
               {"rests", listOf(evidence.rests, restOf)},
               {"covers", listOf(evidence.covers, coverOf)},
               {"sharp", listOf(evidence.sharp, sharpOf)},
               {"together", listOf(evidence.together, togetherOf)},
               {"work", listOf(evidence.work, workOf)},
               {"handWindows", listOf(evidence.handWindows, windowsOf)}});
}

}  // namespace wend::exchange
