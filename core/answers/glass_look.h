/// Turned glass at one instant, ready to be asked about one body after another.
///
/// Frame     plan metres, heights above the datum.
#pragma once

#include <optional>
#include <vector>

#include "core/answers/panes.h"

namespace wend::answers {

class GlassLook {
 public:
  /// Requires  the take to outlive it.
  GlassLook(const Take& take, const std::vector<TurnedGlass>& glass, const sight::Eye& eye, double t);

  /// The place in the list of a part that shows the body, one of the first pane of which some does; nothing when none
  /// does, and when it is seen directly or in a mirror of the set.
  /// Ensures   the pane is that which `sight::bodySight` finds in a scene with all of that glass (addMirrors).
  /// Cost      the sight of a body for each part whose plan and heights reach it: most are ruled out by a few products,
  ///           and where a pane shows somebody well inside it, one is asked.
  std::optional<std::size_t> showing(const sight::Body& body) const;

 private:
  /// One part, alone in its scene with the mirrors of the set.
  struct Part {
    sight::SceneAt now;
    geometry::Segment face;
    geometry::Vec along, toA, toB;  ///< of length 1: from a to b, from the eye to either end
    double nearest = 0;             ///< metres from the eye
    sight::Slopes slopes;           ///< at which the eye looks into it
    std::size_t firstOfPane = 0;    ///< the place of its pane's first part
  };
  /// Metres by which the body is inside what the part shows; below 0 only where it cannot show it, whatever stands
  /// between.
  double depth(const Part& part, const sight::Body& body) const;

  /// That it is seen: in that part, or otherwise.
  struct Answer {
    std::optional<std::size_t> part;
  };
  std::optional<Answer> ask(std::size_t part, const sight::Body& body) const;
  /// Of the first so many parts, the first that answers.
  std::optional<Answer> firstOf(std::size_t parts, const sight::Body& body) const;

  sight::Eye eye_;
  geometry::Point foot_;
  int ofSet_ = 0;  ///< tags below are of the set's own mirrors
  std::vector<Part> parts_;
};

}  // namespace wend::answers
