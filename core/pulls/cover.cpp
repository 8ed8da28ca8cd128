#include "core/pulls/cover.h"

#include <algorithm>
#include <cmath>

#include "core/base/check.h"
#include "core/geometry/runs.h"
#include "core/pulls/zoom_cover.h"

namespace wend::pulls {

namespace {

constexpr double kAnything = std::numeric_limits<double>::infinity();

double irisUnder(CoverKind kind) {
  switch (kind) {
    case CoverKind::movingFrame:
      return 0.25;
    case CoverKind::travel:
    case CoverKind::pan:
    case CoverKind::fastPan:
      return 0.5;
    case CoverKind::leaf:
    case CoverKind::doorway:
    case CoverKind::crossing:
    case CoverKind::lightCue:
      return 1;
    case CoverKind::swish:
    case CoverKind::wipe:
      return kAnything;
  }
  return 0;
}

double zoomUnder(CoverKind kind) {
  switch (kind) {
    case CoverKind::movingFrame:
      return 100 * kSlowZoom;
    case CoverKind::fastPan:
      return 25;
    case CoverKind::swish:
    case CoverKind::wipe:
      return kAnything;
    default:
      return 10;
  }
}

double sharedTime(geometry::Span a, geometry::Span b) {
  return std::min(a.until, b.until) - std::max(a.from, b.from);
}

}  // namespace

double rateUnder(CoverKind kind, Hidden axis) {
  return axis == Hidden::iris ? irisUnder(kind) : zoomUnder(kind);
}

double rateUncovered(Hidden axis) {
  return axis == Hidden::iris ? 0 : 100 * kSlowZoom;
}

double rateAllowed(const std::vector<CoverSpan>& covers, Hidden axis, double t) {
  double most = rateUncovered(axis);
  for (const auto& cover : covers)
    if (cover.span.contains(t)) most = std::max(most, rateUnder(cover.kind, axis));
  return most;
}

std::vector<CoverSpan> coverWhere(CoverKind kind, const std::string& by, const std::vector<double>& times,
                                  const std::vector<double>& values, double least, double shortest) {
  WEND_CHECK(times.size() == values.size());
  std::vector<CoverSpan> found;
  for (const auto& run : geometry::runsWhere(times.size(), [&](std::size_t i) { return values[i] >= least; })) {
    CoverSpan cover{kind, {times[run.first], times[run.last]}, 0, by};
    for (std::size_t i = run.first; i <= run.last; ++i) cover.strength = std::max(cover.strength, values[i]);
    found.push_back(cover);
  }
  std::erase_if(found, [&](const CoverSpan& cover) { return cover.span.length() < shortest; });
  return found;
}

std::vector<CoverSpan> rankedFor(const std::vector<CoverSpan>& covers, Hidden axis, geometry::Span span) {
  std::vector<CoverSpan> within;
  for (const auto& cover : covers)
    if (sharedTime(cover.span, span) > 0) within.push_back(cover);
  std::stable_sort(within.begin(), within.end(), [&](const CoverSpan& a, const CoverSpan& b) {
    const double rateA = rateUnder(a.kind, axis), rateB = rateUnder(b.kind, axis);
    if (rateA != rateB) return rateA > rateB;
    const double timeA = sharedTime(a.span, span), timeB = sharedTime(b.span, span);
    return timeA != timeB ? timeA > timeB : a.span.from < b.span.from;
  });
  return within;
}

Exposed exposedIn(const std::vector<CoverSpan>& covers, Hidden axis, const std::vector<RateAt>& rates,
                  const Looked& looked) {
  Exposed exposed;
  bool first = true;
  for (const RateAt& now : rates) {
    const double rate = std::abs(now.rate), covered = rateAllowed(covers, axis, now.t);
    const double allowed = rate <= looked.unnoticed ? std::max(covered, looked.unnoticed) : covered;
    const double over = std::isinf(allowed) || rate == 0 ? 0 : rate / allowed;
    if (over > 1) exposed.seconds += looked.step;
    if (!first && (over < exposed.worst || (over == exposed.worst && rate <= exposed.rate))) continue;
    first = false;
    exposed.worst = over;
    exposed.at = now.t;
    exposed.rate = rate;
    exposed.allowed = allowed;
  }
  return exposed;
}

}  // namespace wend::pulls
