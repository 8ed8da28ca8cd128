#include "core/optics/frame.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace wend::optics {
namespace {

TEST(DeliveredFrame, TakesTheFullWidthForAWiderPictureAndTheFullHeightForANarrowerOne) {
  const FrameSize gate{24.9, 14.0};
  const FrameSize wide = deliveredFrame(gate, 1, 2.39);
  EXPECT_DOUBLE_EQ(wide.width, 24.9);
  EXPECT_DOUBLE_EQ(wide.height, 24.9 / 2.39);
  const FrameSize narrow = deliveredFrame(gate, 1, 1.33);
  EXPECT_DOUBLE_EQ(narrow.width, 14.0 * 1.33);
  EXPECT_DOUBLE_EQ(narrow.height, 14.0);
  EXPECT_EQ(deliveredFrame(gate, 1, std::nullopt), gate);
}

TEST(DeliveredFrame, CutsAfterTheSqueezeHasWidenedTheGate) {
  const FrameSize gate{22, 18};
  EXPECT_EQ(deliveredFrame(gate, 2, std::nullopt), (FrameSize{44, 18}));
  const FrameSize scope = deliveredFrame(gate, 2, 2.39);
  EXPECT_DOUBLE_EQ(scope.width, 18 * 2.39);
  EXPECT_DOUBLE_EQ(scope.height, 18);
}

TEST(DeliveredFrame, IsTheLargestThatFits) {
  for (double aspect = 0.5; aspect < 4; aspect += 0.07) {
    const FrameSize frame = deliveredFrame({24, 16}, 1.5, aspect);
    EXPECT_NEAR(frame.width / frame.height, aspect, 1e-12);
    EXPECT_LE(frame.width, 36 + 1e-12);
    EXPECT_LE(frame.height, 16 + 1e-12);
    EXPECT_TRUE(frame.width == 36 || frame.height == 16) << aspect;
  }
}

TEST(HalfTangents, KeepTheShapeOfTheFrame) {
  const HalfTangents half = halfTangents({24.9, 14}, 28);
  EXPECT_DOUBLE_EQ(half.h / half.v, 24.9 / 14);
  EXPECT_DOUBLE_EQ(half.h, 24.9 / 56);
}

TEST(Breathing, WidensTheTangentAndFadesWithDistance) {
  EXPECT_DOUBLE_EQ(breathingScale(0.06, 0.6, 0.6), 1.06);
  EXPECT_DOUBLE_EQ(breathingScale(0.06, 0.6, 1.2), 1.03);
  EXPECT_DOUBLE_EQ(breathingScale(-0.05, 0.6, 0.6), 0.95);
  EXPECT_EQ(breathingScale(0.06, 0.6, std::numeric_limits<double>::infinity()), 1);
  const HalfTangents plain = halfTangents({36, 24}, 50),
                     breathed = halfTangents({36, 24}, 50, breathingScale(0.06, 0.6, 1.2));
  EXPECT_DOUBLE_EQ(breathed.h, plain.h * 1.03);
  EXPECT_DOUBLE_EQ(breathed.v, plain.v * 1.03);
}

TEST(FieldOfView, AddsInTangents) {
  const HalfTangents half = halfTangents({24.892, 18.669}, 25);
  const FieldOfView view = fieldOfView(half);
  const auto tangent = [](double full) { return std::tan(full / 2 * std::acos(-1.0) / 180); };
  EXPECT_NEAR(std::pow(tangent(view.diagonal), 2),
              std::pow(tangent(view.horizontal), 2) + std::pow(tangent(view.vertical), 2), 1e-14);
}

TEST(FieldOfView, GoesToNothingForASmallGateAndToAHalfTurnForAShortLens) {
  EXPECT_LT(fieldOfView(halfTangents({1e-9, 1e-9}, 50)).diagonal, 1e-6);
  EXPECT_GT(fieldOfView(halfTangents({36, 24}, 1e-6)).horizontal, 179.99);
}

TEST(WidenedFrame, OpensEveryHalfAngleByTheMargin) {
  const HalfTangents half = halfTangents({24.9, 14}, 28);
  const FieldOfView before = fieldOfView(half), after = fieldOfView(widened(half, 4));
  EXPECT_NEAR(after.horizontal, before.horizontal + 8, 1e-10);
  EXPECT_NEAR(after.vertical, before.vertical + 8, 1e-10);
  EXPECT_EQ(widened(half, 0), half);
}

TEST(WidenedFrame, StopsShortOfAHalfTurnAndNeverShrinks) {
  const HalfTangents wide = widened({2, 500}, 60);
  EXPECT_NEAR(fieldOfView(wide).horizontal, 2 * kWidestHalfAngle, 1e-9);
  EXPECT_EQ(wide.v, 500);
}

}  // namespace
}  // namespace wend::optics
