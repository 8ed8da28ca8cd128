/// What an eye sees of a set during a short step of time, heights, leaves and mirrors included: more than is seen at
/// any instant of it, never less.
///
/// Two kinds of things hide. What hides a whole body at any distance behind it, from every height the eye has during
/// the step, is a wall of the floor plan, and the swept view (swept_view.h) deals with all of them together. What is
/// lower, hangs or is looked over hides the ground of its own shadow (low_shadow.h), each alone. Glass hides nothing.
///
/// The same is told of ground on which a body stays below or above the frame (frame_sides.h). Frame and things hide
/// together, too: the part of a thing whose foot is below the frame all through the step hides as if it reached down
/// without end, for every line of sight in frame that meets it passes over that foot; so does a part whose top is above
/// the frame. A lamp whose lower rim is out of the picture hides like a column.
///
/// A mirror on its way is told of from a pose in the middle of its moves (moving_mirror.h, with the proof), and so is one
/// to whose plane the eye comes as near as walls may be drawn from where they stand.
///
/// Given away: bodies out of frame or hidden only by two of these together, leaves and pieces that
/// move at some instant of the step, and what stands between the eye and a mirror unless it is a wall. Walls and
/// mirrors stand where the triangulation draws them, within 2 kJoin of the plan: what shows by less is not
/// told. Nor is told what a mirror shows only in its skin (mirror_leg.h): where a solid meets its face,
/// or of somebody or to a pupil within a millimetre of its plane.
///
/// Frame     plan metres, heights above the datum.
/// Tests     tests/property/set_view_test.cpp
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/sight/eye_step.h"
#include "core/sight/low_shadow.h"
#include "core/sight/scene.h"
#include "core/sight/swept_region.h"

namespace wend::sight {

struct MovedGlass;

inline constexpr int kNobody = -1;
inline constexpr double kNearly = 1.12;

/// A thing that hides by its shadow only: the sheets that stand in it.
struct LowThing {
  std::vector<Segment> sheets;
  std::vector<Point> ring;  ///< convex: the widest sheet across it is added for each step
  double discRadius = 0;    ///< of a disc, its centre the only point of `ring`
  Heights heights;
  int tag = kNobody;  ///< of somebody who hides
};

/// A wall that shows feet, or a crown, just behind it.
struct NearlyWall {
  std::vector<Segment> edges;
  Point middle;  ///< of a circle that holds them all
  double radius = 0;
};

/// Ground seen in one way during a step, and what is needed to tell whom it hides.
struct SetLayer {
  std::optional<Mirror> mirror;  ///< nothing: directly
  SweptRegion region;
  Point from, until;  ///< of the pupil, or its image
  double sway = 0;
  Span heights;
  StepSides sides;                             ///< of what a moving mirror shows nothing is told
  const std::vector<LowThing>* low = nullptr;  ///< owned by the SetView, like the next
  const std::vector<NearlyWall>* nearly = nullptr;
};

/// Somebody who may hide others: an upright cylinder that goes straight during the step.
struct Hiding {
  Segment way;
  double radius = 0.25;
  double sway = 0;  ///< metres off the straight way at most
  Heights heights;
  int tag = 0;
};

struct SetLook {
  std::vector<SetLayer> layers;  ///< directly first, then the mirrors in the order of the scene
  std::vector<LowThing> bodies;  ///< of those who hide
};

/// What is dealt with as a wall.
enum class Walls {
  whole,   ///< what hides everybody right behind it
  nearly,  ///< and what hides everybody from `kNearly` times its distance on: for who stands on ground below the
           ///< walls' feet, far from them
};

/// One for each thread. Keeps what it built for every state of the leaves.
class SetView {
 public:
  /// Sees `ground` and the eye's ways, which lie in it. `bodies` reach from the lowest floor to the highest crown of
  /// everybody who will be asked about.
  /// Requires  the scene to outlive it.
  SetView(const Scene& scene, Heights bodies, geometry::Extent ground, Walls walls = Walls::whole);
  ~SetView();

  /// Ensures   (1) a body within `bodies` whose upright line is seen at some instant of the step, as `bodySight` sees,
  ///           has that line's foot in a layer's region, and no shadow holds the foot, unless it stands right behind a
  ///           nearly wall; (2) the same question gets the
  ///           same answer, whatever was asked before.
  void look(Span time, const EyeStep& eye, std::span<const Hiding> hiding, SetLook& out);

 private:
  struct Setting;
  struct PastGlass;
  /// What stands besides what is fixed, and the mirrors that show.
  struct Standing {
    std::vector<Prism> prisms;
    std::vector<Mirror> mirrors;
  };
  const Standing& standingOver(Span time);
  Setting& settingLike(const Standing& standing, Span heights);
  std::vector<Span> stretchesOf(Span time) const;
  void addMirrors(Setting& setting, const EyeStep& eye, SetLook& out);
  void addMovingMirrors(Setting& setting, Span time, const EyeStep& eye, SetLook& out);
  void addGlass(Setting& setting, std::unique_ptr<PastGlass>& past, const Mirror& pose, const MovedGlass& glass,
                const EyeStep& eye, SetLook& out);

  const Scene& scene_;
  Heights bodies_;
  geometry::Extent ground_;
  Walls walls_;
  std::vector<double> changes_;
  std::vector<std::optional<Standing>> between_;  ///< before the first change, from each to the next, after the last
  Standing across_;                               ///< over the last span that met a change
  std::vector<std::unique_ptr<Setting>> settings_;
  std::vector<std::unique_ptr<std::vector<LowThing>>> lowByMoved_;  ///< of looks that were handed out
};

/// The areas of a layer in which nothing of a body of those heights is seen, hidden or out of frame: convex, of at most
/// six corners.
void appendShadows(const SetLook& look, const SetLayer& layer, Heights body, double reach,
                   std::vector<geometry::Convex>& shadows);

/// Whether a body that goes straight along `way` during the step may be seen in that layer. Nobody hides themselves:
/// `self` is left out.
bool mayShow(const SetLook& look, const SetLayer& layer, Segment way, double radius, Heights body, int self = kNobody);

}  // namespace wend::sight
