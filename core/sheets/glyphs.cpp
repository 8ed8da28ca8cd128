#include "core/sheets/glyphs.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "core/base/text.h"

namespace wend::sheets {

using geometry::Align;
using geometry::Box;
using geometry::Cap;
using geometry::Circle;
using geometry::Fill;
using geometry::Path;
using geometry::Stroke;
using geometry::Text;

Tone performerTone(std::size_t i) {
  constexpr Tone tones[] = {Tone::performerA, Tone::performerB, Tone::performerC, Tone::performerD};
  return tones[i % 4];
}

std::string performerLetter(const plan::Plan& plan, std::size_t i) {
  const std::string& letter = plan.performers[i].letter;
  return letter.empty() ? std::string(1, static_cast<char>('A' + i % 26)) : letter;
}

namespace {

/// The words of a role in capitals that tell it from others. What comes after "at" is a place and what ends in "'s" is
/// whose; "camera" says little where everybody works for one.
std::vector<std::string> tellingWords(const std::string& role) {
  std::vector<std::string> words;
  std::string word;
  bool whose = false;
  const auto end = [&] {
    const bool small = word == "OF" || word == "THE" || word == "AND" || word == "TO" || word == "FOR" || word == "A";
    if (!word.empty() && !small && !whose) words.push_back(word);
    whose = false;
    return std::exchange(word, {}) == "AT";
  };
  for (const char c : role + ' ') {
    const char capital = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    whose = whose || c == '\'';
    if (capital >= 'A' && capital <= 'Z')
      word += capital;
    else if (c != '\'' && end())
      break;
  }
  std::erase(words, "AT");
  if (words.size() > 1) std::erase(words, "CAMERA");
  return words;
}

/// Two letters of a role in the order they are tried: the first letters of its first and last word, or the first two of
/// its only one, then its first letter with each later one.
std::vector<std::string> lettersOf(const std::vector<std::string>& words) {
  std::vector<std::string> pairs;
  std::string all;
  for (const auto& word : words) all += word;
  if (words.size() > 1) pairs.push_back({words.front()[0], words.back()[0]});
  for (std::size_t i = 1; i < all.size(); ++i) pairs.push_back({all[0], all[i]});
  return pairs;
}

/// What is tried when a role's own letters are taken or there are none.
std::vector<std::string> anyLetters(char first) {
  std::vector<std::string> pairs;
  for (char second = 'A'; second <= 'Z'; ++second) pairs.push_back({first, second});
  for (char other = 'A'; other <= 'Z'; ++other)
    for (char second = 'A'; second <= 'Z'; ++second) pairs.push_back({other, second});
  return pairs;
}

}  // namespace

std::vector<std::string> crewLabels(const plan::Plan& plan) {
  std::vector<std::string> labels;
  std::set<std::string> taken;
  for (const auto& crew : plan.crew) {
    auto tried = lettersOf(tellingWords(crew.role));
    for (auto& pair : lettersOf(tellingWords(crew.id.text()))) tried.push_back(std::move(pair));
    for (auto& pair : anyLetters(tried.empty() ? 'X' : tried.front()[0])) tried.push_back(std::move(pair));
    const auto free = std::find_if(tried.begin(), tried.end(), [&](const auto& pair) { return !taken.contains(pair); });
    labels.push_back(free == tried.end() ? tried.front() : *free);
    taken.insert(labels.back());
  }
  return labels;
}

namespace {

std::vector<Point> performerShape(std::size_t i, Point c, double r) {
  std::vector<Point> ring;
  switch (i % 4) {
    case 0:
      return {{c.x - r, c.y - r}, {c.x + r, c.y - r}, {c.x + r, c.y + r}, {c.x - r, c.y + r}};
    case 1:
      for (int k = 0; k < 6; ++k) {
        const double angle = geometry::radians(60.0 * k);
        ring.push_back({c.x + 1.15 * r * std::cos(angle), c.y + 1.15 * r * std::sin(angle)});
      }
      return ring;
    case 2:
      for (int k = 0; k <= 12; ++k) {
        const double angle = geometry::radians(90 - 15.0 * k);
        ring.push_back({c.x + 0.5 * r + 0.8 * r * std::cos(angle), c.y + 0.8 * r * std::sin(angle)});
      }
      for (int k = 0; k <= 12; ++k) {
        const double angle = geometry::radians(-90 - 15.0 * k);
        ring.push_back({c.x - 0.5 * r + 0.8 * r * std::cos(angle), c.y + 0.8 * r * std::sin(angle)});
      }
      return ring;
    default:
      return {{c.x - r, c.y - r},
              {c.x + r, c.y - r},
              {c.x + r, c.y + 0.3 * r},
              {c.x, c.y + 1.15 * r},
              {c.x - r, c.y + 0.3 * r}};
  }
}

Path line(Point a, Point b, Tone tone, double width) {
  Path path;
  path.rings = {{a, b}};
  path.stroke = {.tone = tone, .width = width, .dash = {}};
  return path;
}

}  // namespace

void drawPerformer(Drawing& drawing, Point at, std::size_t i, const std::string& letter, double radius) {
  Path shape;
  shape.rings = {performerShape(i, at, radius * 0.9)};
  shape.closed = true;
  shape.fill = {performerTone(i)};
  drawing.add(shape);
  const double size = std::max(10.0, radius * 1.25);
  drawing.add(Text{.at = {at.x, at.y + size * 0.36},
                   .text = letter,
                   .size = size,
                   .bold = true,
                   .align = Align::centre,
                   .tone = Tone::onPerformer});
}

void drawCrew(Drawing& drawing, Point at, const std::string& label, bool walking, Tone tone) {
  Box slab{
      .topLeft = {at.x - 13, at.y - 9}, .width = 26, .height = 18, .radius = 6, .fill = {Tone::page}, .stroke = {}};
  slab.stroke = {.tone = tone, .width = 1.6, .dash = {}};
  if (walking) slab.stroke.dash = {3, 3};
  drawing.add(slab);
  drawing.add(Text{
      .at = {at.x, at.y + 4.3}, .text = label, .size = 12, .bold = true, .align = Align::centre, .tone = Tone::ink});
}

void drawBeatFlag(Drawing& drawing, Point foot, const std::string& number) {
  const double width = 10 + 7.0 * static_cast<double>(base::columns(number));
  drawing.add(line(foot, {foot.x, foot.y - 18}, Tone::ink, 1.25));
  drawing.add(Box{.topLeft = {foot.x, foot.y - 18},
                  .width = width,
                  .height = 14,
                  .fill = {Tone::page},
                  .stroke = {.tone = Tone::ink, .width = 1.25, .dash = {}}});
  drawing.add(Text{.at = {foot.x + width / 2, foot.y - 6.6},
                   .text = number,
                   .size = 12,
                   .bold = true,
                   .align = Align::centre,
                   .tone = Tone::ink});
}

void drawLozenge(Drawing& drawing, Point c, double r, snags::Severity severity) {
  const bool solid = severity == snags::Severity::stops;
  Path lozenge;
  lozenge.rings = {{{c.x, c.y - r}, {c.x + r, c.y}, {c.x, c.y + r}, {c.x - r, c.y}}};
  lozenge.closed = true;
  lozenge.fill = {solid ? Tone::ink : Tone::page};
  lozenge.stroke = {.tone = Tone::ink, .width = 1.6, .dash = {}};
  drawing.add(lozenge);
  const int bars = 4 - static_cast<int>(severity);
  for (int i = 0; i < bars; ++i) {
    const double y = c.y + (i - (bars - 1) / 2.0) * r * 0.36;
    const double half = (r - std::abs(y - c.y)) * 0.55;
    Path bar = line({c.x - half, y}, {c.x + half, y}, solid ? Tone::page : Tone::ink, r * 0.16);
    bar.stroke.cap = Cap::flat;
    drawing.add(bar);
  }
}

void drawChosen(Drawing& drawing, Point c, double half) {
  for (const double sx : {-1.0, 1.0})
    for (const double sy : {-1.0, 1.0}) {
      const Point corner{c.x + sx * half, c.y + sy * half};
      const double arm = half * 0.45;
      Path bracket;
      bracket.rings = {{{corner.x - sx * arm, corner.y}, corner, {corner.x, corner.y - sy * arm}}};
      bracket.stroke = {.tone = Tone::ink, .width = 3, .dash = {}, .cap = Cap::flat};
      drawing.add(bracket);
    }
}

void drawBlurDot(Drawing& drawing, Point c, double blur) {
  const double limit = 7;
  drawing.add(Circle{
      .centre = c, .radius = limit, .fill = {Tone::page}, .stroke = {.tone = Tone::ink, .width = 1.25, .dash = {}}});
  drawing.add(Circle{.centre = c, .radius = std::clamp(blur, 0.15, 1.4) * limit, .fill = {Tone::ink}, .stroke = {}});
}

void drawComb(Drawing& drawing, Point foot, double stops) {
  const long thirds = std::clamp(std::lround(std::abs(stops) * 3), 0L, 9L);
  const double up = stops >= 0 ? -1 : 1;
  drawing.add(line({foot.x - 7, foot.y}, {foot.x + 7, foot.y}, Tone::ink, 1.6));
  if (thirds == 0) return;
  drawing.add(line(foot, {foot.x, foot.y + up * 3.5 * double(thirds)}, Tone::ink, 1.6));
  for (long i = 1; i <= thirds; ++i) {
    const double y = foot.y + up * 3.5 * double(i);
    drawing.add(line({foot.x, y}, {foot.x + 5, y}, Tone::ink, 1.25));
  }
}

}  // namespace wend::sheets
