#include "core/plan/invariants.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

#include "core/plan/edits_marks.h"
#include "tests/core/plan/small_plan.h"

namespace wend::plan {
namespace {

using test::at;
using test::equippedPlan;
using test::on;
using test::smallPlan;

struct Broken {
  const char* code;
  const char* where;
  std::function<void(Plan&)> by;
};

template <class T, class Change>
std::function<void(Plan&)> changing(base::Table<T> Plan::*table, std::size_t i, Change change) {
  return [=](Plan& plan) {
    T entity = (plan.*table)[i];
    change(entity);
    (plan.*table).replace(i, entity);
  };
}

std::function<void(Plan&)> changingBench(std::function<void(Piece&)> change) {
  return [=](Plan& plan) {
    Piece bench = plan.set.pieces[0];
    change(bench);
    plan.set.pieces.replace(0, bench);
  };
}

/// One way to break each rule of an equipped plan.
std::vector<Broken> waysToBreak() {
  return {
      {"rows-not-rising", "/lens/transmission/1",
       [](Plan& p) {
         p.lens->transmission = OverFocal(std::vector<FocalValue>{{70, 0.8}, {24, 0.9}});
       }},
      {"rows-not-rising", "/lens/breathing/2",
       [](Plan& p) {
         p.lens->breathing = OverFocal(std::vector<FocalValue>{{24, 0}, {50, 0}, {50, 1}});
       }},
      {"rows-not-rising", "/lens/balance/1",
       [](Plan& p) {
         p.lens->balance = OverFocal(std::vector<FocalValue>{{70, 0}, {24, 0.006}});
       }},
      {"marks-turn-back", "/lens/focusMarks/2", [](Plan& p) { p.lens->focusMarks[2].deg = 50; }},
      {"marks-turn-back", "/lens/irisMarks/2",
       [](Plan& p) {
         p.lens->irisMarks = {{2, 0, {}}, {4, 30, {}}, {8, 20, {}}};
       }},
      {"gap-backwards", "/poles/0/gap",
       changing(&Plan::poles, 0,
                [](Pole& p) {
                  p.gap = {1, 0.5};
                })},
      {"link-one-end", "/links/0/to", changing(&Plan::links, 0, [](Link& l) { l.to = "camera"; })},
      {"line-short", "/cables/0/points", changing(&Plan::cables, 0, [](Cable& c) { c.points.pop_back(); })},
      {"span-backwards", "/cables/0/until", changing(&Plan::cables, 0, [](Cable& c) { c.from = on("b3", 1); })},
      {"first-key", "/camera/nd/0/at", [](Plan& p) { p.camera.nd[0].time.at = at(1); }},
      {"key-order", "/camera/nd/1/at", [](Plan& p) { p.camera.nd[0].time.over = 21; }},
      {"first-key", "/set/pieces/0/moved/0/at", changingBench([](Piece& b) { b.moved[0].time.at = at(1); })},
      {"key-order", "/set/pieces/0/moved/1/at", changingBench([](Piece& b) { b.moved[0].time.over = 30; })},
      {"missing-reference", "/set/pieces/0/moved/1/at", changingBench([](Piece& b) { b.moved[1].time.at = on("b9"); })},
      {"missing-reference", "/camera/nd/1/at", [](Plan& p) { p.camera.nd[1].time.at = on("b9"); }},
      {"missing-reference", "/cables/0/from", changing(&Plan::cables, 0, [](Cable& c) { c.from = on("b9"); })},
      {"missing-reference", "/poles/0/crew", changing(&Plan::poles, 0, [](Pole& p) { p.crew = "ilse"; })},
      {"missing-reference", "/links/0/from", changing(&Plan::links, 0, [](Link& l) { l.from = "bench"; })},
      {"missing-reference", "/speech/0/pole", [](Plan& p) { p.speech[0].pole = "x"; }},
      {"missing-reference", "/crew/0/needs/2/holds",
       changing(&Plan::crew, 0, [](Crew& c) { c.needs[2].what = Holds{"x"}; })},
      {"missing-reference", "/crew/0/needs/3/reaches",
       changing(&Plan::crew, 0, [](Crew& c) { c.needs[3].what = Reaches{"x"}; })},
      {"id-twice", "/crew/0/marks/0/id", changing(&Plan::crew, 0, [](Crew& c) { c.marks[0].id = "c0"; })},
      {"id-twice", "/links/0/id", changing(&Plan::links, 0, [](Link& l) { l.id = base::Id<Link>("boom"); })},
      {"id-word", "/cables/0/id", changing(&Plan::cables, 0, [](Cable& c) { c.id = base::Id<Cable>("a b"); })},
      {"mark-order", "/camera/marks/3/at", [](Plan& p) { p.camera.marks[3].at = at(29); }},
      {"mark-order", "/performers/0/marks/3/at",
       changing(&Plan::performers, 0, [](Performer& p) { p.marks[3].at = on("b3", -1); })},
      {"mark-left-early", "/performers/0/marks/0/until",
       changing(&Plan::performers, 0,
                [](Performer& p) {
                  p.marks[0].at = at(3);
                  p.marks[0].until = at(2);
                })},
      {"time-before-start", "/crew/0/marks/0/at", changing(&Plan::crew, 0, [](Crew& c) { c.marks[0].at = at(-1); })},
      {"arc-radii", "/camera/marks/1/leg/centre",
       [](Plan& p) {
         p.camera.marks[2].pos = {2, 3.7};
       }},
      {"arc-sweep", "/camera/marks/1/leg/sweep", [](Plan& p) { p.camera.marks[1].leg.sweep = 80; }},
      {"first-key", "/iris/keys/0/at", [](Plan& p) { p.iris.keys[0].time.at = at(1); }},
      {"key-order", "/focus/keys/2/at", [](Plan& p) { p.focus.keys[2].time.at = at(22); }},
      {"key-order", "/camera/aims/1/at", [](Plan& p) { p.camera.aims[0].time.over = 21; }},
      {"pull-order", "/focus/pulls/1/at",
       [](Plan& p) {
         p.focus.pulls = {{at(2), 2, 3, {}}, {at(3), 1, 2, {}}};
       }},
      {"span-backwards", "/speech/0/until", [](Plan& p) { p.speech[0].until = at(1); }},
      {"span-backwards", "/crew/0/needs/0/until",
       changing(&Plan::crew, 0, [](Crew& c) { c.needs[0].from = on("b3", 5); })},
      {"entry-order", "/props/0/track/1/at", changing(&Plan::props, 0, [](Prop& p) { p.track[0].at = on("b2", 5); })},
      {"beat-outside", "/beats/2/time", [](Plan& p) { p.clock.length = 30; }},
      {"missing-reference", "/performers/0/marks/1/at",
       changing(&Plan::performers, 0, [](Performer& p) { p.marks[1].at = on("b9"); })},
      {"missing-reference", "/camera/bodies/0/crew", [](Plan& p) { p.camera.bodies[0].crew = "x"; }},
      {"missing-reference", "/handovers/0/to", [](Plan& p) { p.handovers[0].to = "x"; }},
      {"missing-reference", "/iris/expose/performer", [](Plan& p) { p.iris.exposePerformer = "x"; }},
      {"missing-reference", "/crew/0/needs/1/stays",
       changing(&Plan::crew, 0, [](Crew& c) { c.needs[1].what = Stays{"x"}; })},
      {"id-word", "/gear/0/id", changing(&Plan::gear, 0, [](Gear& g) { g.id = base::Id<Gear>("a b"); })},
      {"id-twice", "/gear/0/id", changing(&Plan::gear, 0, [](Gear& g) { g.id = base::Id<Gear>("ilse"); })},
      {"id-twice", "/camera/marks/1/id", [](Plan& p) { p.camera.marks[1].id = "c0"; }},
  };
}

bool has(const base::Problems& problems, const Broken& broken) {
  return std::any_of(problems.begin(), problems.end(), [&](const base::Problem& problem) {
    return problem.code == broken.code && problem.where == broken.where;
  });
}

TEST(ProblemsOf, AreNoneOfASoundPlan) {
  EXPECT_TRUE(problemsOf(smallPlan()).empty());
  EXPECT_TRUE(problemsOf(equippedPlan()).empty());
}

TEST(ProblemsOf, NameEachBrokenRuleWithItsPlace) {
  for (const Broken& broken : waysToBreak()) {
    Plan plan = equippedPlan();
    broken.by(plan);
    const base::Problems problems = problemsOf(plan);
    EXPECT_TRUE(has(problems, broken)) << broken.code << " " << broken.where << ": "
                                       << (problems.empty() ? "nothing" : base::toText(problems.front()));
    for (const base::Problem& problem : problems) {
      EXPECT_FALSE(problem.found.empty()) << problem.where;
      EXPECT_FALSE(problem.expected.empty()) << problem.where;
      EXPECT_FALSE(problem.remedy.empty()) << problem.where;
    }
  }
}

TEST(BrokenBy, FindsWhatTheWholePlanWouldShow) {
  const Plan before = equippedPlan();
  for (const Broken& broken : waysToBreak()) {
    Plan after = before;
    broken.by(after);
    EXPECT_EQ(brokenBy(before, after), problemsOf(after)) << broken.code << " " << broken.where;
  }
}

TEST(BrokenBy, IsEmptyForThePlanItself) {
  EXPECT_TRUE(brokenBy(smallPlan(), smallPlan()).empty());
}

TEST(BrokenBy, DoesNotChargeAnEditWithWhatWasBrokenBefore) {
  for (const Broken& broken : waysToBreak()) {
    Plan before = equippedPlan();
    broken.by(before);
    Plan after = before;
    after.title = "other";
    Gear cart = after.gear[0];
    cart.height = 2;
    after.gear.replace(0, cart);
    EXPECT_TRUE(brokenBy(before, after).empty()) << broken.code << " " << broken.where;
  }
}

TEST(BrokenBy, LetsABrokenPlanBeMended) {
  Plan plan = smallPlan();
  plan.camera.marks[3].at = at(29);
  const auto mended = arrivalSet(plan, {Owner::camera, "", 3}, 41);
  ASSERT_TRUE(mended.ok());
  EXPECT_TRUE(problemsOf(*mended).empty());
}

TEST(Marks, InOnePlaceMayShareAnInstant) {
  Plan plan = smallPlan();
  Performer tom = plan.performers[1];
  tom.marks = {test::mark(at(0), {2, 6}, at(5)), test::mark(at(5), {2, 6})};
  plan.performers.replace(1, tom);
  EXPECT_TRUE(problemsOf(plan).empty());
  tom.marks[1].pos = {3, 6};
  plan.performers.replace(1, tom);
  EXPECT_FALSE(problemsOf(plan).empty());
}

TEST(PlaceOf, IsTheSheltersWhereThereIsOne) {
  const Plan plan = smallPlan();
  EXPECT_EQ(placeOf(plan, plan.crew[0].marks[0]), (Point{-3, -4}));
  EXPECT_EQ(placeOf(plan, plan.crew[0].marks[1]), (Point{-3, -1}));
}

}  // namespace
}  // namespace wend::plan
