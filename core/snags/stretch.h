/// Stretches of samples in which something holds, and the words rules share.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/snags/evidence.h"
#include "core/snags/snag.h"
#include "core/units/length.h"

namespace wend::snags {

/// A maximal run of samples in which a value was there, with the first of those where it was greatest.
struct Stretch {
  std::size_t first = 0, last = 0, worst = 0;
  double value = 0;  ///< at `worst`
};

/// What a rule measures at a sample: nothing where the rule has nothing to say.
using Excess = std::function<std::optional<double>(const Instant&, std::size_t index)>;

/// The runs of a list of samples in which a value is there.
std::vector<Stretch> stretchesOf(const std::vector<std::optional<double>>& values);

/// Those of the take that last at least `hold` seconds, from the first sample's time to the last one's: one lasts 0 s.
std::vector<Stretch> stretches(const Evidence& evidence, double hold, const Excess& excess);

/// Where the sharp band is narrower than the threshold "warmth" asks, for as long as it says; worst where it is least.
std::vector<Stretch> hotStretches(const Evidence& evidence);

/// From the stretch's first sample to its last.
Span spanOf(const Evidence& evidence, const Stretch& stretch);

/// What people call the thing of that id: a performer's or opening's name, a crew member's role; the id if nameless.
std::string nameOf(const plan::Plan& plan, const std::string& id);

/// The same of a cable, of which the camera's own is plan::kCameraEnd.
std::string cableNameOf(const plan::Plan& plan, const std::string& id);

/// The same of a body, of which the camera is plan::kCameraEnd.
std::string bodyNameOf(const plan::Plan& plan, const std::string& id);

/// ", on the route found" of somebody who goes one, and of the pole they hold; nothing of all others.
std::string routeNote(const Evidence& evidence, const std::string& id);

/// Whether the plan says anything of light: readings or lamps.
bool tellsOfLight(const plan::Plan& plan);

/// Whether a place lies on an area, its edge included.
bool onArea(const plan::Area& area, Point pos);

/// The room or the topmost light area there: what a snag is filed under. Empty on ground that has neither.
std::string placeOf(const plan::Plan& plan, Point pos);

/// Whether the focus is on that performer, alone or in a split, and on nobody else's way there.
bool follows(const FocusAt& focus, const std::string& id);

/// Names instead of ids, a split's joined: "Mo + Lu".
std::string subjectName(const plan::Plan& plan, const std::string& on);

/// "focus", "iris", "zoom", "density".
const char* wordOf(Move::Axis axis);

/// What lengths are shown in.
units::LengthUnit unitOf(const plan::Plan& plan);
/// "2.80 m" or "9'-2\"", by the plan's display.
std::string lengthText(const plan::Plan& plan, double metres);

/// "6.0 s", "1⅓ stops over".
std::string seconds(double value);
std::string stops(double value);

}  // namespace wend::snags
