/// What hides one move of iris, density or zoom, what of it stays seen, and where in the take the same change would
/// hide.
///
/// Source    core/pulls/cover.h and core/pulls/slot.h: common practice, no source.
#pragma once

#include <functional>

#include "core/answers/answers.h"
#include "core/pulls/cover.h"
#include "core/pulls/ramp_spans.h"
#include "core/pulls/slot.h"

namespace wend::answers {

/// Cover that lasts over less of a change is not named for it, seconds. Our choice.
inline constexpr double kShortestCover = 0.5;

/// How far the ring of an iris really goes over what the T-numbers of its move say: engraved ones are rounded. 1 for a
/// planned move, whose numbers nobody read off a ring.
double ringShare(const snags::Move& move);

/// Fills `cover`, `coveredBy`, `exposed`, `better` and `betterCover` of a move of iris, density or zoom.
///
/// Requires  the peak rate of the move filled. A cut gets no `exposed`.
/// Ensures   (1) `coveredBy` holds at most one span of each thing that covers, what lets the fastest change pass first:
///               those that let its peak rate pass, or the best where none does; the camera's own travel only where
///               nothing else does, and nothing that shares less than kShortestCover with it, or half of a shorter move;
///               (2) `exposed` looks at frames inside the move, its ends left out; (3) `better` only where something
///               stays seen and a zoom does not hide in the picture's flow either, between the moves before and after
///               it of its axis (`free`), with the same values; for an iris only where it is at no instant further
///               outside its tolerance than it is as set, and for iris and density only where no face in frame gets
///               further off than it is, or than the threshold "exposure" lets pass
/// Error     looked at are the longest spans of each cover, and for an iris ramps that start and end a quarter of a
///           second apart (pulls/ramp_spans.h): what lies between those may be missed
void coverMove(const Take& take, const std::vector<Instant>& samples, const std::vector<pulls::CoverSpan>& covers,
               geometry::Span free, snags::Move& move);

/// How fast a move is, frame by frame, its ends left out; of one shorter than a frame in its middle.
std::vector<pulls::RateAt> ratesOf(double frameRate, const snags::Move& move,
                                   const std::function<double(double)>& rateAt);

/// Where the change of a move would hide in `free`, near to where it is.
pulls::SlotQuestion slotQuestionOf(const snags::Move& move, geometry::Span free);

/// Spans that are tried for a ramp that may start and end there, of half a second to six or to `longest`.
std::vector<pulls::RampSpan> rampSpansFor(const Take& take, const std::vector<pulls::CoverSpan>& covers,
                                          geometry::Span starts, geometry::Span ends, double longest);

/// Whether no face in frame gets further off than it is, or than the threshold "exposure" lets pass, once the picture
/// is `lighter` by so many stops at a time.
bool facesStand(const std::vector<Instant>& samples, const plan::Plan& plan,
                const std::function<double(double)>& lighter);

/// What covers, in words: "D2", "pan 51°/s", "ILSE crosses".
std::string wordsOf(const pulls::CoverSpan& cover);

}  // namespace wend::answers
