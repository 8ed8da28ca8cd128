#include "core/file/document_index.h"

#include <algorithm>
#include <array>

#include "core/base/text.h"
#include "core/plan/plan.h"

namespace wend::file {

namespace {

struct TableOf {
  std::string_view path;  ///< keys from the root, with "/" between
  IdKind kind;
  std::string_view word;
};

constexpr std::array<TableOf, 16> kTables{{{"beats", IdKind::beat, "beat"},
                                           {"set/rooms", IdKind::room, "room"},
                                           {"set/walls", IdKind::wall, "wall"},
                                           {"set/openings", IdKind::opening, "opening"},
                                           {"set/pieces", IdKind::piece, "piece"},
                                           {"set/areas", IdKind::area, "area"},
                                           {"props", IdKind::prop, "prop"},
                                           {"performers", IdKind::performer, "performer"},
                                           {"camera/marks", IdKind::mark, "mark"},
                                           {"fixtures", IdKind::fixture, "fixture"},
                                           {"crew", IdKind::crew, "crew member"},
                                           {"shelters", IdKind::shelter, "shelter"},
                                           {"gear", IdKind::gear, "piece of gear"},
                                           {"cables", IdKind::cable, "cable"},
                                           {"poles", IdKind::pole, "pole"},
                                           {"links", IdKind::link, "link"}}};

std::optional<JsonValue> valueAt(JsonValue root, std::string_view path) {
  std::optional<JsonValue> value = root;
  for (const auto& key : base::split(path, '/')) {
    if (!value->isObject()) return std::nullopt;
    value = value->member(key);
    if (!value) return std::nullopt;
  }
  return value;
}

std::optional<double> numberOf(std::optional<JsonValue> value) {
  return value && value->kind() == JsonKind::number ? base::readNumber(value->raw()) : std::nullopt;
}

std::optional<plan::Point> pointOf(std::optional<JsonValue> value) {
  if (!value || !value->isList() || value->count() != 2) return std::nullopt;
  const auto x = numberOf(value->first());
  const auto y = numberOf(value->first()->next());
  return x && y ? std::optional(plan::Point{*x, *y}) : std::nullopt;
}

}  // namespace

DocumentIndex::DocumentIndex(JsonValue root, ProblemList& problems) {
  for (const auto& table : kTables) readTable(root, table.path, table.kind, problems);
  length_ = numberOf(valueAt(root, "clock/length")).value_or(plan::Clock{}.length);
}

void DocumentIndex::readTable(JsonValue root, std::string_view path, IdKind kind, ProblemList& problems) {
  const auto table = valueAt(root, path);
  if (!table || !table->isList()) return;
  for (auto entity = table->first(); entity; entity = entity->next()) {
    if (!entity->isObject()) continue;
    readEntity(*entity, kind, problems);
    if (kind == IdKind::crew) readTable(*entity, "marks", IdKind::mark, problems);
  }
}

void DocumentIndex::readEntity(JsonValue entity, IdKind kind, ProblemList& problems) {
  const auto value = entity.member("id");
  if (!value || value->kind() != JsonKind::text) {
    sound_ = sound_ && kind == IdKind::mark;
    return;
  }
  const std::string id(value->text());
  if (!base::isId(id) || (kind == IdKind::beat && id == plan::kEndBeat)) {
    sound_ = false;
    problems.addMade([&] {
      return base::Problem{"bad-id", value->pointer(), value->shown(),
                           "1 to 64 letters and digits, and not \"end\" for a beat", "choose another id"};
    });
    return;
  }
  if (!ids_.emplace(id, kind).second) {
    sound_ = false;
    problems.addMade([&] {
      return base::Problem{"duplicate-id", value->pointer(), value->shown(), "an id that nothing else in the plan has",
                           "choose another id"};
    });
    return;
  }
  if (kind == IdKind::beat) beats_[id] = numberOf(entity.member("time")).value_or(0);
  if (kind != IdKind::shelter) return;
  if (const auto pos = pointOf(entity.member("pos"))) shelters_[id] = *pos;
}

bool DocumentIndex::has(std::string_view id, IdKind kind) const {
  const auto found = ids_.find(std::string(id));
  return found != ids_.end() && found->second == kind;
}

std::string_view DocumentIndex::word(IdKind kind) {
  for (const auto& table : kTables)
    if (table.kind == kind) return table.word;
  return {};
}

std::optional<std::string> DocumentIndex::nearest(std::string_view id, const std::vector<IdKind>& kinds) const {
  constexpr std::size_t kMostCompared = 2000;
  if (ids_.size() > kMostCompared) return std::nullopt;
  std::vector<std::string> known;
  for (const auto& [text, kind] : ids_)
    if (std::find(kinds.begin(), kinds.end(), kind) != kinds.end()) known.push_back(text);
  std::sort(known.begin(), known.end());
  return base::nearestWord(id, known);
}

std::optional<double> DocumentIndex::secondsOf(const plan::Moment& moment) const {
  if (moment.beat.empty()) return moment.seconds;
  if (moment.beat == plan::kEndBeat) return length_ + moment.seconds;
  const auto beat = beats_.find(moment.beat);
  return beat == beats_.end() ? std::nullopt : std::optional(beat->second + moment.seconds);
}

std::optional<plan::Point> DocumentIndex::shelterAt(const std::string& id) const {
  const auto shelter = shelters_.find(id);
  return shelter == shelters_.end() ? std::nullopt : std::optional(shelter->second);
}

}  // namespace wend::file
