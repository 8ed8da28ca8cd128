/// Costs of neighbouring cells handled together.
#pragma once

#include <cstddef>
#include <cstring>
#include <limits>

namespace wend::crew {

template <class Cost>
constexpr Cost kNever = std::numeric_limits<Cost>::infinity();

/// to[i] = min(to[i], from[i] + price) for eight neighbours. Sixteen bytes at once are what every machine has.
/// Requires float or double; the two may overlap only when they are the same.
template <class Cost>
inline void lowerEight(Cost* to, const Cost* from, Cost price) {
  typedef Cost Lanes __attribute__((vector_size(16)));
  constexpr std::size_t kLanes = 16 / sizeof(Cost);
  for (std::size_t i = 0; i < 8; i += kLanes) {
    Lanes a, b;
    std::memcpy(&a, to + i, 16);
    std::memcpy(&b, from + i, 16);
    b += price;
    a = b < a ? b : a;
    std::memcpy(to + i, &a, 16);
  }
}

/// For each byte eight numbers: nothing where its bit is set, and infinite where not.
template <class Cost>
struct EightPrices {
  Cost of[256][8];
  constexpr EightPrices() : of{} {
    for (int byte = 0; byte < 256; ++byte)
      for (int i = 0; i < 8; ++i) of[byte][i] = (byte >> i) & 1 ? Cost{0} : kNever<Cost>;
  }
};
template <class Cost>
inline constexpr EightPrices<Cost> kEightPrices{};

/// The same for those of the eight whose bit is set.
template <class Cost>
inline void lowerSome(Cost* to, const Cost* from, Cost price, unsigned bits) {
  typedef Cost Lanes __attribute__((vector_size(16)));
  constexpr std::size_t kLanes = 16 / sizeof(Cost);
  const Cost* more = kEightPrices<Cost>.of[bits];
  for (std::size_t i = 0; i < 8; i += kLanes) {
    Lanes a, b, c;
    std::memcpy(&a, to + i, 16);
    std::memcpy(&b, from + i, 16);
    std::memcpy(&c, more + i, 16);
    b += c + price;
    a = b < a ? b : a;
    std::memcpy(to + i, &a, 16);
  }
}

}  // namespace wend::crew
