// Staves of time itself: the ruler, the beats, who speaks.
#include "core/base/text.h"
#include "core/sheets/glyphs.h"
#include "core/sheets/stave.h"
#include "core/units/clock_time.h"

namespace wend::sheets {

using namespace geometry;

void drawClockStave(StavePainter& p) {
  const double bottom = p.box.top + p.box.height;
  const int first = static_cast<int>(std::ceil(p.view.from));
  for (int second = first; second <= p.view.until; ++second) {
    if (p.view.pxPerSecond() < 3 && second % 5 != 0) continue;
    const double high = second % 10 == 0 ? 10 : second % 5 == 0 ? 7 : 4;
    p.line({{p.view.x(second), bottom}, {p.view.x(second), bottom - high}}, Tone::ink3, 1);
    if (second % 10 != 0) continue;
    const std::string label =
        std::to_string(second / 60) + ":" + (second % 60 < 10 ? "0" : "") + std::to_string(second % 60);
    p.text({p.view.x(second) + 3, p.box.top + 12}, label, Tone::ink2);
  }
}

void drawBeatsStave(StavePainter& p) {
  for (std::size_t i = 0; i < p.plan.beats.size(); ++i) {
    const plan::Beat& beat = p.plan.beats[i];
    if (beat.time < p.view.from || beat.time > p.view.until) continue;
    const double next = i + 1 < p.plan.beats.size() ? p.plan.beats[i + 1].time : p.plan.clock.length;
    const double x = p.view.x(beat.time), room = p.view.x(next) - x - 30;
    drawBeatFlag(p.drawing, {x, p.box.top + 21}, std::to_string(i + 1));
    if (p.view.chosenKey == "beat/" + beat.id.text()) drawChosen(p.drawing, {x + 9, p.box.top + 10}, 12);
    p.text({x + (i < 9 ? 22 : 28), p.box.top + 15}, StavePainter::cut(beat.name, room), Tone::ink);
  }
}

void drawSpeechStave(StavePainter& p) {
  if (p.plan.speech.empty())
    return p.text({p.view.labels + 8, p.box.top + 16}, "lines not entered yet: boom checks are unknown", Tone::ink3);
  for (const auto& speech : p.plan.speech) {
    const double from = plan::secondsOf(p.plan, speech.from), until = plan::secondsOf(p.plan, speech.until);
    p.block(from, until, p.box.top + 4, 16, {Tone::raise}, {.tone = Tone::line2, .width = 1, .dash = {}});
    const std::size_t who = p.plan.performers.indexOf(speech.who);
    if (who == p.plan.performers.size()) continue;
    drawPerformer(p.drawing, {p.view.x(from) + 10, p.box.top + 12}, who, performerLetter(p.plan, who), 7);
    p.text({p.view.x(from) + 20, p.box.top + 16},
           StavePainter::cut(speech.words, p.view.x(until) - p.view.x(from) - 22), Tone::ink2);
  }
}

}  // namespace wend::sheets
