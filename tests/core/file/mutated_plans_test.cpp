/// Replays the samples with bytes changed and pieces cut out: the same check as the fuzz target, without a fuzzer.
#include <gtest/gtest.h>

#include <random>

#include "tests/core/file/plan_text.h"
#include "tests/fuzz/plan_reader_fuzz.h"

namespace wend::file {
namespace {

constexpr std::uint64_t kSeed = 20240611;

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  /// In [0, limit). Requires limit > 0.
  std::size_t below(std::size_t limit) { return static_cast<std::size_t>(engine_() % limit); }

 private:
  std::mt19937_64 engine_;
};

std::vector<std::string> seeds() {
  std::vector<std::string> texts{kEveryKey};
  for (const auto& folder : {sampleFolder(), sampleFolder() / "issues"})
    for (const auto& file : filesOf(folder, ".wend")) {
      std::string text = fileText(file);
      if (text.size() < 60000) texts.push_back(std::move(text));
    }
  return texts;
}

/// Small wounds that keep much of the structure: another digit, another sign, a piece doubled or lost.
void wound(std::string& text, Dice& dice) {
  static const std::string signs = "0123456789-.eE\"[]{},: \\utfnab\x00\xff\xc3";
  if (text.empty()) return;
  const std::size_t at = dice.below(text.size());
  const std::size_t length = std::min(1 + dice.below(12), text.size() - at);
  switch (dice.below(6)) {
    case 0:
      text[at] = static_cast<char>(dice.below(256));
      break;
    case 1:
      text.erase(at, length);
      break;
    case 2:
      text.insert(at, text.substr(dice.below(text.size()), length));
      break;
    case 3:
      if (text[at] >= '0' && text[at] <= '9') text[at] = static_cast<char>('0' + dice.below(10));
      break;
    case 4:
      text[at] = signs[dice.below(signs.size())];
      break;
    default:
      if (dice.below(20) == 0) text.resize(at);
      break;
  }
}

TEST(MutatedPlans, NeverEndTheProgramAndComeBackEqualWhenAccepted) {
  const auto texts = seeds();
  Dice dice(kSeed);
  int accepted = 0;
  constexpr int kRuns = 20000;
  for (int run = 0; run < kRuns; ++run) {
    std::string text = texts[dice.below(texts.size())];
    for (std::size_t wounds = 1 + dice.below(3); wounds > 0; --wounds) wound(text, dice);
    accepted += readsAndWritesBack(text) ? 1 : 0;
  }
  RecordProperty("seed", std::to_string(kSeed));
  std::printf("seed %llu: %d of %d mutated plans accepted\n", static_cast<unsigned long long>(kSeed), accepted, kRuns);
  EXPECT_GT(accepted, kRuns / 100);
  EXPECT_LT(accepted, kRuns);
}

TEST(MutatedPlans, AreToldAtEveryCut) {
  const std::string text = fileText(sampleFolder() / "one-room.wend");
  for (std::size_t length = 0; length + 2 < text.size(); ++length)
    EXPECT_FALSE(readsAndWritesBack(std::string_view(text).substr(0, length))) << length;
}

}  // namespace
}  // namespace wend::file
