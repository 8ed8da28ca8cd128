/// What hides a change of iris or zoom: spans of cover, how fast a change each lets pass, and what a whole move made of
/// its own rate leaves seen.
///
/// Units     seconds; rates of the iris in stops a second, of the zoom in percent of the focal length a second, without
///           sign.
/// Source    common practice, no source. Iris: a quarter of a stop a second hides in any moving frame, a half under a
///           pan or travel, one under a doorway, a crossing body or a light cue, more only under full cover. Zoom: 3 to
///           4 percent a second hide in a nearly still frame, up to 10 under travel or a pan of 20 degrees a second, up
///           to 25 under one of 45, anything under a swish or a body that wipes the frame.
/// Stops     knowing what the eye looks at; a doorway, a cue and a crossing body are taken to hide a zoom as travel
///           does, of which practice says nothing.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "core/geometry/spans.h"

namespace wend::pulls {

/// From least to most.
enum class CoverKind { movingFrame, travel, pan, fastPan, leaf, doorway, crossing, lightCue, swish, wipe };

/// The axis that is to be hidden.
enum class Hidden { iris, zoom };

/// Least strengths at which something counts as cover. Common practice, no source; those of travel, of a moving frame,
/// of shares of the frame and of a cue are this program's own choice.
inline constexpr double kMovingFrameSpeed = 0.05, kMovingFrameTurn = 1;                 ///< m/s, degrees/s
inline constexpr double kTravel = 0.3;                                                  ///< m/s
inline constexpr double kPan = 20, kFastPan = 45, kSwish = 150;                         ///< degrees/s
inline constexpr double kDoorwayShare = 0.25, kCrossingShare = 0.25, kWipeShare = 0.9;  ///< of the frame
inline constexpr double kCrossingSpeed = 0.25;                                          ///< frame widths a second
inline constexpr double kLightCue = 0.5;                                                ///< stops on what is seen
inline constexpr double kCueLead = 0.5, kCueLinger = 1.5;  ///< seconds around a cue that it hides

struct CoverSpan {
  CoverKind kind = CoverKind::movingFrame;
  geometry::Span span;
  /// The most of the span: m/s for travel, degrees/s for pans, a share of the frame for doorways and bodies, stops for
  /// cues; 0 where there is no figure.
  double strength = 0;
  std::string by;  ///< what makes it, as people call it: an opening, a performer, a cue; empty for the camera's own
};

/// The fastest change that hides under it; infinite under full cover.
double rateUnder(CoverKind kind, Hidden axis);
/// The fastest change that hides without any: none for the iris.
double rateUncovered(Hidden axis);

/// The spans of `covers` at t that let the fastest change pass; rateUncovered where there is none.
double rateAllowed(const std::vector<CoverSpan>& covers, Hidden axis, double t);

/// Spans in which a value looked at in order of time is at least `least`, with its peak; those shorter than
/// `shortest` are left out.
/// Requires  as many values as times, times in order
std::vector<CoverSpan> coverWhere(CoverKind kind, const std::string& by, const std::vector<double>& times,
                                  const std::vector<double>& values, double least, double shortest = 0.25);

/// Those that share more than an instant with `span`: what lets the fastest change pass first, then what shares most
/// time with it, then what begins first.
std::vector<CoverSpan> rankedFor(const std::vector<CoverSpan>& covers, Hidden axis, geometry::Span span);

/// How fast a move is at an instant.
struct RateAt {
  double t = 0, rate = 0;
};

/// What is left seen of a move.
struct Exposed {
  double worst = 0;  ///< the largest rate over what is allowed then; at most 1: it hides. Infinite where nothing is
  double at = 0;     ///< when; of equals where the rate is largest
  double rate = 0, allowed = 0;
  double seconds = 0;  ///< for how long the rate is over what is allowed
};

/// How a move is looked at.
struct Looked {
  double step = 1.0 / 24;  ///< seconds that each instant stands for
  double unnoticed = 0;    ///< a rate that nobody notices in any frame
};

/// Requires  instants in order; those at the very ends of a move belong half to what is beside it: leave them out
/// Ensures   worst <= 1 exactly when no instant's rate is above what is allowed then
Exposed exposedIn(const std::vector<CoverSpan>& covers, Hidden axis, const std::vector<RateAt>& rates,
                  const Looked& looked);

}  // namespace wend::pulls
