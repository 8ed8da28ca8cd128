/// When a body is seen during a take, and when it is clear.
#pragma once

#include <optional>
#include <vector>

#include "core/base/cancel.h"
#include "core/sight/take_look.h"

namespace wend::sight {

/// The ends of seen spans are found to this.
inline constexpr double kEdgeSeconds = 1e-3;

/// A stretch in which the body is seen in one way, or may be.
struct SeenSpan {
  Span time;
  std::optional<int> mirror;  ///< nothing: directly
  bool found = true;          ///< false: no instant looked at shows it, and that none does could not be told
  bool sameWay(const SeenSpan& other) const { return mirror == other.mirror && found == other.found; }
};

/// A step of the take that was asked instant by instant, because it might show the body, and what it did show.
struct AskedStep {
  std::uint32_t step = 0;
  std::vector<SeenSpan> seen;  ///< in order, each alone: two may touch
};

/// What is to be kept of a body for an edited take.
struct KnownSight {
  TakeSpec spec;  ///< of the look that was asked
  std::vector<AskedStep> asked;
};

/// A stretch in which nothing bars the body's place.
struct ClearSpan {
  Span time;
  double marginDegrees = 0;  ///< the least degreesToFrame at a frame within it
};

struct SightWindows {
  std::vector<SeenSpan> seen;
  std::vector<ClearSpan> clear;
  std::vector<AskedStep> asked;  ///< in order
};

/// What is known of a body from an earlier take: of the steps that are alike in both, whether they were asked and what
/// they showed.
struct KnownSteps {
  const std::vector<char>& alike;  ///< a step each
  const std::vector<AskedStep>& asked;
};

struct Watch {
  double early = 0, late = 0;  ///< seconds by which a seen stretch bars more than itself
};

/// Requires  early and late not negative; the body's floor and crown within the heights the look was made for.
/// Ensures   (1) an instant called unseen is unseen, between two frames too
///           (2) every instant at which the body is seen lies in a seen span, and each span that is `found` holds one.
///               What could not be told apart in an eighth of a step goes to the found span beside it, unless it adds up
///               to more than two steps
///           (3) seen spans are in order and more than kEdgeSeconds apart, except that two which differ in how the body
///               is seen, or in `found`, may touch
///           (4) clear spans are what remains of the take without [from - early, until + late] of every seen span
///           (5) a body that does not exist is not seen
///           (6) a body named `self` does not hide itself
///           (7) steps known from an earlier take, alike in eye, body, set and whoever hides, are taken as they were
///           found there: (1) to (6) hold as they did
/// Error     edges are within kEdgeSeconds, and never inside what is seen; a gap between two seen frames counts as
///           seen
/// Fails     when cancelled: nothing
/// Cost      a look at what the steps see for every frame; a body question only where that may show it
std::optional<SightWindows> sightWindows(TakeLook& look, const BodyAt& body, const Watch& watch, int self = kNobody,
                                         const base::Cancel& cancel = {}, const KnownSteps* known = nullptr);

/// The take without the seen spans grown by early and late, in order.
std::vector<Span> clearOf(const std::vector<SeenSpan>& seen, Span take, const Watch& watch);

}  // namespace wend::sight
