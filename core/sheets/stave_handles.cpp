// What of the score can be taken hold of.
#include <algorithm>

#include "core/light/density.h"
#include "core/sheets/stave.h"
#include "core/sheets/stave_room.h"

namespace wend::sheets {

namespace {

class HandleFinder {
 public:
  HandleFinder(const answers::Answers& answers, const ScoreView& view)
      : answers_(answers), take_(*answers.take), plan_(take_.plan()), view_(view) {}

  std::vector<ScoreHandle> found() {
    const auto boxes = stavesOf(plan_, view_);
    for (const auto& box : boxes) {
      if (box.folded) continue;
      free_ = uncovered(boxes, box);
      if (box.name == "beats")
        for (const auto& beat : plan_.beats) add("beat/" + beat.id.text(), beat.time, box.top + 12, {});
      if (box.name == "sharp") sharp(box);
      if (box.name == "zoom") zoom(box);
      if (box.name == "iris, faces") iris(box);
      if (box.name == "density") density(box);
    }
    return std::move(handles_);
  }

 private:
  /// Of a handle that has a value: what it is and what a px is worth.
  struct Worth {
    double value = 0, perPx = 0;
    bool cut = false;
  };

  void add(const std::string& key, double time, double y, Worth worth) {
    if (time < view_.from || time > view_.until || y < free_.from || y > free_.until) return;
    handles_.push_back({key, time, view_.x(time), y, worth.value, worth.perPx, worth.cut});
  }

  /// End and begin of a key. `value` of the take at an instant gives where the begin stands.
  template <class Value>
  void key(const std::string& name, geometry::KeySpan span, double value, const StaveScale& scale, Value before) {
    const double end = std::min(span.at + span.over, take_.length());
    add(name, end, scale.y(value), {value, scale.perPx(), !(span.over > 0)});
    if (span.over > 0) add(name + kStartOfKey, span.at, scale.y(before(span.at)), {});
  }

  void sharp(const StaveBox& box) {
    const StaveScale scale = focusStaveScale(take_, box);
    const auto set = [this](double t) { return focusMeasure(take_.lens().focusAt(t)); };
    for (std::size_t i = 0; i < plan_.focus.pulls.size(); ++i) {
      const auto& pull = plan_.focus.pulls[i];
      key("pull/" + std::to_string(i), {plan::secondsOf(plan_, pull.at), pull.over, false}, 1 / pull.distance, scale,
          set);
    }
    const auto keys = answers::resolvedKeys(plan_, plan_.focus.keys);
    const double row = whoIsSharpRow(box);
    for (std::size_t k = 0; k < keys.size(); ++k) {
      const std::string name = "focus/" + std::to_string(k);
      const double end = std::min(keys[k].at + keys[k].over, take_.length());
      const auto* distance = std::get_if<plan::OnDistance>(&plan_.focus.keys[k].on);
      const bool cut = !(keys[k].over > 0);
      if (distance)
        add(name, end, scale.y(1 / distance->metres), {1 / distance->metres, scale.perPx(), cut});
      else
        add(name, end, row, {0, 0, cut});
      if (!cut) add(name + kStartOfKey, keys[k].at, row, {});
    }
  }

  void zoom(const StaveBox& box) {
    const StaveScale scale = zoomStaveScale(plan_, box);
    const auto focal = [this](double t) { return std::log2(take_.view().focalAt(t).value_or(35)); };
    const auto keys = answers::resolvedKeys(plan_, plan_.zoom.keys);
    for (std::size_t k = 0; k < keys.size(); ++k) {
      const double end = std::min(keys[k].at + keys[k].over, take_.length());
      if (take_.view().focalAt(end)) key("zoom/" + std::to_string(k), keys[k], focal(end), scale, focal);
    }
  }

  void iris(const StaveBox& box) {
    const StaveScale scale = irisStaveScale(answers_, box);
    const auto keys = answers::resolvedKeys(plan_, plan_.iris.keys);
    for (std::size_t k = 0; k < keys.size(); ++k)
      key("iris/" + std::to_string(k), keys[k], answers::stopsOf(plan_.iris.keys[k].stop), scale,
          [this](double t) { return answers::stopsOf(take_.lens().irisAt(t)); });
  }

  void density(const StaveBox& box) {
    const StaveScale scale = densityStaveScale(plan_, box);
    const auto keys = answers::resolvedKeys(plan_, plan_.camera.nd);
    for (std::size_t k = 0; k < keys.size(); ++k)
      key("nd/" + std::to_string(k), keys[k], plan_.camera.nd[k].stops, scale,
          [this](double t) { return light::densityAt(take_.lighting().density, t); });
  }

  const answers::Answers& answers_;
  const answers::Take& take_;
  const plan::Plan& plan_;
  const ScoreView& view_;
  geometry::Span free_;  ///< rows of the stave that are in sight
  std::vector<ScoreHandle> handles_;
};

}  // namespace

std::vector<ScoreHandle> scoreHandles(const answers::Answers& answers, const ScoreView& view) {
  return HandleFinder(answers, view).found();
}

}  // namespace wend::sheets
