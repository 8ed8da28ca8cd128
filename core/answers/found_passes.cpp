#include "core/answers/found_passes.h"

#include <algorithm>
#include <map>

#include "core/answers/set_scene.h"
#include "core/answers/taken_then.h"
#include "core/base/text.h"
#include "core/snags/stretch.h"

namespace wend::answers {

namespace {

/// Seconds between two looks at what moves.
constexpr double kLook = 0.1;

struct MovedPast {
  double time = 0, metres = 0, speed = 0;
};

/// The most metres that a point of the piece goes from one look to the next.
double movedBetween(const crew::Obstacle& before, const crew::Obstacle& after) {
  double most = 0;
  for (std::size_t i = 0; i < std::min(before.points.size(), after.points.size()); ++i)
    most = std::max(most, geometry::distance(before.points[i], after.points[i]));
  return most;
}

class MoversPast {
 public:
  MoversPast(const Take& take, FoundRoutes& routes) : take_(take), routes_(routes), past_(routes.people.size()) {}

  void look() {
    auto before = piecesAt(0);
    for (double t = kLook; t <= take_.length(); t += kLook) {
      auto now = piecesAt(t);
      for (const auto& piece : now) {
        const auto was = std::find_if(before.begin(), before.end(), [&](const auto& o) { return o.id == piece.id; });
        const double metres = was == before.end() ? 0 : movedBetween(*was, piece);
        if (metres / kLook > crew::kStill) meet(piece, t, metres / kLook);
      }
      before = std::move(now);
    }
  }

  void tell() const {
    for (std::size_t k = 0; k < past_.size(); ++k)
      for (const auto& [id, past] : past_[k])
        routes_.people[k].notes.push_back("caution: " + snags::nameOf(take_.plan(), id) + " is moved past, " +
                                          base::fixed(past.metres, 2) + " m away at " + base::fixed(past.time, 1) +
                                          " s and " + base::fixed(past.speed, 1) + " m/s: mind local rules");
  }

 private:
  std::vector<crew::Obstacle> piecesAt(double t) const {
    auto pieces = crew::leavesOf(take_.scene().at(t), namesOf(take_.plan()));
    std::erase_if(pieces, [&](const auto& piece) { return !take_.plan().set.pieces.find(piece.id); });
    return pieces;
  }

  void meet(const crew::Obstacle& piece, double t, double speed) {
    for (std::size_t k = 0; k < past_.size(); ++k) {
      const FoundRoute& route = routes_.people[k];
      if (!route.found) continue;
      const plan::Crew& crew = *take_.plan().crew.find(route.id);
      const Point at = route.at(t);
      const double floor = take_.people().floorAt(at);
      const auto near = crew::clearanceAt({route.id, at, crew.radius, floor, floor + crew.height}, 0,
                                          std::span<const crew::Obstacle>(&piece, 1), kMindful);
      for (const auto& gap : {near.left, near.right}) {
        if (!gap || gap->metres > kMindful) continue;
        const auto [entry, fresh] = past_[k].try_emplace(piece.id, MovedPast{t, gap->metres, speed});
        if (!fresh && gap->metres < entry->second.metres) entry->second = {t, gap->metres, speed};
      }
    }
  }

  const Take& take_;
  FoundRoutes& routes_;
  std::vector<std::map<std::string, MovedPast>> past_;  ///< of each person, by piece
};

}  // namespace

void tellMovers(const Take& take, FoundRoutes& routes) {
  if (!anyPieceMoves(take.plan())) return;
  MoversPast past(take, routes);
  past.look();
  past.tell();
}

void tellNearest(std::span<const snags::ClearanceAt> clearances, FoundRoutes& routes) {
  for (auto& route : routes.people) {
    if (!route.found) continue;
    for (const auto& at : clearances)
      if (at.body == route.id && (!route.nearest || at.metres < route.nearest->metres))
        route.nearest = NearestPass{at.time, at.obstacle, at.metres};
  }
}

}  // namespace wend::answers
