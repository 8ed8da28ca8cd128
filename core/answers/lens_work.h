/// Whose hands turn the lens, and how much at once.
///
/// Source    common practice, no source: one person works one exact axis and one simple move to a preset at a time.
///           Focus is exact, and so is any axis that turns briskly; what counts as brisk is below.
#pragma once

#include "core/answers/answers.h"

namespace wend::answers {

/// From these rates a second on an iris or zoom wants a hand and an eye of its own. Common practice, no source, for
/// degrees of barrel; our choice for the others.
inline constexpr double kBriskDegrees = 60, kBriskStops = 0.5, kBriskPercent = 10;

/// Who has that axis at t: as handed over, else the one whose role says so. Where nothing says otherwise a
/// variable density belongs to whoever has the iris, iris and zoom to whoever has the focus. Empty: nobody is named.
std::string holderOf(const plan::Plan& plan, snags::Move::Axis axis, double t);

/// The work of everybody who holds an axis, each counting the moves that begin in their hands, in the order of their
/// first move; fills `hands` of the moves with the most that are needed while they run.
/// A cut is work of no length and needs one hand.
/// Requires  moves in order
std::vector<snags::LensWork> lensWork(const plan::Plan& plan, std::vector<snags::Move>& moves);

}  // namespace wend::answers
