#include "core/plan/edits_people.h"

#include "core/plan/arc_leg.h"
#include "core/plan/edits_parts.h"

namespace wend::plan {

namespace {

using base::Result;

/// Calls change(PropEntry&).
template <class Change>
Result<Plan> changedEntry(const Plan& plan, const std::string& prop, std::size_t entry, Change change) {
  return changed<Prop>(plan, prop, [&](Prop& p) -> Trouble {
    if (entry >= p.track.size())
      return notThere("", "entry " + std::to_string(entry + 1), std::to_string(p.track.size()) + " entries");
    change(p.track[entry]);
    return std::nullopt;
  });
}

/// Re-fits the arcs that start or end in the shelter.
void refitAround(const Plan& plan, std::vector<Mark>& marks, const std::string& shelter) {
  for (std::size_t i = 0; i + 1 < marks.size(); ++i)
    if (marks[i].shelter == shelter || marks[i + 1].shelter == shelter)
      refit(marks[i].leg, placeOf(plan, marks[i]), placeOf(plan, marks[i + 1]));
}

}  // namespace

Result<Plan> performerNamed(const Plan& plan, const std::string& performer, const std::string& name) {
  return changed<Performer>(plan, performer, [&](Performer& p) {
    p.name = name;
    return textTrouble(name, "/performers/name");
  });
}

Result<Plan> performerLettered(const Plan& plan, const std::string& performer, const std::string& letter) {
  return changed<Performer>(plan, performer, [&](Performer& p) {
    p.letter = letter;
    return textTrouble(letter, "/performers/letter");
  });
}

Result<Plan> statureSet(const Plan& plan, const std::string& performer, double stature) {
  return changed<Performer>(plan, performer, [&](Performer& p) { p.stature = stature; });
}

Result<Plan> performerRadiusSet(const Plan& plan, const std::string& performer, double radius) {
  return changed<Performer>(plan, performer, [&](Performer& p) { p.radius = radius; });
}

Result<Plan> crewRoleSet(const Plan& plan, const std::string& crew, const std::string& role) {
  return changed<Crew>(plan, crew, [&](Crew& c) {
    c.role = role;
    return textTrouble(role, "/crew/role");
  });
}

Result<Plan> crewRadiusSet(const Plan& plan, const std::string& crew, double radius) {
  return changed<Crew>(plan, crew, [&](Crew& c) { c.radius = radius; });
}

Result<Plan> crewHeightsSet(const Plan& plan, const std::string& crew, double height, double crouch) {
  return changed<Crew>(plan, crew, [&](Crew& c) -> Trouble {
    if (crouch > height)
      return base::Problem{"crouch-high", "/crew/crouch", base::shortest(crouch) + " m", "at most the standing height",
                           "Lower the crouching height."};
    c.height = height;
    c.crouch = crouch;
    return std::nullopt;
  });
}

Result<Plan> crewSpeedSet(const Plan& plan, const std::string& crew, double speed) {
  return changed<Crew>(plan, crew, [&](Crew& c) { c.speed = speed; });
}

Result<Plan> crewNeedsSet(const Plan& plan, const std::string& crew, std::vector<Need> needs) {
  return changed<Crew>(plan, crew, [&](Crew& c) { c.needs = std::move(needs); });
}

Result<Plan> movedProp(const Plan& plan, const std::string& prop, std::size_t entry, Point pos) {
  return changedEntry(plan, prop, entry, [&](PropEntry& e) {
    e.pos = pos;
    e.by.clear();
  });
}

Result<Plan> propHeightSet(const Plan& plan, const std::string& prop, std::size_t entry, double height) {
  return changedEntry(plan, prop, entry, [&](PropEntry& e) { e.height = height; });
}

Result<Plan> propCarried(const Plan& plan, const std::string& prop, std::size_t entry, const std::string& performer) {
  return changedEntry(plan, prop, entry, [&](PropEntry& e) {
    e.pos = {};
    e.by = performer;
  });
}

Result<Plan> movedShelter(const Plan& plan, const std::string& shelter, Point pos) {
  const std::size_t i = plan.shelters.indexOf(shelter);
  if (i == plan.shelters.size()) return notThere("/shelters", "\"" + shelter + "\"", "a shelter of this plan");
  Shelter moved = plan.shelters[i];
  moved.pos = pos;
  if (Trouble trouble = settle(plan.shelters[i], moved, "/shelters/" + std::to_string(i))) return *trouble;
  if (moved == plan.shelters[i]) return plan;
  Plan next = plan;
  next.shelters.replace(i, moved);
  for (std::size_t k = 0; k < next.crew.size(); ++k) {
    Crew crew = next.crew[k];
    refitAround(next, crew.marks, shelter);
    if (!(crew == next.crew[k])) next.crew.replace(k, std::move(crew));
  }
  return kept(plan, std::move(next));
}

Result<Plan> shelterSized(const Plan& plan, const std::string& shelter, double radius, int holds) {
  return changed<Shelter>(plan, shelter, [&](Shelter& s) -> Trouble {
    if (holds < 1 || holds > 1000)
      return base::Problem{"out-of-range", "/shelters/holds", std::to_string(holds), "from 1 to 1000 people",
                           "Type a number in that range."};
    s.radius = radius;
    s.holds = holds;
    return std::nullopt;
  });
}

Result<Plan> movedGear(const Plan& plan, const std::string& gear, Point pos) {
  return changed<Gear>(plan, gear, [&](Gear& g) { g.pos = pos; });
}

Result<Plan> gearSized(const Plan& plan, const std::string& gear, double radius, double height) {
  return changed<Gear>(plan, gear, [&](Gear& g) {
    g.radius = radius;
    g.height = height;
  });
}

Result<Plan> movedFixture(const Plan& plan, const std::string& fixture, Point pos) {
  return changed<Fixture>(plan, fixture, [&](Fixture& f) { f.pos = pos; });
}

Result<Plan> fixtureHeightSet(const Plan& plan, const std::string& fixture, double height) {
  return changed<Fixture>(plan, fixture, [&](Fixture& f) { f.height = height; });
}

Result<Plan> fixtureAimed(const Plan& plan, const std::string& fixture, double bearing, double tilt) {
  return changed<Fixture>(plan, fixture, [&](Fixture& f) {
    f.bearing = bearing;
    f.tilt = tilt;
  });
}

Result<Plan> fixtureOutputSet(const Plan& plan, const std::string& fixture, BeamOutput output) {
  return changed<Fixture>(plan, fixture, [&](Fixture& f) -> Trouble {
    if (!(output.field > output.beam))
      return base::Problem{"field-narrow", "/fixtures/output/field", "a field no wider than the beam",
                           "a field wider than the beam", "Widen the field, or narrow the beam."};
    f.output = output;
    return std::nullopt;
  });
}

}  // namespace wend::plan
