/// The focal length along the take: keys by focal length as they are set, keys by shot size as the fewest moves that
/// keep the size within the plan's slack.
///
/// Units     millimetres; the slack is `zoom.slackShare` of the focal length on either side.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/answers/people.h"
#include "core/answers/subjects.h"
#include "core/optics/frame.h"
#include "core/optics/shot_size.h"
#include "core/pulls/fewest_moves.h"
#include "core/snags/evidence.h"

namespace wend::answers {

/// What a zoom planned for a shot size keeps to, in logarithms to base 2 of the focal length: the lens' limit, and what
/// hides in a frame that stands still.
pulls::MoveRules zoomRules(const plan::Plan& plan);

class Take;
/// The slack about what the zoom's keys ask for, within the lens, in logarithms to base 2 of mm; empty without keys.
/// Frames, and where a key starts or is done. Requires a lens.
pulls::Tube zoomTube(const Take& take);

class ZoomTrack {
 public:
  /// `people` and `subjects` must outlive it and stay where they are.
  static ZoomTrack of(const plan::PlanPtr& plan, const People& people, const Subjects& subjects);

  /// Of moves planned for sizes: at once, as everything else here takes them, or as softly as their slack allows.
  enum class Ends { straight, eased };

  /// mm; the lens' shortest without keys. Nothing without a lens.
  std::optional<double> focalAt(double t, Ends ends = Ends::straight) const;
  /// mm that the keys ask for, before what is planned for their sizes makes it fewer moves. Requires a lens and a key.
  double askedAt(double t) const;
  /// Where a size wants a focal length the lens does not have, key by key.
  std::vector<snags::ZoomClipped> clipped() const;
  /// Of the delivered frame. Nothing without a lens.
  std::optional<optics::HalfTangents> halfTangentsAt(double t) const;
  optics::FrameSize frame() const { return frame_; }

  /// Where a key without a change time jumps, mm, as moves of no length at an infinite rate; in order of time.
  std::vector<pulls::Move> cuts() const;
  /// The moves planned for sizes, mm, while their keys are settled; in order of time.
  std::vector<pulls::Move> plannedMoves() const;
  /// Where the size cannot be kept within the slack at the lens' limit.
  std::vector<pulls::UnmetSpan> unmet() const;

 private:
  optics::FocalForSize wantedOf(std::size_t key, double t) const;
  double focalOf(std::size_t key, double t, Ends ends = Ends::straight) const;
  snags::ZoomClipped clippedIn(std::size_t key, geometry::Span span, double step) const;
  void planSize(std::size_t key, double rate);
  geometry::Span spanOf(std::size_t key) const;

  plan::PlanPtr plan_;
  const People* people_ = nullptr;
  const Subjects* subjects_ = nullptr;
  std::vector<geometry::KeySpan> keys_;
  optics::FrameSize frame_;
  /// One a key: its track in logarithms to base 2, null for keys by focal length.
  std::vector<std::shared_ptr<const pulls::Track>> planned_;
};

}  // namespace wend::answers
