#include "core/plan/invariants_parts.h"

namespace wend::plan {

namespace {

class References {
 public:
  References(const Plan& plan, base::Problems& problems) : plan_(plan), problems_(problems) {}

  void beat(const Moment& moment, const std::string& where) {
    if (!moment.beat.empty() && !hasBeat(plan_, moment.beat)) missing(where, moment.beat, "a beat");
  }
  void beat(const std::optional<Moment>& moment, const std::string& where) {
    if (moment) beat(*moment, where);
  }
  void performer(const std::string& id, const std::string& where) {
    if (!plan_.performers.find(id)) missing(where, id, "a performer");
  }
  void prop(const std::string& id, const std::string& where) {
    if (!plan_.props.find(id)) missing(where, id, "a prop");
  }
  void subject(const std::string& id, const std::string& where) {
    if (!plan_.performers.find(id) && !plan_.props.find(id)) missing(where, id, "a performer or a prop");
  }
  void shelter(const std::string& id, const std::string& where) {
    if (!plan_.shelters.find(id)) missing(where, id, "a shelter");
  }
  void crew(const std::string& id, const std::string& where) {
    if (!plan_.crew.find(id)) missing(where, id, "a crew member");
  }
  void pole(const std::string& id, const std::string& where) {
    if (!plan_.poles.find(id)) missing(where, id, "a pole");
  }
  void link(const std::string& id, const std::string& where) {
    if (!plan_.links.find(id)) missing(where, id, "a link");
  }
  void linkEnd(const std::string& id, const std::string& where) {
    if (id != kCameraEnd && !plan_.crew.find(id) && !plan_.gear.find(id) && !plan_.performers.find(id))
      missing(where, id, "a crew member, a piece of gear, a performer or the camera");
  }
  void wall(const std::string& id, const std::string& where) {
    if (!plan_.set.walls.find(id)) missing(where, id, "a wall");
  }
  void target(const Target& on, const std::string& where) {
    if (const auto* who = std::get_if<OnPerformer>(&on)) performer(who->performer, where);
    if (const auto* what = std::get_if<OnProp>(&on)) prop(what->prop, where);
    if (const auto* split = std::get_if<OnSplit>(&on))
      for (const std::string& id : split->who) subject(id, where);
  }
  void marks(const std::vector<Mark>& marks, const std::string& where) {
    for (std::size_t i = 0; i < marks.size(); ++i) {
      const std::string at = where + "/marks/" + std::to_string(i);
      beat(marks[i].at, at + "/at");
      beat(marks[i].until, at + "/until");
      if (!marks[i].shelter.empty()) shelter(marks[i].shelter, at + "/shelter");
    }
  }
  template <class Key>
  void keys(const std::vector<Key>& keys, const std::string& where) {
    for (std::size_t i = 0; i < keys.size(); ++i) {
      const std::string at = where + "/" + std::to_string(i);
      beat(keys[i].time.at, at + "/at");
      if constexpr (requires { keys[i].on; }) target(keys[i].on, at + "/on");
      if constexpr (requires { keys[i].of; })
        if (!keys[i].size.empty()) target(keys[i].of, at + "/of");
    }
  }

 private:
  void missing(const std::string& where, const std::string& id, const std::string& kind) {
    problems_.push_back({"missing-reference", where, id.empty() ? std::string("nothing") : "\"" + id + "\"",
                         kind + " of this plan",
                         "Point it at something that is there, or take it out, before \"" + id + "\" goes."});
  }
  const Plan& plan_;
  base::Problems& problems_;
};

std::string at(const char* list, std::size_t i) {
  return std::string(list) + "/" + std::to_string(i);
}

void addSet(const Plan& plan, const Fresh& fresh, References& refs) {
  for (std::size_t i = 0; i < plan.set.openings.size(); ++i) {
    if (!fresh(&Set::openings, plan.set.openings, i)) continue;
    refs.wall(plan.set.openings[i].wall, at("/set/openings", i) + "/wall");
    refs.keys(plan.set.openings[i].open, at("/set/openings", i) + "/open");
  }
  for (std::size_t i = 0; i < plan.set.pieces.size(); ++i)
    if (fresh(&Set::pieces, plan.set.pieces, i)) refs.keys(plan.set.pieces[i].moved, at("/set/pieces", i) + "/moved");
  for (std::size_t i = 0; i < plan.set.areas.size(); ++i)
    if (fresh(&Set::areas, plan.set.areas, i)) refs.keys(plan.set.areas[i].states, at("/set/areas", i) + "/states");
  for (std::size_t i = 0; i < plan.fixtures.size(); ++i)
    if (fresh(&Plan::fixtures, plan.fixtures, i)) refs.keys(plan.fixtures[i].level, at("/fixtures", i) + "/level");
}

void addNeeds(const Crew& crew, const std::string& where, References& refs) {
  for (std::size_t i = 0; i < crew.needs.size(); ++i) {
    const Need& need = crew.needs[i];
    const std::string place = where + "/needs/" + std::to_string(i);
    refs.beat(need.from, place + "/from");
    refs.beat(need.until, place + "/until");
    if (const auto* sees = std::get_if<Sees>(&need.what); sees && sees->who != kFocusSubject)
      refs.subject(sees->who, place + "/sees");
    if (const auto* holds = std::get_if<Holds>(&need.what)) refs.link(holds->link, place + "/holds");
    if (const auto* reaches = std::get_if<Reaches>(&need.what)) refs.pole(reaches->pole, place + "/reaches");
    if (const auto* stays = std::get_if<Stays>(&need.what)) refs.shelter(stays->shelter, place + "/stays");
  }
}

void addPeople(const Plan& plan, const Fresh& fresh, References& refs) {
  for (std::size_t i = 0; i < plan.performers.size(); ++i)
    if (fresh(&Plan::performers, plan.performers, i)) refs.marks(plan.performers[i].marks, at("/performers", i));
  for (std::size_t i = 0; i < plan.crew.size(); ++i) {
    if (!fresh(&Plan::crew, plan.crew, i)) continue;
    refs.marks(plan.crew[i].marks, at("/crew", i));
    addNeeds(plan.crew[i], at("/crew", i), refs);
  }
  for (std::size_t i = 0; i < plan.props.size(); ++i) {
    if (!fresh(&Plan::props, plan.props, i)) continue;
    for (std::size_t k = 0; k < plan.props[i].track.size(); ++k) {
      const std::string where = at("/props", i) + "/track/" + std::to_string(k);
      refs.beat(plan.props[i].track[k].at, where + "/at");
      if (!plan.props[i].track[k].by.empty()) refs.performer(plan.props[i].track[k].by, where + "/by");
    }
  }
}

void addCamera(const Plan& plan, References& refs) {
  refs.marks(plan.camera.marks, "/camera");
  refs.keys(plan.camera.aims, "/camera/aims");
  refs.keys(plan.camera.nd, "/camera/nd");
  for (std::size_t i = 0; i < plan.camera.bodies.size(); ++i)
    refs.crew(plan.camera.bodies[i].crew, at("/camera/bodies", i) + "/crew");
  refs.keys(plan.focus.keys, "/focus/keys");
  for (std::size_t i = 0; i < plan.focus.pulls.size(); ++i)
    refs.beat(plan.focus.pulls[i].at, at("/focus/pulls", i) + "/at");
  refs.keys(plan.zoom.keys, "/zoom/keys");
  refs.keys(plan.iris.keys, "/iris/keys");
  if (!plan.iris.exposePerformer.empty()) refs.performer(plan.iris.exposePerformer, "/iris/expose/performer");
}

void addCues(const Plan& plan, References& refs) {
  for (std::size_t i = 0; i < plan.speech.size(); ++i) {
    refs.performer(plan.speech[i].who, at("/speech", i) + "/who");
    refs.beat(plan.speech[i].from, at("/speech", i) + "/from");
    refs.beat(plan.speech[i].until, at("/speech", i) + "/until");
    if (!plan.speech[i].pole.empty()) refs.pole(plan.speech[i].pole, at("/speech", i) + "/pole");
  }
  for (std::size_t i = 0; i < plan.handovers.size(); ++i) {
    refs.crew(plan.handovers[i].from, at("/handovers", i) + "/from");
    refs.crew(plan.handovers[i].to, at("/handovers", i) + "/to");
    refs.beat(plan.handovers[i].at, at("/handovers", i) + "/at");
  }
}

void addEquipment(const Plan& plan, References& refs) {
  for (std::size_t i = 0; i < plan.cables.size(); ++i) {
    refs.beat(plan.cables[i].from, at("/cables", i) + "/from");
    refs.beat(plan.cables[i].until, at("/cables", i) + "/until");
  }
  for (std::size_t i = 0; i < plan.poles.size(); ++i) refs.crew(plan.poles[i].crew, at("/poles", i) + "/crew");
  for (std::size_t i = 0; i < plan.links.size(); ++i) {
    refs.linkEnd(plan.links[i].from, at("/links", i) + "/from");
    refs.linkEnd(plan.links[i].to, at("/links", i) + "/to");
  }
}

}  // namespace

void addReferenceProblems(const Plan& plan, const Fresh& fresh, base::Problems& problems) {
  References refs(plan, problems);
  addSet(plan, fresh, refs);
  addPeople(plan, fresh, refs);
  addCamera(plan, refs);
  addCues(plan, refs);
  addEquipment(plan, refs);
}

}  // namespace wend::plan
