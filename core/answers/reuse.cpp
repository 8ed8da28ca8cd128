#include "core/answers/reuse.h"

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

KnownSights::KnownSights(const Take& now, const Take& before, const std::vector<snags::SightOf>& sights)
    : now_(now.plan()),
      before_(before.plan()),
      sights_(sights),
      hidersAlike_(now_.sightRules.bodiesHide != plan::BodiesHide::everybody || now_.crew == before_.crew) {}

const snags::SightOf* KnownSights::find(const std::string& id, snags::BodyKind kind) const {
  if (!hidersAlike_) return nullptr;
  for (const snags::SightOf& sight : sights_)
    if (sight.kind == kind && sight.id == id) return &sight;
  return nullptr;
}

const snags::SightOf* KnownSights::of(const Watched& watched) const {
  const bool alike = watched.kind == snags::BodyKind::lens   ? true
                     : watched.kind == snags::BodyKind::gear ? sameById(now_.gear, watched.id, before_.gear)
                                                             : sameById(now_.crew, watched.id, before_.crew);
  return alike ? find(watched.id, watched.kind) : nullptr;
}

}  // namespace wend::answers
