/// What an edit left alone: what two takes have alike, by the values of their plans, so that what was found of the one
/// holds for the other. Entities that an edit shares compare by their address.
#pragma once

#include "core/answers/take.h"
#include "core/answers/watched.h"
#include "core/snags/evidence.h"

namespace wend::answers {

struct Answers;

/// All that decides where the lens is, what it shows and what hides there: the way of the camera, its aims, frame and
/// zoom, the set with floors and areas, performers and props, clock and beats, shelters and the rules of sight.
bool sameView(const Take& a, const Take& b);

/// That, and all else a sample is made of but the crew: focus, iris, light.
bool sameShot(const Take& a, const Take& b);

/// All that decides what glass turns into a mirror and whom it shows.
bool samePanes(const Take& a, const Take& b);

/// All that a sample is made of but the crew and what moves: where the camera and the performers go, where the lens
/// looks, how it is zoomed, and whom it is focused on. What moves is alike at many instants all the same.
bool sameStage(const Take& a, const Take& b);

/// An earlier take with its evidence, of which something holds for this one. Alike in both are at least the set with
/// floors and areas, performers but where they go, props, those carried along, lens, clock and beats, shelters and the
/// rules of sight.
struct Before {
  const Take& take;
  const snags::Evidence& evidence;
  bool view, shot, stage;  ///< what of the above holds of both takes
};
/// Nothing where nothing holds.
std::optional<Before> beforeOf(const Take& now, const Answers* earlier);

/// Whether camera, aims and zoom put the eye where the earlier take has it at t.
bool sameEyeAt(const Take& now, const Take& before, double t, double margin);
/// Whether the camera and everybody is where another sample, of the same performers, has them, and as tall.
bool sameBodies(const snags::Instant& now, const snags::Instant& before);

/// The sample at the instant of `like`, which is one of `before`. Only those of the crew are asked about who are not as
/// they were.
///
/// Requires  sameShot of both.
/// Ensures   (1) equal to `sampleAt`.
snags::Instant sampleLike(const Take& now, const Take& before, const snags::Instant& like);
/// The same where only the stage is alike: what costs to know of performers is taken over where camera, lens and all
/// performers are as they were at that instant.
///
/// Requires  sameStage of both.
/// Ensures   (1) equal to `sampleAt`.
snags::Instant sampleNear(const Take& now, const Take& before, const snags::Instant& like);

/// Finds in the sights of an earlier take what holds for this one.
///
/// Requires  sameStage or sameView of both; what is handed over outlives it.
class KnownSights {
 public:
  KnownSights(const Take& now, const Take& before, const std::vector<snags::SightOf>& sights);
  /// Null where it has to be found.
  const snags::SightOf* of(const Watched& watched) const;
  /// What was seen of the same body by an eye that goes another way now. Null where nothing is known.
  const snags::SightOf* bySteps(const Watched& watched) const;
  /// The steps of a look at this take in which the eye and the performers who hide are as they were, looked at as
  /// `eyeStep` does: at the ends and the quarters.
  std::vector<char> alike(const sight::TakeLook& look) const;

 private:
  const snags::SightOf* find(const Watched& watched) const;
  const Take &now_, &before_;
  const std::vector<snags::SightOf>& sights_;
  bool viewAlike_, hidersAlike_;
};

}  // namespace wend::answers
