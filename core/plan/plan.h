/// The plan: one shot on one set, as an immutable value. Everything that can be computed from it is elsewhere.
///
/// Tables share unchanged entities between snapshots, so that an edit costs microseconds and a pointer comparison names
/// what changed. Lengths metres, times seconds, angles degrees, bearings clockwise from plan north.
#pragma once

#include <memory>

#include "core/base/table.h"
#include "core/plan/camera.h"
#include "core/plan/date.h"
#include "core/plan/people.h"
#include "core/plan/set.h"
#include "core/units/length.h"

namespace wend::plan {

using units::LengthUnit;

struct Clock {
  int rateNumerator = 24, rateDenominator = 1;
  bool dropFrame = false;
  std::string startTimecode = "00:00:00:00";
  double length = 60;
  std::optional<double> timeOfDay;     ///< seconds after midnight at the take's start
  std::optional<int> mainsHz;          ///< 50 or 60; absent: not known, and flicker is not looked for
  std::optional<double> cycleMinutes;  ///< from one take's start to the next
  Extras extra;
  bool operator==(const Clock&) const = default;
  double rate() const { return double(rateNumerator) / rateDenominator; }
};

/// Where on Earth the set stands, and on which day. With Clock::timeOfDay it says where the sun is.
struct Site {
  double latitude = 0, longitude = 0;  ///< degrees, north and east positive
  Date date;
  double utcOffset = 0;  ///< hours the clocks on site are ahead of UTC, summer time included
  double north = 0;      ///< true bearing of plan north (+y), degrees: 90 where it points east
  Extras extra{};
  bool operator==(const Site&) const = default;
};

struct Beat {
  base::Id<Beat> id;
  std::string name;
  std::string cue;
  double time = 0;
  Extras extra;
  bool operator==(const Beat&) const = default;
};

struct Set {
  std::optional<Underlay> underlay;
  base::Table<Room> rooms;
  base::Table<Wall> walls;
  base::Table<Opening> openings;
  base::Table<Piece> pieces;
  base::Table<Area> areas;
  Extras extra;
  bool operator==(const Set&) const = default;
};

/// Whose bodies hide what is behind them.
enum class BodiesHide { nobody, performers, everybody };

struct SightRules {
  double margin = 3;  ///< degrees
  double early = 2, late = 1;
  double radius = 0.28, height = 1.8;
  double cell = 0.1;
  BodiesHide bodiesHide = BodiesHide::nobody;
  Extras extra;
  bool operator==(const SightRules&) const = default;
};

struct Accepted {
  std::string key, by, note;
  Extras extra;
  bool operator==(const Accepted&) const = default;
};

struct TakeNote {
  double at = 0;
  std::string text;
  Extras extra{};
  bool operator==(const TakeNote&) const = default;
};
struct Take {
  int number = 1;
  std::string revision;
  std::string note;
  bool circled = false;
  std::vector<std::pair<std::string, double>> beats;  ///< beat id to the second it fell on
  std::vector<TakeNote> notes;
  Extras extra;
  bool operator==(const Take&) const = default;
};

struct Plan {
  std::string title, revision, notes;
  LengthUnit display = LengthUnit::metres;
  Clock clock;
  std::optional<Site> site;
  base::Table<Beat> beats;
  Set set;
  base::Table<Prop> props;
  base::Table<Performer> performers;
  Camera camera;
  std::optional<Lens> lens;
  Wobble wobble;
  Focus focus;
  Zoom zoom;
  Iris iris;
  base::Table<Fixture> fixtures;
  base::Table<Crew> crew;
  base::Table<Shelter> shelters;
  base::Table<Gear> gear;
  base::Table<Cable> cables;
  base::Table<Pole> poles;
  base::Table<Link> links;
  std::vector<Speech> speech;
  std::vector<Handover> handovers;
  SightRules sightRules;
  std::map<std::string, double> thresholds;  ///< rule name to the factor on the table's value
  std::map<std::string, double> sizes;       ///< shot size to the frame's height as a share of standing height
  std::vector<Accepted> accepted;
  std::vector<Take> takes;
  Extras extra;
  bool operator==(const Plan&) const = default;
};

using PlanPtr = std::shared_ptr<const Plan>;

/// Seconds from the start of the take. Requires the beat to exist or be "end".
double secondsOf(const Plan& plan, const Moment& moment);

/// True for "end" and for every beat's id.
bool hasBeat(const Plan& plan, const std::string& beat);

}  // namespace wend::plan
