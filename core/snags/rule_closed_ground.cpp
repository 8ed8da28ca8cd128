// Somebody whose way is drawn stands or walks in a hazard, or on ground kept out of: crew, those whom the camera takes
// along, and performers, at the frames. Nobody is planned to (answers/closed_ground).
//
// Source    common practice, no source. What is a hazard, and who may be in it and how, local rules and whoever is in
//           charge of the place say; Wend knows what the plan calls one.
#include <functional>

#include "core/geometry/polygon.h"
#include "core/plan/area_use.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

namespace {

struct OnFloor {
  Point pos;
  double radius = 0;
};

struct Somebody {
  std::string id;
  std::function<std::optional<OnFloor>(const Instant&)> at;  ///< nothing while they are not there
};

/// Who only reaches the area's edge is not in it.
bool overlaps(const plan::Area& area, const OnFloor& body) {
  if (const auto* disc = std::get_if<plan::Disc>(&area.shape))
    return geometry::distance(body.pos, disc->centre) < disc->radius + body.radius;
  const auto* outline = std::get_if<plan::Outline>(&area.shape);
  return outline && (geometry::contains(outline->points, body.pos) ||
                     geometry::distanceToEdge(outline->points, body.pos) < body.radius);
}

std::vector<Somebody> everybody(const plan::Plan& plan) {
  std::vector<Somebody> people;
  for (std::size_t k = 0; k < plan.performers.size(); ++k)
    people.push_back({plan.performers[k].id.text(), [k, radius = plan.performers[k].radius](const Instant& instant) {
                        const PerformerAt& at = instant.performers[k];
                        return at.present ? std::optional(OnFloor{at.pos, radius}) : std::nullopt;
                      }});
  for (std::size_t k = 0; k < plan.crew.size(); ++k)
    people.push_back({plan.crew[k].id.text(), [k](const Instant& instant) {
                        const CrewAt& at = instant.crew[k];
                        return at.present ? std::optional(OnFloor{at.pos, at.radius}) : std::nullopt;
                      }});
  return people;
}

/// Whoever is in the area, told as `kind` of ground with what to do about it.
void addInside(const Evidence& evidence, const plan::Area& area, const Threshold& limit, const std::string& kind,
               const std::string& mend, Findings& findings) {
  const plan::Plan& plan = *evidence.plan;
  for (const Somebody& who : everybody(plan)) {
    const auto inside = stretches(evidence, limit.hold, [&](const Instant& instant, std::size_t) {
      const auto body = who.at(instant);
      return body && overlaps(area, *body) ? std::optional<double>(1) : std::nullopt;
    });
    for (const auto& stretch : inside) {
      const Span span = spanOf(evidence, stretch);
      findings.push_back({who.id, area.id.text(), span.from, span.until, who.at(evidence.samples[stretch.first])->pos,
                          limit.severity,
                          nameOf(plan, who.id) + " is in " + nameOf(plan, area.id.text()) + ", " + kind + ", for " +
                              seconds(span.length()),
                          mend});
    }
  }
}

}  // namespace

Findings hazard(const Evidence& evidence) {
  Findings findings;
  for (const auto& area : evidence.plan->set.areas)
    if (plan::usedAs(area, plan::AreaUse::hazard))
      addInside(evidence, area, threshold(*evidence.plan, "hazard"), "a hazard",
                "caution: draw the way round it, or have it made harmless and agreed to beforehand by whoever is in "
                "charge of it; local rules come first",
                findings);
  return findings;
}

Findings keepOut(const Evidence& evidence) {
  Findings findings;
  for (const auto& area : evidence.plan->set.areas)
    if (plan::usedAs(area, plan::AreaUse::keepOut) && !plan::usedAs(area, plan::AreaUse::hazard))
      addInside(evidence, area, threshold(*evidence.plan, "keep-out"), "to be kept out of",
                "draw the way round it, or ask whoever wants it kept clear", findings);
  return findings;
}

}  // namespace wend::snags
