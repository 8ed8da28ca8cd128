/// The keys of camera, rig and lens, and of the axes that follow: aims, focus, zoom, iris, fixtures' levels.
#pragma once

#include "core/file/describe_people.h"

namespace wend::file {

template <class Fields>
void describe(Fields& f, Of<plan::AimKey>) {
  using T = plan::AimKey;
  f.keyTime(&T::time);
  f.target("on", &T::on, kAimTargets);
  f.pair("place", &T::place, kHalfFrames, false);
  f.integer("turns", &T::turns, kTurns);
}

template <class Fields>
void describe(Fields& f, Of<plan::Meter>) {
  using T = plan::Meter;
  f.word("receptor", &T::receptor, kReceptors);
  f.number("constant", &T::constant, kMeterConstant);
}

template <class Fields>
void describe(Fields& f, Of<plan::RigItem>) {
  using T = plan::RigItem;
  f.text("name", &T::name);
  f.number("kg", &T::kg, kKilograms, Presence::must);
}

template <class Fields>
void describe(Fields& f, Of<plan::Rig>) {
  using T = plan::Rig;
  f.word("kind", &T::kind, kRigKinds);
  f.number("radius", &T::radius, kBodyRadius);
  f.pair("payload", &T::payload, kKilograms, true);
  f.rows("items", &T::items, Layout::inlined);
}

template <class Fields>
void describe(Fields& f, Of<plan::CarriedBody>) {
  using T = plan::CarriedBody;
  f.reference("crew", &T::crew, IdKind::crew);
  f.number("behind", &T::behind, kOffset);
  f.number("right", &T::right, kOffset);
}

template <class Fields>
void describe(Fields& f, Of<plan::DensityKey>) {
  using T = plan::DensityKey;
  f.keyTime(&T::time);
  f.number("stops", &T::stops, kDensity, Presence::must);
}

template <class Fields>
void describe(Fields& f, Of<plan::TrailingCable>) {
  using T = plan::TrailingCable;
  f.point("anchor", &T::anchor, Presence::must);
  f.number("length", &T::length, kPositiveSize, Presence::must);
}

template <class Fields>
void describe(Fields& f, Of<plan::Camera>) {
  using T = plan::Camera;
  f.marks("marks", &T::marks, MarkOf::camera, Presence::must);
  f.keys("aims", &T::aims);
  f.pair("gate", &T::gate, kGate, false);
  f.number("squeeze", &T::squeeze, kSqueeze);
  f.numberOrNull("aspect", &T::aspect, kAspect, Presence::may);
  f.number("blurCircle", &T::blurCircle, kBlurCircle);
  f.number("exposureIndex", &T::exposureIndex, kExposureIndex);
  f.number("shutterDeg", &T::shutterDeg, kShutter);
  f.number("ndStops", &T::ndStops, kDensity);
  f.keys("nd", &T::nd);
  f.object("meter", &T::meter);
  f.object("rig", &T::rig);
  f.rows("bodies", &T::bodies, Layout::inlined);
  f.maybe("cable", &T::cable);
}

template <class Fields>
void describe(Fields& f, Of<plan::FocusMark>) {
  using T = plan::FocusMark;
  f.numberOrNull("distance", &T::distance, kPositiveSize, Presence::must);
  f.number("deg", &T::deg, kBarrel, Presence::must);
  f.text("witness", &T::witness);
}

template <class Fields>
void describe(Fields& f, Of<plan::IrisMark>) {
  using T = plan::IrisMark;
  f.number("stop", &T::stop, kStop, Presence::must);
  f.number("deg", &T::deg, kBarrel, Presence::must);
}

template <class Fields>
void describe(Fields& f, Of<plan::ZoomMark>) {
  using T = plan::ZoomMark;
  f.number("focal", &T::focal, kMillimetres, Presence::must);
  f.number("deg", &T::deg, kBarrel, Presence::must);
}

template <class Fields>
void describe(Fields& f, Of<plan::LensLimits>) {
  using T = plan::LensLimits;
  f.number("focusDegPerSecond", &T::focusDegPerSecond, kBarrelSpeed);
  f.number("irisStopsPerSecond", &T::irisStopsPerSecond, kStopsPerSecond);
  f.number("zoomPercentPerSecond", &T::zoomPercentPerSecond, kPercentPerSecond);
}

template <class Fields>
void describe(Fields& f, Of<plan::Lens>) {
  using T = plan::Lens;
  f.text("name", &T::name);
  f.pair("focal", &T::focal, kMillimetres, true);
  f.pair("stop", &T::stop, kStop, true);
  f.number("closeFocus", &T::closeFocus, kPositiveSize);
  f.number("pupilAhead", &T::pupilAhead, kPupil);
  f.overFocal("transmission", &T::transmission, kPositiveShare);
  f.overFocal("breathing", &T::breathing, kBreathing);
  f.overFocal("balance", &T::balance, kBalance);
  f.lensMarks("focusMarks", &T::focusMarks);
  f.lensMarks("irisMarks", &T::irisMarks);
  f.lensMarks("zoomMarks", &T::zoomMarks);
  f.object("limits", &T::limits);
}

template <class Fields>
void describe(Fields& f, Of<plan::Wobble>) {
  using T = plan::Wobble;
  f.number("taped", &T::taped, kWobble);
  f.number("walking", &T::walking, kWobble);
  f.number("untaped", &T::untaped, kWobble);
  f.number("operatorMoving", &T::operatorMoving, kWobble);
  f.number("operatorStill", &T::operatorStill, kWobble);
  f.number("dolly", &T::dolly, kWobble);
}

template <class Fields>
void describe(Fields& f, Of<plan::FocusKey>) {
  using T = plan::FocusKey;
  f.keyTime(&T::time);
  f.target("on", &T::on, kFocusTargets);
}

template <class Fields>
void describe(Fields& f, Of<plan::HandPull>) {
  using T = plan::HandPull;
  f.moment("at", &T::at, Presence::must);
  f.number("over", &T::over, kDuration);
  f.number("distance", &T::distance, kPositiveSize, Presence::must);
}

template <class Fields>
void describe(Fields& f, Of<plan::Focus>) {
  using T = plan::Focus;
  f.word("distance", &T::distance, kDistanceKinds);
  f.number("blurShare", &T::blurShare, kPositiveShare);
  f.keys("keys", &T::keys);
  f.keys("pulls", &T::pulls, false);
}

template <class Fields>
void describe(Fields& f, Of<plan::ZoomKey>) {
  using T = plan::ZoomKey;
  f.keyTime(&T::time);
  f.focalOrSize(&T::focal, &T::size, &T::of);
}

template <class Fields>
void describe(Fields& f, Of<plan::Zoom>) {
  using T = plan::Zoom;
  f.number("slackShare", &T::slackShare, kShare);
  f.keys("keys", &T::keys);
}

template <class Fields>
void describe(Fields& f, Of<plan::IrisKey>) {
  using T = plan::IrisKey;
  f.keyTime(&T::time);
  f.number("stop", &T::stop, kStop, Presence::must);
}

template <class Fields>
void describe(Fields& f, Of<plan::Iris>) {
  using T = plan::Iris;
  f.number("slackStops", &T::slackStops, kStops);
  f.exposePerformer("expose", &T::exposePerformer);
  f.keys("keys", &T::keys);
}

template <class Fields>
void describe(Fields& f, Of<plan::LevelKey>) {
  using T = plan::LevelKey;
  f.keyTime(&T::time);
  f.number("share", &T::share, kShare, Presence::must);
  f.text("name", &T::name);
  f.text("by", &T::by);
}

template <class Fields>
void describe(Fields& f, Of<plan::Fixture>) {
  using T = plan::Fixture;
  f.id(&T::id);
  f.text("name", &T::name);
  f.flag("inReadings", &T::inReadings);
  f.point("pos", &T::pos, Presence::must);
  f.number("height", &T::height, kHeight);
  f.number("bearing", &T::bearing, kAngle);
  f.number("tilt", &T::tilt, kTilt);
  f.output("output", &T::output);
  f.keys("level", &T::level);
}

}  // namespace wend::file
