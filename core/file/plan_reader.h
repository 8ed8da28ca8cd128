/// Reads a plan, strictly: what it cannot honour it names, all of it, and changes nothing on the way.
///
/// Ensures   (1) every number is finite and in its range, every reference exists, every id is unique, marks and keys
///           are in order, arcs are consistent, file references stay below the plan's folder
///           (2) keys this version does not know are kept, in order and with their numbers as written, and noted
///           (3) no input takes more than the limits of limits.h allow, and none ends the program
/// Fails     all problems, at most 100 and one that counts the rest; each with its place as a JSON pointer (a line
///           where the text is no JSON), what was found, what was expected, what to do. A newer version is refused
///           alone.
/// Cost      O(n log n) over the bytes
///
/// Plan format, version 1. One JSON object in UTF-8; its keys, their ranges and their words stand in describe_*.h,
/// ranges.h and words.h, their defaults in the structs of core/plan. Only format, version, clock and camera.marks
/// must be there. Metres, seconds, degrees, lux, candela; millimetres for gate, blur circle and focal lengths;
/// T-numbers, at the plan's exposure index and shutter. Points are [x, y]; heights are apart. Bearings go clockwise
/// from plan north and are not wrapped. Ids are letters and digits, each once in the document, marks of the camera
/// and of crew among them.
///
/// Times     seconds from the take's start, a beat's id, or {"beat": id, "plus": seconds}. "end" is the take's
///           length.
/// Keys      {at, over, pace}: starts at `at`, done at `at + over`; the first at 0, none before the one before is
///           done. Aims, focus, zoom, iris, camera.nd, openings[].open, areas[].states, fixtures[].level,
///           pieces[].moved.
/// Targets   {"performer"}, {"prop"}, {"point", "height"}; aims also {"bearing", "tilt"} and {"travel", "tilt"},
///           focus also {"split"} and {"distance"}.
/// Moves     pieces[].moved: `offset` [dx, dy] from where the piece is drawn, `turn` clockwise about a disc's centre,
///           else about the middle of the box around its points; then `name` and `by`, who does it on which cue.
/// Zoom      lens.transmission, lens.breathing and lens.balance are a number, or rows [focal length, number] that rise
///           in focal length: straight between two rows over the logarithm of the focal length, and held beyond the
///           ends.
/// Rings     lens.focusMarks, irisMarks and zoomMarks run one way, in value and in degrees; either way will do. A
///           focus mark may name a witness mark on the ring. lens.limits say how fast each ring is to be turned.
/// Density   camera.nd keys add stops to camera.ndStops.
/// Needs     crew[].needs: {"near": "camera", "within"}, {"sees": performer or "subject"}, {"stays": shelter},
///           {"holds": link}, {"reaches": pole}; `from` and `until` where not for the whole take. "subject" is
///           whoever the lens is focused on.
/// Cables    cables[] lie on the floor through `points`, `height` up from it. camera.cable {anchor, length} trails
///           along the way the camera has gone.
/// Poles     poles[]: `crew` holds it; `reach` on the level from `shoulder` height, the microphone `above` the frame
///           and `gap` [least, most] from the mouth. speech[].pole names the one that picks a line up.
/// Links     links[]: `kind` control, picture, sound or talk; `from` and `to` each crew, gear, a performer or
///           "camera"; `mhz`, the `budget` of decibels it bears and its `delay`. walls[].radioLoss and
///           openings[].radioLoss (shut) are decibels lost on the way through.
/// Light     gear[].glows, crew[].glows; areas[].states[].kelvin; areas[].byClock rows ["HH:MM",
///           stop] or ["HH:MM", stop, {"kelvin"}]; clock.mainsHz 50 or 60. site {latitude, longitude,
///           date "YYYY-MM-DD", utcOffset, north} and clock.timeOfDay say where the sun stands; `north` is the true
///           bearing of the plan's own. rooms[].openAbove lets it in from above. clock.cycleMinutes lie from one take's
///           start to the next.
/// Sizes     sizes: a shot size's name to the frame's height over standing height, before the table's own.
/// Bodies    sightRules.bodiesHide: nobody, performers or everybody hide what is behind them.
#pragma once

#include <string_view>

#include "core/base/result.h"
#include "core/file/format_stamp.h"
#include "core/plan/plan.h"

namespace wend::file {

inline constexpr int kPlanVersion = 1;
inline constexpr std::string_view kPlanFormat = "wend-plan";
inline constexpr FormatStamp kPlanStamp{kPlanFormat, kPlanVersion, "plan"};

struct PlanRead {
  plan::Plan plan;
  base::Problems notes;  ///< unknown keys, with "did you mean"
};

base::Result<PlanRead> readPlan(std::string_view json);

}  // namespace wend::file
