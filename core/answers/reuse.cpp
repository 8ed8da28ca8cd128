#include "core/answers/reuse.h"

#include <algorithm>

#include "core/answers/answers.h"

namespace wend::answers {

namespace {

bool sameFrame(const plan::Camera& a, const plan::Camera& b) {
  return a.marks == b.marks && a.aims == b.aims && a.gate == b.gate && a.squeeze == b.squeeze && a.aspect == b.aspect &&
         a.bodies == b.bodies;
}

bool sameSet(const plan::Set& a, const plan::Set& b) {
  return a.walls == b.walls && a.openings == b.openings && a.pieces == b.pieces && a.rooms == b.rooms &&
         a.areas == b.areas;
}

/// The focus turns the frame by breathing only.
bool sameBreath(const plan::Plan& a, const plan::Plan& b) {
  return !a.lens || a.lens->breathing == plan::OverFocal(0) ||
         (a.focus.keys == b.focus.keys && a.focus.distance == b.focus.distance);
}

template <class T>
bool sameById(const base::Table<T>& now, const std::string& id, const base::Table<T>& before) {
  const std::size_t i = now.indexOf(id), k = before.indexOf(id);
  return i < now.size() && k < before.size() && (now.ref(i) == before.ref(k) || now[i] == before[k]);
}

/// Of performers all that shows but where they go.
bool samePerformers(const plan::Plan& a, const plan::Plan& b) {
  if (a.performers.size() != b.performers.size()) return false;
  for (std::size_t i = 0; i < a.performers.size(); ++i) {
    const plan::Performer &p = a.performers[i], &q = b.performers[i];
    if (p.id != q.id || p.stature != q.stature || p.radius != q.radius) return false;
  }
  return true;
}

bool sameCameraAtRest(plan::Camera a, plan::Camera b) {
  a.marks.clear(), a.aims.clear();
  b.marks.clear(), b.aims.clear();
  return a == b;
}

bool samePosesAt(const Take& a, const Take& b, double t) {
  for (std::size_t i = 0; i < a.plan().performers.size(); ++i)
    if (a.people().performerAt(i, t) != b.people().performerAt(i, t)) return false;
  return true;
}

}  // namespace

bool sameView(const Take& a, const Take& b) {
  const plan::Plan &p = a.plan(), &q = b.plan();
  return &p == &q ||
         (p.clock == q.clock && p.beats == q.beats && sameSet(p.set, q.set) && p.performers == q.performers &&
          p.props == q.props && sameFrame(p.camera, q.camera) && p.lens == q.lens && sameBreath(p, q) &&
          p.zoom == q.zoom && p.sizes == q.sizes && p.shelters == q.shelters && p.sightRules == q.sightRules);
}

bool sameShot(const Take& a, const Take& b) {
  const plan::Plan &p = a.plan(), &q = b.plan();
  return sameView(a, b) && a.luminaires() == b.luminaires() && p.camera == q.camera && p.focus == q.focus &&
         p.iris == q.iris && p.wobble == q.wobble && p.fixtures == q.fixtures && p.site == q.site;
}

bool samePanes(const Take& a, const Take& b) {
  const plan::Plan &p = a.plan(), &q = b.plan();
  return sameView(a, b) && a.luminaires() == b.luminaires() && p.camera == q.camera && p.fixtures == q.fixtures &&
         p.site == q.site && p.crew == q.crew && p.gear == q.gear && p.thresholds == q.thresholds;
}

bool sameStage(const Take& a, const Take& b) {
  const plan::Plan &p = a.plan(), &q = b.plan();
  return p.clock == q.clock && p.beats == q.beats && sameSet(p.set, q.set) && samePerformers(p, q) &&
         p.props == q.props && sameCameraAtRest(p.camera, q.camera) && p.lens == q.lens && p.sizes == q.sizes &&
         p.shelters == q.shelters && p.sightRules == q.sightRules && a.luminaires() == b.luminaires() &&
         p.focus.distance == q.focus.distance && p.focus.blurShare == q.focus.blurShare && p.wobble == q.wobble &&
         p.fixtures == q.fixtures && p.site == q.site;
}

std::optional<Before> beforeOf(const Take& now, const Answers* earlier) {
  if (earlier == nullptr || !earlier->evidence) return std::nullopt;
  const Take& was = *earlier->take;
  const bool view = sameView(now, was), stage = sameStage(now, was);
  if (!view && !stage) return std::nullopt;
  return Before{was, *earlier->evidence, view, view && sameShot(now, was), stage};
}

bool sameEyeAt(const Take& now, const Take& before, double t, double margin) {
  return now.eyeAt(t, margin) == before.eyeAt(t, margin);
}

bool sameBodies(const snags::Instant& now, const snags::Instant& before) {
  const auto sameBody = [](const snags::PerformerAt& a, const snags::PerformerAt& b) {
    return a.present == b.present && a.pos == b.pos && a.floor == b.floor && a.top == b.top;
  };
  return now.camera.sensor == before.camera.sensor && now.camera.travel == before.camera.travel &&
         now.crew == before.crew && std::ranges::equal(now.performers, before.performers, sameBody);
}

KnownSights::KnownSights(const Take& now, const Take& before, const std::vector<snags::SightOf>& sights)
    : now_(now),
      before_(before),
      sights_(sights),
      viewAlike_(sameView(now, before)),
      hidersAlike_(now.plan().sightRules.bodiesHide != plan::BodiesHide::everybody ||
                   now.plan().crew == before.plan().crew) {}

const snags::SightOf* KnownSights::find(const Watched& watched) const {
  const plan::Plan &p = now_.plan(), &q = before_.plan();
  const bool alike = watched.kind == snags::BodyKind::lens   ? true
                     : watched.kind == snags::BodyKind::gear ? sameById(p.gear, watched.id, q.gear)
                                                             : sameById(p.crew, watched.id, q.crew);
  if (!alike || !hidersAlike_) return nullptr;
  for (const snags::SightOf& sight : sights_)
    if (sight.kind == watched.kind && sight.id == watched.id) return &sight;
  return nullptr;
}

const snags::SightOf* KnownSights::of(const Watched& watched) const {
  return viewAlike_ ? find(watched) : nullptr;
}

const snags::SightOf* KnownSights::bySteps(const Watched& watched) const {
  const snags::SightOf* sight = viewAlike_ ? nullptr : find(watched);
  return sight != nullptr && sight->known != nullptr ? sight : nullptr;
}

std::vector<char> KnownSights::alike(const sight::TakeLook& look) const {
  const double margin = now_.plan().sightRules.margin;
  const bool hide = now_.plan().sightRules.bodiesHide != plan::BodiesHide::nobody;
  const auto alikeAt = [&](double t) {
    return sameEyeAt(now_, before_, t, margin) && (!hide || samePosesAt(now_, before_, t));
  };
  std::vector<char> steps;
  bool from = alikeAt(look.timeOf(0).from);
  for (std::size_t k = 0; k < look.steps(); ++k) {
    const geometry::Span time = look.timeOf(k);
    const bool until = alikeAt(time.until);
    steps.push_back(from && until && std::ranges::all_of(sight::kQuarters, [&](double share) {
                      return alikeAt(geometry::lerp(time.from, time.until, share));
                    }));
    from = until;
  }
  return steps;
}

}  // namespace wend::answers
