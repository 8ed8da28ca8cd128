#include "core/answers/zoom_track.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/answers/shot_sizes.h"
#include "core/pulls/ease.h"
#include "core/pulls/zoom_cover.h"

namespace wend::answers {

using geometry::Span;

pulls::MoveRules zoomRules(const plan::Plan& plan) {
  const double rate = plan.lens->limits.zoomPercentPerSecond / 100 / std::log(2.0);
  return {rate, std::min(rate, pulls::kSlowZoom / std::log(2.0)), 0.25, pulls::kEasySeconds};
}

ZoomTrack ZoomTrack::of(const plan::PlanPtr& plan, const People& people, const Subjects& subjects) {
  ZoomTrack zoom;
  zoom.plan_ = plan;
  zoom.people_ = &people;
  zoom.subjects_ = &subjects;
  zoom.keys_ = resolvedKeys(*plan, plan->zoom.keys);
  zoom.frame_ =
      optics::deliveredFrame({plan->camera.gate[0], plan->camera.gate[1]}, plan->camera.squeeze, plan->camera.aspect);
  zoom.planned_.resize(zoom.keys_.size());
  for (std::size_t key = 0; plan->lens && key < zoom.keys_.size(); ++key)
    if (!plan->zoom.keys[key].size.empty()) zoom.planSize(key, plan->clock.rate());
  return zoom;
}

/// From the start of the key until the next one is done: as long as it has a say.
Span ZoomTrack::spanOf(std::size_t key) const {
  const double from = key == 0 ? 0 : keys_[key].at, length = plan_->clock.length;
  return {from, key + 1 == keys_.size() ? length : std::min(length, keys_[key + 1].at + keys_[key + 1].over)};
}

void ZoomTrack::planSize(std::size_t key, double rate) {
  const Span span = spanOf(key);
  if (span.length() <= 0 || plan_->zoom.slackShare <= 0) return;
  const double slack = std::log2(1 + plan_->zoom.slackShare);
  const double least = std::log2(plan_->lens->focal[0]), most = std::log2(plan_->lens->focal[1]);
  pulls::Tube asked;
  const auto samples = std::max(1.0, std::ceil(span.length() * rate));
  for (double i = 0; i <= samples; ++i) {
    const double t = geometry::lerp(span.from, span.until, i / samples), wanted = std::log2(wantedOf(key, t).focal);
    asked.push_back({t, wanted - slack, wanted + slack, false});
  }
  planned_[key] = std::make_shared<const pulls::Track>(
      pulls::fewestMoves(pulls::heldWithin(asked, least, most), zoomRules(*plan_), asked));
}

optics::FocalForSize ZoomTrack::wantedOf(std::size_t key, double t) const {
  const plan::ZoomKey& zoomKey = plan_->zoom.keys[key];
  const optics::FocalLimits limits{plan_->lens->focal[0], plan_->lens->focal[1]};
  if (zoomKey.size.empty()) return {zoomKey.focal, false, zoomKey.focal};
  const auto size = optics::shotSizeNamed(zoomKey.size, sizesOf(*plan_));
  const auto* on = std::get_if<plan::OnPerformer>(&zoomKey.of);
  const plan::Performer* performer = on ? plan_->performers.find(on->performer) : nullptr;
  const auto eyes = performer ? people_->lookAt(on->performer, t) : std::nullopt;
  if (!size || !eyes) return {limits.shortest, true};
  const double distance =
      std::max(0.01, geometry::distance(*eyes, people_->camera().position(t)) - plan_->lens->pupilAhead);
  return optics::focalForSize(frame_.height, distance, size->q, performer->stature, limits);
}

double ZoomTrack::focalOf(std::size_t key, double t, Ends ends) const {
  if (!planned_[key]) return wantedOf(key, t).focal;
  return std::exp2(ends == Ends::eased ? pulls::easedAt(*planned_[key], t) : planned_[key]->valueAt(t));
}

std::optional<double> ZoomTrack::focalAt(double t, Ends ends) const {
  if (!plan_->lens) return std::nullopt;
  if (keys_.empty()) return plan_->lens->focal[0];
  const geometry::KeyBlend blend = geometry::blendAt(keys_, t);
  const double after = focalOf(blend.after, t, ends);
  if (blend.before == blend.after) return after;
  return std::exp2(geometry::lerp(std::log2(focalOf(blend.before, t, ends)), std::log2(after), blend.share));
}

double ZoomTrack::askedAt(double t) const {
  const geometry::KeyBlend blend = geometry::blendAt(keys_, t);
  const double before = std::log2(wantedOf(blend.before, t).focal), after = std::log2(wantedOf(blend.after, t).focal);
  return std::exp2(geometry::lerp(before, after, blend.share));
}

std::vector<snags::ZoomClipped> ZoomTrack::clipped() const {
  std::vector<snags::ZoomClipped> all;
  const double step = 1 / plan_->clock.rate();
  for (std::size_t key = 0; plan_->lens && key < keys_.size(); ++key) {
    if (plan_->zoom.keys[key].size.empty() || spanOf(key).length() <= 0) continue;
    for (const Span& span : geometry::spansWhere(spanOf(key), step, [&](double t) { return wantedOf(key, t).clipped; }))
      all.push_back(clippedIn(key, span, step));
  }
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  return all;
}

/// With what is wanted furthest from the lens' end.
snags::ZoomClipped ZoomTrack::clippedIn(std::size_t key, Span span, double step) const {
  snags::ZoomClipped worst{span, plan_->zoom.keys[key].size, 0, 0};
  double most = 0;
  const double steps = std::max(1.0, std::ceil(span.length() / step));
  for (double i = 0; i <= steps; ++i) {
    const optics::FocalForSize size = wantedOf(key, geometry::lerp(span.from, span.until, i / steps));
    if (size.wanted <= 0 || std::abs(std::log(size.wanted / size.focal)) < most) continue;
    most = std::abs(std::log(size.wanted / size.focal));
    worst.wanted = size.wanted;
    worst.end = size.focal;
  }
  return worst;
}

std::optional<optics::HalfTangents> ZoomTrack::halfTangentsAt(double t) const {
  const auto focal = focalAt(t);
  if (!focal) return std::nullopt;
  const plan::Lens& lens = *plan_->lens;
  double scale = 1;
  if (const double breathing = lens.breathing.at(*focal); breathing != 0)
    if (const auto slant = subjects_->slantAt(t, people_->camera().position(t)); slant && *slant > 0)
      scale = optics::breathingScale(breathing, lens.closeFocus, *slant);
  return optics::halfTangents(frame_, *focal, scale);
}

std::vector<pulls::Move> ZoomTrack::cuts() const {
  // A hair before the key its predecessor still shows; so little of a millimetre is nobody's jump.
  constexpr double kHair = 1e-9, kNoJump = 1e-3;
  std::vector<pulls::Move> cuts;
  for (std::size_t key = 1; plan_->lens && key < keys_.size(); ++key) {
    const double at = keys_[key].at;
    if (at <= 0 || at >= plan_->clock.length || keys_[key].over > 0) continue;
    if (!cuts.empty() && cuts.back().from == at) continue;
    const double before = *focalAt(at - kHair), after = *focalAt(at);
    if (std::abs(after - before) < kNoJump) continue;
    cuts.push_back({at, at, before, after, std::numeric_limits<double>::infinity(), 1});
  }
  return cuts;
}

std::vector<pulls::Move> ZoomTrack::plannedMoves() const {
  std::vector<pulls::Move> moves;
  for (std::size_t key = 0; key < planned_.size(); ++key) {
    if (!planned_[key]) continue;
    const double settled = key == 0 ? 0 : keys_[key].at + keys_[key].over;
    const double leaves = key + 1 == keys_.size() ? plan_->clock.length : keys_[key + 1].at;
    for (pulls::Move move : planned_[key]->moves) {
      // What runs into the change from or to another key is a part of that change.
      if (move.from < settled) move.from = settled, move.easeIn = 0;
      if (move.until > leaves) move.until = leaves, move.easeOut = 0;
      if (move.from >= move.until) continue;
      move.valueBefore = focalOf(key, move.from);
      move.valueAfter = focalOf(key, move.until);
      moves.push_back(move);
    }
  }
  return moves;
}

std::vector<pulls::UnmetSpan> ZoomTrack::unmet() const {
  std::vector<pulls::UnmetSpan> spans;
  for (const auto& track : planned_)
    if (track) spans.insert(spans.end(), track->unmet.begin(), track->unmet.end());
  return spans;
}

}  // namespace wend::answers
