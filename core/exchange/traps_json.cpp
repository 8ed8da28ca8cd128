#include "core/exchange/traps_json.h"

#include <nlohmann/json.hpp>

#include "core/geometry/runs.h"
#include "core/sheets/trap_figures.h"

namespace wend::exchange {

using namespace snags;

namespace {

/// A list under its key, unless it is empty.
void addList(Json& json, const char* key, Json list) {
  if (!list.empty()) json[key] = std::move(list);
}

Json linkOf(const std::optional<LinkAt>& at) {
  if (!at) return nullptr;
  return {{"metres", at->metres},
          {"margin", at->margin},
          {"walls", at->walls},
          {"doors", at->leaves},
          {"bodies", at->bodies}};
}

Json boomOf(const TrapsNow::Line& line) {
  const BoomAt& at = line.at;
  return {{"pole", line.pole},
          {"who", line.who},
          {"top", number(at.top)},
          {"gap", number(at.gap)},
          {"reach", number(at.reach)},
          {"lamp", idOrNull(at.lamp)},
          {"lampMetres", at.lamp.empty() ? Json(nullptr) : number(at.lampMetres)},
          {"walled", at.reach ? Json(at.walled) : Json(nullptr)}};
}

Json lostSpans(const Evidence& evidence, const LinkOver& link) {
  const auto isLost = [&](std::size_t i) { return link.at[i] && link.at[i]->margin < 0; };
  Json spans = Json::array();
  for (const auto& run : geometry::runsWhere(link.at.size(), isLost))
    spans.push_back({{"from", evidence.samples[run.first].time}, {"until", evidence.samples[run.last].time}});
  return spans;
}

Json linksOf(const Evidence& evidence) {
  Json links = Json::array();
  for (const auto& link : evidence.links) {
    Json weakest = nullptr;
    if (const auto least = sheets::weakestOf(link)) {
      weakest = linkOf(link.at[*least]);
      weakest["time"] = evidence.samples[*least].time;
    }
    links.push_back({{"id", link.id}, {"weakest", std::move(weakest)}, {"lost", lostSpans(evidence, link)}});
  }
  return links;
}

Json boomsOf(const Evidence& evidence) {
  Json booms = Json::array();
  for (const auto& line : evidence.boom) {
    const auto reach = sheets::mostReachOf(line);
    booms.push_back({{"pole", line.pole},
                     {"who", line.who},
                     {"from", line.span.from},
                     {"until", line.span.until},
                     {"gap", number(sheets::mostGapOf(line))},
                     {"reach", number(reach)},
                     {"lampMetres", number(sheets::nearestLampOf(line))},
                     {"walled", reach ? Json(sheets::isWalled(line)) : Json(nullptr)}});
  }
  return booms;
}

Json shutInOf(const Evidence& evidence) {
  Json cables = Json::array();
  for (const auto& shut : evidence.cablesShutIn)
    cables.push_back({{"cable", shut.cable}, {"opening", shut.opening}, {"time", shut.time}, {"pos", place(shut.pos)}});
  return cables;
}

}  // namespace

void addTraps(const Instant& instant, Json& json) {
  if (!instant.traps) return;
  Json links = Json::array(), booms = Json::array(), shutIn = Json::array();
  for (const auto& [id, at] : instant.traps->links) links.push_back({{"id", id}, {"at", linkOf(at)}});
  for (const auto& line : instant.traps->booms) booms.push_back(boomOf(line));
  for (const auto& shut : instant.traps->shutIn) shutIn.push_back({{"cable", shut.cable}, {"opening", shut.opening}});
  addList(json, "links", std::move(links));
  addList(json, "booms", std::move(booms));
  addList(json, "shutIn", std::move(shutIn));
  if (instant.traps->cameraCableOut) json["cameraCable"] = *instant.traps->cameraCableOut;
}

void addTraps(const Evidence& evidence, Json& json) {
  addList(json, "links", linksOf(evidence));
  addList(json, "booms", boomsOf(evidence));
  addList(json, "shutIn", shutInOf(evidence));
  if (const auto& cable = evidence.plan->camera.cable) {
    const auto& out = evidence.cameraCableOut;
    json["cameraCable"] = {{"length", cable->length},
                           {"outAt", out ? Json(out->time) : Json(nullptr)},
                           {"most", out ? Json(out->most) : Json(nullptr)}};
  }
  Json lanes = Json::array(), outside = Json::array();
  for (const auto& lane : evidence.lanes)
    lanes.push_back({{"area", lane.area},
                     {"by", lane.by},
                     {"from", lane.span.from},
                     {"until", lane.span.until},
                     {"pos", place(lane.pos)}});
  for (const auto& seen : evidence.outside)
    outside.push_back({{"area", seen.area}, {"from", seen.span.from}, {"until", seen.span.until}});
  addList(json, "lanes", std::move(lanes));
  addList(json, "outside", std::move(outside));
}

}  // namespace wend::exchange
