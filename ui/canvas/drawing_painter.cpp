#include "ui/canvas/drawing_painter.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <variant>

#include "core/base/check.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {
namespace {

using geometry::Pattern;
using geometry::Point;
using geometry::Tone;

QPointF toQt(Point p) {
  return {p.x, p.y};
}

QColor coloured(sheets::Rgb rgb, double strength) {
  QColor colour = colourOf(rgb);
  colour.setAlphaF(float(std::clamp(strength, 0.0, 1.0)));
  return colour;
}

QPolygonF polygonOf(const std::vector<Point>& points) {
  QPolygonF polygon;
  polygon.reserve(qsizetype(points.size()));
  for (const Point p : points) polygon.append(toQt(p));
  return polygon;
}

QPainterPath pathOf(const geometry::Path& path) {
  QPainterPath out;
  for (const auto& ring : path.rings) {
    out.addPolygon(polygonOf(ring));
    if (path.closed) out.closeSubpath();
  }
  return out;
}

QPainterPath pathOf(const geometry::Circle& circle) {
  QPainterPath out;
  out.addEllipse(toQt(circle.centre), circle.radius, circle.radius);
  return out;
}

QPainterPath pathOf(const geometry::Box& box) {
  QPainterPath out;
  out.addRoundedRect(QRectF(box.topLeft.x, box.topLeft.y, box.width, box.height), box.radius, box.radius);
  return out;
}

/// A whole number of device pixels that holds a whole number of tiles, as nearly as few tiles can.
int wholePixels(double tileLength, int& tiles) {
  double best = 1e9;
  int pixels = 1;
  for (int n = 1; n <= 16; ++n) {
    const int whole = std::max(1, int(std::lround(n * tileLength)));
    const double stretch = std::abs(whole / (n * tileLength) - 1);
    if (stretch > best - 1e-4) continue;
    best = stretch, pixels = whole, tiles = n;
  }
  return pixels;
}

/// The marks of every tile that touches the area, as one path each, so that marks that meet do not show through.
void drawMarks(QPainter& painter, const sheets::Tile& tile, const QRectF& area, const QColor& colour) {
  QPainterPath dots, strokes;
  dots.setFillRule(Qt::WindingFill);
  const int left = int(std::floor(area.left() / tile.width)) - 1, right = int(std::ceil(area.right() / tile.width));
  const int top = int(std::floor(area.top() / tile.height)) - 1, bottom = int(std::ceil(area.bottom() / tile.height));
  for (int row = top; row <= bottom; ++row)
    for (int column = left; column <= right; ++column) {
      const QPointF at(column * tile.width, row * tile.height);
      for (const auto& dot : tile.dots) dots.addEllipse(toQt(dot.centre) + at, dot.radius, dot.radius);
      for (const auto& stroke : tile.strokes) strokes.addPolygon(polygonOf(stroke).translated(at));
    }
  painter.fillPath(dots, colour);
  if (!strokes.isEmpty())
    painter.strokePath(strokes, QPen(colour, tile.strokeWidth, Qt::SolidLine, Qt::SquareCap, Qt::RoundJoin));
}

/// Drawn four times too large and averaged: marks of one or two pixels keep their weight at every scale.
QPixmap tileTexture(const sheets::Tile& tile, const QColor& colour, double scale) {
  constexpr int kFiner = 4;
  int across = 1, down = 1;
  const int width = wholePixels(tile.width * scale, across), height = wholePixels(tile.height * scale, down);
  QImage image(width * kFiner, height * kFiner, QImage::Format_ARGB32_Premultiplied);
  image.fill(Qt::transparent);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(image.width() / (across * tile.width), image.height() / (down * tile.height));
  drawMarks(painter, tile, QRectF(0, 0, across * tile.width, down * tile.height), colour);
  painter.end();
  return QPixmap::fromImage(image.scaled(width, height, Qt::IgnoreAspectRatio, Qt::SmoothTransformation));
}

/// Device pixels per unit, the same in all directions or nearly so.
double scaleOf(const QTransform& transform) {
  return std::sqrt(std::abs(transform.determinant()));
}

QPen penOf(const geometry::Stroke& stroke, const QColor& colour) {
  QPen pen(colour, stroke.width, Qt::SolidLine, stroke.cap == geometry::Cap::round ? Qt::RoundCap : Qt::FlatCap,
           Qt::RoundJoin);
  if (stroke.dash.empty()) return pen;
  QList<qreal> dashes;
  const std::size_t count = stroke.dash.size() * (stroke.dash.size() % 2 == 0 ? 1 : 2);
  for (std::size_t i = 0; i < count; ++i) dashes.append(stroke.dash[i % stroke.dash.size()] / stroke.width);
  pen.setDashPattern(dashes);
  return pen;
}

/// Fonts come in whole px; other sizes are painted from this one, scaled.
constexpr int kScaledFontPx = 64;

struct SizedFont {
  QFont font;
  double scale = 1;
};

SizedFont sizedFont(double size, bool bold) {
  const double whole = std::round(size);
  if (whole >= 8 && std::abs(size - whole) < 1e-9) return {fontOf(int(whole), bold), 1};
  return {fontOf(kScaledFontPx, bold), size / kScaledFontPx};
}

}  // namespace

/// One drawing under one transform.
class DrawingPass {
 public:
  DrawingPass(DrawingPainter& owner, QPainter& painter, const geometry::Drawing& drawing)
      : owner_(owner),
        painter_(painter),
        inks_(owner.theme_),
        toDevice_(painter.deviceTransform()),
        origin_(toQt(drawing.patternOrigin)) {
    painter_.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    for (const auto& shape : drawing.shapes) std::visit([this](const auto& s) { draw(s); }, shape);
    WEND_CHECK(openClips_ == 0);
  }

 private:
  void draw(const geometry::Path& path) {
    if (path.fill.tone != Tone::none) {
      inks_.filled(path.fill);
      fill(pathOf(path), path.fill);
    }
    for (const auto& ring : path.rings) drawLine(ring, path.closed, path.stroke);
  }
  void draw(const geometry::Circle& circle) { drawShape(circle); }
  void draw(const geometry::Box& box) { drawShape(box); }

  void draw(const geometry::BeginClip& clip) {
    painter_.save();
    QPainterPath path;
    path.addPolygon(polygonOf(clip.ring));
    path.closeSubpath();
    painter_.setClipPath(path, Qt::IntersectClip);
    ++openClips_;
  }
  void draw(const geometry::EndClip&) {
    WEND_CHECK(openClips_ > 0);
    --openClips_;
    painter_.restore();
  }

  void draw(const geometry::Text& text) {
    if (text.tone == Tone::none || text.text.empty()) return;
    const SizedFont sized = sizedFont(text.size, text.bold);
    const QString words = QString::fromStdString(text.text);
    painter_.save();
    painter_.translate(toQt(text.at));
    painter_.rotate(text.turned);
    painter_.scale(sized.scale, sized.scale);
    if (text.align != geometry::Align::left) {
      const double width = QFontMetricsF(sized.font).horizontalAdvance(words);
      painter_.translate(text.align == geometry::Align::centre ? -width / 2 : -width, 0);
    }
    painter_.setFont(sized.font);
    if (text.halo != Tone::none) drawHalo(text, words, sized);
    painter_.setPen(coloured(inks_.of(text.tone), 1));
    painter_.drawText(QPointF(0, 0), words);
    painter_.restore();
  }

  /// On a screen the text itself is drawn around its place: glyphs come from a cache, outlines would be filled anew at
  /// twenty times the cost. Rings one px apart leave no gap between the thinnest stems.
  void drawHalo(const geometry::Text& text, const QString& words, const SizedFont& sized) {
    const double reach = sheets::haloWidth(text.size, owner_.unit_) / 2 / sized.scale;
    const QColor colour = coloured(inks_.of(text.halo), 1);
    if (owner_.patternsAs_ == PatternsAs::vectors) {
      QPainterPath outline;
      outline.addText(QPointF(0, 0), sized.font, words);
      painter_.strokePath(outline, QPen(colour, 2 * reach, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
      return;
    }
    constexpr double kDiagonal = 0.7071;
    painter_.setPen(colour);
    for (const QPointF way :
         {QPointF(1, 0), QPointF(0, 1), QPointF(-1, 0), QPointF(0, -1), QPointF(kDiagonal, kDiagonal),
          QPointF(-kDiagonal, kDiagonal), QPointF(kDiagonal, -kDiagonal), QPointF(-kDiagonal, -kDiagonal)})
      painter_.drawText(way * reach, words);
  }

  void drawLine(const std::vector<Point>& points, bool closed, const geometry::Stroke& stroke) {
    if (stroke.tone == Tone::none || stroke.width <= 0 || points.empty()) return;
    QPolygonF line = polygonOf(points);
    QPen pen = penOf(stroke, coloured(inks_.of(stroke.tone), stroke.strength));
    const bool isLong = line.size() > kPiece;
    // Corners of a long line are shallow: mitred they look the same and cost a fifth.
    if (isLong) pen.setJoinStyle(Qt::MiterJoin);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(pen);
    if (isLong && stroke.strength >= 1 && owner_.patternsAs_ == PatternsAs::textures)
      drawInPieces(closed ? line << line[0] << line[1] : line, pen);
    else if (closed)
      painter_.drawPolygon(line);
    else
      painter_.drawPolyline(line);
  }

  /// The raster engine's cost grows faster than a line's length. Pieces share their end points, dashes go on across.
  void drawInPieces(const QPolygonF& line, QPen pen) {
    double drawn = 0;
    for (qsizetype first = 0; first + 1 < line.size(); first += kPiece) {
      const int count = int(std::min(kPiece + 1, line.size() - first));
      if (!pen.dashPattern().isEmpty()) {
        pen.setDashOffset(drawn / pen.widthF());
        for (int i = 1; i < count; ++i) drawn += QLineF(line[first + i - 1], line[first + i]).length();
        painter_.setPen(pen);
      }
      painter_.drawPolyline(line.constData() + first, count);
    }
  }

  template <class S>
  void drawShape(const S& shape) {
    const QPainterPath path = pathOf(shape);
    inks_.filled(shape.fill);
    fill(path, shape.fill);
    if (shape.stroke.tone == Tone::none || shape.stroke.width <= 0) return;
    painter_.strokePath(path, penOf(shape.stroke, coloured(inks_.of(shape.stroke.tone), shape.stroke.strength)));
  }

  void fill(const QPainterPath& path, const geometry::Fill& fill) {
    if (fill.tone == Tone::none) return;
    const sheets::Rgb colour = inks_.of(fill.tone);
    if (fill.pattern == Pattern::plain)
      painter_.fillPath(path, coloured(colour, fill.strength));
    else if (owner_.patternsAs_ == PatternsAs::textures)
      fillWithTexture(path, fill, colour);
    else
      fillWithMarks(path, fill, colour);
  }

  /// The brush's own transform undoes the painter's, so that texture pixels are device pixels.
  void fillWithTexture(const QPainterPath& path, const geometry::Fill& fill, sheets::Rgb colour) {
    const double scale = scaleOf(toDevice_) * sheets::unitsPerPx(owner_.unit_);
    QBrush brush(owner_.texture(fill.pattern, colour, scale));
    const QPointF at = toDevice_.map(origin_);
    brush.setTransform(QTransform::fromTranslate(std::round(at.x()), std::round(at.y())) * toDevice_.inverted());
    const double before = painter_.opacity();
    painter_.setOpacity(before * fill.strength);
    painter_.fillPath(path, brush);
    painter_.setOpacity(before);
  }

  void fillWithMarks(const QPainterPath& path, const geometry::Fill& fill, sheets::Rgb colour) {
    const double scale = sheets::unitsPerPx(owner_.unit_);
    painter_.save();
    painter_.setClipPath(path, Qt::IntersectClip);
    painter_.translate(origin_);
    painter_.scale(scale, scale);
    const QRectF area = path.boundingRect().translated(-origin_);
    const QRectF inPx(area.topLeft() / scale, area.size() / scale);
    drawMarks(painter_, sheets::tileOf(fill.pattern), inPx, coloured(colour, fill.strength));
    painter_.restore();
  }

  static constexpr qsizetype kPiece = 32;

  DrawingPainter& owner_;
  QPainter& painter_;
  sheets::Inks inks_;
  QTransform toDevice_;
  QPointF origin_;
  int openClips_ = 0;
};

void DrawingPainter::paint(QPainter& painter, const geometry::Drawing& drawing) {
  painter.save();
  DrawingPass(*this, painter, drawing);
  painter.restore();
}

const QPixmap& DrawingPainter::texture(Pattern pattern, sheets::Rgb colour, double devicePxPerPx) {
  // A zoomed preview meets many scales; a few hundred textures are more than one view ever shows at once.
  constexpr qsizetype kMostTextures = 256;
  if (textures_.size() > kMostTextures) textures_.clear();
  const quint64 scale = quint64(std::lround(devicePxPerPx * 1024));
  const quint64 rgb = quint64(colour.red) << 16 | quint64(colour.green) << 8 | colour.blue;
  const quint64 key = scale << 32 | quint64(pattern) << 24 | rgb;
  const auto known = textures_.find(key);
  if (known != textures_.end()) return *known;
  return *textures_.insert(key, tileTexture(sheets::tileOf(pattern), colourOf(colour), devicePxPerPx));
}

QImage imageOf(const geometry::Drawing& drawing, sheets::Theme theme, double ratio, Tone ground, sheets::Unit unit) {
  WEND_CHECK(ratio > 0);
  const double scale = ratio / sheets::unitsPerPx(unit);
  const QSize size(int(std::ceil(drawing.width * scale - 1e-6)), int(std::ceil(drawing.height * scale - 1e-6)));
  WEND_CHECK(size.width() <= 32767 && size.height() <= 32767);
  QImage image(size, QImage::Format_ARGB32_Premultiplied);
  const int perMetre = int(std::lround(ratio * 1000 / sheets::kMmPerPx));
  image.setDotsPerMeterX(perMetre);
  image.setDotsPerMeterY(perMetre);
  image.fill(colourOf(ground, theme));
  QPainter painter(&image);
  painter.scale(scale, scale);
  DrawingPainter(theme, unit).paint(painter, drawing);
  return image;
}

double textWidth(const std::string& text, double px, bool bold) {
  const SizedFont sized = sizedFont(px, bold);
  return QFontMetricsF(sized.font).horizontalAdvance(QString::fromStdString(text)) * sized.scale;
}

}  // namespace wend::ui
