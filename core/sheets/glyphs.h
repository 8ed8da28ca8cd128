/// The small signs that plan, frame and score share. Shape and letter carry the meaning; hue only repeats it.
#pragma once

#include <string>
#include <vector>

#include "core/geometry/drawing.h"
#include "core/plan/plan.h"
#include "core/snags/snag.h"

namespace wend::sheets {

using geometry::Drawing;
using geometry::Point;
using geometry::Tone;

/// Performer i's hue: A to D, then round again.
Tone performerTone(std::size_t i);
/// The letter in its shape: the plan's, or A, B, C by order.
std::string performerLetter(const plan::Plan& plan, std::size_t i);

/// Two letters a crew member is told by, never a digit, from the words of the role: the first letters of its first and
/// last word ("FA" first assistant camera, "BO" boom operator), or the first two of its only one ("OP" camera operator,
/// "SP" operator's spotter); then further letters of its words, of the id, and any. One entry a crew member, all
/// different as far as there are pairs.
std::vector<std::string> crewLabels(const plan::Plan& plan);

/// Square, hexagon, pill, shield by i, filled, with the letter in it. `radius` 11 on the plan.
void drawPerformer(Drawing& drawing, Point at, std::size_t i, const std::string& letter, double radius);
/// A rounded slab with two letters; dashed while walking.
void drawCrew(Drawing& drawing, Point at, const std::string& label, bool walking, Tone tone = Tone::crew);
/// A numbered flag whose pole stands at `foot`.
void drawBeatFlag(Drawing& drawing, Point foot, const std::string& number);
/// Lozenge: severity 1 three bars and solid, 2 two bars, 3 one bar, hollow.
void drawLozenge(Drawing& drawing, Point centre, double radius, snags::Severity severity);
/// Four corners around what is chosen.
void drawChosen(Drawing& drawing, Point centre, double half);
/// The dot of blur inside its limit ring; `blur` in limits.
void drawBlurDot(Drawing& drawing, Point centre, double blur);
/// A comb of thirds of a stop: rising over, falling under, level on it.
void drawComb(Drawing& drawing, Point foot, double stops);

}  // namespace wend::sheets
