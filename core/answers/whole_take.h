/// What takes the whole take to know, a function a subject. The long ones poll `cancel` and answer nothing once it
/// fired.
#pragma once

#include <optional>
#include <vector>

#include "core/answers/answers.h"
#include "core/geometry/spans.h"

namespace wend::answers {

/// Seen and clear windows of crew, gear and those carried; a sample a frame, edges to a millisecond. The lens itself
/// (what of the rig a mirror shows) comes as kind `lens`, id "camera".
std::optional<std::vector<snags::SightOf>> sightOfAll(const Take& take, const base::Cancel& cancel);

/// The same for one body that stands.
snags::SightOf sightOfSpot(const Take& take, Point pos, double height, double radius, const base::Cancel& cancel = {});

/// Spans in which the lens sees ground of another room, with the openings passed; sampled five times a second,
/// a degree apart, up to 40 m away.
std::optional<std::vector<snags::ThroughSight>> throughSights(const Take& take, const base::Cancel& cancel);

/// Taped marks whose centre is in the frame, unhidden, within 8 m.
std::vector<snags::MarkSeen> marksSeen(const Take& take, const std::vector<Instant>& samples);

/// Nearest gap on either side of the rig, everyone carried and every walking crew member, a sample a frame.
std::optional<std::vector<snags::ClearanceAt>> clearancesOf(const Take& take, const std::vector<Instant>& samples,
                                                            const base::Cancel& cancel);

/// Edges of the ground the camera and the crew step over.
std::vector<snags::Crossing> crossingsOf(const Take& take);

/// The camera in the way of a leaf that is not open yet: its centre passes an opening whose leaf bars the way.
std::vector<snags::LeafMet> leavesMet(const Take& take, const std::vector<Instant>& samples);

/// Every radio link at every sample. Aerials: the camera's at its sensor, a piece of gear's at its top, a person's at
/// two thirds of their height, which is a belt or a chest. What walls and leaves take where the plan does not say: 10
/// dB a wall, 6 dB a solid or glass leaf, nothing a curtain; common practice, no source.
std::vector<snags::LinkOver> linksOver(const Take& take, const std::vector<Instant>& samples);

/// Every line of speech with the pole the plan names, or else the one that leaves least undone.
std::vector<snags::BoomLine> boomLines(const Take& take, const std::vector<Instant>& samples);

/// The moves of focus, iris and zoom, in order of time.
std::vector<snags::Move> movesOf(const Take& take);

}  // namespace wend::answers
