/// What the image of a lens in a mirror looks through, and where that image is.
///
/// Frame     plan metres. The mirror reflects on the left of the way from `mirror.a` to `mirror.b`.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/sight/swept_view.h"

namespace wend::sight {

/// The part of a wall in front of a mirror's line. Nothing where it comes no further in front of it than a millimetre:
/// the mirror wins.
std::optional<geometry::Segment> inFront(geometry::Segment wall, geometry::Segment mirror);

/// Adds the line of a mirror as far as the box reaches and a metre at least, but for the mirror itself.
void addLineBut(geometry::Segment mirror, const geometry::Extent& box, std::vector<geometry::Segment>& walls);

/// The walls around a mirror as its images see them: those in front of it, their images behind, and the mirror's line
/// closed as far as the box reaches, but for the mirror itself.
///
/// Requires  the mirror longer than a millimetre.
/// Ensures   (1) a straight line from the image of p, behind, to q, in front, is open exactly when the way from p to q
///           by the mirror is, up to kJoin at the mirror's ends; (2) what is not `inFront` is left out.
std::vector<geometry::Segment> wallsByMirror(std::span<const geometry::Segment> walls, geometry::Segment mirror,
                                             const geometry::Extent& box);

/// The box with its image.
geometry::Extent boxByMirror(const geometry::Extent& box, geometry::Segment mirror);

/// The step of the image: as wide, as far from the true way, turning the other way round.
///
/// Ensures   the image of what the lens sees at any instant is what its image sees.
SweptStep imageOf(const SweptStep& step, geometry::Segment mirror);

}  // namespace wend::sight
