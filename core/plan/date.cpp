#include "core/plan/date.h"

#include <algorithm>

namespace wend::plan {

namespace {

bool isLeap(int year) {
  return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

int daysIn(int year, int month) {
  if (month == 2) return isLeap(year) ? 29 : 28;
  return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
}

int numberOf(std::string_view digits) {
  int value = 0;
  for (const char c : digits) value = value * 10 + (c - '0');
  return value;
}

bool hasShape(std::string_view text) {
  constexpr std::string_view kShape = "0000-00-00";
  return text.size() == kShape.size() && std::equal(text.begin(), text.end(), kShape.begin(), [](char c, char shape) {
           return shape == '-' ? c == '-' : c >= '0' && c <= '9';
         });
}

std::string padded(int number, std::size_t width) {
  std::string digits = std::to_string(number);
  return digits.size() < width ? std::string(width - digits.size(), '0') + digits : digits;
}

}  // namespace

bool isDate(const Date& date) {
  return date.year >= 1900 && date.year < 2200 && date.month >= 1 && date.month <= 12 && date.day >= 1 &&
         date.day <= daysIn(date.year, date.month);
}

std::optional<Date> dateFrom(std::string_view text) {
  if (!hasShape(text)) return std::nullopt;
  const Date date{numberOf(text.substr(0, 4)), numberOf(text.substr(5, 2)), numberOf(text.substr(8, 2))};
  return isDate(date) ? std::optional(date) : std::nullopt;
}

std::string dateText(const Date& date) {
  return padded(date.year, 4) + "-" + padded(date.month, 2) + "-" + padded(date.day, 2);
}

}  // namespace wend::plan
