/// The keys of the plan itself: clock, beats, rules, takes, and everything above put together.
#pragma once

#include "core/file/describe_camera.h"
#include "core/file/describe_set.h"
#include "core/units/timecode.h"

namespace wend::file {

/// The clock's labels. Drop frame counts only where the rate has it.
inline units::TimecodeKind timecodeOf(const plan::Clock& clock) {
  const units::FrameRate rate{clock.rateNumerator, clock.rateDenominator};
  return {rate, clock.dropFrame && rate.droppedPerMinute() > 0};
}

template <class Fields>
void describe(Fields& f, Of<plan::Clock>) {
  using T = plan::Clock;
  f.ratio("rate", &T::rateNumerator, &T::rateDenominator);
  f.flag("dropFrame", &T::dropFrame);
  f.text("startTimecode", &T::startTimecode);
  f.number("length", &T::length, kTakeLength);
  f.timeOfDay("timeOfDay", &T::timeOfDay);
  f.integer("mainsHz", &T::mainsHz, kHertz);
  f.number("cycleMinutes", &T::cycleMinutes, kMinutes);
  f.refuse(
      "mainsHz", [](const T& clock) { return clock.mainsHz && *clock.mainsHz != 50 && *clock.mainsHz != 60; },
      "out-of-range", "50 or 60", "write the mains frequency of the place");
  f.refuse(
      "rate", [](const T& clock) { return clock.rate() < 1 || clock.rate() > 1000; }, "out-of-range",
      "1 to 1000 frames a second", "check the rate");
  f.refuse(
      "dropFrame", [](const T& clock) { return clock.dropFrame && !timecodeOf(clock).dropFrame; }, "drop-frame",
      "drop frame only at [30000, 1001] or [60000, 1001]", "set dropFrame to false or correct the rate");
  f.refuse(
      "startTimecode", [](const T& clock) { return !units::framesFrom(clock.startTimecode, timecodeOf(clock)).ok(); },
      "bad-timecode", "HH:MM:SS:FF at the plan's rate", "correct the label");
}

template <class Fields>
void describe(Fields& f, Of<plan::Beat>) {
  using T = plan::Beat;
  f.id(&T::id);
  f.text("name", &T::name);
  f.text("cue", &T::cue);
  f.number("time", &T::time, kDuration, Presence::must);
}

template <class Fields>
void describe(Fields& f, Of<plan::Site>) {
  using T = plan::Site;
  f.number("latitude", &T::latitude, kLatitude, Presence::must);
  f.number("longitude", &T::longitude, kLongitude, Presence::must);
  f.date("date", &T::date);
  f.number("utcOffset", &T::utcOffset, kHoursAhead);
  f.number("north", &T::north, kAngle);
}

template <class Fields>
void describe(Fields& f, Of<plan::SightRules>) {
  using T = plan::SightRules;
  f.number("margin", &T::margin, kMargin);
  f.number("early", &T::early, kDuration);
  f.number("late", &T::late, kDuration);
  f.number("radius", &T::radius, kBodyRadius);
  f.number("height", &T::height, kStature);
  f.number("cell", &T::cell, kCell);
  f.word("bodiesHide", &T::bodiesHide, kBodiesHide);
}

template <class Fields>
void describe(Fields& f, Of<plan::Accepted>) {
  using T = plan::Accepted;
  f.text("key", &T::key, Presence::must);
  f.text("by", &T::by);
  f.text("note", &T::note);
}

template <class Fields>
void describe(Fields& f, Of<plan::TakeNote>) {
  using T = plan::TakeNote;
  f.number("at", &T::at, kTime, Presence::must);
  f.text("text", &T::text);
}

template <class Fields>
void describe(Fields& f, Of<plan::Take>) {
  using T = plan::Take;
  f.integer("number", &T::number, kTakeNumber, Presence::must);
  f.text("revision", &T::revision);
  f.text("note", &T::note);
  f.flag("circled", &T::circled);
  f.numbersByName("beats", &T::beats, kTime);
  f.rows("notes", &T::notes, Layout::inlined);
}

/// Everything but `format` and `version`, which come first and are the reader's and the writer's own.
template <class Fields>
void describe(Fields& f, Of<plan::Plan>) {
  using T = plan::Plan;
  f.text("title", &T::title);
  f.text("revision", &T::revision);
  f.text("notes", &T::notes);
  f.inner("display", [](auto& display) { display.word("length", &T::display, kLengthUnits); });
  f.object("clock", &T::clock, Presence::must);
  f.maybe("site", &T::site);
  f.table("beats", &T::beats);
  f.object("set", &T::set);
  f.table("props", &T::props);
  f.table("performers", &T::performers);
  f.object("camera", &T::camera, Presence::must);
  f.maybe("lens", &T::lens);
  f.object("wobble", &T::wobble);
  f.object("focus", &T::focus);
  f.object("zoom", &T::zoom);
  f.object("iris", &T::iris);
  f.table("fixtures", &T::fixtures);
  f.table("crew", &T::crew);
  f.table("shelters", &T::shelters);
  f.table("gear", &T::gear);
  f.table("cables", &T::cables);
  f.table("poles", &T::poles);
  f.table("links", &T::links);
  f.rows("speech", &T::speech, Layout::lines);
  f.rows("handovers", &T::handovers, Layout::lines);
  f.object("sightRules", &T::sightRules);
  f.numbersByName("sizes", &T::sizes, kSizeShare);
  f.thresholds("thresholds", &T::thresholds);
  f.rows("accepted", &T::accepted, Layout::lines);
  f.rows("takes", &T::takes, Layout::lines);
}

}  // namespace wend::file
