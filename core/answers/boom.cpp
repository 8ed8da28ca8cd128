// Who picks up which line of speech, and what the picture, the pole and the lamps leave them.
#include <algorithm>
#include <tuple>

#include "core/answers/booms.h"
#include "core/answers/whole_take.h"
#include "core/plan/holders.h"
#include "core/sight/ray.h"

namespace wend::answers {

using namespace snags;

namespace {

const CrewAt* crewOf(const Instant& instant, const std::string& id) {
  for (const auto& at : instant.crew)
    if (at.id == id && at.present) return &at;
  return nullptr;
}

bool shows(const PerformerAt& speaker, const Instant& instant) {
  return instant.lens && speaker.inFrame != optics::Showing::out;
}

std::optional<crew::FrameTop> topOver(const PerformerAt& speaker, const Instant& instant) {
  if (!shows(speaker, instant)) return std::nullopt;
  return crew::frameTopAt(instant.camera.pupil, instant.lens->half.v, speaker.pos);
}

/// One pole over one speaker.
class Boom {
 public:
  Boom(const Take& take, const plan::Pole& pole) : take_(take), pole_(pole) {
    for (const auto& fixture : take.plan().fixtures) lamps_.push_back(geometry::at(fixture.pos, fixture.height));
  }

  BoomAt over(const PerformerAt& speaker, const Instant& instant) const {
    BoomAt at;
    at.time = instant.time;
    at.pos = speaker.pos;
    if (const auto top = topOver(speaker, instant)) at.top = top->height;
    const CrewAt* holder = crewOf(instant, holderAt(take_.plan(), pole_, instant.time));
    const crew::BoomStand stand =
        standOver(pole_, speaker, instant, holder ? holder->pos : speaker.pos, holder ? holder->floor : speaker.floor);
    if (instant.lens && (at.top || !shows(speaker, instant))) at.gap = stand.gap;
    if (holder && instant.lens) addWay(stand, instant.time, at);
    if (!holder) return at;
    at.reach = stand.reach;
    at.held = PoleLine{stand.shoulder, stand.microphone};
    return at;
  }

 private:
  void addWay(const crew::BoomStand& stand, double t, BoomAt& at) const {
    at.walled = !sight::openBetween(take_.scene().at(t), stand.shoulder, stand.microphone);
    const auto lamp = crew::lampBeside(stand, lamps_);
    if (!lamp) return;
    at.lamp = take_.plan().fixtures[lamp->lamp].id.text();
    at.lampMetres = lamp->metres;
  }

  const Take& take_;
  const plan::Pole& pole_;
  std::vector<geometry::Point3> lamps_;
};

BoomLine lineOf(const Take& take, const std::vector<Instant>& samples, std::size_t index, const plan::Pole& pole) {
  const plan::Plan& plan = take.plan();
  const plan::Speech& speech = plan.speech[index];
  const Boom boom(take, pole);
  BoomLine line{
      index, pole.id.text(), speech.who, {plan::secondsOf(plan, speech.from), plan::secondsOf(plan, speech.until)}, {}};
  for (const auto& instant : samples) {
    if (instant.time < line.span.from || instant.time > line.span.until) continue;
    for (const auto& at : instant.performers)
      if (at.id == speech.who && at.present) line.at.push_back(boom.over(at, instant));
  }
  return line;
}

/// What a pole leaves undone: samples out of reach or with nobody at it, then the furthest it has to reach.
std::tuple<std::size_t, double> wanting(const plan::Pole& pole, const BoomLine& line) {
  std::size_t missed = 0;
  double furthest = 0;
  for (const auto& at : line.at) {
    const bool short_ = !at.reach || crew::beyond(*at.reach, pole.reach);
    missed += short_ || at.walled || (at.gap && crew::beyond(*at.gap, pole.gap[1])) ? 1u : 0u;
    furthest = std::max(furthest, at.reach.value_or(0));
  }
  return {missed, furthest};
}

}  // namespace

std::optional<BoomAt> boomNow(const Take& take, const BoomLine& line, const Instant& instant) {
  const Boom boom(take, *take.plan().poles.find(line.pole));
  for (const auto& at : instant.performers)
    if (at.id == line.who && at.present) return boom.over(at, instant);
  return std::nullopt;
}

std::string holderAt(const plan::Plan& plan, const plan::Pole& pole, double t) {
  return plan::holderAt(plan::holdersOf(plan, "boom", pole.crew), t);
}

std::vector<Span> heldSpans(const plan::Plan& plan, const plan::Pole& pole, const std::string& member) {
  const auto holders = plan::holdersOf(plan, "boom", pole.crew);
  std::vector<Span> spans;
  for (std::size_t i = 0; i < holders.size(); ++i) {
    const double until = i + 1 < holders.size() ? std::min(holders[i + 1].from, plan.clock.length) : plan.clock.length;
    if (holders[i].who == member && holders[i].from < until) spans.push_back({holders[i].from, until});
  }
  return spans;
}

std::vector<std::size_t> linesOnlyFor(const plan::Plan& plan, const plan::Pole& pole) {
  std::vector<std::size_t> lines;
  for (std::size_t i = 0; i < plan.speech.size(); ++i) {
    const std::string& named = plan.speech[i].pole;
    if (named == pole.id.text() || (named.empty() && plan.poles.size() == 1)) lines.push_back(i);
  }
  return lines;
}

crew::BoomStand standOver(const plan::Pole& pole, const PerformerAt& speaker, const Instant& instant, Point holder,
                          double holdersFloor) {
  const geometry::Point3 mouth = geometry::at(speaker.pos, speaker.eyes - crew::kMouthUnderEyes);
  return crew::boomStand({pole.reach, pole.shoulder, pole.above, pole.gap[0], pole.gap[1]}, holder, holdersFloor, mouth,
                         topOver(speaker, instant));
}

std::vector<BoomLine> boomLines(const Take& take, const std::vector<Instant>& samples) {
  const plan::Plan& plan = take.plan();
  std::vector<BoomLine> lines;
  for (std::size_t i = 0; i < plan.speech.size(); ++i) {
    std::optional<BoomLine> best;
    std::tuple<std::size_t, double> least;
    for (const auto& pole : plan.poles) {
      if (!plan.speech[i].pole.empty() && plan.speech[i].pole != pole.id.text()) continue;
      BoomLine line = lineOf(take, samples, i, pole);
      const auto left = wanting(pole, line);
      if (best && !(left < least)) continue;
      least = left;
      best = std::move(line);
    }
    if (best) lines.push_back(std::move(*best));
  }
  return lines;
}

}  // namespace wend::answers
