// The moves of focus, iris and zoom as people make them: on what beat, how fast, behind what cover, with how many
// hands.
#include <algorithm>
#include <cmath>

#include "core/answers/lens_charts.h"
#include "core/answers/whole_take.h"
#include "core/base/text.h"
#include "core/pulls/latest_start.h"
#include "core/sight/ray.h"

namespace wend::answers {

using namespace snags;

namespace {

/// A pan this fast hides a move of iris or zoom, degrees per second. Common practice, no source.
constexpr double kCoveringPan = 20;

void bindToBeat(const plan::Plan& plan, Move& move) {
  const plan::Beat* last = nullptr;
  for (const auto& beat : plan.beats)
    if (beat.time <= move.from + 1e-9 && (!last || beat.time >= last->time)) last = &beat;
  move.beat = last ? last->id.text() : std::string();
  move.plus = last ? move.from - last->time : move.from;
}

void addWord(std::string& words, const std::string& word) {
  if (word.empty() || words.find(word) != std::string::npos) return;
  words += (words.empty() ? "" : ", ") + word;
}

bool starts(const plan::Plan& plan, const plan::KeyTime& time, const Move& move) {
  const double at = plan::secondsOf(plan, time.at);
  return at > 0 && at >= move.from - 0.5 && at <= move.until;
}

void addCues(const plan::Plan& plan, const Move& move, std::string& words) {
  for (const auto& area : plan.set.areas)
    for (const auto& state : area.states)
      if (starts(plan, state.time, move)) addWord(words, state.name);
  for (const auto& opening : plan.set.openings)
    for (const auto& key : opening.open)
      if (starts(plan, key.time, move)) addWord(words, key.name);
}

void addDoorways(const Take& take, const motion::Track& way, const Move& move, std::string& words) {
  const double step = 0.25;
  for (double t = move.from; t < move.until; t += step) {
    const Point a = way.place(t), b = way.place(std::min(move.until, t + step));
    for (const int tag : sight::openingsCrossed(take.scene(), a, b))
      addWord(words, take.plan().set.openings[static_cast<std::size_t>(tag)].name);
  }
}

/// Doorways that the camera passes, or the one it follows: either wipes the frame.
void addDoorways(const Take& take, const Move& move, std::string& words) {
  addDoorways(take, take.people().camera(), move, words);
  if (!take.subjects().any()) return;
  const std::size_t who =
      take.plan().performers.indexOf(take.subjects().firstOf(take.subjects().blendAt(move.from).after));
  if (who == take.plan().performers.size()) return;
  if (const auto* way = take.people().performer(who)) addDoorways(take, *way, move, words);
}

void addPan(const Take& take, const Move& move, std::string& words) {
  double peak = 0;
  for (double t = move.from; t < move.until; t += 0.1)
    peak = std::max(peak, std::abs(take.view().aim().ratesAt(t).bearing));
  if (peak >= kCoveringPan) addWord(words, "pan " + base::fixed(peak, 0) + "\u00b0/s");
}

/// What happens meanwhile that hides a change: doorways passed, cues of light and doors, a fast pan.
std::string coverOf(const Take& take, const Move& move) {
  std::string words;
  addCues(take.plan(), move, words);
  addDoorways(take, move, words);
  addPan(take, move, words);
  return words;
}

std::vector<Move> focusMoves(const Take& take) {
  std::vector<Move> moves;
  const LensTracks& lens = take.lens();
  for (std::size_t k = 0; k < lens.focus().moves.size(); ++k) {
    const pulls::Move& pull = lens.focus().moves[k];
    Move move;
    move.latest = pulls::latestStart(lens.focusTube(), lens.focus(), k, focusRules(take.plan()).rate);
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

void setBarrel(const std::optional<optics::LensScale>& scale, Move& move) {
  if (!scale) return;
  move.barrelBefore = scale->degreesAt(move.valueBefore);
  move.barrelAfter = scale->degreesAt(move.valueAfter);
  if (move.until > move.from)
    move.peakDegPerSecond = std::abs(move.barrelAfter - move.barrelBefore) / (move.until - move.from);
}

std::vector<Move> irisMoves(const Take& take) {
  std::vector<Move> moves;
  const auto scale = irisScale(take.plan());
  const LensTracks& lens = take.lens();
  for (std::size_t k = 0; k < lens.iris().moves.size(); ++k) {
    const pulls::Move& pull = lens.iris().moves[k];
    Move move;
    move.latest = pulls::latestStart(lens.irisTube(), lens.iris(), k, irisRules(take.plan()).rate);
    move.axis = Move::Axis::iris;
    move.from = pull.from;
    move.until = pull.until;
    move.valueBefore = tNumberOf(pull.valueBefore);
    move.valueAfter = tNumberOf(pull.valueAfter);
    move.peakStopsPerSecond = pull.peakRate;
    setBarrel(scale, move);
    move.cover = coverOf(take, move);
    moves.push_back(move);
  }
  return moves;
}

double peakZoomRate(const Take& take, const Move& move) {
  double peak = 0;
  for (double t = move.from; t < move.until; t += 1 / take.rate())
    peak = std::max(peak, std::abs(take.view().zoomRateAt(t)));
  return peak;
}

/// Neighbouring keys that go on in the same direction are one move.
std::vector<Move> zoomMoves(const Take& take) {
  std::vector<Move> moves;
  const auto scale = zoomScale(take.plan());
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
  for (auto& move : moves) {
    move.peakPercentPerSecond = peakZoomRate(take, move);
    setBarrel(scale, move);
    move.cover = coverOf(take, move);
  }
  return moves;
}

/// As many hands as axes move at once somewhere in the move.
int handsFor(const Move& move, const std::vector<Move>& all) {
  int hands = 1;
  for (const auto axis : {Move::Axis::focus, Move::Axis::iris, Move::Axis::zoom})
    hands += axis != move.axis && std::any_of(all.begin(), all.end(), [&](const Move& other) {
               return other.axis == axis && other.from < move.until && other.until > move.from;
             });
  return hands;
}

}  // namespace

std::vector<Move> movesOf(const Take& take) {
  std::vector<Move> all;
  for (const auto& moves : {focusMoves(take), irisMoves(take), zoomMoves(take)})
    all.insert(all.end(), moves.begin(), moves.end());
  for (auto& move : all) {
    bindToBeat(take.plan(), move);
    move.hands = handsFor(move, all);
  }
  std::stable_sort(all.begin(), all.end(), [](const Move& a, const Move& b) { return a.from < b.from; });
  return all;
}

}  // namespace wend::answers
