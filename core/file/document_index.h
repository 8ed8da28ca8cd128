/// What has to be known of a whole document before any part of it can be read: which ids there are, when the beats are,
/// and where the shelters stand. A glance only: values that are wrong are reported by whoever reads them in full.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/file/fields.h"
#include "core/file/json_document.h"
#include "core/plan/moment.h"

namespace wend::file {

class DocumentIndex {
 public:
  /// Reports ids that are malformed or taken twice, and a beat with the reserved name.
  DocumentIndex(JsonValue root, ProblemList& problems);

  /// False when some id was wrong, so that lists by id cannot be made.
  bool sound() const { return sound_; }
  bool has(std::string_view id, IdKind kind) const;
  /// "beat", "wall": for problems.
  static std::string_view word(IdKind kind);
  /// The nearest known id of those kinds, where the plan has few enough to compare.
  std::optional<std::string> nearest(std::string_view id, const std::vector<IdKind>& kinds) const;
  /// Seconds from the take's start, when the beat is known.
  std::optional<double> secondsOf(const plan::Moment& moment) const;
  std::optional<plan::Point> shelterAt(const std::string& id) const;

 private:
  void readTable(JsonValue root, std::string_view path, IdKind kind, ProblemList& problems);
  void readEntity(JsonValue entity, IdKind kind, ProblemList& problems);
  std::unordered_map<std::string, IdKind> ids_;
  std::unordered_map<std::string, double> beats_;
  std::unordered_map<std::string, plan::Point> shelters_;
  double length_;
  bool sound_ = true;
};

}  // namespace wend::file
