// The now panel in a change of subject and while several moves run.
#include "core/sheets/now_drawing.h"

#include <gtest/gtest.h>

#include "core/sheets/text_width.h"
#include "tests/samples.h"

namespace wend::sheets {
namespace {

constexpr double kHeights[] = {416, 560};

class NowPanel : public ::testing::Test {
 protected:
  static void SetUpTestSuite() { take_ = *answers::Take::of(sharedSample("first-batch.wend")); }
  static void TearDownTestSuite() { take_.reset(); }

  static answers::Answers with(std::vector<snags::Move> moves) {
    answers::Answers answers;
    answers.take = take_;
    auto evidence = std::make_shared<snags::Evidence>();
    evidence->moves = std::move(moves);
    answers.evidence = evidence;
    return answers;
  }
  static std::vector<geometry::Text> wordsAt(const answers::Answers& answers, double t, double height) {
    std::vector<geometry::Text> words;
    for (const auto& shape : nowDrawing(answers, answers::instantAt(*take_, t), false, 240, height).shapes)
      if (const auto* text = std::get_if<geometry::Text>(&shape)) words.push_back(*text);
    return words;
  }
  static const geometry::Text* find(const std::vector<geometry::Text>& words, const std::string& wanted) {
    for (const auto& text : words)
      if (text.text == wanted) return &text;
    return nullptr;
  }

  inline static answers::TakePtr take_;
};

snags::Move moveOf(snags::Move::Axis axis, double from, double until, double before, double after) {
  snags::Move move;
  move.axis = axis;
  move.from = from;
  move.until = until;
  move.valueBefore = before;
  move.valueAfter = after;
  return move;
}

TEST_F(NowPanel, NamesBothWhoTheFocusLeavesAndWhoItGoesToForTheDistanceIsNeithers) {
  const auto instant = answers::instantAt(*take_, 60);
  ASSERT_EQ(instant.focus.on, (std::vector<std::string>{"tom", "ilse"})) << "the sample changes its subject here";
  for (const double height : kHeights) {
    const auto words = wordsAt(with({}), 60, height);
    const auto* from = find(words, "TOM");
    const auto* to = find(words, "ILSE");
    ASSERT_TRUE(from && to && find(words, "\u2192")) << height;
    EXPECT_LT(from->at.x, to->at.x);
    EXPECT_DOUBLE_EQ(from->at.y, to->at.y);
    const auto* label = find(words, "Focus on its way");
    ASSERT_TRUE(label) << height;
    EXPECT_LT(label->at.y, from->at.y - 12);
  }
}

TEST_F(NowPanel, SaysWhatANameStandsForAtBothSizes) {
  for (const double height : kHeights) {
    const auto words = wordsAt(with({}), 35, height);
    EXPECT_TRUE(find(words, "Sharp on")) << height;
    EXPECT_FALSE(find(words, "\u2192")) << height;
  }
}

TEST_F(NowPanel, KeepsWhatItWritesInsideItselfWhateverThePeopleAreCalled) {
  plan::Plan plan = take_->plan();
  for (const char* id : {"tom", "ilse"}) {
    plan::Performer performer = *plan.performers.find(id);
    performer.name = "the younger brother of the baker";
    plan.performers.replace(plan.performers.indexOf(id), performer);
  }
  answers::Answers answers;
  answers.take = *answers::Take::of(std::make_shared<const plan::Plan>(plan));
  for (const double height : kHeights) {
    const auto drawing = nowDrawing(answers, answers::instantAt(*answers.take, 60), false, 240, height);
    for (const auto& shape : drawing.shapes) {
      const auto* text = std::get_if<geometry::Text>(&shape);
      if (!text || text->align != geometry::Align::left) continue;
      EXPECT_LE(text->at.x + typeWidth(text->text, text->size), 240) << text->text << " at " << height;
    }
  }
}

TEST_F(NowPanel, NamesEveryMoveThatRuns) {
  using enum snags::Move::Axis;
  const auto answers = with({moveOf(iris, 112, 115.5, 6.3, 8), moveOf(zoom, 113, 116, 40, 32)});
  for (const double height : kHeights) {
    const auto words = wordsAt(answers, 113.6, height);
    EXPECT_TRUE(find(words, "Now: iris and zoom")) << height;
    EXPECT_TRUE(std::any_of(words.begin(), words.end(), [](const auto& text) {
      return text.text.find("40 \u2192 32") != std::string::npos;
    })) << height;
  }
  EXPECT_TRUE(find(wordsAt(answers, 112.5, 416), "Now: iris"));
}

TEST_F(NowPanel, ReadsAloudWhatItShows) {
  EXPECT_NE(nowInWords(with({}), answers::instantAt(*take_, 60)).find("focus on its way TOM \u2192 ILSE at"),
            std::string::npos);
}

}  // namespace
}  // namespace wend::sheets
