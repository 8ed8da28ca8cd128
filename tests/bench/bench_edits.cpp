/// What an edit of a plan costs until its evidence and its ground map are there again: with what the answers before it
/// hold, and without; and what the parts of the evidence cost.
///
/// To run    cmake -S . -B build -G Ninja -DWEND_UI=OFF -DWEND_BENCH=ON && ninja -C build bench_edits
///           build/tests/bench/bench_edits [plan]
/// Times are the processor's, of all threads, the least of five: compare rows of one run only.
#include <cstdio>
#include <ctime>
#include <fstream>
#include <functional>
#include <sstream>

#include "core/answers/answers.h"
#include "core/answers/whole_take.h"
#include "core/file/plan_reader.h"
#include "core/plan/edits_camera.h"
#include "core/plan/edits_keys.h"
#include "core/plan/edits_marks.h"
#include "core/plan/edits_plan.h"
#include "core/sight/ground_map.h"

namespace {

using namespace wend;
using answers::Answers;
using plan::Plan;

double milliseconds(const std::function<void()>& work) {
  double least = 1e300;
  for (int i = 0; i < 5; ++i) {
    const std::clock_t spent = std::clock();
    work();
    least = std::min(least, static_cast<double>(std::clock() - spent) * (1e3 / CLOCKS_PER_SEC));
  }
  return least;
}

void row(const char* name, const std::function<void()>& work) {
  std::printf("%-28s %8.2f ms\n", name, milliseconds(work));
  std::fflush(stdout);
}

void parts(const answers::Take& take, const Answers& whole) {
  const auto& evidence = *whole.evidence;
  row("take", [&] { (void)answers::Take::of(take.planPtr()); });
  row("evidence", [&] { (void)answers::evidenceOf(take); });
  row("  who is seen", [&] { (void)answers::sightOfAll(take, {}); });
  row("  from room to room", [&] { (void)answers::throughSights(take, {}); });
  row("  samples", [&] {
    for (const double t : take.frameTimes()) (void)answers::sampleAt(take, t);
  });
  row("  marks", [&] { (void)answers::marksSeen(take); });
  row("  clearances", [&] { (void)answers::clearancesOf(take, evidence.samples, {}); });
  row("  shadows", [&] { (void)answers::shadowsOn(take, evidence.samples, evidence.boom); });
  row("  shadows on surfaces", [&] { (void)answers::surfaceShadows(take, evidence.samples, evidence.boom); });
  row("  panes", [&] { (void)answers::paneMirrors(take, {}); });
  row("ground map", [&] { (void)answers::groundOf(take); });
}

void edit(const char* name, const Answers& before, const base::Result<Plan>& edited) {
  if (!edited) return;
  const auto take = *answers::Take::of(std::make_shared<const Plan>(*edited));
  std::uint32_t found = 0;
  const double evidence = milliseconds([&] { (void)answers::evidenceOf(*take); });
  const double ground = milliseconds([&] { (void)answers::groundOf(*take); });
  const double evidenceWith = milliseconds([&] { (void)answers::evidenceOf(*take, {}, &before); });
  const double groundWith =
      milliseconds([&] { found = (*answers::groundOf(*take, {}, {}, before.ground.get()))->stepsFound(); });
  std::printf("%-28s evidence %8.2f -> %7.2f ms (%5.2fx)   ground %6.2f -> %6.2f ms (%5.2fx), %u steps of %u\n", name,
              evidence, evidenceWith, evidence / evidenceWith, ground, groundWith, ground / groundWith, found,
              before.ground->steps().spec().steps);
  std::fflush(stdout);
}

}  // namespace

int main(int count, char** names) {
  std::ifstream in(count > 1 ? names[1] : "samples/first-batch.wend");
  std::ostringstream text;
  text << in.rdbuf();
  const auto read = file::readPlan(text.str());
  if (!read) return 1;
  const auto plan = std::make_shared<const Plan>(read->plan);
  Answers whole;
  whole.take = *answers::Take::of(plan);
  whole.evidence = *answers::evidenceOf(*whole.take);
  whole.ground = *answers::groundOf(*whole.take);
  parts(*whole.take, whole);
  for (std::size_t i = 0; i < plan->crew.size(); ++i) {
    const auto& crew = plan->crew[i];
    if (crew.marks.empty()) continue;
    edit("a crew mark moved", whole,
         plan::movedMark(*plan, {plan::Owner::crew, crew.id.text(), 0}, crew.marks[0].pos + geometry::Vec{0.1, 0}));
    break;
  }
  edit("a focus key moved", whole, plan::keyOverSet(*plan, {plan::Axis::focus, 1, {}}, 0.3));
  edit("exposure index", whole, plan::exposureIndexSet(*plan, 640));
  edit("a name", whole, plan::titled(*plan, "Another"));
  const auto& marks = plan->camera.marks;
  for (const std::size_t k : {marks.size() / 4, marks.size() / 2})
    edit("a camera mark moved", whole,
         plan::movedMark(*plan, {plan::Owner::camera, "", k}, marks[k].pos + geometry::Vec{0.05, 0.05}));
  const auto& performer = plan->performers[0];
  edit("a performer's mark moved", whole,
       plan::movedMark(*plan, {plan::Owner::performer, performer.id.text(), 1},
                       performer.marks[1].pos + geometry::Vec{0.05, 0}));
}
