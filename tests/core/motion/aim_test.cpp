#include "core/motion/aim.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "core/geometry/pose.h"
#include "core/motion/track.h"

namespace wend::motion {
namespace {

using geometry::Point3;
using geometry::Vec;

const View kView{0.445, 0.25, 0.1};

AimRig rigOn(const Track& camera) {
  return {[camera](double t) { return camera.position(t); }, [camera](double t) { return camera.travelDirection(t); },
          [](double) { return kView; }};
}

AimRig rigAt(Point3 place) {
  return {[place](double) { return place; }, [](double) -> std::optional<Vec> { return {}; },
          [](double) { return kView; }};
}

AimTarget standing(Point3 place, FramePlace in = {}) {
  return {[place](double) { return place; }, in};
}

AimTrack aim(std::vector<AimKey> keys, AimRig rig, double length) {
  const auto result = aimTrack(std::move(keys), std::move(rig), length);
  if (!result) ADD_FAILURE() << toText(result.problems().front());
  return *result;
}

std::vector<std::string> codes(std::vector<AimKey> keys, AimRig rig) {
  const auto result = aimTrack(std::move(keys), std::move(rig), 10);
  std::vector<std::string> out;
  if (!result)
    for (const base::Problem& problem : result.problems()) out.push_back(problem.code + " " + problem.where);
  return out;
}

Track trackOf(std::vector<TrackMark> marks) {
  return *trackThrough(std::move(marks));
}

Track orbit(double turns, double seconds) {
  const TrackLeg leg{TrackLeg::Shape::arc, {}, {4.5, 3.7}, 360 * turns, false};
  return trackOf({{0, 0, {4.5, 1.4}, 1.5, leg}, {seconds, seconds, {4.5, 1.4}, 1.5, {}}});
}

/// The largest change of bearing over a millisecond.
double roughest(const AimTrack& track, double from, double until) {
  double worst = 0;
  for (double t = from; t < until; t += 0.0037)
    worst = std::max(worst, std::abs(track.orientationAt(t + 1e-3).bearing - track.orientationAt(t).bearing));
  return worst;
}

TEST(Aim, OrbitTurnsEighteenDegreesASecondAndUnwrapsToAFullTurn) {
  const AimTrack track = aim({{{0}, standing({4.5, 3.7, 1.5})}}, rigOn(orbit(-1, 20)), 20);
  EXPECT_NEAR(track.orientationAt(0).bearing, 0, 1e-9);
  EXPECT_NEAR(track.orientationAt(20).bearing, -360, 1e-9);
  for (double t = 0; t <= 20; t += 0.25) {
    EXPECT_NEAR(track.orientationAt(t).bearing, -18 * t, 1e-9);
    EXPECT_NEAR(track.ratesAt(t).bearing, t < 20 ? -18.0 : -9.0, 1e-6) << "after the last mark the camera stands";
  }
  EXPECT_TRUE(track.cuts().empty());
}

TEST(Aim, FollowsContinuouslyOverSeveralTurns) {
  const AimTrack track = aim({{{0}, standing({4.4, 3.9, 1.9}, {0.3, -0.2})}}, rigOn(orbit(4, 30)), 30);
  const double first = track.orientationAt(0).bearing;
  EXPECT_NEAR(track.orientationAt(30).bearing - first, 1440, 1e-9);
  EXPECT_LT(roughest(track, 0, 29.9), 0.1) << "48 degrees a second on the mean";
  EXPECT_TRUE(track.cuts().empty());
}

TEST(Aim, KeepsAMovingTargetAtItsPlaceFromAMovingCamera) {
  const Track camera = orbit(-1, 20);
  const auto walker = [](double t) { return Point3{4 + 0.1 * t, 3.5 + std::sin(t), 1.6}; };
  const FramePlace place{0.2, 0.1};
  const AimTrack track = aim({{{0}, AimTarget{walker, place}}}, rigOn(camera), 20);
  for (double t = 0; t <= 20; t += 0.0173) {
    const Orientation way = track.orientationAt(t);
    const geometry::Pose pupil = geometry::Pose{camera.position(t), way.bearing, way.tilt}.advanced(kView.pupilAhead);
    const geometry::InView seen = pupil.view(walker(t));
    EXPECT_NEAR(seen.right / seen.ahead, place.x * kView.tanHalfWidth, 1e-9) << t;
    EXPECT_NEAR(seen.up / seen.ahead, place.y * kView.tanHalfHeight, 1e-9) << t;
  }
}

TEST(Aim, FirstTargetStartsNearestZeroAndLaterOnesNearestTheBearingBefore) {
  const Point3 south{0, -5, 1.5};
  const AimTrack first = aim({{{0}, standing({-0.1, -5, 1.5})}}, rigAt({0, 0, 1.5}), 5);
  EXPECT_NEAR(first.orientationAt(0).bearing, -178.854, 1e-3);
  const AimTrack later = aim({{{0}, AimBearing{-454, 3}}, {{1, 2}, standing(south)}}, rigAt({0, 0, 1.5}), 5);
  EXPECT_NEAR(later.orientationAt(0.5).bearing, -454, 1e-12);
  EXPECT_NEAR(later.orientationAt(2).bearing, (-454 - 540) / 2.0, 1e-9) << "half way to -540, the shortest turn";
  EXPECT_NEAR(later.orientationAt(4).bearing, -540, 1e-9);
  EXPECT_NEAR(later.orientationAt(2).tilt, 1.5, 1e-9);
}

TEST(Aim, TurnsAddToTheShortestWay) {
  for (const int turns : {-2, -1, 0, 1, 3}) {
    const AimTrack track =
        aim({{{0}, AimBearing{10, 0}}, {{1, 4}, standing({5, 0, 1.5}), turns}}, rigAt({0, 0, 1.5}), 9);
    EXPECT_NEAR(track.orientationAt(6).bearing, 90 + 360.0 * turns, 1e-9);
    EXPECT_NEAR(track.orientationAt(3).bearing, 10 + (80 + 360.0 * turns) / 2, 1e-9);
    EXPECT_TRUE(track.cuts().empty());
  }
}

TEST(Aim, AbsoluteBearingsBlendNumericallyEvenAllTheWayRound) {
  const AimTrack track = aim({{{0}, AimBearing{0, 0}}, {{1, 10, true}, AimBearing{-720, 10}}}, rigAt({0, 0, 1}), 20);
  EXPECT_NEAR(track.orientationAt(6).bearing, -360, 1e-9);
  EXPECT_NEAR(track.orientationAt(3.5).bearing, -720 * geometry::smoothstep(0.25), 1e-9);
  EXPECT_NEAR(track.ratesAt(6).bearing, -108, 1e-3) << "1.5 times 72 at the middle of an eased turn";
}

TEST(Aim, TheTurnOfABlendIsFixedAtItsStart) {
  // The target passes behind the camera while the blend runs: the turn goes on the way it began, through the back.
  const auto target = [](double t) { return Point3{2 - t, -3, 1.5}; };
  const AimTrack track = aim({{{0}, AimBearing{0, 0}}, {{0, 4}, AimTarget{target, {}}}}, rigAt({0, 0, 1.5}), 6);
  EXPECT_LT(roughest(track, 0, 5.9), 0.1);
  EXPECT_NEAR(track.orientationAt(4).bearing, geometry::unwrapped(geometry::bearingOf({-2, -3}), 180), 1e-9);
  EXPECT_GT(track.orientationAt(4).bearing, 180) << "clockwise past the south, where the shortest turn had begun";
}

TEST(Aim, BlendGoesFromWhatTheKeyBeforeStillShows) {
  const auto walker = [](double t) { return Point3{-4 + t, 5, 1.5}; };
  const Point3 eye{0, 0, 1.5};
  const AimTrack track = aim({{{0}, AimTarget{walker, {}}}, {{3, 2}, AimBearing{60, 0}}}, rigAt(eye), 8);
  const double there = geometry::bearingOf({0.5, 5});
  EXPECT_NEAR(track.orientationAt(4.5).bearing, there + 0.75 * (60 - there), 1e-9);
}

TEST(Aim, TravelLooksAlongTheWayAndHoldsWhileStanding) {
  const Track camera = trackOf({{0, 0, {0, 0}, 1.5, {}}, {2, 2, {0, 0}, 1.5, {}}, {6, 6, {4, 0}, 1.5, {}}});
  const AimTrack back = aim({{{0}, AimTravel{180, -5}}}, rigOn(camera), 10);
  for (const double t : {0.0, 1.0, 4.0, 6.0, 9.0}) {
    EXPECT_NEAR(back.orientationAt(t).bearing, -90, 1e-9) << "270 nearest to 0";
    EXPECT_EQ(back.orientationAt(t).tilt, -5);
  }
}

TEST(Aim, CutsAreListedWithTheirSizeAndCornersOfTheWayCount) {
  const Track camera = trackOf({{0, 0, {0, 0}, 1.5, {}}, {4, 4, {0, 4}, 1.5, {}}, {8, 8, {4, 8}, 1.5, {}}});
  const AimTrack corner = aim({{{0}, AimTravel{0, 0}}}, rigOn(camera), 8);
  ASSERT_EQ(corner.cuts().size(), 1u);
  EXPECT_NEAR(corner.cuts()[0].at, 4, 2e-6);
  EXPECT_NEAR(corner.cuts()[0].bearing, 45, 1e-9);
  EXPECT_EQ(corner.ratesAt(3.9999).bearing, 0) << "a rate does not straddle a cut";
  const AimTrack keyed = aim({{{0}, AimBearing{0, 0}},
                              {{2}, AimBearing{0.4, 0}},
                              {{3}, AimBearing{1, 0}},
                              {{5}, AimBearing{1, 7}},
                              {{5, 1}, AimBearing{1, 0}},
                              {{7}, AimBearing{361, 0}}},
                             rigAt({0, 0, 1}), 8);
  ASSERT_EQ(keyed.cuts().size(), 3u);
  EXPECT_NEAR(keyed.cuts()[0].bearing, 0.6, 1e-9);
  EXPECT_NEAR(keyed.cuts()[1].tilt, 7, 1e-9);
  EXPECT_NEAR(keyed.cuts()[2].bearing, 360, 1e-9) << "the picture stays, the unwrapped bearing does not";
}

TEST(Aim, AnOrbitMeetsTheBearingWrittenForItsEndWithoutACut) {
  const TrackLeg arc{TrackLeg::Shape::arc, {}, {4.5, 3.7}, -360, false};
  const Track camera = trackOf({{40, 40, {2.6, 1.75}, 1.5, {}},
                                {45, 45, {4.5, 1.4}, 1.5, arc},
                                {65, 65, {4.5, 1.4}, 1.5, {}},
                                {67, 67, {3.35, 2}, 1.5, {}}});
  const AimTrack track = aim({{{0}, AimBearing{2, 0}},
                              {{40, 5}, AimBearing{0, 0}},
                              {{45}, standing({4.5, 3.7, 1.5})},
                              {{65}, AimBearing{-360, 0}},
                              {{65, 2}, AimBearing{-306, 0}}},
                             rigOn(camera), 168);
  EXPECT_TRUE(track.cuts().empty());
  EXPECT_NEAR(track.orientationAt(55).bearing, -180, 1e-9);
  EXPECT_NEAR(track.orientationAt(66).bearing, -333, 1e-9);
  EXPECT_NEAR(track.ratesAt(50).bearing, -18, 1e-6);
  EXPECT_NEAR(track.ratesAt(66).bearing, 27, 1e-9);
}

TEST(Aim, StraightOverATargetTheBearingHolds) {
  // A crane passes straight over the target, northwards, at 1 m/s.
  const Track crane = trackOf({{0, 0, {0, -4}, 4, {}}, {8, 8, {0, 4}, 4, {}}});
  const AimTrack track = aim({{{0}, standing({0, 0, 1})}}, rigOn(crane), 8);
  EXPECT_NEAR(track.orientationAt(3.9).bearing, 0, 1e-9);
  EXPECT_NEAR(track.orientationAt(4).bearing, 0, 1e-9);
  EXPECT_NEAR(track.orientationAt(4).tilt, -90, 1e-6);
  ASSERT_EQ(track.cuts().size(), 1u);
  EXPECT_NEAR(std::abs(track.cuts()[0].bearing), 180, 1e-9);
  EXPECT_NEAR(track.cuts()[0].at, 4.001, 1e-4);
}

TEST(Aim, StandingUnderATargetKeepsTheBearingOfTheKeyBefore) {
  const AimTrack track = aim({{{0}, AimBearing{77, 0}}, {{1, 1}, standing({0, 0, 3})}}, rigAt({0, 0, 1}), 5);
  EXPECT_EQ(track.orientationAt(4).bearing, 77);
  EXPECT_NEAR(track.orientationAt(1.5).tilt, 45, 1e-6);
}

TEST(Aim, ANearPassSwingsFastButDoesNotCut) {
  const Track walk = trackOf({{0, 0, {-4, 0}, 1, {}}, {8, 8, {4, 0}, 1, {}}});
  const AimTrack track = aim({{{0}, standing({0, 0.15, 1})}}, rigOn(walk), 8);
  EXPECT_TRUE(track.cuts().empty());
  EXPECT_NEAR(track.ratesAt(4).bearing, -geometry::degrees(1 / 0.15), 0.1);
}

TEST(Aim, ATargetThatJumpsCutsTheAimAndTheBearingGoesOnFromThere) {
  const auto passedOn = [](double t) { return t < 3 ? Point3{0, 5, 1} : Point3{5, -1, 1}; };
  const AimTrack track = aim({{{0}, AimTarget{passedOn, {}}}}, rigAt({0, 0, 1}), 6);
  ASSERT_EQ(track.cuts().size(), 1u);
  EXPECT_NEAR(track.cuts()[0].at, 3, 2e-6);
  EXPECT_NEAR(track.cuts()[0].bearing, geometry::bearingOf({5, -1}), 1e-9);
  const auto lifted = [](double t) { return Point3{0, 5, t < 3 ? 1 : 2.0}; };
  const AimTrack up = aim({{{0}, AimTarget{lifted, {}}}}, rigAt({0, 0, 1}), 6);
  ASSERT_EQ(up.cuts().size(), 1u);
  EXPECT_NEAR(up.cuts()[0].tilt, geometry::degrees(std::atan(0.2)), 1e-9);
}

TEST(Aim, ATargetThatWhirlsIsRefusedNotFollowedForEver) {
  const auto whirling = [](double t) { return Point3{3 * std::sin(1e5 * t), 3 * std::cos(1e5 * t), 1}; };
  EXPECT_EQ(codes({{{0}, AimTarget{whirling, {}}}}, rigAt({0, 0, 1})),
            (std::vector<std::string>{"aim-too-restless /0/on"}));
}

double uniform(std::mt19937_64& random, double from, double until) {
  return from + (until - from) * (static_cast<double>(random() >> 11) / 9007199254740992.0);
}

Track wandering(std::mt19937_64& random, double height) {
  std::vector<TrackMark> marks;
  for (int k = 0; k < 12; ++k) {
    TrackMark mark{2.5 * k, 2.5 * k + (k % 3 ? 0 : 0.5), {uniform(random, -4, 4), uniform(random, -4, 4)}, height, {}};
    mark.leg.shape = TrackLeg::Shape::smooth;
    mark.leg.eased = k % 2;
    marks.push_back(mark);
  }
  return trackOf(std::move(marks));
}

/// Targets at places, bearings and the way travelled, blended and cut, in random order.
std::vector<AimKey> randomAims(std::mt19937_64& random, const Track& walker) {
  std::vector<AimKey> keys;
  for (int k = 0; k < 8; ++k) {
    AimKey key{{3.5 * k, k == 0 ? 0 : uniform(random, 0.3, 3), random() % 2 == 1}, AimBearing{}, 0};
    const auto kind = random() % 3;
    if (kind == 0) key.on = AimBearing{uniform(random, -500, 500), uniform(random, -20, 20)};
    if (kind == 1) key.on = AimTravel{uniform(random, -180, 180), uniform(random, -20, 20)};
    if (kind == 2)
      key.on = AimTarget{[walker](double t) { return walker.position(t); },
                         {uniform(random, -0.7, 0.7), uniform(random, -0.5, 0.5)}};
    if (kind != 0) key.turns = static_cast<int>(random() % 3) - 1;
    keys.push_back(key);
  }
  return keys;
}

/// What is left of a change of bearing or tilt when the larger half of it is followed down to a microsecond.
double jumpWithin(const AimTrack& track, double from, double until) {
  const auto change = [&track](double a, double b) {
    const Orientation x = track.orientationAt(a), y = track.orientationAt(b);
    return std::max(std::abs(x.bearing - y.bearing), std::abs(x.tilt - y.tilt));
  };
  while (until - from > 1e-6) {
    const double middle = (from + until) / 2;
    (change(from, middle) > change(middle, until) ? until : from) = middle;
  }
  return change(from, until);
}

TEST(Aim, IsContinuousBetweenTheCutsItLists) {
  std::mt19937_64 random(77);
  int usable = 0;
  for (int run = 0; run < 12; ++run) {
    const Track camera = wandering(random, 1.9), walker = wandering(random, 1.6);
    const auto traced = aimTrack(randomAims(random, walker), rigOn(camera), 30);
    if (!traced) continue;  // they met closer than the lens can frame
    ++usable;
    const AimTrack& track = *traced;
    for (double t = 0; t < 30; t += 0.01) {
      const auto listed = std::any_of(track.cuts().begin(), track.cuts().end(),
                                      [t](const AimCut& cut) { return cut.at >= t && cut.at <= t + 0.0101; });
      EXPECT_TRUE(listed || jumpWithin(track, t, t + 0.01) < 0.6) << run << " " << t;
    }
  }
  EXPECT_GT(usable, 9);
}

TEST(Aim, TwoCallsGiveTheSameBits) {
  std::mt19937_64 random(78);
  const Track camera = wandering(random, 1.9), walker = wandering(random, 1.6);
  const auto keys = randomAims(random, walker);
  const AimTrack a = aim(keys, rigOn(camera), 30), b = aim(keys, rigOn(camera), 30);
  for (double t = 30; t > 0; t -= 0.171) EXPECT_EQ(a.orientationAt(t), b.orientationAt(t));
}

TEST(Aim, ReportsEveryProblemWithItsPlace) {
  const AimRig rig = rigAt({0, 0, 1});
  using Codes = std::vector<std::string>;
  EXPECT_EQ(codes({}, rig), (Codes{"no-aims "}));
  EXPECT_EQ(codes({{{0, 3}, AimBearing{}}, {{2, 1}, AimBearing{}, 1}, {{5}, AimTravel{}}}, rig),
            (Codes{"aims-overlap /1/at", "turns-on-bearing /1/turns", "travel-without-moves /2/on/travel"}));
  EXPECT_EQ(codes({{{0}, AimBearing{std::nan(""), 0}}}, rig), (Codes{"not-finite /0"}));
  EXPECT_EQ(codes({{{0}, AimBearing{}}, {{1}, standing({0, 0.05, 1})}}, rig), (Codes{"target-too-near /1/on"}));
  EXPECT_EQ(codes({{{0}, standing({0.01, 0.1, 6}, {1, 0})}}, rig), (Codes{"place-out-of-reach /0/place"}));
}

TEST(Aim, AProblemOutsideTheTimeAKeyIsShownDoesNotCount) {
  const auto passing = [](double t) { return Point3{t - 5, 0, 1}; };  // through the lens at 5 s
  EXPECT_EQ(codes({{{0}, AimTarget{passing, {}}}, {{3, 1}, AimBearing{-90, 0}}}, rigAt({0, 0, 1})).size(), 0u);
  EXPECT_EQ(codes({{{0}, AimTarget{passing, {}}}}, rigAt({0, 0, 1})).size(), 1u);
}

}  // namespace
}  // namespace wend::motion
