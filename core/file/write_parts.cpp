#include "core/file/write_parts.h"

#include <algorithm>
#include <cmath>

#include "core/file/json_document.h"
#include "core/units/clock_time.h"

namespace wend::file {

namespace {

void addUnless(Written& object, std::string_view key, double value, double fallback) {
  if (value != fallback) object.add(key, Written::number(value));
}

void addTarget(Written& object, const plan::OnPerformer& on) {
  object.add("performer", Written::text(on.performer));
}
void addTarget(Written& object, const plan::OnProp& on) {
  object.add("prop", Written::text(on.prop));
}
void addTarget(Written& object, const plan::OnPoint& on) {
  object.add("point", Written::point(on.pos));
  addUnless(object, "height", on.height, plan::OnPoint{}.height);
}
void addTarget(Written& object, const plan::OnBearing& on) {
  object.add("bearing", Written::number(on.bearing));
  addUnless(object, "tilt", on.tilt, plan::OnBearing{}.tilt);
}
void addTarget(Written& object, const plan::OnTravel& on) {
  object.add("travel", Written::number(on.offset));
  addUnless(object, "tilt", on.tilt, plan::OnTravel{}.tilt);
}
void addTarget(Written& object, const plan::OnSplit& on) {
  Written who = Written::list();
  for (const auto& one : on.who) who.add(Written::text(one));
  object.add("split", std::move(who));
}
void addTarget(Written& object, const plan::OnDistance& on) {
  object.add("distance", Written::number(on.metres));
}

void addOutput(Written& object, const plan::BeamOutput& beam) {
  object.add("candela", Written::number(beam.candela));
  addUnless(object, "beam", beam.beam, plan::BeamOutput{}.beam);
  addUnless(object, "field", beam.field, plan::BeamOutput{}.field);
}
void addOutput(Written& object, const plan::IesOutput& ies) {
  object.add("ies", Written::text(ies.file));
  addUnless(object, "scale", ies.scale, plan::IesOutput{}.scale);
}

void addOneNeed(Written& object, const plan::NearCamera& near) {
  object.add("near", Written::text("camera"));
  addUnless(object, "within", near.within, plan::NearCamera{}.within);
}
void addOneNeed(Written& object, const plan::Holds& holds) {
  object.add("holds", Written::text(holds.link));
}
void addOneNeed(Written& object, const plan::Reaches& reaches) {
  object.add("reaches", Written::text(reaches.pole));
}
void addOneNeed(Written& object, const plan::Sees& sees) {
  object.add("sees", Written::text(sees.who));
}
void addOneNeed(Written& object, const plan::Stays& stays) {
  object.add("stays", Written::text(stays.shelter));
}

Written writtenDisc(const plan::Disc& disc, const plan::Extras& extras, const std::string& prefix) {
  Written object = Written::object();
  object.add("centre", Written::point(disc.centre));
  object.add("radius", Written::number(disc.radius));
  addExtras(object, extras, prefix);
  return object;
}

/// "05:50" where the minute is whole.
std::string hoursAndMinutes(double seconds) {
  const std::string text = units::timeOfDayText(seconds);
  return text.size() == 8 && text.ends_with(":00") ? text.substr(0, 5) : text;
}

}  // namespace

bool keepsUnder(const plan::Extras& extras, const std::string& prefix) {
  return std::any_of(extras.begin(), extras.end(), [&](const auto& extra) { return extra.key.starts_with(prefix); });
}

Written writtenMoment(const plan::Moment& moment, const plan::Extras& extras, const std::string& prefix) {
  if (moment.beat.empty()) return Written::number(moment.seconds);
  if (moment.seconds == 0 && !keepsUnder(extras, prefix)) return Written::text(moment.beat);
  Written object = Written::object();
  object.add("beat", Written::text(moment.beat));
  addUnless(object, "plus", moment.seconds, 0);
  addExtras(object, extras, prefix);
  return object;
}

Written writtenTarget(const plan::Target& target, const plan::Extras& extras, const std::string& prefix) {
  Written object = Written::object();
  std::visit([&](const auto& on) { addTarget(object, on); }, target);
  addExtras(object, extras, prefix);
  return object;
}

void addFootprint(Written& object, const plan::Footprint& shape, const plan::Extras& extras,
                  const std::string& prefix) {
  if (const auto* disc = std::get_if<plan::Disc>(&shape))
    object.add("disc", writtenDisc(*disc, extras, prefix + "disc/"));
  else if (const auto* outline = std::get_if<plan::Outline>(&shape))
    object.add("outline", Written::points(outline->points));
  else
    object.add("points", Written::points(std::get<plan::Line>(shape).points));
}

Written writtenOutput(const std::variant<plan::BeamOutput, plan::IesOutput>& output, const plan::Extras& extras,
                      const std::string& prefix) {
  Written object = Written::object();
  std::visit([&](const auto& one) { addOutput(object, one); }, output);
  addExtras(object, extras, prefix);
  return object;
}

void addNeed(Written& object, const plan::Need::What& need) {
  std::visit([&](const auto& one) { addOneNeed(object, one); }, need);
}

Written writtenOverFocal(const plan::OverFocal& values) {
  if (values.rows.empty()) return Written::number(values.everywhere);
  Written list = Written::list();
  for (const auto& row : values.rows) list.add(Written::point({row.focal, row.value}));
  return list;
}

Written writtenClockReadings(const std::vector<plan::ClockReading>& readings) {
  Written list = Written::list();
  for (const auto& reading : readings) {
    Written row = Written::list();
    row.add(Written::text(hoursAndMinutes(reading.timeOfDay)));
    row.add(Written::number(reading.stop));
    if (reading.kelvin) {
      Written colour = Written::object();
      colour.add("kelvin", Written::number(*reading.kelvin));
      row.add(std::move(colour));
    }
    list.add(std::move(row));
  }
  return list;
}

Written writtenThresholds(const std::map<std::string, double>& factors, const plan::Extras& extras,
                          const std::string& prefix) {
  Written object = Written::object();
  for (const auto& [rule, share] : factors) {
    Written one = Written::object();
    one.add("share", Written::number(share));
    addExtras(one, extras, prefix + pointerStep(rule) + "/");
    object.add(rule, std::move(one));
  }
  return object;
}

Written writtenExpose(const std::string& performer, const plan::Extras& extras, const std::string& prefix) {
  Written object = Written::object();
  object.add(performer.empty() ? "follow" : "performer", Written::text(performer.empty() ? "focus" : performer));
  addExtras(object, extras, prefix);
  return object;
}

}  // namespace wend::file
