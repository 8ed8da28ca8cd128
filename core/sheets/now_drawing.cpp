#include "core/sheets/now_drawing.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/optics/warmth.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/now_calls.h"
#include "core/sheets/text_width.h"
#include "core/sheets/text_words.h"
#include "core/sheets/theme.h"
#include "core/snags/stretch.h"
#include "core/units/clock_time.h"
#include "core/units/length.h"
#include "core/units/stop.h"

namespace wend::sheets {

using namespace geometry;
using answers::Answers;
using answers::Instant;

namespace {

using units::LengthStep;
using units::LengthUnit;

constexpr double kPad = 24;
constexpr double kSoon = 5;
/// Who has to be gone is told so many seconds ahead, of the chosen always.
constexpr double kCallsAhead = 20;

LengthUnit otherUnit(LengthUnit unit) {
  return unit == LengthUnit::metres ? LengthUnit::feet : LengthUnit::metres;
}

NextCue cueOf(const snags::Move& move, LengthUnit unit) {
  using enum snags::Move::Axis;
  const auto value = [&](double v) {
    if (move.axis == iris) return units::stopText(v);
    if (move.axis == density) return base::fixed(v, 1);
    return move.axis == zoom ? base::fixed(v, 0) : shortLength(v, unit, LengthStep::tape);
  };
  return {move.from, move.until, move.axis == focus ? "pull" : snags::wordOf(move.axis),
          value(move.valueBefore) + " \u2192 " + value(move.valueAfter)};
}

/// Where everything stands: baselines and rules from the top, roomy or tight.
struct Rows {
  double clock, beat, beatBar, ruleA;
  double sharpLabel, name, distance, band, bandText, warmth, ruleB;
  double lens, ruleC;
  double cue, count, then, card;
  bool small;
};
constexpr Rows kRoomy{48, 74, 84, 104, 128, 156, 203, 229, 254, 276, 290, 325, 344, 366, 409, 432, 444, true};
constexpr Rows kTight{40, 58, 64, 71, 84, 103, 147, 164, 186, 0, 195, 222, 230, 248, 287, 0, 300, false};
constexpr double kRoomyHeight = 528;

const Rows& rowsOf(double height) {
  return height >= kRoomyHeight ? kRoomy : kTight;
}

class NowPainter {
 public:
  NowPainter(const Answers& answers, const Instant& instant, bool stale, double width, double height,
             const std::string& crew)
      : answers_(answers),
        plan_(answers.take->plan()),
        instant_(instant),
        stale_(stale),
        crew_(crew),
        rows_(rowsOf(height)),
        unit_(plan_.display) {
    drawing_.width = width;
    drawing_.height = height;
  }

  Drawing drawn() {
    drawing_.add(geometry::Box{.topLeft = {0, 0},
                               .width = drawing_.width,
                               .height = drawing_.height,
                               .radius = 0,
                               .fill = {Tone::panel},
                               .stroke = {}});
    clock();
    beat();
    rule(rows_.ruleA);
    sharpOn();
    rule(rows_.ruleB);
    lens();
    rule(rows_.ruleC);
    cue();
    worst();
    return std::move(drawing_);
  }

 private:
  double right() const { return drawing_.width - kPad; }
  double room() const { return drawing_.width - 2 * kPad; }

  void text(Point at, const std::string& words, double size, Tone tone = Tone::ink, bool bold = false,
            Align align = Align::left) {
    drawing_.add(Text{.at = at, .text = words, .size = size, .bold = bold, .align = align, .tone = tone});
  }
  void rule(double y) {
    Path line;
    line.rings = {{{0, y}, {drawing_.width, y}}};
    line.stroke = {.tone = Tone::line, .width = 1, .dash = {}};
    drawing_.add(line);
  }
  void bar(double x, double y, double width, double height, Tone tone) {
    drawing_.add(geometry::Box{
        .topLeft = {x, y}, .width = std::max(0.0, width), .height = height, .radius = 0, .fill = {tone}, .stroke = {}});
  }
  void progress(double y, double share) {
    bar(kPad, y, room(), 4, Tone::raise);
    bar(kPad, y, room() * std::clamp(share, 0.0, 1.0), 4, Tone::ink);
  }
  /// A big number with a small unit behind it and a second reading at the right edge, as large as fits.
  void number(double y, const std::string& value, double size, const std::string& unit, const std::string& second) {
    text({kPad, y}, value, size, Tone::ink, true);
    double x = kPad + typeWidth(value, size);
    if (!unit.empty()) {
      text({x + 6, y}, unit, type::kValue, Tone::ink2);
      x += 6 + typeWidth(unit, type::kValue);
    }
    for (const double small : {type::kValue, type::kBody, type::kLabel}) {
      if (x + 8 + typeWidth(second, small) > right()) continue;
      return text({right(), y}, second, small, Tone::ink, false, Align::right);
    }
  }

  void clock() {
    const std::string time = units::takeTimeText(instant_.time);
    text({kPad, rows_.clock}, time, type::kClock, Tone::ink, true);
    const std::string& code = instant_.timecode;
    const double left = kPad + typeWidth(time, type::kClock) + 8;
    if (code.size() < 6 || left + typeWidth(code.substr(0, 6), type::kLabel) > right()) return;
    text({right(), rows_.clock - 18}, code.substr(0, 6), type::kLabel, Tone::ink2, false, Align::right);
    text({right(), rows_.clock}, code.substr(6), type::kLabel, Tone::ink2, false, Align::right);
  }

  void beat() {
    const double y = rows_.beat;
    const plan::Beat* at = instant_.beat.empty() ? nullptr : plan_.beats.find(instant_.beat);
    const std::size_t index = at ? plan_.beats.indexOf(instant_.beat) : 0;
    const std::size_t next = at ? index + 1 : 0;
    const double end = next < plan_.beats.size() ? plan_.beats[next].time : plan_.clock.length;
    const std::string left = base::fixed(end - instant_.time, 1) + " s left";
    const std::string number = at ? "beat " + std::to_string(index + 1) : "no beat yet";
    text({kPad, y}, number, type::kBody, Tone::ink, true);
    text({right(), y}, left, type::kBody, Tone::ink2, false, Align::right);
    const double start = at ? at->time : 0;
    progress(rows_.beatBar, (instant_.time - start) / std::max(0.01, end - start));
    if (!at) return;
    const double x = kPad + typeWidth(number, type::kBody) + 8;
    text({x, y}, cutToWidth(at->name, type::kBody, right() - typeWidth(left, type::kBody) - 8 - x), type::kBody);
  }

  void sharpOn() {
    const auto& focus = instant_.focus;
    // Between two subjects the distance is neither's.
    const char* const label = focus.on.size() > 1 ? "Focus on its way" : "Sharp on";
    text({kPad, rows_.sharpLabel}, label, 12, Tone::ink3);
    if (!focus.known || focus.on.empty()) return text({kPad, rows_.name}, "nobody: unknown", 18, Tone::ink2);
    subjects(focus.on, othersSharp(focus.on));
    const double metres = focus.wantedDistance;
    const std::string second = std::isinf(metres) ? "" : units::lengthText(metres, otherUnit(unit_), LengthStep::fine);
    if (unit_ == LengthUnit::feet)
      number(rows_.distance, shortLength(metres, unit_), type::kBig, "", second);
    else
      number(rows_.distance, base::fixed(metres, metres < 10 ? 2 : 1), type::kClock, "m", second);
    bandBar();
    if (rows_.small) warmth();
  }

  /// Who the focus is on, from whom to whom during a change, names as long as there is room for before `end`.
  void subjects(const std::vector<std::string>& on, double end) {
    const std::string arrow = "\u2192";
    double room = end - 8 - kPad - double(on.size() - 1) * (typeWidth(arrow, type::kValue) + 16);
    double names = 0;
    for (const auto& id : on) {
      room -= shapeWidth(id);
      names += typeWidth(subjectName(plan_, id), type::kValue);
    }
    double x = kPad;
    for (const auto& id : on) {
      if (x > kPad) {
        text({x + 6, rows_.name}, arrow, type::kValue, Tone::ink2);
        x += typeWidth(arrow, type::kValue) + 16;
      }
      const std::string name = subjectName(plan_, id);
      const double own = typeWidth(name, type::kValue);
      x = subject(id, cutToWidth(name, type::kValue, names > room ? own / names * room : own), x);
    }
  }

  double shapeWidth(const std::string& id) const { return plan_.performers.find(id) ? 32 : 0; }

  /// Shape and name from x on. Returns where they end.
  double subject(const std::string& id, const std::string& name, double x) {
    const std::size_t who = plan_.performers.indexOf(id);
    if (who < plan_.performers.size())
      drawPerformer(drawing_, {x + 10, rows_.name - 6}, who, performerLetter(plan_, who), 11);
    x += shapeWidth(id);
    text({x, rows_.name}, name, type::kValue, Tone::ink, true);
    return x + typeWidth(name, type::kValue);
  }

  /// Who else in frame is sharp enough, at the right. Returns where they begin.
  double othersSharp(const std::vector<std::string>& subjects) {
    std::vector<std::size_t> others;
    std::vector<std::string> split;
    for (const auto& subject : subjects)
      for (auto& part : base::split(subject, '+')) split.emplace_back(part);
    for (std::size_t i = 0; i < instant_.performers.size(); ++i) {
      const auto& at = instant_.performers[i];
      const bool inFrame = optics::shows(at.inFrame);
      const bool other = std::find(split.begin(), split.end(), at.id) == split.end();
      if (at.present && inFrame && other && at.blur <= 1) others.push_back(i);
    }
    if (others.empty()) return right();
    double x = right() - typeWidth("too", type::kBody);
    text({x, rows_.name}, "too", type::kBody, Tone::ink2);
    others.resize(std::min<std::size_t>(others.size(), 3));
    for (std::size_t k = others.size(); k-- > 0; x -= 4) {
      x -= 20;
      drawPerformer(drawing_, {x + 8, rows_.name - 5}, others[k], performerLetter(plan_, others[k]), 8);
    }
    return x;
  }

  void warmth() {
    if (!instant_.focus.warmth) {
      const char* why = instant_.focus.changing ? "warmth unknown during the change" : "warmth unknown";
      return text({kPad, rows_.warmth}, why, 12, Tone::ink2);
    }
    const double value = *instant_.focus.warmth;
    const optics::Heat heat = optics::heatOf(value);
    const std::string word = heat == optics::Heat::cool ? "cool" : heat == optics::Heat::warm ? "warm" : "hot";
    const std::string times = value > 99 ? "over 99" : base::fixed(value, 1);
    text({kPad, rows_.warmth}, word + " \u00b7 band " + times + " \u00d7 wobble", 12,
         heat == optics::Heat::hot ? Tone::ink : Tone::ink2, heat == optics::Heat::hot);
  }

  /// The set's sharp band in 1/distance with every face on it.
  void bandBar() {
    const auto& band = instant_.focus.setBand;
    if (!(band.near > 0)) return;
    const double near = 1 / band.near, far = std::isinf(band.far) ? 0 : 1 / band.far;
    const double set = 1 / instant_.focus.setDistance, span = std::max(near - far, 1e-9), y = rows_.band;
    const auto x = [&](double measure) {
      return std::clamp(kPad + (near - measure) / span * room(), kPad - 12, right() + 12);
    };
    bar(kPad, y - 2.5, room(), 5, Tone::sharp);
    for (const double edge : {near, far}) bar(x(edge) - 1, y - 7, 2, 14, Tone::sharp);
    bar(x(set) - 1.5, y - 9, 3, 18, Tone::ink);
    for (std::size_t i = 0; i < instant_.performers.size(); ++i) {
      const auto& at = instant_.performers[i];
      if (!at.present || !optics::shows(at.inFrame)) continue;
      const double away = answers::driving(plan_, at.distances);
      drawPerformer(drawing_, {x(1 / std::max(0.1, away)), y}, i, performerLetter(plan_, i), 8);
    }
    text({kPad, rows_.bandText}, shortLength(band.near, unit_), 14, Tone::ink);
    text({drawing_.width / 2, rows_.bandText}, "set " + shortLength(instant_.focus.setDistance, unit_), 14, Tone::ink,
         true, Align::centre);
    text({right(), rows_.bandText}, shortLength(band.far, unit_), 14, Tone::ink, false, Align::right);
  }

  void lens() {
    if (!instant_.lens) return text({kPad, rows_.lens}, "no lens in the plan", 18, Tone::ink2);
    const std::string focal = base::fixed(instant_.lens->focal, 0);
    text({kPad, rows_.lens}, focal, type::kBig, Tone::ink, true);
    text({kPad + typeWidth(focal, type::kBig) + 6, rows_.lens}, "mm", type::kBody, Tone::ink2);
    text({drawing_.width / 2 + 20, rows_.lens}, units::stopText(instant_.iris.set), type::kBig, Tone::ink, true);
  }

  void cue() {
    if (!answers_.evidence) return text({kPad, rows_.cue}, "Moves are being computed", 14, Tone::ink2);
    const auto cues = nextCues(answers_, instant_.time, 3);
    if (cues.empty()) return text({kPad, rows_.cue}, "No move left", 14, Tone::ink2);
    const NextCue& next = cues.front();
    const bool runs = next.at <= instant_.time;
    const std::string title = cutToWidth(runs ? nowTitle(cues) : "Next: " + next.name, type::kBody, room());
    text({kPad, rows_.cue}, title, 14, Tone::ink, true);
    cueEnd_ = kPad + typeWidth(title, type::kBody) + 12;
    if (stale_) {
      text({cueEnd_, rows_.cue}, "stale", 12, Tone::ink, true);
      cueEnd_ += typeWidth("stale", type::kLabel) + 10;
    }
    if (runs)
      running(next, cues.size() > 1 && cues[1].at <= instant_.time ? &cues[1] : nullptr);
    else
      waiting(next);
    if (rows_.small && cues.size() > 1) {
      const NextCue& then = cues[1];
      const std::string words =
          then.at <= instant_.time
              ? "and " + then.name + " " + then.change + ", " + base::fixed(then.until - instant_.time, 1) + " s left"
              : "then " + then.name + " " + then.change + " in " + base::fixed(then.at - instant_.time, 1) + " s";
      text({kPad, rows_.then}, cutToWidth(words, 12, room() + 8), 12, Tone::ink2);
    }
  }

  /// Every move that runs, by name.
  std::string nowTitle(const std::vector<NextCue>& cues) const {
    std::string title = "Now: " + cues.front().name;
    for (std::size_t i = 1; i < cues.size() && cues[i].at <= instant_.time; ++i) title += " and " + cues[i].name;
    return title;
  }

  /// From what to what, beside the count from `left` on, or over it where it would be cut there.
  void changeAtRight(const NextCue& cue, const std::string& below, double left) {
    const auto fits = [&](double size, double from) { return typeWidth(cue.change, size) <= right() - from; };
    double size = type::kLabel, y = rows_.cue;
    for (const double beside : {type::kLabel, type::kBody, type::kValue})
      if (fits(beside, left)) size = beside, y = rows_.count - 18;
    if (y == rows_.cue && fits(type::kBody, cueEnd_)) size = type::kBody;
    text({right(), y}, cutToWidth(cue.change, size, right() - (y == rows_.cue ? cueEnd_ : left)), size, Tone::ink,
         false, Align::right);
    text({right(), rows_.count}, below, 12, Tone::ink2, false, Align::right);
  }

  void waiting(const NextCue& next) {
    const double wait = next.at - instant_.time;
    const std::string count = base::fixed(wait, wait < 20 ? 1 : 0);
    text({kPad, rows_.count}, count, type::kClock, Tone::ink, true);
    const double x = kPad + typeWidth(count, type::kClock) + 6;
    text({x, rows_.count}, "s", type::kValue, Tone::ink2);
    changeAtRight(next, "over " + base::fixed(next.until - next.at, 1) + " s", x + 20);
  }

  /// A second move that runs has its change told where there is no line below for it.
  void running(const NextCue& next, const NextCue* second) {
    const double top = rows_.count - 34, x = kPad + typeWidth("NOW", type::kBig) + 20;
    bar(kPad, top, x - kPad - 4, 36, Tone::ink);
    text({kPad + 8, rows_.count - 6}, "NOW", type::kBig, Tone::page, true);
    const bool both = second && !rows_.small;
    changeAtRight(next, both ? second->change : base::fixed(next.until - instant_.time, 1) + " s left", x + 4);
    progress(rows_.count + 6, (instant_.time - next.at) / std::max(0.01, next.until - next.at));
  }

  void worst() {
    const double top = snagCardTop(drawing_.height), height = drawing_.height - top - 8;
    const snags::Snag* snag = answers_.snags ? worstSnag(*answers_.snags, instant_.time) : nullptr;
    drawing_.add(
        geometry::Box{.topLeft = {8, top},
                      .width = drawing_.width - 16,
                      .height = height,
                      .radius = 4,
                      .fill = {Tone::raise},
                      .stroke = {.tone = snag ? Tone::ink : Tone::line, .width = snag ? 1.25 : 1.0, .dash = {}}});
    const bool calls = call(top, height);
    if (snag) return card(*snag, top, height, calls);
    const std::string words = answers_.snags ? "No snag found in the next 5 s" : "Snags are being computed";
    text({kPad, top + 26}, words, 12, Tone::ink2);
  }

  /// When the chosen of the crew, or whoever is first, has to be gone. False where nobody has to.
  bool call(double top, double height) {
    const auto calls = goneBy(answers_, instant_);
    const auto chosen = std::find_if(calls.begin(), calls.end(), [&](const auto& one) { return one.id == crew_; });
    const auto shown = chosen != calls.end() ? chosen : calls.begin();
    if (shown == calls.end() || (chosen == calls.end() && shown->by > instant_.time + kCallsAhead)) return false;
    text({18, top + height - 10}, cutToWidth(goneByWords(*shown, instant_.time), 12, drawing_.width - 36), 12,
         Tone::ink, true);
    return true;
  }

  void card(const snags::Snag& snag, double top, double height, bool calls) {
    drawLozenge(drawing_, {30, top + 22}, 13, snag.severity);
    const bool runs = snag.from <= instant_.time;
    const std::string when = runs ? "now, " + base::fixed(snag.until - instant_.time, 1) + " s more"
                                  : "in " + base::fixed(snag.from - instant_.time, 1) + " s, for " +
                                        base::fixed(snag.until - snag.from, 1) + " s";
    text({52, top + 27}, cutToWidth(when, 14, drawing_.width - 64), 14, Tone::ink, true);
    // The count of snags gives way to a text that needs its line.
    const auto rows = static_cast<std::size_t>(std::max(1.0, std::floor((height - (calls ? 56 : 40)) / 16)));
    const auto lines = wrappedToWidth(snag.text, 12, drawing_.width - 36, rows);
    double y = top + 48;
    for (const auto& line : lines) {
      text({18, y}, line, 12);
      y += 16;
    }
    if (lines.size() == rows || calls) return;
    const auto open = std::count_if(answers_.snags->begin(), answers_.snags->end(),
                                    [](const auto& other) { return !other.accepted; });
    const std::string all = open == 1 ? "the only snag" : "F: next of " + std::to_string(open) + " snags";
    text({18, top + height - 10}, all, 12, Tone::ink3);
  }

  const Answers& answers_;
  const plan::Plan& plan_;
  const Instant& instant_;
  bool stale_;
  std::string crew_;
  const Rows& rows_;
  LengthUnit unit_;
  double cueEnd_ = 0;  ///< where the title of the next cue ends
  Drawing drawing_;
};

}  // namespace

std::vector<NextCue> nextCues(const Answers& answers, double t, std::size_t most) {
  std::vector<NextCue> cues;
  if (!answers.evidence) return cues;
  for (const auto& move : answers.evidence->moves)
    if (move.until > t) cues.push_back(cueOf(move, answers.take->plan().display));
  std::stable_sort(cues.begin(), cues.end(), [](const NextCue& a, const NextCue& b) { return a.at < b.at; });
  if (cues.size() > most) cues.resize(most);
  return cues;
}

const snags::Snag* worstSnag(const snags::Snags& snags, double t) {
  const snags::Snag* worst = nullptr;
  for (const auto& snag : snags) {
    if (snag.accepted || snag.until < t || snag.from > t + kSoon) continue;
    const bool worse =
        worst && (snag.severity < worst->severity || (snag.severity == worst->severity && snag.from < worst->from));
    if (!worst || worse) worst = &snag;
  }
  return worst;
}

double snagCardTop(double height) {
  return rowsOf(height).card;
}

Drawing nowDrawing(const Answers& answers, const Instant& instant, bool stale, double width, double height,
                   const std::string& crew) {
  return NowPainter(answers, instant, stale, width, height, crew).drawn();
}

std::string nowInWords(const Answers& answers, const Instant& instant) {
  const plan::Plan& plan = answers.take->plan();
  std::string words = units::takeTimeText(instant.time);
  if (const std::size_t beat = plan.beats.indexOf(instant.beat); beat < plan.beats.size())
    words += ", beat " + std::to_string(beat + 1);
  if (instant.focus.known && !instant.focus.on.empty())
    words += (instant.focus.on.size() > 1 ? ", focus on its way " : ", sharp on ") + focusNames(plan, instant.focus) +
             " at " + units::lengthText(instant.focus.wantedDistance, plan.display);
  if (instant.lens) words += ", " + base::fixed(instant.lens->focal, 0) + " mm, " + units::stopText(instant.iris.set);
  if (const auto calls = goneBy(answers, instant); !calls.empty())
    words += ", " + goneByWords(calls.front(), instant.time);
  if (!answers.snags) return words;
  if (const snags::Snag* snag = worstSnag(*answers.snags, instant.time)) words += ", snag: " + snag->text;
  return words;
}

}  // namespace wend::sheets
