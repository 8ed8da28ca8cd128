#include "core/exchange/verbs_json.h"

#include <limits>
#include <nlohmann/json.hpp>

#include "core/answers/footing.h"
#include "core/answers/taken_then.h"
#include "core/base/text.h"
#include "core/exchange/json_values.h"
#include "core/exchange/no_way_json.h"
#include "core/exchange/traps_json.h"

namespace wend::exchange {

using namespace snags;

namespace {

Json distancesOf(const optics::SubjectDistances& d) {
  return {{"floor", number(d.floor)}, {"slant", number(d.slant)}, {"flat", number(d.flat)}};
}

const char* wordOf(optics::Showing showing) {
  switch (showing) {
    case optics::Showing::whole:
      return "whole";
    case optics::Showing::part:
      return "part";
    case optics::Showing::hidden:
      return "hidden";
    case optics::Showing::out:
      break;
  }
  return "out";
}

Json cameraOf(const CameraAt& camera) {
  return {{"pos", place(geometry::flat(camera.sensor.at))},
          {"height", camera.sensor.at.z},
          {"bearing", camera.sensor.bearing},
          {"tilt", camera.sensor.tilt},
          {"speed", camera.speed},
          {"panRate", camera.panRate},
          {"tiltRate", camera.tiltRate}};
}

Json focusOf(const FocusAt& focus, bool lens) {
  if (!focus.known) return {{"on", focus.on}, {"wanted", nullptr}, {"set", nullptr}, {"warmth", nullptr}};
  Json wanted = distancesOf(focus.wanted);
  Json set = nullptr;
  if (lens) {
    wanted["band"] = pair(focus.wantedBand.near, focus.wantedBand.far);
    set = {{"distance", number(focus.setDistance)},
           {"near", number(focus.setBand.near)},
           {"far", number(focus.setBand.far)},
           {"barrel", number(focus.barrel)}};
  }
  return {{"on", focus.on},
          {"wanted", wanted},
          {"set", set},
          {"wobble", number(focus.wobble)},
          {"warmth", number(focus.warmth)},
          {"tightest", idOrNull(focus.tightest)}};
}

Json performerOf(const PerformerAt& at) {
  if (!at.present) return {{"id", at.id}, {"pos", nullptr}, {"inFrame", "out"}};
  return {{"id", at.id},
          {"pos", place(at.pos)},
          {"eyes", at.eyes},
          {"distances", distancesOf(at.distances)},
          {"inFrame", wordOf(at.inFrame)},
          {"size", {{"name", at.size}, {"q", number(at.q)}}},
          {"figureInFrame", number(at.figureInFrame)},
          {"place", place(at.place)},
          {"lux", number(at.lux)},
          {"kelvin", number(at.kelvin)},
          {"offset", number(at.offset)},
          {"blur", number(at.blur)}};
}

Json crewOf(const CrewAt& at) {
  if (!at.present) return {{"id", at.id}, {"pos", nullptr}, {"seen", nullptr}, {"via", nullptr}, {"nextSeen", nullptr}};
  return {{"id", at.id},
          {"pos", place(at.pos)},
          {"seen", at.seen},
          {"via", idOrNull(at.via)},
          {"nextSeen", number(at.nextSeen)}};
}

Json instantOf(const Instant& instant) {
  Json json = {
      {"time", instant.time},
      {"frameIndex", instant.frameIndex},
      {"timecode", instant.timecode},
      {"beat", idOrNull(instant.beat)},
      {"camera", cameraOf(instant.camera)},
      {"lens", nullptr},
      {"focus", focusOf(instant.focus, instant.lens.has_value())},
      {"iris",
       {{"needed", number(instant.iris.needed)}, {"set", number(instant.iris.set)}, {"density", instant.iris.density}}},
      {"performers", Json::array()},
      {"crew", Json::array()},
      {"background", nullptr},
      {"sun", nullptr}};
  if (instant.lens)
    json["lens"] = {{"focal", instant.lens->focal}, {"hfov", instant.lens->hfov}, {"vfov", instant.lens->vfov}};
  for (const auto& performer : instant.performers) json["performers"].push_back(performerOf(performer));
  for (const auto& crew : instant.crew) json["crew"].push_back(crewOf(crew));
  if (instant.background)
    json["background"] = {{"brightest", instant.background->brightest}, {"darkest", instant.background->darkest}};
  addTraps(instant, json);
  if (instant.sun) json["sun"] = {{"bearing", instant.sun->bearing}, {"elevation", instant.sun->elevation}};
  return json;
}

Json problemOf(const base::Problem& problem) {
  return {{"code", problem.code},
          {"where", problem.where},
          {"found", problem.found},
          {"expected", problem.expected},
          {"remedy", problem.remedy}};
}

Json snagOf(const Snag& snag) {
  return {{"key", snag.key},
          {"rule", snag.rule},
          {"who", snag.who},
          {"beat", idOrNull(snag.beat)},
          {"from", snag.from},
          {"until", snag.until},
          {"pos", snag.pos ? place(*snag.pos) : Json(nullptr)},
          {"severity", static_cast<int>(snag.severity)},
          {"text", snag.text},
          {"mend", snag.mend},
          {"accepted", snag.accepted ? Json{{"by", snag.accepted->by}, {"note", snag.accepted->note}} : Json(nullptr)}};
}

Json pathOf(const std::vector<geometry::Point>& path) {
  Json points = Json::array();
  for (const auto p : path) points.push_back(place(p));
  return points;
}

Json walkOf(const sheets::WalkOf& walk) {
  return {{"from", walk.span.from},
          {"until", walk.span.until},
          {"path", pathOf(walk.path)},
          {"times", walk.times},
          {"trigger", {{"beat", idOrNull(walk.beat)}, {"plus", walk.plus}}},
          {"latestLeave", number(walk.latestLeave)},
          {"earliestArrive", number(walk.earliestArrive)},
          {"speed", walk.speed}};
}

Json nearestOf(const std::optional<answers::NearestPass>& nearest) {
  if (!nearest) return nullptr;
  return {{"what", nearest->what}, {"metres", nearest->metres}, {"time", nearest->time}};
}

Json routeOf(const sheets::RouteOf& route) {
  Json json = {
      {"id", route.id},           {"drawn", route.drawn},
      {"carried", route.carried}, {"feasible", route.drawn || route.sought ? Json(route.feasible) : Json(nullptr)},
      {"stands", Json::array()},  {"walks", Json::array()},
      {"breaks", Json::array()},  {"why", noWayJson(route)},
      {"notes", route.notes}};
  const bool found = route.sought && route.why.empty();
  json["metres"] = found ? Json(route.metres) : Json(nullptr);
  json["margin"] = found ? Json(route.margin) : Json(nullptr);
  json["marginMore"] = found ? Json(route.marginMore) : Json(nullptr);
  json["room"] = found ? Json(route.room) : Json(nullptr);
  json["nearest"] = nearestOf(route.nearest);
  for (const auto& stand : route.stands)
    json["stands"].push_back({{"pos", place(stand.pos)},
                              {"shelter", idOrNull(stand.shelter)},
                              {"from", stand.span.from},
                              {"until", stand.span.until},
                              {"crouch", stand.crouch}});
  for (const auto& walk : route.walks) json["walks"].push_back(walkOf(walk));
  for (const auto& stop : route.breaks)
    json["breaks"].push_back(
        {{"from", stop.span.from}, {"until", stop.span.until}, {"pos", place(stop.pos)}, {"why", stop.why}});
  for (const auto& pane : route.glass) {
    Json shows = spanned(pane.span);
    shows["pane"] = pane.pane;
    json["glass"].push_back(std::move(shows));
  }
  return json;
}

}  // namespace

std::string checkJson(const base::Problems& problems, const Snags& snags, const Evidence* evidence) {
  Json json = {{"problems", Json::array()}, {"snags", Json::array()}};
  for (const auto& problem : problems) json["problems"].push_back(problemOf(problem));
  for (const auto& snag : snags) json["snags"].push_back(snagOf(snag));
  if (evidence) addTraps(*evidence, json);
  return text(json);
}

std::string instantJson(const Instant& instant) {
  return text(instantOf(instant));
}

std::string instantJson(const plan::Plan& plan, const Instant& instant) {
  Json json = instantOf(instant);
  json["cures"] = curesJson(curesAt(plan, instant));
  return text(json);
}

std::string tableJson(const std::vector<Instant>& instants) {
  Json rows = Json::array();
  for (const auto& instant : instants) rows.push_back(instantOf(instant));
  return text({{"rows", rows}});
}

std::string spotJson(const answers::Take& take, geometry::Point pos, double height, const SightOf& sight,
                     const std::vector<snags::PaneMirror>& panes) {
  const auto none = answers::noGroundAt(take, pos, height);
  Json json = {{"pos", place(pos)},      {"height", height},
               {"ground", !none},        {"takenBy", none ? idOrNull(none->id) : Json(nullptr)},
               {"seen", Json::array()},  {"clear", Json::array()},
               {"glass", Json::array()}, {"taken", Json::array()},
               {"closed", Json::array()}};
  for (const auto& taken : answers::takenOver(take, pos, height))
    json["taken"].push_back({{"from", taken.span.from}, {"until", taken.span.until}, {"by", taken.by}});
  for (const auto* area : answers::closedAt(take.plan(), pos, take.plan().sightRules.radius))
    json["closed"].push_back({{"area", area->id.text()}, {"use", answers::closedWord(*area)}});
  for (const auto& seen : sight.seen)
    json["seen"].push_back({{"from", seen.span.from},
                            {"until", seen.span.until},
                            {"via", idOrNull(seen.via)},
                            {"openings", seen.by.empty() ? Json::array() : Json(base::split(seen.by, '+'))}});
  for (const auto& pane : panes)
    json["glass"].push_back({{"from", pane.span.from},
                             {"until", pane.span.until},
                             {"pane", pane.pane},
                             {"returned", number(pane.returned)}});
  for (const auto& clear : sight.clear)
    json["clear"].push_back(
        {{"from", clear.span.from}, {"until", clear.span.until}, {"marginDeg", number(clear.marginDeg)}});
  return text(json);
}

namespace {

/// A byte a cell, south to north, as run lengths: 0 and 1 in turn, 0 first.
Json runsOf(const geometry::Grid& grid, const std::vector<std::uint8_t>& cells) {
  Json rows = Json::array();
  for (int row = 0; row < grid.ny; ++row) {
    Json runs = Json::array();
    int length = 0;
    bool state = false;
    for (int column = 0; column < grid.nx; ++column) {
      const auto cell =
          static_cast<std::size_t>(row) * static_cast<std::size_t>(grid.nx) + static_cast<std::size_t>(column);
      if ((cells[cell] != 0) != state) runs.push_back(std::exchange(length, 0)), state = !state;
      ++length;
    }
    runs.push_back(length);
    rows.push_back(std::move(runs));
  }
  return rows;
}

}  // namespace

std::string clearJson(const answers::ClearGround& clear, const answers::GlassGround& glass) {
  const geometry::Grid& grid = clear.grid;
  Json json = {{"cell", grid.cell}, {"origin", place(grid.origin)},      {"cells", Json::array({grid.nx, grid.ny})},
               {"sampled", false},  {"rows", runsOf(grid, clear.cells)}, {"ground", runsOf(grid, clear.ground)}};
  if (glass.empty()) return text(json);
  json["glass"] = runsOf(grid, glass.cellsDuring({0, std::numeric_limits<double>::infinity()}));
  json["panes"] = Json::array();
  for (const auto& of : glass.byPane()) {
    Json spans = Json::array();
    for (const auto& span : of.spans) spans.push_back(spanned(span));
    const double metres = static_cast<double>(of.cells) * grid.cell * grid.cell;
    json["panes"].push_back({{"pane", of.pane}, {"squareMetres", metres}, {"spans", spans}});
  }
  return text(json);
}

std::string routesJson(const std::vector<sheets::RouteOf>& routes) {
  Json json = {{"crew", Json::array()}};
  for (const auto& route : routes) json["crew"].push_back(routeOf(route));
  return text(json);
}

namespace {

/// An object a row.
Json figuresOf(const sheets::TextTable& table) {
  Json rows = Json::array();
  for (const auto& row : table.figures()) {
    Json figures = Json::object();
    for (const auto& figure : row) figures[figure.key] = number(figure.value);
    rows.push_back(std::move(figures));
  }
  return rows;
}

}  // namespace

std::string sheetsJson(const plan::Plan& plan, const std::vector<sheets::DeptSheet>& made) {
  Json json = {
      {"title", plan.title}, {"revision", plan.revision}, {"caution", sheets::kCaution}, {"sheets", Json::array()}};
  for (const auto& sheet : made) {
    Json parts = Json::array();
    for (const auto& part : sheet.parts) {
      auto cells = part.table.cells();
      const Json columns = cells.front();
      cells.erase(cells.begin());
      parts.push_back(
          {{"heading", part.heading}, {"columns", columns}, {"rows", cells}, {"figures", figuresOf(part.table)}});
    }
    json["sheets"].push_back({{"for", sheet.whom}, {"title", sheet.title}, {"parts", parts}});
  }
  return text(json);
}

}  // namespace wend::exchange
