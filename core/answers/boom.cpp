// Who picks up which line of speech, and what the picture, the pole and the lamps leave them.
#include "core/crew/boom.h"

#include <algorithm>
#include <tuple>

#include "core/answers/whole_take.h"
#include "core/sight/ray.h"

namespace wend::answers {

using namespace snags;

namespace {

/// Who holds the pole at t, by the plan's handovers.
std::string holderAt(const plan::Plan& plan, const plan::Pole& pole, double t) {
  std::string holder = pole.crew;
  for (const auto& handover : plan.handovers)
    if (handover.what == "boom" && handover.from == holder && plan::secondsOf(plan, handover.at) <= t)
      holder = handover.to;
  return holder;
}

const CrewAt* crewOf(const Instant& instant, const std::string& id) {
  for (const auto& at : instant.crew)
    if (at.id == id && at.present) return &at;
  return nullptr;
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
    const bool shows = instant.lens && speaker.inFrame != optics::Showing::out;
    if (shows) at.top = crew::topOfFrame(instant.camera.pupil, instant.lens->half.v, speaker.pos);
    const CrewAt* holder = crewOf(instant, holderAt(take_.plan(), pole_, instant.time));
    const geometry::Point3 mouth = geometry::at(speaker.pos, speaker.eyes - crew::kMouthUnderEyes);
    const crew::BoomStand stand =
        crew::boomStand({pole_.reach, pole_.shoulder, pole_.above, pole_.gap[0], pole_.gap[1]},
                        holder ? holder->pos : speaker.pos, holder ? holder->floor : speaker.floor, mouth, at.top);
    if (instant.lens && (at.top || !shows)) at.gap = stand.gap;
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
    missed += !at.reach || *at.reach > pole.reach || at.walled || (at.gap && *at.gap > pole.gap[1]) ? 1u : 0u;
    furthest = std::max(furthest, at.reach.value_or(0));
  }
  return {missed, furthest};
}

}  // namespace

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
