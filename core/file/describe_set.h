/// The keys of the set: underlay, rooms, walls, openings, pieces, areas.
#pragma once

#include "core/file/fields.h"
#include "core/file/ranges.h"
#include "core/file/words.h"

namespace wend::file {

template <class Fields>
void describe(Fields& f, Of<plan::Underlay>) {
  using T = plan::Underlay;
  f.fileName("file", &T::file);
  f.number("metresPerPixel", &T::metresPerPixel, kPixelSize);
  f.point("pos", &T::pos);
  f.number("bearing", &T::bearing, kAngle);
  f.number("opacity", &T::opacity, kShare);
}

template <class Fields>
void describe(Fields& f, Of<plan::Room>) {
  using T = plan::Room;
  f.id(&T::id);
  f.text("name", &T::name);
  f.points("outline", &T::outline, 3);
  f.number("floor", &T::floor, kHeight);
  f.number("ceiling", &T::ceiling, kHeight);
  f.refuse(
      "ceiling", [](const T& room) { return room.ceiling <= room.floor; }, "out-of-range", "above the floor",
      "check the two heights");
  f.flag("openAbove", &T::openAbove);
}

/// A wall that is no longer than a touch has no direction, and so no faces.
inline bool onOneSpot(const plan::Wall& wall) {
  double length = 0;
  for (std::size_t i = 1; i < wall.points.size(); ++i) length += geometry::distance(wall.points[i - 1], wall.points[i]);
  return wall.points.size() >= 2 && length < 1e-3;
}

template <class Fields>
void describe(Fields& f, Of<plan::Wall>) {
  using T = plan::Wall;
  f.id(&T::id);
  f.text("name", &T::name);
  f.points("points", &T::points, 2);
  f.refuse("points", onOneSpot, "line-short", "two or more points, not all within a millimetre",
           "move a point, or take the wall out");
  f.number("thickness", &T::thickness, kSize);
  f.number("bottom", &T::bottom, kHeight);
  f.number("top", &T::top, kHeight);
  f.number("radioLoss", &T::radioLoss, kDecibels);
  f.refuse(
      "top", [](const T& wall) { return wall.top <= wall.bottom; }, "out-of-range", "above the bottom",
      "check the two heights");
}

template <class Fields>
void describe(Fields& f, Of<plan::LeafMoves>) {
  using T = plan::LeafMoves;
  f.word("kind", &T::kind, kLeafKinds);
  f.word("hinge", &T::hinge, kHinges);
  f.word("towards", &T::towards, kSides);
  f.number("full", &T::full, kOpeningAngle);
}

template <class Fields>
void describe(Fields& f, Of<plan::OpenKey>) {
  using T = plan::OpenKey;
  f.keyTime(&T::time);
  f.number("share", &T::share, kShare, Presence::must);
  f.text("name", &T::name);
  f.text("by", &T::by);
}

template <class Fields>
void describe(Fields& f, Of<plan::Opening>) {
  using T = plan::Opening;
  f.id(&T::id);
  f.text("name", &T::name);
  f.reference("wall", &T::wall, IdKind::wall);
  f.span("along", &T::along, kSize);
  f.number("sill", &T::sill, kHeight);
  f.number("head", &T::head, kHeight);
  f.number("threshold", &T::threshold, kSize);
  f.word("fill", &T::fill, kFills);
  f.flag("barsWay", &T::barsWay);
  f.maybe("moves", &T::moves);
  f.keys("open", &T::open);
  f.number("radioLoss", &T::radioLoss, kDecibels);
  f.refuse(
      "head", [](const T& opening) { return opening.head <= opening.sill; }, "out-of-range", "above the sill",
      "check the two heights");
  f.refuse(
      "along", [](const T& opening) { return opening.along.until <= opening.along.from; }, "out-of-range",
      "two places along the wall, the nearer first", "give the opening a width");
}

template <class Fields>
void describe(Fields& f, Of<plan::PieceKey>) {
  using T = plan::PieceKey;
  f.keyTime(&T::time);
  f.offset("offset", &T::offset);
  f.number("turn", &T::turn, kAngle);
  f.text("name", &T::name);
  f.text("by", &T::by);
}

template <class Fields>
void describe(Fields& f, Of<plan::Piece>) {
  using T = plan::Piece;
  f.id(&T::id);
  f.text("name", &T::name);
  f.footprint(&T::shape, true);
  f.number("bottom", &T::bottom, kHeight);
  f.number("top", &T::top, kHeight);
  f.word("surface", &T::surface, kSurfaces);
  f.flag("hot", &T::hot);
  f.flag("glossy", &T::glossy);
  f.word("reflects", &T::reflects, kSides);
  f.keys("moved", &T::moved);
  f.refuse(
      "top", [](const T& piece) { return piece.top <= piece.bottom; }, "out-of-range", "above the bottom",
      "check the two heights");
  f.refuse(
      "disc",
      [](const T& piece) {
        return piece.surface == plan::Surface::mirror && std::holds_alternative<plan::Disc>(piece.shape);
      },
      "mirror-disc", "an outline or points for a mirror", "draw the mirror as a line or an outline");
}

template <class Fields>
void describe(Fields& f, Of<plan::Reading>) {
  using T = plan::Reading;
  f.point("pos", &T::pos, Presence::must);
  f.number("stop", &T::stop, kStop, Presence::must);
}

template <class Fields>
void describe(Fields& f, Of<plan::AreaState>) {
  using T = plan::AreaState;
  f.keyTime(&T::time);
  f.text("name", &T::name);
  f.text("by", &T::by);
  f.rows("readings", &T::readings, Layout::inlined);
  f.number("kelvin", &T::kelvin, kKelvin);
}

template <class Fields>
void describe(Fields& f, Of<plan::Area>) {
  using T = plan::Area;
  f.id(&T::id);
  f.text("name", &T::name);
  f.footprint(&T::shape, false);
  f.words("use", &T::use, kUses);
  f.keys("states", &T::states);
  f.clockReadings("byClock", &T::byClock);
  f.number("step", &T::step, kSize);
  f.number("floor", &T::floor, kHeight);
}

template <class Fields>
void describe(Fields& f, Of<plan::Set>) {
  using T = plan::Set;
  f.maybe("underlay", &T::underlay);
  f.table("rooms", &T::rooms);
  f.table("walls", &T::walls);
  f.table("openings", &T::openings);
  f.table("pieces", &T::pieces);
  f.table("areas", &T::areas);
}

}  // namespace wend::file
