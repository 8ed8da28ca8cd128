// Sheets about the floor: operator and marks.
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/crew/walking.h"
#include "core/geometry/segment.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;
using base::fixed;
using geometry::Point;
using geometry::Segment;
using geometry::Vec;

namespace {

/// Share of the way gone in a span on which the camera is carried backwards.
double backwardsShare(const Evidence& evidence, geometry::Span span) {
  double gone = 0, backwards = 0;
  for (const auto& instant : evidence.samples) {
    if (instant.time < span.from || instant.time > span.until || !instant.camera.moving) continue;
    const CameraAt& camera = instant.camera;
    gone += camera.speed;
    if (crew::carryOf(camera.speed, camera.travel, camera.sensor.bearing) == crew::Carry::rear)
      backwards += camera.speed;
  }
  return gone > 0 ? backwards / gone : 0;
}

/// Whether it is the rig, or somebody who walks with it.
bool carried(const plan::Plan& plan, const std::string& body) {
  return body == "camera" || std::any_of(plan.camera.bodies.begin(), plan.camera.bodies.end(),
                                         [&](const plan::CarriedBody& other) { return other.crew == body; });
}

/// What is nearest on one side to the rig or to whoever walks with it, who goes by the letters of the plan.
Cell nearestGap(const plan::Plan& plan, const Evidence& evidence, geometry::Span span, bool left) {
  const ClearanceAt* nearest = nullptr;
  for (const auto& gap : evidence.clearances)
    if (carried(plan, gap.body) && gap.onLeft == left && span.contains(gap.time))
      if (!nearest || gap.metres < nearest->metres) nearest = &gap;
  const char* key = left ? "leftMetres" : "rightMetres";
  if (!nearest) return figure("over " + lengthText(plan, 0.6), key, std::nullopt);
  const std::size_t crew = plan.crew.indexOf(nearest->body);
  const std::string whose = crew < plan.crew.size() ? crewLabels(plan)[crew] + " " : "";
  const std::string room = (nearest->metres < 0 ? "-" : "") + lengthText(plan, std::abs(nearest->metres));
  return figure(whose + room + " " + nameOf(plan, nearest->obstacle), key, nearest->metres);
}

TextTable legsTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">#", "seconds", ">s", ">length", ">m/s", ">peak", ">back", "nearest left", "nearest right"});
  std::size_t number = 0;
  for (const auto& leg : answers.take->people().camera().legs()) {
    ++number;
    const auto& evidence = *answers.evidence;
    const double backwards = leg.hold ? 0 : backwardsShare(evidence, leg.time);
    const auto moving = [&](const std::string& words, const char* key, double value) {
      return figure(leg.hold ? "" : words, key, leg.hold ? 0 : value);
    };
    table.add({count("leg", number), spanCell(leg.time), secondsCell("over", leg.time.until - leg.time.from),
               figure(leg.hold ? "holds" : lengthText(plan, leg.length), "lengthMetres", leg.hold ? 0 : leg.length),
               moving(fixed(leg.meanSpeed, 2), "meanMetresPerSecond", leg.meanSpeed),
               moving(fixed(leg.peakSpeed, 2), "peakMetresPerSecond", leg.peakSpeed),
               moving(fixed(100 * backwards, 0) + " %", "backwardsShare", backwards),
               nearestGap(plan, evidence, leg.time, true), nearestGap(plan, evidence, leg.time, false)});
  }
  return table;
}

TextTable crossingsTable(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">at", "step", ">high", "walking", ">pan", "place"});
  for (const auto& crossing : answers.evidence->crossings)
    if (crossing.who == "camera")
      table.add({secondsCell("at", crossing.time), nameOf(plan, crossing.place),
                 metresCell(plan, "high", crossing.height), crossing.backwards ? "backwards" : "forwards",
                 figure(fixed(crossing.panRate, 0) + "\u00b0/s", "panDegreesPerSecond", crossing.panRate),
                 placeCell(crossing.pos)});
  return table;
}

/// A tape is drawn along the floor: what starts higher lets it through, metres.
constexpr double kTapeHeight = 0.1;

struct Face {
  std::string wall;
  Segment line;          ///< the wall's middle
  double thickness = 0;  ///< of the wall
  Point foot;            ///< nearest point of the middle to the mark
  double metres = 0;     ///< from the near face
};

std::optional<Face> faceFrom(const plan::Wall& wall, Segment line, Point mark) {
  const Vec d = line.b - line.a;
  const double length = std::hypot(d.x, d.y);
  if (length <= 0) return std::nullopt;
  const double along = dot(mark - line.a, d) / length;
  const double off = std::abs(cross(d, mark - line.a)) / length;
  if (along < 0 || along > length || off <= wall.thickness / 2) return std::nullopt;
  return Face{wall.id.text(), line, wall.thickness, line.a + d * (along / length), off - wall.thickness / 2};
}

bool pieceBetween(const plan::Plan& plan, Segment measure) {
  for (const auto& piece : plan.set.pieces) {
    if (piece.bottom > kTapeHeight || std::holds_alternative<plan::Line>(piece.shape)) continue;
    const auto ring = answers::outlineOf(piece.shape);
    for (std::size_t i = 0; i < ring.size(); ++i)
      if (geometry::whereMeet(measure, {ring[i], ring[(i + 1) % ring.size()]})) return true;
  }
  return false;
}

bool barred(const plan::Plan& plan, const Face& face, Point mark) {
  const Vec back = mark - face.foot;
  const double shy = (face.thickness / 2 + 0.001) / std::hypot(back.x, back.y);
  if (pieceBetween(plan, {mark, face.foot + back * shy})) return true;
  for (const auto& wall : plan.set.walls)
    for (std::size_t i = 0; i + 1 < wall.points.size(); ++i) {
      const Segment line{wall.points[i], wall.points[i + 1]};
      if (line == face.line) continue;
      const auto share = geometry::whereMeet({mark, face.foot}, line);
      if (share && *share < 0.999) return true;
    }
  return false;
}

std::vector<Face> facesNear(const plan::Plan& plan, Point mark) {
  std::vector<Face> faces;
  for (const auto& wall : plan.set.walls)
    for (std::size_t i = 0; i + 1 < wall.points.size(); ++i) {
      const auto face = faceFrom(wall, {wall.points[i], wall.points[i + 1]}, mark);
      if (face && !barred(plan, *face, mark)) faces.push_back(*face);
    }
  std::stable_sort(faces.begin(), faces.end(), [](const Face& a, const Face& b) { return a.metres < b.metres; });
  return faces;
}

/// The face on the mark's side, as a line.
Segment faceLine(const Face& face, Point mark) {
  const Vec towards = mark - face.foot;
  const Vec shift = towards * (face.thickness / 2 / std::hypot(towards.x, towards.y));
  return {face.line.a + shift, face.line.b + shift};
}

double sineBetween(const Face& a, const Face& b) {
  const Vec d = a.line.b - a.line.a, e = b.line.b - b.line.a;
  return std::abs(cross(d, e)) / (std::hypot(d.x, d.y) * std::hypot(e.x, e.y));
}

double toCorner(const Face& a, const Face& b, Point mark) {
  const Segment first = faceLine(a, mark), second = faceLine(b, mark);
  const Vec d = first.b - first.a, e = second.b - second.a;
  const Point corner = first.a + d * (cross(second.a - first.a, e) / cross(d, e));
  return geometry::distance(mark, corner);
}

std::optional<double> metresOf(const std::optional<TapeMeasure::Side>& side) {
  return side ? std::optional(side->metres) : std::nullopt;
}
std::string wallOf(const plan::Plan& plan, const std::optional<TapeMeasure::Side>& side) {
  return side ? nameOf(plan, side->wall) : "";
}

/// Marks of one person or of the camera; the last column is the way from the mark before.
void addMarks(TextTable& table, const plan::Plan& plan, const std::string& who, const std::vector<plan::Mark>& marks,
              bool tapedOnly) {
  std::optional<Point> before;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const plan::Mark& mark = marks[i];
    if (!mark.shelter.empty() || (tapedOnly && !mark.taped)) continue;
    const TapeMeasure tape = tapeMeasure(plan, mark.pos);
    const auto step = before ? std::optional(geometry::distance(mark.pos, *before)) : std::nullopt;
    table.add({who, count("mark", i + 1), secondsCell("at", plan::secondsOf(plan, mark.at)), placeCell(mark.pos),
               metresCell(plan, "first", metresOf(tape.first)), wallOf(plan, tape.first),
               metresCell(plan, "second", metresOf(tape.second)), wallOf(plan, tape.second),
               metresCell(plan, "corner", tape.check), metresCell(plan, "step", step, "\u2013")});
    before = mark.pos;
  }
}

TextTable markTable() {
  return TextTable(
      {"who", ">mark", ">at", "x, y", ">from", "~first wall", ">from", "~second wall", ">corner", ">step"});
}

TextTable performerMarks(const plan::Plan& plan) {
  TextTable table = markTable();
  for (const auto& performer : plan.performers) addMarks(table, plan, performer.name, performer.marks, true);
  return table;
}

TextTable otherMarks(const plan::Plan& plan) {
  TextTable table = markTable();
  addMarks(table, plan, "camera", plan.camera.marks, false);
  for (const auto& crew : plan.crew) addMarks(table, plan, crew.id.text(), crew.marks, false);
  return table;
}

}  // namespace

TapeMeasure tapeMeasure(const plan::Plan& plan, Point mark) {
  constexpr double kSineOfTwenty = 0.342;
  TapeMeasure tape;
  const std::vector<Face> faces = facesNear(plan, mark);
  if (faces.empty()) return tape;
  const Face& first = faces.front();
  tape.first = {first.wall, first.metres};
  for (const Face& face : faces) {
    if (sineBetween(first, face) < kSineOfTwenty) continue;
    tape.second = {face.wall, face.metres};
    tape.check = toCorner(first, face, mark);
    break;
  }
  return tape;
}

DeptSheet operatorSheet(const Answers& answers) {
  return {
      "operator",
      "Operator's sheet",
      {{"Legs; back is the share of the way gone more than 120\u00b0 off where the lens looks. Nearest to the rig\nor, "
        "with the letters of the plan, to somebody who walks with it, edge to edge; under 0 they overlap.\nRehearse "
        "backwards and tight legs slowly with the spotter",
        legsTable(answers)},
       {"Steps and kerbs", crossingsTable(answers)}}};
}

DeptSheet marksSheet(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  return {"marks",
          "Tape list",
          {{"Taped marks, from the inside faces of two walls; corner: to where those faces meet, to check by;\nstep: "
            "from the mark before",
            performerMarks(plan)},
           {"Camera and crew, the same way", otherMarks(plan)}}};
}

}  // namespace wend::sheets
