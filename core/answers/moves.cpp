// The moves of focus, iris and zoom as people make them: on what beat, how fast, behind what cover, with how many
// hands.
#include <algorithm>
#include <cmath>
#include <functional>

#include "core/answers/lens_charts.h"
#include "core/answers/move_cover.h"
#include "core/answers/set_scene.h"
#include "core/answers/whole_take.h"
#include "core/answers/zoom_flow.h"
#include "core/pulls/latest_start.h"

namespace wend::answers {

using namespace snags;

namespace {

void bindToBeat(const plan::Plan& plan, Move& move) {
  const plan::Beat* last = nullptr;
  for (const auto& beat : plan.beats)
    if (beat.time <= move.from + 1e-9 && (!last || beat.time >= last->time)) last = &beat;
  move.beat = last ? last->id.text() : std::string();
  move.plus = last ? move.from - last->time : move.from;
}

std::optional<std::array<double, 2>> easeOf(const pulls::Move& pull, bool byHand) {
  return byHand ? std::nullopt : std::optional(std::array{pull.easeIn, pull.easeOut});
}

std::vector<Move> focusMoves(const Take& take) {
  std::vector<Move> moves;
  const LensTracks& lens = take.lens();
  for (std::size_t k = 0; k < lens.focus().moves.size(); ++k) {
    const pulls::Move& pull = lens.focus().moves[k];
    Move move;
    move.latest = pulls::latestStart(lens.focusTube(), lens.focus(), k, focusRules(take.plan()).rate);
    move.ease = easeOf(pull, !take.plan().focus.pulls.empty());
    move.axis = Move::Axis::focus;
    move.from = pull.from;
    move.until = pull.until;
    move.barrelBefore = pull.valueBefore;
    move.barrelAfter = pull.valueAfter;
    move.valueBefore = lens.focusScale().valueAt(pull.valueBefore);
    move.valueAfter = lens.focusScale().valueAt(pull.valueAfter);
    move.peakDegPerSecond = pull.peakRate;
    if (take.subjects().any()) move.on = take.subjects().nameOf(take.subjects().blendAt(pull.until).after);
    moves.push_back(move);
  }
  return moves;
}

template <class Mark>
std::optional<optics::LensScale> scaleThrough(optics::ScaleOf of, const std::vector<Mark>& marks) {
  auto scale = optics::LensScale::through(of, scaleMarks(marks));
  return scale ? std::optional(std::move(scale).value()) : std::nullopt;
}

std::optional<optics::LensScale> irisScale(const plan::Plan& plan) {
  return plan.lens ? scaleThrough(optics::ScaleOf::stop, plan.lens->irisMarks) : std::nullopt;
}

std::optional<optics::LensScale> zoomScale(const plan::Plan& plan) {
  return plan.lens ? scaleThrough(optics::ScaleOf::focal, plan.lens->zoomMarks) : std::nullopt;
}

/// Degrees a second where a ring turns fastest while it shows `valueAt`: its marks are as uneven as the move is.
/// Looked at four times a frame, and often enough within a short move.
double peakOnRing(const optics::LensScale& scale, Span span, double rate,
                  const std::function<double(double)>& valueAt) {
  const double steps = std::max(64.0, std::ceil(4 * rate * span.length()));
  double peak = 0, before = scale.degreesAt(valueAt(span.from));
  for (double i = 1; i <= steps; ++i) {
    const double now = scale.degreesAt(valueAt(geometry::lerp(span.from, span.until, i / steps)));
    peak = std::max(peak, std::abs(now - before) * steps / span.length());
    before = now;
  }
  return peak;
}

void setBarrel(const std::optional<optics::LensScale>& scale, double rate, const std::function<double(double)>& valueAt,
               Move& move) {
  if (!scale) return;
  move.barrelBefore = scale->degreesAt(move.valueBefore);
  move.barrelAfter = scale->degreesAt(move.valueAfter);
  move.peakDegPerSecond = move.cut() ? kInfinity : peakOnRing(*scale, {move.from, move.until}, rate, valueAt);
}

std::vector<Move> irisMoves(const Take& take) {
  std::vector<Move> moves;
  const auto scale = irisScale(take.plan());
  const LensTracks& lens = take.lens();
  for (std::size_t k = 0; k < lens.iris().moves.size(); ++k) {
    const pulls::Move& pull = lens.iris().moves[k];
    Move move;
    move.latest = pulls::latestStart(lens.irisTube(), lens.iris(), k, irisRules(take.plan()).rate);
    move.ease = easeOf(pull, !take.plan().iris.keys.empty());
    move.axis = Move::Axis::iris;
    move.from = pull.from;
    move.until = pull.until;
    move.valueBefore = tNumberOf(pull.valueBefore);
    move.valueAfter = tNumberOf(pull.valueAfter);
    move.peakStopsPerSecond = pull.peakRate * ringShare(move);
    setBarrel(
        scale, take.rate(), [&](double t) { return lens.irisAt(t); }, move);
    moves.push_back(move);
  }
  return moves;
}

double peakZoomRate(const Take& take, const Move& move) {
  if (move.cut()) return kInfinity;
  double peak = std::abs(take.view().zoomRateAt((move.from + move.until) / 2));
  for (double t = move.from; t < move.until; t += 1 / take.rate())
    peak = std::max(peak, std::abs(take.view().zoomRateAt(t)));
  return peak;
}

/// Neighbouring keys that go on in the same direction are one move.
std::vector<Move> keyedZooms(const Take& take) {
  std::vector<Move> moves;
  for (const auto& key : resolvedKeys(take.plan(), take.plan().zoom.keys)) {
    const double end = std::min(key.at + key.over, take.length());
    const double before = take.view().focalAt(key.at).value_or(0), after = take.view().focalAt(end).value_or(0);
    if (key.over <= 0 || std::abs(after - before) < 1e-6) continue;
    const bool goesOn = !moves.empty() && std::abs(moves.back().until - key.at) < 1e-6 &&
                        (moves.back().valueAfter - moves.back().valueBefore) * (after - before) > 0;
    if (!goesOn) {
      Move move;
      move.axis = Move::Axis::zoom;
      move.from = key.at;
      move.valueBefore = before;
      moves.push_back(move);
    }
    moves.back().until = end;
    moves.back().valueAfter = after;
  }
  return moves;
}

Move zoomOf(const pulls::Move& zoom, bool byHand) {
  Move move;
  move.ease = easeOf(zoom, byHand);
  move.axis = Move::Axis::zoom;
  move.from = zoom.from;
  move.until = zoom.until;
  move.valueBefore = zoom.valueBefore;
  move.valueAfter = zoom.valueAfter;
  return move;
}

/// Those set by key, cuts among them, and those planned to keep a shot size.
std::vector<Move> zoomMoves(const Take& take) {
  std::vector<Move> moves = keyedZooms(take);
  for (const pulls::Move& cut : take.view().zoom().cuts()) moves.push_back(zoomOf(cut, true));
  for (const pulls::Move& planned : take.view().zoom().plannedMoves()) moves.push_back(zoomOf(planned, false));
  std::stable_sort(moves.begin(), moves.end(), [](const Move& a, const Move& b) { return a.from < b.from; });
  const auto scale = zoomScale(take.plan());
  for (auto& move : moves) {
    move.peakPercentPerSecond = peakZoomRate(take, move);
    // A cut is no flow of the picture.
    if (!move.cut()) move.flowShare = zoomFlowShare(take, {move.from, move.until});
    setBarrel(
        scale, take.rate(), [&](double t) { return *take.view().focalAt(t); }, move);
  }
  return moves;
}

std::vector<Move> densityMoves(const Take& take) {
  std::vector<Move> moves;
  const auto keys = densityKeys(take.plan());
  for (std::size_t i = 1; i < keys.size(); ++i) {
    const auto& time = keys[i].time;
    if (std::abs(keys[i].stops - keys[i - 1].stops) < 1e-9 || time.at >= take.length()) continue;
    Move move;
    move.axis = Move::Axis::density;
    move.from = time.at;
    move.until = time.at + time.over;
    move.valueBefore = keys[i - 1].stops;
    move.valueAfter = keys[i].stops;
    if (move.cut() && move.from <= 0) continue;
    // Fastest in its middle, whatever its pace.
    move.peakStopsPerSecond = move.cut() ? kInfinity : std::abs(light::densityRate(keys, time.at + time.over / 2));
    moves.push_back(move);
  }
  return moves;
}

/// Each may lie anywhere between its neighbours. Requires moves of one axis in order.
void coverMoves(const Take& take, const std::vector<Instant>& samples, const std::vector<pulls::CoverSpan>& covers,
                std::vector<Move>& moves) {
  for (std::size_t k = 0; k < moves.size(); ++k) {
    const double from = k == 0 ? 0 : moves[k - 1].until;
    const double until = k + 1 == moves.size() ? take.length() : moves[k + 1].from;
    coverMove(take, samples, covers, {from, until}, moves[k]);
  }
}

}  // namespace

std::vector<Move> movesOf(const Take& take, const std::vector<Instant>& samples,
                          const std::vector<pulls::CoverSpan>& covers) {
  std::vector<Move> all = focusMoves(take);
  for (auto moves : {irisMoves(take), zoomMoves(take), densityMoves(take)}) {
    coverMoves(take, samples, covers, moves);
    all.insert(all.end(), moves.begin(), moves.end());
  }
  for (auto& move : all) bindToBeat(take.plan(), move);
  std::stable_sort(all.begin(), all.end(), [](const Move& a, const Move& b) { return a.from < b.from; });
  return all;
}

}  // namespace wend::answers
