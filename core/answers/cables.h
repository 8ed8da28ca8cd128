/// Cables at one instant after another: worked out once for the take, then asked.
///
/// Units     metres, seconds.
#pragma once

#include <optional>
#include <vector>

#include "core/answers/take.h"
#include "core/plan/set.h"

namespace wend::answers {

/// An opening that shuts on a cable when it is shut while the cable lies there.
struct Pinch {
  std::string cable;
  const plan::Opening* opening;
  geometry::Point where;
  geometry::Span lies;
};

/// Requires  the take to outlive what is found.
std::vector<Pinch> pinchesOf(const Take& take);
bool isShutIn(const Take& take, const Pinch& pinch, double t);

/// How long the camera's cable has to be, frame by frame: from the anchor to its first mark, then along its way.
/// Cost      a look at every frame of the take, once.
class CableLength {
 public:
  explicit CableLength(const Take& take);
  /// By then; nothing where the plan has no such cable.
  std::optional<double> neededAt(double t) const;
  /// When it is over `length` first, and the most it comes to.
  struct Over {
    double from = 0, most = 0;
  };
  std::optional<Over> over(double length) const;

 private:
  std::vector<double> times_, gone_;
};

}  // namespace wend::answers
