// Fields of equipment, needs and tables: typed and chosen on the real panel, looked up in the plan.
#include "core/plan/edits_entities.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_people.h"
#include "tests/ui/details/one_room.h"
#include "tests/ui/details/panel_hand.h"
#include "ui/details/chosen_words.h"
#include "ui/details/contents_box.h"

namespace wend::ui {
namespace {

class Equipment : public OnSample, public PanelHand {
 protected:
  Equipment() : OnSample("links-and-booms.wend"), PanelHand(panel) {
    panel.resize(464, 700);
    panel.show();
    EXPECT_TRUE(QTest::qWaitForWindowExposed(&panel));
  }

  void enter(const char* label, const char* text) {
    type(label, text);
    QTest::keyClick(field(label), Qt::Key_Return);
  }
  void put(plan::Plan changed) { document.start(std::make_shared<const plan::Plan>(std::move(changed)), {}); }

  DetailsPanel panel{document, bridge};
};

TEST_F(Equipment, WhoHidesIsARuleOfSight) {
  document.select({Kind::sight, {}, -1});
  choose("who hides", "everybody");
  EXPECT_EQ(plan().sightRules.bodiesHide, plan::BodiesHide::everybody);
  enter("margin", "4.5");
  EXPECT_EQ(plan().sightRules.margin, 4.5);
}

TEST_F(Equipment, APolesReachAndHolderAreEdited) {
  ASSERT_FALSE(plan().poles.empty());
  document.select({Kind::pole, plan().poles[0].id.text(), -1});
  enter("reach", "2.6");
  EXPECT_EQ(plan().poles[0].reach, 2.6);
  enter("mouth, most", "0.75");
  EXPECT_EQ(plan().poles[0].gap[1], 0.75);
  EXPECT_EQ(document.undoStack().count(), 2);
}

TEST_F(Equipment, ALinksBudgetAndEndAreEdited) {
  ASSERT_FALSE(plan().links.empty());
  document.select({Kind::link, plan().links[0].id.text(), -1});
  enter("budget", "88");
  EXPECT_EQ(plan().links[0].budget, 88);
  enter("frequency", "5600");
  EXPECT_EQ(plan().links[0].mhz, 5600);
  choose("carries", "talk");
  EXPECT_EQ(plan().links[0].kind, plan::LinkKind::talk);
}

TEST_F(Equipment, ACablesPointAndTimesAreEdited) {
  ASSERT_FALSE(plan().cables.empty());
  const std::string id = plan().cables[0].id.text();
  document.select({Kind::cable, id, 0});
  const double y = plan().cables[0].points[0].y;
  enter("east x", "1.25");
  EXPECT_EQ(plan().cables[0].points[0].x, 1.25);
  EXPECT_EQ(plan().cables[0].points[0].y, y);
  enter("until", "12.5");
  ASSERT_TRUE(plan().cables[0].until.has_value());
  EXPECT_EQ(plan::secondsOf(plan(), *plan().cables[0].until), 12.5);
  enter("until", "");
  EXPECT_FALSE(plan().cables[0].until.has_value());
}

TEST_F(Equipment, AnOpeningsRadioLossIsTheUsualWhenEmpty) {
  ASSERT_FALSE(plan().set.openings.empty());
  document.select({Kind::opening, plan().set.openings[0].id.text(), -1});
  enter("radio loss", "17");
  EXPECT_EQ(plan().set.openings[0].radioLoss, 17);
  enter("radio loss", "");
  EXPECT_FALSE(plan().set.openings[0].radioLoss.has_value());
}

TEST_F(Equipment, APieceThatMovesIsEditedKeyByKey) {
  ASSERT_FALSE(plan().set.pieces.empty());
  const std::string id = plan().set.pieces[0].id.text();
  document.select({Kind::pieceMove, id, -1});
  document.setPlayhead(5);
  panel.addAtPlayhead();
  panel.addAtPlayhead();
  ASSERT_GE(plan().set.pieces[0].moved.size(), 2u);
  document.select({Kind::pieceMove, id, 1});
  enter("moved east", "0.4");
  enter("turned", "30");
  EXPECT_EQ(plan().set.pieces[0].moved[1].offset.x, 0.4);
  EXPECT_EQ(plan().set.pieces[0].moved[1].turn, 30);
}

TEST_F(Equipment, MainsAndCycleAreOfTheClock) {
  document.select({});
  choose("mains Hz", "60");
  EXPECT_EQ(plan().clock.mainsHz, 60);
  enter("take to take", "22");
  EXPECT_EQ(plan().clock.cycleMinutes, 22);
  enter("take to take", "");
  EXPECT_FALSE(plan().clock.cycleMinutes.has_value());
}

TEST_F(Equipment, TheColourOfAnAreasLightIsItsStates) {
  ASSERT_FALSE(plan().set.areas.empty());
  std::size_t at = 0;
  while (at < plan().set.areas.size() && plan().set.areas[at].states.empty()) ++at;
  if (at == plan().set.areas.size()) {
    plan::Plan lit = plan();
    plan::Area area = lit.set.areas[0];
    area.states.push_back({{}, "lamps", "", {}, std::nullopt, {}});
    lit.set.areas.replace(0, area);
    put(lit);
    at = 0;
  }
  const plan::Area& area = plan().set.areas[at];
  document.select({Kind::area, area.id.text(), -1});
  const std::string state = area.states[0].name.empty() ? "state 1" : area.states[0].name;
  enter((state + " colour").c_str(), "3200");
  EXPECT_EQ(plan().set.areas[at].states[0].kelvin, 3200);
}

TEST_F(Equipment, ADaylightReadingHasItsStopAndColourUnderItsTime) {
  plan::Plan lit = plan();
  ASSERT_FALSE(lit.set.areas.empty());
  plan::Area area = lit.set.areas[0];
  area.byClock = {{17 * 3600.0, 5.6, std::nullopt}, {18 * 3600.0, 4, 7000}};
  lit.set.areas.replace(0, area);
  put(lit);
  document.select({Kind::area, area.id.text(), -1});
  enter("17:00:00", "8");
  EXPECT_EQ(plan().set.areas[0].byClock[0].stop, 8);
  enter("17:00:00 colour", "6500");
  EXPECT_EQ(plan().set.areas[0].byClock[0].kelvin, 6500);
  enter("18:00:00 colour", "");
  EXPECT_FALSE(plan().set.areas[0].byClock[1].kelvin.has_value());
  EXPECT_EQ(plan().set.areas[0].byClock[1].stop, 4);
  enter("17:00:00 colour", "20");
  EXPECT_EQ(plan().set.areas[0].byClock[0].kelvin, 6500) << "no light is that";
}

TEST_F(Equipment, LimitsOfTheLensAreTyped) {
  ASSERT_TRUE(plan().lens.has_value());
  document.select({Kind::lens, {}, -1});
  enter("iris limit", "2.5");
  enter("zoom limit", "60");
  enter("barrel limit", "90");
  EXPECT_EQ(plan().lens->limits.irisStopsPerSecond, 2.5);
  EXPECT_EQ(plan().lens->limits.zoomPercentPerSecond, 60);
  EXPECT_EQ(plan().lens->limits.focusDegPerSecond, 90);
}

TEST_F(Equipment, WhatChangesAlongTheZoomIsTypedAsRowsOrAsOneNumber) {
  plan::Plan zoomed = plan();
  ASSERT_TRUE(zoomed.lens.has_value());
  zoomed.lens->transmission = plan::OverFocal({{28, 0.8}, {70, 0.6}});
  put(zoomed);
  document.select({Kind::lens, {}, -1});
  enter("transmission, %", "80 at 28, 72.5 at 45, 65 at 70");
  EXPECT_EQ(plan().lens->transmission, plan::OverFocal({{28, 0.8}, {45, 0.725}, {70, 0.65}}));
  enter("transmission, %", "90");
  EXPECT_EQ(plan().lens->transmission, plan::OverFocal(0.9));
  enter("breathing, %", "3");
  EXPECT_EQ(plan().lens->breathing, plan::OverFocal(0.03));
  enter("balance moves, mm forward", "0 at 28, 6.5 at 70");
  EXPECT_EQ(plan().lens->balance, plan::OverFocal({{28, 0}, {70, 0.0065}}));
}

TEST_F(Equipment, ADensityKeyIsAddedAndTyped) {
  document.select({Kind::density, {}, -1});
  document.setPlayhead(4);
  panel.addAtPlayhead();
  ASSERT_EQ(plan().camera.nd.size(), 1u);
  document.select({Kind::density, {}, 0});
  enter("variable", "1.5");
  EXPECT_EQ(plan().camera.nd[0].stops, 1.5);
}

TEST_F(Equipment, AShotSizeOfThePlansOwnReplacesTheUsualOne) {
  document.select({Kind::sizes, {}, -1});
  enter("medium", "0.5");
  EXPECT_EQ(plan().sizes.at("medium"), 0.5);
  enter("medium", "");
  EXPECT_FALSE(plan().sizes.contains("medium"));
}

TEST_F(Equipment, WhoGivesLightIsSaid) {
  ASSERT_FALSE(plan().crew.empty());
  document.select({Kind::crew, plan().crew[0].id.text(), -1});
  choose("gives light", plan().crew[0].glows ? "no" : "yes");
  EXPECT_EQ(document.undoStack().count(), 1);
}

TEST_F(Equipment, ANeedIsAddedEditedAndTakenAway) {
  const std::string id = plan().crew[0].id.text();
  put(*plan::crewNeedsSet(plan(), id, {}));
  document.select({Kind::crew, id, -1});
  choose("need 1", "near the camera");
  ASSERT_EQ(plan().crew[0].needs.size(), 1u);
  enter("of need 1", "3.5");
  EXPECT_EQ(std::get<plan::NearCamera>(plan().crew[0].needs[0].what).within, 3.5);
  enter("from 1", "4");
  ASSERT_TRUE(plan().crew[0].needs[0].from.has_value());
  EXPECT_EQ(plan().crew[0].needs[0].from->seconds, 4);
  choose("need 1", "nothing more");
  EXPECT_TRUE(plan().crew[0].needs.empty());
}

/// Held against the distance to the camera looked up instant by instant.
TEST_F(Equipment, WhetherANeedIsMetIsSaidInWords) {
  std::size_t member = 0;
  while (member < plan().crew.size() && !bridge.answers()->take->people().crew(member)) ++member;
  ASSERT_LT(member, plan().crew.size());
  const std::string id = plan().crew[member].id.text();
  const answers::Take& take = *bridge.answers()->take;
  double nearest = 1e9, farthest = 0;
  for (const double t : take.frameTimes()) {
    const double away =
        geometry::distance(take.people().crew(member)->place(t), geometry::flat(take.view().sensorAt(t).at));
    nearest = std::min(nearest, away);
    farthest = std::max(farthest, away);
  }
  const auto wordsFor = [&](double within) {
    put(*plan::crewNeedsSet(plan(), id, {{plan::NearCamera{within}, {}, {}, {}}}));
    bridge.finish();
    std::string words;
    const Selection chosen{Kind::crew, id, -1};
    for (const auto& line : computedOf({plan(), chosen, bridge.answers().get(), 0}))
      if (line.label == "need 1") words = line.text;
    return words;
  };
  EXPECT_TRUE(wordsFor(farthest + 0.1).ends_with(": met")) << wordsFor(farthest + 0.1);
  EXPECT_NE(wordsFor(std::max(0.1, nearest - 0.1)).find("not met for"), std::string::npos);
}

TEST_F(Equipment, EverythingListedExistsAndIsChosenByTheBox) {
  const auto contents = contentsOf(plan());
  for (const auto& content : contents) EXPECT_TRUE(exists(plan(), content.what)) << content.words.toStdString();
  auto* list = panel.findChild<ContentsBox*>();
  ASSERT_NE(list, nullptr);
  const int row = list->findText(QStringLiteral("rules of sight"));
  ASSERT_GE(row, 0);
  list->setFocus();
  list->setCurrentIndex(row - 1);
  QTest::keyClick(list, Qt::Key_Down);
  EXPECT_EQ(document.selection().kind, Kind::sight);
}

}  // namespace
}  // namespace wend::ui
