#include "core/plan/edits_marks.h"

#include <set>

#include "core/plan/arc_leg.h"
#include "core/plan/edits_entities.h"
#include "core/plan/edits_parts.h"
#include "core/plan/leg_place.h"

namespace wend::plan {

namespace {

using base::Problem;
using base::Result;
using Marks = std::vector<Mark>;

const Marks* marksOf(const Plan& plan, const TrackRef& track) {
  if (track.owner == Owner::camera) return &plan.camera.marks;
  if (track.owner == Owner::performer) {
    const Performer* who = plan.performers.find(track.id);
    return who ? &who->marks : nullptr;
  }
  const Crew* who = plan.crew.find(track.id);
  return who ? &who->marks : nullptr;
}

double reached(const Plan& plan, const Mark& mark) {
  return secondsOf(plan, mark.at);
}

double left(const Plan& plan, const Mark& mark) {
  return secondsOf(plan, mark.until.value_or(mark.at));
}

/// The moment at `seconds` that hangs on what `moment` hangs on.
Moment retimed(const Plan& plan, Moment moment, double seconds) {
  moment.seconds = seconds - (secondsOf(plan, moment) - moment.seconds);
  return moment;
}

bool fullTurnFrom(const Plan& plan, const Marks& marks, std::size_t i) {
  return i + 1 < marks.size() && isFullTurn(marks[i].leg, placeOf(plan, marks[i]), placeOf(plan, marks[i + 1]));
}

void placeMark(Mark& mark, Point pos) {
  mark.pos = pos;
  mark.shelter.clear();
}

void refitFrom(const Plan& plan, Marks& marks, std::size_t i) {
  if (i + 1 < marks.size()) refit(marks[i].leg, placeOf(plan, marks[i]), placeOf(plan, marks[i + 1]));
}

void moveTogether(const Plan& plan, Marks& marks, std::size_t index, Point pos) {
  std::size_t first = index, last = index;
  while (first > 0 && fullTurnFrom(plan, marks, first - 1)) --first;
  while (fullTurnFrom(plan, marks, last)) ++last;
  for (std::size_t i = first; i <= last; ++i) placeMark(marks[i], pos);
  if (first > 0) refitFrom(plan, marks, first - 1);
  refitFrom(plan, marks, last);
}

void moveRigidly(const Plan& plan, Marks& marks, const std::set<std::size_t>& chosen, geometry::Vec by) {
  for (const std::size_t i : chosen) placeMark(marks[i], quantised(placeOf(plan, marks[i]) + by));
  for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
    const bool start = chosen.count(i) != 0, end = chosen.count(i + 1) != 0;
    if (start && end) {
      for (Point& point : marks[i].leg.via) point = point + by;
      if (marks[i].leg.shape == LegShape::arc) marks[i].leg.centre = marks[i].leg.centre + by;
    } else if (start || end) {
      refitFrom(plan, marks, i);
    }
  }
}

/// A mark that interrupts the leg of `before` on the way to `after`.
Mark markBetween(const Mark& before, const Mark& after, double share) {
  Mark mark;
  mark.posture = before.posture;
  if (before.height && after.height) mark.height = geometry::lerp(*before.height, *after.height, share);
  return mark;
}

Trouble standsAt(const Plan& plan, const Marks& marks, double seconds) {
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const double from = reached(plan, marks[i]), until = left(plan, marks[i]);
    if (seconds < from - kSameTime || seconds > until + kSameTime) continue;
    return Problem{"mark-there", "", secondsText(seconds),
                   "a time on the way; mark " + std::to_string(i + 1) + " is held from " + secondsText(from) + " to " +
                       secondsText(until),
                   "Choose a time on the way, or leave that mark earlier first."};
  }
  return std::nullopt;
}

void insertMark(const Plan& plan, Marks& marks, std::size_t i, Mark mark) {
  if (i > 0 && i < marks.size()) {
    Mark& before = marks[i - 1];
    const Point from = placeOf(plan, before), to = placeOf(plan, marks[i]);
    const double gone = left(plan, before);
    const double share = (mark.at.seconds - gone) / (reached(plan, marks[i]) - gone);
    const LegHalves halves = halvesOfLeg(before.leg, from, to, mark.pos, share);
    const Mark between = markBetween(before, marks[i], shareOnLeg(before.leg, from, to, mark.pos));
    mark.height = between.height;
    mark.posture = between.posture;
    before.leg = halves.first;
    mark.leg = halves.second;
  } else if (!marks.empty()) {
    const Mark& beside = i == 0 ? marks.front() : marks.back();
    mark.height = beside.height;
    mark.posture = beside.posture;
    if (i > 0) marks.back().leg = Leg{};
  }
  marks.insert(marks.begin() + static_cast<std::ptrdiff_t>(i), std::move(mark));
}

/// The mark whose leg is under way at `seconds`.
std::optional<std::size_t> underWay(const Plan& plan, const Marks& marks, double seconds) {
  for (std::size_t i = 0; i + 1 < marks.size(); ++i)
    if (seconds > left(plan, marks[i]) + kSameTime && seconds < reached(plan, marks[i + 1]) - kSameTime) return i;
  return std::nullopt;
}

Problem notOfMark(const std::string& what, const std::string& owner) {
  return {"mark-kind", "", what + " on a mark of another kind", "a mark of " + owner,
          "Choose a mark of " + owner + "."};
}

Problem placeUnknown(const std::string& found) {
  return {"leg-place", "", found, "a straight leg or an arc at even pace",
          "Read the place from the path at that time and insert the mark there."};
}

}  // namespace

Result<Plan> movedMark(const Plan& plan, const MarkRef& mark, Point pos) {
  return changedMarkOf(plan, mark, [&](Marks& marks, std::size_t i) { moveTogether(plan, marks, i, quantised(pos)); });
}

Result<Plan> movedMarks(const Plan& plan, const std::vector<MarkRef>& marks, geometry::Vec by) {
  Plan next = plan;
  std::set<std::pair<Owner, std::string>> tracks;
  for (const MarkRef& ref : marks) tracks.emplace(ref.owner, ref.id);
  for (const auto& [owner, id] : tracks) {
    std::set<std::size_t> chosen;
    for (const MarkRef& ref : marks)
      if (ref.owner == owner && ref.id == id) chosen.insert(ref.index);
    Result<Plan> moved = changedMarkOf(next, {owner, id, *chosen.rbegin()},
                                       [&](Marks& all, std::size_t) { moveRigidly(next, all, chosen, by); });
    if (!moved) return moved;
    next = std::move(moved).value();
  }
  return next;
}

Result<Plan> markHeightSet(const Plan& plan, const MarkRef& mark, double height) {
  if (mark.owner != Owner::camera) return notOfMark("height", "the camera");
  return changedMark(plan, mark, [&](Mark& m) { m.height = height; });
}

Result<Plan> markFacingSet(const Plan& plan, const MarkRef& mark, std::optional<double> facing) {
  if (mark.owner != Owner::performer) return notOfMark("facing", "a performer");
  return changedMark(plan, mark, [&](Mark& m) { m.facing = facing; });
}

Result<Plan> markPostureSet(const Plan& plan, const MarkRef& mark, Posture posture) {
  const bool crew = posture == Posture::stand || posture == Posture::crouch;
  if (mark.owner == Owner::camera || (mark.owner == Owner::crew && !crew) ||
      (mark.owner == Owner::performer && posture == Posture::crouch))
    return Problem{"posture", "", "a posture this mark cannot have",
                   "performers stand, sit, kneel or lie; crew stand or crouch", "Choose one of these."};
  return changedMark(plan, mark, [&](Mark& m) { m.posture = posture; });
}

Result<Plan> markTapedSet(const Plan& plan, const MarkRef& mark, bool taped) {
  if (mark.owner != Owner::performer) return notOfMark("taped", "a performer");
  return changedMark(plan, mark, [&](Mark& m) { m.taped = taped; });
}

Result<Plan> markSheltered(const Plan& plan, const MarkRef& mark, const std::string& shelter) {
  if (mark.owner != Owner::crew) return notOfMark("shelter", "a crew member");
  return changedMarkOf(plan, mark, [&](Marks& marks, std::size_t i) {
    marks[i].shelter = shelter;
    marks[i].pos = {};
    if (i > 0) refitFrom(plan, marks, i - 1);
    refitFrom(plan, marks, i);
  });
}

Result<Plan> arrivalSet(const Plan& plan, const MarkRef& mark, double seconds) {
  return changedMark(plan, mark, [&](Mark& m) {
    const bool atOnce = m.until && std::abs(left(plan, m) - reached(plan, m)) < kSameTime;
    m.at = retimed(plan, m.at, seconds);
    if (atOnce) m.until = retimed(plan, *m.until, seconds);
  });
}

Result<Plan> leavingSet(const Plan& plan, const MarkRef& mark, std::optional<double> seconds) {
  return changedMark(plan, mark, [&](Mark& m) {
    if (seconds)
      m.until = retimed(plan, m.until.value_or(Moment{}), *seconds);
    else
      m.until.reset();
  });
}

Result<Plan> shiftedMark(const Plan& plan, const MarkRef& mark, double by) {
  return changedMark(plan, mark, [&](Mark& m) {
    m.at.seconds += by;
    if (m.until) m.until->seconds += by;
  });
}

Result<Plan> insertedMark(const Plan& plan, const TrackRef& track, double seconds, Point pos) {
  const double time = quantised(seconds, kinds::kMoment);
  return changedTrack(plan, track, [&](Marks& marks) -> Trouble {
    if (Trouble trouble = standsAt(plan, marks, time)) return trouble;
    std::size_t i = 0;
    while (i < marks.size() && reached(plan, marks[i]) < time) ++i;
    Mark mark;
    if (track.owner == Owner::camera && std::abs(time) < 86400)
      mark.id = freshId(plan, "c" + std::to_string(std::lround(std::abs(time))));
    mark.at.seconds = time;
    mark.pos = quantised(pos);
    insertMark(plan, marks, i, std::move(mark));
    return std::nullopt;
  });
}

Result<Plan> insertedMarkAt(const Plan& plan, const TrackRef& track, double seconds) {
  const Marks* marks = marksOf(plan, track);
  if (!marks) return notThere("", "\"" + track.id + "\"", "somebody of this plan");
  if (Trouble trouble = standsAt(plan, *marks, seconds)) return *trouble;
  const std::optional<std::size_t> i = underWay(plan, *marks, seconds);
  if (!i) return placeUnknown("a time at which nothing is under way");
  const Mark& from = (*marks)[*i];
  if (from.leg.shape == LegShape::smooth || from.leg.pace == Pace::eased) return placeUnknown("another kind of leg");
  const double gone = left(plan, from);
  const double share = (seconds - gone) / (reached(plan, (*marks)[*i + 1]) - gone);
  return insertedMark(plan, track, seconds,
                      pointOnLeg(from.leg, placeOf(plan, from), placeOf(plan, (*marks)[*i + 1]), share));
}

Result<Plan> insertedMarkNear(const Plan& plan, const MarkRef& mark, Point near) {
  const Marks* marks = marksOf(plan, {mark.owner, mark.id});
  if (!marks || mark.index + 1 >= marks->size()) return notThere("", "no leg", "a mark with one after it");
  const Mark& from = (*marks)[mark.index];
  if (from.leg.shape == LegShape::smooth) return placeUnknown("a smooth leg");
  const Point a = placeOf(plan, from), b = placeOf(plan, (*marks)[mark.index + 1]);
  const double share = shareOnLeg(from.leg, a, b, near);
  const double seconds = geometry::lerp(left(plan, from), reached(plan, (*marks)[mark.index + 1]), share);
  return insertedMark(plan, {mark.owner, mark.id}, seconds, pointOnLeg(from.leg, a, b, share));
}

Result<Plan> removedMark(const Plan& plan, const MarkRef& mark) {
  return changedMarkOf(plan, mark, [&](Marks& marks, std::size_t i) -> Trouble {
    if (mark.owner == Owner::camera && marks.size() == 1)
      return Problem{"camera-mark", "/camera/marks", "its last mark", "one mark at least", "Move the mark instead."};
    const bool last = i + 1 == marks.size();
    if (i > 0) marks[i - 1].leg = last ? Leg{} : joinedLeg(marks[i - 1].leg, marks[i].leg);
    marks.erase(marks.begin() + static_cast<std::ptrdiff_t>(i));
    if (i > 0 && !last) refitFrom(plan, marks, i - 1);
    return std::nullopt;
  });
}

}  // namespace wend::plan
