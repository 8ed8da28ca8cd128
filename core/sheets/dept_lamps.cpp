// Where the plan's lamps hang, whither they point and how much they give: what whoever rigs them needs.
#include <cmath>
#include <variant>

#include "core/base/text.h"
#include "core/light/luminaire.h"
#include "core/sheets/dept_sheets.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"

namespace wend::sheets {

using namespace snags;
using answers::Answers;
using base::fixed;

namespace {

/// Candela in the brightest direction and lumens over all, at full level; nothing of a lamp whose file is not there.
struct Given {
  std::optional<double> peak, lumens;
};

Given givenBy(const answers::Take& take, const plan::Fixture& fixture) {
  if (const auto* spot = std::get_if<plan::BeamOutput>(&fixture.output))
    return {spot->candela, light::totalFlux({spot->candela, spot->beam, spot->field})};
  const auto& file = std::get<plan::IesOutput>(fixture.output);
  const auto read = take.luminaires().find(file.file);
  if (read == take.luminaires().end() || !read->second) return {};
  const light::Photometry& table = read->second->photometry;
  return {table.peak() * file.scale, table.totalFlux() * file.scale};
}

Cell wholeOr(const std::string& key, const std::optional<double>& value) {
  return figure(value ? fixed(*value, 0) : "unknown", key, value);
}

TextTable lamps(const Answers& answers) {
  const plan::Plan& plan = answers.take->plan();
  TextTable table({"lamp", "~at", ">height", ">bearing", ">tilt", ">beam", ">field", ">peak, cd", ">lumens"});
  for (const auto& fixture : plan.fixtures) {
    const auto* spot = std::get_if<plan::BeamOutput>(&fixture.output);
    const Given given = givenBy(*answers.take, fixture);
    table.add({nameOf(plan, fixture.id.text()), placeCell(fixture.pos), metresCell(plan, "height", fixture.height),
               degreesCell("bearing", fixture.bearing), degreesCell("tilt", fixture.tilt),
               spot ? degreesCell("beam", spot->beam) : Cell("file"),
               spot ? degreesCell("field", spot->field) : Cell("file"), wholeOr("peakCandela", given.peak),
               wholeOr("fluxLumens", given.lumens)});
  }
  return table;
}

}  // namespace

std::vector<SheetPart> lampParts(const Answers& answers) {
  TextTable table = lamps(answers);
  if (table.empty()) return {};
  return {{"Lamps at full: bearings from plan north, tilt -90 straight down", std::move(table)}};
}

}  // namespace wend::sheets
