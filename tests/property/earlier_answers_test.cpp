// Random edits, one upon the other: what is taken over from the answers before an edit is what is found without them.
#include <gtest/gtest.h>

#include <functional>
#include <random>

#include "core/answers/answers.h"
#include "core/exchange/verbs_json.h"
#include "core/plan/edits_camera.h"
#include "core/plan/edits_entities.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_marks.h"
#include "core/plan/edits_people.h"
#include "core/plan/edits_plan.h"
#include "core/plan/edits_set.h"
#include "core/sight/ground_map.h"
#include "tests/samples.h"

namespace wend::answers {
namespace {

using plan::Axis;
using plan::Owner;
using plan::Plan;

class Random {
 public:
  explicit Random(std::uint64_t seed) : bits_(seed) {}
  double uniform(double low, double high) {
    return low + (high - low) * (static_cast<double>(bits_() >> 11) * 0x1.0p-53);
  }
  std::size_t below(std::size_t n) { return n == 0 ? 0 : bits_() % n; }
  geometry::Vec way() { return {uniform(-0.3, 0.3), uniform(-0.3, 0.3)}; }
  template <class T>
  const T* of(const base::Table<T>& table) {
    return table.empty() ? nullptr : &table[below(table.size())];
  }

 private:
  std::mt19937_64 bits_;
};

using Edit = std::function<base::Result<Plan>(const Plan&, Random&)>;

template <class T>
std::string idOf(const T* entity) {
  return entity != nullptr ? entity->id.text() : "none";
}

base::Result<Plan> withMarkMoved(const Plan& plan, Owner owner, const std::string& id,
                                 const std::vector<plan::Mark>& marks, Random& random) {
  if (marks.empty()) return plan;
  const std::size_t index = random.below(marks.size());
  return plan::movedMark(plan, {owner, id, index}, marks[index].pos + random.way());
}

/// One of every kind that leaves something alone, and some that leave nothing.
std::vector<Edit> edits() {
  using P = const Plan&;
  using R = Random&;
  return {
      [](P p, R r) {
        const auto* crew = r.of(p.crew);
        return crew ? withMarkMoved(p, Owner::crew, idOf(crew), crew->marks, r) : p;
      },
      [](P p, R r) { return plan::crewHeightsSet(p, idOf(r.of(p.crew)), r.uniform(1.2, 2.1), 1); },
      [](P p, R r) { return p.crew.empty() ? p : plan::reordered<plan::Crew>(p, idOf(r.of(p.crew)), 0); },
      [](P p, R r) { return plan::removed<plan::Crew>(p, idOf(r.of(p.crew))); },
      [](P p, R r) { return plan::removed<plan::Gear>(p, idOf(r.of(p.gear))); },
      [](P p, R r) { return withMarkMoved(p, Owner::camera, "", p.camera.marks, r); },
      [](P p, R r) {
        const auto* performer = r.of(p.performers);
        return performer ? withMarkMoved(p, Owner::performer, idOf(performer), performer->marks, r) : p;
      },
      [](P p, R r) {
        const std::size_t key = r.below(p.focus.keys.size());
        const plan::KeyRef at{Axis::focus, key, {}};
        return plan::keyOverSet(p, at, r.uniform(0, 0.4));
      },
      [](P p, R r) { return plan::blurShareSet(p, r.uniform(0.3, 1)); },
      [](P p, R r) { return plan::exposureIndexSet(p, r.uniform(200, 1600)); },
      [](P p, R r) { return plan::breathingSet(p, plan::OverFocal(r.below(2) == 0 ? 0 : r.uniform(0, 0.1))); },
      [](P p, R r) {
        return plan::balanceSet(p, plan::OverFocal({{24, 0}, {70, r.uniform(0, 0.02)}}));
      },
      [](P p, R r) { return plan::movedPiece(p, idOf(r.of(p.set.pieces)), r.way()); },
      [](P p, R r) {
        plan::SightRules rules = p.sightRules;
        rules.bodiesHide = static_cast<plan::BodiesHide>(r.below(3));
        return plan::sightRulesSet(p, rules);
      },
      [](P p, R r) { return plan::titled(p, "Take " + std::to_string(r.below(100))); },
      [](P p, R r) {
        const char* names[] = {"glass-mirror", "surface-shadow"};
        return plan::thresholdFactorSet(p, names[r.below(2)], r.uniform(0.5, 1.5));
      },
      [](P p, R r) {
        const auto* lamp = r.of(p.fixtures);
        return lamp ? plan::movedFixture(p, idOf(lamp), lamp->pos + r.way()) : p;
      },
      [](P p, R r) { return plan::rigRadiusSet(p, r.uniform(0.2, 0.8)); },
  };
}

std::string told(const std::vector<snags::SightOf>& sights) {
  std::ostringstream text;
  text.precision(17);
  for (const auto& sight : sights) {
    text << sight.id << ' ' << static_cast<int>(sight.kind) << '\n';
    for (const auto& seen : sight.seen)
      text << seen.span.from << ' ' << seen.span.until << ' ' << seen.via << ' ' << seen.by << ' ' << seen.pos.x << ' '
           << seen.pos.y << '\n';
    for (const auto& clear : sight.clear)
      text << clear.span.from << ' ' << clear.span.until << ' ' << clear.marginDeg << '\n';
  }
  return text.str();
}

/// What is found at single instants and made spans of.
std::string toldOfInstants(const Evidence& evidence) {
  std::ostringstream text;
  text.precision(17);
  for (const auto& near : evidence.clearances)
    text << near.time << ' ' << near.body << ' ' << near.obstacle << ' ' << near.person << near.hot << near.onLeft
         << ' ' << near.metres << ' ' << near.pos.x << ' ' << near.pos.y << '\n';
  for (const auto& pane : evidence.panes)
    text << pane.pane << ' ' << pane.who << ' ' << pane.span.from << ' ' << pane.span.until << ' ' << pane.returned
         << ' ' << pane.darker << ' ' << pane.incidence << ' ' << pane.pos.x << ' ' << pane.pos.y << '\n';
  for (const auto& shadow : evidence.surfaceShadows)
    text << shadow.lamp << ' ' << shadow.by << ' ' << shadow.on << ' ' << shadow.span.from << ' ' << shadow.span.until
         << ' ' << shadow.share << ' ' << shadow.pos.x << ' ' << shadow.pos.y << '\n';
  return text.str();
}

std::string toldOfRest(const Evidence& evidence) {
  std::ostringstream text;
  text.precision(17);
  for (const auto& mark : evidence.marks)
    text << mark.who << ' ' << mark.mark << ' ' << mark.span.from << ' ' << mark.span.until << '\n';
  for (const auto& through : evidence.throughs) {
    text << through.room << ' ' << through.span.from << ' ' << through.span.until;
    for (const auto& opening : through.openings) text << ' ' << opening;
    text << '\n';
  }
  for (const auto& outside : evidence.outside)
    text << outside.area << ' ' << outside.span.from << ' ' << outside.span.until << '\n';
  for (const auto& snag : snags::snagsOf(evidence)) text << snag.key << ' ' << snag.from << ' ' << snag.text << '\n';
  return text.str();
}

void expectEqual(const Answers& with, const Answers& without) {
  EXPECT_EQ(told(with.evidence->sight), told(without.evidence->sight));
  EXPECT_EQ(toldOfInstants(*with.evidence), toldOfInstants(*without.evidence));
  EXPECT_EQ(toldOfRest(*with.evidence), toldOfRest(*without.evidence));
  ASSERT_EQ(with.evidence->samples.size(), without.evidence->samples.size());
  for (std::size_t k = 0; k < with.evidence->samples.size(); k += 7)
    ASSERT_EQ(exchange::instantJson(with.evidence->samples[k]), exchange::instantJson(without.evidence->samples[k]));
  ASSERT_EQ(with.ground != nullptr, without.ground != nullptr);
  if (with.ground) {
    EXPECT_TRUE(with.ground->steps() == without.ground->steps());
  }
}

Answers answered(const TakePtr& take, const Answers* earlier) {
  Answers answers;
  answers.take = take;
  answers.evidence = *evidenceOf(*take, {}, earlier);
  if (const auto ground = groundOf(*take, {}, {}, earlier ? earlier->ground.get() : nullptr)) answers.ground = *ground;
  return answers;
}

/// What there was to take over.
struct Found {
  std::size_t clearances = 0, panes = 0, surfaceShadows = 0;
  void count(const Evidence& evidence) {
    clearances += evidence.clearances.size();
    panes += evidence.panes.size();
    surfaceShadows += evidence.surfaceShadows.size();
  }
};

Found edited(plan::PlanPtr plan, std::uint64_t seed, std::size_t times) {
  std::printf("seed %llu\n", static_cast<unsigned long long>(seed));
  Random random(seed);
  const auto kinds = edits();
  Answers last = answered(*Take::of(plan), nullptr);
  std::uint64_t steps = 0, found = 0;
  Found compared;
  for (std::size_t i = 0; i < times; ++i) {
    const std::size_t kind = i % kinds.size();
    const auto next = kinds[kind](*plan, random);
    if (!next) continue;
    const auto now = std::make_shared<const Plan>(*next);
    const auto take = Take::of(now);
    if (!take) continue;
    SCOPED_TRACE("edit " + std::to_string(i) + " of kind " + std::to_string(kind));
    Answers with = answered(*take, &last);
    expectEqual(with, answered(*take, nullptr));
    compared.count(*with.evidence);
    if (with.ground) steps += with.ground->steps().spec().steps, found += with.ground->stepsFound();
    plan = now;
    last = with;
  }
  std::printf("steps of ground maps %llu, found anew %llu\n", static_cast<unsigned long long>(steps),
              static_cast<unsigned long long>(found));
  EXPECT_LT(found, steps * 3 / 4);
  std::printf("clearances %zu, panes %zu, shadows on surfaces %zu\n", compared.clearances, compared.panes,
              compared.surfaceShadows);
  return compared;
}

/// Two rooms with a pole over a line of speech, lit from behind the camera, so that shadows fall into the picture.
plan::PlanPtr lampAndPole() {
  plan::Plan plan = samplePlan("links-and-booms.wend");
  plan::Fixture lamp;
  lamp.id = base::Id<plan::Fixture>("lamp");
  lamp.name = "lamp";
  lamp.pos = {3.4, 0.6};
  lamp.height = 2.6;
  lamp.bearing = 10;
  lamp.tilt = -10;
  lamp.output = plan::BeamOutput{8000, 60, 90};
  plan.fixtures.add(lamp);
  return std::make_shared<const plan::Plan>(std::move(plan));
}

TEST(EarlierAnswers, ChangeNothingInASmallPlanWhateverIsEdited) {
  for (const std::uint64_t seed : {5101, 5102, 5103}) edited(sharedSample("one-room.wend"), seed, 102);
}

TEST(EarlierAnswers, ChangeNothingInFirstBatchWhateverIsEdited) {
  const Found compared = edited(sharedSample("first-batch.wend"), 5110, 17);
  EXPECT_GT(compared.clearances, 0u);
  EXPECT_GT(compared.panes, 0u);
}

TEST(EarlierAnswers, ChangeNothingOfShadowsByALampWhateverIsEdited) {
  EXPECT_GT(edited(lampAndPole(), 5120, 68).surfaceShadows, 0u);
}

}  // namespace
}  // namespace wend::answers
