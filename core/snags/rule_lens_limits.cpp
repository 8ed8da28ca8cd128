// Keys and pulls by hand ask the lens for what is not on its rings.
#include "core/base/text.h"
#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"
#include "core/units/stop.h"

namespace wend::snags {

namespace {

/// Typed numbers are rounded; nobody finds a ring's end to a thousandth.
constexpr double kRounding = 1e-3;

/// By how much of itself a value lies outside a range; nothing inside it.
std::optional<double> beyond(double value, const std::array<double, 2>& range) {
  const double by = std::max(range[0] / value, value / range[1]) - 1;
  return by > kRounding ? std::optional(by) : std::nullopt;
}

struct Ring {
  const char* name;
  std::function<double(const Instant&)> value;
  std::array<double, 2> range;
  std::function<std::string(double)> text;
};

std::vector<Ring> ringsOf(const plan::Plan& plan) {
  const auto mm = [](double focal) { return base::fixed(focal, 0) + " mm"; };
  std::vector<Ring> rings{{"iris", [](const Instant& i) { return i.iris.set; }, plan.lens->stop, units::stopText},
                          {"zoom", [](const Instant& i) { return i.lens->focal; }, plan.lens->focal, mm}};
  // What is planned keeps to the scale; only a hand goes past its end.
  if (!plan.focus.pulls.empty())
    rings.push_back({"focus",
                     [](const Instant& i) { return i.focus.setDistance; },
                     {plan.lens->closeFocus, kInfinity},
                     [&plan](double distance) { return lengthText(plan, distance); }});
  return rings;
}

Finding findingOf(const Evidence& evidence, const Ring& ring, const Stretch& stretch) {
  const double value = ring.value(evidence.samples[stretch.worst]);
  const Span span = spanOf(evidence, stretch);
  const double end = value < ring.range[0] ? ring.range[0] : ring.range[1];
  return {ring.name,
          "",
          span.from,
          span.until,
          std::nullopt,
          threshold(*evidence.plan, "lens-limits").severity,
          std::string("the ") + ring.name + " is asked for " + ring.text(value) +
              (value < ring.range[0] ? ", and the lens begins at " : ", and the lens ends at ") + ring.text(end),
          "change the key, or take a lens that has it"};
}

}  // namespace

Findings lensLimits(const Evidence& evidence) {
  Findings findings;
  const plan::Plan& plan = *evidence.plan;
  if (!plan.lens) return findings;
  for (const Ring& ring : ringsOf(plan)) {
    const auto outside =
        stretches(evidence, threshold(plan, "lens-limits").hold, [&](const Instant& instant, std::size_t) {
          return instant.lens ? beyond(ring.value(instant), ring.range) : std::nullopt;
        });
    for (const auto& stretch : outside) findings.push_back(findingOf(evidence, ring, stretch));
  }
  return findings;
}

}  // namespace wend::snags
