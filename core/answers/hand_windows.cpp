#include "core/answers/hand_windows.h"

#include <algorithm>
#include <functional>

#include "core/geometry/runs.h"
#include "core/geometry/spans.h"
#include "core/optics/warmth.h"

namespace wend::answers {

using namespace snags;

namespace {

/// Spans of samples in which something is quiet, drawn in by kQuietAside at every end that is not the take's.
std::vector<Span> quietSpans(const Take& take, const std::vector<Instant>& samples,
                             const std::function<bool(const Instant&)>& quiet) {
  std::vector<Span> spans;
  for (const auto& run : geometry::runsWhere(samples.size(), [&](std::size_t i) { return quiet(samples[i]); }))
    spans.push_back({samples[run.first].time, samples[run.last].time});
  for (Span& span : spans) {
    if (span.from > 0) span.from += kQuietAside;
    if (span.until < take.length()) span.until -= kQuietAside;
  }
  std::erase_if(spans, [](Span span) { return span.length() < kQuietAside; });
  return spans;
}

bool inAnyOf(const std::vector<Span>& spans, double t) {
  return std::any_of(spans.begin(), spans.end(), [&](Span span) { return span.contains(t); });
}

std::vector<Span> pullsOf(const std::vector<Move>& moves) {
  std::vector<Span> spans;
  for (const Move& move : moves)
    if (move.axis == Move::Axis::focus) spans.push_back({move.from, move.until});
  return spans;
}

std::vector<Span> speechOf(const plan::Plan& plan) {
  std::vector<Span> spans;
  for (const auto& line : plan.speech)
    spans.push_back({plan::secondsOf(plan, line.from), plan::secondsOf(plan, line.until)});
  return spans;
}

}  // namespace

std::vector<HandWindows> handWindows(const Take& take, const std::vector<Instant>& samples,
                                     const std::vector<Move>& moves) {
  const auto pulls = pullsOf(moves), speech = speechOf(take.plan());
  std::vector<HandWindows> windows;
  if (take.plan().lens && take.subjects().any())
    windows.push_back({"focus", quietSpans(take, samples, [&](const Instant& instant) {
                         return instant.focus.warmth && optics::heatOf(*instant.focus.warmth) == optics::Heat::cool &&
                                !inAnyOf(pulls, instant.time);
                       })});
  if (!speech.empty())
    windows.push_back(
        {"boom", quietSpans(take, samples, [&](const Instant& instant) { return !inAnyOf(speech, instant.time); })});
  windows.push_back({"rig", quietSpans(take, samples, [](const Instant& instant) { return !instant.camera.moving; })});
  return windows;
}

}  // namespace wend::answers
