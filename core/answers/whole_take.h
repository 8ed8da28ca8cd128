/// What takes the whole take to know, a function a subject. The long ones poll `cancel` and answer nothing once it
/// fired.
#pragma once

#include <optional>
#include <vector>

#include "core/answers/answers.h"
#include "core/answers/known_instants.h"
#include "core/answers/reuse.h"
#include "core/geometry/spans.h"
#include "core/pulls/cover.h"

namespace wend::answers {

/// How far the camera's own cable stands up from the floor, metres; common practice, no source.
inline constexpr double kTrailingHeight = 0.02;

/// Seen and clear windows of crew, gear and those carried; a sample a frame, edges to a millisecond. The lens itself
/// (what of the rig a mirror shows) comes as kind `lens`, id "camera". What is known before is taken as it is.
std::optional<std::vector<snags::SightOf>> sightOfAll(const Take& take, const base::Cancel& cancel,
                                                      const KnownSights* known = nullptr);

/// The same for one body that stands.
snags::SightOf sightOfSpot(const Take& take, Point pos, double height, double radius, const base::Cancel& cancel = {});

/// Spans in which the lens sees ground of another room, with the openings passed, up to 40 m away: steps of a fifth of
/// a second and what `core/sight/through.h` finds between them. Steps of the take before in which the eye goes the same
/// way are taken over, and all `steps` are handed out for the next edit.
std::optional<std::vector<snags::ThroughSight>> throughSights(const Take& take, const base::Cancel& cancel,
                                                              const Before* before = nullptr,
                                                              std::vector<sight::ThroughStep>* steps = nullptr);

/// Taped marks whose centre is in the frame, unhidden, within 8 m.
std::vector<snags::MarkSeen> marksSeen(const Take& take);

/// Nearest gap on either side of the rig, everyone carried and every walking crew member, a sample a frame. People in
/// one shelter are not held against each other, on their way into it and out of it neither. Samples at which everybody
/// is as in the take before are taken over.
std::optional<std::vector<snags::ClearanceAt>> clearancesOf(const Take& take, const std::vector<Instant>& samples,
                                                            const base::Cancel& cancel, const Before* before = nullptr);

/// Edges of the ground and cables on it that the camera and the crew step over, and the cables that performers do. The
/// camera's own, plan::kCameraEnd, lies under the others from the end of each of its legs on.
std::vector<snags::Crossing> crossingsOf(const Take& take);

/// Camera or performers in the way of a leaf that is not open: their centre passes one that bars the way.
std::vector<snags::LeafMet> leavesMet(const Take& take, const std::vector<Instant>& samples);

/// Every radio link at every sample, as `radio.h` has it.
std::vector<snags::LinkOver> linksOver(const Take& take, const std::vector<Instant>& samples);

/// Every line of speech with the pole the plan names, or else the one that leaves least undone.
std::vector<snags::BoomLine> boomLines(const Take& take, const std::vector<Instant>& samples);

/// The same line at another instant. Nothing while the speaker is not there.
std::optional<snags::BoomAt> boomNow(const Take& take, const snags::BoomLine& line, const Instant& instant);

/// Who takes a lamp away from a face in frame: the camera, the crew, the poles of `boom` and other performers, ten
/// times a second. Lamps that give less than the threshold "shadow" of the exposure do not count, nor does light by
/// readings alone.
std::vector<snags::ShadowOn> shadowsOn(const Take& take, const std::vector<Instant>& samples,
                                       const std::vector<snags::BoomLine>& boom);

/// The same lamps kept off walls, pieces and ground in frame by the camera, the crew and the poles of `boom`, five
/// times a second; what gives less than the threshold "surface-shadow" of the exposure there does not count. Exact at
/// the spots looked at: whether the line from the lamp is cut, reaches so far and shows. Which spots those
///           are, and what is missed between them, `shadow_fall.h` says.
/// Stops holding for how bright a surface is: a spot is taken as a face there that looks at the lens, whatever the
///           slant of what it lies on, and a lamp as a point (`core/light/shadow.h`).
std::vector<snags::SurfaceShadow> surfaceShadows(const Take& take, const std::vector<Instant>& samples,
                                                 const std::vector<snags::BoomLine>& boom,
                                                 ByInstant<FallenAt>* known = nullptr);

/// The sun in the frame or within the threshold "sun-in-lens" of it, reaching the lens, ten times a second.
std::vector<snags::SunInLens> sunInLens(const Take& take, const std::vector<Instant>& samples);

/// Shadows of the camera, the crew and the poles of `boom` by the sun, on faces in frame and on what else is in frame,
/// ten times a second.
/// Error     a shadow on walls, pieces and ground is looked for by where a few points of the body's axis throw theirs,
///           and the ground by the floor under the body: one whose edge alone reaches in is missed.
std::vector<snags::SunShadow> sunShadows(const Take& take, const std::vector<Instant>& samples,
                                         const std::vector<snags::BoomLine>& boom);

/// Glass in frame that acts as a mirror, pane by pane, and whom of crew, gear and rig it shows, ten times a second.
/// Whoever is seen directly or in a mirror of the set at an instant is not told of a pane at that instant.
/// Nothing when cancelled.
/// Cost      see turnedGlass; who shows is asked only while glass has turned.
std::optional<std::vector<snags::PaneMirror>> paneMirrors(const Take& take, const base::Cancel& cancel,
                                                          ByInstant<GlassAt>* known = nullptr);
/// Those in which somebody who stands at a place all take would show; `height` and `radius` in metres.
std::vector<snags::PaneMirror> panesShowing(const Take& take, Point pos, double height, double radius);

/// Glossy pieces in frame with whom of crew, gear and rig a mirror would show that stood no more than `withinDegrees`
/// turned against them, five times a second. Whoever is hidden from the piece shows in none.
/// Error     a face is asked at its middle height in places half a metre apart, a body at half its height; a disc as
///           one of twelve sides; what is curved or dull gives back more widely than is asked, or nothing
/// Cost      in the glossy faces in frame, a line of sight to each and from each to every body
std::vector<snags::Glint> glintsOf(const Take& take, double withinDegrees);

/// Leaves that shut where a cable lies, each the first time; curtains hurt none. The camera's own, which goes by
/// plan::kCameraEnd, lies from its anchor along the way that the camera has gone, for as long as nobody takes it in.
std::vector<snags::CableShutIn> cablesShutIn(const Take& take);

/// When the camera has gone further than its cable is long: from the anchor to its first mark, then along its way.
/// Stops holding where somebody takes the slack back in.
std::optional<snags::CableOut> cameraCableOut(const Take& take);

/// What stands in the areas used as exit lanes: shelters, gear, pieces lower than a head where they stand or on their
/// way at each sample, crew who stand there or walk to and fro.
std::vector<snags::LaneTaken> lanesTaken(const Take& take, const std::vector<Instant>& samples);

/// Spans in which the lens sees a person in an area used as outside, at some fifty places of it, four times
/// a second, up to 40 m away. Nothing when cancelled.
std::optional<std::vector<snags::OutsideSeen>> outsideSeen(const Take& take, const base::Cancel& cancel);

/// The moves of focus, iris, zoom and density, in order of time, with what of `covers` hides them. `hands` is
/// filled by lensWork.
std::vector<snags::Move> movesOf(const Take& take, const std::vector<Instant>& samples,
                                 const std::vector<pulls::CoverSpan>& covers);

}  // namespace wend::answers
