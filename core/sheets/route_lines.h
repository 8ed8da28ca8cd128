/// The stands, walks and breaks of a route in words, a line each: what the verb prints and the window shows.
#pragma once

#include <string>
#include <vector>

#include "core/sheets/crew_sheet.h"

namespace wend::sheets {

/// A line and when what it tells of begins.
struct RouteLine {
  double from = 0;
  std::string words;
  std::string way{};  ///< of a walk that was found: "3.20, 1.40 at 42.5; ...", where to be when
};

/// "stands 0.0\u201312.0 KX", "walks  12.0\u201315.5 on b3+2.0, up to 1.20 m/s, leave by 13.0, there from 14.8", then
/// where it breaks, then "shows  3.2\u20134.0 in shop window, by the light". Times in seconds of the take, places in plan
/// metres.
std::vector<RouteLine> routeLines(const RouteOf& route);

/// The corners of a walk: "3.20, 1.40 at 42.5; ...", where to be when; straight and even between.
std::string wayText(const WalkOf& walk);

/// How far a found route is from being seen and from everything that stands: "sight may come and go 1.5 s sooner and
/// later; 0.22 m clear of everything". One without room to spare says how near it comes to what, and when.
std::string routeRoom(const RouteOf& route);

}  // namespace wend::sheets
