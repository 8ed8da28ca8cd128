// Which part of the floor plan is shown when a plan is opened.
#include "core/sheets/plan_view.h"

#include <gtest/gtest.h>

#include <set>

#include "core/answers/glass_ground.h"
#include "core/sight/ground_map.h"
#include "core/snags/stretch.h"
#include "tests/samples.h"

namespace wend::sheets {
namespace {

class OpeningView : public ::testing::TestWithParam<const char*> {
 protected:
  void SetUp() override { take_ = *answers::Take::of(sharedSample(GetParam())); }
  void expectFree(const PlanView& view, geometry::Point place, double radius, const std::string& what) {
    const auto px = view.toPicture(place);
    const double r = radius * view.pxPerMetre;
    EXPECT_GE(px.x - r, 0) << what;
    EXPECT_GE(px.y - r, 0) << what;
    EXPECT_LE(px.x + r, view.width) << what;
    EXPECT_LE(px.y + r, view.height - kLegendHeight) << what;
  }

  answers::TakePtr take_;
};

TEST_P(OpeningView, HasWallsBodiesAndWaysAboveTheLegend) {
  const plan::Plan& plan = take_->plan();
  for (const auto& [width, height] : {std::pair(686.0, 386.0), std::pair(1130.0, 414.0), std::pair(500.0, 900.0)}) {
    const PlanView view = wholeTake(*take_, width, height);
    EXPECT_DOUBLE_EQ(view.width, width);
    EXPECT_DOUBLE_EQ(view.height, height);
    for (const auto& wall : plan.set.walls)
      for (const auto& corner : wall.points) expectFree(view, corner, 0, wall.id.text());
    for (double t = 0; t <= take_->length(); t += 1.3) {
      const auto instant = answers::instantAt(*take_, t);
      expectFree(view, geometry::flat(instant.camera.sensor.at), 0, "camera");
      for (const auto& crew : instant.crew)
        if (crew.present) expectFree(view, crew.pos, 0.2, crew.id);
      for (const auto& performer : instant.performers)
        if (performer.present) expectFree(view, performer.pos, 0.2, performer.id);
    }
  }
}

TEST_P(OpeningView, IsNoSmallerThanItHasToBe) {
  const PlanView view = wholeTake(*take_, 686, 386);
  double left = view.width, right = 0, top = view.height, foot = 0;
  const auto take = [&](geometry::Point place) {
    const auto px = view.toPicture(place);
    left = std::min(left, px.x), right = std::max(right, px.x);
    top = std::min(top, px.y), foot = std::max(foot, px.y);
  };
  for (const auto& wall : take_->plan().set.walls)
    for (const auto& corner : wall.points) take(corner);
  for (double t = 0; t <= take_->length(); t += 0.5)
    for (const auto& crew : answers::instantAt(*take_, t).crew)
      if (crew.present) take(crew.pos);
  for (const auto& shelter : take_->plan().shelters) take(shelter.pos);
  EXPECT_TRUE(right - left > 0.85 * view.width || foot - top > 0.75 * (view.height - kLegendHeight))
      << right - left << " by " << foot - top;
}

/// Six patterns, each a swatch on a page of its own: six outlined boxes besides the four of the scale bar.
TEST(PlanLegend, ShowsEveryPatternClearOfTheScaleBarFromSmallScreensOn) {
  for (double width = 480; width < 2400; width += 7) {
    PlanView view;
    view.width = width;
    view.height = 416;
    const auto drawing = planLegend(view, {}, plan::LengthUnit::metres);
    std::vector<geometry::Box> swatches;
    std::vector<geometry::Text> words;
    for (const auto& shape : drawing.shapes) {
      if (const auto* box = std::get_if<geometry::Box>(&shape); box && box->height == 20) swatches.push_back(*box);
      if (const auto* text = std::get_if<geometry::Text>(&shape); text && text->text != "N") words.push_back(*text);
    }
    EXPECT_EQ(swatches.size(), 2u * 6) << width;
    for (std::size_t i = 0; i < words.size(); ++i)
      for (std::size_t k = i + 1; k < words.size(); ++k)
        EXPECT_FALSE(overlap(boxOf(words[i]), boxOf(words[k])))
            << words[i].text << " and " << words[k].text << " at " << width;
  }
}

int filledWith(const geometry::Drawing& drawing, geometry::Pattern pattern) {
  int count = 0;
  for (const auto& shape : drawing.shapes) {
    const auto* path = std::get_if<geometry::Path>(&shape);
    const auto* box = std::get_if<geometry::Box>(&shape);
    count += (path && path->fill.pattern == pattern) || (box && box->fill.pattern == pattern);
  }
  return count;
}

// The window of low sun is a mirror until 12.8 s, and none from then on.
TEST(GroundLayer, LinesGroundThatShowsInTurnedGlassForAsLongAsItWill) {
  answers::Answers answers;
  plan::Plan plan = samplePlan("low-sun.wend");
  plan.sightRules.cell = 0.5;
  answers.take = *answers::Take::of(std::make_shared<const plan::Plan>(plan));
  answers.ground = *answers::groundOf(*answers.take);
  const PlanView view = wholeSet(*answers.take, 800, 600);
  PlanPicture picture;
  EXPECT_EQ(filledWith(groundLayer(answers, view, picture), geometry::Pattern::rising), 0);
  EXPECT_FALSE(groundShowsInGlass(answers));
  answers.glass =
      std::make_shared<const answers::GlassGround>(*answers::glassGroundOf(*answers.take, {1.8, {0, 20}, {}}));
  EXPECT_TRUE(groundShowsInGlass(answers));
  EXPECT_EQ(filledWith(groundLayer(answers, view, picture), geometry::Pattern::rising), 1);
  EXPECT_EQ(filledWith(planLegend(view, picture, plan::LengthUnit::metres, true), geometry::Pattern::rising), 1);
  EXPECT_EQ(filledWith(planLegend(view, picture, plan::LengthUnit::metres), geometry::Pattern::rising), 0);
  picture.time = 13.5;
  EXPECT_EQ(filledWith(groundLayer(answers, view, picture), geometry::Pattern::rising), 0);
  picture.ground = Ground::clearSpan;
  picture.span = {13, 15};
  EXPECT_EQ(filledWith(groundLayer(answers, view, picture), geometry::Pattern::rising), 1) << "late reaches back to 12";
  picture.span = {15, 18};
  EXPECT_EQ(filledWith(groundLayer(answers, view, picture), geometry::Pattern::rising), 0);
}

TEST(CrewSlabs, LieBesidePerformersAndEachOtherInThePicture) {
  answers::Answers answers;
  answers.take = *answers::Take::of(sharedSample("first-batch.wend"));
  for (const double scale : {10.0, 21.0, 60.0})
    for (double t = 0; t < answers.take->length(); t += 7) {
      PlanView view = wholeTake(*answers.take, 690, 416);
      view.pxPerMetre = scale;
      const auto instant = answers::instantAt(*answers.take, t);
      const auto slabs = crewSlabs(answers, instant, view);
      for (std::size_t i = 0; i < slabs.size(); ++i) {
        const auto apart = [&](geometry::Point other, double wide, double high) {
          return std::abs(slabs[i].at.x - other.x) >= wide || std::abs(slabs[i].at.y - other.y) >= high;
        };
        EXPECT_GE(slabs[i].at.x, 14);
        EXPECT_LE(slabs[i].at.x, view.width - 14);
        for (std::size_t k = 0; k < i; ++k) EXPECT_TRUE(apart(slabs[k].at, 26, 18)) << i << " " << k << " at " << t;
        for (const auto& performer : instant.performers)
          EXPECT_TRUE(!performer.present || apart(view.toPicture(performer.pos), 23, 18)) << performer.id << " " << t;
      }
    }
}

TEST(SharpBandOnThePlan, IsWrittenInThePlansUnit) {
  const auto wordsAt = [](plan::LengthUnit unit) {
    plan::Plan plan = samplePlan("first-batch.wend");
    plan.display = unit;
    answers::Answers answers;
    answers.take = *answers::Take::of(std::make_shared<const plan::Plan>(plan));
    const auto instant = answers::instantAt(*answers.take, 60);
    const PlanView view = wholeTake(*answers.take, 1130, 414);
    std::set<std::string> words;
    for (const Label& label : nowLayer(answers, instant, view, {}).writing.labels) words.insert(label.text.text);
    for (const double metres : {instant.focus.setBand.near, instant.focus.setBand.far})
      EXPECT_TRUE(words.contains(snags::lengthText(plan, metres))) << snags::lengthText(plan, metres);
    EXPECT_TRUE(words.contains("set " + snags::lengthText(plan, instant.focus.setDistance)));
    return words;
  };
  for (const std::string& word : wordsAt(plan::LengthUnit::feet)) EXPECT_FALSE(word.ends_with(" m")) << word;
  wordsAt(plan::LengthUnit::metres);
}

INSTANTIATE_TEST_SUITE_P(Samples, OpeningView,
                         ::testing::Values("first-batch.wend", "one-room.wend", "links-and-booms.wend"));

}  // namespace
}  // namespace wend::sheets
