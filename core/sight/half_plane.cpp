#include "core/sight/half_plane.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/geometry/tolerance.h"

namespace wend::sight {

namespace {

constexpr double kFoot = 1e-9;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// The height above the pupil of the level face through which slopes enter the box: its top seen from above, its
/// bottom seen from below, 0 when the pupil is between the two.
double entryLevel(double eye, const Upright& box) {
  if (box.top < eye) return box.top - eye;
  if (box.bottom > eye) return box.bottom - eye;
  return 0;
}

/// Metres at which slope m enters the box, given that it meets it.
double entry(double near, double level, double m) {
  return level == 0 ? near : std::max(near, level / m);
}

bool widerThanSliver(Slopes s) {
  const double middle = (s.low + s.high) / 2;
  if (!std::isfinite(middle)) return s.low < s.high;  // up to the zenith or down to the nadir
  return s.high - s.low > geometry::kSliver * (1 + middle * middle);
}

/// Small sets of slopes live here without touching the heap; more than this along one ray spills over.
class SlopeSet {
 public:
  void add(Slopes s) {
    if (s.empty()) return;
    if (count_ < kept_.size()) {
      kept_[count_++] = {s.low, s.high};
    } else {
      more_.push_back({s.low, s.high});
    }
  }
  /// Calls visit(gap) for every gap of `within` that the set leaves free, in order, until one returns true.
  template <class Visit>
  bool eachGap(Slopes within, Visit visit) {
    std::span<Bounds> all(kept_.data(), count_);
    std::vector<Bounds> both;
    if (!more_.empty()) {
      both = more_;
      both.insert(both.end(), kept_.begin(), kept_.end());
      all = both;
    }
    std::sort(all.begin(), all.end(), [](const Bounds& a, const Bounds& b) { return a.low < b.low; });
    double reached = within.low;
    for (const Bounds& s : all) {
      if (s.low > reached && visit(Slopes{reached, std::min(s.low, within.high)})) return true;
      reached = std::max(reached, s.high);
      if (reached >= within.high) return false;
    }
    return reached < within.high && visit(Slopes{reached, within.high});
  }

 private:
  /// Slopes without initial values: most of the array is never used.
  struct Bounds {
    double low, high;
  };
  std::array<Bounds, 32> kept_;
  std::size_t count_ = 0;
  std::vector<Bounds> more_;
};

/// Where the block and the target overlap along the ray: the slopes of `all` that enter the block first.
void addEarlier(double eye, const Upright& block, const Upright& target, Slopes all, SlopeSet& set) {
  const double blockLevel = entryLevel(eye, block), targetLevel = entryLevel(eye, target);
  const double blockNear = std::max(block.near, kFoot), targetNear = std::max(target.near, kFoot);
  std::array<double, 4> cuts{all.low, targetLevel / blockNear, blockLevel / targetNear, all.high};
  for (double& cut : cuts) cut = std::clamp(cut, all.low, all.high);
  std::sort(cuts.begin(), cuts.end());
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    if (cuts[i] == cuts[i + 1]) continue;
    const double m = (cuts[i] + cuts[i + 1]) / 2;
    if (entry(block.near, blockLevel, m) <= entry(target.near, targetLevel, m)) set.add({cuts[i], cuts[i + 1]});
  }
}

void addHidden(double eye, const Upright& block, const Upright& target, Slopes within, SlopeSet& set) {
  if (block.near >= target.far) return;
  const Slopes all = meet(slopesOf(eye, block), within);
  if (all.empty()) return;
  if (block.far <= target.near) {
    set.add(all);
  } else {
    addEarlier(eye, block, target, all, set);
  }
}

}  // namespace

Slopes meet(Slopes a, Slopes b) {
  return {std::max(a.low, b.low), std::min(a.high, b.high)};
}

Slopes slopesOf(double eye, const Upright& box) {
  const double near = std::max(box.near, kFoot), far = std::max(box.far, kFoot);
  const double low = box.bottom - eye, high = box.top - eye;
  return {low < 0 ? low / near : low / far, high > 0 ? high / near : high / far};
}

Slopes widestFree(double eye, std::span<const Upright> blocks, const Upright& target, Slopes window) {
  const Slopes within = meet(slopesOf(eye, target), window);
  if (within.empty()) return {};
  SlopeSet set;
  for (const Upright& block : blocks) addHidden(eye, block, target, within, set);
  Slopes widest;
  set.eachGap(within, [&](Slopes gap) {
    if (widerThanSliver(gap) && gap.high - gap.low > widest.high - widest.low) widest = gap;
    return false;
  });
  return widest;
}

bool anyFree(double eye, std::span<const Upright> blocks, const Upright& target, Slopes window) {
  const Slopes within = meet(slopesOf(eye, target), window);
  if (within.empty()) return false;
  SlopeSet set;
  for (const Upright& block : blocks) addHidden(eye, block, target, within, set);
  return set.eachGap(within, widerThanSliver);
}

bool hidden(double eye, std::span<const Upright> blocks, double r, double z) {
  if (!(r > 0)) return false;
  const double m = (z - eye) / r;
  for (const Upright& block : blocks) {
    if (block.near >= r) continue;
    const Slopes s = slopesOf(eye, {block.near, std::min(block.far, r), block.bottom, block.top});
    if (m > s.low && m < s.high) return true;
  }
  return false;
}

namespace {

/// The distances at which a line from bottom to top crosses any slope of the open gap.
Span distancesMeeting(double eye, double bottom, double top, Slopes gap) {
  Span span{0, kInfinity};
  // (bottom - eye) / r < gap.high and (top - eye) / r > gap.low, each solved for r.
  const auto demand = [&span](double level, double m) {  // level < m r
    if (m > 0) {
      span.from = std::max(span.from, level / m);
    } else if (m < 0) {
      span.until = std::min(span.until, level / m);
    } else if (level >= 0) {
      span.until = -1;
    }
  };
  demand(bottom - eye, gap.high);
  demand(eye - top, -gap.low);
  return span;
}

void appendJoined(Span piece, std::vector<Span>& out, std::size_t first) {
  if (!(piece.until > piece.from)) return;
  if (out.size() > first && piece.from <= out.back().until) {
    out.back().until = std::max(out.back().until, piece.until);
  } else {
    out.push_back(piece);
  }
}

/// The slopes that reach a line above or below a box only through the inside of it, for a ray still inside the box.
Slopes throughInside(double eye, const Upright& box, Span line) {
  const double near = std::max(box.near, kFoot);
  if (line.from >= box.top) return box.top > eye ? Slopes{-kInfinity, (box.top - eye) / near} : Slopes{};
  return box.bottom < eye ? Slopes{(box.bottom - eye) / near, kInfinity} : Slopes{};
}

/// Takes the heights of a box out of a set of heights.
void takeOut(std::vector<Span>& heights, double bottom, double top) {
  const std::size_t count = heights.size();
  for (std::size_t i = 0; i < count; ++i) {
    const Span all = heights[i];
    heights[i].until = std::min(all.until, bottom);
    if (all.until > top) heights.push_back({std::max(all.from, top), all.until});
  }
  std::erase_if(heights, [](Span s) { return !(s.until > s.from); });
}

}  // namespace

void SeenDistances::append(double eye, std::span<Upright> blocks, double bottom, double top, Slopes window, Span range,
                           std::vector<Span>& out) {
  if (window.empty() || !(range.until > range.from)) return;
  std::sort(blocks.begin(), blocks.end(), [](const Upright& a, const Upright& b) { return a.near < b.near; });
  stops_.assign({range.from, range.until});
  for (const Upright& block : blocks) {
    for (const double r : {block.near, block.far})
      if (r > range.from && r < range.until) stops_.push_back(r);
  }
  std::sort(stops_.begin(), stops_.end());
  first_ = out.size();
  for (std::size_t i = 0; i + 1 < stops_.size(); ++i) {
    const Span stretch{stops_[i], stops_[i + 1]};
    if (!(stretch.length() > 0)) continue;
    heights_.assign({Span{bottom, top}});
    if (!appendStretch(eye, blocks, window, stretch, out)) return;
  }
}

/// Within a stretch no box begins or ends. What stands in a box the ray is inside of is hidden altogether; what stands
/// above it is hidden from every slope that had to rise through it, and likewise below. False once what was passed
/// leaves no slope open: nothing further on is seen.
bool SeenDistances::appendStretch(double eye, std::span<const Upright> blocks, Slopes window, Span stretch,
                                  std::vector<Span>& out) {
  SlopeSet passed;
  inside_.clear();
  for (const Upright& block : blocks) {
    if (block.near > stretch.from) break;
    if (block.far < stretch.until) {
      passed.add(slopesOf(eye, block));
    } else {
      takeOut(heights_, block.bottom, block.top);
      inside_.push_back(block);
    }
  }
  if (!passed.eachGap(window, widerThanSliver)) return false;
  pieces_.clear();
  for (const Span& line : heights_) {
    SlopeSet set = passed;
    for (const Upright& block : inside_) set.add(throughInside(eye, block, line));
    set.eachGap(window, [&](Slopes gap) {
      if (!widerThanSliver(gap)) return false;
      const Span span = distancesMeeting(eye, line.from, line.until, gap);
      pieces_.push_back({std::max(span.from, stretch.from), std::min(span.until, stretch.until)});
      return false;
    });
  }
  std::sort(pieces_.begin(), pieces_.end(), [](Span a, Span b) { return a.from < b.from; });
  for (const Span& piece : pieces_) appendJoined(piece, out, first_);
  return true;
}

}  // namespace wend::sight
