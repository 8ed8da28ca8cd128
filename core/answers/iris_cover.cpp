#include "core/answers/iris_cover.h"

#include <algorithm>
#include <cmath>

#include "core/answers/covers.h"
#include "core/answers/move_cover.h"
#include "core/pulls/free_moves.h"
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
  move.peakStopsPerSecond = pull.peakRate * ringShare(move);
  return move;
}

bool hides(const Take& take, const std::vector<pulls::CoverSpan>& covers, const snags::Move& move) {
  const auto even = [&](double) { return move.peakStopsPerSecond; };
  const double unnoticed = snags::threshold(take.plan(), "ramp-unnoticed").value;
  return pulls::exposedIn(covers, pulls::Hidden::iris, ratesOf(take.rate(), move, even), {1 / take.rate(), unnoticed})
             .worst <= 1;
}

/// What is looked at for a move: the frames around it, and where it may go.
struct Look {
  geometry::Span near;
  std::vector<snags::Instant> samples;
  std::vector<pulls::CoverSpan> covers;
};

Look lookAround(const Take& take, const pulls::Track& track, const pulls::FreeMove& free) {
  const pulls::Move& pull = track.moves[free.move];
  Look look;
  look.near = {std::max(free.span.from, pull.from - kCoverReach), std::min(free.span.until, pull.until + kCoverReach)};
  look.samples =
      samplesAround(take, track, {std::min(look.near.from, pull.from), std::max(look.near.until, pull.until)});
  look.covers = coversOf(take, look.samples);
  return look;
}

/// The track with that move where all of it hides; nothing where it does already, or would nowhere.
std::optional<pulls::Track> hidden(const Take& take, const pulls::Track& track, const pulls::FreeMove& free,
                                   const pulls::Tube& tube, const pulls::MoveRules& rules) {
  const Look look = lookAround(take, track, free);
  const snags::Move move = moveOf(track.moves[free.move]);
  const pulls::SlotQuestion question = slotQuestionOf(move, look.near);
  if (question.change == 0 || look.near.length() < question.shortest || hides(take, look.covers, move)) return {};
  for (const auto& slot : pulls::slotsFor(look.covers, question)) {
    auto other = pulls::laid(track, free.move, slot.span, tube, rules);
    if (!other || !hides(take, look.covers, moveOf(other->moves[free.move]))) continue;
    const auto lighter = [&](double t) { return track.valueAt(t) - other->valueAt(t); };
    if (facesStand(look.samples, take.plan(), lighter)) return other;
  }
  return {};
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
