#include "core/sight/row_kernels.h"

#if defined(__x86_64__) && defined(__GNUC__)

#include <immintrin.h>

#include <limits>

// Only these functions hold AVX2 instructions: the rest of the program runs on any processor of its kind.
#define WEND_AVX2 __attribute__((target("avx2")))

namespace wend::sight {

namespace {

constexpr float kFar = std::numeric_limits<float>::max();

/// Eight rows' stretches of cells, as [from, until).
struct Stretches {
  __m256i from, until;
};

WEND_AVX2 inline __m256 rowsFrom(int row) {
  return _mm256_cvtepi32_ps(_mm256_add_epi32(_mm256_set1_epi32(row), _mm256_setr_epi32(0, 1, 2, 3, 4, 5, 6, 7)));
}

/// The first whole number at or right of x, which is not negative.
WEND_AVX2 inline __m256i firstCell(__m256 x) {
  const __m256i whole = _mm256_cvttps_epi32(x);
  const __m256i below = _mm256_castps_si256(_mm256_cmp_ps(_mm256_cvtepi32_ps(whole), x, _CMP_LT_OQ));
  return _mm256_sub_epi32(whole, below);
}

/// Rows at or past `rows` of the eight hold nothing.
WEND_AVX2 inline Stretches cellsBetween(__m256 low, __m256 high, int columns, int rows) {
  const __m256 zero = _mm256_setzero_ps(), wide = _mm256_set1_ps(static_cast<float>(columns));
  const __m256 first = _mm256_min_ps(_mm256_max_ps(low, zero), wide);
  const __m256 end = _mm256_min_ps(_mm256_max_ps(_mm256_add_ps(high, _mm256_set1_ps(1)), zero), wide);
  const __m256i counted = _mm256_cmpgt_epi32(_mm256_set1_epi32(rows), _mm256_setr_epi32(0, 1, 2, 3, 4, 5, 6, 7));
  return {firstCell(first), _mm256_and_si256(_mm256_cvttps_epi32(end), counted)};
}

WEND_AVX2 inline __m256 xAt(const BorderLine& line, __m256 y) {
  return _mm256_add_ps(_mm256_set1_ps(line.x0),
                       _mm256_mul_ps(_mm256_sub_ps(y, _mm256_set1_ps(line.y0)), _mm256_set1_ps(line.slope)));
}

WEND_AVX2 inline __m256 within(const BorderLine& line, __m256 y) {
  return _mm256_and_ps(_mm256_cmp_ps(y, _mm256_set1_ps(line.low), _CMP_GE_OQ),
                       _mm256_cmp_ps(y, _mm256_set1_ps(line.high), _CMP_LE_OQ));
}

/// The bits from `bit` on of four words: all below zero, none from 64 on.
WEND_AVX2 inline __m256i bitsFrom(__m256i bit) {
  const __m256i ones = _mm256_set1_epi64x(-1);
  return _mm256_sllv_epi64(ones, bit);
}

/// Adds or clears the stretches in eight rows from `row` on.
template <bool kAdd>
WEND_AVX2 inline void paint(const Stretches& s, int row, const BitRows& out) {
  const __m256i some = _mm256_cmpgt_epi32(s.until, s.from);
  if (_mm256_testz_si256(some, some)) return;
  alignas(32) int from[8], until[8];
  _mm256_store_si256(reinterpret_cast<__m256i*>(from),
                     _mm256_or_si256(_mm256_and_si256(some, s.from),
                                     _mm256_andnot_si256(some, _mm256_set1_epi32(std::numeric_limits<int>::max()))));
  _mm256_store_si256(reinterpret_cast<__m256i*>(until), _mm256_and_si256(some, s.until));
  int first = from[0], last = until[0];
  for (int i = 1; i < 8; ++i) first = std::min(first, from[i]), last = std::max(last, until[i]);
  const __m256i zero = _mm256_setzero_si256();
  const __m256i lows = _mm256_and_si256(some, s.from), highs = _mm256_and_si256(some, s.until);
  for (int word = first / 64; 64 * word < last; ++word) {
    const __m256i shift = _mm256_set1_epi32(64 * word);
    const __m256i low = _mm256_max_epi32(_mm256_sub_epi32(lows, shift), zero);
    const __m256i high = _mm256_max_epi32(_mm256_sub_epi32(highs, shift), zero);
    std::uint64_t* const at = out.words + word * out.stride + row;
    for (int half = 0; half < 2; ++half) {
      const __m128i lowHalf = half == 0 ? _mm256_castsi256_si128(low) : _mm256_extracti128_si256(low, 1);
      const __m128i highHalf = half == 0 ? _mm256_castsi256_si128(high) : _mm256_extracti128_si256(high, 1);
      const __m256i mask =
          _mm256_andnot_si256(bitsFrom(_mm256_cvtepi32_epi64(highHalf)), bitsFrom(_mm256_cvtepi32_epi64(lowHalf)));
      __m256i* const words = reinterpret_cast<__m256i*>(at + 4 * half);
      const __m256i old = _mm256_loadu_si256(words);
      _mm256_storeu_si256(words, kAdd ? _mm256_or_si256(old, mask) : _mm256_andnot_si256(mask, old));
    }
  }
}

WEND_AVX2 void addWidened(const WidenedShape& shape, const BitRows& out) {
  const __m256 far = _mm256_set1_ps(kFar), near = _mm256_set1_ps(-kFar);
  const auto count = [](int n) { return static_cast<std::size_t>(n); };
  for (int row = shape.rowFrom; row < shape.rowUntil; row += 8) {
    const __m256 y = rowsFrom(row);
    const float south = static_cast<float>(row), north = static_cast<float>(row + 7);
    __m256 low = far, high = near;
    for (std::size_t i = 0; i < count(shape.corners); ++i) {
      if (south - shape.y[i] > shape.radius || shape.y[i] - north > shape.radius) continue;
      const __m256 off = _mm256_sub_ps(y, _mm256_set1_ps(shape.y[i]));
      const __m256 squared = _mm256_sub_ps(_mm256_set1_ps(shape.squared), _mm256_mul_ps(off, off));
      const __m256 met = _mm256_cmp_ps(squared, _mm256_setzero_ps(), _CMP_GE_OQ);
      const __m256 half = _mm256_sqrt_ps(_mm256_max_ps(squared, _mm256_setzero_ps()));
      const __m256 x = _mm256_set1_ps(shape.x[i]);
      low = _mm256_min_ps(low, _mm256_blendv_ps(far, _mm256_sub_ps(x, half), met));
      high = _mm256_max_ps(high, _mm256_blendv_ps(near, _mm256_add_ps(x, half), met));
    }
    for (std::size_t i = 0; i < count(shape.lefts); ++i) {
      const BorderLine& line = shape.left[i];
      if (line.low > north || line.high < south) continue;
      low = _mm256_min_ps(low, _mm256_blendv_ps(far, xAt(line, y), within(line, y)));
    }
    for (std::size_t i = 0; i < count(shape.rights); ++i) {
      const BorderLine& line = shape.right[i];
      if (line.low > north || line.high < south) continue;
      high = _mm256_max_ps(high, _mm256_blendv_ps(near, xAt(line, y), within(line, y)));
    }
    paint<true>(cellsBetween(low, high, out.columns, shape.rowUntil - row), row, out);
  }
}

WEND_AVX2 void eraseNarrowed(const NarrowedShape& shape, const BitRows& out) {
  for (int row = shape.rowFrom; row < shape.rowUntil; row += 8) {
    const __m256 y = rowsFrom(row);
    __m256 low = _mm256_set1_ps(-kFar), high = _mm256_set1_ps(kFar);
    for (std::size_t i = 0; i < static_cast<std::size_t>(shape.lefts); ++i)
      low = _mm256_max_ps(low, xAt(shape.left[i], y));
    for (std::size_t i = 0; i < static_cast<std::size_t>(shape.rights); ++i)
      high = _mm256_min_ps(high, xAt(shape.right[i], y));
    paint<false>(cellsBetween(low, high, out.columns, shape.rowUntil - row), row, out);
  }
}

WEND_AVX2 void toggleEdge(const FillEdge& edge, const BitRows& toggles) {
  const __m256 zero = _mm256_setzero_ps(), wide = _mm256_set1_ps(static_cast<float>(toggles.columns));
  const __m256 x0 = _mm256_set1_ps(edge.x0), y0 = _mm256_set1_ps(edge.y0), slope = _mm256_set1_ps(edge.slope);
  for (int row = edge.rowFrom; row < edge.rowUntil; row += 8) {
    const __m256 x = _mm256_add_ps(x0, _mm256_mul_ps(_mm256_sub_ps(rowsFrom(row), y0), slope));
    const __m256i cell = firstCell(_mm256_min_ps(_mm256_max_ps(x, zero), wide));
    alignas(32) int cells[8];
    _mm256_store_si256(reinterpret_cast<__m256i*>(cells), cell);
    const int count = std::min(8, edge.rowUntil - row);
    std::uint64_t* const at = toggles.words + row;
    for (int i = 0; i < count; ++i) at[(cells[i] >> 6) * toggles.stride + i] ^= std::uint64_t{1} << (cells[i] & 63);
  }
}

/// Each bit the parity of the bits up to it, and of what came before the word.
WEND_AVX2 inline __m256i parities(__m256i bits, __m256i before) {
  bits = _mm256_xor_si256(bits, _mm256_slli_epi64(bits, 1));
  bits = _mm256_xor_si256(bits, _mm256_slli_epi64(bits, 2));
  bits = _mm256_xor_si256(bits, _mm256_slli_epi64(bits, 4));
  bits = _mm256_xor_si256(bits, _mm256_slli_epi64(bits, 8));
  bits = _mm256_xor_si256(bits, _mm256_slli_epi64(bits, 16));
  bits = _mm256_xor_si256(bits, _mm256_slli_epi64(bits, 32));
  return _mm256_xor_si256(bits, before);
}

WEND_AVX2 void fill(const BitRows& toggles, const WordBox& box, const BitRows& out) {
  const __m256i zero = _mm256_setzero_si256();
  const auto inGrid = static_cast<long long>((std::uint64_t{1} << (out.columns % 64)) - 1);
  for (int row = box.rowFrom; row < box.rowUntil; row += 4) {
    __m256i inside = zero;
    for (int word = box.wordFrom; word < box.wordUntil; ++word) {
      __m256i* const from = reinterpret_cast<__m256i*>(toggles.words + word * toggles.stride + row);
      __m256i* const to = reinterpret_cast<__m256i*>(out.words + word * out.stride + row);
      __m256i bits = parities(_mm256_loadu_si256(from), inside);
      _mm256_storeu_si256(from, zero);
      inside = _mm256_cmpgt_epi64(zero, bits);
      if (word == out.columns / 64) bits = _mm256_and_si256(bits, _mm256_set1_epi64x(inGrid));
      _mm256_storeu_si256(to, _mm256_or_si256(_mm256_loadu_si256(to), bits));
    }
  }
}

WEND_AVX2 inline __m256i fourFrom(const std::uint64_t* words) {
  return _mm256_loadu_si256(reinterpret_cast<const __m256i*>(words));
}

WEND_AVX2 inline void addFour(__m256i bits, std::uint64_t* to) {
  _mm256_storeu_si256(reinterpret_cast<__m256i*>(to), _mm256_or_si256(fourFrom(to), bits));
}

WEND_AVX2 int differences(const std::uint64_t* a, const std::uint64_t* b, int count, int* out) {
  int found = 0, i = 0;
  for (; i + 4 <= count; i += 4) {
    const __m256i same = _mm256_cmpeq_epi64(fourFrom(a + i), fourFrom(b + i));
    auto differ = static_cast<unsigned>(_mm256_movemask_pd(_mm256_castsi256_pd(same))) ^ 15u;
    for (; differ != 0; differ &= differ - 1) out[found++] = i + std::countr_zero(differ);
  }
  for (; i < count; ++i)
    if (a[i] != b[i]) out[found++] = i;
  return found;
}

WEND_AVX2 void widen(const std::uint64_t* west, const std::uint64_t* here, const std::uint64_t* east, int by, int count,
                     std::uint64_t* grown) {
  const __m128i near = _mm_cvtsi32_si128(by), far = _mm_cvtsi32_si128(64 - by);
  int i = 0;
  for (; i + 4 <= count; i += 4) {
    const __m256i word = fourFrom(here + i);
    const __m256i eastward = _mm256_or_si256(_mm256_sll_epi64(word, near), _mm256_srl_epi64(fourFrom(west + i), far));
    const __m256i westward = _mm256_or_si256(_mm256_srl_epi64(word, near), _mm256_sll_epi64(fourFrom(east + i), far));
    addFour(_mm256_or_si256(eastward, westward), grown + i);
  }
  if (i < count) plainKernels().widen(west + i, here + i, east + i, by, count - i, grown + i);
}

WEND_AVX2 void unite(const std::uint64_t* from, int count, std::uint64_t* to) {
  int i = 0;
  for (; i + 4 <= count; i += 4) addFour(fourFrom(from + i), to + i);
  for (; i < count; ++i) to[i] |= from[i];
}

}  // namespace

const RowKernels* avx2Kernels() {
  static constexpr RowKernels kernels{addWidened, eraseNarrowed, toggleEdge, fill, differences, widen, unite};
  static const bool here = __builtin_cpu_supports("avx2") != 0;
  return here ? &kernels : nullptr;
}

}  // namespace wend::sight

#else

namespace wend::sight {
const RowKernels* avx2Kernels() {
  return nullptr;
}
}  // namespace wend::sight

#endif
