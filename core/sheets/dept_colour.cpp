// The colour of the light along the shot: from one face that is followed to the next, and between two in one frame.
#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/base/text.h"
#include "core/light/colour.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;
using base::fixed;

namespace {

// Less than this few people see between two shots, let alone in one. Common practice, no source.
constexpr double kLeastMired = 20;

std::string lightText(const plan::Plan& plan, const PerformerAt& in) {
  return nameOf(plan, in.litBy) + " (" + kelvinText(in.kelvin) + ")";
}

Cell shiftCell(double mired) {
  return figure(fixed(std::abs(mired), 0) + " mired " + (mired > 0 ? "warmer" : "cooler"), "warmerMired", mired);
}

Cell lightCell(const plan::Plan& plan, const PerformerAt& a, const PerformerAt& b, const char* between) {
  return {lightText(plan, a) + between + lightText(plan, b), {{"fromKelvin", a.kelvin}, {"toKelvin", b.kelvin}}};
}

/// Somebody at an instant, in a light of known colour.
struct Lit {
  double time = 0;
  const PerformerAt* at = nullptr;
};

/// Whoever is followed, wherever the light is known; of a split whoever was followed before, else the first.
std::vector<Lit> followed(const std::vector<Instant>& samples) {
  std::vector<Lit> all;
  for (const Instant& instant : samples) {
    const PerformerAt* one = nullptr;
    for (const PerformerAt& at : instant.performers) {
      if (!follows(instant.focus, at.id) || !optics::shows(at.inFrame) || !at.kelvin) continue;
      if (!one || (!all.empty() && all.back().at->id == at.id)) one = &at;
    }
    if (one) all.push_back({instant.time, one});
  }
  return all;
}

/// From one light to the next. A light that changes by itself, as daylight does, is no jump: that is told apart.
void addJumps(const plan::Plan& plan, const std::vector<Lit>& all, TextTable& table) {
  std::vector<std::optional<double>> kelvin;
  for (const Lit& lit : all) kelvin.push_back(lit.at->kelvin);
  for (const auto& jump : light::colourJumps(kelvin, kLeastMired)) {
    const Lit &before = all[jump.before], &after = all[jump.after];
    table.add({secondsCell("at", after.time), nameOf(plan, after.at->id),
               lightCell(plan, *before.at, *after.at, " to "), shiftCell(jump.mired)});
  }
}

/// What the clock alone does to the colour of an area from the first instant at which whoever is followed stands in it
/// to the last.
void addDrift(const plan::Plan& plan, const std::vector<Lit>& all, TextTable& table) {
  for (const auto& area : plan.set.areas) {
    const auto in = [&](const Lit& lit) { return lit.at->litBy == area.id.text(); };
    const auto first = std::find_if(all.begin(), all.end(), in);
    if (area.byClock.empty() || first == all.end()) continue;
    const Lit& last = *std::find_if(all.rbegin(), all.rend(), in);
    const double shift = light::miredShift(*first->at->kelvin, *last.at->kelvin);
    if (std::abs(shift) < kLeastMired) continue;
    table.add({secondsCell("at", last.time), "by the clock", lightCell(plan, *first->at, *last.at, " to "),
               shiftCell(shift)});
  }
}

/// What a light is told as: daylight once, a state each with its colour.
std::string toldAs(const plan::Plan& plan, const PerformerAt& in) {
  return plan.set.areas.find(in.litBy)->byClock.empty() ? lightText(plan, in) : in.litBy;
}

/// Two faces in one frame in two colours: where each pair of lights first meets.
void addPairs(const plan::Plan& plan, const std::vector<Instant>& samples, TextTable& table) {
  std::map<std::pair<std::string, std::string>, bool> told;
  for (const Instant& instant : samples)
    for (std::size_t i = 0; i < instant.performers.size(); ++i)
      for (std::size_t k = i + 1; k < instant.performers.size(); ++k) {
        const PerformerAt &a = instant.performers[i], &b = instant.performers[k];
        if (!optics::shows(a.inFrame) || !optics::shows(b.inFrame) || !a.kelvin || !b.kelvin) continue;
        const double shift = light::miredShift(*a.kelvin, *b.kelvin);
        if (std::abs(shift) < kLeastMired || std::exchange(told[{toldAs(plan, a), toldAs(plan, b)}], true)) continue;
        table.add({secondsCell("at", instant.time), nameOf(plan, a.id) + " and " + nameOf(plan, b.id),
                   lightCell(plan, a, b, " beside "), shiftCell(shift)});
      }
}

}  // namespace

std::vector<SheetPart> colourParts(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({">at", "~who", "~light", ">shift"});
  const std::vector<Lit> all = followed(answers.evidence->samples);
  addJumps(plan, all, table);
  addDrift(plan, all, table);
  addPairs(plan, answers.evidence->samples, table);
  if (table.empty()) return {};
  return {{"Colour of the light on whoever is followed, and on two in one frame", std::move(table)}};
}

}  // namespace wend::sheets
