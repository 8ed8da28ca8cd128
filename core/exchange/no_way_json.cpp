#include "core/exchange/no_way_json.h"

#include <nlohmann/json.hpp>

namespace wend::exchange {

using answers::Freeing;

namespace {

const char* wordOf(Freeing::Kind kind) {
  switch (kind) {
    case Freeing::Kind::need:
      return "need";
    case Freeing::Kind::speed:
      return "speed";
    case Freeing::Kind::early:
      return "early";
    case Freeing::Kind::late:
      return "late";
    case Freeing::Kind::anyEnd:
      return "anyEnd";
    case Freeing::Kind::place:
      return "place";
    case Freeing::Kind::anyStand:
      break;
  }
  return "anyStand";
}

Json freeingJson(const Freeing& free) {
  const char* unit = free.kind == Freeing::Kind::speed ? "m/s" : "s";
  return {{"kind", wordOf(free.kind)},
          {"figure", number(free.figure)},
          {"unit", free.figure ? Json(unit) : Json(nullptr)},
          {"words", free.words}};
}

Json exposureJson(const crew::Exposure& exposure) {
  Json json = spanned(exposure.span);
  json["pos"] = place(exposure.at);
  json["laterBy"] = number(exposure.laterBy);
  json["earlierBy"] = number(exposure.earlierBy);
  return json;
}

}  // namespace

Json noWayJson(const sheets::RouteOf& route) {
  if (route.why.empty()) return nullptr;
  Json json = {{"kind", "uncovered"},        {"when", nullptr},        {"where", nullptr},  {"exposure", nullptr},
               {"exposures", Json::array()}, {"frees", Json::array()}, {"words", route.why}};
  if (!route.none) return json;
  json["kind"] = route.none->seen ? "seen" : "closed";
  json["when"] = spanned(route.none->span);
  if (route.none->at) json["where"] = place(*route.none->at);
  json["exposure"] = number(route.none->seen);
  for (const auto& exposure : route.none->exposures) json["exposures"].push_back(exposureJson(exposure));
  for (const auto& free : route.none->frees) json["frees"].push_back(freeingJson(free));
  return json;
}

}  // namespace wend::exchange
