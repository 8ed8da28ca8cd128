// Words on a crowded picture: placed by rank, clear of each other and of people.
#include "core/sheets/labels.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/answers/routes.h"
#include "core/base/text.h"
#include "core/sheets/plan_view.h"
#include "core/sheets/text_width.h"
#include "tests/samples.h"

namespace wend::sheets {
namespace {

using geometry::Drawing;
using geometry::Point;
using geometry::Text;

Label word(const std::string& text, Point at, LabelRank rank) {
  return {.text = Text{.at = at, .text = text}, .rank = rank};
}

Drawing placed(std::vector<Label> labels, std::vector<Reserved> reserved = {}) {
  Drawing drawing;
  drawing.width = 400;
  drawing.height = 300;
  placeLabels(drawing, std::move(labels), std::move(reserved));
  return drawing;
}

std::vector<Text> textsOf(const Drawing& drawing) {
  std::vector<Text> texts;
  for (const auto& shape : drawing.shapes)
    if (const auto* text = std::get_if<Text>(&shape)) texts.push_back(*text);
  return texts;
}

/// What the letters cover at the least: by advance widths, from the tops of capitals to the baseline.
Reserved inkOf(const Text& text) {
  const double width = typeWidth(text.text, text.size);
  const double left = text.align == geometry::Align::left     ? text.at.x
                      : text.align == geometry::Align::centre ? text.at.x - width / 2
                                                              : text.at.x - width;
  return {left, text.at.y - 0.73 * text.size, left + width, text.at.y};
}

TEST(Labels, GiveWayByRankWhateverTheirOrder) {
  const auto low = word("counter 1.00", {100, 100}, LabelRank::name), high = word("TOM", {110, 102}, LabelRank::person);
  for (const auto& labels : {std::vector{low, high}, std::vector{high, low}}) {
    const auto texts = textsOf(placed(labels));
    ASSERT_EQ(texts.size(), 1u);
    EXPECT_EQ(texts[0].text, "TOM");
  }
}

TEST(Labels, TakeTheNextOfTheirPlacesWhereTheFirstIsTaken) {
  Label second = word("20", {100, 100}, LabelRank::detail);
  second.others = {{104, 100}, {100, 140}};
  const auto texts = textsOf(placed({word("set 3.10", {95, 100}, LabelRank::playhead), second}));
  ASSERT_EQ(texts.size(), 2u);
  EXPECT_EQ(texts[1].at.y, 140);
}

TEST(Labels, KeepBesideTheirSignOrAreLedAwayByALineInTheirReach) {
  Label label = word("MRS A", {216, 154}, LabelRank::person);
  label.anchor = LabelAnchor{.at = {200, 150}, .clear = 14, .reach = 0};
  const Reserved right{210, 100, 300, 200}, around{150, 100, 250, 200};
  const Drawing beside = placed({label}, {right});
  ASSERT_EQ(beside.shapes.size(), 1u);
  EXPECT_LT(boxOf(textsOf(beside)[0]).right, 200);
  EXPECT_TRUE(placed({label}, {around}).shapes.empty()) << "nothing is written over what is reserved";
  label.anchor->reach = 100;
  const Drawing led = placed({label}, {around});
  ASSERT_EQ(led.shapes.size(), 2u);
  const auto& line = std::get<geometry::Path>(led.shapes[0]).rings[0];
  EXPECT_NEAR(geometry::distance(line[0], label.anchor->at), 14, 1e-9);
  const Reserved box = boxOf(textsOf(led)[0]);
  EXPECT_FALSE(overlap(box, around));
  EXPECT_TRUE(line[1].x >= box.left && line[1].x <= box.right && line[1].y >= box.top && line[1].y <= box.bottom);
}

TEST(Labels, NeverLeaveThePicture) {
  Label label = word("house fronts", {390, 298}, LabelRank::name);
  EXPECT_TRUE(placed({label}).shapes.empty());
  label.anchor = LabelAnchor{.at = {380, 290}, .clear = 4, .reach = 40};
  const auto texts = textsOf(placed({label}));
  ASSERT_EQ(texts.size(), 1u);
  EXPECT_LE(boxOf(texts[0]).right, 400);
  EXPECT_LE(boxOf(texts[0]).bottom, 300);
}

class PlanLabels : public ::testing::TestWithParam<double> {
 protected:
  static void SetUpTestSuite() {
    auto answers = answers::answersOf(*answers::Take::of(sharedSample("first-batch.wend")));
    answers_ = *answers::withRoutes(*answers);
  }
  static void TearDownTestSuite() { answers_ = nullptr; }

  /// The whole take on a desktop and on a small screen, and close to the people of the moment.
  std::vector<PlanView> views() const {
    const answers::Take& take = *answers_->take;
    std::vector<PlanView> views = {wholeTake(take, 1130, 464), wholeTake(take, 690, 416), wholeTake(take, 690, 416)};
    views.back().pxPerMetre *= 3;
    views.back().centre = geometry::flat(answers::instantAt(take, GetParam()).camera.sensor.at);
    return views;
  }
  Drawing drawn(const PlanView& view) const {
    PlanPicture picture;
    picture.time = GetParam();
    return planDrawing(*answers_, view, picture);
  }

  inline static answers::AnswersPtr answers_;
};

/// Labels have a halo, letters inside signs have none.
TEST_P(PlanLabels, LieOverNoOtherTextOfThePicture) {
  for (const PlanView& view : views()) {
    const auto texts = textsOf(drawn(view));
    EXPECT_GT(texts.size(), 20u);
    for (std::size_t i = 0; i < texts.size(); ++i)
      for (std::size_t k = i + 1; k < texts.size(); ++k) {
        if (texts[i].halo == geometry::Tone::none && texts[k].halo == geometry::Tone::none) continue;
        EXPECT_FALSE(overlap(inkOf(texts[i]), inkOf(texts[k])))
            << texts[i].text << " and " << texts[k].text << " at " << GetParam() << " s, " << view.pxPerMetre;
      }
  }
}

TEST_P(PlanLabels, NameEverybodyInViewAndTheMetresOfThoseBeyond) {
  const auto instant = answers::instantAt(*answers_->take, GetParam(), answers_->evidence.get());
  for (const PlanView& view : views()) {
    const auto texts = textsOf(drawn(view));
    const auto says = [&](const std::string& words, Point near) {
      return std::any_of(texts.begin(), texts.end(), [&](const Text& text) {
        return text.text == words && geometry::distance(text.at, near) < 320;
      });
    };
    for (std::size_t i = 0; i < instant.performers.size(); ++i) {
      const Point at = view.toPicture(instant.performers[i].pos);
      const bool inView = at.x >= 0 && at.y >= 0 && at.x <= view.width && at.y <= view.height - kLegendHeight;
      if (!instant.performers[i].present || !inView) continue;
      EXPECT_TRUE(says(answers_->take->plan().performers[i].name, at)) << i << " at " << GetParam();
    }
    for (const auto& slab : crewSlabs(*answers_, instant, view)) {
      if (slab.beyond <= 0) continue;
      EXPECT_TRUE(says(base::fixed(slab.beyond, 1) + " m", slab.at)) << slab.crew << " at " << GetParam();
    }
  }
}

TEST_P(PlanLabels, AreTheSameEveryTime) {
  const PlanView view = views().front();
  const auto first = textsOf(drawn(view)), second = textsOf(drawn(view));
  ASSERT_EQ(first.size(), second.size());
  for (std::size_t i = 0; i < first.size(); ++i) {
    EXPECT_EQ(first[i].text, second[i].text);
    EXPECT_EQ(first[i].at, second[i].at);
  }
}

INSTANTIATE_TEST_SUITE_P(FirstBatch, PlanLabels, ::testing::Values(0.0, 20.0, 60.0, 115.0, 160.0));

}  // namespace
}  // namespace wend::sheets
