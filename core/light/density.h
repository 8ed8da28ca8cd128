/// A density that changes during the take, as an axis of its own beside iris and focus.
///
/// Frame     stops of density in front of the lens, 0 or more.
/// Stops holding for a pair of crossed polarisers as such a filter: it treats reflections and skies by their
///           polarisation, which is no density.
#pragma once

#include <vector>

#include "core/geometry/keyed.h"

namespace wend::light {

struct DensityKey {
  geometry::KeySpan time;
  double stops = 0;
};

/// Stops of density at t: linear in stops while a key is under way. No keys: `otherwise`, the fixed filter.
/// Requires  keys as geometry::blendAt.
double densityAt(const std::vector<DensityKey>& keys, double t, double otherwise = 0);

/// Stops a second at t while a key is under way, 0 else; an eased key is fastest, at 1.5 times its mean, in its middle.
double densityRate(const std::vector<DensityKey>& keys, double t);

/// A key without a change time that asks for another density than the one before.
struct DensityCut {
  double at = 0, before = 0, after = 0;
};

/// Those inside a take of that length, in order.
std::vector<DensityCut> densityCuts(const std::vector<DensityKey>& keys, double length);

}  // namespace wend::light
