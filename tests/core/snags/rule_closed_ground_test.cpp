// People in hazards and on ground kept out of, in takes written by hand: a pit of two metres about the origin.
#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

using plan::AreaUse;

/// The assistant is there from 3 s to 5 s only, at one place, and ILSE at another all along.
Snags with(const plan::Footprint& shape, std::vector<AreaUse> use, Point assistant, Point ilse = {0, 50}) {
  return snags::with([&](Evidence& evidence) {
    auto plan = std::make_shared<plan::Plan>(*evidence.plan);
    plan::Area pit;
    pit.id = base::Id<plan::Area>("pit");
    pit.name = "the pit";
    pit.shape = shape;
    pit.use = std::move(use);
    plan->set.areas.add(pit);
    evidence.plan = plan;
    for (auto& sample : evidence.samples) {
      sample.crew[0].present = sample.time > 3 - 1e-9 && sample.time < 5 + 1e-9;
      sample.crew[0].radius = 0.28;
      sample.crew[0].pos = assistant;
      sample.performers[0].pos = ilse;
    }
  });
}

const plan::Footprint kDisc = plan::Disc{{0, 0}, 2};
const plan::Footprint kSquare = plan::Outline{{{-2, -2}, {2, -2}, {2, 2}, {-2, 2}}};

TEST(Hazard, RisksWhoStandsInItAndCautions) {
  for (const auto& shape : {kDisc, kSquare}) {
    const Snags snags = with(shape, {AreaUse::hazard}, {1, 1});
    expectOne(snags, "hazard", Severity::risks);
    EXPECT_EQ(snags[0].text, "first assistant camera is in the pit, a hazard, for 2.0 s");
    EXPECT_EQ(snags[0].key, "hazard/ac1/pit/b1/1");
    EXPECT_NEAR(snags[0].from, 3, 1e-9);
    EXPECT_NEAR(snags[0].until, 5, 1e-9);
    EXPECT_EQ(snags[0].mend.rfind("caution", 0), 0u);
    EXPECT_NE(snags[0].mend.find("local rules"), std::string::npos);
  }
}

TEST(Hazard, CountsFromWhereABodyReachesOverItsEdge) {
  for (const auto& shape : {kDisc, kSquare}) {
    expectOne(with(shape, {AreaUse::hazard}, {2.27, 0}), "hazard", Severity::risks);
    EXPECT_TRUE(with(shape, {AreaUse::hazard}, {2.29, 0}).empty());
  }
}

TEST(Hazard, CountsPerformersToo) {
  const Snags snags = with(kDisc, {AreaUse::hazard}, {50, 0}, {2.2, 0});
  expectOne(snags, "hazard", Severity::risks);
  EXPECT_EQ(snags[0].text, "ILSE is in the pit, a hazard, for 10.0 s");
  EXPECT_TRUE(with(kDisc, {AreaUse::hazard}, {50, 0}, {2.3, 0}).empty());
}

TEST(Hazard, IsNoOtherGroundAndNobodyWhoIsNotThere) {
  for (const auto use : {AreaUse::light, AreaUse::noisy, AreaUse::exitLane, AreaUse::outside})
    EXPECT_TRUE(with(kDisc, {use}, {1, 1}).empty());
  const Snags gone = snags::with([](Evidence& evidence) {
    auto plan = std::make_shared<plan::Plan>(*evidence.plan);
    plan::Area pit;
    pit.id = base::Id<plan::Area>("pit");
    pit.shape = kDisc;
    pit.use = {AreaUse::hazard};
    plan->set.areas.add(pit);
    evidence.plan = plan;
    for (auto& sample : evidence.samples) sample.crew[0].present = sample.performers[0].present = false;
  });
  EXPECT_TRUE(std::none_of(gone.begin(), gone.end(), [](const Snag& snag) { return snag.rule == "hazard"; }));
}

TEST(KeepOut, IsARiskAndToldOnceOfAHazard) {
  expectOne(with(kDisc, {AreaUse::keepOut}, {1, 1}), "keep-out", Severity::risks);
  EXPECT_EQ(with(kDisc, {AreaUse::keepOut}, {1, 1})[0].text,
            "first assistant camera is in the pit, to be kept out of, for 2.0 s");
  expectOne(with(kDisc, {AreaUse::keepOut, AreaUse::hazard}, {1, 1}), "hazard", Severity::risks);
}

}  // namespace
}  // namespace wend::snags
