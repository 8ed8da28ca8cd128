// The figures behind the words of the sheets.
#include "core/sheets/cell.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "core/base/text.h"
#include "core/sheets/dept_sheets.h"
#include "core/units/length.h"
#include "tests/core/answers/first_batch.h"

namespace wend::sheets {
namespace {

using namespace answers;

constexpr std::array kSamples = {"first-batch.wend", "links-and-booms.wend", "low-sun.wend", "one-room.wend"};

/// Every table of every sheet of a sample.
template <class Look>
void eachTable(const char* sample, Look look) {
  const auto answers = answersOf(sharedSample(sample));
  ASSERT_TRUE(answers.ok()) << sample;
  for (const auto& whom : departments())
    for (const auto& part : deptSheet(**answers, whom).parts) look(part.table, whom + ": " + part.heading);
}

/// A printed number with its unit. Nothing for words.
struct Printed {
  double value = 0, roundedTo = 0;
  std::string unit;
};

std::optional<Printed> printedIn(const std::string& words) {
  static const std::set<std::string> units = {"",     " m",  "\u00b0",  "\u00b0/s", " %",     " K",
                                              " m/s", " mm", " stop/s", " %/s",     " stops", " "};
  const std::size_t end = words.find_first_not_of("0123456789.+-");
  const std::string number = words.substr(0, end);
  if (number.empty() || number.find_first_of("0123456789") == std::string::npos) return std::nullopt;
  const std::string unit = end == std::string::npos ? "" : words.substr(end);
  const auto value = base::readNumber(number.front() == '+' ? number.substr(1) : number);
  if (!value || units.count(unit) == 0) return std::nullopt;
  const std::size_t point = number.find('.');
  const double digits = point == std::string::npos ? 0 : static_cast<double>(number.size() - point - 1);
  double rounded = 0.5 * std::pow(10, -digits);
  // Pulls are told in steps of a tape.
  if (unit == " m") rounded = std::max(rounded, units::tapeStep(std::abs(*value), units::LengthUnit::metres) / 2);
  return Printed{*value, rounded * (1 + 1e-6) + 1e-9, unit};
}

double shown(const Figure& figure, const Printed& printed) {
  if (figure.key.ends_with("Share")) return 100 * *figure.value;
  return *figure.value * (printed.unit == " mm" && figure.key.ends_with("Metres") ? 1000 : 1);
}

TEST(Figures, AreWhatEachPrintedNumberWasMadeFrom) {
  std::size_t numbers = 0;
  for (const char* sample : kSamples)
    eachTable(sample, [&](const TextTable& table, const std::string& where) {
      const auto cells = table.cells();
      const auto figures = table.figures();
      ASSERT_EQ(figures.size() + 1, cells.size());
      for (std::size_t row = 0; row < figures.size(); ++row)
        for (const auto& words : cells[row + 1]) {
          const auto printed = printedIn(words);
          if (!printed) continue;
          ++numbers;
          EXPECT_TRUE(std::any_of(figures[row].begin(), figures[row].end(),
                                  [&](const Figure& figure) {
                                    return figure.value && std::abs(std::abs(shown(figure, *printed)) -
                                                                    std::abs(printed->value)) <= printed->roundedTo;
                                  }))
              << sample << " " << where << ": " << words;
        }
    });
  EXPECT_GT(numbers, 500u) << "else this test says little";
}

TEST(Figures, HaveNamesOfTheirOwnThatEndInAUnit) {
  const std::set<std::string> counts = {"move",
                                        "mark",
                                        "leg",
                                        "beat",
                                        "mostHands",
                                        "mostStarts",
                                        "walls",
                                        "leaves",
                                        "bodies",
                                        "ratio",
                                        "bandOverWobble",
                                        "bandOverWobbleThen",
                                        "takes",
                                        "exposureIndex",
                                        "opticalDensity",
                                        "returnedOverThrough",
                                        "apartOverNearerHalf"};
  const std::array units = {"Seconds", "Metres", "Second", "Degrees",  "Stops",   "TStop", "Mm",
                            "Kelvin",  "Mired",  "Share",  "Decibels", "Candela", "Lumens"};
  for (const char* sample : kSamples)
    eachTable(sample, [&](const TextTable& table, const std::string& where) {
      for (const auto& row : table.figures()) {
        std::set<std::string> keys;
        for (const auto& figure : row) {
          EXPECT_TRUE(keys.insert(figure.key).second) << sample << " " << where << ": " << figure.key << " twice";
          EXPECT_TRUE(counts.count(figure.key) == 1 ||
                      std::any_of(units.begin(), units.end(), [&](const char* u) { return figure.key.ends_with(u); }))
              << figure.key;
        }
      }
    });
}

TEST(Figures, AreMetresWhateverThePlanShows) {
  plan::Plan plan;
  plan.display = plan::LengthUnit::feet;
  const Cell cell = metresCell(plan, "reach", 2.54);
  EXPECT_EQ(cell.words, "8'-4\"");
  ASSERT_EQ(cell.figures.size(), 1u);
  EXPECT_EQ(cell.figures[0].key, "reachMetres");
  EXPECT_EQ(cell.figures[0].value, 2.54);
  EXPECT_EQ(metresCell(plan, "reach", std::nullopt).words, "unknown");
  EXPECT_FALSE(metresCell(plan, "reach", std::nullopt).figures[0].value);
  EXPECT_EQ(metresCell(plan, "far", snags::kInfinity).words, "\u221e");
}

}  // namespace
}  // namespace wend::sheets
