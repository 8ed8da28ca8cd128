#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/optics/shot_size.h"
#include "core/plan/edits_camera.h"
#include "core/plan/edits_keys.h"
#include "ui/details/choice_words.h"
#include "ui/details/fields.h"

namespace wend::ui {
namespace {

using plan::Axis;
using plan::KeyRef;
using plan::Plan;
using plan::Target;

constexpr Word<plan::Pace> kPaces[] = {{"even", plan::Pace::even}, {"eased", plan::Pace::eased}};

void addTime(const plan::KeyTime& time, const KeyRef& key, Fields& fields) {
  fields.push_back(momentField("at", time.at, plan::KeyStart{key}));
  fields.push_back(secondsField("over", time.over,
                                [key](const Plan& p, double seconds) { return plan::keyOverSet(p, key, seconds); }));
  fields.push_back(choiceOf("pace", time.pace, kPaces,
                            [key](const Plan& p, plan::Pace pace) { return plan::keyPaceSet(p, key, pace); }));
}

/// The word a target is chosen by: an id, or the kind of what has none.
struct TargetWord {
  std::string operator()(const plan::OnPerformer& on) const { return on.performer; }
  std::string operator()(const plan::OnProp& on) const { return on.prop; }
  std::string operator()(const plan::OnPoint&) const { return "a point"; }
  std::string operator()(const plan::OnBearing&) const { return "a bearing"; }
  std::string operator()(const plan::OnTravel&) const { return "travel"; }
  std::string operator()(const plan::OnDistance&) const { return "a distance"; }
  std::string operator()(const plan::OnSplit& on) const {
    std::string words;
    for (const auto& who : on.who) words += (words.empty() ? "" : "+") + who;
    return words;
  }
};

/// What the word means; a point, bearing or distance begins at what was there before, which is `start`.
struct Start {
  geometry::Point3 place;
  double bearing = 0, tilt = 0, distance = 3;
};

Target targetOf(const Plan& plan, const std::string& word, const Start& start) {
  if (plan.performers.find(word)) return plan::OnPerformer{word};
  if (plan.props.find(word)) return plan::OnProp{word};
  if (word == "a bearing") return plan::OnBearing{start.bearing, start.tilt};
  if (word == "travel") return plan::OnTravel{0, 0};
  if (word == "a distance") return plan::OnDistance{start.distance};
  if (word == "a point") return plan::OnPoint{geometry::flat(start.place), start.place.z};
  std::vector<std::string> who;
  for (const auto& id : base::split(word, '+')) who.push_back(id);
  return plan::OnSplit{who};
}

/// Where the lens looks and how far it is set at the key, so that a new kind of target starts there.
Start startOf(const Subject& subject, const plan::KeyTime& time) {
  Start start;
  if (!subject.answers) return start;
  const answers::Take& take = *subject.answers->take;
  const double t = std::clamp(plan::secondsOf(subject.plan, time.at) + time.over, 0.0, take.length());
  const geometry::Pose sensor = take.view().sensorAt(t);
  const double set = take.lens().focusAt(t);
  start.distance = std::isfinite(set) ? std::round(set * 100) / 100 : 3;
  start.bearing = sensor.bearing;
  start.tilt = sensor.tilt;
  start.place = sensor.advanced(start.distance).at;
  return start;
}

using SetTarget = std::function<PlanEdit(const Plan&, Target)>;

void addPoint(const plan::OnPoint& on, const SetTarget& set, Fields& fields) {
  const auto with = [&](const char* label, double value, auto change) {
    fields.push_back(lengthField(label, value, [on, set, change](const Plan& p, double metres) {
      plan::OnPoint moved = on;
      change(moved, metres);
      return set(p, moved);
    }));
  };
  with("point x", on.pos.x, [](plan::OnPoint& p, double v) { p.pos.x = v; });
  with("point y", on.pos.y, [](plan::OnPoint& p, double v) { p.pos.y = v; });
  with("height", on.height, [](plan::OnPoint& p, double v) { p.height = v; });
}

void addTarget(const Subject& subject, const Target& on, const plan::KeyTime& time, std::vector<std::string> more,
               const SetTarget& set, Fields& fields) {
  std::vector<std::string> choices = subjectIds(subject.plan);
  choices.insert(choices.end(), more.begin(), more.end());
  const std::string now = std::visit(TargetWord{}, on);
  if (std::find(choices.begin(), choices.end(), now) == choices.end()) choices.push_back(now);
  const Start start = startOf(subject, time);
  fields.push_back(choiceField("on", now, choices, [set, start](const Plan& p, const std::string& word) {
    return set(p, targetOf(p, word, start));
  }));
  if (const auto* point = std::get_if<plan::OnPoint>(&on)) addPoint(*point, set, fields);
  if (const auto* bearing = std::get_if<plan::OnBearing>(&on)) {
    fields.push_back(angleField("bearing", bearing->bearing, [set, at = *bearing](const Plan& p, double degrees) {
      return set(p, plan::OnBearing{degrees, at.tilt});
    }));
    fields.push_back(angleField("tilt", bearing->tilt, [set, at = *bearing](const Plan& p, double degrees) {
      return set(p, plan::OnBearing{at.bearing, degrees});
    }));
  }
  if (const auto* travel = std::get_if<plan::OnTravel>(&on)) {
    fields.push_back(angleField("off travel", travel->offset, [set, at = *travel](const Plan& p, double degrees) {
      return set(p, plan::OnTravel{degrees, at.tilt});
    }));
    fields.push_back(angleField("tilt", travel->tilt, [set, at = *travel](const Plan& p, double degrees) {
      return set(p, plan::OnTravel{at.offset, degrees});
    }));
  }
  if (const auto* distance = std::get_if<plan::OnDistance>(&on))
    fields.push_back(lengthField("distance", distance->metres,
                                 [set](const Plan& p, double metres) { return set(p, plan::OnDistance{metres}); }));
}

void addAimKey(const Subject& subject, std::size_t i, Fields& fields) {
  const plan::AimKey& key = subject.plan.camera.aims[i];
  addTime(key.time, {Axis::aim, i, {}}, fields);
  addTarget(
      subject, key.on, key.time, {"a point", "a bearing", "travel"},
      [i](const Plan& p, Target on) { return plan::aimTargetSet(p, i, std::move(on)); }, fields);
  fields.push_back(numberField("right by", key.place[0], "\u00bd", 0.05, 2, [i](const Plan& p, double right) {
    return plan::aimPlaceSet(p, i, {right, p.camera.aims[i].place[1]});
  }));
  fields.push_back(numberField("up by", key.place[1], "\u00bd", 0.05, 2, [i](const Plan& p, double up) {
    return plan::aimPlaceSet(p, i, {p.camera.aims[i].place[0], up});
  }));
  fields.push_back(numberField("full turns", key.turns, "", 1, 0, [i](const Plan& p, double turns) -> PlanEdit {
    if (turns != std::round(turns) || std::abs(turns) > 100)
      return base::Problem{"bad-turns", "", base::shortest(turns), "a whole number",
                           "type whole turns, clockwise positive"};
    return plan::aimTurnsSet(p, i, int(turns));
  }));
}

void addFocusKey(const Subject& subject, std::size_t i, Fields& fields) {
  const plan::FocusKey& key = subject.plan.focus.keys[i];
  addTime(key.time, {Axis::focus, i, {}}, fields);
  addTarget(
      subject, key.on, key.time, {"a point", "a distance"},
      [i](const Plan& p, Target on) { return plan::focusTargetSet(p, i, std::move(on)); }, fields);
}

void addZoomKey(const Subject& subject, std::size_t i, Fields& fields) {
  const plan::ZoomKey& key = subject.plan.zoom.keys[i];
  addTime(key.time, {Axis::zoom, i, {}}, fields);
  const auto focal = [i](const Plan& p, double mm) { return plan::zoomFocalSet(p, i, mm); };
  std::vector<std::string> sizes{"by length"};
  for (const auto& size : optics::usualShotSizes()) sizes.push_back(size.name);
  const std::vector<std::string> who = subjectIds(subject.plan);
  const std::string first = who.empty() ? std::string() : who.front();
  double reached = key.focal;
  if (!key.size.empty() && subject.answers) {
    const answers::Take& take = *subject.answers->take;
    const double t = std::clamp(plan::secondsOf(subject.plan, key.time.at) + key.time.over, 0.0, take.length());
    reached = std::round(take.view().focalAt(t).value_or(35) * 10) / 10;
  }
  fields.push_back(numberField("length", reached, "mm", 1, 0, focal));
  fields.push_back(choiceField("size", key.size.empty() ? "by length" : key.size, sizes,
                               [i, reached, first](const Plan& p, const std::string& word) {
                                 if (word == "by length") return plan::zoomFocalSet(p, i, reached);
                                 const auto& now = p.zoom.keys[i];
                                 const Target of = now.size.empty() ? targetOf(p, first, {}) : now.of;
                                 return plan::zoomSizeSet(p, i, word, of);
                               }));
  if (key.size.empty()) return;
  fields.push_back(
      choiceField("of", std::visit(TargetWord{}, key.of), who, [i](const Plan& p, const std::string& word) {
        return plan::zoomSizeSet(p, i, p.zoom.keys[i].size, targetOf(p, word, {}));
      }));
}

void addIrisKey(const Subject& subject, std::size_t i, Fields& fields) {
  const plan::IrisKey& key = subject.plan.iris.keys[i];
  addTime(key.time, {Axis::iris, i, {}}, fields);
  fields.push_back(
      stopField("stop", key.stop, [i](const Plan& p, double stop) { return plan::irisStopSet(p, i, stop); }));
}

void addPull(const Subject& subject, std::size_t i, Fields& fields) {
  const plan::HandPull& pull = subject.plan.focus.pulls[i];
  const auto with = [i](auto change) {
    return [i, change](const Plan& p, double value) {
      auto pulls = p.focus.pulls;
      change(pulls[i], value);
      return plan::pullsSet(p, std::move(pulls));
    };
  };
  fields.push_back(momentField("at", pull.at, plan::PullStart{i}));
  fields.push_back(secondsField("over", pull.over, with([](plan::HandPull& row, double v) { row.over = v; })));
  fields.push_back(
      lengthField("distance", pull.distance, with([](plan::HandPull& row, double v) { row.distance = v; })));
}

}  // namespace

std::optional<Axis> chosenAxis(Kind kind) {
  switch (kind) {
    case Kind::aim:
      return Axis::aim;
    case Kind::focus:
      return Axis::focus;
    case Kind::zoom:
      return Axis::zoom;
    case Kind::iris:
      return Axis::iris;
    case Kind::opening:
      return Axis::door;
    case Kind::fixture:
      return Axis::level;
    case Kind::density:
      return Axis::nd;
    case Kind::pieceMove:
      return Axis::piece;
    default:
      return std::nullopt;
  }
}

std::vector<std::string> subjectIds(const Plan& plan) {
  std::vector<std::string> ids;
  for (const auto& performer : plan.performers) ids.push_back(performer.id.text());
  for (const auto& prop : plan.props) ids.push_back(prop.id.text());
  return ids;
}

Fields fieldsOfKey(const Subject& subject) {
  Fields fields;
  const std::size_t i = std::size_t(std::max(0, subject.selection.index));
  switch (subject.selection.kind) {
    case Kind::aim:
      addAimKey(subject, i, fields);
      break;
    case Kind::focus:
      addFocusKey(subject, i, fields);
      break;
    case Kind::zoom:
      addZoomKey(subject, i, fields);
      break;
    case Kind::iris:
      addIrisKey(subject, i, fields);
      break;
    case Kind::pull:
      addPull(subject, i, fields);
      break;
    default:
      break;
  }
  return fields;
}

}  // namespace wend::ui
