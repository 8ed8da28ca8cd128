/// Shot sizes: how much of a standing person the frame's height takes in, with the trade's names for it.
///
/// Source    the names follow the glossary of D. Bordwell and K. Thompson, "Film Art" (1990s edition), pp. 477-482; the
///           numbers on them are common practice and meant to be edited.
/// Stops     being what a viewer would say when the person sits, kneels or lies: a size is measured on standing height.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wend::optics {

struct ShotSize {
  std::string name;
  double q = 1;  ///< height of the frame at the person over standing height
};

/// From the widest to the closest.
using ShotSizes = std::vector<ShotSize>;

/// extreme wide 3, wide 1.5, full 1.05, medium wide 0.75, medium 0.45, medium close 0.31, close 0.17, extreme close
/// 0.10.
const ShotSizes& usualShotSizes();

/// Frame height over standing height (`stature`, metres) at `distance` metres from the pupil; the tangent of half the
/// vertical field of view has breathing in it. Requires distance > 0, stature > 0.
double frameOverStature(double verticalTangent, double distance, double stature);

/// Index of the size nearest to q in log q; halfway between two, the wider.
///
/// Requires  q > 0, sizes not empty, from the widest to the closest
/// Ensures   the q of a size gives that size
std::size_t nearestShotSize(double q, const ShotSizes& sizes = usualShotSizes());

/// The size of that name.
std::optional<ShotSize> shotSizeNamed(std::string_view name, const ShotSizes& sizes = usualShotSizes());

struct FocalLimits {
  double shortest = 0, longest = 0;  ///< mm
};

struct FocalForSize {
  double focal = 0;      ///< mm, within the lens
  bool clipped = false;  ///< the lens cannot go as far as the size wants
  double wanted = 0;     ///< mm, what the size wants; 0 where nobody can say
};

/// The focal length that frames a person `distance` metres from the pupil at `q`: frameHeight x distance / (q stature),
/// frameHeight in mm being the delivered frame's. Breathing is left out, so that zoom does not wait for focus.
///
/// Requires  every length and q positive; limits in order
/// Ensures   inside the limits, frameOverStature of the frame it gives is q
FocalForSize focalForSize(double frameHeight, double distance, double q, double stature, FocalLimits limits);

}  // namespace wend::optics
