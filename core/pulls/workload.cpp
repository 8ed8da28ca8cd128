#include "core/pulls/workload.h"

#include <algorithm>
#include <limits>

#include "core/base/check.h"

namespace wend::pulls {
namespace {

WorkStretch stretchOf(const std::vector<AxisMove>& moves, geometry::Span span) {
  WorkStretch stretch{span, {}, 0, 0};
  int moving = 0, exact = 0;
  for (const AxisMove& move : moves) {
    if (move.span.from > span.from || move.span.until < span.until) continue;
    ++moving;
    exact += move.exact;
    stretch.degreesPerSecond += move.degreesPerSecond;
    stretch.axes.push_back(move.axis);
  }
  std::sort(stretch.axes.begin(), stretch.axes.end());
  stretch.axes.erase(std::unique(stretch.axes.begin(), stretch.axes.end()), stretch.axes.end());
  stretch.hands = handsFor(moving, exact);
  return stretch;
}

std::vector<WorkStretch> stretchesOf(const std::vector<AxisMove>& moves) {
  std::vector<double> instants;
  for (const AxisMove& move : moves) {
    instants.push_back(move.span.from);
    instants.push_back(move.span.until);
  }
  std::sort(instants.begin(), instants.end());
  instants.erase(std::unique(instants.begin(), instants.end()), instants.end());
  std::vector<WorkStretch> stretches;
  for (std::size_t i = 0; i + 1 < instants.size(); ++i) {
    WorkStretch stretch = stretchOf(moves, {instants[i], instants[i + 1]});
    if (!stretch.axes.empty()) stretches.push_back(std::move(stretch));
  }
  return stretches;
}

std::vector<Start> startsOf(const std::vector<AxisMove>& moves) {
  std::vector<Start> starts;
  double last = -std::numeric_limits<double>::infinity();
  for (const AxisMove& move : moves) {
    const double since = move.span.from - last;
    starts.push_back({move.span.from, move.axis, since, since < kStartApart});
    last = move.span.from;
  }
  return starts;
}

int mostWithin(const std::vector<Start>& starts, double seconds) {
  std::size_t first = 0, most = 0;
  for (std::size_t i = 0; i < starts.size(); ++i) {
    while (starts[i].at - starts[first].at >= seconds) ++first;
    most = std::max(most, i - first + 1);
  }
  return static_cast<int>(most);
}

}  // namespace

int handsFor(int moving, int exact) {
  WEND_CHECK(exact >= 0 && exact <= moving);
  return std::max(exact, (moving + 1) / 2);
}

Workload workloadOf(std::vector<AxisMove> moves) {
  for (const AxisMove& move : moves) WEND_CHECK(move.span.from < move.span.until);
  std::sort(moves.begin(), moves.end(), [](const AxisMove& a, const AxisMove& b) {
    return a.span.from != b.span.from ? a.span.from < b.span.from : a.axis < b.axis;
  });
  Workload work{stretchesOf(moves), startsOf(moves), 0, 0};
  for (const WorkStretch& stretch : work.stretches) work.mostHands = std::max(work.mostHands, stretch.hands);
  work.mostStarts = mostWithin(work.starts, kStartWindow);
  return work;
}

}  // namespace wend::pulls
