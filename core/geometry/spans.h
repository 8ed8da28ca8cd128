/// Sets of instants as lists of closed spans of time.
///
/// A list is tidy when its spans run from <= until, stand in order of time and neither overlap nor touch. Every
/// function here returns a tidy list and, except `tidy` itself, requires tidy lists.
#pragma once

#include <functional>
#include <vector>

#include "core/geometry/point.h"

namespace wend::geometry {

using Spans = std::vector<Span>;

/// The maximal spans of `within` in which `holds` is true, looked at every `step` seconds and at both ends.
///
/// Ensures   1. `holds` is true at both ends of every span;
///           2. an end inside `within` lies at most `refine` from an instant at which `holds` is false;
///           3. a span seen at one instant only may have no length.
/// Error     what lasts shorter than `step`, true or false, may be missed: choose the step from what can move.
/// Requires  step > 0, refine > 0, within.from <= within.until; `holds` pure.
/// Cost      within.length() / step calls, and log2(step / refine) more at each end.
Spans spansWhere(Span within, double step, const std::function<bool(double)>& holds, double refine = 1e-3);

/// The same instants as any list of spans, tidy. Spans that end before they start count for nothing.
Spans tidy(Spans spans);

/// Instants in both. Two spans that only touch share nothing, unless one of them is itself a single instant.
Spans intersection(const Spans& a, const Spans& b);

/// Every span `before` earlier at its start and `after` later at its end, joined where they meet. A span that
/// negative amounts turn inside out is gone.
Spans grown(const Spans& spans, double before, double after);

/// Whether `t` is in one of the spans. Cost: logarithmic.
bool contains(const Spans& spans, double t);

/// Seconds in all.
double totalLength(const Spans& spans);

}  // namespace wend::geometry
