// Motion held against general references: Boost.Math's interpolators and quadrature, published worked values of the
// monotone cubic, and measured people.

// Boost 1.74's pchip.hpp calls isnan unqualified and needs the C header before it.
#include <gtest/gtest.h>
#include <math.h>

#include <array>
#include <boost/math/interpolators/catmull_rom.hpp>
#include <boost/math/interpolators/pchip.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <random>

#include "core/geometry/curve.h"
#include "core/geometry/monotone_cubic.h"
#include "core/motion/posture.h"
#include "core/motion/track.h"

namespace wend {
namespace {

using geometry::Point;

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (static_cast<double>(random() >> 11) / 9007199254740992.0);
}

TEST(MonotoneCubicAgainstBoost, KnotsThatRiseRestAndRise) {
  // Boost.Math 1.74, interpolators/pchip.hpp, run on these knots: 0.625 at 0.5, slope 1 at 0, flat between 1 and 2.
  const std::vector<double> x{0, 1, 2, 3}, y{0, 1, 1, 2};
  const geometry::MonotoneCubic ours(x, y);
  EXPECT_DOUBLE_EQ(ours(0.5), 0.625);
  EXPECT_DOUBLE_EQ(ours.slope(0), 1);
  for (double at = 1; at <= 2; at += 0.125) EXPECT_EQ(ours(at), 1.0);
}

TEST(MonotoneCubicAgainstBoost, RandomKnotsAgreeInValueAndSlope) {
  std::mt19937_64 random(1980);
  for (int run = 0; run < 300; ++run) {
    std::vector<double> x{uniform(random, -5, 5)}, y{uniform(random, -5, 5)};
    for (int k = 0; k < 7; ++k) {
      x.push_back(x.back() + uniform(random, 0.05, 4));
      y.push_back(random() % 5 ? uniform(random, -5, 5) : y.back());
    }
    const geometry::MonotoneCubic ours(x, y);
    auto boostX = x, boostY = y;
    const boost::math::interpolators::pchip<std::vector<double>> theirs(std::move(boostX), std::move(boostY));
    for (int k = 0; k < 200; ++k) {
      const double at = uniform(random, x.front(), x.back());
      EXPECT_NEAR(ours(at), theirs(at), 1e-12) << run << " " << at;
      EXPECT_NEAR(ours.slope(at), theirs.prime(at), 1e-9 * (1 + std::abs(theirs.prime(at)))) << run << " " << at;
    }
  }
}

TEST(EasedTrackAgainstBoost, MetresAgainstTimeAreItsMonotoneCubicWithStillEnds) {
  std::mt19937_64 random(1984);
  for (int run = 0; run < 100; ++run) {
    std::vector<motion::TrackMark> marks;
    std::vector<double> times, metres;
    double t = 0, x = 0;
    for (int k = 0; k < 6; ++k) {
      motion::TrackMark mark{t, t, {x, 0}, 1.5, {}};
      mark.leg.eased = true;
      marks.push_back(mark);
      times.push_back(t);
      metres.push_back(x);
      t += uniform(random, 0.5, 6);
      x += uniform(random, 0.1, 5);
    }
    const motion::Track track = *motion::trackThrough(marks);
    const double end = times.back();
    const boost::math::interpolators::pchip<std::vector<double>> theirs(std::move(times), std::move(metres), 0.0, 0.0);
    for (int k = 0; k < 200; ++k) {
      const double at = uniform(random, 0, end);
      EXPECT_NEAR(track.place(at).x, theirs(at), 1e-12) << run << " " << at;
      EXPECT_NEAR(track.speed(at), theirs.prime(at), 1e-11) << run << " " << at;
    }
  }
}

using Pair = std::array<double, 2>;

/// Boost's curve through the points with the mirrored neighbours written out: its inner pieces are ours.
boost::math::catmull_rom<Pair> boostCurve(const std::vector<Point>& points) {
  const std::size_t n = points.size();
  std::vector<Pair> all{{2 * points[0].x - points[1].x, 2 * points[0].y - points[1].y}};
  for (const Point p : points) all.push_back({p.x, p.y});
  all.push_back({2 * points[n - 1].x - points[n - 2].x, 2 * points[n - 1].y - points[n - 2].y});
  return boost::math::catmull_rom<Pair>(std::move(all), false, 0.5);
}

std::vector<Point> randomPoints(std::mt19937_64& random) {
  std::vector<Point> points;
  while (points.size() < 6) points.push_back({uniform(random, -5, 5), uniform(random, -5, 5)});
  return points;
}

TEST(SmoothWayAgainstBoost, CentripetalCurveIsItsCatmullRom) {
  std::mt19937_64 random(1974);
  for (int run = 0; run < 100; ++run) {
    const std::vector<Point> points = randomPoints(random);
    const auto theirs = boostCurve(points);
    const std::vector<geometry::Cubic> ours = geometry::catmullRom(points);
    for (std::size_t i = 0; i < ours.size(); ++i)
      for (double u = 0; u < 1; u += 0.05) {
        const double knot = geometry::lerp(theirs.parameter_at_point(i + 1), theirs.parameter_at_point(i + 2), u);
        const Pair there = theirs(knot);
        EXPECT_LT(distance(ours[i].place(u), {there[0], there[1]}), 1e-11) << run << " " << i << " " << u;
      }
  }
}

TEST(SmoothWayAgainstBoost, ItsMetresAreThoseWalkedAlongBoostsCurve) {
  // Walked in chords between Boost's own places: its derivative (prime) in 1.74 is not that of its places.
  std::mt19937_64 random(2011);
  for (int run = 0; run < 20; ++run) {
    const std::vector<Point> points = randomPoints(random);
    const auto theirs = boostCurve(points);
    const geometry::Curve ours = geometry::Curve::along(geometry::catmullRom(points));
    const double from = theirs.parameter_at_point(1), until = theirs.parameter_at_point(points.size());
    const int parts = 100000;
    double metres = 0;
    Point last = points.front();
    for (int k = 1; k < parts; ++k) {
      const Pair next = theirs(geometry::lerp(from, until, 1.0 * k / parts));
      metres += distance(last, {next[0], next[1]});
      last = {next[0], next[1]};
      if (k % 5000 == 0) {
        EXPECT_LT(distance(ours.place(metres), last), 1e-5) << run << " after " << metres << " m";
      }
    }
    EXPECT_NEAR(ours.length(), metres + distance(last, points.back()), 1e-5) << run;
  }
}

TEST(ArcAgainstBoost, UnevenRadiiHaveTheLengthOfTheSpiral) {
  const geometry::Arc arc{{0, 0}, 2.300, 2.305, 40, -360};
  const auto rate = [](double share) { return std::hypot(0.005, (2.3 + 0.005 * share) * 2 * std::numbers::pi); };
  EXPECT_NEAR(arc.length(), (boost::math::quadrature::gauss_kronrod<double, 31>::integrate(rate, 0.0, 1.0)), 1e-9);
}

/// C. C. Gordon et al., "2012 Anthropometric Survey of U.S. Army Personnel" (ANSUR II), NATICK/TR-15/007, 2014: means
/// in millimetres of 4082 men and 1986 women, taken over the public data files of the survey.
struct Surveyed {
  double stature, sittingEyeHeight, kneeHeight, standingEyeHeight;
};
constexpr Surveyed kMen{1756.2, 804.5, 488.4, 1642.4};
constexpr Surveyed kWomen{1628.5, 747.7, 449.1, 1519.5};

TEST(EyeHeight, StandingAndSittingAgreeWithTheSurveyWithinACentimetre) {
  using motion::Posture;
  for (const Surveyed& mean : {kMen, kWomen}) {
    const double stature = mean.stature / 1000;
    EXPECT_NEAR(motion::eyeHeight(Posture::stand, stature), mean.standingEyeHeight / 1000, 0.01);
    EXPECT_NEAR(motion::eyeHeight(Posture::sit, stature) - motion::kSeatHeight, mean.sittingEyeHeight / 1000, 0.01);
    EXPECT_NEAR(motion::eyeHeight(Posture::kneel, stature), (mean.standingEyeHeight - mean.kneeHeight) / 1000, 0.01);
  }
}

TEST(EyeHeight, StandingAgreesWithBritishAdultsWithinTwoCentimetres) {
  // Statures and standing eye heights of British adults, 5th, 50th and 95th percentile, mm:
  // personal.cityu.edu.hk/meachan, chapter 2, tables 2-1 and 2-2. Percentiles of two dimensions are not the same
  // people: hence the wider band.
  constexpr std::array<std::array<double, 2>, 6> rows{
      {{1625, 1515}, {1740, 1630}, {1855, 1745}, {1505, 1405}, {1610, 1505}, {1710, 1610}}};
  for (const auto& [stature, eyes] : rows)
    EXPECT_NEAR(motion::eyeHeight(motion::Posture::stand, stature / 1000), eyes / 1000, 0.02);
}

}  // namespace
}  // namespace wend
