#include "core/answers/who_is_sharp.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/runs.h"
#include "core/optics/split.h"
#include "core/optics/warmth.h"
#include "core/snags/stretch.h"

namespace wend::answers {

using namespace snags;

namespace {

bool eyesInFrame(const PerformerAt& at) {
  return at.present && optics::shows(at.inFrame) && std::abs(at.place.x) <= 1 && std::abs(at.place.y) <= 1;
}

/// From the pupil, by the plan's focus distance.
double distanceOf(const plan::Plan& plan, const PerformerAt& at) {
  return optics::fromPupil(driving(plan, at.distances), plan.lens->pupilAhead);
}

using Group = std::vector<std::size_t>;

/// A group at one sample.
struct GroupAt {
  bool inFrame = false;
  std::optional<optics::Range> settings;  ///< from the pupil
  std::optional<optics::SplitNeeds> needs;
};

GroupAt groupAt(const plan::Plan& plan, const Instant& instant, const Group& group) {
  GroupAt at;
  if (!instant.lens) return at;
  std::vector<double> distances;
  for (const std::size_t who : group) {
    if (!eyesInFrame(instant.performers[who])) return at;
    distances.push_back(distanceOf(plan, instant.performers[who]));
  }
  at.inFrame = true;
  const double closest = plan.lens->closeFocus - plan.lens->pupilAhead;
  const optics::Optics optics = opticsOf(plan, instant.lens->focal, instant.iris.set);
  if (*std::min_element(distances.begin(), distances.end()) <= optics.focal / 1000) return at;
  at.settings = optics::splitFocus(distances, optics, plan.focus.blurShare, closest).slack;
  if (!at.settings) at.needs = optics::splitNeeds(distances, optics, plan.focus.blurShare, closest);
  return at;
}

/// Every two and every three of so many.
std::vector<Group> groupsOf(std::size_t count) {
  std::vector<Group> groups;
  for (std::size_t a = 0; a < count; ++a)
    for (std::size_t b = a + 1; b < count; ++b) {
      groups.push_back({a, b});
      for (std::size_t c = b + 1; c < count; ++c) groups.push_back({a, b, c});
    }
  return groups;
}

void narrow(Together& row, const optics::Range& settings, double ahead) {
  if (!row.settings) return;
  row.settings =
      BandAt{std::max(row.settings->near, settings.near + ahead), std::min(row.settings->far, settings.far + ahead)};
  if (row.settings->near > row.settings->far) row.settings.reset();
}

/// The stop is asked of the lens as it is zoomed now: closing it is one change alone.
void harden(Together& row, const optics::SplitNeeds& needs, double transmission) {
  const double stop = optics::tNumberOf(needs.fNumber, transmission);
  row.stop = std::max(row.stop.value_or(stop), stop);
  row.focal = std::min(row.focal.value_or(needs.focal), needs.focal);
}

/// A group through a run of instants that all hold it, or all do not.
Together togetherOver(const plan::Plan& plan, const Group& group, const std::vector<Instant>& samples,
                      const std::vector<GroupAt>& at, geometry::Run run) {
  Together row;
  for (const std::size_t who : group) row.who.push_back(plan.performers[who].id.text());
  row.span = {samples[run.first].time, samples[run.last].time};
  row.holds = at[run.first].settings.has_value();
  if (row.holds) row.settings = BandAt{0, kInfinity};
  for (std::size_t i = run.first; i <= run.last; ++i) {
    if (at[i].settings) narrow(row, *at[i].settings, plan.lens->pupilAhead);
    if (at[i].needs) harden(row, *at[i].needs, plan.lens->transmission.at(samples[i].lens->focal));
  }
  return row;
}

}  // namespace

std::vector<SharpSpan> sharpSpans(const Take& take, const std::vector<Instant>& samples) {
  std::vector<SharpSpan> all;
  const double gap = 2.5 / take.rate();
  for (std::size_t who = 0; take.plan().lens && who < take.plan().performers.size(); ++who) {
    std::vector<SharpSpan> own;
    for (const Instant& instant : samples) {
      const PerformerAt& at = instant.performers[who];
      if (!eyesInFrame(at) || at.blur > 1 || !instant.focus.known) continue;
      const bool followed = follows(instant.focus, at.id);
      if (own.empty() || instant.time - own.back().span.until > gap || own.back().followed != followed)
        own.push_back({at.id, {instant.time, instant.time}, followed});
      own.back().span.until = instant.time;
    }
    std::erase_if(own, [](const SharpSpan& one) { return one.span.length() < kShortestSharp; });
    all.insert(all.end(), own.begin(), own.end());
  }
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  return all;
}

std::vector<Together> togetherInFrame(const Take& take, const std::vector<Instant>& samples) {
  std::vector<Together> all;
  const plan::Plan& plan = take.plan();
  if (!plan.lens) return all;
  for (const Group& group : groupsOf(plan.performers.size())) {
    std::vector<GroupAt> at;
    for (const Instant& instant : samples) at.push_back(groupAt(plan, instant, group));
    const auto alike = [&](std::size_t a, std::size_t b) {
      return at[a].inFrame == at[b].inFrame && at[a].settings.has_value() == at[b].settings.has_value();
    };
    for (const auto& run : geometry::runsAlike(at.size(), alike)) {
      if (!at[run.first].inFrame) continue;
      const Together row = togetherOver(plan, group, samples, at, run);
      if (row.span.length() >= kShortestSharp) all.push_back(row);
    }
  }
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  return all;
}

}  // namespace wend::answers
