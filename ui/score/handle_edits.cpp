#include "ui/score/handle_edits.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "core/plan/edits_beats.h"
#include "core/plan/edits_keys.h"

namespace wend::ui {

using base::Result;
using plan::Axis;
using plan::KeyRef;
using plan::Plan;

namespace {

struct HandleName {
  std::string stave, rest;
};

HandleName nameOf(const std::string& key) {
  const std::size_t slash = key.find('/');
  return {key.substr(0, slash), slash == std::string::npos ? std::string() : key.substr(slash + 1)};
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
  return std::nullopt;
}

double startOf(const Plan& plan, const KeyRef& key) {
  const plan::KeyTime& time = key.axis == Axis::focus  ? plan.focus.keys.at(key.index).time
                              : key.axis == Axis::zoom ? plan.zoom.keys.at(key.index).time
                                                       : plan.iris.keys.at(key.index).time;
  return plan::secondsOf(plan, time.at);
}

Result<Plan> withValue(const Plan& plan, const KeyRef& key, double measure) {
  if (key.axis == Axis::zoom) {
    const double focal = std::exp2(measure);
    const auto lens = plan.lens;
    return plan::zoomFocalSet(plan, key.index, lens ? std::clamp(focal, lens->focal[0], lens->focal[1]) : focal);
  }
  const double stop = std::exp2(measure / 2);
  return plan::irisStopSet(plan, key.index,
                           plan.lens ? std::clamp(stop, plan.lens->stop[0], plan.lens->stop[1]) : stop);
}

}  // namespace

Result<Plan> movedHandle(const Plan& plan, const std::string& key, double bySeconds, std::optional<double> measure) {
  const HandleName name = nameOf(key);
  if (name.stave == "beat") {
    const plan::Beat* beat = plan.beats.find(name.rest);
    if (!beat) return base::Problem{"no-such-beat", key, "no such beat", "a beat of the plan", "choose another"};
    return plan::movedBeat(plan, {name.rest}, beat->time + bySeconds);
  }
  const auto axis = axisOf(name.stave);
  if (!axis) return base::Problem{"no-such-key", key, "no such key", "a key of the score", "choose another"};
  const KeyRef ref{*axis, indexOf(name.rest), {}};
  Result<Plan> moved = plan;
  // The first key says how the take starts: it stays at 0.
  if (ref.index > 0 && bySeconds != 0) moved = plan::keyTimeSet(plan, ref, startOf(plan, ref) + bySeconds);
  if (!moved || !measure || *axis == Axis::focus) return moved;
  return withValue(*moved, ref, *measure);
}

Selection selectionOfHandle(const std::string& key) {
  const HandleName name = nameOf(key);
  if (name.stave == "beat") return {Kind::beat, name.rest, -1};
  const int index = static_cast<int>(indexOf(name.rest));
  if (name.stave == "focus") return {Kind::focus, "", index};
  if (name.stave == "zoom") return {Kind::zoom, "", index};
  if (name.stave == "iris") return {Kind::iris, "", index};
  return {};
}

std::string handleOf(const Selection& selection) {
  if (selection.kind == Kind::beat) return "beat/" + selection.id;
  const std::string index = std::to_string(std::max(0, selection.index));
  if (selection.kind == Kind::focus) return "focus/" + index;
  if (selection.kind == Kind::zoom) return "zoom/" + index;
  if (selection.kind == Kind::iris) return "iris/" + index;
  if (selection.kind == Kind::snag) return selection.id;
  return {};
}

}  // namespace wend::ui
