// Keys, beats, acceptance, the table of thresholds, and rules on takes written by hand.
#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

TEST(Rules, FindNothingInAQuietTake) {
  EXPECT_TRUE(with([](Evidence&) {}).empty());
}

TEST(Rules, HaveNamesOfTheirOwn) {
  std::set<std::string> names;
  for (const auto& rule : rules()) EXPECT_TRUE(names.insert(rule.name).second) << rule.name;
}

TEST(SubjectLost, CountsFromHalfASecondOn) {
  const auto hide = [](Instant& sample) { sample.performers[0].inFrame = optics::Showing::hidden; };
  expectOne(during(3, 3.6, hide), "subject-lost", Severity::risks);
  EXPECT_TRUE(during(3, 3.3, hide).empty());
}

TEST(HotFocus, CountsBelowOneTimesTheWobble) {
  const Snags hot = during(3, 4, [](Instant& s) {
    s.focus.wobble = 0.5;
    s.focus.warmth = 0.56;
  });
  expectOne(hot, "hot-focus", Severity::risks);
  EXPECT_NE(hot[0].mend.find("back off to"), std::string::npos) << hot[0].mend;
  EXPECT_TRUE(during(3, 4, [](Instant& s) { s.focus.warmth = 1.01; }).empty());
}

TEST(HotFocus, SaysWhatTapeAndAStandingCameraWouldDo) {
  const auto mend = [](double wobble, bool moving) {
    return during(3, 4,
                  [&](Instant& s) {
                    s.focus.wobble = wobble;
                    s.focus.warmth = 0.56;
                    s.camera.moving = moving;
                  })[0]
        .mend;
  };
  // Walking before a walking operator: 0.20 and 0.20 m, common practice, no source.
  const std::string walking = mend(std::hypot(0.2, 0.2), true);
  EXPECT_NE(walking.find("stop them on tape"), std::string::npos) << walking;
  EXPECT_NE(walking.find("pull while the camera stands"), std::string::npos) << walking;
  EXPECT_NE(walking.find("stops more light"), std::string::npos) << walking;
  // On tape before a standing operator there is nothing left to steady.
  const std::string steady = mend(std::hypot(0.12, 0.07), false);
  EXPECT_EQ(steady.find("tape"), std::string::npos) << steady;
  EXPECT_EQ(steady.find("stands"), std::string::npos) << steady;
}

TEST(TooClose, StopsTheTakeAtOnce) {
  expectOne(during(3, 3, [](Instant& s) { s.focus.wantedDistance = 0.5; }), "too-close", Severity::stops);
  EXPECT_TRUE(during(3, 3, [](Instant& s) { s.focus.wantedDistance = 0.61; }).empty());
}

TEST(TooClose, LooksAtEachOfASplit) {
  const auto split = [](double nearest) {
    return [nearest](Instant& s) {
      s.focus.on = {"ilse+tom"};
      s.focus.wantedDistance = 1.1;
      s.focus.split = {{"tom", 3, 0.1}, {"ilse", nearest, 0.1}};
    };
  };
  const Snags close = during(3, 3, split(0.5));
  expectOne(close, "too-close", Severity::stops);
  EXPECT_TRUE(close[0].text.starts_with("ILSE comes to 0.50 m")) << close[0].text;
  EXPECT_TRUE(during(3, 3, split(0.61)).empty());
}

TEST(BarrelFast, CountsOverTheLensLimitFromATenthOfASecondOn) {
  expectOne(during(3, 3.2, [](Instant& s) { s.focus.barrelRate = -130; }), "barrel-fast", Severity::risks);
  EXPECT_TRUE(during(3, 3.2, [](Instant& s) { s.focus.barrelRate = 119; }).empty());
}

TEST(Exposure, CountsOverTwoThirdsOfAStopForASecond) {
  expectOne(during(3, 4, [](Instant& s) { s.performers[0].offset = 0.7; }), "exposure", Severity::risks);
  expectOne(during(3, 4, [](Instant& s) { s.performers[0].offset = -0.7; }), "exposure", Severity::risks);
  EXPECT_TRUE(during(3, 4, [](Instant& s) { s.performers[0].offset = 0.6; }).empty());
  EXPECT_TRUE(during(3, 3.8, [](Instant& s) { s.performers[0].offset = 0.7; }).empty());
  // Unknown is no snag of exposure, and nobody out of frame has one.
  EXPECT_TRUE(during(3, 4, [](Instant& s) { s.performers[0].offset.reset(); }).empty());
}

TEST(PanFast, CountsOnlyWithNobodyHeldInFrame) {
  const auto pan = [](Instant& s) {
    s.camera.panRate = 20;
    s.performers[0].place.x = -0.9 + 0.9 * (s.time - 3);
  };
  expectOne(during(3, 4, pan), "pan-fast", Severity::note);
  EXPECT_TRUE(during(3, 4, [](Instant& s) { s.camera.panRate = 20; }).empty());
}

TEST(CrewSeen, StopsTheTakeAndTellsTheWay) {
  const Snags snags = with([](Evidence& evidence) {
    SightOf sight;
    sight.id = "ac1";
    sight.seen = {{{3, 4}, "direct", "", {1, 2}, 0}};
    evidence.sight = {sight};
  });
  expectOne(snags, "crew-seen", Severity::stops);
  EXPECT_EQ(snags[0].key, "crew-seen/ac1//b1/1");
  EXPECT_NE(snags[0].mend.find("1.0 s"), std::string::npos) << "two seconds early: " << snags[0].mend;
}

TEST(CrewSeen, TellsWhatGivesOffLight) {
  const auto seen = [](bool glows) {
    return with([&](Evidence& evidence) {
      auto plan = std::make_shared<plan::Plan>(*evidence.plan);
      plan::Gear monitor;
      monitor.id = base::Id<plan::Gear>("monitor");
      monitor.glows = glows;
      plan->gear.add(monitor);
      evidence.plan = plan;
      evidence.sight = {{"monitor", BodyKind::gear, {{{3, 4}, "direct", "", {}, 0}}, {}, {}}};
    })[0];
  };
  EXPECT_EQ(seen(true).text, seen(false).text + ", giving off light");
  EXPECT_NE(seen(true).mend.find("hood it"), std::string::npos);
  EXPECT_EQ(seen(false).mend.find("hood it"), std::string::npos);
}

Snags passing(double metres, bool hot, bool person) {
  return with([&](Evidence& evidence) {
    for (int i = 0; i < 5; ++i)
      evidence.clearances.push_back({3 + i * 0.1, "camera", "d1", person, hot, metres, true, {}});
  });
}

TEST(Clearance, IsRedUnderFifteenCentimetresTightUnderThirtyAndWiderBesideHotThings) {
  expectOne(passing(0.14, false, false), "clearance", Severity::stops);
  expectOne(passing(0.29, false, false), "clearance", Severity::note);
  EXPECT_TRUE(passing(0.31, false, false).empty());
  expectOne(passing(0.44, true, false), "clearance", Severity::stops);
  expectOne(passing(0.59, true, false), "clearance", Severity::note);
}

TEST(BodiesMeet, CountsOverlapsOfPeopleOnly) {
  expectOne(passing(-0.01, false, true), "bodies-meet", Severity::stops);
  EXPECT_TRUE(passing(0.01, false, true).empty());
}

TEST(Backwards, IsWorseTheFasterItGoes) {
  const auto walk = [](double speed) {
    return during(3, 4, [speed](Instant& s) {
      s.camera.moving = true;
      s.camera.speed = speed;
      s.camera.travel = 180;
    });
  };
  expectOne(walk(0.6), "backwards", Severity::note);
  expectOne(walk(0.9), "backwards", Severity::risks);
  expectOne(walk(1.2), "backwards", Severity::stops);
}

TEST(Speed, CountsTheLensOverAFrontCarry) {
  expectOne(during(3, 4, [](Instant& s) { s.camera.speed = 1.38; }), "speed", Severity::risks);
  EXPECT_TRUE(during(3, 4, [](Instant& s) { s.camera.speed = 1.29; }).empty());
}

TEST(Ground, TellsStepsMarksDoorsJumpsAndRooms) {
  expectOne(with([](Evidence& e) {
              e.crossings = {{3, "camera", "road", 0.12, false, 0, {}}};
            }),
            "step-crossed", Severity::note);
  expectOne(with([](Evidence& e) {
              e.crossings = {{3, "camera", "road", 0.12, true, 0, {}}};
            }),
            "step-crossed", Severity::risks);
  expectOne(with([](Evidence& e) { e.marks = {{{3, 4}, "ilse", 0, {}}}; }), "mark-in-frame", Severity::note);
  EXPECT_TRUE(with([](Evidence& e) { e.marks = {{{3, 3.4}, "ilse", 0, {}}}; }).empty());
  expectOne(with([](Evidence& e) { e.leaves = {{3, "camera", "d1", {}}}; }), "door-late", Severity::stops);
  expectOne(with([](Evidence& e) { e.aimCuts = {{3, 0.6}}; }), "jump", Severity::risks);
  EXPECT_TRUE(with([](Evidence& e) { e.aimCuts = {{3, 0.4}}; }).empty());
  expectOne(with([](Evidence& e) { e.zoomClipped = {{{3, 4}, "", 0, 0}}; }), "zoom-clipped", Severity::note);
  expectOne(with([](Evidence& e) { e.unmet = {{{3, 4}, "too fast"}}; }), "slack-unmet", Severity::risks);
  const Snags planned = with([](Evidence& e) { e.unmet = {{{3, 4}, "too fast", "iris"}}; });
  expectOne(planned, "slack-unmet", Severity::risks);
  EXPECT_EQ(planned[0].mend.find("planned"), std::string::npos) << "it is planned: " << planned[0].mend;
  expectOne(with([](Evidence& e) { e.throughs = {{{3, 4}, "shop", {"d1"}}}; }), "through-sight", Severity::note);
  expectOne(with([](Evidence& e) { e.throughs = {{{3, 4}, "shop", {"d1", "d2"}}}; }), "through-sight", Severity::risks);
}

TEST(Snags, KeepTheirKeysWhenNumbersMoveAndStayAcceptedWhileTheyLive) {
  const auto snagsAt = [](double from, bool accept) {
    Evidence evidence = quietTake();
    evidence.marks = {{{from, from + 1}, "ilse", 0, {from, 2}}, {{from + 2, from + 3}, "ilse", 0, {}}};
    if (accept) {
      auto plan = std::make_shared<plan::Plan>(*evidence.plan);
      plan->accepted = {{"mark-in-frame/ilse/mark1/b1/1", "director", "wanted", {}}};
      evidence.plan = plan;
    }
    return snagsOf(evidence);
  };
  const Snags first = snagsAt(3, false), moved = snagsAt(3.4, true);
  ASSERT_EQ(first.size(), 2u);
  EXPECT_NE(first[0].key, first[1].key);
  EXPECT_EQ(first[0].key, moved[0].key);
  ASSERT_TRUE(moved[0].accepted.has_value());
  EXPECT_EQ(moved[0].accepted->by, "director");
  EXPECT_FALSE(moved[1].accepted.has_value());
  EXPECT_TRUE(changeOf(first, moved).appeared.empty());
  EXPECT_EQ(changeOf(first, {}).cleared.size(), 2u);
}

TEST(Thresholds, TakeThePlansFactorAndNameTheirSource) {
  plan::Plan plan;
  plan.thresholds["clearance-red"] = 2;
  EXPECT_DOUBLE_EQ(threshold(plan, "clearance-red").value, 0.30);
  EXPECT_DOUBLE_EQ(threshold(plan, "pan").value, 1.0 / 7);
  for (const auto& row : thresholdTable()) {
    EXPECT_FALSE(row.source.empty()) << row.name;
    EXPECT_FALSE(row.unit.empty()) << row.name;
  }
}

}  // namespace
}  // namespace wend::snags
