#include "core/sight/windows.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/check.h"

namespace wend::sight {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// How the body is seen at one instant.
struct Look {
  bool seen = false;
  std::optional<int> mirror;
  bool sameWay(const Look& other) const { return seen == other.seen && mirror == other.mirror; }
};

struct Sample {
  double t = 0;
  Look look;
};

bool touch(const SeenSpan& before, const SeenSpan& after) {
  return after.time.from - before.time.until <= kEdgeSeconds;
}

void append(const SeenSpan& span, std::vector<SeenSpan>& spans) {
  if (!spans.empty() && spans.back().sameWay(span) && touch(spans.back(), span))
    spans.back().time.until = span.time.until;
  else
    spans.push_back(span);
}

/// Finds the seen spans of one body, step by step.
class Watcher {
 public:
  Watcher(TakeLook& take, const BodyAt& body, int self) : take_(take), body_(body), self_(self) {
    for (std::size_t k = 0; k <= take_.steps(); ++k) ends_.push_back(body_(timeOf(k)));
  }

  /// Whether the step may show the body; false proves that it does not.
  bool maySee(std::size_t step) {
    const auto body = bodyStep(body_, take_.timeOf(step), ends_[step], ends_[step + 1]);
    return body && take_.maySee(step, *body, self_);
  }
  Look at(double t) const;
  double least(Span clear) const;
  /// What the step shows, into an emptied list.
  void askStep(const Sample& from, const Sample& until, std::vector<SeenSpan>& shown) {
    shown_ = &shown;
    add(from, until, 0);
  }
  void take(const std::vector<SeenSpan>& shown) {
    for (const SeenSpan& span : shown) append(span, seen_);
  }
  /// What was taken, in order.
  std::vector<SeenSpan> seen() const;

 private:
  /// When that step starts; when the last one ends.
  double timeOf(std::size_t step) const {
    return step < take_.steps() ? take_.timeOf(step).from : take_.spec().take.until;
  }
  bool maySee(Span time) {
    const auto body = bodyStep(body_, time);
    return body && take_.maySee(time, *body, self_);
  }
  void add(const Sample& from, const Sample& until, int halvings);
  void addBoth(Sample from, Sample until);
  void show(Span time, const Look& look) { shown_->push_back({time, look.mirror, look.seen}); }
  TakeLook& take_;
  const BodyAt& body_;
  int self_;
  std::vector<std::optional<Body>> ends_;  ///< the body when each step starts, and when the last one ends
  std::vector<SeenSpan> seen_;
  std::vector<SeenSpan>* shown_ = nullptr;
};

Look Watcher::at(double t) const {
  const auto eye = take_.eye()(t);
  const auto body = eye ? body_(t) : std::nullopt;
  if (!body) return {};
  const BodySight sight = bodySight(take_.sceneAt(t, self_), *eye, *body);
  return {sight.seen, sight.mirror};
}

/// The least degreesToFrame at a frame within the span. Of most frames a bound says that they are not it, once the one
/// with the least bound has been worked out.
double Watcher::least(Span clear) const {
  std::vector<std::pair<double, std::size_t>> bounds;
  for (std::size_t k = 0; k <= take_.steps(); ++k)
    if (take_.eyeFrom(k) && ends_[k] && clear.contains(timeOf(k)))
      bounds.push_back({leastDegreesToFrame(*take_.eyeFrom(k), *ends_[k]), k});
  if (bounds.empty()) return kInfinity;
  const auto marginAt = [this](std::size_t k) { return degreesToFrame(*take_.eyeFrom(k), *ends_[k]); };
  double least = marginAt(std::min_element(bounds.begin(), bounds.end())->second);
  for (const auto& [bound, k] : bounds)
    if (bound < least) least = std::min(least, marginAt(k));
  return least;
}

/// Short ones of which nothing could be told go to a found one that they touch.
std::vector<SeenSpan> withoutFringes(std::vector<SeenSpan> spans, double shortest) {
  for (std::size_t i = 0; i < spans.size(); ++i) {
    if (spans[i].found || spans[i].time.length() > shortest) continue;
    const bool before = i > 0 && spans[i - 1].found && touch(spans[i - 1], spans[i]);
    const bool after = i + 1 < spans.size() && spans[i + 1].found && touch(spans[i], spans[i + 1]);
    if (before || after) spans[i].mirror = spans[before ? i - 1 : i + 1].mirror, spans[i].found = true;
  }
  std::vector<SeenSpan> joined;
  for (const SeenSpan& span : spans) append(span, joined);
  return joined;
}

std::vector<SeenSpan> Watcher::seen() const {
  return withoutFringes(seen_, 2 / take_.spec().rate);
}

/// Seen at both ends: all along, the way changing where it does.
void Watcher::addBoth(Sample from, Sample until) {
  const Span time{from.t, until.t};
  if (!from.look.sameWay(until.look)) {
    const Look first = from.look, last = until.look;
    while (until.t - from.t > kEdgeSeconds) {
      const double middle = (from.t + until.t) / 2;
      const Look look = at(middle);
      (look.sameWay(first) ? from : until).t = middle;
    }
    show({time.from, from.t}, first);
    show({from.t, time.until}, last);
    return;
  }
  show(time, from.look);
}

/// Halves until the sight is proven absent, is found, or is too short to tell. What is seen at one end only is
/// followed to kEdgeSeconds.
void Watcher::add(const Sample& from, const Sample& until, int halvings) {
  constexpr int kMostHalvings = 3;
  if (from.look.seen && until.look.seen) return addBoth(from, until);
  const bool oneEnd = from.look.seen || until.look.seen;
  const Span time{from.t, until.t};
  if (!oneEnd && (take_.rests(time, body_) || (halvings > 0 && !maySee(time)))) return;
  if (oneEnd ? time.length() <= kEdgeSeconds : halvings >= kMostHalvings) {
    show(time, from.look.seen ? from.look : until.look);
    return;
  }
  const double middle = (from.t + until.t) / 2;
  const Sample half{middle, at(middle)};
  add(from, half, halvings + 1);
  add(half, until, halvings + 1);
}

}  // namespace

std::vector<Span> clearOf(const std::vector<SeenSpan>& seen, Span take, const Watch& watch) {
  std::vector<Span> clear;
  double reached = take.from;
  for (const SeenSpan& span : seen) {
    const double barred = span.time.from - watch.early;
    if (barred > reached) clear.push_back({reached, barred});
    reached = std::max(reached, span.time.until + watch.late);
  }
  if (reached < take.until) clear.push_back({reached, take.until});
  return clear;
}

namespace {

/// What is known of the step: its place in the list, or the list's end where it was not asked.
auto askedAt(const KnownSteps& known, std::size_t step) {
  const auto at = std::ranges::lower_bound(known.asked, step, {}, &AskedStep::step);
  return at != known.asked.end() && at->step == step ? at : known.asked.end();
}

}  // namespace

std::optional<SightWindows> sightWindows(TakeLook& look, const BodyAt& body, const Watch& watch, int self,
                                         const base::Cancel& cancel, const KnownSteps* known) {
  WEND_CHECK(watch.early >= 0 && watch.late >= 0);
  WEND_CHECK(known == nullptr || known->alike.size() == look.steps());
  Watcher watcher(look, body, self);
  SightWindows windows;
  std::optional<Sample> last;  // the end of the step before, where it was asked
  for (std::size_t k = 0; k < look.steps(); ++k) {
    if (cancel.fired()) return std::nullopt;
    if (known != nullptr && known->alike[k] != 0) {
      last.reset();
      const auto before = askedAt(*known, k);
      if (before == known->asked.end()) continue;
      windows.asked.push_back(*before);
    } else {
      const Span time = look.timeOf(k);
      if (time.length() <= 0 || !watcher.maySee(k)) {
        last.reset();
        continue;
      }
      const Sample from = last ? *last : Sample{time.from, watcher.at(time.from)};
      last = Sample{time.until, watcher.at(time.until)};
      windows.asked.push_back({static_cast<std::uint32_t>(k), {}});
      watcher.askStep(from, *last, windows.asked.back().seen);
    }
    watcher.take(windows.asked.back().seen);
  }
  windows.seen = watcher.seen();
  for (const Span& clear : clearOf(windows.seen, look.spec().take, watch))
    windows.clear.push_back({clear, watcher.least(clear)});
  return windows;
}

}  // namespace wend::sight
