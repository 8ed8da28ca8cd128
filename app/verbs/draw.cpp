// wend draw: a picture of one instant as SVG or PNG.
#include <QBuffer>
#include <QGuiApplication>
#include <cmath>

#include "app/verbs/common.h"
#include "core/answers/glass_ground.h"
#include "core/answers/routes.h"
#include "core/base/text.h"
#include "core/exchange/svg.h"
#include "core/sheets/frame_drawing.h"
#include "core/sheets/plan_view.h"
#include "core/sheets/score_drawing.h"
#include "core/sheets/side_drawing.h"
#include "ui/canvas/drawing_painter.h"

namespace wend::app {

using base::Problem;
using base::Result;
using geometry::Drawing;

namespace {

constexpr double kLeastSide = 200, kMostSide = 16384;

struct Picture {
  std::string view, format;
  sheets::Theme theme = sheets::Theme::paper;
  double width = 0, height = 0;  ///< px; 0: as the view has it
};

Result<std::string> wordOption(const Arguments& arguments, const std::string& name, const std::string& otherwise,
                               const std::vector<std::string>& words) {
  const std::string given = arguments.text(name).value_or(otherwise);
  std::string expected;
  for (const auto& word : words) {
    if (word == given) return given;
    expected += (expected.empty() ? "" : ", ") + word;
  }
  const auto nearest = base::nearestWord(given, words);
  return Problem{"unknown-word", name, "\"" + given + "\"", "one of " + expected,
                 nearest ? "did you mean " + *nearest + "?" : "choose one of them"};
}

Result<std::string> formatOf(const Arguments& arguments) {
  const std::string output = arguments.text("--output").value_or("-");
  if (output == "-" || output.ends_with(".svg")) return std::string("svg");
  if (output.ends_with(".png")) return std::string("png");
  return Problem{"unknown-format", "--output", "\"" + output + "\"", "a name that ends in .svg or .png",
                 "let the ending say which picture is wanted"};
}

sheets::Theme themeNamed(const std::string& word) {
  return word == "dark" ? sheets::Theme::dark : word == "torch" ? sheets::Theme::torch : sheets::Theme::paper;
}

Result<Picture> pictureOf(const Arguments& arguments) {
  const auto view = wordOption(arguments, "--view", "plan", {"plan", "frame", "side", "score"});
  const auto theme = wordOption(arguments, "--theme", "paper", {"dark", "paper", "torch"});
  const auto format = formatOf(arguments);
  for (const auto* word : {&view, &theme, &format})
    if (!*word) return word->problems();
  const auto width = arguments.number("--width", 0, kLeastSide, kMostSide);
  const auto height = arguments.number("--height", 0, kLeastSide, kMostSide);
  for (const auto* number : {&width, &height})
    if (!*number) return number->problems();
  if (*view == "score" && *height > 0)
    return Problem{"surplus-option", "--height", "a height for the score", "its width only",
                   "its staves say how high it is; leave the height out"};
  return Picture{*view, *format, themeNamed(*theme), std::round(*width), std::round(*height)};
}

/// Whose way is found stands on the picture as it does on the screen.
answers::Answers routed(const answers::Answers& answers) {
  const auto found = answers::withRoutes(std::make_shared<answers::Answers>(answers));
  return found ? **found : answers;
}

Drawing planOf(const answers::Answers& answers, const Picture& picture, double t) {
  answers::Answers withGround = routed(answers);
  if (auto ground = answers::groundOf(*answers.take)) withGround.ground = *ground;
  if (answers.evidence && answers.evidence->known)
    withGround.glass = std::make_shared<const answers::GlassGround>(
        *answers::glassGroundOf(*answers.take, {answers.take->plan().sightRules.height, {0, answers.take->length()}},
                                {}, answers.evidence->known->glass));
  const auto view = sheets::wholeSet(*answers.take, picture.width > 0 ? picture.width : 1600,
                                     picture.height > 0 ? picture.height : 1000);
  sheets::PlanPicture shown;
  shown.time = t;
  return sheets::planDrawing(withGround, view, shown);
}

Drawing frameOf(const answers::Answers& answers, const Picture& picture, double t) {
  const auto instant = answers::instantAt(*answers.take, t, answers.evidence.get());
  const double shape = instant.lens->half.h / instant.lens->half.v;
  const double width = picture.width > 0 ? picture.width : picture.height > 0 ? picture.height * shape : 1600;
  const double height = picture.height > 0 ? picture.height : std::round(width / shape);
  return sheets::frameDrawing(answers, instant, std::round(width), height);
}

Drawing sideOf(const answers::Answers& answers, const Picture& picture, double t) {
  const auto instant = answers::instantAt(*answers.take, t, answers.evidence.get());
  return sheets::sideDrawing(answers, instant,
                             {picture.width > 0 ? picture.width : 1600, picture.height > 0 ? picture.height : 700});
}

Drawing scoreOf(const answers::Answers& answers, const Picture& picture, double t) {
  const plan::Plan& plan = answers.take->plan();
  sheets::ScoreView view;
  view.until = answers.take->length();
  if (picture.width > 0) view.width = std::max(picture.width, 2 * (view.labels + view.scales));
  Drawing drawing = sheets::scoreDrawing(routed(answers), view);
  for (auto& shape : sheets::playheadDrawing(plan, view, t).shapes) drawing.shapes.push_back(std::move(shape));
  return drawing;
}

Drawing drawingOf(const answers::Answers& answers, const Picture& picture, double t) {
  if (picture.view == "frame") return frameOf(answers, picture, t);
  if (picture.view == "side") return sideOf(answers, picture, t);
  if (picture.view == "score") return scoreOf(answers, picture, t);
  return planOf(answers, picture, t);
}

/// Letters need Qt's typefaces, and those an application; the offscreen one asks for no display and gives the same
/// bytes with or without one.
std::string pngOf(const Drawing& drawing, sheets::Theme theme) {
  static int argc = 1;
  static char name[] = "wend";
  static char* argv[] = {name, nullptr};
  qputenv("QT_QPA_PLATFORM", "offscreen");
  // What Qt says of folders and plug-ins is no news to who asked for a picture.
  qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
  const QGuiApplication application(argc, argv);
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  ui::imageOf(drawing, theme).save(&buffer, "PNG");
  return bytes.toStdString();
}

Exit draw(const Arguments& arguments) {
  const auto picture = pictureOf(arguments);
  if (!picture) return refused(picture.problems());
  auto answers = answersAt(arguments.operands()[0], arguments.has("--quiet"));
  if (!answers) return refused(answers.problems());
  const answers::Take& take = *(*answers)->take;
  const auto t = timeWithin(take, arguments.text("--at").value_or("0"));
  if (!t) return refused(t.problems());
  if ((picture->view == "frame" || picture->view == "side") && !take.plan().lens) return refused(noLens());
  const Drawing drawing = drawingOf(**answers, *picture, *t);
  if (picture->format == "png") return handedOut(arguments, pngOf(drawing, picture->theme));
  const exchange::SvgStyle style{picture->theme, sheets::Unit::px,
                                 take.plan().title + ", " + picture->view + " at " + base::shortest(*t) + " s",
                                 geometry::Tone::page};
  return handedOut(arguments, exchange::svgText(drawing, style));
}

}  // namespace

const Verb kDraw{"draw",
                 "PLAN",
                 "a picture of one instant: floor plan, frame, side elevation or score",
                 "wend draw samples/first-batch.wend --at b6+5 --view plan -o plan.svg",
                 {{"--at", "TIME", "the instant; the take's start without it"},
                  {"--view", "VIEW", "plan (without it), frame, side (true heights along the lens) or score"},
                  {"--theme", "THEME", "paper (without it), dark or torch"},
                  {"--width", "W", "of the picture, px"},
                  {"--height", "H", "of the picture, px; the score's follows from its staves"},
                  {"--output", "FILE", "a name that ends in .svg or .png (also -o); SVG is printed without it"},
                  kQuiet},
                 draw};

}  // namespace wend::app
