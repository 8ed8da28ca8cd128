#include "core/plan/diff.h"

#include <algorithm>

namespace wend::plan {

namespace {

template <class T>
void compareAligned(const base::Table<T>& before, const base::Table<T>& after, TableDiff& diff) {
  std::size_t last = 0;
  for (std::size_t i = 0; i < after.size(); ++i) {
    const std::string& id = after[i].id.text();
    const std::size_t k = i < before.size() && before[i].id.text() == id ? i : before.indexOf(id);
    if (k == before.size()) {
      diff.added.push_back(id);
      continue;
    }
    if (k < last) diff.reordered = true;
    last = std::max(last, k);
    if (before.ref(k) != after.ref(i) && !(before[k] == after[i])) diff.changed.push_back(id);
  }
}

template <class T>
TableDiff tableDiff(const base::Table<T>& before, const base::Table<T>& after) {
  TableDiff diff;
  compareAligned(before, after, diff);
  for (std::size_t k = 0; k < before.size(); ++k) {
    const std::string& id = before[k].id.text();
    const bool aligned = k < after.size() && after[k].id.text() == id;
    if (!aligned && !after.find(id)) diff.removed.push_back(id);
  }
  return diff;
}

/// The camera without what has flags of its own.
bool sameBody(const Camera& a, const Camera& b) {
  return a.gate == b.gate && a.squeeze == b.squeeze && a.aspect == b.aspect && a.blurCircle == b.blurCircle &&
         a.exposureIndex == b.exposureIndex && a.shutterDeg == b.shutterDeg && a.ndStops == b.ndStops &&
         a.meter == b.meter && a.rig == b.rig && a.bodies == b.bodies && a.cable == b.cable && a.extra == b.extra;
}

bool sameHeadings(const Plan& a, const Plan& b) {
  return a.title == b.title && a.revision == b.revision && a.notes == b.notes && a.display == b.display &&
         a.extra == b.extra && a.set.extra == b.set.extra;
}

void compareTables(const Plan& before, const Plan& after, PlanDiff& diff) {
  diff.beats = tableDiff(before.beats, after.beats);
  diff.rooms = tableDiff(before.set.rooms, after.set.rooms);
  diff.walls = tableDiff(before.set.walls, after.set.walls);
  diff.openings = tableDiff(before.set.openings, after.set.openings);
  diff.pieces = tableDiff(before.set.pieces, after.set.pieces);
  diff.areas = tableDiff(before.set.areas, after.set.areas);
  diff.props = tableDiff(before.props, after.props);
  diff.performers = tableDiff(before.performers, after.performers);
  diff.fixtures = tableDiff(before.fixtures, after.fixtures);
  diff.crew = tableDiff(before.crew, after.crew);
  diff.shelters = tableDiff(before.shelters, after.shelters);
  diff.gear = tableDiff(before.gear, after.gear);
  diff.cables = tableDiff(before.cables, after.cables);
  diff.poles = tableDiff(before.poles, after.poles);
  diff.links = tableDiff(before.links, after.links);
}

}  // namespace

bool PlanDiff::set() const {
  return underlay || rooms.any() || walls.any() || openings.any() || pieces.any() || areas.any() || cables.any();
}

bool PlanDiff::people() const {
  return props.any() || performers.any() || crew.any() || shelters.any() || gear.any() || poles.any() || links.any();
}

bool PlanDiff::keys() const {
  return aims || focus || zoom || iris || density;
}

bool PlanDiff::any() const {
  return set() || people() || keys() || beats.any() || fixtures.any() || headings || clock || site || cameraMarks ||
         camera || lens || wobble || speech || handovers || sightRules || thresholds || sizes || accepted || takes;
}

PlanDiff diffOf(const Plan& before, const Plan& after) {
  PlanDiff diff;
  compareTables(before, after, diff);
  diff.headings = !sameHeadings(before, after);
  diff.clock = before.clock != after.clock;
  diff.site = before.site != after.site;
  diff.underlay = before.set.underlay != after.set.underlay;
  diff.cameraMarks = before.camera.marks != after.camera.marks;
  diff.aims = before.camera.aims != after.camera.aims;
  diff.camera = !sameBody(before.camera, after.camera);
  diff.density = before.camera.nd != after.camera.nd;
  diff.lens = before.lens != after.lens;
  diff.wobble = before.wobble != after.wobble;
  diff.focus = before.focus != after.focus;
  diff.zoom = before.zoom != after.zoom;
  diff.iris = before.iris != after.iris;
  diff.speech = before.speech != after.speech;
  diff.handovers = before.handovers != after.handovers;
  diff.sightRules = before.sightRules != after.sightRules;
  diff.thresholds = before.thresholds != after.thresholds;
  diff.sizes = before.sizes != after.sizes;
  diff.accepted = before.accepted != after.accepted;
  diff.takes = before.takes != after.takes;
  return diff;
}

}  // namespace wend::plan
