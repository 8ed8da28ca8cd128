/// What a mirror may show of the set in all the poses it takes during a short step, told from one of them.
///
/// Why it is sound. Let every place of the face stay within `face` metres of where it is in the pose and the face turn
/// by at most `degrees`; call F the line of the pose that much further forward, B that much further back. All glass of
/// all poses lies between the two. Who is shown at q by the glass at m stands on the straight line from the lens' image
/// over m, and no wall stands between m and q.
///   - The image keeps within `image` of the image in the pose. A mirror that turns about a place turns images by twice
///     that about it, one that goes some way takes them at most twice as far.
///   - While images stay at least h behind B, the line crosses B on its way, no further along from m than the share
///     2 face / (2 face + h) of how far the two are apart along the mirror. By so much the window in B is wider.
///   - Between B and m the line is behind F. So of the walls only what stands in front of F is in the way, and all of
///     that is met past m, where it truly stands.
/// So q is seen by an eye at the image through the window past the walls in front of F, which is what SweptView tells of.
/// Where images come nearer to B than `kBesideGlass`, everything is told that is in view from anywhere near the glass.
/// What the wall below the glass hides is asked at B when the lens may be higher than the glass' lower edge, and at F
/// otherwise: whoever is hidden whole there is hidden at m, for a line that goes down goes on down, and one that goes
/// up has not come higher before F. Above the glass it is the other way up (`edgeBelow`, `edgeAbove`).
///
/// Given away: walls between lens and mirror, but for ends of the face that are not in direct view; directions, when an
/// image comes near the glass.
///
/// Frame     plan metres. A mirror shows on the left of the way from `face.a` to `face.b`.
/// Tests     tests/core/sight/moving_mirror_test.cpp, tests/property/set_view_test.cpp
#pragma once

#include <optional>
#include <vector>

#include "core/sight/scene.h"
#include "core/sight/swept_view.h"

namespace wend::sight {

inline constexpr double kBesideGlass = 0.02;
/// Glass no further than this from seen ground counts as seen.
inline constexpr double kAtGlass = 0.01;

/// What is looked into, and by whom.
struct MovedGlass {
  Segment face;         ///< the pose
  Segment back;         ///< the window in B
  Segment front;        ///< as long, on F
  SweptStep image;      ///< of the lens, with all it may stray
  SweptStep seer;       ///< whose view is told of: the image, or beside the glass an eye anywhere in it
  bool beside = false;  ///< images come near the glass
};

/// Nothing when the mirror shows the lens its back all along, or none of its face is in `direct` view. `face` is the
/// pose; no place of it goes further than `drift.metres`.
std::optional<MovedGlass> lookInto(Segment face, const Drift& drift, const SweptStep& lens, const SweptRegion& direct);

/// A box that holds the ground, the glass and whoever looks.
geometry::Extent boxAround(const MovedGlass& glass, const geometry::Extent& ground);

/// The walls past the glass, as far as the box reaches: what stands in front of F, and, unless the lens is beside it, B
/// but for the window.
std::vector<Segment> wallsPast(const MovedGlass& glass, std::span<const Segment> walls, const geometry::Extent& box);

/// Where the wall below the glass, down without end, and the wall above it are to be asked whom they hide.
Segment edgeBelow(const MovedGlass& glass, double bottom, Span lensHeights);
Segment edgeAbove(const MovedGlass& glass, double top, Span lensHeights);

}  // namespace wend::sight
