/// Timecode and T-numbers against figures that others published. Each check names where its figure was read.
#include "core/units/timecode.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/units/stop.h"

namespace wend::units {
namespace {

constexpr TimecodeKind kDrop2997{{30000, 1001}, true};
constexpr TimecodeKind kWhole2997{{30000, 1001}, false};
constexpr TimecodeKind kDrop5994{{60000, 1001}, true};

void expectLabel(std::int64_t frame, const char* label, TimecodeKind kind) {
  EXPECT_EQ(timecodeText(frame, kind), label);
  const auto back = framesFrom(label, kind);
  ASSERT_TRUE(back.ok()) << label;
  EXPECT_EQ(*back, frame);
}

// Time::Timecode by S. Shaw, test file t/03conversions.t, github.com/sshaw/Time-Timecode: frame 1800 is 00:01:00;02.
// The other labels of this test follow from the same rule and were confirmed with the smpte-timecode package of the npm
// registry.
TEST(PublishedTimecode, DropsTwoLabelsAtTheMinute) {
  expectLabel(1799, "00:00:59;29", kDrop2997);
  expectLabel(1800, "00:01:00;02", kDrop2997);
  expectLabel(3597, "00:01:59;29", kDrop2997);
  expectLabel(3598, "00:02:00;02", kDrop2997);
}

// Documentation of the crate oximedia-timecode, docs.rs: 17982 frames to ten minutes, 107892 to an hour.
TEST(PublishedTimecode, DropsNoneAtTheTenthMinute) {
  expectLabel(17981, "00:09:59;29", kDrop2997);
  expectLabel(17982, "00:10:00;00", kDrop2997);
  expectLabel(19781, "00:10:59;29", kDrop2997);
  expectLabel(19782, "00:11:00;02", kDrop2997);
  expectLabel(107892, "01:00:00;00", kDrop2997);
  expectLabel(1078920, "10:00:00;00", kDrop2997);
}

// B. Dunning, briandunning.com/cf/1596: 01:05:20;02 is frame 117484.
TEST(PublishedTimecode, CountsFramesOfAnHourAndFiveMinutes) {
  expectLabel(117484, "01:05:20;02", kDrop2997);
}

// D. Heidelberger, "Drop Frame Timecode", davidheidelberger.com, 10 June 2010: 12:38:59;29 is followed by 12:39:00;02.
TEST(PublishedTimecode, FollowsTheSequenceOfTheArticle) {
  expectLabel(1364833, "12:38:59;29", kDrop2997);
  expectLabel(1364834, "12:39:00;02", kDrop2997);
}

// oximedia-timecode again: 24 x 107892 = 2589408 frames to a day.
TEST(PublishedTimecode, WrapsAfterADay) {
  EXPECT_EQ(labelsPerDay(kDrop2997), 2589408);
  expectLabel(2589407, "23:59:59;29", kDrop2997);
  EXPECT_EQ(timecodeText(2589408, kDrop2997), "00:00:00;00");
}

// The rule as D. Heidelberger gives it: ;00 and ;01 of such a minute do not exist.
TEST(PublishedTimecode, RejectsLabelsThatWereDropped) {
  EXPECT_FALSE(framesFrom("00:01:00;00", kDrop2997).ok());
  EXPECT_FALSE(framesFrom("00:01:00;01", kDrop2997).ok());
  EXPECT_TRUE(framesFrom("00:10:00;00", kDrop2997).ok());
  EXPECT_TRUE(framesFrom("00:01:00:00", kWhole2997).ok());
}

// An hour of whole labels at 30000/1001 lasts 3600 x 1.001 s; derived from the rate.
TEST(PublishedTimecode, RunsSlowWithoutDropFrame) {
  expectLabel(108000, "01:00:00:00", kWhole2997);
  EXPECT_NEAR(secondsAt(108000, kWhole2997.rate), 3603.6, 1e-9);
}

// Mailing list lists.ardour.org, 1 November 2012, quoting SMPTE 12M-1999: drop frame is off by "-3.6ms per hour or
// about -86ms" per day.
TEST(PublishedTimecode, StaysWithinMillisecondsInDropFrame) {
  EXPECT_NEAR((secondsAt(107892, kDrop2997.rate) - 3600) * 1000, -3.6, 0.05);
  EXPECT_NEAR((secondsAt(2589408, kDrop2997.rate) - 86400) * 1000, -86, 0.5);
}

// Counting alone: 3600 s at the whole rates.
TEST(PublishedTimecode, CountsWholeRates) {
  expectLabel(86400, "01:00:00:00", {{24, 1}, false});
  expectLabel(90000, "01:00:00:00", {{25, 1}, false});
  expectLabel(108000, "01:00:00:00", {{30, 1}, false});
}

// D. Heidelberger: at 59.94 four labels are dropped. Frame numbers derived and confirmed with npm smpte-timecode.
TEST(PublishedTimecode, DropsFourLabelsAtDoubleRate) {
  expectLabel(3600, "00:01:00;04", kDrop5994);
  expectLabel(215784, "01:00:00;00", kDrop5994);
  EXPECT_FALSE(framesFrom("00:01:00;03", kDrop5994).ok());
}

// Time::Timecode t/03conversions.t: 1800 frames at 24 are 00:01:15:00.
TEST(PublishedTimecode, CountsAt24) {
  expectLabel(1800, "00:01:15:00", {{24, 1}, false});
}

// Large-format photography forum, largeformatphotography.info, thread 8513: the exact series of thirds from 1 to 32,
// printed to the hundredth.
TEST(PublishedStops, AreTheExactSeriesOfThirds) {
  constexpr std::array<double, 31> kSeries{1.00,  1.12,  1.26,  1.41,  1.59,  1.78,  2.00,  2.24,  2.52, 2.83,  3.17,
                                           3.56,  4.00,  4.49,  5.04,  5.66,  6.35,  7.13,  8.00,  8.98, 10.08, 11.31,
                                           12.70, 14.25, 16.00, 17.96, 20.16, 22.63, 25.40, 28.51, 32.00};
  for (int k = 0; k <= 30; ++k) EXPECT_NEAR(exactStop(k), kSeries[static_cast<std::size_t>(k)], 0.0075) << k;
}

// "F-number", section "Fractional stops", copy at zalansite.site: after 2.8 come 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8.
TEST(PublishedStops, PutMarkedThirdsWhereTheyBelong) {
  constexpr std::array<double, 10> kMarked{2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8};
  for (std::size_t i = 0; i < kMarked.size(); ++i) EXPECT_EQ(nearestThirds(kMarked[i]), 9 + static_cast<int>(i));
}

// US Army correspondence course SS0511, armycommunications.tpub.com/SS0511/SS05110095.htm: light at f/5.6 is one
// sixteenth of that at f/1.4, with the exact values behind the marks.
TEST(PublishedStops, AreFourBetween14And56) {
  EXPECT_NEAR(stopsBetween(exactStop(3), exactStop(15)), 4, 1e-12);
  EXPECT_NEAR(std::exp2(-stopsBetween(1.4, 5.6)), 1.0 / 16, 1e-12);
}

}  // namespace
}  // namespace wend::units
