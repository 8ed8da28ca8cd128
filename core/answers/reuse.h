/// What an edit left alone: what two takes have alike, by the values of their plans, so that what was found of the one
/// holds for the other. Entities that an edit shares compare by their address.
#pragma once

#include "core/answers/take.h"
#include "core/answers/watched.h"
#include "core/snags/evidence.h"

namespace wend::answers {

/// All that decides where the lens is, what it shows and what hides there: the way of the camera, its aims, frame and
/// zoom, the set with floors and areas, performers and props, clock and beats, shelters and the rules of sight.
bool sameView(const Take& a, const Take& b);

/// That, and all else a sample is made of but the crew: focus, iris, light.
bool sameShot(const Take& a, const Take& b);

/// The sample at the instant of `like`, which is one of `before`. Only those of the crew are asked about who are not as
/// they were.
///
/// Requires  sameShot of both.
/// Ensures   (1) equal to `sampleAt`.
snags::Instant sampleLike(const Take& now, const Take& before, const snags::Instant& like);

/// Finds in the sights of an earlier take those that hold for this one.
///
/// Requires  sameView of both; what is handed over outlives it.
class KnownSights {
 public:
  KnownSights(const Take& now, const Take& before, const std::vector<snags::SightOf>& sights);
  /// Null where it has to be found.
  const snags::SightOf* of(const Watched& watched) const;

 private:
  const snags::SightOf* find(const std::string& id, snags::BodyKind kind) const;
  const plan::Plan &now_, &before_;
  const std::vector<snags::SightOf>& sights_;
  bool hidersAlike_;
};

}  // namespace wend::answers
