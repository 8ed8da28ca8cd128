#include "core/answers/route_needs.h"

#include <algorithm>

#include "core/answers/booms.h"
#include "core/answers/closed_ground.h"
#include "core/answers/radio.h"
#include "core/answers/route_ground.h"
#include "core/answers/seeing_fan.h"
#include "core/answers/set_scene.h"
#include "core/base/text.h"
#include "core/motion/posture.h"
#include "core/sight/ray.h"
#include "core/snags/stretch.h"

namespace wend::answers {

using base::fixed;
using geometry::Span;
using snags::NeedFails;

namespace {

Span spanOf(const Take& take, const plan::Need& need) {
  const auto at = [&](const std::optional<plan::Moment>& moment, double otherwise) {
    return moment ? std::clamp(plan::secondsOf(take.plan(), *moment), 0.0, take.length()) : otherwise;
  };
  return {at(need.from, 0), at(need.until, take.length())};
}

double eyesOf(const plan::Crew& member) {
  return motion::eyeHeight(motion::Posture::stand, member.height);
}

/// Where the one that has to be seen is. Nothing while there is nobody.
std::optional<Point3> targetAt(const Take& take, const std::string& who, double t) {
  const auto& performers = take.plan().performers;
  if (who != plan::kFocusSubject || performers.find(who)) return take.people().lookAt(who, t);
  if (!take.subjects().any()) return std::nullopt;
  const geometry::KeyBlend blend = take.subjects().blendAt(t);
  return take.subjects().placeOf(blend.share < 0.5 ? blend.before : blend.after, t);
}

std::string spanWords(Span span) {
  return ", " + fixed(span.from, 1) + "\u2013" + fixed(span.until, 1) + " s";
}

/// A line of speech that the member has to pick up, while they hold the pole and the speaker is there.
struct ReachedLine {
  Span span;
  std::size_t performer = 0;
  const motion::Track* track = nullptr;
};

std::vector<ReachedLine> reachedLines(const Take& take, const plan::Pole& pole, const plan::Crew& member, Span span) {
  const plan::Plan& plan = take.plan();
  std::vector<ReachedLine> lines;
  const std::vector<Span> spans = heldSpans(plan, pole, member.id.text());
  for (const std::size_t index : linesOnlyFor(plan, pole)) {
    const plan::Speech& speech = plan.speech[index];
    const std::size_t performer = plan.performers.indexOf(speech.who);
    const motion::Track* track = take.people().performer(performer);
    if (!track) continue;
    for (const Span& held : spans) {
      const Span line{std::max({held.from, span.from, track->marks().front().at, plan::secondsOf(plan, speech.from)}),
                      std::min({held.until, span.until, plan::secondsOf(plan, speech.until)})};
      if (line.from <= line.until) lines.push_back({line, performer, track});
    }
  }
  return lines;
}

/// The pole over who speaks; without a holder's place, its microphone alone means something.
std::optional<crew::BoomStand> stoodOver(const Take& take, const plan::Pole& pole, const ReachedLine& line, double t,
                                         std::optional<Point> holder = std::nullopt) {
  const Instant instant = sampleAt(take, t);
  const snags::PerformerAt& speaker = instant.performers[line.performer];
  if (!speaker.present) return std::nullopt;
  const Point place = holder.value_or(speaker.pos);
  return standOver(pole, speaker, instant, place, take.people().floorAt(place));
}

/// A need as words; below as ground and as a check.
struct Words {
  const plan::Plan& plan;
  std::string operator()(const plan::NearCamera& near) const {
    return "within " + fixed(near.within, 1) + " m of the camera";
  }
  std::string operator()(const plan::Sees& sees) const {
    return "seeing " + (sees.who == plan::kFocusSubject ? "the subject" : snags::nameOf(plan, sees.who));
  }
  std::string operator()(const plan::Stays& stays) const { return "staying at " + stays.shelter; }
  std::string operator()(const plan::Holds& holds) const {
    return "holding the link " + snags::nameOf(plan, holds.link);
  }
  std::string operator()(const plan::Reaches& reaches) const {
    return "reaching with the pole " + snags::nameOf(plan, reaches.pole);
  }
};

/// Why a need says nothing of where somebody may be; empty when it does.
struct WhyLeftOut {
  const plan::Plan& plan;
  const plan::Crew& member;

  std::string operator()(const plan::NearCamera&) const { return ""; }
  std::string operator()(const plan::Sees&) const { return ""; }
  std::string operator()(const plan::Stays&) const { return ""; }
  std::string operator()(const plan::Holds& holds) const {
    const plan::Link* link = plan.links.find(holds.link);
    const auto other = link ? otherEnd(*link, member.id.text()) : std::nullopt;
    if (!other) return "at neither end of which they are";
    const plan::Crew* crew = plan.crew.find(*other);
    const bool placed = !crew || !crew->marks.empty() || isCarried(plan, plan.crew.indexOf(*other));
    return placed ? "" : "whose other end has no marks";
  }
  std::string operator()(const plan::Reaches& reaches) const {
    const plan::Pole* pole = plan.poles.find(reaches.pole);
    if (!pole || heldSpans(plan, *pole, member.id.text()).empty()) return "which somebody else holds";
    return linesOnlyFor(plan, *pole).empty() ? "which no line of speech names" : "";
  }
};

struct GroundOfNeed {
  const Take& take;
  const plan::Crew& member;
  Span span;
  const geometry::Grid& grid;
  const crew::StepClock& clock;
  const base::Cancel& cancel;
  using Met = std::optional<crew::CellTimes>;

  Met operator()(const plan::NearCamera& near) const {
    const auto camera = [this](double t) { return take.people().camera().place(std::min(t, take.length())); };
    return crew::nearTo(camera, near.within, clock.meeting(span), grid, clock);
  }
  Met operator()(const plan::Sees& sees) const {
    const auto from = [&](double t) -> Serves {
      const auto target = targetAt(take, sees.who, within(t));
      return target ? seenFrom(t, *target, eyesOf(member)) : Serves();
    };
    return servedThrough(from, clock.meeting(span), grid, clock, cancel);
  }
  Met operator()(const plan::Stays& stays) const {
    std::vector<std::size_t> cells;
    const plan::Shelter* shelter = take.plan().shelters.find(stays.shelter);
    for (std::size_t cell = 0; shelter && cell < grid.cells(); ++cell)
      if (geometry::distance(grid.centre(cell), shelter->pos) <= shelter->radius &&
          mayStand(take.plan(), grid.centre(cell), member.radius))
        cells.push_back(cell);
    return crew::onlyAt(cells, clock.meeting(span), grid, clock);
  }
  Met operator()(const plan::Holds& holds) const {
    const plan::Link& link = *take.plan().links.find(holds.link);
    const auto heldFrom = [&](double t) -> Serves {
      const Radio radio(take, within(t));
      auto fan = radio.fanFrom(link, member);
      if (!fan) return {};
      return [this, fan = std::make_shared<crew::LinkFan>(std::move(*fan)), radio, budget = link.budget](Point place) {
        return fan->lossTo(radio.aerialAt(member, place)) <= budget;
      };
    };
    return servedThrough(heldFrom, clock.meeting(span), grid, clock, cancel);
  }
  Met operator()(const plan::Reaches& reaches) const {
    const plan::Pole& pole = *take.plan().poles.find(reaches.pole);
    crew::CellTimes met(grid.cells(), clock.steps, true);
    for (const auto& line : reachedLines(take, pole, member, span)) {
      const auto microphone = [&](double t) {
        const auto stand = stoodOver(take, pole, line, within(t));
        return stand ? geometry::flat(stand->microphone) : line.track->place(within(t));
      };
      met.keepOnly(crew::nearTo(microphone, pole.reach, clock.meeting(line.span), grid, clock));
      const auto openFrom = [&](double t) -> Serves {
        const auto stand = stoodOver(take, pole, line, within(t));
        return stand ? seenFrom(t, stand->microphone, pole.shoulder) : Serves();
      };
      const auto open = servedThrough(openFrom, clock.meeting(line.span), grid, clock, cancel);
      if (!open) return std::nullopt;
      met.keepOnly(*open);
    }
    return met;
  }

 private:
  double within(double t) const { return std::min(t, take.length()); }
  Serves seenFrom(double t, Point3 target, double eyes) const {
    const geometry::Extent extent = grid.extent();
    const double reach = geometry::distance(extent.low, extent.high) + 1;
    const auto fan = std::make_shared<SeeingFan>(take, within(t), target, eyes, reach);
    return [fan](Point eye) { return fan->sees(eye); };
  }
};

/// Rounding in a drawn mark must not break a need.
constexpr double kClose = 1e-6;

/// What fails of a need there and then; nothing while all holds.
using Failing = std::optional<NeedFails>;

struct FailsAt {
  const Take& take;
  const plan::Crew& member;
  const std::vector<ReachedLine>& lines;  ///< of a need to reach, over all of its span
  Point pos;
  double t;

  Failing operator()(const plan::NearCamera& near) const {
    return geometry::distance(pos, take.people().camera().place(t)) > near.within + kClose ? Failing(NeedFails::far)
                                                                                           : std::nullopt;
  }
  Failing operator()(const plan::Sees& sees) const {
    const auto target = targetAt(take, sees.who, t);
    const double eyes = take.people().floorAt(pos) + eyesOf(member);
    const bool blind = target && !sight::openBetween(take.scene().at(t), geometry::at(pos, eyes), *target);
    return blind ? Failing(NeedFails::blind) : std::nullopt;
  }
  Failing operator()(const plan::Stays& stays) const {
    const plan::Shelter* shelter = take.plan().shelters.find(stays.shelter);
    return shelter && geometry::distance(pos, shelter->pos) > shelter->radius + kClose ? Failing(NeedFails::away)
                                                                                       : std::nullopt;
  }
  Failing operator()(const plan::Holds& holds) const {
    const auto at = Radio(take, t).over(*take.plan().links.find(holds.link), member, pos);
    return at && at->margin < 0 ? Failing(NeedFails::link) : std::nullopt;
  }
  /// Out of reach counts before the gap: a microphone that does not get there has none.
  Failing operator()(const plan::Reaches& reaches) const {
    const plan::Pole& pole = *take.plan().poles.find(reaches.pole);
    Failing failing;
    for (const auto& line : lines) {
      if (t < line.span.from || t > line.span.until) continue;
      const auto stand = stoodOver(take, pole, line, t, pos);
      if (!stand) continue;
      const bool open = sight::openBetween(take.scene().at(t), stand->shoulder, stand->microphone);
      if (crew::beyond(stand->reach, pole.reach) || !open) return NeedFails::reach;
      if (crew::beyond(stand->gap, pole.gap[1])) failing = NeedFails::gap;
    }
    return failing;
  }
};

/// What a need to reach is about; nothing for any other.
std::vector<ReachedLine> linesOf(const Take& take, const plan::Crew& member, const plan::Need& need, Span span) {
  const auto* reaches = std::get_if<plan::Reaches>(&need.what);
  return reaches ? reachedLines(take, *take.plan().poles.find(reaches->pole), member, span)
                 : std::vector<ReachedLine>{};
}

/// What of a shelter nobody is sent to stand in.
void addClosedGround(const plan::Plan& plan, const plan::Shelter& shelter, std::vector<std::string>& notes) {
  for (const auto& area : plan.set.areas) {
    if (!(isClosed(area) || isLane(area)) || !touches(outlineOf(area.shape), shelter.pos, shelter.radius)) continue;
    const std::string note = snags::nameOf(plan, shelter.id.text()) + " reaches into " +
                             snags::nameOf(plan, area.id.text()) + ", where nobody is sent to stand";
    if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(note);
  }
}

/// Every way in which a need may fail.
std::vector<NeedFails> waysToFail(const plan::Need& need) {
  if (std::holds_alternative<plan::NearCamera>(need.what)) return {NeedFails::far};
  if (std::holds_alternative<plan::Sees>(need.what)) return {NeedFails::blind};
  if (std::holds_alternative<plan::Stays>(need.what)) return {NeedFails::away};
  if (std::holds_alternative<plan::Holds>(need.what)) return {NeedFails::link};
  return {NeedFails::reach, NeedFails::gap};
}

}  // namespace

std::optional<std::vector<NeedGround>> needGrounds(const Take& take, std::size_t member, const geometry::Grid& grid,
                                                   const crew::StepClock& clock, const base::Cancel& cancel) {
  std::vector<NeedGround> grounds;
  const plan::Crew& crew = take.plan().crew[member];
  for (const auto& need : crew.needs) {
    if (!std::visit(WhyLeftOut{take.plan(), crew}, need.what).empty()) continue;
    const Span span = spanOf(take, need);
    auto met = std::visit(GroundOfNeed{take, crew, span, grid, clock, cancel}, need.what);
    if (!met) return std::nullopt;
    grounds.push_back({std::visit(Words{take.plan()}, need.what) + spanWords(span), std::move(*met)});
  }
  return grounds;
}

std::vector<Span> uprightSpans(const Take& take, std::size_t member) {
  std::vector<Span> spans;
  for (const auto& need : take.plan().crew[member].needs) {
    const bool anyHeight =
        std::holds_alternative<plan::NearCamera>(need.what) || std::holds_alternative<plan::Stays>(need.what);
    if (!anyHeight) spans.push_back(spanOf(take, need));
  }
  return spans;
}

std::vector<Span> staySpans(const Take& take, std::size_t member, const std::string& shelter) {
  std::vector<Span> spans;
  for (const auto& need : take.plan().crew[member].needs) {
    const auto* stays = std::get_if<plan::Stays>(&need.what);
    if (stays && stays->shelter == shelter) spans.push_back(spanOf(take, need));
  }
  return spans;
}

std::vector<std::string> needsLeftOut(const plan::Plan& plan, std::size_t member) {
  std::vector<std::string> notes;
  for (const auto& need : plan.crew[member].needs) {
    const std::string why = std::visit(WhyLeftOut{plan, plan.crew[member]}, need.what);
    if (!why.empty()) notes.push_back("not planned for: " + std::visit(Words{plan}, need.what) + ", " + why);
    const auto* stays = std::get_if<plan::Stays>(&need.what);
    const plan::Shelter* shelter = stays ? plan.shelters.find(stays->shelter) : nullptr;
    if (shelter) addClosedGround(plan, *shelter, notes);
  }
  return notes;
}

std::function<bool(Point, double t)> needsMet(const Take& take, std::size_t member) {
  struct Asked {
    const plan::Need& need;
    Span span;
    std::vector<ReachedLine> lines;
  };
  const plan::Crew& crew = take.plan().crew[member];
  std::vector<Asked> needs;
  for (const auto& need : crew.needs) {
    const Span span = spanOf(take, need);
    if (span.until < span.from || !std::visit(WhyLeftOut{take.plan(), crew}, need.what).empty()) continue;
    needs.push_back({need, span, linesOf(take, crew, need, span)});
  }
  return [&take, &crew, needs = std::move(needs)](Point pos, double t) {
    return std::none_of(needs.begin(), needs.end(), [&](const Asked& asked) {
      return asked.span.contains(t) && std::visit(FailsAt{take, crew, asked.lines, pos, t}, asked.need.what);
    });
  };
}

bool seesSubject(const Take& take, std::size_t member, Point pos, double t) {
  const std::vector<ReachedLine> none;
  return !FailsAt{take, take.plan().crew[member], none, pos, t}(plan::Sees{plan::kFocusSubject});
}

std::vector<RouteBreak> needBreaks(const Take& take, std::size_t member, const std::function<Point(double t)>& at) {
  std::vector<RouteBreak> breaks;
  const plan::Crew& crew = take.plan().crew[member];
  for (const auto& need : crew.needs) {
    if (!std::visit(WhyLeftOut{take.plan(), crew}, need.what).empty()) continue;
    const Span span = spanOf(take, need);
    if (span.until < span.from) continue;
    const std::vector<ReachedLine> lines = linesOf(take, crew, need, span);
    for (const NeedFails why : waysToFail(need)) {
      const auto fails = [&](double t) { return std::visit(FailsAt{take, crew, lines, at(t), t}, need.what) == why; };
      for (const Span& broken : geometry::spansWhere(span, 1 / take.rate(), fails))
        breaks.push_back({broken, at(broken.from), why});
    }
  }
  std::stable_sort(breaks.begin(), breaks.end(),
                   [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  return breaks;
}

std::vector<snags::NeedUnmet> unmetNeeds(const Take& take) {
  std::vector<snags::NeedUnmet> unmet;
  for (std::size_t i = 0; i < take.plan().crew.size(); ++i) {
    const motion::Track* track = take.people().crew(i);
    if (!track || isCarried(take.plan(), i)) continue;
    for (const auto& stop : needBreaks(take, i, [track](double t) { return track->place(t); }))
      unmet.push_back({take.plan().crew[i].id.text(), stop.span, stop.at, stop.why});
  }
  return unmet;
}

}  // namespace wend::answers
