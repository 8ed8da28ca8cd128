/// A cell of a table: the words that are printed, and the figures behind them for programs.
///
/// Units     a figure's key ends in its unit: Seconds, Metres, MetresPerSecond, Degrees, DegreesPerSecond, Stops,
///           StopsPerSecond, TStop, Mm, PercentPerSecond, Kelvin, Mired, Share (0 to 1), Decibels, NewtonMetres, Candela,
///           Lumens; a key without one of these is a count or a ratio.
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/answers/answers.h"

namespace wend::sheets {

/// SI, whatever the plan's display. No value: not known. Infinite: unbounded.
struct Figure {
  std::string key;
  std::optional<double> value;
};

struct Cell {
  std::string words;
  std::vector<Figure> figures{};  ///< keys unlike any other of the same row

  Cell(std::string text) : words(std::move(text)) {}
  Cell(const char* text) : words(text) {}
  Cell(std::string text, std::vector<Figure> behind) : words(std::move(text)), figures(std::move(behind)) {}
};

/// The words with one figure behind them.
Cell figure(std::string words, std::string key, std::optional<double> value);
/// A count in its own words.
Cell count(std::string key, std::size_t number);

// Each in the words the sheets use, under `name` and its unit: "at" is "atSeconds". `missing` stands where nothing is
// known.
Cell secondsCell(const std::string& name, std::optional<double> seconds, const std::string& missing = "unknown");
Cell metresCell(const plan::Plan& plan, const std::string& name, std::optional<double> metres,
                const std::string& missing = "unknown");
Cell degreesCell(const std::string& name, double degrees, int digits = 0);
Cell stopCell(const std::string& name, const std::optional<double>& tStop);
/// A difference of light with its sign; unknown without one.
Cell stopsCell(const std::string& name, const std::optional<double>& stops);
/// "fromSeconds" and "untilSeconds".
Cell spanCell(const geometry::Span& span);
/// "xMetres" and "yMetres", of the plan.
Cell placeCell(geometry::Point place);
/// A value of an axis in its own unit: metres, a T-stop, mm, stops.
Cell valueCell(const plan::Plan& plan, const std::string& name, snags::Move::Axis axis, double value);

/// The fastest of a move: "peakDegreesPerSecond", "peakStopsPerSecond", "peakPercentPerSecond".
Cell peakCell(const snags::Move& move);
/// "b5+2.0", with "plusSeconds" after the beat.
Cell triggerCell(const snags::Move& move);

}  // namespace wend::sheets
