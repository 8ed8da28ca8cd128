/// A part of a track set by hand given back to the planner, and a planned track taken into the hand.
///
/// The focus' pulls and the iris' keys are each planned throughout while there are none in the plan, and set by hand
/// throughout as soon as there is one. Between the two: what is selected is planned anew and the rest stays. Of the
/// zoom, keys by shot size are planned and keys by focal length set by hand; planned anew, it may be off what its keys
/// ask for by `zoom.slackShare`.
///
/// Frame     seconds of the take; the working coordinates of pulls/tube.h.
#pragma once

#include "core/answers/take.h"
#include "core/base/result.h"
#include "core/plan/references.h"

namespace wend::answers {

/// The plan in which the fewest moves through the slack stand in the span, in the place of what was set by hand in it.
///
/// Hand moves that lie in the span, its ends included, go; every other is kept. The new ones start from the value held
/// before the span and end on the one held after it, which is where the next kept move starts from. At the start of the
/// take, and at its end, nothing is held and the value is free. Where all is replaced, the list becomes empty: the axis
/// is planned again and goes on following the take. Where nothing is set by hand all is planned already, and the plan
/// comes back as it was; `inHand` comes first. A zoom is never without keys: all of it replaced, it has new ones by
/// focal length; a span with no key by focal length in it leaves the plan as it was.
///
/// Ensures   (1) outside the span the axis does what it did, to the bit; kept moves are unchanged in the plan, save
///               that the first entry, which only says how the take starts, may be put at its start
///           (2) in the span: the least number of straight pulls from pin to pin, inside the slack wherever the limit
///               allows a track there, at no more than the limit; at the ends as near to the slack as the pins let it
///           (3) the other axes' entries are unchanged. Where the iris is replanned, a planned focus follows, for
///               another stop has another slack
/// Error     entries stand on whole milliseconds, 0.1 mm of distance, thousandths of a stop number and 0.01 mm of focal
///           length. Room for that is left inside
///           the slack, and under the limit, as far as there is any
/// Fails     axis-not-planned for another axis; span-empty; span-cuts-move naming the move and where to select from or
///           to; span-too-short when not even the full rate leads from one pin to the other in time; for the zoom
///           span-cuts-size where a shot size is kept beyond the span, lens-unknown, zoom-no-slack
base::Result<plan::Plan> replanned(const Take& take, plan::Axis axis, geometry::Span span);

/// The plan with the planned track of that axis written out as moves set by hand, to be changed one by one from here
/// on. What is set by hand already is left as it is.
///
/// Ensures   as replanned for the whole take, the ends free
/// Fails     axis-not-planned; for the zoom lens-unknown, zoom-no-slack
base::Result<plan::Plan> inHand(const Take& take, plan::Axis axis);

}  // namespace wend::answers
