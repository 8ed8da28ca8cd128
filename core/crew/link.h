/// Radio links over the set: what a path loses between two aerials.
///
/// Frame     metres, heights above the datum; megahertz; decibels, a loss being positive.
/// Source    free space: Recommendation ITU-R P.525, "Calculation of free-space attenuation", L = 32.4 + 20 log f(MHz)
///           + 20 log d(km). What walls, leaves and bodies take is common practice, no source.
/// Stops holding indoors as a figure to lean on: reflections, pieces of metal, other people's radios and how a body
///           wears its aerial move the level by ten decibels and more. It ranks paths; only a walk with the real
///           aerials says whether a link holds.
#pragma once

#include <algorithm>
#include <functional>
#include <span>
#include <vector>

#include "core/crew/bodies.h"
#include "core/geometry/spans.h"
#include "core/geometry/tolerance.h"
#include "core/sight/scene.h"

namespace wend::crew {

using geometry::Point3;

/// Nearer than this nothing is gained any more: aerials of hand-held links are in each other's near field.
inline constexpr double kNearestMetres = 1;

/// dB between two aerials with nothing between them; nearer than kNearestMetres counts as kNearestMetres.
/// Requires  mhz > 0
/// Ensures   (1) 6.02 dB more at twice the distance or twice the frequency; (2) never falling with distance.
double freeSpaceLoss(double mhz, double metres);

/// How far a link of that budget reaches with nothing between, metres, by the same formula: under kNearestMetres where
/// it does not even reach that far.
double freeSpaceReach(double mhz, double budget);

/// A body in the way halves the range, which is 6 dB.
inline constexpr double kBodyLoss = 6;

/// What a path passes through, and what it loses by all of it.
struct PathLoss {
  double metres = 0;
  double freeSpace = 0;
  std::vector<int> walls;   ///< tags, one each time the path goes through
  std::vector<int> leaves;  ///< tags of the openings whose leaf stands in the path
  int bodies = 0;
  double total = 0;  ///< dB
};

/// dB by the tag of a wall or of an opening.
using LossOf = std::function<double(int tag)>;

/// Everything that a radio path along one ray of the plan may meet, for ends at any distance and height along it.
class LinkRay {
 public:
  enum class Kind { wall, leaf, body };
  struct Thing {
    Kind kind = Kind::wall;
    int tag = 0;
    geometry::Span along;    ///< metres over the floor
    geometry::Span heights;  ///< above the datum
  };
  /// Requires a direction of length 1.
  LinkRay(const sight::SceneAt& now, Point3 from, geometry::Vec direction, double upTo, std::span<const Body> bodies);

  /// visit(thing) for each passed on the way to an end `run` metres along the ray at that height; stretches of one wall
  /// that meet, as at a mitred corner, are one passage. Requires kTouch < run <= upTo.
  template <class Visit>
  void eachPassed(double run, double height, Visit visit) const {
    const Thing* before = nullptr;
    double reached = 0;
    for (const Thing& thing : things_) {
      if (!isPassed(thing, run, height)) continue;
      const geometry::Span inside = insideOf(thing, run, height);
      const bool goesOn =
          thing.kind == Kind::wall && before && before->tag == thing.tag && inside.from <= reached + geometry::kTouch;
      reached = goesOn ? std::max(reached, inside.until) : inside.until;
      before = thing.kind == Kind::wall ? &thing : nullptr;
      if (!goesOn) visit(thing);
    }
  }

 private:
  bool isPassed(const Thing& thing, double run, double height) const;
  geometry::Span insideOf(const Thing& thing, double run, double height) const;

  double height_;
  std::vector<Thing> things_;  ///< walls first, those of one tag together in order along the ray
};

/// The straight path from a to b at the scene's instant. Holes of walls are holes; a leaf counts where it hangs, also
/// on its way. Pieces count for nothing, since nobody knows what they are made of.
///
/// Requires  mhz > 0; `bodies` without the two who wear the aerials
/// Ensures   (1) the same both ways; (2) more in the way never loses less; (3) a wall crossed at one of its corners
///           counts once, one crossed twice counts twice; what is only touched counts for nothing.
PathLoss pathLoss(const sight::SceneAt& now, Point3 a, Point3 b, double mhz, std::span<const Body> bodies,
                  const LossOf& ofWall, const LossOf& ofLeaf);

}  // namespace wend::crew
