// The colour of the light along the shot: from one face that is followed to the next, and between two in one frame.
#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/base/text.h"
#include "core/light/colour.h"
#include "core/sheets/dept_sheets.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;
using base::fixed;
using units::secondsText;

namespace {

// Less than this few people see between two shots, let alone in one. Common practice, no source.
constexpr double kLeastMired = 20;

/// The light somebody stands in.
struct Light {
  std::string name;
  double kelvin = 0;
  bool operator==(const Light&) const = default;
};

/// That of the topmost area there whose state says its colour; nothing where none does.
std::optional<Light> lightAt(const plan::Plan& plan, geometry::Point pos, double t) {
  for (std::size_t i = plan.set.areas.size(); i-- > 0;) {
    const plan::Area& area = plan.set.areas[i];
    if (!onArea(area, pos)) continue;
    const plan::AreaState* now = nullptr;
    for (const auto& state : area.states)
      if (plan::secondsOf(plan, state.time.at) <= t + 1e-9) now = &state;
    // A state without readings is dark: what lies below it counts.
    if (now && !now->readings.empty())
      return now->kelvin ? std::optional(Light{area.name, *now->kelvin}) : std::nullopt;
  }
  return std::nullopt;
}

bool shows(const PerformerAt& at) {
  return optics::shows(at.inFrame);
}

std::string lightText(const Light& light) {
  return light.name + " (" + fixed(light.kelvin, 0) + " K)";
}

std::string shiftText(double mired) {
  return fixed(std::abs(mired), 0) + " mired " + (mired > 0 ? "warmer" : "cooler");
}

struct Stage {
  double time = 0;
  std::string who;
  Light light;
};

/// The lights that whoever is followed stands in, one after the other.
std::vector<Stage> followedThrough(const plan::Plan& plan, const std::vector<Instant>& samples) {
  std::vector<Stage> stages;
  for (const Instant& instant : samples) {
    if (instant.focus.on.empty() || instant.focus.changing) continue;
    for (const PerformerAt& at : instant.performers) {
      if (at.id != instant.focus.on.back() || !shows(at)) continue;
      const auto light = lightAt(plan, at.pos, instant.time);
      if (light && (stages.empty() || !(stages.back().light == *light)))
        stages.push_back({instant.time, at.id, *light});
    }
  }
  return stages;
}

void addJumps(const plan::Plan& plan, const std::vector<Stage>& stages, TextTable& table) {
  std::vector<std::optional<double>> kelvin;
  for (const Stage& stage : stages) kelvin.push_back(stage.light.kelvin);
  for (const auto& jump : light::colourJumps(kelvin, kLeastMired)) {
    const Stage &before = stages[jump.before], &after = stages[jump.after];
    table.add({secondsText(after.time), nameOf(plan, after.who),
               lightText(before.light) + " to " + lightText(after.light), shiftText(jump.mired)});
  }
}

/// Two faces in one frame in two colours: where each pair of lights first meets.
void addPairs(const plan::Plan& plan, const std::vector<Instant>& samples, TextTable& table) {
  std::map<std::pair<std::string, std::string>, bool> told;
  for (const Instant& instant : samples)
    for (std::size_t i = 0; i < instant.performers.size(); ++i)
      for (std::size_t k = i + 1; k < instant.performers.size(); ++k) {
        const PerformerAt &a = instant.performers[i], &b = instant.performers[k];
        if (!shows(a) || !shows(b)) continue;
        const auto one = lightAt(plan, a.pos, instant.time), other = lightAt(plan, b.pos, instant.time);
        if (!one || !other) continue;
        const double shift = light::miredShift(one->kelvin, other->kelvin);
        if (std::abs(shift) < kLeastMired || std::exchange(told[{lightText(*one), lightText(*other)}], true)) continue;
        table.add({secondsText(instant.time), nameOf(plan, a.id) + " and " + nameOf(plan, b.id),
                   lightText(*one) + " beside " + lightText(*other), shiftText(shift)});
      }
}

}  // namespace

std::vector<SheetPart> colourParts(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">at", "~who", "~light", ">shift"});
  addJumps(plan, followedThrough(plan, answers.evidence->samples), table);
  addPairs(plan, answers.evidence->samples, table);
  if (table.empty()) return {};
  return {{"Colour of the light on whoever is followed, and on two in one frame", std::move(table)}};
}

}  // namespace wend::sheets
