/// A day of the calendar, as plans write it: 2031-06-21.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace wend::plan {

/// Of the Gregorian calendar. Of the years 1900 to 2199 only, for which everyday sun formulas are meant.
struct Date {
  int year = 2000, month = 1, day = 1;
  bool operator==(const Date&) const = default;
};

/// True for a day that exists in those years: no 31st of June, a 29th of February in leap years only.
bool isDate(const Date& date);

/// "YYYY-MM-DD", with nothing left out; nothing when it is no such day.
/// Ensures   (1) dateFrom(dateText(d)) == d for every d that isDate
/// Source    ISO 8601-1:2019, calendar date, extended format
std::optional<Date> dateFrom(std::string_view text);
std::string dateText(const Date& date);

}  // namespace wend::plan
