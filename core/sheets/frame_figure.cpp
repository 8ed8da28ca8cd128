#include "core/sheets/frame_figure.h"

#include <algorithm>
#include <cmath>

namespace wend::sheets {

using geometry::Path;
using geometry::Point;

namespace {

constexpr double kHeadsInStature = 7.5;
constexpr double kHeadAcross = 0.74;  ///< width of a head over its height

/// Half of the body from the hem up to the neck: across in half bodies, down from the chin in heads.
struct Corner {
  double across, down;
};
constexpr Corner kShoulder[] = {{1, 0.80}, {0.96, 0.58}, {0.84, 0.44}};

Path outline(const std::vector<Point>& ring, const geometry::Fill& fill, const geometry::Stroke& stroke) {
  Path path;
  path.rings = {ring};
  path.closed = true;
  path.fill = fill;
  path.stroke = stroke;
  return path;
}

}  // namespace

double headShareOf(double stature, const optics::Figure& figure) {
  return figure.top > 0 ? stature / kHeadsInStature / figure.top : 1 / kHeadsInStature;
}

FigureShape figureShape(const FrameFit& fit, const optics::FrameBox& box, double headShare) {
  const Point topLeft = fit.toPicture({box.left, box.top}), bottomRight = fit.toPicture({box.right, box.bottom});
  const double height = bottomRight.y - topLeft.y, half = (bottomRight.x - topLeft.x) / 2;
  const double middle = topLeft.x + half, head = std::min(headShare, 0.49) * height, chin = topLeft.y + head;
  const double face = std::min(kHeadAcross * head / 2, 0.75 * half);
  FigureShape shape{{}, {}, middle - face, topLeft.y, middle + face, chin};
  shape.body.push_back({middle - half, bottomRight.y});
  for (const Corner& corner : kShoulder)
    shape.body.push_back({middle - corner.across * half, std::min(chin + corner.down * head, bottomRight.y)});
  for (const double side : {-1.0, 1.0}) shape.body.push_back({middle + side * 0.7 * face, chin - 0.05 * head});
  for (std::size_t i = std::size(kShoulder); i-- > 0;)
    shape.body.push_back(
        {middle + kShoulder[i].across * half, std::min(chin + kShoulder[i].down * head, bottomRight.y)});
  shape.body.push_back({middle + half, bottomRight.y});
  for (int i = 0; i < 36; ++i) {
    const double turn = geometry::radians(10.0 * i);
    shape.head.push_back({middle + face * std::cos(turn), topLeft.y + head / 2 * (1 + std::sin(turn))});
  }
  return shape;
}

void drawFigure(geometry::Drawing& drawing, const FigureShape& shape, const geometry::Fill& fill,
                const geometry::Stroke& stroke) {
  drawing.add(outline(shape.body, fill, stroke));
  drawing.add(outline(shape.head, fill, stroke));
}

}  // namespace wend::sheets
