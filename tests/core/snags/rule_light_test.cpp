// Light that nobody can tell, lamps that pulse, a lens that opens no further, in takes written by hand.
#include <cmath>
#include <numbers>

#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

std::shared_ptr<plan::Plan> changeable(Evidence& evidence) {
  auto plan = std::make_shared<plan::Plan>(*evidence.plan);
  evidence.plan = plan;
  return plan;
}

void addYard(plan::Plan& plan, double until) {
  plan::Area yard;
  yard.id = base::Id<plan::Area>("yard");
  yard.name = "yard";
  yard.shape = plan::Disc{{0, 0}, 20};
  yard.byClock = {{until - 3600, 8}, {until, 5.6}};
  plan.set.areas.add(yard);
}

void forget(Evidence& evidence, double from, double until) {
  for (auto& sample : evidence.samples)
    if (sample.time >= from && sample.time <= until) sample.performers[0].offset.reset();
}

TEST(LightUnknown, IsToldWithTheListThatEndsTooSoon) {
  const Snags snags = with([](Evidence& evidence) {
    auto plan = changeable(evidence);
    addYard(*plan, 17.5 * 3600);
    plan->clock.timeOfDay = 17 * 3600 + 40 * 60;
    forget(evidence, 0, 10);
  });
  expectOne(snags, "light-unknown", Severity::risks);
  EXPECT_EQ(snags[0].text,
            "the light on ILSE is unknown for 10.0 s: the list of yard ends at 17:30:00, and it is 17:40:00");
}

TEST(LightUnknown, IsANoteWhereNothingTellsOfThatPlace) {
  const auto dark = [](double seconds) {
    return with([&](Evidence& evidence) {
      plan::Fixture lamp;
      lamp.id = base::Id<plan::Fixture>("f1");
      changeable(evidence)->fixtures.add(lamp);
      forget(evidence, 3, 3 + seconds);
    });
  };
  expectOne(dark(1), "light-unknown", Severity::note);
  EXPECT_TRUE(dark(0.3).empty()) << "for a blink only";
}

TEST(LightUnknown, IsNoNewsInAPlanThatTellsOfNoLight) {
  EXPECT_TRUE(with([](Evidence& evidence) { forget(evidence, 0, 10); }).empty());
}

Snags underMains(double rate, double shutter, std::optional<int> mains, std::vector<plan::LevelKey> level = {}) {
  return with([&](Evidence& evidence) {
    auto plan = changeable(evidence);
    plan->clock.rateNumerator = static_cast<int>(rate);
    plan->clock.mainsHz = mains;
    plan->camera.shutterDeg = shutter;
    plan::Fixture lamp;
    lamp.id = base::Id<plan::Fixture>("f1");
    lamp.level = std::move(level);
    plan->fixtures.add(lamp);
  });
}

// The mean of 1 + cos(2 pi 100 t) over T swings by |sin(pi 100 T)| / (pi 100 T) of itself: 200 degrees at 24 frames
// are T = 1 / 43.2 s.
TEST(Flicker, TellsTheSwingOfLampsThatGoOutBetweenPulses) {
  const double turn = std::numbers::pi * 100 / 43.2, swing = std::abs(std::sin(turn)) / turn;
  ASSERT_NEAR(std::log2((1 + swing) / (1 - swing)), 0.33, 0.005);
  const Snags snags = underMains(24, 200, 50);
  expectOne(snags, "flicker", Severity::risks);
  EXPECT_NE(snags[0].text.find("0.33 stop"), std::string::npos) << snags[0].text;
  EXPECT_NE(snags[0].mend.find("172.8\u00b0"), std::string::npos) << "2 pulses: 2 x 360 x 24 / 100";
}

TEST(Flicker, LeavesSteadyShuttersUnknownMainsAndDarkLampsAlone) {
  EXPECT_TRUE(underMains(24, 172.8, 50).empty());
  EXPECT_TRUE(underMains(25, 200, 50).empty()) << "in step: four pulses a frame";
  EXPECT_TRUE(underMains(24, 200, std::nullopt).empty());
  EXPECT_TRUE(underMains(24, 200, 50, {{{}, 0, "", "", {}}}).empty());
}

TEST(Flicker, LastsWhileALampBurns) {
  const Snags snags = underMains(24, 200, 50, {{{}, 0, "", "", {}}, {{{"", 4}, 0, {}}, 1, "", "", {}}});
  expectOne(snags, "flicker", Severity::risks);
  EXPECT_NEAR(snags[0].from, 4, 0.11);
  EXPECT_NEAR(snags[0].until, 10, 1e-9);
}

TEST(Exposure, AsksForLightWhereTheLensIsWideOpen) {
  const auto under = [](double stop) {
    return with([&](Evidence& evidence) {
             changeable(evidence)->lens->stop = {2.8, 22};
             for (auto& sample : evidence.samples) {
               sample.iris.set = stop;
               sample.performers[0].offset = -1;
             }
           })[0]
        .mend;
  };
  EXPECT_EQ(under(4), "open up, add light, or accept it");
  EXPECT_EQ(under(2.8), "the lens is wide open: add light, raise the exposure index, or accept it");
}

TEST(ZoomClipped, TellsWhatIsWantedAndWhereTheLensEnds) {
  const Snags tight = with([](Evidence& e) { e.zoomClipped = {{{3, 4}, "close", 132, 40}}; });
  expectOne(tight, "zoom-clipped", Severity::note);
  EXPECT_EQ(tight[0].text, "the size close wants up to 132 mm, and the lens ends at 40 mm: out of reach for 1.0 s");
  // A size goes with the distance: 40 / 132.
  EXPECT_EQ(tight[0].mend, "go nearer, to 0.30 of the distance, or change the size");
  const Snags wide = with([](Evidence& e) { e.zoomClipped = {{{3, 4}, "wide", 18, 28}}; });
  EXPECT_EQ(wide[0].mend, "back off, to 1.56 of the distance, or change the size");
}

TEST(RampSeen, CountsACutHoweverShort) {
  Move cut;
  cut.axis = Move::Axis::iris;
  cut.from = cut.until = 3;
  cut.exposed = pulls::Exposed{4, 3, 1, 0.25, 1.0 / 24};
  const Snags snags = with([&](Evidence& evidence) { evidence.moves = {cut}; });
  expectOne(snags, "ramp-seen", Severity::risks);
  EXPECT_NE(snags[0].text.find("in no time at all"), std::string::npos) << snags[0].text;
}

}  // namespace
}  // namespace wend::snags
