#include "ui/score/handle_edits.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "core/answers/lens_tracks.h"
#include "core/plan/edits_beats.h"
#include "core/plan/edits_camera.h"
#include "core/plan/edits_keys.h"
#include "core/sheets/score_drawing.h"

namespace wend::ui {

using base::Result;
using plan::Axis;
using plan::KeyRef;
using plan::Plan;

namespace {

struct HandleName {
  std::string stave, rest;
  bool start = false;
};

HandleName nameOf(std::string key) {
  const bool start = key.ends_with(sheets::kStartOfKey);
  if (start) key.resize(key.size() - sheets::kStartOfKey.size());
  const std::size_t slash = key.find('/');
  return {key.substr(0, slash), slash == std::string::npos ? std::string() : key.substr(slash + 1), start};
}

std::size_t indexOf(const std::string& text) {
  std::size_t index = 0;
  std::from_chars(text.data(), text.data() + text.size(), index);
  return index;
}

std::optional<Axis> axisOf(const std::string& stave) {
  if (stave == "focus") return Axis::focus;
  if (stave == "zoom") return Axis::zoom;
  if (stave == "iris") return Axis::iris;
  if (stave == "nd") return Axis::nd;
  return std::nullopt;
}

base::Problem noSuchKey(const std::string& key) {
  return {"no-such-key", "", key, "a key of the score", "choose another"};
}

/// Begin and length of what is moved by one of its ends.
struct Stretch {
  double at = 0, over = 0;
};

Stretch moved(Stretch now, double to, bool start, bool whole) {
  const double end = now.at + now.over;
  if (whole) return {now.at + to - (start ? now.at : end), now.over};
  if (!start) return {now.at, std::max(0.0, to - now.at)};
  const double begin = std::min(to, end);
  return {begin, end - begin};
}

const plan::KeyTime* timeOf(const Plan& plan, const KeyRef& key) {
  const auto of = [&](const auto& keys) { return key.index < keys.size() ? &keys[key.index].time : nullptr; };
  return key.axis == Axis::focus  ? of(plan.focus.keys)
         : key.axis == Axis::zoom ? of(plan.zoom.keys)
         : key.axis == Axis::nd   ? of(plan.camera.nd)
                                  : of(plan.iris.keys);
}

/// In the order in which neither step pushes the key over its neighbours.
Result<Plan> withTime(const Plan& plan, const KeyRef& key, Stretch before, Stretch after) {
  const auto over = [&](const Plan& p) { return plan::keyOverSet(p, key, after.over); };
  const auto at = [&](const Plan& p) { return plan::keyTimeSet(p, key, after.at); };
  if (after.at == before.at) return over(plan);
  if (after.over == before.over) return at(plan);
  const auto first = after.at > before.at ? over(plan) : at(plan);
  if (!first) return first;
  return after.at > before.at ? at(*first) : over(*first);
}

double withinLens(double value, const std::array<double, 2>& range) {
  return std::clamp(value, range[0], range[1]);
}

Result<Plan> withValue(const Plan& plan, const KeyRef& key, double measure) {
  if (key.axis == Axis::zoom) {
    const double focal = std::exp2(measure);
    return plan::zoomFocalSet(plan, key.index, plan.lens ? withinLens(focal, plan.lens->focal) : focal);
  }
  if (key.axis == Axis::nd) return plan::densityStopsSet(plan, key.index, std::max(0.0, measure));
  if (key.axis == Axis::iris) {
    const double stop = answers::tNumberOf(measure);
    return plan::irisStopSet(plan, key.index, plan.lens ? withinLens(stop, plan.lens->stop) : stop);
  }
  if (!std::holds_alternative<plan::OnDistance>(plan.focus.keys[key.index].on)) return plan;
  return plan::focusTargetSet(plan, key.index, plan::OnDistance{1 / std::max(measure, 1e-3)});
}

Result<Plan> movedPull(const Plan& plan, const HandleName& name, const HandleMove& move) {
  const std::size_t i = indexOf(name.rest);
  if (i >= plan.focus.pulls.size()) return noSuchKey("pull/" + name.rest);
  auto pulls = plan.focus.pulls;
  plan::HandPull& pull = pulls[i];
  if (move.to && i > 0) {
    const double at = plan::secondsOf(plan, pull.at);
    const Stretch after = moved({at, pull.over}, *move.to, name.start, move.whole);
    pull.at.seconds += after.at - at;
    pull.over = after.over;
  }
  if (move.measure) {
    const double nearest = plan.lens ? plan.lens->closeFocus : 0.1;
    pull.distance = std::max(nearest, 1 / std::max(*move.measure, 1e-3));
  }
  return plan::pullsSet(plan, std::move(pulls));
}

}  // namespace

Result<Plan> movedHandle(const Plan& plan, const std::string& key, const HandleMove& move) {
  const HandleName name = nameOf(key);
  if (name.stave == "beat") {
    const plan::Beat* beat = plan.beats.find(name.rest);
    if (!beat) return base::Problem{"no-such-beat", "", key, "a beat of the plan", "choose another"};
    return move.to ? plan::movedBeat(plan, {name.rest}, *move.to) : Result<Plan>(plan);
  }
  if (name.stave == "pull") return movedPull(plan, name, move);
  const auto axis = axisOf(name.stave);
  if (!axis) return noSuchKey(key);
  const KeyRef ref{*axis, indexOf(name.rest), {}};
  const plan::KeyTime* time = timeOf(plan, ref);
  if (!time) return noSuchKey(key);
  Result<Plan> after = plan;
  if (ref.index > 0 && move.to) {
    const Stretch now{plan::secondsOf(plan, time->at), time->over};
    after = withTime(plan, ref, now, moved(now, *move.to, name.start, move.whole));
  }
  return after && move.measure ? withValue(*after, ref, *move.measure) : after;
}

Selection selectionOfHandle(const std::string& key) {
  const HandleName name = nameOf(key);
  if (name.stave == "beat") return {Kind::beat, name.rest, -1};
  const int index = static_cast<int>(indexOf(name.rest));
  if (name.stave == "focus") return {Kind::focus, "", index};
  if (name.stave == "pull") return {Kind::pull, "", index};
  if (name.stave == "zoom") return {Kind::zoom, "", index};
  if (name.stave == "iris") return {Kind::iris, "", index};
  if (name.stave == "nd") return {Kind::density, "", index};
  return {};
}

std::string handleOf(const Selection& selection) {
  if (selection.kind == Kind::beat) return "beat/" + selection.id;
  const std::string index = std::to_string(std::max(0, selection.index));
  if (selection.kind == Kind::focus) return "focus/" + index;
  if (selection.kind == Kind::pull) return "pull/" + index;
  if (selection.kind == Kind::zoom) return "zoom/" + index;
  if (selection.kind == Kind::iris) return "iris/" + index;
  if (selection.kind == Kind::density) return "nd/" + index;
  if (selection.kind == Kind::snag) return selection.id;
  return {};
}

std::optional<Axis> axisOfHandle(const std::string& key) {
  return axisOf(nameOf(key).stave);
}

}  // namespace wend::ui
