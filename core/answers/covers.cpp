// What hides changes of iris and zoom: the camera's own movement and people; openings and cues are in files of their
// own.
#include "core/answers/covers.h"

#include <algorithm>
#include <cmath>

#include "core/snags/stretch.h"

namespace wend::answers {

using namespace snags;
using pulls::CoverKind;
using pulls::CoverSpan;

namespace covers {

std::vector<CoverSpan> coverOver(CoverKind kind, const std::string& by, const std::vector<Instant>& samples,
                                 const std::vector<double>& values, double least) {
  std::vector<double> times;
  for (const Instant& instant : samples) times.push_back(instant.time);
  return pulls::coverWhere(kind, by, times, values, least, 0);
}

namespace {

void append(std::vector<CoverSpan>& covers, std::vector<CoverSpan> more) {
  covers.insert(covers.end(), more.begin(), more.end());
}

/// The share of the frame that a figure's box fills, 0 where nobody sees it.
double shareOf(const PerformerAt& at) {
  if (!at.present || at.inFrame == optics::Showing::out || at.inFrame == optics::Showing::hidden) return 0;
  const auto box = optics::cutToFrame({at.frameLeft, at.frameRight, at.frameBottom, at.frameTop});
  return box ? (box->right - box->left) * (box->top - box->bottom) / 4 : 0;
}

/// The middle of a figure in tangents from the lens' axis: a zoom alone leaves it where it is.
double middleOf(const Instant& instant, const PerformerAt& at) {
  return (at.frameLeft + at.frameRight) / 2 * instant.lens->half.h;
}

/// Widths of the frame as it is then a second at which a figure goes over the picture, by its neighbouring samples.
double crossingSpeed(const std::vector<Instant>& samples, std::size_t k, std::size_t who) {
  const std::size_t before = k == 0 ? 0 : k - 1, after = std::min(k + 1, samples.size() - 1);
  const PerformerAt &a = samples[before].performers[who], &b = samples[after].performers[who];
  const double seconds = samples[after].time - samples[before].time;
  const bool lens = samples[before].lens && samples[k].lens && samples[after].lens;
  if (!a.present || !b.present || seconds <= 0 || !lens) return 0;
  return std::abs(middleOf(samples[after], b) - middleOf(samples[before], a)) / (2 * samples[k].lens->half.h) / seconds;
}

}  // namespace

void addCameraMoves(const std::vector<Instant>& samples, std::vector<CoverSpan>& covers) {
  std::vector<double> speeds, turns, moves;
  for (const Instant& instant : samples) {
    speeds.push_back(instant.camera.speed);
    turns.push_back(std::hypot(instant.camera.panRate, instant.camera.tiltRate));
    moves.push_back(std::max(speeds.back() / pulls::kMovingFrameSpeed, turns.back() / pulls::kMovingFrameTurn));
  }
  // Of a moving frame there is no one figure: it moves by way or by turn.
  auto moving = coverOver(CoverKind::movingFrame, "", samples, moves, 1);
  for (auto& cover : moving) cover.strength = 0;
  append(covers, std::move(moving));
  append(covers, coverOver(CoverKind::travel, "", samples, speeds, pulls::kTravel));
  append(covers, coverOver(CoverKind::pan, "", samples, turns, pulls::kPan));
  append(covers, coverOver(CoverKind::fastPan, "", samples, turns, pulls::kFastPan));
  append(covers, coverOver(CoverKind::swish, "", samples, turns, pulls::kSwish));
}

void addCrossings(const Take& take, const std::vector<Instant>& samples, std::vector<CoverSpan>& covers) {
  const plan::Plan& plan = take.plan();
  for (std::size_t who = 0; who < plan.performers.size(); ++who) {
    std::vector<double> crossing, wiping;
    for (std::size_t k = 0; k < samples.size(); ++k) {
      const double share = shareOf(samples[k].performers[who]);
      wiping.push_back(share);
      crossing.push_back(share > 0 && crossingSpeed(samples, k, who) >= pulls::kCrossingSpeed ? share : 0);
    }
    const std::string name = nameOf(plan, plan.performers[who].id.text());
    append(covers, coverOver(CoverKind::crossing, name, samples, crossing, pulls::kCrossingShare));
    append(covers, coverOver(CoverKind::wipe, name, samples, wiping, pulls::kWipeShare));
  }
}

}  // namespace covers

std::vector<CoverSpan> coversOf(const Take& take, const std::vector<Instant>& samples) {
  std::vector<CoverSpan> all;
  if (!take.plan().lens || samples.empty()) return all;
  covers::addCameraMoves(samples, all);
  covers::addCrossings(take, samples, all);
  covers::addOpenings(take, samples, all);
  const double half = 0.5 / take.rate();
  for (auto& cover : all)
    cover.span = {std::max(cover.span.from - half, 0.0), std::min(cover.span.until + half, take.length())};
  covers::addCues(take, samples, all);
  std::stable_sort(all.begin(), all.end(),
                   [](const CoverSpan& a, const CoverSpan& b) { return a.span.from < b.span.from; });
  return all;
}

}  // namespace wend::answers
