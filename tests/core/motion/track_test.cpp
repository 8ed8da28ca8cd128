#include "core/motion/track.h"

#include <gtest/gtest.h>

#include <random>

#include "core/geometry/tolerance.h"

namespace wend::motion {
namespace {

using Shape = TrackLeg::Shape;

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (static_cast<double>(random() >> 11) / 9007199254740992.0);
}

TrackMark mark(double at, Point pos, TrackLeg leg = {}) {
  return {at, at, pos, 1.5, leg};
}

TrackLeg leg(Shape shape, bool eased, std::vector<Point> via = {}) {
  return {shape, std::move(via), {}, 0, eased};
}

Track track(std::vector<TrackMark> marks) {
  const auto result = trackThrough(std::move(marks));
  if (!result) ADD_FAILURE() << toText(result.problems().front());
  return *result;
}

std::vector<std::string> codes(std::vector<TrackMark> marks) {
  const auto result = trackThrough(std::move(marks));
  std::vector<std::string> out;
  if (!result)
    for (const base::Problem& problem : result.problems()) out.push_back(problem.code + " " + problem.where);
  return out;
}

/// Straight, smooth and arc legs, even and eased, with stands, holds and changes of height.
std::vector<TrackMark> randomMarks(std::mt19937_64& random) {
  std::vector<TrackMark> marks;
  double t = 0;
  Point here{uniform(random, -5, 5), uniform(random, -5, 5)};
  for (int k = 0; k < 10; ++k) {
    TrackMark next{t, t + (random() % 3 ? 0 : uniform(random, 0.1, 2)), here, uniform(random, 0.5, 2), {}};
    next.leg.eased = random() % 2;
    const auto kind = random() % 4;
    const Point there = kind == 3 ? here : Point{uniform(random, -5, 5), uniform(random, -5, 5)};
    if (kind == 1) next.leg = leg(Shape::smooth, next.leg.eased, {{uniform(random, -5, 5), uniform(random, -5, 5)}});
    if (kind == 2) {
      const Point middle = lerp(here, there, 0.5);
      next.leg.shape = Shape::arc;
      next.leg.centre = middle + left(there - here) * 0.7;
      next.leg.sweep = geometry::turn(bearingOf(here - next.leg.centre), bearingOf(there - next.leg.centre)) + 360;
    }
    marks.push_back(next);
    t = next.until + uniform(random, 0.3, 6);
    here = there;
  }
  return marks;
}

TEST(Track, OrbitReadsItsLengthItsSpeedAndItsTurn) {
  TrackLeg orbit{Shape::arc, {}, {4.5, 3.7}, -360, false};
  const Track camera = track({mark(45, {4.5, 1.4}, orbit), mark(65, {4.5, 1.4})});
  EXPECT_NEAR(camera.totalLength(), 14.4513, 5e-5) << "2 pi 2.30 m";
  EXPECT_NEAR(camera.speed(50), 0.7226, 5e-5);
  EXPECT_EQ(camera.legs()[0].peakSpeed, camera.legs()[0].meanSpeed);
  for (double t = 45; t < 64; t += 0.7) {
    EXPECT_NEAR(distance(camera.place(t), {4.5, 3.7}), 2.30, 1e-12);
    const double from = bearingOf(camera.place(t) - Point{4.5, 3.7});
    EXPECT_NEAR(geometry::turn(from, bearingOf(camera.place(t + 1) - Point{4.5, 3.7})), -18.0, 1e-9);
  }
  EXPECT_NEAR(camera.place(50).x, 6.8, 1e-12) << "anticlockwise from the south: east after a quarter";
}

TEST(Track, ReadsTheMeanSpeedOfALegBetweenTwoMarks) {
  const Track camera = track({mark(65, {4.5, 1.4}), mark(67, {3.35, 2.0}), mark(72, {3.35, 2.0})});
  EXPECT_NEAR(camera.legs()[0].meanSpeed, 0.6486, 5e-5) << "1.15 m by 0.60 m in 2 s";
  EXPECT_TRUE(camera.legs()[1].hold);
  EXPECT_EQ(camera.speed(70), 0);
}

TEST(Track, EvenLegsCoverEqualMetresInEqualTimes) {
  std::mt19937_64 random(11);
  for (int run = 0; run < 40; ++run) {
    auto marks = randomMarks(random);
    for (TrackMark& each : marks) each.leg.eased = false;
    const Track walk = track(marks);
    for (std::size_t i = 0; i < walk.legs().size(); ++i) {
      const LegFigures& figures = walk.legs()[i];
      if (figures.hold) continue;
      const double step = figures.time.length() / 20, fine = step / 400;
      for (double t = figures.time.from; t < figures.time.until - step / 2; t += step) {
        double covered = 0;
        for (int k = 0; k < 400; ++k) covered += distance(walk.place(t + k * fine), walk.place(t + (k + 1) * fine));
        EXPECT_NEAR(covered / step, figures.meanSpeed, 2e-3 * figures.meanSpeed) << run << " leg " << i << " at " << t;
      }
    }
  }
}

TEST(Track, PlaceAndHeightAreContinuous) {
  std::mt19937_64 random(12);
  for (int run = 0; run < 40; ++run) {
    const Track walk = track(randomMarks(random));
    const double end = walk.marks().back().at + 1, step = 1e-3;
    for (double t = -0.5; t < end; t += 0.0317) {
      const double fastest = walk.peakSpeed({t, t + step});
      EXPECT_LE(distance(walk.place(t), walk.place(t + step)), fastest * step * 1.0001 + 1e-9) << run << " " << t;
      EXPECT_LT(std::abs(walk.height(t) - walk.height(t + step)), 0.05) << run << " " << t;
    }
  }
}

TEST(Track, SpeedAndDirectionAreTheDerivative) {
  std::mt19937_64 random(13);
  for (int run = 0; run < 40; ++run) {
    const Track walk = track(randomMarks(random));
    const double h = 1e-5;
    for (double t = 0.01; t < walk.marks().back().at; t += 0.0513) {
      if (walk.legAt(t - h) != walk.legAt(t + h)) continue;
      const Vec numeric = (walk.place(t + h) - walk.place(t - h)) / (2 * h);
      const Vec velocity = walk.speed(t) > 0 ? *walk.travelDirection(t) * walk.speed(t) : Vec{};
      EXPECT_LT(length(numeric - velocity), 1e-3 * (1 + walk.speed(t))) << run << " " << t;
    }
  }
}

TEST(Track, EasedLegStopsAtBothEndsAndPeaksHalfAgainItsMean) {
  const Track walk = track({mark(0, {0, 0}, leg(Shape::straight, true)), mark(4, {2, 0})});
  EXPECT_EQ(walk.speed(0), 0);
  EXPECT_NEAR(walk.speed(2), 0.75, 1e-12);
  EXPECT_NEAR(walk.speed(4 - 1e-9), 0, 1e-8);
  EXPECT_DOUBLE_EQ(walk.legs()[0].peakSpeed, 0.75);
  EXPECT_DOUBLE_EQ(walk.legs()[0].meanSpeed, 0.5);
  EXPECT_NEAR(walk.place(2).x, 1, 1e-12);
  EXPECT_NEAR(walk.place(1).x, 2 * geometry::smoothstep(0.25), 1e-12) << "stop to stop is a smoothstep";
}

TEST(Track, EasedSpeedAtAPassThroughIsTheHarmonicMean) {
  const TrackLeg eased = leg(Shape::straight, true);
  // Durations 2 and 4 s, mean speeds 0.5 and 1 m/s: 18 / 28 m/s.
  const Track walk = track({mark(0, {0, 0}, eased), mark(2, {1, 0}, eased), mark(6, {5, 0})});
  EXPECT_NEAR(walk.speed(2), 18.0 / 28, 1e-12);
  EXPECT_NEAR(walk.speed(2 - 1e-9), 18.0 / 28, 1e-8);
}

TEST(Track, EasedMeetingEvenCountsItsMeanSpeedAndTheEvenLegKeepsIt) {
  const Track walk = track({mark(0, {0, 0}, leg(Shape::straight, true)), mark(2, {1, 0}), mark(6, {5, 0})});
  EXPECT_NEAR(walk.speed(2 - 1e-9), 18.0 / 28, 1e-8);
  EXPECT_DOUBLE_EQ(walk.speed(2), 1);
  EXPECT_DOUBLE_EQ(walk.speed(6 - 1e-9), 1);
}

TEST(Track, StandingAndHoldsAreStops) {
  const TrackLeg eased = leg(Shape::straight, true);
  auto standing = mark(2, {1, 0}, eased);
  standing.until = 3;
  const Track stood = track({mark(0, {0, 0}, eased), standing, mark(6, {5, 0})});
  const Track held = track({mark(0, {0, 0}, eased), mark(2, {1, 0}, eased), mark(3, {1, 0}, eased), mark(6, {5, 0})});
  for (double t = -1; t < 7; t += 0.05) {
    EXPECT_EQ(stood.place(t), held.place(t)) << t;
    EXPECT_NEAR(stood.speed(t), held.speed(t), 1e-15) << t;
  }
  EXPECT_EQ(stood.speed(2), 0);
  EXPECT_EQ(stood.speed(3), 0);
}

TEST(Track, ALegUnderAMillimetreHoldsAndMovesOnlyItsHeight) {
  auto low = mark(0, {1, 1}), high = mark(10, {1.0005, 1});
  low.height = 0.5;
  const Track even = track({low, high});
  low.leg.eased = true;
  const Track eased = track({low, high});
  EXPECT_TRUE(even.legs()[0].hold);
  EXPECT_EQ(even.totalLength(), 0);
  EXPECT_EQ(even.speed(5), 0);
  EXPECT_DOUBLE_EQ(even.height(2.5), 0.75);
  EXPECT_DOUBLE_EQ(eased.height(2.5), 0.5 + geometry::smoothstep(0.25));
  EXPECT_FALSE(even.travelDirection(5));
}

TEST(Track, HeightGoesWithTheMetresOfTheLeg) {
  auto from = mark(0, {0, 0}, leg(Shape::straight, true, {{3, 0}}));
  from.height = 1;
  auto to = mark(10, {3, 4});
  to.height = 2;
  const Track crane = track({from, to});
  // Three metres to the right, then four up the page.
  for (double t = 0; t <= 10; t += 0.5)
    EXPECT_NEAR(crane.height(t), 1 + (crane.place(t).x + crane.place(t).y) / 7, 1e-12);
}

TEST(Track, AbsentBeforeTheFirstMarkAndStandingAfterTheLast) {
  const Track walk = track({mark(3, {1, 2}), mark(5, {4, 6})});
  EXPECT_FALSE(walk.present(2.999));
  EXPECT_TRUE(walk.present(3));
  EXPECT_TRUE(walk.present(1e6));
  EXPECT_EQ(walk.place(1e6), (Point{4, 6}));
  EXPECT_EQ(walk.speed(1e6), 0);
  EXPECT_EQ(walk.legAt(2.9), std::nullopt);
  EXPECT_EQ(walk.legAt(3), 0u);
  EXPECT_EQ(walk.legAt(5), std::nullopt);
}

TEST(Track, DirectionIsKeptWhileStandingAndKnownBeforeTheFirstMove) {
  const Track walk = track({mark(0, {0, 0}), mark(2, {0, 0}), mark(4, {1, 0}), mark(6, {1, 0}), mark(8, {1, 5})});
  EXPECT_EQ(walk.travelDirection(-1), (Vec{1, 0}));
  EXPECT_EQ(walk.travelDirection(1), (Vec{1, 0}));
  EXPECT_EQ(walk.travelDirection(5), (Vec{1, 0}));
  EXPECT_EQ(walk.travelDirection(6), (Vec{0, 1}));
  EXPECT_EQ(walk.travelDirection(100), (Vec{0, 1}));
}

TEST(Track, PeakSpeedOfASpanIsReachedAndNeverPassed) {
  std::mt19937_64 random(14);
  for (int run = 0; run < 30; ++run) {
    auto marks = randomMarks(random);
    const Track walk = track(marks);
    const double from = uniform(random, 0, 10), until = from + uniform(random, 0, 5);
    double seen = 0;
    for (int k = 0; k <= 4000; ++k) seen = std::max(seen, walk.speed(from + (until - from) * k / 4000));
    EXPECT_GE(walk.peakSpeed({from, until}), seen - 1e-12) << run;
    EXPECT_NEAR(walk.peakSpeed({from, until}), seen, 0.01 + 0.02 * seen) << run;
  }
}

TEST(Track, PathCarriesItsTimes) {
  std::mt19937_64 random(15);
  for (int run = 0; run < 30; ++run) {
    const Track walk = track(randomMarks(random));
    const std::vector<PathPoint> path = walk.path(0.005);
    for (std::size_t i = 0; i < path.size(); ++i) {
      EXPECT_TRUE(i == 0 || path[i].t >= path[i - 1].t);
      EXPECT_LT(distance(walk.place(path[i].t), path[i].place), 1e-4) << run;
      EXPECT_NEAR(walk.height(path[i].t), path[i].height, 1e-4) << run;
    }
    for (std::size_t i = 1; i < path.size(); ++i) {
      const Point between = walk.place((path[i - 1].t + path[i].t) / 2);
      const Vec chord = path[i].place - path[i - 1].place;
      const double reach = length(chord);
      if (reach > 1e-3) {
        EXPECT_LT(std::abs(cross(chord, between - path[i - 1].place)) / reach, 0.0051) << run;
      }
    }
  }
}

TEST(Track, SmoothNeighboursKeepTheirDirectionAcrossAStand) {
  auto middle = mark(4, {2, 1}, leg(Shape::smooth, false, {{3, 3}}));
  middle.until = 6;
  const Track walk = track({mark(0, {0, 0}, leg(Shape::smooth, false)), middle, mark(10, {6, 2})});
  const Vec arriving = *walk.travelDirection(4 - 1e-7), leaving = *walk.travelDirection(6);
  EXPECT_LT(length(arriving - leaving), 1e-5);
  EXPECT_LT(length(unit(walk.place(1e-4) - Point{0, 0}) - unit(Vec{2, 1})), 1e-3) << "starts along its first chord";
}

TEST(Track, ReportsEveryProblemWithItsPlace) {
  EXPECT_EQ(codes({}), (std::vector<std::string>{"no-marks "}));
  auto late = mark(5, {0, 0});
  late.until = 4;
  EXPECT_EQ(codes({late, mark(3, {1, 0})}),
            (std::vector<std::string>{"marks-out-of-order /0/until", "marks-out-of-order /1/at"}));
  EXPECT_EQ(codes({mark(1, {0, 0}), mark(1, {1, 0})}), (std::vector<std::string>{"no-time-to-travel /1/at"}));
  EXPECT_TRUE(codes({mark(1, {0, 0}), mark(1, {0, 0}), mark(2, {1, 0})}).empty());
  EXPECT_EQ(codes({mark(0, {0, 0}), mark(std::nan(""), {1, 0})}), (std::vector<std::string>{"not-finite /1"}));
}

}  // namespace
}  // namespace wend::motion
