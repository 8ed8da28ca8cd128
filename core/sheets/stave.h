/// What the staves of the score draw with.
#pragma once

#include <cmath>

#include "core/geometry/runs.h"
#include "core/sheets/score_drawing.h"

namespace wend::sheets {

/// A stave's place, its take and the strokes all staves share.
struct StavePainter {
  geometry::Drawing& drawing;
  const answers::Answers& answers;
  const answers::Take& take;
  const plan::Plan& plan;
  const ScoreView& view;
  const StaveBox& box;
  bool stale = false;

  double strength() const { return stale ? 0.5 : 1; }
  bool shows(double from, double until) const { return until >= view.from && from <= view.until; }
  void line(std::vector<geometry::Point> points, geometry::Tone tone, double width, std::vector<double> dash = {});
  void block(double from, double until, double top, double height, geometry::Fill fill, geometry::Stroke stroke = {});
  void text(geometry::Point at, std::string words, geometry::Tone tone = geometry::Tone::ink2, bool bold = false,
            geometry::Align align = geometry::Align::left);
  /// Words on the scale at the right.
  void scale(double y, const std::string& words);
  /// The square of a key.
  void square(geometry::Point at);
  /// Squares of everything on this stave that can be dragged and whose key begins with one of these; what is chosen
  /// gets its corners.
  void handles(const std::vector<std::string>& begins);
  /// Cut with an ellipsis to so many px.
  static std::string cut(const std::string& words, double px);
};

/// Where values stand on a stave: a monotone measure, the first value at the top.
struct StaveScale {
  double top = 0, height = 1;
  double high = 1, low = 0;  ///< measures at top and bottom
  double y(double measure) const { return top + (high - measure) / (high - low) * height; }
  double perPx() const { return (high - low) / height; }
};

/// Chords over the soft start or end of a move: a hundredth of the room it takes is left out.
inline constexpr int kEaseSteps = 10;

/// Samples worth drawing: about one a px. Requires evidence.
std::size_t sampleStride(const StavePainter& p);

/// Seconds that stand for a run of samples: until the sample after it, so that the blocks of runs meet.
geometry::Span drawnSpan(const snags::Evidence& evidence, geometry::Run run);

/// 1/distance, of what the focus stave has room for.
double focusMeasure(double metres);
/// Of that measure: on top a step nearer than the lens is set or somebody has to be sharp, infinity at the foot.
StaveScale focusStaveScale(const answers::Take& take, const StaveBox& box);
/// log2 mm.
StaveScale zoomStaveScale(const plan::Plan& plan, const StaveBox& box);
/// Stops from T1.
StaveScale irisStaveScale(const answers::Answers& answers, const StaveBox& box);

/// Stops of density, none at the foot; a stop more on top than the plan asks for.
StaveScale densityStaveScale(const plan::Plan& plan, const StaveBox& box);

/// The middle of the row of who is sharp, where changes of subject are taken hold of.
double whoIsSharpRow(const StaveBox& box);

/// The bar of a snag by its severity, down from the stave's top.
struct SnagRow {
  double top = 0, thick = 0;
};
SnagRow snagRow(snags::Severity severity);
/// The middle of the lozenges, down from the stave's top, and their half height.
inline constexpr double kSnagLozenge = 8, kSnagLozengeHalf = 7;

void drawClockStave(StavePainter& p);
void drawBeatsStave(StavePainter& p);
void drawInFrameStave(StavePainter& p);
void drawSharpStave(StavePainter& p);
void drawZoomStave(StavePainter& p);
void drawIrisStave(StavePainter& p);
void drawDensityStave(StavePainter& p);
void drawPanStave(StavePainter& p);
void drawCuesStave(StavePainter& p);
void drawCrewStave(StavePainter& p);
void drawSpeechStave(StavePainter& p);
void drawSnagsStave(StavePainter& p);

}  // namespace wend::sheets
