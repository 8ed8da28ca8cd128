// The stave of a variable density in front of the lens.
#include <algorithm>

#include "core/base/text.h"
#include "core/light/density.h"
#include "core/sheets/stave.h"

namespace wend::sheets {

StaveScale densityStaveScale(const plan::Plan& plan, const StaveBox& box) {
  double most = 0;
  for (const auto& key : plan.camera.nd) most = std::max(most, key.stops);
  return {box.top + 6, box.height - 12, most + 1, 0};
}

void drawDensityStave(StavePainter& p) {
  const StaveScale scale = densityStaveScale(p.plan, p.box);
  const auto stopsAt = [&](double t) { return light::densityAt(p.take.lighting().density, t); };
  const double from = std::max(p.view.from, 0.0), until = std::min(p.view.until, p.take.length());
  const double step = 2 / p.view.pxPerSecond();
  std::vector<geometry::Point> line;
  for (double t = from; t < until; t += step) line.push_back({p.view.x(t), scale.y(stopsAt(t))});
  line.push_back({p.view.x(until), scale.y(stopsAt(until))});
  p.line(std::move(line), geometry::Tone::lens, 2.4);
  for (const auto& key : p.plan.camera.nd) {
    const double end = plan::secondsOf(p.plan, key.time.at) + key.time.over;
    if (!p.shows(end, end)) continue;
    p.text({p.view.x(end) + 8, std::max(scale.y(key.stops) - 4, p.box.top + 12)}, base::fixed(key.stops, 1),
           geometry::Tone::ink);
  }
  p.handles({"nd/"});
  p.scale(p.box.top + 8, base::fixed(scale.high, 1) + " stops");
  p.scale(p.box.top + p.box.height - 8, "0");
}

}  // namespace wend::sheets
