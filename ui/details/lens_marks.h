/// The marks of a lens' rings as rows that are typed, added and taken out: edits of the plan, without widgets.
///
/// Ensures   (1) a refused edit changes nothing and names the row; (2) what a mark holds beyond value, degrees and
///           witness stays with it
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/optics/lens_scale.h"
#include "core/plan/plan.h"

namespace wend::ui {

struct RingMark {
  double value = 0;  ///< metres, infinity among them; T-number; mm
  double degrees = 0;
  std::string witness{};  ///< of focus marks only
};

/// As many as the plan's lens has; none without a lens.
std::vector<RingMark> ringMarks(const plan::Plan& plan, optics::ScaleOf of);

/// Puts a mark in the place of row `row`. Requires a lens and that row.
/// Fails     marks-turn-back with the row counted from 1; out of range as the format has it
base::Result<plan::Plan> markSet(const plan::Plan& plan, optics::ScaleOf of, std::size_t row, const RingMark& mark);
/// Adds a mark where its value belongs among the others. Requires a lens.
base::Result<plan::Plan> markAdded(const plan::Plan& plan, optics::ScaleOf of, const RingMark& mark);
/// Requires a lens and that row.
base::Result<plan::Plan> markRemoved(const plan::Plan& plan, optics::ScaleOf of, std::size_t row);

/// What is wrong with a mark that was refused as turning the ring back: it and the marks beside it, with the rows they
/// have now and their values. `row` is the one it was put into, nothing of a new one. Requires a lens.
std::string turnsBackWords(const plan::Plan& plan, optics::ScaleOf of, const RingMark& mark,
                           std::optional<std::size_t> row);

/// A typed mark: "1.37", "4'6\"", "inf" for distances; "2.8", "T4 1/3" for stops; "35", "35 mm" for focal lengths.
/// Fails     as the readers of core/units; bad-number
base::Result<double> markValueFrom(optics::ScaleOf of, const std::string& typed, plan::LengthUnit unit);
/// As it is typed back: nothing of a value is lost by a look at it in its own unit.
std::string markValueText(optics::ScaleOf of, double value, plan::LengthUnit unit);

}  // namespace wend::ui
