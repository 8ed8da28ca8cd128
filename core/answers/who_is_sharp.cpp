#include "core/answers/who_is_sharp.h"

#include <algorithm>
#include <cmath>

#include "core/optics/split.h"
#include "core/optics/warmth.h"
#include "core/snags/stretch.h"

namespace wend::answers {

using namespace snags;

namespace {

bool eyesInFrame(const PerformerAt& at) {
  return at.present && (at.inFrame == optics::Showing::whole || at.inFrame == optics::Showing::part) &&
         std::abs(at.place.x) <= 1 && std::abs(at.place.y) <= 1;
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

/// A stretch of a group as it grows.
class Stretch {
 public:
  Stretch(const plan::Plan& plan, Group group) : plan_(plan), group_(std::move(group)) {}

  void add(const Instant& instant, std::vector<Together>& done) {
    const GroupAt now = groupAt(plan_, instant, group_);
    if (open_ && (!now.inFrame || now.settings.has_value() != row_.holds)) close(done);
    if (!now.inFrame) return;
    if (!open_) start(instant, now);
    row_.span.until = instant.time;
    if (now.settings) narrow(*now.settings);
    if (now.needs) harden(*now.needs, instant.lens->focal);
  }

  void close(std::vector<Together>& done) {
    if (open_ && row_.span.length() >= kShortestSharp) done.push_back(row_);
    open_ = false;
  }

 private:
  void start(const Instant& instant, const GroupAt& now) {
    row_ = {};
    for (const std::size_t who : group_) row_.who.push_back(plan_.performers[who].id.text());
    row_.span.from = instant.time;
    row_.holds = now.settings.has_value();
    if (row_.holds) row_.settings = BandAt{0, kInfinity};
    open_ = true;
  }

  void narrow(const optics::Range& settings) {
    if (!row_.settings) return;
    const double ahead = plan_.lens->pupilAhead;
    row_.settings = BandAt{std::max(row_.settings->near, settings.near + ahead),
                           std::min(row_.settings->far, settings.far + ahead)};
    if (row_.settings->near > row_.settings->far) row_.settings.reset();
  }

  /// The stop is asked of the lens as it is zoomed now: closing it is one change alone.
  void harden(const optics::SplitNeeds& needs, double focal) {
    const double stop = optics::tNumberOf(needs.fNumber, plan_.lens->transmission.at(focal));
    row_.stop = std::max(row_.stop.value_or(stop), stop);
    row_.focal = std::min(row_.focal.value_or(needs.focal), needs.focal);
  }

  const plan::Plan& plan_;
  Group group_;
  bool open_ = false;
  Together row_;
};

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
    Stretch stretch(plan, group);
    for (const Instant& instant : samples) stretch.add(instant, all);
    stretch.close(all);
  }
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  return all;
}

}  // namespace wend::answers
