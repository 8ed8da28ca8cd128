// A thousand random edits of every kind: each keeps the plan whole, shares what it leaves alone, survives its file, and
// is undone to the byte.
#include <gtest/gtest.h>

#include <functional>
#include <random>

#include "core/file/plan_writer.h"
#include "core/plan/diff.h"
#include "core/plan/edits_beats.h"
#include "core/plan/edits_camera.h"
#include "core/plan/edits_entities.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_legs.h"
#include "core/plan/edits_marks.h"
#include "core/plan/edits_people.h"
#include "core/plan/edits_plan.h"
#include "core/plan/edits_set.h"
#include "core/plan/invariants.h"
#include "tests/core/plan/small_plan.h"
#include "tests/samples.h"

namespace wend::plan {
namespace {

class Random {
 public:
  explicit Random(std::uint64_t seed) : bits_(seed) {}
  double uniform(double low, double high) {
    return low + (high - low) * (static_cast<double>(bits_() >> 11) * 0x1.0p-53);
  }
  std::size_t below(std::size_t n) { return n == 0 ? 0 : bits_() % n; }
  /// Around where things are, now and then far off, now and then no place at all.
  Point place() {
    const double reach = below(20) == 0 ? 20000 : 25;
    return {uniform(-reach, reach), uniform(-reach, reach)};
  }
  geometry::Vec way() { return {uniform(-1, 1), uniform(-1, 1)}; }
  double time(const Plan& plan) { return uniform(-1, plan.clock.length * 1.05); }
  template <class T>
  std::string id(const base::Table<T>& table) {
    return table.empty() ? "none" : table[below(table.size())].id.text();
  }

 private:
  std::mt19937_64 bits_;
};

using Edit = std::function<base::Result<Plan>(const Plan&, Random&)>;

TrackRef anyTrack(const Plan& plan, Random& random) {
  const std::size_t who = random.below(3);
  if (who == 0) return {Owner::camera, ""};
  if (who == 1) return {Owner::performer, random.id(plan.performers)};
  return {Owner::crew, random.id(plan.crew)};
}

std::size_t marksOn(const Plan& plan, const TrackRef& track) {
  if (track.owner == Owner::camera) return plan.camera.marks.size();
  if (track.owner == Owner::performer) return plan.performers.find(track.id)->marks.size();
  return plan.crew.find(track.id)->marks.size();
}

MarkRef anyMark(const Plan& plan, Random& random) {
  const TrackRef track = anyTrack(plan, random);
  return {track.owner, track.id, random.below(marksOn(plan, track))};
}

KeyRef anyKey(const Plan& plan, Random& random) {
  switch (random.below(7)) {
    case 0:
      return {Axis::aim, random.below(plan.camera.aims.size())};
    case 1:
      return {Axis::focus, random.below(plan.focus.keys.size())};
    case 2:
      return {Axis::zoom, random.below(plan.zoom.keys.size())};
    case 3:
      return {Axis::iris, random.below(plan.iris.keys.size())};
    case 4:
      return {Axis::door, random.below(3), random.id(plan.set.openings)};
    case 5:
      return {Axis::light, random.below(3), random.id(plan.set.areas)};
    default:
      return {Axis::level, random.below(3), random.id(plan.fixtures)};
  }
}

MomentRef anyMoment(const Plan& plan, Random& random) {
  switch (random.below(5)) {
    case 0:
      return Leaving{anyMark(plan, random)};
    case 1:
      return KeyStart{anyKey(plan, random)};
    case 2:
      return PropEntryStart{random.id(plan.props), random.below(2)};
    case 3:
      return SpeechUntil{random.below(plan.speech.size())};
    default:
      return Arrival{anyMark(plan, random)};
  }
}

/// One word of every kind an edit can say. Absolute ones come first: said twice they change nothing more.
std::vector<Edit> absoluteEdits() {
  using P = const Plan&;
  using R = Random&;
  return {
      [](P p, R r) { return movedMark(p, anyMark(p, r), r.place()); },
      [](P p, R r) { return markHeightSet(p, anyMark(p, r), r.uniform(0, 3)); },
      [](P p, R r) { return markFacingSet(p, anyMark(p, r), r.uniform(-400, 400)); },
      [](P p, R r) { return markPostureSet(p, anyMark(p, r), static_cast<Posture>(r.below(5))); },
      [](P p, R r) { return markTapedSet(p, anyMark(p, r), r.below(2) == 0); },
      [](P p, R r) { return markSheltered(p, anyMark(p, r), r.id(p.shelters)); },
      [](P p, R r) { return arrivalSet(p, anyMark(p, r), r.time(p)); },
      [](P p, R r) { return leavingSet(p, anyMark(p, r), r.time(p)); },
      [](P p, R r) { return legShaped(p, anyMark(p, r), static_cast<LegShape>(r.below(3))); },
      [](P p, R r) { return legSwept(p, anyMark(p, r), r.uniform(-400, 400)); },
      [](P p, R r) {
        return legVia(p, anyMark(p, r), {r.place(), r.place()});
      },
      [](P p, R r) { return boundMoment(p, anyMoment(p, r), r.below(9) == 0 ? "end" : r.id(p.beats)); },
      [](P p, R r) { return freedMoment(p, anyMoment(p, r)); },
      [](P p, R r) { return retimedMoment(p, anyMoment(p, r), r.time(p)); },
      [](P p, R r) { return keyOverSet(p, anyKey(p, r), r.uniform(-0.1, 4)); },
      [](P p, R r) {
        return aimTargetSet(p, r.below(p.camera.aims.size()), OnBearing{r.uniform(-900, 900), 0});
      },
      [](P p, R r) { return focusTargetSet(p, r.below(p.focus.keys.size()), OnPerformer{r.id(p.performers)}); },
      [](P p, R r) { return zoomFocalSet(p, r.below(p.zoom.keys.size()), r.uniform(0, 90)); },
      [](P p, R r) { return irisStopSet(p, r.below(p.iris.keys.size()), r.uniform(0, 24)); },
      [](P p, R r) { return movedWallPoint(p, r.id(p.set.walls), r.below(3), r.place()); },
      [](P p, R r) {
        const double from = r.uniform(-1, 9);
        return openingAlongSet(p, r.id(p.set.openings), {from, from + r.uniform(-0.1, 2)});
      },
      [](P p, R r) { return movedPiecePoint(p, r.id(p.set.pieces), r.below(4), r.place()); },
      [](P p, R r) { return pieceHeightsSet(p, r.id(p.set.pieces), r.uniform(0, 1), r.uniform(0, 3)); },
      [](P p, R r) {
        return areaReshaped(p, r.id(p.set.areas), Disc{r.place(), r.uniform(-0.1, 3)});
      },
      [](P p, R r) { return statureSet(p, r.id(p.performers), r.uniform(0.2, 2.5)); },
      [](P p, R r) { return movedProp(p, r.id(p.props), 0, r.place()); },
      [](P p, R r) { return movedShelter(p, r.id(p.shelters), r.place()); },
      [](P p, R r) { return movedGear(p, r.id(p.gear), r.place()); },
      [](P p, R r) { return fixtureAimed(p, r.id(p.fixtures), r.uniform(-400, 400), r.uniform(-95, 95)); },
      [](P p, R r) { return gateSet(p, r.uniform(0, 40), r.uniform(1, 30)); },
      [](P p, R r) { return blurCircleSet(p, r.uniform(0, 0.1)); },
      [](P p, R r) { return closeFocusSet(p, r.uniform(0, 2)); },
      [](P p, R r) { return thresholdFactorSet(p, "pan", r.uniform(0, 3)); },
      [](P p, R r) { return acceptedSnag(p, "pan/camera//b1/" + std::to_string(r.below(3)), "DP", "as wanted"); },
      [](P p, R r) { return titled(p, "Take " + std::to_string(r.below(100))); },
  };
}

/// Said twice these do more: they add, take out, or move by a way.
std::vector<Edit> otherEdits() {
  using P = const Plan&;
  using R = Random&;
  return {
      [](P p, R r) { return movedBeat(p, {r.id(p.beats)}, r.time(p)); },
      [](P p, R r) { return clockLengthSet(p, p.clock.length * r.uniform(0.95, 1.05)); },
      [](P p, R r) {
        return movedMarks(p, {anyMark(p, r), anyMark(p, r), anyMark(p, r)}, r.way());
      },
      [](P p, R r) { return shiftedMark(p, anyMark(p, r), r.uniform(-2, 2)); },
      [](P p, R r) { return insertedMark(p, anyTrack(p, r), r.time(p), r.place()); },
      [](P p, R r) { return insertedMarkAt(p, anyTrack(p, r), r.time(p)); },
      [](P p, R r) { return insertedMarkNear(p, anyMark(p, r), r.place()); },
      [](P p, R r) { return removedMark(p, anyMark(p, r)); },
      [](P p, R r) { return insertedBeat(p, r.time(p), "new"); },
      [](P p, R r) { return removedBeat(p, {r.id(p.beats)}); },
      [](P p, R r) {
        const KeyRef key = anyKey(p, r);
        return insertedKey(p, key.axis, r.time(p), r.uniform(0, 1), key.id);
      },
      [](P p, R r) { return removedKey(p, anyKey(p, r)); },
      [](P p, R r) { return movedPiece(p, r.id(p.set.pieces), r.way()); },
      [](P p, R r) { return removed<Gear>(p, r.id(p.gear)); },
      [](P p, R r) {
        return added(p, Gear{base::Id<Gear>(freshId(p, "g")), "", r.place(), r.uniform(0, 1), r.uniform(0, 2), {}});
      },
  };
}

const Plan& firstBatch() {
  static const Plan plan = samplePlan("first-batch.wend");
  return plan;
}

/// Ids of entities that are equal in both plans and yet not shared.
template <class T>
std::string copiedInVain(const base::Table<T>& before, const base::Table<T>& after) {
  std::string ids;
  for (std::size_t i = 0; i < after.size(); ++i) {
    const std::size_t k = before.indexOf(after[i].id.text());
    if (k < before.size() && before[k] == after[i] && before.ref(k) != after.ref(i)) ids += after[i].id.text() + " ";
  }
  return ids;
}

std::string copiedInVain(const Plan& a, const Plan& b) {
  return copiedInVain(a.beats, b.beats) + copiedInVain(a.set.walls, b.set.walls) +
         copiedInVain(a.set.openings, b.set.openings) + copiedInVain(a.set.pieces, b.set.pieces) +
         copiedInVain(a.set.areas, b.set.areas) + copiedInVain(a.props, b.props) +
         copiedInVain(a.performers, b.performers) + copiedInVain(a.fixtures, b.fixtures) +
         copiedInVain(a.crew, b.crew) + copiedInVain(a.shelters, b.shelters) + copiedInVain(a.gear, b.gear);
}

/// What reading the plan's own file says against it; empty when the plan comes back equal.
std::string lostInFile(const Plan& plan) {
  const auto read = file::readPlan(file::writePlan(plan));
  if (!read) return base::toText(read.problems().front());
  return read->plan == plan ? "" : "another plan";
}

class RandomEdits : public testing::TestWithParam<const Plan* (*)()> {
 protected:
  void run(std::uint64_t seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const std::vector<Edit> absolute = absoluteEdits(), other = otherEdits();
    done_.assign(absolute.size() + other.size(), 0);
    snapshots_ = {*GetParam()()};
    texts_ = {file::writePlan(snapshots_[0])};
    for (int tries = 0; tries < 20000 && snapshots_.size() <= 1000; ++tries) {
      const std::size_t which = random.below(done_.size());
      const bool twice = which < absolute.size();
      const Edit& edit = twice ? absolute[which] : other[which - absolute.size()];
      SCOPED_TRACE("try " + std::to_string(tries) + " edit " + std::to_string(which));
      step(edit, which, twice, random);
      if (HasFatalFailure()) return;
    }
  }

  void step(const Edit& edit, std::size_t which, bool twice, Random& random) {
    const Plan before = snapshots_.back();
    Random same = random;
    const auto after = edit(before, random);
    if (!after) {
      for (const base::Problem& problem : after.problems())
        ASSERT_FALSE(problem.code.empty() || problem.expected.empty() || problem.remedy.empty()) << toText(problem);
      return;
    }
    ++done_[which];
    ASSERT_EQ(diffOf(before, *after).any(), !(before == *after));
    ASSERT_EQ(copiedInVain(before, *after), "");
    const base::Problems problems = problemsOf(*after);
    ASSERT_TRUE(problems.empty()) << base::toText(problems.front());
    ASSERT_EQ(lostInFile(*after), "");
    if (twice) {
      Random again = same;
      const auto second = edit(*after, again);
      ASSERT_TRUE(second.ok()) << base::toText(second.problems().front());
      ASSERT_TRUE(*second == *after);
    }
    snapshots_.push_back(*after);
    texts_.push_back(file::writePlan(*after));
  }

  std::vector<Plan> snapshots_;
  std::vector<std::string> texts_;
  std::vector<int> done_;
};

TEST_P(RandomEdits, KeepThePlanWholeAndAreUndoneToTheByte) {
  const std::uint64_t seed = 2024;
  run(seed);
  ASSERT_FALSE(HasFatalFailure());
  ASSERT_EQ(snapshots_.size(), 1001u) << "seed " << seed;
  for (std::size_t i = snapshots_.size(); i-- > 0;) ASSERT_EQ(file::writePlan(snapshots_[i]), texts_[i]);
  EXPECT_TRUE(snapshots_.front() == *GetParam()());
  for (std::size_t i = 0; i < done_.size(); ++i) EXPECT_GT(done_[i], 0) << "edit " << i << " was always refused";
}

INSTANTIATE_TEST_SUITE_P(Plans, RandomEdits,
                         testing::Values(
                             +[]() -> const Plan* { return &firstBatch(); },
                             +[]() -> const Plan* {
                               static const Plan plan = test::smallPlan();
                               return &plan;
                             }),
                         [](const auto& which) { return which.index == 0 ? "FirstBatch" : "SmallPlan"; });

}  // namespace
}  // namespace wend::plan
