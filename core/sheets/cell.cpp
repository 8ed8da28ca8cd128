#include "core/sheets/cell.h"

#include "core/base/text.h"
#include "core/sheets/text_words.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"
#include "core/units/stop.h"

namespace wend::sheets {

namespace {

const char* unitOfAxis(snags::Move::Axis axis) {
  switch (axis) {
    case snags::Move::Axis::focus:
      return "Metres";
    case snags::Move::Axis::iris:
      return "TStop";
    case snags::Move::Axis::zoom:
      return "Mm";
    case snags::Move::Axis::density:
      return "Stops";
  }
  return "";
}

}  // namespace

Cell figure(std::string words, std::string key, std::optional<double> value) {
  return {std::move(words), {{std::move(key), value}}};
}

Cell count(std::string key, std::size_t number) {
  return figure(std::to_string(number), std::move(key), static_cast<double>(number));
}

Cell secondsCell(const std::string& name, std::optional<double> seconds, const std::string& missing) {
  return figure(seconds ? units::secondsText(*seconds) : missing, name + "Seconds", seconds);
}

Cell metresCell(const plan::Plan& plan, const std::string& name, std::optional<double> metres,
                const std::string& missing) {
  const std::string words = !metres                  ? missing
                            : std::isfinite(*metres) ? snags::lengthText(plan, *metres)
                                                     : std::string("\u221e");
  return figure(words, name + "Metres", metres);
}

Cell degreesCell(const std::string& name, double degrees, int digits) {
  return figure(base::fixed(degrees, digits) + "\u00b0", name + "Degrees", degrees);
}

Cell stopCell(const std::string& name, const std::optional<double>& tStop) {
  return figure(stopOr(tStop), name + "TStop", tStop);
}

Cell stopsCell(const std::string& name, const std::optional<double>& stops) {
  return figure(signedStops(stops), name + "Stops", stops);
}

Cell spanCell(const geometry::Span& span) {
  return {spanText(span), {{"fromSeconds", span.from}, {"untilSeconds", span.until}}};
}

Cell placeCell(geometry::Point place) {
  return {placeText(place), {{"xMetres", place.x}, {"yMetres", place.y}}};
}

Cell valueCell(const plan::Plan& plan, const std::string& name, snags::Move::Axis axis, double value) {
  return figure(valueText(plan, axis, value), name + unitOfAxis(axis), value);
}

Cell peakCell(const snags::Move& move) {
  const std::string words = rateText(move);
  if (move.axis == snags::Move::Axis::focus) return figure(words, "peakDegreesPerSecond", move.peakDegPerSecond);
  if (move.axis == snags::Move::Axis::zoom) return figure(words, "peakPercentPerSecond", move.peakPercentPerSecond);
  return figure(words, "peakStopsPerSecond", move.peakStopsPerSecond);
}

Cell triggerCell(const snags::Move& move) {
  return figure(triggerText(move.beat, move.plus), "plusSeconds", move.plus);
}

}  // namespace wend::sheets
