#include "core/light/photometry.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/geometry/point.h"
#include "core/light/beam.h"

namespace wend::light {
namespace {

/// Four equal quarters; 1.8 candela for one of the table.
Photometry quarters() {
  std::vector<std::vector<double>> table{{1000, 900, 600, 250, 0}, {1000, 850, 500, 150, 0}, {1000, 800, 400, 50, 0}};
  for (auto& row : table)
    for (double& c : row) c *= 1.8;
  return Photometry::of({0, 22.5, 45, 67.5, 90}, {0, 45, 90}, table).value();
}

TEST(Photometry, IsTheTableAtItsAnglesAndLinearBetween) {
  const Photometry lamp = quarters();
  for (const double h : {0.0, 30.0, 200.0}) EXPECT_NEAR(lamp.candelaAt(0, h), 1800, 1e-9);
  EXPECT_NEAR(lamp.candelaAt(45, 0), 1080, 1e-9);
  EXPECT_NEAR(lamp.candelaAt(45, 45), 900, 1e-9);
  EXPECT_NEAR(lamp.candelaAt(45, 90), 720, 1e-9);
  EXPECT_NEAR(lamp.candelaAt(33.75, 0), 1350, 1e-9);
  EXPECT_NEAR(lamp.candelaAt(45, 22.5), 990, 1e-9);
  EXPECT_NEAR(lamp.candelaAt(33.75, 22.5), 1282.5, 1e-9);
}

TEST(Photometry, AQuarterIsMirroredIntoTheOthers) {
  const Photometry lamp = quarters();
  EXPECT_NEAR(lamp.candelaAt(45, 200), 1000, 1e-9);
  EXPECT_NEAR(lamp.candelaAt(45, 300), 840, 1e-9);
  EXPECT_NEAR(lamp.candelaAt(45, 330), 960, 1e-9);
  EXPECT_NEAR(lamp.candelaAt(45, -30), lamp.candelaAt(45, 330), 1e-9);
  EXPECT_NEAR(lamp.candelaAt(45, 720 + 30), lamp.candelaAt(45, 30), 1e-9);
}

TEST(Photometry, GivesNothingBeyondItsAngles) {
  EXPECT_EQ(quarters().candelaAt(90, 12), 0);
  EXPECT_EQ(quarters().candelaAt(100, 12), 0);
  const Photometry up = Photometry::of({90, 180}, {0}, {{100, 100}}).value();
  EXPECT_EQ(up.candelaAt(89, 0), 0);
  EXPECT_EQ(up.candelaAt(91, 0), 100);
}

TEST(Photometry, HalvesAreMirroredInTheirPlane) {
  const std::vector<std::vector<double>> rows{{10, 10}, {20, 20}, {30, 30}};
  const Photometry side = Photometry::of({0, 90}, {0, 90, 180}, rows).value();
  EXPECT_NEAR(side.candelaAt(40, 45), 15, 1e-12);
  EXPECT_NEAR(side.candelaAt(40, 315), 15, 1e-12);
  EXPECT_NEAR(side.candelaAt(40, 225), 25, 1e-12);
  const Photometry front = Photometry::of({0, 90}, {90, 180, 270}, rows).value();
  EXPECT_NEAR(front.candelaAt(40, 135), 15, 1e-12);
  EXPECT_NEAR(front.candelaAt(40, 45), 15, 1e-12);
  EXPECT_NEAR(front.candelaAt(40, 315), 25, 1e-12);
  EXPECT_NEAR(front.candelaAt(40, 0), 20, 1e-12);
}

TEST(Photometry, WithoutSymmetryEveryAngleIsItsOwn) {
  const Photometry lamp =
      Photometry::of({0, 90}, {0, 90, 180, 270, 360}, {{10, 10}, {20, 20}, {30, 30}, {40, 40}, {10, 10}}).value();
  EXPECT_NEAR(lamp.candelaAt(40, 270), 40, 1e-12);
  EXPECT_NEAR(lamp.candelaAt(40, 315), 25, 1e-12);
  EXPECT_NEAR(lamp.candelaAt(40, 360), 10, 1e-12);
}

// The same sum by a fine grid of bands, and the closed forms of an even and of a matt source: 4 pi I and pi I.
TEST(Photometry, SumsItsFlux) {
  const Photometry lamp = quarters();
  double bands = 0;
  const int n = 1800, m = 90;
  for (int i = 0; i < n; ++i)
    for (int j = 0; j < m; ++j) {
      const double v = (i + 0.5) * 90 / n, h = (j + 0.5) * 90 / m;
      bands += lamp.candelaAt(v, h) * std::sin(geometry::radians(v)) * geometry::radians(90.0 / n) *
               geometry::radians(360.0 / m);
    }
  EXPECT_NEAR(lamp.totalFlux(), bands, 0.01);
  EXPECT_NEAR(lamp.totalFlux(), 3872.444, 0.01);
  EXPECT_NEAR(Photometry::of({0, 180}, {0}, {{100, 100}}).value().totalFlux(), 400 * std::numbers::pi, 1e-9);
  std::vector<double> angles, matt;
  for (int a = 0; a <= 90; a += 5) {
    angles.push_back(a);
    matt.push_back(a == 90 ? 0 : 1000 * std::cos(geometry::radians(a)));
  }
  EXPECT_NEAR(Photometry::of(angles, {0}, {matt}).value().totalFlux(), 3139.597, 1e-3);
}

TEST(Photometry, RefusesWhatIsNoTable) {
  const auto code = [](std::vector<double> v, std::vector<double> h, std::vector<std::vector<double>> c) {
    const auto result = Photometry::of(std::move(v), std::move(h), std::move(c));
    return result ? "" : result.problems().front().code;
  };
  EXPECT_EQ(code({0, 90}, {0}, {{1, 1}}), "");
  EXPECT_EQ(code({0}, {0}, {{1}}), "photometry-angles");
  EXPECT_EQ(code({0, 0}, {0}, {{1, 1}}), "photometry-angles");
  EXPECT_EQ(code({-90, 90}, {0}, {{1, 1}}), "photometry-angles");
  EXPECT_EQ(code({0, 90}, {}, {}), "photometry-angles");
  EXPECT_EQ(code({0, 90}, {0, 120}, {{1, 1}, {1, 1}}), "photometry-angles");
  EXPECT_EQ(code({0, 90}, {0, 90}, {{1, 1}}), "photometry-table");
  EXPECT_EQ(code({0, 90}, {0}, {{1}}), "photometry-table");
  EXPECT_EQ(code({0, 90}, {0}, {{1, -1}}), "photometry-table");
  EXPECT_EQ(code({0, std::nan("")}, {0}, {{1, 1}}), "photometry-angles");
  EXPECT_EQ(code({0, 90}, {0}, {{1, HUGE_VAL}}), "photometry-table");
}

Photometry sampled(const Beam& beam, double step) {
  std::vector<double> angles, row;
  for (int i = 0; i * step <= 90; ++i) {
    angles.push_back(i * step);
    row.push_back(intensity(beam, i * step));
  }
  return Photometry::of(angles, {0}, {row}).value();
}

TEST(PhotometrySpread, OfASampledSpotIsItsBeamAndItsField) {
  for (const Beam& beam : {Beam{900, 40, 60}, Beam{5000, 12, 30}, Beam{100, 90, 120}}) {
    const Photometry lamp = sampled(beam, 0.25);
    EXPECT_NEAR(lamp.spread(0.5, 0), beam.beam, 0.02);
    EXPECT_NEAR(lamp.spread(0.1, 37), beam.field, 0.02);
    EXPECT_EQ(lamp.peak(), beam.candela);
  }
}

TEST(PhotometrySpread, OfAMattSourceIsAHundredAndTwentyDegreesAtAHalf) {
  std::vector<double> angles, row;
  for (int a = 0; a <= 90; ++a) {
    angles.push_back(a);
    row.push_back(a == 90 ? 0 : std::cos(geometry::radians(a)));
  }
  const Photometry matt = Photometry::of(angles, {0}, {row}).value();
  EXPECT_NEAR(matt.spread(0.5, 0), 120, 0.01);
  EXPECT_NEAR(matt.spread(0.1, 0), 2 * geometry::degrees(std::acos(0.1)), 0.01);
}

TEST(PhotometrySpread, AddsBothSidesOfItsPlane) {
  // Half is reached at 30 degrees on the side of 0, at 60 on that of 180, and nowhere but below across.
  const Photometry lamp =
      Photometry::of({0, 60, 90}, {0, 90, 180}, {{100, 0, 0}, {100, 100, 0}, {100, 50, 50}}).value();
  EXPECT_NEAR(lamp.spread(0.5, 0), 30 + 90, 1e-9) << "what still shines at the last angle reaches to it";
  EXPECT_NEAR(lamp.spread(0.6, 0), 24 + 48, 1e-9);
  EXPECT_NEAR(lamp.spread(0.6, 180), lamp.spread(0.6, 0), 1e-9);
  EXPECT_NEAR(lamp.spread(0.5, 90), 75 + 75, 1e-9);
}

TEST(PhotometrySpread, IsNothingWhereNothingReachesTheShare) {
  const Photometry side = Photometry::of({0, 90}, {0, 90, 180}, {{0, 100}, {0, 10}, {0, 10}}).value();
  EXPECT_EQ(side.spread(0.5, 90), 0);
  EXPECT_EQ(side.spread(0.5, 0), 90);
  EXPECT_EQ(Photometry::of({0, 90}, {0}, {{0, 0}})->spread(0.5, 0), 0);
}

}  // namespace
}  // namespace wend::light
