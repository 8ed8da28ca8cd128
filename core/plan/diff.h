/// What two plans have and have not in common: how a view knows what to draw again, and how two revisions are compared.
#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace wend::plan {

struct TableDiff {
  std::vector<std::string> added, removed, changed;  ///< ids, in the order of the table they are in
  bool reordered = false;                            ///< what is in both stands in another order
  bool any() const { return reordered || !added.empty() || !removed.empty() || !changed.empty(); }
  bool operator==(const TableDiff&) const = default;
};

/// Ensures   (1) any() is false exactly when the plans are equal  (2) an entity that both share is never listed, at the
///           cost of one pointer comparison; others are compared by value
struct PlanDiff {
  TableDiff beats, rooms, walls, openings, pieces, areas, props, performers, fixtures, crew, shelters, gear, cables,
      poles, links;
  bool headings = false;  ///< title, revision, notes, display unit, keys of other versions
  bool clock = false, site = false;
  bool underlay = false;
  bool cameraMarks = false, aims = false;
  bool camera = false;   ///< gate, exposure, rig: what is neither marks nor keys
  bool density = false;  ///< keys of the variable density
  bool lens = false, wobble = false;
  bool focus = false, zoom = false, iris = false;
  bool speech = false, handovers = false, sightRules = false, thresholds = false, sizes = false;
  bool accepted = false, takes = false;

  bool set() const;
  bool people() const;
  bool keys() const;
  bool any() const;
  bool operator==(const PlanDiff&) const = default;
};

PlanDiff diffOf(const Plan& before, const Plan& after);

}  // namespace wend::plan
