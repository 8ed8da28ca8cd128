#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/exchange/verbs_json.h"
#include "tests/samples.h"

namespace wend::exchange {
namespace {

TEST(SheetsJson, HoldsTheFiguresBesideTheWords) {
  const auto answers = *answers::answersOf(sharedSample("first-batch.wend"));
  const auto json = nlohmann::json::parse(
      sheetsJson(answers->take->plan(), {sheets::deptSheet(*answers, "focus"), sheets::deptSheet(*answers, "light")}));
  std::size_t pulls = 0;
  for (const auto& part : json["sheets"][0]["parts"]) {
    ASSERT_EQ(part["rows"].size(), part["figures"].size());
    if (part["heading"].get<std::string>().rfind("Pulls", 0) != 0) continue;
    for (const auto& figures : part["figures"]) {
      // The same numbers as `wend pulls --json` has of that move.
      const snags::Move& move = answers->evidence->moves.at(figures["move"].get<std::size_t>() - 1);
      EXPECT_EQ(figures["atSeconds"].get<double>(), move.from);
      EXPECT_EQ(figures["overSeconds"].get<double>(), move.until - move.from);
      if (std::isfinite(move.valueAfter)) {
        EXPECT_EQ(figures["toMetres"].get<double>(), move.valueAfter);
      }
      ++pulls;
    }
  }
  EXPECT_GT(pulls, 5u);
}

}  // namespace
}  // namespace wend::exchange
