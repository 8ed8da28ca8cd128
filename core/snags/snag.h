/// A snag: something the plan gets wrong or nearly wrong. A value, found by a rule, kept by a key that names things and
/// never coordinates, so that what somebody accepted stays accepted while the thing is there.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/geometry/point.h"

namespace wend::snags {

/// 1 stops the take, 2 risks it, 3 is worth knowing.
enum class Severity { stops = 1, risks = 2, note = 3 };

/// What a rule reports.
struct Finding {
  std::string who;                     ///< id of a person, "camera", "focus"; part of the key
  std::string place;                   ///< id of a piece, opening, area or mirror, or empty; part of the key
  double from = 0, until = 0;          ///< seconds from the take's start
  std::optional<geometry::Point> pos;  ///< on the plan, metres
  Severity severity = Severity::note;
  std::string text;  ///< what, with its numbers and units
  std::string mend;  ///< what would mend it
};

struct AcceptedBy {
  std::string by, note;
  bool operator==(const AcceptedBy&) const = default;
};

struct Snag {
  std::string key;   ///< rule/who/place/beat/ordinal
  std::string rule;  ///< "crew-seen"
  std::string who;
  std::string beat;                    ///< id of the beat running at `from`, empty before the first
  double from = 0, until = 0;          ///< seconds from the take's start
  std::optional<geometry::Point> pos;  ///< on the plan, metres
  Severity severity = Severity::note;
  std::string text;
  std::string mend;
  std::optional<AcceptedBy> accepted;
};

using Snags = std::vector<Snag>;

/// What an edit did: snags whose key is new, and snags whose key is gone.
struct SnagChange {
  Snags appeared, cleared;
};
SnagChange changeOf(const Snags& before, const Snags& after);

}  // namespace wend::snags
