/// Who stands where and walks when: the drawn routes held against what the lens sees and what people need, and the
/// routes found for those who have none drawn.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/answers/routes.h"

namespace wend::sheets {

struct StandOf {
  geometry::Point pos;
  std::string shelter;
  geometry::Span span;
  bool crouch = false;
};

struct WalkOf {
  geometry::Span span;
  std::vector<geometry::Point> path;  ///< straight and even from one place to the next
  std::vector<double> times;          ///< when each place of the path is passed
  std::string beat;                   ///< the beat it is triggered on, empty before the first
  double plus = 0;
  std::optional<double> latestLeave, earliestArrive;
  double speed = 0;  ///< peak, m/s
};

struct BreakOf {
  geometry::Span span;
  geometry::Point pos;
  std::string why;  ///< "seen", "taken", "fast", or the word of snags::NeedFails
};

/// Where somebody was looked for in vain, in figures: crew::Stuck holds what each is.
struct NoWay {
  geometry::Span span;                ///< from the first to the last that is seen; else the instant nobody gets past
  std::optional<geometry::Point> at;  ///< where that begins; nothing where there is nowhere to start from
  std::optional<double> seen;         ///< seconds, on the way that is seen least; nothing: there is none even seen
  std::vector<crew::Exposure> exposures;
  std::vector<answers::Freeing> frees;
};

/// They show in glass that the light has turned into a mirror; a risk, and no break.
struct GlassOf {
  geometry::Span span;
  std::string pane;  ///< id
  std::string name;
};

struct RouteOf {
  std::string id;
  std::string role;
  bool drawn = false;
  bool carried = false;
  bool sought = false;          ///< neither drawn nor carried, and one was looked for
  bool feasible = false;        ///< no break; when sought, one was found. Meaningful when drawn or sought
  std::string why;              ///< sought in vain, or not covered by the map of the ground: in words
  std::optional<NoWay> none{};  ///< sought in vain
  double metres = 0;            ///< found: of all its walks
  double margin = 0;            ///< found: seconds by which sight may come sooner and go later
  bool marginMore = false;      ///< that and perhaps more: no more was looked for
  double room = 0;              ///< found: metres it keeps at least from everything
  std::optional<answers::NearestPass> nearest{};  ///< found: of what walks pass within 0.6 m, where it was looked at
  std::string nearestName{};                      ///< of what it passes there
  std::vector<std::string> notes;
  std::vector<StandOf> stands;
  std::vector<WalkOf> walks;
  std::vector<BreakOf> breaks;
  std::vector<GlassOf> glass;  ///< as the evidence has it (Evidence::panes), in order of time
};

/// Everybody, in the plan's order. Found routes come from `answers.routes`, where that was asked for.
std::vector<RouteOf> routesOf(const answers::Answers& answers);

/// The walks of a drawn way: when, by which places and on what beat, unchecked. Nothing for everybody else.
std::vector<WalkOf> drawnWalksOf(const answers::Take& take, std::size_t member);

/// That of one whose route was looked for. Nothing for everybody else, and before it was.
std::optional<RouteOf> soughtRouteOf(const answers::Answers& answers, const std::string& id);

}  // namespace wend::sheets
