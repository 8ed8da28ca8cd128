/// What stands on the set and can hide somebody: walls with their openings, leaves, pieces, mirrors.
///
/// Frame     plan metres; heights above the set's datum; sides and ends are those of a wall's direction, first point to
///           last. Everything carries a `tag` of the caller's and gives it back in results.
///
/// A wall is a band of thickness around its polyline. Between its openings it stands from bottom to top; below a sill
/// and above a head it stays solid. A leaf is a panel without thickness on the wall's face. Glass shows, wherever it
/// is.
///
/// What stands on a floor hides down through it: a line of sight that passes lower than the floor there runs in the
/// ground. Floors themselves are no part of the scene, so walls and pieces carry how far down that is (`foot`).
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <variant>
#include <vector>

#include "core/geometry/band.h"
#include "core/geometry/keyed.h"
#include "core/sight/eye.h"

namespace wend::sight {

using geometry::Ring;
using geometry::Segment;

enum class Surface { solid, glass, mirror };
enum class Side { left, right };
enum class End { start, end };
enum class Fill { open, solid, glass, curtain };
enum class LeafKind { swing, slide, lift };

struct WallBand {
  std::vector<Point> points;
  double thickness = 0.1;
  double bottom = 0, top = 3;
  int tag = 0;
  std::optional<double> foot;  ///< it hides from there up, lower than it stands
};

struct LeafMotion {
  LeafKind kind = LeafKind::swing;
  End hinge = End::start;
  Side towards = Side::left;
  double fullDegrees = 90;  ///< at share 1, swing only
  bool operator==(const LeafMotion&) const = default;
};

/// A hole in a wall, and what hangs in it. Without keys its leaf is shut all along.
struct OpeningCut {
  std::size_t wall = 0;  ///< place in the list of walls
  Span along;            ///< metres from the wall's first point
  double sill = 0, head = 2.05;
  Fill fill = Fill::open;
  bool barsWay = true;  ///< when shut, nobody walks through
  std::optional<LeafMotion> moves;
  std::vector<geometry::KeySpan> keys;  ///< of the open share, in order of time
  std::vector<double> shares;           ///< one a key; 0 shut, 1 fully open
  int tag = 0;
  bool operator==(const OpeningCut&) const = default;
};

struct DiscShape {
  Point centre;
  double radius = 0.5;
  bool operator==(const DiscShape&) const = default;
};
struct OutlineShape {
  std::vector<Point> points;
  bool operator==(const OutlineShape&) const = default;
};
/// A sheet without thickness along a polyline.
struct LineShape {
  std::vector<Point> points;
  bool operator==(const LineShape&) const = default;
};

using PieceShape = std::variant<OutlineShape, DiscShape, LineShape>;

/// How far a piece stands from where it is drawn.
struct Shift {
  Vec offset{0, 0};
  double turnDegrees = 0;  ///< clockwise about the piece's pivot
  bool operator==(const Shift&) const = default;
};

/// A shape that stands so far from where it is drawn.
PieceShape shifted(PieceShape shape, Point pivot, const Shift& shift);
/// The corners of a shape; of a disc its centre.
std::span<const Point> pointsOf(const PieceShape& shape);

struct PieceIn {
  PieceShape shape;
  double bottom = 0, top = 1;
  Surface surface = Surface::solid;
  std::optional<Side> reflects;  ///< a mirror along a line: the side it shows; outlines show outwards
  int tag = 0;
  Point pivot;
  std::vector<geometry::KeySpan> keys;  ///< of where it stands, in order of time; none: where it is drawn
  std::vector<Shift> shifts;            ///< one a key
  std::optional<double> foot;           ///< it hides from there up, lower than it stands
  bool operator==(const PieceIn&) const = default;
};

struct SceneInput {
  std::vector<WallBand> walls;
  std::vector<OpeningCut> openings;
  std::vector<PieceIn> pieces;
};

enum class Owner : std::uint8_t { wall, opening, piece, other };

/// Which of the caller's things something belongs to.
struct Source {
  Owner owner = Owner::other;
  int tag = 0;
  bool operator==(const Source&) const = default;
};

/// An upright body of the set that hides, straight from bottom to top: a convex or other outline, a circle, or a sheet.
/// Where it stands on a floor, its bottom is lower than that and `base` is where it stands.
struct Prism {
  enum class Form : std::uint8_t { outline, disc, sheet };
  Form form = Form::outline;
  bool jamb = false;  ///< a part of a wall between its openings
  Surface surface = Surface::solid;
  Source source;
  std::uint32_t first = 0, count = 0;  ///< corners of an outline, counter-clockwise
  Segment sheet;
  Point centre;  ///< of the disc, or of the circle around it all
  double radius = 0;
  double bottom = 0, top = 0;
  double base = 0;
  bool operator==(const Prism&) const = default;
};

/// One reflecting face: seen from the left of the way from a to b.
struct Mirror {
  Segment face;
  double bottom = 0, top = 0;
  int tag = 0;
  bool moving = false;  ///< on its way at this instant
  bool operator==(const Mirror&) const = default;
};

/// A gap of a wall on the floor plan.
struct Gap {
  std::vector<Point> course;  ///< along the middle of the wall
  double sill = 0, head = 0;
  int tag = 0;
  bool operator==(const Gap&) const = default;
};

/// How a leaf stands at an instant.
struct Leaf {
  Segment panel;
  double bottom = 0, top = 0;
  bool moving = false;  ///< hides nothing meanwhile
  bool hides = false;
  bool inWay = false;  ///< a panel one would walk into: a standing door, or a shut opening that bars the way
  bool pane = false;   ///< glass that stands still: shows what is behind it, and returns some of what is before it
  int tag = 0;
};

/// A piece on its way from one place to another: in everybody's way, and hiding nothing.
struct MovingPiece {
  std::vector<Point> points;  ///< one, the centre, for a disc
  bool closed = false;
  double radius = 0;  ///< of a disc
  double bottom = 0, top = 0;
  int tag = 0;
};

/// How far a piece is moved at most: any place of it, and its turn.
struct Drift {
  double metres = 0, degrees = 0;
  /// The larger of each.
  void take(const Drift& other);
};

class Scene;

/// The set at one instant: everything that stands, and the leaves as they hang. Refers to its Scene, which must outlive
/// it.
class SceneAt {
 public:
  const Scene& scene() const { return *scene_; }
  std::size_t size() const;
  /// Fixed prisms first; hiding leaves, pieces that stand at one of their places and guests after them.
  const Prism& prism(std::size_t i) const;
  /// Those that are not fixed.
  std::span<const Prism> passing() const { return passing_; }
  std::span<const Point> corners(const Prism& prism) const;
  const std::vector<Leaf>& leaves() const { return leaves_; }
  /// Pieces that move during the take, glass too, while they stand; and those on their way.
  const std::vector<Prism>& parked() const { return parked_; }
  const std::vector<MovingPiece>& moving() const { return moving_; }
  const std::vector<Mirror>& mirrors() const;
  /// Somebody who hides like a thing of the set: a disc.
  void add(const Prism& guest) { passing_.push_back(guest); }
  /// Something that shows like a mirror of the set, after all of them; it hides nothing.
  void add(const Mirror& mirror);

 private:
  friend class Scene;
  const Scene* scene_ = nullptr;
  std::vector<Leaf> leaves_;
  std::vector<Prism> passing_, parked_;
  std::vector<MovingPiece> moving_;
  std::vector<Mirror> mirrors_;  ///< when some of them move: all that show
};

class Scene {
 public:
  /// Builds once what every question asks for.
  ///
  /// Requires  every opening's wall in range and as many shares, or shifts, as keys; walls and lines of two places at
  ///           least, outlines of three.
  /// Ensures   (1) joints within a wall are mitred, its ends and the jambs of openings square; walls do not join by
  ///           themselves; (2) glass is not among the prisms; (3) a mirror hides like a solid, and each of its faces
  ///           that shows is among `mirrors`; a mirror disc hides and shows nothing.
  explicit Scene(const SceneInput& input);
  Scene() : Scene(SceneInput{}) {}

  /// The set at t. A leaf whose share is changing hides nothing from the start to the end of its key; a cut acts at its
  /// instant. A shut leaf hangs on the face it opens towards and turns about that face's edge at its hinge; a slide
  /// runs along the face past its hinge end, a lift goes up. Without motion a leaf hangs in the middle of the wall and
  /// hides at share 0 only; a curtain hides below share 1. Where a leaf fills its gap it hides together with the wall
  /// below and above, in one piece from foot to crown. A piece hides where it stands, and nothing from the
  /// start to the end of a key that moves it; a mirror shows on its way, too.
  SceneAt at(double t) const;

  /// Whether a mirror is moved during the take.
  bool mirrorsMove() const { return mirrorsMove_; }

  /// How far the pieces of that tag are at `until` from where they are at `from`, or at any instant between where no
  /// change lies between.
  Drift driftOf(int tag, double from, double until) const;

  /// Every instant at which a leaf or a piece starts to hide or ceases, in order.
  std::vector<double> changes() const;

  /// Everything that hides all along: no leaves, and no pieces that move.
  const std::vector<Prism>& prisms() const { return prisms_; }
  const std::vector<Mirror>& mirrors() const { return mirrors_; }
  const std::vector<Gap>& gaps() const { return gaps_; }
  /// Glass that stands in the way: panes hide nobody, but nobody walks through them.
  const std::vector<Prism>& glass() const { return glass_; }
  std::span<const Point> corners(const Prism& prism) const { return {corners_.data() + prism.first, prism.count}; }
  /// Around everything that stands. Empty scenes have an extent of one point, the origin.
  geometry::Extent extent() const { return extent_; }
  /// The same set at every instant, tags included.
  bool operator==(const Scene&) const = default;

 private:
  void addWall(const SceneInput& input, std::size_t index);
  void addOpening(const SceneInput& input, const OpeningCut& cut);
  void addBand(const geometry::Course& course, double thickness, Span part, Prism like);
  /// A piece where it stands all along, or at one of its places.
  struct Standing {
    std::vector<Prism> prisms;
    std::vector<Mirror> mirrors;
    bool operator==(const Standing&) const = default;
  };
  struct Mover {
    PieceIn piece;
    std::vector<Standing> places;  ///< one a key
    bool operator==(const Mover&) const = default;
  };
  void addPiece(const PieceIn& piece);
  Standing standing(const PieceIn& piece, const PieceShape& shape);
  void addOutline(std::span<const Point> ring, Prism like, std::vector<Prism>& into);
  static void addMirrors(const PieceIn& piece, const PieceShape& shape, std::vector<Mirror>& into);
  void placeMovers(SceneAt& now, double t) const;

  struct Hanging {
    OpeningCut cut;
    Segment shut;                          ///< from the hinge to the free end
    double foot = 0, base = 0, crown = 0;  ///< of the shut leaf with the wall below and above it: see Prism
    bool operator==(const Hanging&) const = default;
  };
  static Leaf leafAt(const Hanging& hanging, double t);
  static bool fills(const Hanging& hanging, const Leaf& leaf);

  std::vector<Prism> prisms_, glass_;
  std::vector<Point> corners_;
  std::vector<Mirror> mirrors_;
  std::vector<Gap> gaps_;
  std::vector<Hanging> hangings_;
  std::vector<Mover> movers_;
  bool mirrorsMove_ = false;
  geometry::Extent extent_;
};

}  // namespace wend::sight
