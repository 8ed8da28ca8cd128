// The score as a picture: where staves, handles and tubes stand, held against the take they are drawn from.
#include "core/sheets/score_drawing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/answers/routes.h"
#include "core/sheets/stave.h"
#include "core/sheets/stave_room.h"
#include "core/sheets/text_width.h"
#include "tests/samples.h"

namespace wend::sheets {
namespace {

answers::Answers answersOf(const plan::Plan& plan) {
  answers::Answers answers;
  answers.take = *answers::Take::of(std::make_shared<const plan::Plan>(plan));
  return answers;
}

/// Evidence of samples alone, one a second.
std::shared_ptr<snags::Evidence> sampled(const answers::Take& take) {
  auto evidence = std::make_shared<snags::Evidence>();
  evidence->plan = take.planPtr();
  for (double t = 0; t <= take.length(); t += 1) evidence->samples.push_back(answers::sampleAt(take, t));
  return evidence;
}

StaveBox boxOf(const plan::Plan& plan, const ScoreView& view, const std::string& name) {
  for (const auto& box : stavesOf(plan, view))
    if (box.name == name) return box;
  ADD_FAILURE() << name;
  return {};
}

const ScoreHandle* handleOf(const std::vector<ScoreHandle>& handles, const std::string& key) {
  const auto found = std::find_if(handles.begin(), handles.end(), [&](const auto& h) { return h.key == key; });
  return found == handles.end() ? nullptr : &*found;
}

TEST(ScoreStaves, LieUnderOneAnotherWithoutGaps) {
  const plan::Plan plan = samplePlan("first-batch.wend");
  for (const double height : {0.0, 300.0, 620.0, 2000.0}) {
    ScoreView view;
    view.height = height;
    double top = 0;
    for (const auto& box : stavesOf(plan, view)) {
      EXPECT_DOUBLE_EQ(box.top, top) << box.name << " at " << height;
      top += box.height;
    }
    EXPECT_DOUBLE_EQ(scoreHeight(plan, view), top);
  }
}

TEST(ScoreStaves, GiveSpareHeightToTheCurvesUpToDouble) {
  const plan::Plan plan = samplePlan("first-batch.wend");
  ScoreView least, roomy, huge;
  const double natural = scoreHeight(plan, least);
  roomy.height = natural + 60;
  huge.height = natural + 5000;
  EXPECT_DOUBLE_EQ(scoreHeight(plan, roomy), natural + 60);
  for (const auto* name : {"sharp", "iris, faces"}) {
    EXPECT_DOUBLE_EQ(boxOf(plan, huge, name).height, 2 * boxOf(plan, least, name).height);
    EXPECT_GT(boxOf(plan, roomy, name).height, boxOf(plan, least, name).height);
  }
  EXPECT_DOUBLE_EQ(boxOf(plan, huge, "crew").height, boxOf(plan, least, "crew").height);
}

class ScoreInSight : public ::testing::TestWithParam<double> {
 protected:
  ScoreView scrolledTo(double from) const {
    ScoreView view;
    view.shownHeight = GetParam();
    view.shownFrom = from;
    view.height = std::max(GetParam(), scoreHeight(plan_, view));
    return view;
  }
  const plan::Plan plan_ = samplePlan("first-batch.wend");
};

TEST_P(ScoreInSight, KeepsClockBeatsCrewAndSnagsWhole) {
  const double most = scrolledTo(0).height - GetParam();
  for (const double from : {0.0, most / 2, most}) {
    const ScoreView view = scrolledTo(from);
    for (const auto* name : {"clock", "beats", "crew", "snags"}) {
      const StaveBox box = boxOf(plan_, view, name);
      EXPECT_FALSE(box.folded) << name;
      EXPECT_GE(box.top, from - 1e-9) << name;
      EXPECT_LE(box.top + box.height, from + GetParam() + 1e-9) << name;
      EXPECT_GE(box.height, boxOf(plan_, ScoreView{}, name).height) << name;
    }
    EXPECT_GE(boxOf(plan_, view, "sharp").height, 64);
  }
}

TEST_P(ScoreInSight, ShowsAPxOfOneStaveOnly) {
  const double most = scrolledTo(0).height - GetParam();
  for (const double from : {0.0, most / 2, most}) {
    const auto boxes = stavesOf(plan_, scrolledTo(from));
    for (double y = from + 0.5; y < std::min(from + GetParam(), scoreHeight(plan_, scrolledTo(from))); ++y)
      EXPECT_EQ(std::count_if(boxes.begin(), boxes.end(),
                              [&](const StaveBox& box) {
                                const auto free = uncovered(boxes, box);
                                return y >= free.from && y < free.until;
                              }),
                1)
          << y << " from " << from;
  }
}

TEST_P(ScoreInSight, ScrollsToEveryStave) {
  std::set<std::string> seen;
  for (double from = 0; from <= scrolledTo(0).height - GetParam(); from += 4) {
    const auto boxes = stavesOf(plan_, scrolledTo(from));
    for (const auto& box : boxes)
      if (uncovered(boxes, box).length() > box.height - 4.5) seen.insert(box.name);
  }
  std::set<std::string> all;
  for (const auto& box : stavesOf(plan_, {})) all.insert(box.name);
  EXPECT_EQ(seen, all);
}

TEST_P(ScoreInSight, FoldsNoStaveThatWasOpened) {
  ScoreView view = scrolledTo(0);
  view.opened = {"zoom", "speech"};
  for (const auto& name : view.opened) EXPECT_FALSE(boxOf(plan_, view, name).folded) << name;
}

/// A take with little to show leaves room for more than its folded names.
TEST(ScoreStaves, FoldNoMoreThanRoomAsks) {
  const plan::Plan plan = samplePlan("one-room.wend");
  ScoreView view;
  view.shownHeight = view.height = 274;
  const auto boxes = stavesOf(plan, view);
  double height = 0;
  for (const auto& box : boxes) height += box.height;
  EXPECT_LE(height, 274);
  for (const auto& box : boxes) {
    if (!box.folded) continue;
    const double curves = boxOf(plan, view, "sharp").height - 64;
    EXPECT_GT(height - curves + boxOf(plan, ScoreView{}, box.name).height - 16, 274) << box.name << " would fit";
  }
}

INSTANTIATE_TEST_SUITE_P(Laptop, ScoreInSight, ::testing::Values(274.0, 304.0, 420.0, 500.0, 512.0, 900.0));

TEST(ScoreStaves, OfARoleKeepClockBeatsAndSnags) {
  const auto names = staveNames();
  for (const Role role : {Role::everybody, Role::assistant, Role::photography, Role::director, Role::operating,
                          Role::floor, Role::sound}) {
    const auto folded = foldedFor(role);
    const std::set<std::string> set(folded.begin(), folded.end());
    for (const auto* always : {"clock", "beats", "snags"}) EXPECT_FALSE(set.contains(always));
    for (const auto& name : folded) EXPECT_NE(std::find(names.begin(), names.end(), name), names.end()) << name;
  }
  EXPECT_TRUE(foldedFor(Role::everybody).empty());
  const auto sound = foldedFor(Role::sound);
  EXPECT_EQ(std::find(sound.begin(), sound.end(), "speech"), sound.end());
  EXPECT_NE(std::find(sound.begin(), sound.end(), "zoom"), sound.end());
}

TEST(ScoreHandles, StandAtBothEndsOfAKeyAndOnceAtACut) {
  const plan::Plan plan = samplePlan("first-batch.wend");
  const auto answers = answersOf(plan);
  const auto handles = scoreHandles(answers, {});
  for (std::size_t i = 0; i < plan.zoom.keys.size(); ++i) {
    const auto& time = plan.zoom.keys[i].time;
    const std::string name = "zoom/" + std::to_string(i);
    const ScoreHandle *end = handleOf(handles, name), *start = handleOf(handles, name + kStartOfKey);
    ASSERT_TRUE(end) << name;
    EXPECT_NEAR(end->time, plan::secondsOf(plan, time.at) + time.over, 1e-9);
    EXPECT_EQ(start != nullptr, time.over > 0) << name;
    EXPECT_EQ(end->cut, !start);
    if (start) {
      EXPECT_NEAR(start->time, plan::secondsOf(plan, time.at), 1e-9);
    }
  }
}

TEST(ScoreHandles, OfPullsStandWhereTheyArrive) {
  plan::Plan plan = samplePlan("one-room.wend");
  plan.focus.pulls = {{{"", 0}, 0, 4, {}}, {{"", 2}, 1.5, 2, {}}};
  const auto answers = answersOf(plan);
  ScoreView view;
  view.until = plan.clock.length;
  const auto handles = scoreHandles(answers, view);
  const StaveScale scale = focusStaveScale(*answers.take, boxOf(plan, view, "sharp"));
  const ScoreHandle *end = handleOf(handles, "pull/1"), *start = handleOf(handles, "pull/1/start");
  ASSERT_TRUE(end && start);
  EXPECT_DOUBLE_EQ(end->time, 3.5);
  EXPECT_DOUBLE_EQ(end->value, 0.5);
  EXPECT_NEAR(end->y, scale.y(0.5), 1e-9);
  // The pull begins where the one before it has left the lens.
  EXPECT_NEAR(start->y, scale.y(0.25), 0.5);
}

TEST(ScoreHandles, APxUpIsWorthWhatTheStaveSays) {
  plan::Plan plan = samplePlan("one-room.wend");
  plan.focus.pulls = {{{"", 0}, 0, 4, {}}, {{"", 2}, 1.5, 2, {}}};
  ScoreView view;
  view.until = plan.clock.length;
  const auto answers = answersOf(plan);
  const auto handles = scoreHandles(answers, view);
  const ScoreHandle *far = handleOf(handles, "pull/0"), *near = handleOf(handles, "pull/1");
  ASSERT_TRUE(far && near);
  EXPECT_NEAR(near->value, far->value + (far->y - near->y) * far->perPx, 1e-9);
}

TEST(FocusStave, ShowsEverythingTheLensIsSetAt) {
  for (const auto* name : {"first-batch.wend", "links-and-booms.wend", "one-room.wend"}) {
    const plan::Plan plan = samplePlan(name);
    const auto answers = answersOf(plan);
    ScoreView view;
    view.until = plan.clock.length;
    const StaveBox box = boxOf(plan, view, "sharp");
    const StaveScale scale = focusStaveScale(*answers.take, box);
    double nearest = 1e9;
    for (const auto& knot : answers.take->lens().focus().knots)
      nearest = std::min(nearest, answers.take->lens().focusScale().valueAt(knot.value));
    EXPECT_GT(scale.y(1 / nearest), box.top) << name;
    // And does not waste its height on distances nobody is at.
    EXPECT_LT(scale.y(1 / nearest), box.top + box.height * 0.72) << name << " nearest " << nearest;
  }
}

/// Texts on the scales at the right must not lie on one another.
TEST(Score, ScalesOfOneStaveAreApart) {
  for (const auto* name : {"first-batch.wend", "links-and-booms.wend"}) {
    const plan::Plan plan = samplePlan(name);
    auto answers = answersOf(plan);
    ScoreView view;
    view.until = plan.clock.length;
    const StaveBox box = boxOf(plan, view, "sharp");
    std::vector<double> lines;
    for (const auto& shape : scoreDrawing(answers, view).shapes)
      if (const auto* text = std::get_if<geometry::Text>(&shape))
        if (text->at.x >= view.width - view.scales && text->at.y > box.top && text->at.y < box.top + box.height)
          lines.push_back(text->at.y);
    std::sort(lines.begin(), lines.end());
    ASSERT_GE(lines.size(), 2u) << name;
    for (std::size_t i = 1; i < lines.size(); ++i) EXPECT_GE(lines[i] - lines[i - 1], 12) << name;
  }
}

TEST(CrewStave, HasRoomForTheLaneOfAClickedSpot) {
  const plan::Plan plan = samplePlan("first-batch.wend");
  ScoreView bare, spot;
  spot.spotLane = true;
  EXPECT_DOUBLE_EQ(boxOf(plan, spot, "crew").height, boxOf(plan, bare, "crew").height + 16);
  EXPECT_DOUBLE_EQ(boxOf(plan, spot, "crew").top, boxOf(plan, bare, "crew").top);
}

/// A route that was found is a lane of the same seconds, dashed: nobody has drawn it.
TEST(CrewStave, ShowsAFoundRouteWhereNoneIsDrawn) {
  plan::Plan plan = samplePlan("first-batch.wend");
  plan::Crew crew = plan.crew[2];
  ASSERT_FALSE(crew.marks.empty());
  crew.marks.clear();
  plan.crew.replace(2, crew);
  auto answers = answersOf(plan);
  answers::FoundRoute route;
  route.id = crew.id.text();
  route.found = true;
  route.stands = {{{0, 30}, {0, 0}, ""}, {{36, 168}, {1, 1}, ""}};
  answers::FoundWalk walk;
  walk.walk.span = {30, 36};
  walk.walk.latestLeave = 33;
  route.walks = {walk};
  answers.routes = std::make_shared<const answers::FoundRoutes>(answers::FoundRoutes{{route}});
  ScoreView view;
  const StaveBox box = boxOf(plan, view, "crew");
  int stands = 0, walks = 0;
  for (const auto& shape : scoreDrawing(answers, view).shapes) {
    const auto* path = std::get_if<geometry::Path>(&shape);
    if (!path || path->stroke.dash.empty() || path->rings[0].size() != 2) continue;
    const auto [a, b] = std::pair(path->rings[0][0], path->rings[0][1]);
    if (a.y < box.top || a.y > box.top + box.height) continue;
    for (const auto& stand : route.stands)
      stands += std::abs(a.x - view.x(stand.span.from)) < 1e-9 && std::abs(b.x - view.x(stand.span.until)) < 1e-9;
    walks += std::abs(a.x - view.x(30)) < 1e-9 && std::abs(b.x - view.x(36)) < 1e-9 && a.y > b.y;
  }
  EXPECT_EQ(stands, 2);
  EXPECT_EQ(walks, 1);
}

/// Where a need fails on a drawn route its lane has a hollow block of the same seconds.
TEST(CrewStave, ShowsWhereADrawnRouteFailsANeed) {
  const plan::Plan plan = samplePlan("first-batch.wend");
  auto answers = answersOf(plan);
  ScoreView view;
  const auto blocks = [&](std::vector<snags::NeedUnmet> unmet) {
    auto evidence = std::make_shared<snags::Evidence>();
    evidence->plan = answers.take->planPtr();
    evidence->samples.push_back(answers::sampleAt(*answers.take, 0));
    evidence->unmetNeeds = std::move(unmet);
    answers.evidence = evidence;
    const StaveBox box = boxOf(plan, view, "crew");
    int count = 0;
    for (const auto& shape : scoreDrawing(answers, view).shapes) {
      const auto* block = std::get_if<geometry::Box>(&shape);
      if (!block || block->fill.tone != geometry::Tone::page) continue;
      count += block->topLeft.y > box.top && block->topLeft.y + block->height < box.top + box.height &&
               std::abs(block->topLeft.x - view.x(20)) < 1e-9 &&
               std::abs(block->topLeft.x + block->width - view.x(31)) < 1e-9;
    }
    return count;
  };
  EXPECT_EQ(blocks({}), 0);
  EXPECT_EQ(blocks({{"ac1", {20, 31}, {0, 0}, snags::NeedFails::far}}), 1);
  EXPECT_EQ(blocks({{"nobody", {20, 31}, {0, 0}, snags::NeedFails::far}}), 0);
}

std::set<std::string> wordsOn(const geometry::Drawing& drawing) {
  std::set<std::string> words;
  for (const auto& shape : drawing.shapes)
    if (const auto* text = std::get_if<geometry::Text>(&shape)) words.insert(text->text);
  return words;
}

/// The heaviest line of the lens on a stave: where it is set.
const geometry::Path* settingOn(const geometry::Drawing& drawing, double top, double bottom) {
  for (const auto& shape : drawing.shapes)
    if (const auto* path = std::get_if<geometry::Path>(&shape))
      if (path->stroke.tone == geometry::Tone::lens && path->stroke.width == 2.4 && path->rings.size() == 1 &&
          path->rings[0].front().y > top && path->rings[0].front().y < bottom)
        return path;
  return nullptr;
}

TEST(FocusStave, DrawsPullsAsSoftlyAsTheyMayRun) {
  plan::Plan plan = samplePlan("first-batch.wend");
  plan.focus.pulls.clear();
  const auto answers = answersOf(plan);
  ScoreView view;
  view.until = plan.clock.length;
  view.width = 1800;
  const auto& focus = answers.take->lens().focus();
  std::size_t eases = 0;
  for (const auto& move : focus.moves) eases += (move.easeIn > 0 ? 1 : 0) + (move.easeOut > 0 ? 1 : 0);
  ASSERT_GT(eases, 0u);
  const auto drawing = scoreDrawing(answers, view);
  const auto* line = settingOn(drawing, 0, 1e9);
  ASSERT_TRUE(line);
  EXPECT_EQ(line->rings[0].size(), focus.knots.size() + eases * kEaseSteps) << "each soft corner is a curve";
}

TEST(CuesStave, ShowsLampsBesideDoorsAndAreasOnce) {
  plan::Plan plan = samplePlan("first-batch.wend");
  plan::Fixture lamp = plan.fixtures[0];
  lamp.level.push_back({{{"", 100}, 4, plan::Pace::even}, 0.5, "down", {}, {}});
  lamp.level.push_back({{{"", 110}, 0, plan::Pace::even}, 0.7, "", {}, {}});
  plan.fixtures.replace(0, lamp);
  ScoreView view;
  view.until = plan.clock.length;
  view.width = 1800;
  const auto words = wordsOn(scoreDrawing(answersOf(plan), view));
  EXPECT_TRUE(words.contains("down 50 %"));
  EXPECT_TRUE(words.contains(lamp.name + " 70 %"));
  EXPECT_FALSE(words.contains("LIGHT 1 100 %")) << "the area's block tells of that cue";
}

TEST(ScoreOfTheLens, SaysWhereOnePersonWantsMoreHandsAndWhereARampWouldHide) {
  const plan::Plan plan = samplePlan("first-batch.wend");
  auto answers = answersOf(plan);
  const auto evidence = sampled(*answers.take);
  ScoreView view;
  view.until = plan.clock.length;
  view.width = 1800;
  answers.evidence = evidence;
  const auto quiet = wordsOn(scoreDrawing(answers, view));
  EXPECT_FALSE(quiet.contains("2 hands"));
  auto busy = std::make_shared<snags::Evidence>(*evidence);
  snags::LensWork work;
  work.load.stretches = {{{60, 62}, {0, 1}, 0, 2}};
  busy->work = {work};
  snags::Move ramp;
  ramp.axis = snags::Move::Axis::iris;
  ramp.from = 100;
  ramp.until = 102;
  ramp.better = pulls::Slot{{120, 140}, 0.2, 1};
  ramp.betterCover = "D2";
  busy->moves = {ramp};
  answers.evidence = busy;
  const auto words = wordsOn(scoreDrawing(answers, view));
  EXPECT_TRUE(words.contains("2 hands"));
  EXPECT_TRUE(words.contains("better: D2"));
}

/// Blocks of rising lines, as x from and until.
std::vector<geometry::Span> linedBlocks(const geometry::Drawing& drawing) {
  std::vector<geometry::Span> blocks;
  for (const auto& shape : drawing.shapes) {
    const auto* box = std::get_if<geometry::Box>(&shape);
    if (box && box->fill.pattern == geometry::Pattern::rising)
      blocks.push_back({box->topLeft.x, box->topLeft.x + box->width});
  }
  return blocks;
}

TEST(CrewStave, LinesWhereGlassShowsSomebody) {
  const plan::Plan plan = samplePlan("first-batch.wend");
  auto answers = answersOf(plan);
  const auto evidence = sampled(*answers.take);
  ScoreView view;
  view.until = plan.clock.length;
  answers.evidence = evidence;
  EXPECT_TRUE(linedBlocks(scoreDrawing(answers, view)).empty());
  EXPECT_FALSE(wordsOn(scoreDrawing(answers, view)).contains("lined: in glass"));
  auto shown = std::make_shared<snags::Evidence>(*evidence);
  snags::PaneMirror pane;
  pane.who = "ac2";
  pane.span = {3, 5};
  shown->panes = {pane};
  answers.evidence = shown;
  const auto blocks = linedBlocks(scoreDrawing(answers, view));
  ASSERT_EQ(blocks.size(), 1u);
  EXPECT_DOUBLE_EQ(blocks[0].from, view.x(3));
  EXPECT_DOUBLE_EQ(blocks[0].until, view.x(5));
  EXPECT_TRUE(wordsOn(scoreDrawing(answers, view)).contains("lined: in glass"));
}

}  // namespace
}  // namespace wend::sheets
