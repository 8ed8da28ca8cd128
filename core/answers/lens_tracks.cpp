#include "core/answers/lens_tracks.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/answers/lens_charts.h"
#include "core/base/text.h"
#include "core/geometry/runs.h"
#include "core/snags/stretch.h"
#include "core/snags/thresholds.h"
#include "core/units/stop.h"

namespace wend::answers {

optics::Optics opticsOf(const plan::Plan& plan, double focal, double tNumber) {
  return {focal, optics::fNumberOf(tNumber, plan.lens->transmission.at(focal)), plan.camera.blurCircle};
}

namespace {

/// Stops a second that hide in any moving frame. Common practice, no source.
constexpr double kIrisEasyRate = 0.25;

std::array<double, 2> stopRange(const plan::Plan& plan) {
  return plan.lens ? plan.lens->stop : std::array<double, 2>{2.8, 22};
}

plan::LensLimits limitsOf(const plan::Plan& plan) {
  return plan.lens ? plan.lens->limits : plan::LensLimits{};
}

optics::LensScale scaleOf(const std::optional<plan::Lens>& lens) {
  if (!lens) return optics::LensScale::uncharted(1);
  auto scale = optics::LensScale::through(optics::ScaleOf::distance, scaleMarks(lens->focusMarks));
  return scale ? std::move(scale).value() : optics::LensScale::uncharted(lens->closeFocus);
}

/// A track through keyed values: straight for even keys, in small steps for eased ones.
pulls::Track trackOf(const std::vector<geometry::KeySpan>& keys, const std::vector<double>& values, double length) {
  constexpr int kEasedSteps = 16;
  pulls::Track track;
  track.knots.push_back({0, values.front()});
  for (std::size_t k = 1; k < keys.size(); ++k) {
    const double before = values[k - 1], after = values[k], end = keys[k].at + keys[k].over;
    track.knots.push_back({keys[k].at, before});
    const int steps = keys[k].eased ? kEasedSteps : 1;
    for (int i = 1; i <= steps; ++i) {
      const double share = double(i) / steps;
      const double eased = keys[k].eased ? geometry::smoothstep(share) : share;
      track.knots.push_back({keys[k].at + keys[k].over * share, geometry::lerp(before, after, eased)});
    }
    if (before == after || (keys[k].over <= 0 && (keys[k].at <= 0 || keys[k].at >= length))) continue;
    // Without a change time it is a cut, faster than any ring.
    const double peak = keys[k].over > 0 ? std::abs(after - before) / keys[k].over * (keys[k].eased ? 1.5 : 1)
                                         : std::numeric_limits<double>::infinity();
    track.moves.push_back({keys[k].at, end, before, after, peak, 1});
  }
  track.knots.push_back({length, values.back()});
  return track;
}

/// Why a planned axis is outside its slack. `part` is what turns.
std::string reasonOf(const pulls::UnmetSpan& span, const std::string& what, const std::string& part) {
  return what + (span.reason == pulls::Unmet::noValue ? ": no setting would do"
                                                      : ": " + part + " would have to turn faster than its limit");
}

double blendedAt(const std::vector<geometry::KeySpan>& keys, const std::vector<double>& values, double t) {
  const geometry::KeyBlend blend = geometry::blendAt(keys, t);
  return geometry::lerp(values[blend.before], values[blend.after], blend.share);
}

}  // namespace

pulls::MoveRules focusRules(const plan::Plan& plan) {
  // Up to 60 degrees a second is comfortable. Common practice, no source.
  constexpr double kEasyRate = 60;
  const double limit = limitsOf(plan).focusDegPerSecond;
  return {limit, std::min(limit, kEasyRate), 0.25, pulls::kEasySeconds};
}

pulls::MoveRules irisRules(const plan::Plan& plan) {
  const double limit = limitsOf(plan).irisStopsPerSecond;
  return {limit, std::min(limit, kIrisEasyRate), 0.25, pulls::kEasySeconds};
}

pulls::Tube withinLens(pulls::Tube irisTube, const plan::Plan& plan) {
  const std::array<double, 2> range = stopRange(plan);
  return pulls::heldWithin(std::move(irisTube), stopsOf(range[0]), stopsOf(range[1]));
}

struct LensTracks::Maker {
  const plan::Plan& plan;
  const Subjects& subjects;
  const CameraView& view;
  const light::Lighting& lighting;
  const std::vector<double>& times;
  LensTracks& tracks;

  std::optional<double> neededOf(std::size_t key, double t) const;
  std::optional<double> needed(double t) const;
  void lookAtNeeds();
  bool exposesSomewhere(double t) const;
  void lookAtUnknown();
  void setIris();
  void planIris();
  void addCut(double at, const std::string& what, const std::string& before, const std::string& after);
  void lookAtCuts();
  void lookAtRates();
  std::optional<std::pair<double, double>> focusBounds(double t) const;
  void lookAtSlack();
  void setFocus();
};

std::optional<double> LensTracks::Maker::neededOf(std::size_t key, double t) const {
  const auto place = subjects.placeOf(key, t);
  if (!place) return std::nullopt;
  const geometry::Vec3 towards = view.pupilAt(t).at - *place;
  if (geometry::length(towards) == 0) return std::nullopt;
  return light::neededOnFace(lighting, {*place, towards}, t);
}

std::optional<double> LensTracks::Maker::needed(double t) const {
  const std::string& exposed = plan.iris.exposePerformer;
  if (!exposed.empty()) {
    const auto place = subjects.people().lookAt(exposed, t);
    return place ? light::neededOnFace(lighting, {*place, view.pupilAt(t).at - *place}, t) : std::nullopt;
  }
  if (!subjects.any()) return std::nullopt;
  const geometry::KeyBlend blend = subjects.blendAt(t);
  if (blend.before == blend.after) return neededOf(blend.after, t);
  return light::blendedNeed(neededOf(blend.before, t), neededOf(blend.after, t), blend.share);
}

void LensTracks::Maker::lookAtNeeds() {
  for (const double t : times) {
    const auto stop = needed(t);
    tracks.needed_.emplace_back(t, stop);
    if (!stop) {
      tracks.irisTube_.push_back({t, 0, 0, true});
      continue;
    }
    const double centre = stopsOf(*stop), slack = plan.iris.slackStops;
    tracks.irisTube_.push_back({t, centre - slack, centre + slack, false});
  }
}

/// Whether there is a place that the iris is set for.
bool LensTracks::Maker::exposesSomewhere(double t) const {
  const std::string& exposed = plan.iris.exposePerformer;
  if (!exposed.empty()) return subjects.people().lookAt(exposed, t).has_value();
  return subjects.any() && subjects.placeOf(subjects.blendAt(t).after, t).has_value();
}

/// A planned iris has nothing to go by where nobody can tell the light, and stands at a guess there.
void LensTracks::Maker::lookAtUnknown() {
  if (!plan.iris.keys.empty() || !snags::tellsOfLight(plan)) return;
  const double hold = snags::threshold(plan, "light-unknown").hold;
  const auto& needed = tracks.needed_;
  const auto unknown = [&](std::size_t i) { return !needed[i].second && exposesSomewhere(needed[i].first); };
  for (const auto& run : geometry::runsWhere(needed.size(), unknown)) {
    const geometry::Span span{needed[run.first].first, needed[run.last].first};
    if (span.length() >= hold)
      tracks.beyond_.push_back(
          {span, "the light that the iris is planned for is unknown: it stands at a guess", "iris"});
  }
}

void LensTracks::Maker::planIris() {
  const bool known = std::any_of(tracks.irisTube_.begin(), tracks.irisTube_.end(),
                                 [](const pulls::TubeSample& sample) { return !sample.open; });
  if (!known) {
    const double open = stopsOf(stopRange(plan)[0]);
    tracks.iris_.knots = {{0, open}, {times.back(), open}};
    return;
  }
  tracks.iris_ = pulls::fewestMoves(withinLens(tracks.irisTube_, plan), irisRules(plan), tracks.irisTube_);
}

void LensTracks::Maker::setIris() {
  if (plan.iris.keys.empty()) return planIris();
  tracks.irisKeys_ = resolvedKeys(plan, plan.iris.keys);
  for (const auto& key : plan.iris.keys) tracks.irisStops_.push_back(stopsOf(key.stop));
  tracks.iris_ = trackOf(tracks.irisKeys_, tracks.irisStops_, times.back());
  tracks.iris_.unmet = pulls::outside(tracks.iris_, withinLens(tracks.irisTube_, plan));
}

/// Barrel degrees between which every subject's blur stays inside the slack; nothing while anything goes.
std::optional<std::pair<double, double>> LensTracks::Maker::focusBounds(double t) const {
  if (!subjects.any() || subjects.changing(t) || !plan.lens) return std::nullopt;
  const double focal = *view.focalAt(t);
  const optics::Optics optics = opticsOf(plan, focal, tracks.irisAt(t));
  const double ahead = plan.lens->pupilAhead, closest = plan.lens->closeFocus - ahead;
  const auto distances = subjects.drivingDistances(subjects.blendAt(t).after, t, view.sensorAt(t));
  if (distances.empty()) return std::nullopt;
  double near = closest, far = std::numeric_limits<double>::infinity();
  for (const double distance : distances) {
    const double u = std::max(distance - ahead, closest);
    const auto slack = optics::slackOf(u, optics, plan.focus.blurShare, closest);
    if (!slack) continue;
    near = std::max(near, slack->near);
    far = std::min(far, slack->far);
  }
  // A split that cannot be held leaves no setting: then the one of least largest blur is asked for.
  if (near > far) near = far = 2 / (1 / near + 1 / far);
  const double a = tracks.scale_.degreesAt(near + ahead), b = tracks.scale_.degreesAt(far + ahead);
  return std::pair{std::min(a, b), std::max(a, b)};
}

void LensTracks::Maker::lookAtSlack() {
  for (const double t : times) {
    const auto bounds = focusBounds(t);
    tracks.focusTube_.push_back(bounds ? pulls::TubeSample{t, bounds->first, bounds->second, false}
                                       : pulls::TubeSample{t, 0, 0, true});
  }
}

void LensTracks::Maker::setFocus() {
  if (plan.focus.pulls.empty()) {
    tracks.focus_ = pulls::fewestMoves(tracks.focusTube_, focusRules(plan));
    return;
  }
  for (const auto& pull : plan.focus.pulls) {
    tracks.focusKeys_.push_back({plan::secondsOf(plan, pull.at), pull.over, false});
    tracks.focusDegrees_.push_back(tracks.scale_.degreesAt(pull.distance));
  }
  tracks.focus_ = trackOf(tracks.focusKeys_, tracks.focusDegrees_, times.back());
  tracks.focus_.unmet = pulls::outside(tracks.focus_, tracks.focusTube_);
}

/// A change by hand that takes no time: no ring does that.
void LensTracks::Maker::addCut(double at, const std::string& what, const std::string& before,
                               const std::string& after) {
  tracks.beyond_.push_back(
      {{at, at}, "the " + what + " goes from " + before + " to " + after + " in no time at all", what});
}

void LensTracks::Maker::lookAtCuts() {
  const auto mm = [](double focal) { return base::fixed(focal, 1) + " mm"; };
  const auto metres = [&](double degrees) { return snags::lengthText(plan, tracks.scale_.valueAt(degrees)); };
  const auto stop = [](double stops) { return units::stopText(tNumberOf(stops)); };
  const auto density = [](double stops) { return base::fixed(stops, 1) + " stops"; };
  for (const pulls::Move& move : tracks.iris_.moves)
    if (move.from >= move.until) addCut(move.from, "iris", stop(move.valueBefore), stop(move.valueAfter));
  for (const pulls::Move& move : tracks.focus_.moves)
    if (move.from >= move.until) addCut(move.from, "focus", metres(move.valueBefore), metres(move.valueAfter));
  for (const pulls::Move& move : view.zoom().cuts())
    addCut(move.from, "zoom", mm(move.valueBefore), mm(move.valueAfter));
  for (const light::DensityCut& cut : light::densityCuts(lighting.density, times.back()))
    addCut(cut.at, "density", density(cut.before), density(cut.after));
}

/// Moves set by hand that ask more of a ring than its limit.
void LensTracks::Maker::lookAtRates() {
  constexpr double kRounding = 1 + 1e-9;
  lookAtCuts();
  for (const pulls::Move& move : tracks.iris_.moves)
    if (move.from < move.until && move.peakRate > limitsOf(plan).irisStopsPerSecond * kRounding)
      tracks.beyond_.push_back({{move.from, move.until}, "the iris would have to turn faster than its limit", "iris"});
  if (!plan.lens) return;
  for (const auto& missed : view.zoom().unmet())
    tracks.beyond_.push_back(
        {missed.span, "no zoom within the lens' limit keeps the shot size inside its slack", "zoom"});
  const double limit = plan.lens->limits.zoomPercentPerSecond * kRounding;
  // Cuts are told of already; a rate is measured over an instant about each frame.
  const auto cuts = view.zoom().cuts();
  const auto besideCut = [&](double t) {
    constexpr double kMeasured = 0.011;
    return std::any_of(cuts.begin(), cuts.end(), [&](const auto& cut) { return std::abs(t - cut.from) < kMeasured; });
  };
  const auto over = [&](double t) { return std::abs(view.zoomRateAt(t)) > limit && !besideCut(t); };
  for (const auto& run : geometry::runsWhere(times.size(), [&](std::size_t i) { return over(times[i]); })) {
    const double until = times[std::min(run.last + 1, times.size() - 1)];
    tracks.beyond_.push_back({{times[run.first], until}, "the zoom would have to turn faster than its limit", "zoom"});
  }
}

LensTracks LensTracks::of(const plan::PlanPtr& plan, const Subjects& subjects, const CameraView& view,
                          const light::Lighting& lighting, const std::vector<double>& times) {
  LensTracks tracks;
  tracks.scale_ = scaleOf(plan->lens);
  Maker maker{*plan, subjects, view, lighting, times, tracks};
  maker.lookAtNeeds();
  maker.lookAtUnknown();
  maker.setIris();
  maker.lookAtSlack();
  maker.setFocus();
  maker.lookAtRates();
  return tracks;
}

LensTracks LensTracks::withIris(pulls::Track iris, const plan::PlanPtr& plan, const Subjects& subjects,
                                const CameraView& view, const light::Lighting& lighting,
                                const std::vector<double>& times) const {
  LensTracks tracks = *this;
  tracks.iris_ = std::move(iris);
  tracks.focusTube_.clear(), tracks.focusKeys_.clear(), tracks.focusDegrees_.clear(), tracks.beyond_.clear();
  Maker maker{*plan, subjects, view, lighting, times, tracks};
  maker.lookAtUnknown();
  maker.lookAtSlack();
  maker.setFocus();
  maker.lookAtRates();
  return tracks;
}

double LensTracks::irisAt(double t) const {
  return tNumberOf(irisKeys_.empty() ? iris_.valueAt(t) : blendedAt(irisKeys_, irisStops_, t));
}

std::optional<double> LensTracks::neededAt(double t) const {
  const auto after = std::lower_bound(needed_.begin(), needed_.end(), t,
                                      [](const auto& entry, double time) { return entry.first < time; });
  if (after == needed_.end()) return needed_.back().second;
  if (after == needed_.begin() || after->first == t) return after->second;
  const auto before = std::prev(after);
  if (!before->second || !after->second) return std::nullopt;
  const double share = (t - before->first) / (after->first - before->first);
  return tNumberOf(geometry::lerp(stopsOf(*before->second), stopsOf(*after->second), share));
}

double LensTracks::barrelAt(double t) const {
  return focusKeys_.empty() ? focus_.valueAt(t) : blendedAt(focusKeys_, focusDegrees_, t);
}

double LensTracks::barrelRateAt(double t) const {
  constexpr double kHalf = 1e-3;
  const geometry::Span about{std::max(0.0, t - kHalf), std::min(focusTube_.back().t, t + kHalf)};
  return about.length() > 0 ? (barrelAt(about.until) - barrelAt(about.from)) / about.length() : 0;
}

std::vector<snags::Unmet> LensTracks::unmet() const {
  std::vector<snags::Unmet> list;
  for (const auto& span : focus_.unmet)
    list.push_back({span.span, focusKeys_.empty()
                                   ? reasonOf(span, "no pull keeps the subject inside the slack", "the barrel")
                                   : "the barrel is set by hand up to " + base::fixed(span.worst, 0) +
                                         " degrees outside the slack"});
  if (irisKeys_.empty())
    for (const auto& span : iris_.unmet)
      list.push_back({span.span, reasonOf(span, "no move keeps the stop inside its slack", "the iris"), "iris"});
  list.insert(list.end(), beyond_.begin(), beyond_.end());
  std::stable_sort(list.begin(), list.end(), [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  return list;
}

}  // namespace wend::answers
