#include "core/geometry/spans.h"

#include <algorithm>

#include "core/base/check.h"

namespace wend::geometry {
namespace {

/// The last instant known to hold between one that does and one that does not, in either order of time.
double edge(double holding, double failing, const std::function<bool(double)>& holds, double refine) {
  while (std::abs(failing - holding) > refine) {
    const double middle = (holding + failing) / 2;
    if (middle == holding || middle == failing) break;
    (holds(middle) ? holding : failing) = middle;
  }
  return holding;
}

}  // namespace

Spans spansWhere(Span within, double step, const std::function<bool(double)>& holds, double refine) {
  WEND_CHECK(step > 0 && refine > 0 && within.from <= within.until);
  Spans spans;
  double last = within.from;
  bool held = holds(last);
  if (held) spans.push_back({last, last});
  const auto steps = static_cast<long>(std::ceil(within.length() / step));
  for (long k = 1; k <= steps; ++k) {
    const double t = k == steps ? within.until : within.from + static_cast<double>(k) * step;
    const bool now = holds(t);
    if (now && !held) spans.push_back({edge(t, last, holds, refine), t});
    if (held) spans.back().until = now ? t : edge(last, t, holds, refine);
    if (now) spans.back().until = t;
    held = now;
    last = t;
  }
  return tidy(std::move(spans));
}

Spans tidy(Spans spans) {
  std::erase_if(spans, [](const Span& span) { return !(span.from <= span.until); });
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) { return a.from < b.from; });
  Spans out;
  for (const Span& span : spans) {
    if (!out.empty() && span.from <= out.back().until)
      out.back().until = std::max(out.back().until, span.until);
    else
      out.push_back(span);
  }
  return out;
}

Spans intersection(const Spans& a, const Spans& b) {
  Spans out;
  for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
    const Span common{std::max(a[i].from, b[j].from), std::min(a[i].until, b[j].until)};
    const bool instant = common.length() == 0 && (a[i].length() == 0 || b[j].length() == 0);
    if (common.length() > 0 || instant) out.push_back(common);
    if (a[i].until < b[j].until)
      ++i;
    else
      ++j;
  }
  return tidy(std::move(out));
}

Spans grown(const Spans& spans, double before, double after) {
  Spans out;
  for (const Span& span : spans) out.push_back({span.from - before, span.until + after});
  return tidy(std::move(out));
}

bool contains(const Spans& spans, double t) {
  const auto after =
      std::upper_bound(spans.begin(), spans.end(), t, [](double v, const Span& s) { return v < s.from; });
  return after != spans.begin() && std::prev(after)->until >= t;
}

double totalLength(const Spans& spans) {
  double sum = 0;
  for (const Span& span : spans) sum += span.length();
  return sum;
}

}  // namespace wend::geometry
