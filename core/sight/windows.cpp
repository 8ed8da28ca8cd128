#include "core/sight/windows.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/check.h"

namespace wend::sight {

namespace {

/// How the body is seen at one instant.
struct Look {
  bool seen = false;
  std::optional<int> mirror;
  double marginDegrees = std::numeric_limits<double>::infinity();
  bool sameWay(const Look& other) const { return seen == other.seen && mirror == other.mirror; }
};

struct Sample {
  double t = 0;
  Look look;
};

class Watcher {
 public:
  Watcher(const Scene& scene, const EyeAt& eye, const BodyAt& body) : scene_(scene), eye_(eye), body_(body) {}

  Look at(double t) const {
    const auto eye = eye_(t);
    const auto body = eye ? body_(t) : std::nullopt;
    if (!body) return {};
    const BodySight sight = bodySight(scene_.at(t), *eye, *body);
    return {sight.seen, sight.mirror, sight.marginDegrees};
  }

  /// The instant between two samples that differ at which the first way ends, from the first one's side.
  double edge(Sample before, Sample after) const {
    while (after.t - before.t > kEdgeSeconds) {
      const double middle = (before.t + after.t) / 2;
      const Look look = at(middle);
      (look.sameWay(before.look) ? before : after).t = middle;
    }
    return (before.t + after.t) / 2;
  }

 private:
  const Scene& scene_;
  const EyeAt& eye_;
  const BodyAt& body_;
};

/// Every frame of the take, its ends, and both sides of every instant at which a leaf changes.
std::vector<double> sampleTimes(const Scene& scene, const Watch& watch) {
  std::vector<double> times{watch.take.from, watch.take.until};
  for (auto k = static_cast<long long>(std::ceil(watch.take.from * watch.rate));
       static_cast<double>(k) / watch.rate < watch.take.until; ++k)
    times.push_back(static_cast<double>(k) / watch.rate);
  for (const double t : scene.changes()) {
    if (!watch.take.contains(t)) continue;
    times.push_back(t);
    if (t > watch.take.from) times.push_back(std::nextafter(t, watch.take.from));
  }
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  return times;
}

void close(std::optional<SeenSpan>& open, double t, std::vector<SeenSpan>& seen) {
  if (!open) return;
  open->time.until = t;
  seen.push_back(*open);
  open.reset();
}

std::vector<SeenSpan> seenSpans(const std::vector<Sample>& samples, const Watcher& watcher) {
  std::vector<SeenSpan> seen;
  std::optional<SeenSpan> open;
  const auto begin = [&](double t, const Look& look) {
    if (look.seen) open = SeenSpan{{t, t}, look.mirror};
  };
  begin(samples.front().t, samples.front().look);
  for (std::size_t i = 1; i < samples.size(); ++i) {
    if (samples[i].look.sameWay(samples[i - 1].look)) continue;
    const double t = watcher.edge(samples[i - 1], samples[i]);
    close(open, t, seen);
    begin(t, samples[i].look);
  }
  close(open, samples.back().t, seen);
  return seen;
}

double leastMargin(const std::vector<Sample>& samples, Span time) {
  double least = std::numeric_limits<double>::infinity();
  for (const Sample& sample : samples)
    if (time.contains(sample.t)) least = std::min(least, sample.look.marginDegrees);
  return least;
}

}  // namespace

std::vector<Span> clearOf(const std::vector<SeenSpan>& seen, const Watch& watch) {
  std::vector<Span> clear;
  double reached = watch.take.from;
  for (const SeenSpan& span : seen) {
    const double barred = span.time.from - watch.early;
    if (barred > reached) clear.push_back({reached, barred});
    reached = std::max(reached, span.time.until + watch.late);
  }
  if (reached < watch.take.until) clear.push_back({reached, watch.take.until});
  return clear;
}

std::optional<SightWindows> sightWindows(const Scene& scene, const EyeAt& eye, const BodyAt& body, const Watch& watch,
                                         const base::Cancel& cancel) {
  WEND_CHECK(watch.rate > 0 && watch.early >= 0 && watch.late >= 0);
  const Watcher watcher(scene, eye, body);
  std::vector<Sample> samples;
  for (const double t : sampleTimes(scene, watch)) {
    if (cancel.fired()) return std::nullopt;
    samples.push_back({t, watcher.at(t)});
  }
  SightWindows windows;
  windows.seen = seenSpans(samples, watcher);
  for (const Span& time : clearOf(windows.seen, watch)) windows.clear.push_back({time, leastMargin(samples, time)});
  return windows;
}

}  // namespace wend::sight
