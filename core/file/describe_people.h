/// The keys of marks and of everybody and everything that has them: performers, props, crew, shelters, gear, speech.
#pragma once

#include "core/file/fields.h"
#include "core/file/ranges.h"
#include "core/file/words.h"

namespace wend::file {

template <class Fields>
void describe(Fields& f, Of<plan::Leg>) {
  using T = plan::Leg;
  f.word("shape", &T::shape, kLegShapes);
  f.points("via", &T::via, 0, Presence::may);
  f.point("centre", &T::centre);
  f.number("sweep", &T::sweep, kAngle);
  f.word("pace", &T::pace, kPaces);
}

template <class Fields>
void describe(Fields& f, Of<plan::Mark>, MarkOf whose) {
  using T = plan::Mark;
  if (whose != MarkOf::performer) f.text("id", &T::id);
  f.moment("at", &T::at, Presence::must);
  f.moment("until", &T::until, Presence::may);
  if (whose == MarkOf::crew)
    f.placeOr("shelter", &T::shelter, IdKind::shelter, &T::pos);
  else
    f.point("pos", &T::pos, Presence::must);
  if (whose == MarkOf::camera) f.number("height", &T::height, kHeight);
  if (whose == MarkOf::performer) {
    f.number("facing", &T::facing, kAngle);
    f.word("posture", &T::posture, kPerformerPostures);
    f.flag("taped", &T::taped);
  }
  if (whose == MarkOf::crew) f.word("posture", &T::posture, kCrewPostures);
  f.object("leg", &T::leg);
}

template <class Fields>
void describe(Fields& f, Of<plan::Performer>) {
  using T = plan::Performer;
  f.id(&T::id);
  f.text("name", &T::name);
  f.text("letter", &T::letter);
  f.number("stature", &T::stature, kStature);
  f.number("radius", &T::radius, kBodyRadius);
  f.marks("marks", &T::marks, MarkOf::performer);
}

template <class Fields>
void describe(Fields& f, Of<plan::PropEntry>) {
  using T = plan::PropEntry;
  f.moment("at", &T::at, Presence::must);
  f.placeOr("by", &T::by, IdKind::performer, &T::pos);
  f.number("height", &T::height, kHeight);
}

template <class Fields>
void describe(Fields& f, Of<plan::Prop>) {
  using T = plan::Prop;
  f.id(&T::id);
  f.text("name", &T::name);
  f.number("wobble", &T::wobble, kWobble);
  f.keys("track", &T::track, false);
}

template <class Fields>
void describe(Fields& f, Of<plan::Need>) {
  using T = plan::Need;
  f.need(&T::what);
  f.moment("from", &T::from, Presence::may);
  f.moment("until", &T::until, Presence::may);
}

template <class Fields>
void describe(Fields& f, Of<plan::Crew>) {
  using T = plan::Crew;
  f.id(&T::id);
  f.text("role", &T::role);
  f.number("radius", &T::radius, kBodyRadius);
  f.number("height", &T::height, kStature);
  f.number("crouch", &T::crouch, kStature);
  f.number("speed", &T::speed, kSpeed);
  f.flag("glows", &T::glows);
  f.marks("marks", &T::marks, MarkOf::crew);
  f.rows("needs", &T::needs, Layout::lines);
}

template <class Fields>
void describe(Fields& f, Of<plan::Shelter>) {
  using T = plan::Shelter;
  f.id(&T::id);
  f.text("name", &T::name);
  f.point("pos", &T::pos, Presence::must);
  f.number("radius", &T::radius, kBodyRadius);
  f.integer("holds", &T::holds, kPeople);
}

template <class Fields>
void describe(Fields& f, Of<plan::Gear>) {
  using T = plan::Gear;
  f.id(&T::id);
  f.text("name", &T::name);
  f.point("pos", &T::pos, Presence::must);
  f.number("radius", &T::radius, kBodyRadius);
  f.number("height", &T::height, kSize);
  f.flag("glows", &T::glows);
}

template <class Fields>
void describe(Fields& f, Of<plan::Cable>) {
  using T = plan::Cable;
  f.id(&T::id);
  f.text("name", &T::name);
  f.points("points", &T::points, 2);
  f.number("height", &T::height, kSize);
  f.moment("from", &T::from, Presence::may);
  f.moment("until", &T::until, Presence::may);
}

template <class Fields>
void describe(Fields& f, Of<plan::Pole>) {
  using T = plan::Pole;
  f.id(&T::id);
  f.text("name", &T::name);
  f.reference("crew", &T::crew, IdKind::crew);
  f.number("reach", &T::reach, kPositiveSize);
  f.number("shoulder", &T::shoulder, kPositiveSize);
  f.number("above", &T::above, kSize);
  f.pair("gap", &T::gap, kSize, true);
}

template <class Fields>
void describe(Fields& f, Of<plan::Link>) {
  using T = plan::Link;
  f.id(&T::id);
  f.text("name", &T::name);
  f.word("kind", &T::kind, kLinkKinds);
  f.linkEnd("from", &T::from);
  f.linkEnd("to", &T::to);
  f.refuse(
      "to", [](const T& link) { return !link.to.empty() && link.to == link.from; }, "link-one-end", "another end",
      "name what it goes to");
  f.number("mhz", &T::mhz, kMegahertz);
  f.number("budget", &T::budget, kDecibels);
  f.number("delay", &T::delay, kDuration);
}

template <class Fields>
void describe(Fields& f, Of<plan::Speech>) {
  using T = plan::Speech;
  f.reference("who", &T::who, IdKind::performer);
  f.moment("from", &T::from, Presence::must);
  f.moment("until", &T::until, Presence::must);
  f.text("words", &T::words);
  f.maybeReference("pole", &T::pole, IdKind::pole);
}

template <class Fields>
void describe(Fields& f, Of<plan::Handover>) {
  using T = plan::Handover;
  f.text("what", &T::what, Presence::must);
  f.reference("from", &T::from, IdKind::crew);
  f.reference("to", &T::to, IdKind::crew);
  f.moment("at", &T::at, Presence::must);
  f.number("over", &T::over, kDuration);
}

}  // namespace wend::file
