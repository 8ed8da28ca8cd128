#include "core/answers/iris_cover.h"

#include <algorithm>
#include <cmath>

#include "core/answers/covers.h"
#include "core/answers/move_cover.h"
#include "core/pulls/free_moves.h"
#include "core/pulls/ramp_spans.h"
#include "core/pulls/slot.h"
#include "core/snags/thresholds.h"

namespace wend::answers {

namespace {

/// The frames of a span, and a second before and after it, as they are once the iris goes as `track` does.
std::vector<snags::Instant> samplesAround(const Take& take, const pulls::Track& track, geometry::Span span) {
  std::vector<snags::Instant> samples;
  for (const double t : take.frameTimes()) {
    if (t < span.from - 1 || t > span.until + 1) continue;
    samples.push_back(sampleAt(take, t));
    for (snags::PerformerAt& at : samples.back().performers)
      if (at.offset) *at.offset += stopsOf(take.lens().irisAt(t)) - track.valueAt(t);
  }
  return samples;
}

snags::Move moveOf(const pulls::Move& pull) {
  snags::Move move;
  move.axis = snags::Move::Axis::iris;
  move.from = pull.from;
  move.until = pull.until;
  move.valueBefore = tNumberOf(pull.valueBefore);
  move.valueAfter = tNumberOf(pull.valueAfter);
  move.ease = {pull.easeIn, pull.easeOut};
  move.peakStopsPerSecond = pull.peakRate * ringShare(move);
  return move;
}

bool hides(const Take& take, const std::vector<pulls::CoverSpan>& covers, const snags::Move& move) {
  const auto even = [&](double) { return move.peakStopsPerSecond; };
  const double unnoticed = snags::threshold(take.plan(), "ramp-unnoticed").value;
  return pulls::exposedIn(covers, pulls::Hidden::iris, ratesOf(take.rate(), move, even), {1 / take.rate(), unnoticed})
             .worst <= 1;
}

/// What is looked at for a move: where it may go, the frames around that, and what covers there.
struct Look {
  const Take& take;
  const pulls::Track& track;
  const pulls::FreeMove& free;
  const pulls::Tube& tube;
  const pulls::MoveRules& rules;
  std::vector<snags::Instant> samples;
  std::vector<pulls::CoverSpan> covers;

  const pulls::Move& pull() const { return track.moves[free.move]; }
  geometry::Span within(geometry::Span span) const {
    return {std::max(span.from, pull().from - kCoverReach), std::min(span.until, pull().until + kCoverReach)};
  }
  void around(geometry::Span span) {
    samples = samplesAround(take, track, span);
    covers = coversOf(take, samples);
  }
  bool shows() const { return !hides(take, covers, moveOf(pull())); }
  std::optional<pulls::Track> laidIn(geometry::Span to, double atMost) const;
};

/// The track with the move there, if all of it hides and no face suffers.
std::optional<pulls::Track> Look::laidIn(geometry::Span to, double atMost) const {
  auto other = pulls::laid(track, free.move, to, tube, rules, atMost);
  if (!other || !hides(take, covers, moveOf(other->moves[free.move]))) return {};
  const auto lighter = [&](double t) { return track.valueAt(t) - other->valueAt(t); };
  return facesStand(samples, take.plan(), lighter) ? std::move(other) : std::nullopt;
}

/// Where the value before and the value after would both do all through a covered span.
std::optional<pulls::Track> atEitherValue(const Look& look) {
  const pulls::SlotQuestion question = slotQuestionOf(moveOf(look.pull()), look.within(look.free.span()));
  if (question.change == 0 || question.free.front().length() < question.shortest) return {};
  for (const auto& slot : pulls::slotsFor(look.covers, question))
    if (auto other = look.laidIn(slot.span, std::numeric_limits<double>::infinity())) return other;
  return {};
}

/// Along the sloping tube: the ramp that is furthest under what is allowed, of equals the nearest.
std::optional<pulls::Track> alongTheTube(const Look& look) {
  constexpr std::size_t kTries = 40;
  const double unnoticed = snags::threshold(look.take.plan(), "ramp-unnoticed").value;
  struct Way {
    pulls::RampSpan ramp;
    double margin = 0, away = 0;
  };
  std::vector<Way> ways;
  const pulls::Move& pull = look.pull();
  for (pulls::RampSpan ramp : rampSpansFor(look.take, look.covers, look.within(look.free.starts),
                                           look.within(look.free.ends), pull.until - pull.from)) {
    // Rates are read off the track frame by frame: one that is allowed exactly must not be over it by rounding.
    ramp.allowed = (1 - 1e-6) * std::max(ramp.allowed, unnoticed);
    const auto rate = pulls::rateAlong(look.track, look.free.move, ramp.span, look.tube, ramp.allowed);
    if (!rate) continue;
    const double middle = (ramp.span.from + ramp.span.until) / 2;
    ways.push_back({ramp, ramp.allowed / *rate, std::abs(middle - (pull.from + pull.until) / 2)});
  }
  std::stable_sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
    return a.margin != b.margin ? a.margin > b.margin : a.away < b.away;
  });
  for (std::size_t i = 0; i < std::min(kTries, ways.size()); ++i)
    if (auto other = look.laidIn(ways[i].ramp.span, ways[i].ramp.allowed)) return other;
  return {};
}

/// The track with that move where all of it hides; nothing where it does already, or none was found.
std::optional<pulls::Track> hidden(const Take& take, const pulls::Track& track, const pulls::FreeMove& free,
                                   const pulls::Tube& tube, const pulls::MoveRules& rules) {
  Look look{take, track, free, tube, rules, {}, {}};
  look.around({look.pull().from, look.pull().until});
  if (!look.shows()) return {};
  look.around(look.within({free.starts.from, free.ends.until}));
  if (auto other = atEitherValue(look)) return other;
  return alongTheTube(look);
}

}  // namespace

pulls::Track underCover(const Take& take, pulls::Track track, const pulls::Tube& tube, const pulls::MoveRules& rules) {
  if (!take.plan().lens) return track;
  // A move laid elsewhere leaves its neighbours another choice: each is asked about as the others stand by then.
  for (std::size_t i = 0; i < track.moves.size(); ++i)
    for (const pulls::FreeMove& free : pulls::freeMoves(track, tube, rules)) {
      if (free.move != i) continue;
      if (auto other = hidden(take, track, free, tube, rules)) track = std::move(*other);
    }
  return track;
}

std::optional<pulls::Track> irisUnderCover(const Take& take) {
  const pulls::Track& planned = take.lens().iris();
  if (!take.plan().iris.keys.empty() || planned.moves.empty()) return std::nullopt;
  pulls::Track track =
      underCover(take, planned, withinLens(take.lens().irisTube(), take.plan()), irisRules(take.plan()));
  return track.knots == planned.knots ? std::nullopt : std::optional(std::move(track));
}

}  // namespace wend::answers
