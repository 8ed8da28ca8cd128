// The lens against figures printed by others. Each row names where the figure stands; "recomputed" marks a value that
// follows from a printed formula but is not itself printed.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "core/optics/depth_of_field.h"
#include "core/optics/frame.h"
#include "core/optics/shot_size.h"
#include "core/optics/warmth.h"
#include "core/snags/thresholds.h"
#include "core/units/stop.h"

namespace wend::optics {
namespace {

constexpr double kFoot = 0.3048, kInch = 25.4;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

// Bill Claff, "Angle of View Values for Common Focal Lengths", 2006, columns for 36 x 24 mm,
// photonstophotos.net/GeneralTopics/Lenses/Field_of_View_Values_for_Common_Focal_Lengths.htm
TEST(PublishedAngleOfView, TableFor36By24) {
  struct Row {
    double focal, width, height, diagonal;
  };
  for (const Row row : {Row{10, 121.9, 100.4, 130.4},
                        {18, 90.0, 67.4, 100.5},
                        {35, 54.4, 37.8, 63.4},
                        {50, 39.6, 27.0, 46.8},
                        {85, 23.9, 16.1, 28.6},
                        {105, 19.5, 13.0, 23.3},
                        {135, 15.2, 10.2, 18.2}}) {
    const FieldOfView view = fieldOfView(halfTangents({36, 24}, row.focal));
    EXPECT_NEAR(view.horizontal, row.width, 0.0501) << row.focal;
    EXPECT_NEAR(view.vertical, row.height, 0.0501) << row.focal;
    EXPECT_NEAR(view.diagonal, row.diagonal, 0.0501) << row.focal;
  }
}

// Gate 0.980 x 0.735 in: liquisearch.com/35_mm_film/technical_specifications, and Paul Wheeler, "Practical
// Cinematography", 2nd ed., chapter 20. Angles recomputed by 2 atan(d / 2f).
TEST(PublishedAngleOfView, FullApertureGate) {
  const FrameSize gate{0.980 * kInch, 0.735 * kInch};
  struct Row {
    double focal, horizontal, vertical, diagonal;
  };
  for (const Row row : {Row{18, 69.323, 54.821, 81.674},
                        {25, 52.932, 40.949, 63.788},
                        {35, 39.151, 29.866, 47.930},
                        {50, 27.956, 21.150, 34.567},
                        {100, 14.189, 10.666, 17.686}}) {
    const FieldOfView view = fieldOfView(halfTangents(gate, row.focal));
    EXPECT_NEAR(view.horizontal, row.horizontal, 1e-3) << row.focal;
    EXPECT_NEAR(view.vertical, row.vertical, 1e-3) << row.focal;
    EXPECT_NEAR(view.diagonal, row.diagonal, 1e-3) << row.focal;
  }
}

// tan(half angle) = width x squeeze / 2f: jukolart.us/cinematographic-systems/lens-angle-and-field-of-view.html; gate
// 0.866 x 0.732 in, figures recomputed. Doubling the angle instead would give 49.622 at 50 mm.
TEST(PublishedAngleOfView, SqueezeDoublesTheTangentNotTheAngle) {
  const FrameSize frame = deliveredFrame({0.866 * kInch, 0.732 * kInch}, 2, std::nullopt);
  const auto horizontal = [&](double focal) { return fieldOfView(halfTangents(frame, focal)).horizontal; };
  EXPECT_NEAR(horizontal(50), 47.492, 1e-3);
  EXPECT_NEAR(horizontal(40), 57.614, 1e-3);
  EXPECT_NEAR(horizontal(75), 32.691, 1e-3);
  EXPECT_NEAR(horizontal(100), 24.811, 1e-3);
  EXPECT_NEAR(fieldOfView(halfTangents(frame, 50)).vertical, 21.065, 1e-3);
}

// Effective focal length F(1 + m): tickerdossier.com/wiki/angle-of-view. A lens that focuses by moving as a whole, as
// the thin lens does, narrows by 1 - f/u: it breathes by -f/closeFocus. 36 mm wide, 50 mm, 1 m from the lens:
// recomputed.
TEST(PublishedAngleOfView, ThinLensNarrowsWhenFocusedClose) {
  const double scale = breathingScale(-0.050 / 0.6, 0.6, 1.0);
  EXPECT_NEAR(fieldOfView(halfTangents({36, 24}, 50, scale)).horizontal, 37.761, 1e-3);
  EXPECT_NEAR(50 / scale, 52.6316, 1e-4);
}

// A 90 degree view is four metres wide at two: primidi.com/dolly_zoom/optics/calculating_distances
TEST(PublishedAngleOfView, NinetyDegreesAtTwoMetresIsFourWide) {
  const HalfTangents half = halfTangents({36, 24}, 18);
  EXPECT_NEAR(fieldOfView(half).horizontal, 90, 1e-12);
  EXPECT_NEAR(2 * half.h * 2, 4, 1e-12);
}

// OpenStax "College Physics" chapter 26 problems, worked at numerade: a 1.75 m person at 3.00 m fills 29.66 mm behind
// 50 mm; a 2.00 m person fills 36 mm at 2.83 m.
TEST(PublishedThinLens, PersonInFrame) {
  const auto tangent = [](double side, double u) {
    return halfTangents({side, side}, 50, breathingScale(-0.050, 1, u)).v;
  };
  EXPECT_NEAR(frameOverStature(tangent(29.661, 3.0), 3.0, 1.75), 1, 1e-4);
  EXPECT_NEAR(frameOverStature(tangent(36, 2.83), 2.83, 2.00), 1, 0.002);
}

// M = f / (s - f) kept constant: wiki.niidae.com, "Dolly zoom". The distance grows exactly as the focal length does.
TEST(PublishedThinLens, DollyZoomKeepsTheSize) {
  const auto half = [](double focal, double u) {
    return halfTangents({24.9, 14}, focal, breathingScale(-focal / 1000, 1, u)).v;
  };
  const double wide = frameOverStature(half(35, 3.0), 3.0, 1.7);
  EXPECT_NEAR(frameOverStature(half(50, 4.285714), 4.285714, 1.7), wide, 1e-6);
  EXPECT_NEAR(frameOverStature(half(100, 8.571429), 8.571429, 1.7), wide, 1e-6);
}

// US Army subcourse SS0507, learning event 10, armycommunications.tpub.com/SS0507/SS05070058.htm. The book leaves the
// focal length out of the hyperfocal distance.
TEST(PublishedDepthOfField, ArmyCourseHyperfocal) {
  const Optics lens{2 * kInch, 8, 0.002 * kInch};
  const double h = hyperfocal(lens) - lens.focal / 1000;
  EXPECT_NEAR(h / kFoot, 20.8, 0.05);
  EXPECT_NEAR(depthOfField(hyperfocal(lens), lens).near / kFoot, 10.4, 0.1);
}

// The same course, learning event 12, SS05070061.htm. It truncates, and uses the approximation without focal length,
// which reads 0.05 ft nearer here than the thin lens.
TEST(PublishedDepthOfField, ArmyCourseWorkedExample) {
  const Optics lens{3 * kInch, 8, 0.002 * kInch};
  const Range sharp = depthOfField(15 * kFoot, lens);
  EXPECT_NEAR((hyperfocal(lens) - lens.focal / 1000) / kFoot, 46.8, 0.1);
  EXPECT_NEAR(sharp.near / kFoot, 11.3, 0.15);
  EXPECT_NEAR(sharp.far / kFoot, 22, 0.15);
  EXPECT_NEAR((sharp.far - sharp.near) / kFoot, 10.7, 0.25);
}

// US Navy NAVEDTRA 14209, "Photography (Basic)", chapter 1,
// photographytraining.tpub.com/14209/css/Conjugate-Foci-40.htm. The blur circle of 0.002 in is inferred: it gives the
// printed 554 feet.
TEST(PublishedDepthOfField, NavyCourseWorkedExample) {
  const Optics lens{6.1 * kInch, 2.8, 0.002 * kInch};
  const Range sharp = depthOfField(10 * kFoot, lens);
  EXPECT_NEAR((hyperfocal(lens) - lens.focal / 1000) / kFoot, 554, 0.5);
  EXPECT_NEAR(sharp.near / kFoot, 9.8, 0.05);
  EXPECT_NEAR(sharp.far / kFoot, 10.2, 0.05);
  EXPECT_NEAR((sharp.far - sharp.near) / kFoot, 0.4, 0.06);
}

// Slide deck "Cameras and Lenses" after "The Essential Reference Guide for Filmmakers", slideplayer.com/amp/5823246:
// 50 mm, blur circle 0.001 in, feet, without the focal length.
TEST(PublishedDepthOfField, HyperfocalTableFor50) {
  const std::vector<double> numbers{1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32};
  const std::vector<double> feet{230.7, 161.5, 115.3, 80.7, 57.7, 40.4, 29.4, 20.2, 14.7, 10.1};
  for (std::size_t i = 0; i < numbers.size(); ++i)
    EXPECT_NEAR((hyperfocal({50, numbers[i], 0.001 * kInch}) - 0.050) / kFoot, feet[i], 0.06) << numbers[i];
}

// sedlacekphoto.com/Main/Hyperfocal.htm (9470 mm, without the focal length); Hawkins and Avon, "Photography", 1979,
// quoted in the pdml archive (29167 mm and 10.6 m); "Precision Depth of Field of Optical Lens", Maple user forum, 2016
// (2629.1666... mm, with it).
TEST(PublishedDepthOfField, SingleHyperfocalDistances) {
  EXPECT_NEAR(hyperfocal({50, 8, 0.033}) * 1000 - 50, 9470, 1);
  EXPECT_NEAR(hyperfocal({70, 8, 0.021}) * 1000 - 70, 29167, 1);
  EXPECT_NEAR(hyperfocal({70, 22, 0.021}) - 0.070, 10.6, 0.05);
  EXPECT_NEAR(hyperfocal({25, 16, 0.015}) * 1000, 2629.1666666666667, 1e-9);
}

// Near s(H-f)/(H+s-2f) and far s(H-f)/(H-s), the forum post above; figures recomputed in the printed form, in mm.
TEST(PublishedDepthOfField, ExactThinLensRows) {
  struct Row {
    double focal, number, setting, hyperfocal, near, far;
  };
  for (const Row row : {Row{50, 2.8, 3000, 35764.286, 2771.107, 3270.111},
                        {100, 2.8, 5000, 142957.143, 4834.187, 5177.591},
                        {25, 4, 1500, 6275.000, 1213.592, 1963.351},
                        {100, 2.8, 600, 142957.143, 597.907, 602.107},
                        {18, 5.6, 1200, 2332.286, 794.312, 2452.687}}) {
    const Optics lens{row.focal, row.number, 0.025};
    const Range sharp = depthOfField(row.setting / 1000, lens);
    EXPECT_NEAR(hyperfocal(lens) * 1000, row.hyperfocal, 1e-3) << row.focal;
    EXPECT_NEAR(sharp.near * 1000, row.near, 1e-3) << row.focal;
    EXPECT_NEAR(sharp.far * 1000, row.far, 1e-3) << row.focal;
  }
}

// T = N / sqrt(transmission). "2.309..." for N 2 at 0.75: zalansite.site, "F-number", T-stops; "T/5.6" for N 4 at one
// half: idigitalphoto.com/dictionary/T-number. The others recomputed.
TEST(PublishedStops, TransmissionMakesTNumbers) {
  EXPECT_NEAR(tNumberOf(2, 0.75), 2.3094, 5e-4);
  EXPECT_NEAR(tNumberOf(4, 0.5), 5.6, 0.1);
  EXPECT_NEAR(tNumberOf(2.8, 0.9), 2.9515, 1e-4);
  EXPECT_NEAR(tNumberOf(2.8, 0.8), 3.1305, 1e-4);
  EXPECT_NEAR(tNumberOf(2.8, 0.7), 3.3466, 1e-4);
  EXPECT_NEAR(fNumberOf(3.1, 0.8158), 2.8, 1e-4);
  EXPECT_NEAR(units::stopsBetween(2.8, tNumberOf(2.8, 0.7)), 0.515, 1e-3);
}

// US Army SS0511, armycommunications.tpub.com/SS0511/SS05110095.htm: f/5.6 passes one sixteenth of f/1.4; and the exact
// thirds from 1 to 32, largeformatphotography.info thread 8513.
TEST(PublishedStops, ThirdsAndSixteenths) {
  EXPECT_NEAR(std::exp2(-units::stopsBetween(1.4, 5.6)), 1.0 / 16, 1e-9);
  const std::vector<double> printed{1.00,  1.12,  1.26,  1.41,  1.59,  1.78,  2.00,  2.24,  2.52, 2.83,  3.17,
                                    3.56,  4.00,  4.49,  5.04,  5.66,  6.35,  7.13,  8.00,  8.98, 10.08, 11.31,
                                    12.70, 14.25, 16.00, 17.96, 20.16, 22.63, 25.40, 28.51, 32.00};
  for (std::size_t k = 0; k < printed.size(); ++k)
    EXPECT_NEAR(units::exactStop(static_cast<int>(k)), printed[k], 0.0075) << k;
}

// P = 2Dd/(D + d), "10 feet" for 10.2 and 9.8 ft: NAVEDTRA 14209, p. 1-26. For 2 m and 3 m recomputed, with the blur
// of 50 mm f/4 at both as proof; the mean 2.500 and the geometric mean 2.449 do not balance.
TEST(PublishedSplitFocus, BalancesTheBlur) {
  const Optics lens{50, 4, 0.025};
  EXPECT_NEAR(splitFocus({10.2 * kFoot, 9.8 * kFoot}, lens, 1, 0.5).setting / kFoot, 10, 0.01);
  const Split split = splitFocus({2, 3}, lens, 1, 0.5);
  EXPECT_NEAR(split.setting, 2.4, 1e-12);
  EXPECT_NEAR(blurOf(2, split.setting, lens), 0.0531914893617, 1e-12);
  EXPECT_NEAR(blurOf(3, split.setting, lens), 0.0531914893617, 1e-12);
  EXPECT_GT(std::abs(blurOf(2, 2.5, lens) - blurOf(3, 2.5, lens)), 1e-3);
}

/// Degrees a second from which the rule "pan" speaks up.
double panLimit(HalfTangents half) {
  return fieldOfView(half).horizontal * snags::threshold({}, "pan").value;
}

// Seven seconds a frame width is 0.143 images a second: NTIA, NRMetricFramework, nrff_panIPS.
TEST(PublishedPan, SevenSecondsIsOneSeventhOfAnImageASecond) {
  EXPECT_NEAR(snags::threshold({}, "pan").value, 0.143, 5e-4);
}

// 16:9 seen from three picture heights is 33 degrees wide (2 atan(16/9 / 6)); crossing it in 7 s is "4.7 deg/s", as
// quoted from a study of judder whose address was not kept; the quotient is arithmetic.
TEST(PublishedPan, ScreenOfThirtyThreeDegrees) {
  const HalfTangents screen = halfTangents({16, 9}, 27);
  EXPECT_NEAR(fieldOfView(screen).horizontal, 33.0, 0.05);
  EXPECT_NEAR(panLimit(screen), 4.7, 0.05);
}

// A handbook's table for 35 mm film and a still scene, 75 mm at 60 frames a second: 6 degrees a second
// (fotoartbook.net/vb/node/98153), so 2.4 at 24; 100 mm at 48, 90 degrees in 30 s (node/98170), so 1.5 at 24. The
// second is more careful than seven seconds over a frame 22 mm wide.
TEST(PublishedPan, HandbookTableAtTwentyFourFrames) {
  EXPECT_NEAR(panLimit(halfTangents({22, 16}, 75)), 2.4, 0.03);
  EXPECT_GT(panLimit(halfTangents({22, 16}, 100)), 1.5);
}

// Seven seconds across the 0.980 in gate, recomputed.
TEST(PublishedPan, FullApertureGateTable) {
  struct Row {
    double focal, mean;
  };
  for (const Row row : {Row{18, 9.903}, {25, 7.562}, {35, 5.593}, {50, 3.994}, {75, 2.692}, {100, 2.027}})
    EXPECT_NEAR(panLimit(halfTangents({0.980 * kInch, 0.735 * kInch}, row.focal)), row.mean, 6e-4) << row.focal;
}

// Reference ranges of the trade, blur circle 0.025 mm, common practice without a source: what stands before and behind
// the setting.
TEST(CommonPractice, SharpRangesAroundTwoMetres) {
  struct Row {
    double focal, number, setting, before, behind, tolerance;
  };
  for (const Row row : {Row{28, 2.8, 2, 0.30, 0.43, 0.006},
                        {35, 2.8, 2, 0.20, 0.25, 0.006},
                        {50, 2.8, 2, 0.10, 0.12, 0.006},
                        {50, 1.4, 2, 0.05, 0.06, 0.006},
                        {35, 5.6, 2, 0.37, 0.58, 0.006},
                        {50, 2.8, 1.2, 0.04, 0.04, 0.006}}) {
    const Range sharp = depthOfField(row.setting, {row.focal, row.number, 0.025});
    EXPECT_NEAR(row.setting - sharp.near, row.before, row.tolerance) << row.focal;
    EXPECT_NEAR(sharp.far - row.setting, row.behind, row.tolerance) << row.focal;
  }
  EXPECT_NEAR(hyperfocal({24, 8, 0.025}), 2.9, 0.05);
  EXPECT_EQ(depthOfField(2.95, {24, 8, 0.025}).far, kInfinity);
}

}  // namespace
}  // namespace wend::optics
