#include "core/sheets/route_lines.h"

#include "core/base/text.h"
#include "core/sheets/text_words.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using base::fixed;
using units::secondsText;

namespace {

std::string standLine(const StandOf& stand) {
  return (stand.crouch ? "crouches " : "stands ") + base::padRight(spanText(stand.span), stand.crouch ? 12 : 14) +
         (stand.shelter.empty() ? placeText(stand.pos) : stand.shelter);
}

std::string walkLine(const WalkOf& walk) {
  std::string line = "walks  " + base::padRight(spanText(walk.span), 14) + "on " + triggerText(walk.beat, walk.plus) +
                     ", up to " + fixed(walk.speed, 2) + " m/s";
  if (!walk.latestLeave && !walk.earliestArrive) line += ", leave by and there from unknown";
  if (walk.latestLeave) line += ", leave by " + secondsText(*walk.latestLeave);
  if (walk.earliestArrive) line += ", there from " + secondsText(*walk.earliestArrive);
  return line;
}

}  // namespace

std::string wayText(const WalkOf& walk) {
  std::string text;
  for (std::size_t i = 0; i < walk.path.size(); ++i)
    text += (i ? "; " : "") + placeText(walk.path[i]) + " at " + secondsText(walk.times[i]);
  return text;
}

std::vector<RouteLine> routeLines(const RouteOf& route) {
  std::vector<RouteLine> lines;
  for (const auto& stand : route.stands) lines.push_back({stand.span.from, standLine(stand)});
  for (const auto& walk : route.walks)
    lines.push_back({walk.span.from, walkLine(walk), route.sought ? wayText(walk) : ""});
  for (const auto& stop : route.breaks)
    lines.push_back({stop.span.from,
                     "BREAKS " + base::padRight(spanText(stop.span), 14) + stop.why + " at " + placeText(stop.pos)});
  for (const auto& pane : route.glass)
    lines.push_back({pane.span.from, "shows  " + base::padRight(spanText(pane.span), 14) + paneText(pane.name)});
  return lines;
}

std::string routeRoom(const RouteOf& route) {
  std::string text = std::string("sight may come and go ") + (route.marginMore ? "at least " : "") +
                     fixed(route.margin, 1) + " s sooner and later; " + fixed(route.room, 2) + " m clear of everything";
  if (route.room <= 0 && route.nearest)
    text += ", " + fixed(route.nearest->metres, 2) + " m from " + route.nearestName + " at " +
            secondsText(route.nearest->time);
  return text;
}

}  // namespace wend::sheets
