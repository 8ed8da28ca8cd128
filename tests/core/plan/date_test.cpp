#include "core/plan/date.h"

#include <gtest/gtest.h>

namespace wend::plan {
namespace {

TEST(Date, IsADayOfTheCalendar) {
  EXPECT_EQ(dateFrom("2031-06-21"), (Date{2031, 6, 21}));
  EXPECT_EQ(dateFrom("1900-01-01"), (Date{1900, 1, 1}));
  EXPECT_EQ(dateFrom("2199-12-31"), (Date{2199, 12, 31}));
  for (const char* none : {"2031-06-31", "2031-13-01", "2031-00-10", "2031-01-00", "1899-12-31", "2200-01-01"})
    EXPECT_FALSE(dateFrom(none)) << none;
}

// Every fourth year, but not 1900 and 2100, which are no multiples of 400: the rule of the Gregorian calendar
// (Inter gravissimas, 1582).
TEST(Date, HasAnExtraDayInLeapYears) {
  for (const int year : {1904, 2000, 2032, 2096}) EXPECT_TRUE(isDate({year, 2, 29})) << year;
  for (const int year : {1900, 2031, 2033, 2100}) EXPECT_FALSE(isDate({year, 2, 29})) << year;
}

TEST(Date, IsWrittenInFull) {
  for (const char* wrong : {"", "2031-6-21", "31-06-21", "2031/06/21", "2031-06-21 ", "2031-06-2a", "+031-06-21",
                            "20310621", "2031-06-21T00:00"})
    EXPECT_FALSE(dateFrom(wrong)) << wrong;
}

TEST(Date, ComesBackFromItsText) {
  int days = 0;
  for (int year = 1900; year < 2200; ++year)
    for (int month = 1; month <= 12; ++month)
      for (int day = 1; day <= 31; ++day) {
        const Date date{year, month, day};
        if (!isDate(date)) continue;
        ++days;
        ASSERT_EQ(dateFrom(dateText(date)), date) << dateText(date);
      }
  EXPECT_EQ(days, 300 * 365 + 73);  // 75 years divisible by 4, without 1900 and 2100
}

}  // namespace
}  // namespace wend::plan
