#include "core/answers/replanned.h"

#include <cmath>
#include <random>

#include "core/pulls/pinned.h"
#include "tests/core/answers/small_plan.h"

namespace wend::answers {
namespace {

using plan::Axis;

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(seed) {}
  double uniform(double a, double b) { return a + (b - a) * static_cast<double>(random_() >> 11) * 0x1p-53; }
  /// On whole milliseconds or tenths of a millimetre.
  double stepped(double a, double b, double perUnit) { return std::round(uniform(a, b) * perUnit) / perUnit; }
  int below(int n) { return static_cast<int>(uniform(0, n)); }

 private:
  std::mt19937_64 random_;
};

plan::HandPull pull(double at, double over, double distance) {
  return {{"", at}, over, distance, {}};
}
plan::IrisKey stop(double at, double over, double tNumber, plan::Pace pace = plan::Pace::even) {
  return {{{"", at}, over, pace}, tNumber, {}};
}

/// NORA walks up to the camera and back, sharp throughout.
plan::Plan walkingPlan() {
  plan::Plan plan = smallPlan();
  plan.lens->stop = {2, 22};
  plan.performers.replace(0, [&] {
    plan::Performer nora = plan.performers[0];
    nora.marks = {markAt("n1", {0, 6}), markAt("n2", {0, 2}, 5), markAt("n3", {0, 6}, 10)};
    return nora;
  }());
  plan.focus.keys.push_back({{}, plan::OnPerformer{"nora"}, {}});
  plan.focus.blurShare = 1;
  plan.iris.keys.push_back(stop(0, 0, 2.8));
  return plan;
}

/// The light over all the set goes from one reading to the next, a state every so many seconds.
void light(plan::Plan& plan, const std::vector<double>& stops, double every) {
  plan::Area area;
  area.id = base::Id<plan::Area>("light");
  area.shape = plan::Outline{{{-20, -20}, {20, -20}, {20, 20}, {-20, 20}}};
  for (std::size_t i = 0; i < stops.size(); ++i)
    area.states.push_back(
        {{{"", static_cast<double>(i) * every}, i ? every : 0, plan::Pace::even}, "", "", {{{0, 3}, stops[i], {}}}});
  plan.set.areas.add(area);
}

plan::Plan mustReplan(const plan::Plan& plan, Axis axis, geometry::Span span) {
  const auto result = replanned(*takeOf(plan), axis, span);
  if (!result.ok()) ADD_FAILURE() << base::toText(result.problems()[0]);
  return result.ok() ? *result : plan;
}

std::string codeOf(const base::Result<plan::Plan>& result) {
  return result.ok() ? "" : result.problems()[0].code;
}

TEST(Replanned, KeepsPullsOutsideTheSpanAndMeetsThemAtItsEnds) {
  plan::Plan plan = walkingPlan();
  plan.focus.pulls = {pull(0, 0, 5.8), pull(1, 1, 4.6), pull(3, 0.4, 9), pull(6, 0.5, 3.5), pull(8, 1, 5)};
  const plan::Plan next = mustReplan(plan, Axis::focus, {2.5, 5.5});
  const auto& pulls = next.focus.pulls;
  ASSERT_GE(pulls.size(), 4u);
  EXPECT_EQ(pulls[0], plan.focus.pulls[0]);
  EXPECT_EQ(pulls[1], plan.focus.pulls[1]);
  EXPECT_EQ(pulls[pulls.size() - 2], plan.focus.pulls[3]);
  EXPECT_EQ(pulls[pulls.size() - 1], plan.focus.pulls[4]);
  EXPECT_EQ(pulls[pulls.size() - 3].distance, 9) << "the kept pull at 6 s starts from 9 m";
  EXPECT_EQ(next.iris, plan.iris);
}

TEST(Replanned, TakesOutWhatNobodyNeeds) {
  plan::Plan plan = walkingPlan();
  plan.performers.replace(0, [&] {
    plan::Performer nora = plan.performers[0];
    nora.marks = {markAt("n1", {0, 4})};
    return nora;
  }());
  plan.focus.pulls = {pull(0, 0, 4), pull(2, 1, 2), pull(4, 1, 4), pull(7, 1, 4.1)};
  EXPECT_EQ(mustReplan(plan, Axis::focus, {1, 6}).focus.pulls,
            (std::vector<plan::HandPull>{plan.focus.pulls[0], plan.focus.pulls[3]}));
}

TEST(Replanned, GivesTheAxisBackToThePlannerWhereAllIsSelected) {
  plan::Plan plan = walkingPlan();
  plan.focus.pulls = {pull(0, 0, 5), pull(4, 1, 2)};
  EXPECT_TRUE(mustReplan(plan, Axis::focus, {0, 10}).focus.pulls.empty());
  EXPECT_TRUE(mustReplan(plan, Axis::focus, {-1, 11}).focus.pulls.empty());
  EXPECT_TRUE(mustReplan(plan, Axis::iris, {0, 10}).iris.keys.empty());
}

TEST(Replanned, LeavesAPlannedAxisAsItIs) {
  const plan::Plan plan = walkingPlan();
  EXPECT_EQ(mustReplan(plan, Axis::focus, {2, 4}), plan);
}

TEST(Replanned, RefusesToCutAMove) {
  plan::Plan plan = walkingPlan();
  plan.focus.pulls = {pull(0, 0, 5), pull(4, 1, 2)};
  const auto late = replanned(*takeOf(plan), Axis::focus, {4.5, 8});
  ASSERT_EQ(codeOf(late), "span-cuts-move");
  EXPECT_EQ(late.problems()[0].where, "/focus/pulls/1");
  EXPECT_EQ(late.problems()[0].found, "a move from 4 s to 5 s");
  EXPECT_EQ(late.problems()[0].remedy, "Select from 4 s or from 5 s on.");
  EXPECT_EQ(codeOf(replanned(*takeOf(plan), Axis::focus, {2, 4.5})), "span-cuts-move");
  EXPECT_TRUE(replanned(*takeOf(plan), Axis::focus, {4, 5}).ok());
  EXPECT_TRUE(replanned(*takeOf(plan), Axis::focus, {5, 6}).ok());
}

TEST(Replanned, RefusesASpanTooShortForTheChangeAcrossIt) {
  plan::Plan plan = walkingPlan();
  plan.lens->limits.focusDegPerSecond = 50;
  plan.focus.pulls = {pull(0, 0, 6), pull(4, 0.1, 1)};
  // 180 degrees / distance: 30 at 6 m, 180 at 1 m, so three seconds at 50 a second.
  const auto result = replanned(*takeOf(plan), Axis::focus, {3.9, 4.2});
  ASSERT_EQ(codeOf(result), "span-too-short");
  EXPECT_EQ(result.problems()[0].found, "150.00 degrees of barrel from end to end in 0.3 s");
  EXPECT_EQ(result.problems()[0].expected, "3 s or longer at the limit of 50 degrees of barrel a second");
  EXPECT_TRUE(replanned(*takeOf(plan), Axis::focus, {2, 5.1}).ok());
}

TEST(Replanned, RefusesWhatIsNoSpanOrNoPlannedAxis) {
  plan::Plan plan = walkingPlan();
  plan.focus.pulls = {pull(0, 0, 5)};
  EXPECT_EQ(codeOf(replanned(*takeOf(plan), Axis::focus, {4, 4})), "span-empty");
  EXPECT_EQ(codeOf(replanned(*takeOf(plan), Axis::focus, {12, 14})), "span-empty");
  EXPECT_EQ(codeOf(replanned(*takeOf(plan), Axis::aim, {1, 4})), "axis-not-planned");
  EXPECT_EQ(codeOf(inHand(*takeOf(plan), Axis::aim)), "axis-not-planned");
}

TEST(Replanned, PutsAFirstEntryThatStandsLaterAtTheStartOfTheTake) {
  plan::Plan plan = walkingPlan();
  plan.focus.pulls = {pull(7, 1, 5), pull(8.5, 1, 4)};
  const plan::Plan next = mustReplan(plan, Axis::focus, {2, 6});
  EXPECT_EQ(next.focus.pulls.front(), pull(0, 0, 5));
  EXPECT_EQ(next.focus.pulls.back(), plan.focus.pulls[1]);
}

double at(const Take& take, Axis axis, double t) {
  return axis == Axis::focus ? take.lens().barrelAt(t) : stopsOf(take.lens().irisAt(t));
}

double outside(const pulls::TubeSample& s, double value) {
  return s.open ? 0 : std::max({s.lo - value, value - s.hi, 0.0});
}

/// The steepest of the track between two frames, by looking at it closely.
double steepest(const Take& take, Axis axis, geometry::Span span) {
  double rate = 0;
  constexpr double kStep = 1e-3;
  for (double t = span.from; t + kStep <= span.until + 1e-9; t += kStep)
    rate = std::max(rate, std::abs(at(take, axis, t + kStep) - at(take, axis, t)) / kStep);
  return rate;
}

struct Seen {
  int replanned = 0, refused = 0, followed = 0;
};

/// What holds of a replanned span, whatever the plan.
void expectLawful(const plan::Plan& plan, Axis axis, geometry::Span span, const std::string& which, Seen& seen) {
  const TakePtr before = takeOf(plan);
  const auto result = replanned(*before, axis, span);
  if (!result.ok()) {
    ++seen.refused;
    return;
  }
  ++seen.replanned;
  const TakePtr after = takeOf(*result);
  for (int i = 0; i <= 997; ++i) {
    const double t = 10.0 * i / 997;
    if ((t > span.from || span.from == 0) && (t < span.until || span.until == 10)) continue;
    ASSERT_EQ(at(*after, axis, t), at(*before, axis, t)) << which << " at " << t;
  }
  const pulls::MoveRules rules = axis == Axis::focus ? focusRules(plan) : irisRules(plan);
  // Where the pins can be met inside the tube at all, the track is inside it throughout.
  const pulls::Tube whole =
      axis == Axis::focus ? before->lens().focusTube() : withinLens(before->lens().irisTube(), plan);
  const pulls::Tube part = pulls::cutOut(whole, span);
  pulls::Pins pins;
  if (span.from > 0) pins.from = at(*before, axis, span.from);
  if (span.until < 10) pins.until = at(*before, axis, span.until);
  // Pins that ask for nearly the whole limit leave no room for the plan's steps under it.
  const bool room = pulls::rateBetween(pins, span) <= 0.95 * rules.rate;
  ASSERT_LE(steepest(*after, axis, span), rules.rate * (1 + (room ? 1e-5 : 1e-2))) << which;
  const pulls::Tube tied = pulls::pinned(part, pins, rules.rate);
  const auto way = pulls::passable(tied, rules.rate);
  bool possible = std::none_of(way.forced.begin(), way.forced.end(), [](bool f) { return f; });
  for (std::size_t i = 0; possible && i < part.size(); ++i)
    possible = part[i].open || (tied[i].lo >= part[i].lo - 1e-9 && tied[i].hi <= part[i].hi + 1e-9);
  if (!possible) return;
  ++seen.followed;
  for (const auto& sample : part)
    ASSERT_LE(outside(sample, at(*after, axis, sample.t)), 1e-5) << which << " at " << sample.t;
}

/// Hand moves at random times, a span between two of them.
std::vector<std::array<double, 2>> randomMoves(Draw& draw) {
  std::vector<std::array<double, 2>> moves;
  double t = draw.stepped(0.2, 2, 1000);
  while (t < 9) {
    const double over = draw.below(5) == 0 ? 0 : draw.stepped(0.1, 1.2, 1000);
    moves.push_back({t, over});
    t = std::round((t + over + draw.uniform(0, 2)) * 1000) / 1000;
  }
  return moves;
}

geometry::Span randomSpan(Draw& draw) {
  const double a = draw.below(4) == 0 ? 0 : draw.stepped(0, 9, 1000);
  return {a, draw.below(4) == 0 ? 10 : std::min(10.0, a + draw.stepped(0.5, 6, 1000))};
}

TEST(Replanned, ChangesNothingOutsideTheSpanAndKeepsToTheSlackInside) {
  Seen seen;
  for (std::uint64_t seed = 1; seed <= 250; ++seed) {
    Draw draw(seed);
    plan::Plan plan = walkingPlan();
    plan.iris.keys[0].stop = draw.stepped(2, 11, 10);
    plan.performers.replace(0, [&] {
      plan::Performer nora = plan.performers[0];
      nora.marks = {markAt("n1", {0, draw.uniform(1.5, 7)}),
                    markAt("n2", {0, draw.uniform(1.5, 7)}, draw.uniform(2, 5)),
                    markAt("n3", {0, draw.uniform(1.5, 7)}, draw.uniform(6, 9))};
      return nora;
    }());
    plan.focus.pulls = {pull(0, 0, draw.stepped(1, 8, 10000))};
    for (const auto& [t, over] : randomMoves(draw))
      plan.focus.pulls.push_back(pull(t, over, draw.stepped(1, 8, 10000)));
    // Half the time what is set by hand is right, so that the pins lie in the slack.
    if (draw.below(2)) {
      plan.focus.pulls.clear();
      plan = *inHand(*takeOf(plan), Axis::focus);
    }
    ASSERT_NO_FATAL_FAILURE(
        expectLawful(plan, Axis::focus, randomSpan(draw), "focus, seed " + std::to_string(seed), seen));
  }
  std::cout << "focus: " << seen.replanned << " replanned, " << seen.followed << " inside the slack throughout, "
            << seen.refused << " refused\n";
  EXPECT_GT(seen.followed, 60);
}

TEST(Replanned, HoldsForTheIrisAsForTheFocus) {
  Seen seen;
  for (std::uint64_t seed = 1; seed <= 250; ++seed) {
    Draw draw(seed);
    plan::Plan plan = walkingPlan();
    light(plan, {draw.uniform(2.5, 12), draw.uniform(2.5, 12), draw.uniform(2.5, 12), draw.uniform(2.5, 12)}, 3);
    plan.iris.keys.clear();
    if (draw.below(2)) {
      plan = *inHand(*takeOf(plan), Axis::iris);
    } else {
      plan.iris.keys.push_back(stop(0, 0, draw.stepped(2, 16, 1000)));
      for (const auto& [t, over] : randomMoves(draw))
        plan.iris.keys.push_back(
            stop(t, over, draw.stepped(2, 16, 1000), draw.below(2) ? plan::Pace::eased : plan::Pace::even));
    }
    ASSERT_NO_FATAL_FAILURE(
        expectLawful(plan, Axis::iris, randomSpan(draw), "iris, seed " + std::to_string(seed), seen));
  }
  std::cout << "iris: " << seen.replanned << " replanned, " << seen.followed << " inside the slack throughout, "
            << seen.refused << " refused\n";
  EXPECT_GT(seen.followed, 60);
}

TEST(Replanned, IsNotOneMoveMoreThanNeeded) {
  plan::Plan plan = walkingPlan();
  plan.focus.pulls = {pull(0, 0, 5.8), pull(2, 0.4, 9), pull(3, 0.4, 1), pull(4, 0.5, 3.5), pull(9, 0.5, 6)};
  const TakePtr take = takeOf(plan);
  const geometry::Span span{1, 8};
  const auto tube = pulls::pinned(pulls::cutOut(take->lens().focusTube(), span),
                                  {take->lens().barrelAt(1), take->lens().barrelAt(8)}, 120);
  const pulls::Track track = pulls::fewestMoves(tube, focusRules(plan));
  const plan::Plan next = mustReplan(plan, Axis::focus, span);
  EXPECT_EQ(next.focus.pulls.size(), 2 + track.leastRamps);
}

TEST(InHand, IsWhatWasPlannedSaveForTheStepsOfThePlan) {
  const plan::Plan plan = walkingPlan();
  const TakePtr before = takeOf(plan);
  const auto next = inHand(*before, Axis::focus);
  ASSERT_TRUE(next.ok());
  ASSERT_FALSE(next->focus.pulls.empty());
  const TakePtr after = takeOf(*next);
  EXPECT_EQ(after->lens().focus().moves.size(), before->lens().focus().ramps());
  for (const auto& sample : before->lens().focusTube()) {
    EXPECT_LE(outside(sample, after->lens().barrelAt(sample.t)), 1e-5) << sample.t;
    EXPECT_NEAR(after->lens().barrelAt(sample.t), before->lens().barrelAt(sample.t), 0.2) << sample.t;
  }
  EXPECT_EQ(*inHand(*after, Axis::focus), *next) << "already in the hand";
}

}  // namespace
}  // namespace wend::answers
