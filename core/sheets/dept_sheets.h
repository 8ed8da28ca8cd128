/// What each department carries to the set: tables of words, made from the answers and nothing else.
///
/// Ensures   (1) every sheet holds title, revision, units and the caution
///           (2) what the plan does not tell is "unknown", never a number
///           (3) distances that are pulled or taped are in the plan's display units; places are plan metres
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/answers/answers.h"
#include "core/sheets/text_tables.h"

namespace wend::sheets {

struct SheetPart {
  std::string heading;
  TextTable table;
};

struct DeptSheet {
  std::string whom;   ///< "focus"
  std::string title;  ///< "Focus pull sheet"
  std::vector<SheetPart> parts;
};

/// The words deptSheet understands, in the order "all" prints them.
const std::vector<std::string>& departments();

/// Requires  one of departments()
DeptSheet deptSheet(const answers::Answers& answers, const std::string& whom);

DeptSheet focusSheet(const answers::Answers& answers);
DeptSheet operatorSheet(const answers::Answers& answers);
DeptSheet crewPaper(const answers::Answers& answers);
DeptSheet directorSheet(const answers::Answers& answers);
DeptSheet lightSheet(const answers::Answers& answers);
DeptSheet soundSheet(const answers::Answers& answers);
DeptSheet marksSheet(const answers::Answers& answers);

/// Tables for those who carry microphones and aerials: none of what the plan has none of.
std::vector<SheetPart> boomAndLinkParts(const answers::Answers& answers);
/// Whether each change of iris and zoom hides, and what could hide one.
std::vector<SheetPart> hidingParts(const answers::Answers& answers);
/// What would cool each hot stretch and each pull that arrives hot: none where nothing is hot.
std::vector<SheetPart> hotParts(const answers::Answers& answers);
/// Lens, exposure and the kind of distance that all figures are for.
std::vector<SheetPart> setupParts(const answers::Answers& answers);
/// Pulls and marks at which slant and flat (or floor) are far apart for what is sharp: none where they are one.
std::vector<SheetPart> distanceParts(const answers::Answers& answers);
/// Pulls whose puller does not see whom the lens is on: none where all do.
std::vector<SheetPart> blindParts(const answers::Answers& answers);
/// Moves in degrees of barrel with their cue words: none where no ring is marked.
std::vector<SheetPart> ringParts(const answers::Answers& answers);
/// Where lamps hang, whither they point and how much they give: none where there are none.
std::vector<SheetPart> lampParts(const answers::Answers& answers);
/// Steps in colour temperature along the shot and within a frame: none where no light's colour is told.
std::vector<SheetPart> colourParts(const answers::Answers& answers);
/// What zooms do to the balance of the rig: none where nobody measured it.
std::vector<SheetPart> balanceParts(const answers::Answers& answers);
std::vector<SheetPart> coverParts(const answers::Answers& answers);
/// Who is sharp when, followed or not, and which two or three one setting would hold.
std::vector<SheetPart> sharpParts(const answers::Answers& answers);
/// Who turns what, how much at once, and when things may change hands.
std::vector<SheetPart> handsParts(const answers::Answers& answers);
/// Bodies in the light, glass as a mirror, the sun: none of what does not come up.
std::vector<SheetPart> lightTrapParts(const answers::Answers& answers);
/// The spans in which the lens sees ground outside the set; none where it sees none.
std::vector<SheetPart> lockUpParts(const answers::Answers& answers);

std::string sheetText(const plan::Plan& plan, const DeptSheet& sheet);
std::string sheetCsv(const plan::Plan& plan, const DeptSheet& sheet);

/// A mark measured from the set: metres from the inside faces of the two nearest walls it can be taped from, and from
/// the corner in which those faces meet, to check by.
///
/// Ensures   (1) the foot of each measure lies on the wall, with no other wall and no piece of the floor between
///           (2) the two walls are at least 20 degrees from parallel
///           (3) check^2 = first^2 + second^2 where they stand square
struct TapeMeasure {
  struct Side {
    std::string wall;  ///< id
    double metres = 0;
  };
  std::optional<Side> first, second;
  std::optional<double> check;
};
TapeMeasure tapeMeasure(const plan::Plan& plan, geometry::Point mark);

/// Height of the picture's upper edge over a place on the floor, metres above the datum. Nothing without a lens, behind
/// it, or where the edge looks straight up.
std::optional<double> topOfFrameOver(const answers::Instant& instant, geometry::Point place);

}  // namespace wend::sheets
