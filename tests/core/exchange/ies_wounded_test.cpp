/// Replays photometric files with bytes changed and pieces cut out: the same check as the fuzz target, without a
/// fuzzer.
#include <gtest/gtest.h>

#include <random>

#include "tests/core/exchange/ies_text.h"
#include "tests/fuzz/ies_reader_fuzz.h"

namespace wend::exchange {
namespace {

constexpr std::uint64_t kSeed = 20250211;

std::size_t below(std::mt19937_64& engine, std::size_t limit) {
  return static_cast<std::size_t>(engine() % limit);
}

std::string wounded(std::string text, std::mt19937_64& engine) {
  static const std::string signs = "0123456789-+.eE, \r\n[]=\x1a\xfc";
  for (std::size_t wounds = 1 + below(engine, 3); wounds > 0 && !text.empty(); --wounds) {
    const std::size_t at = below(engine, text.size());
    const std::size_t length = std::min(1 + below(engine, 8), text.size() - at);
    switch (below(engine, 4)) {
      case 0:
        text.erase(at, length);
        break;
      case 1:
        text.insert(at, text.substr(below(engine, text.size()), length));
        break;
      case 2:
        text[at] = static_cast<char>(below(engine, 256));
        break;
      default:
        text[at] = signs[below(engine, signs.size())];
    }
  }
  return text;
}

TEST(WoundedIesFiles, AreLightOrRefusedWithALine) {
  const std::vector<std::string> whole{
      kQuarters, with(kQuarters, "TILT=NONE", "TILT=INCLUDE\r\n3\r\n3\r\n0 45 90\r\n1 0.9 0.8"),
      with(kQuarters, "5 3 1 2", "5 3 2 2"), with(with(kQuarters, "5 3 1 2", "5 3 3 2"), "0 45 90", "-60 5 70"),
      "Made by hand\nTILT=NONE\n1 1 1 2 4 1 1 1 1 0\n1 1 60\n0 180\n0 90 180 270\n8 8\n20 20\n30 30\n40 40\n"};
  std::mt19937_64 engine(kSeed);
  int accepted = 0, refused = 0;
  for (int i = 0; i < 20000; ++i)
    readsAsLightOrRefuses(wounded(whole[below(engine, whole.size())], engine)) ? ++accepted : ++refused;
  // Both kinds must come up, or the wounds would be too deep or too shallow to show anything.
  EXPECT_GT(accepted, 2000) << "seed " << kSeed;
  EXPECT_GT(refused, 2000) << "seed " << kSeed;
}

}  // namespace
}  // namespace wend::exchange
