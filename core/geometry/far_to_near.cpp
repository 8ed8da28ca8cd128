#include "core/geometry/far_to_near.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/tolerance.h"

namespace wend::geometry {

namespace {

/// Signed distance of p from the line, left positive.
double sideOf(Segment line, Point p) {
  const Vec d = line.b - line.a;
  return cross(d, p - line.a) / length(d);
}

}  // namespace

FarToNear::FarToNear(const std::vector<Segment>& faces) {
  std::vector<Piece> pieces;
  for (std::size_t i = 0; i < faces.size(); ++i) pieces.push_back({i, faces[i]});
  root_ = built(std::move(pieces));
}

std::unique_ptr<FarToNear::Node> FarToNear::built(std::vector<Piece> pieces) {
  if (pieces.empty()) return nullptr;
  auto node = std::make_unique<Node>();
  // The middle of the list splits ordinary sets about evenly; a better choice is not worth its cost here.
  node->line = pieces[pieces.size() / 2].face;
  std::vector<Piece> lefts, rights;
  for (const auto& piece : pieces) {
    const double a = sideOf(node->line, piece.face.a), b = sideOf(node->line, piece.face.b);
    if (std::abs(a) <= kTouch && std::abs(b) <= kTouch) {
      node->on.push_back(piece);
    } else if (a >= -kTouch && b >= -kTouch) {
      lefts.push_back(piece);
    } else if (a <= kTouch && b <= kTouch) {
      rights.push_back(piece);
    } else {
      const Point cut = lerp(piece.face.a, piece.face.b, a / (a - b));
      (a > 0 ? lefts : rights).push_back({piece.index, {piece.face.a, cut}});
      (a > 0 ? rights : lefts).push_back({piece.index, {cut, piece.face.b}});
    }
  }
  node->left = built(std::move(lefts));
  node->right = built(std::move(rights));
  return node;
}

void FarToNear::visit(const Node* node, Point eye, const std::vector<Point>& places, std::vector<std::size_t> things,
                      std::vector<Ordered>& order) {
  if (!node) {
    std::stable_sort(things.begin(), things.end(),
                     [&](std::size_t a, std::size_t b) { return distance(places[a], eye) > distance(places[b], eye); });
    for (const std::size_t thing : things) order.push_back({thing, true, {}});
    return;
  }
  std::vector<std::size_t> lefts, rights;
  for (const std::size_t thing : things) (sideOf(node->line, places[thing]) >= 0 ? lefts : rights).push_back(thing);
  const bool eyeLeft = sideOf(node->line, eye) >= 0;
  visit((eyeLeft ? node->right : node->left).get(), eye, places, eyeLeft ? std::move(rights) : std::move(lefts), order);
  for (const auto& piece : node->on) order.push_back({piece.index, false, piece.face});
  visit((eyeLeft ? node->left : node->right).get(), eye, places, eyeLeft ? std::move(lefts) : std::move(rights), order);
}

std::vector<Ordered> FarToNear::from(Point eye, const std::vector<Point>& things) const {
  std::vector<Ordered> order;
  std::vector<std::size_t> all(things.size());
  for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
  visit(root_.get(), eye, things, std::move(all), order);
  return order;
}

}  // namespace wend::geometry
