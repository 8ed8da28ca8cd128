/// What the order of keys and marks must keep to. Run on a list that was read without a problem of its own.
#pragma once

#include "core/file/read_context.h"
#include "core/plan/people.h"

namespace wend::file {

/// When a key of an axis is at work.
struct KeyTimes {
  plan::Moment at;
  double over = 0;
};

/// Keys in order, none starting before the one before it is done; the first at 0 where `fromStart`.
/// Times are equal within plan::kSameTime, so that "b4" and 25.0 may meet.
void checkKeys(ReadContext& context, const std::vector<JsonValue>& rows, const std::vector<KeyTimes>& keys,
               bool fromStart);

/// Marks in order of time, each left no sooner than reached, two places never at one instant; arcs end as far from
/// their centre as they begin and turn by what `sweep` says (plan::arcProblem).
void checkMarks(ReadContext& context, const std::vector<JsonValue>& rows, const std::vector<plan::Mark>& marks);

}  // namespace wend::file
