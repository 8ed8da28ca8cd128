/// What would cool a hot focus at an instant: each change alone, with the band and the warmth it would give.
///
/// Units     metres from the sensor, millimetres, T-numbers.
/// Source    core/optics/warmth.h: common practice, no source.
/// Stops     the other changes while one is made, and the frame, which backing off or widening alters.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/snags/evidence.h"

namespace wend::snags {

struct HotCure {
  enum class Change { backOff, nearerTogether, widen, stopDown, onTape, standStill };
  Change change = Change::backOff;
  std::optional<double> value;      ///< to which distance, focal length or stop; nothing of the others
  std::optional<BandAt> band;       ///< the sharp range then, about what the focus is on; nothing where it stays
  std::optional<double> warmth;     ///< the band over the wobble then
  std::optional<double> moreLight;  ///< stops that it costs
  bool enough = false;              ///< the threshold "warmth" is met; where not, value is as far as it goes
};

/// Whether the band is narrower than the threshold "warmth" asks.
bool isHot(const plan::Plan& plan, const Instant& instant);

/// Empty where the focus is not hot, or nothing can be said. What would change nothing is left out: a prime cannot
/// widen, nor a lens past its end.
std::vector<HotCure> curesAt(const plan::Plan& plan, const Instant& instant);

/// "widen to 35 mm".
std::string changeText(const plan::Plan& plan, const HotCure& cure);
/// All of them, "; or " between: "widen to 35 mm (band 1.14 m to 1.45 m, 1.0 × wobble); or ...".
std::string curesText(const plan::Plan& plan, const std::vector<HotCure>& cures);

/// The first sample at or after the end of a move: the pull has arrived.
/// Requires  samples
const Instant& arrivalOf(const Evidence& evidence, const Move& move);

/// A hot focus at one instant: of a stretch the worst, of a pull its arrival.
struct HotSpot {
  Span span;             ///< the stretch or the pull
  std::size_t move = 0;  ///< the pull's place among the moves, from 1; 0: a stretch
  const Instant* at = nullptr;
  std::vector<HotCure> cures;
};

/// Every hot stretch, and every pull that arrives hot, by the instant looked at.
std::vector<HotSpot> hotSpots(const Evidence& evidence);

}  // namespace wend::snags
