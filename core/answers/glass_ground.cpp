#include "core/answers/glass_ground.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <utility>

#include "core/answers/glass_look.h"
#include "core/answers/glass_reach.h"
#include "core/answers/span_log.h"
#include "core/base/team.h"

namespace wend::answers {

using geometry::Span;

namespace {

/// The answer is the same on any number.
constexpr std::size_t kThreads = 2;
/// Cells that one thread asks at a stretch.
constexpr std::size_t kStretch = 128;
constexpr int kNone = -1;

/// What decides whom glass shows at an instant. Between two changes of the set all instants are alike.
struct LookState {
  sight::Eye eye;
  std::vector<sight::Mirror> faces;
  std::size_t changesBefore = 0, changesHere = 0;
  bool operator==(const LookState&) const = default;
};

/// Walls commonly stand on the datum: feet on lower ground show below them, and only those.
bool standsLow(const sight::Body& body) {
  return body.floor < 0;
}

/// Of the bodies that stand low, or of those that do not.
sight::Heights heightsOf(const std::vector<sight::Body>& bodies, bool low) {
  sight::Heights heights{0, 0};
  for (const sight::Body& body : bodies)
    if (standsLow(body) == low) heights = {std::min(heights.bottom, body.floor), std::max(heights.top, body.top)};
  return heights;
}

class GroundLook {
 public:
  GroundLook(const Take& take, const GlassQuestion& question, std::span<const GlassAt> known)
      : take_(take), known_(known), changes_(take.scene().changes()) {
    ground_.grid = groundGrid(take);
    const double radius = take.plan().sightRules.radius;
    for (std::size_t cell = 0; cell < ground_.grid.cells(); ++cell) {
      if (!question.wanted.empty() && question.wanted[cell] == 0) continue;
      const Point centre = ground_.grid.centre(cell);
      const double floor = take.people().floorAt(centre);
      cells_.push_back(cell);
      bodies_.push_back({centre, radius, floor, floor + question.height});
    }
    for (const bool low : {false, true}) reach_.emplace_back(ground_.grid, radius, heightsOf(bodies_, low));
    shown_.assign(cells_.size(), kNone);
    logs_.assign(cells_.size(), Log(kGlassStep));
  }

  /// False when cancelled.
  bool lookAt(double t, const base::Cancel& cancel) {
    if (cancel.fired()) return false;
    const auto eye = take_.eyeAt(t, take_.plan().sightRules.margin);
    if (!eye) return true;
    const std::vector<TurnedGlass> glass = glassAt(t, *eye);
    if (glass.empty()) return true;
    LookState state = stateAt(t, *eye, glass);
    if (take_.scene().mirrorsMove() || !last_ || *last_ != state) {
      last_.reset();
      for (GlassReach& reach : reach_) reach.look(take_.scene().at(t), *eye, glass);
      if (!ask(GlassLook(take_, glass, *eye, t), placesOf(glass), cancel)) return false;
      last_ = std::move(state);
    }
    for (std::size_t i = 0; i < cells_.size(); ++i)
      if (shown_[i] != kNone) {
        const auto pane = static_cast<std::size_t>(shown_[i]);
        logs_[i].add(t, pane, {cells_[i], pane, {}});
      }
    return true;
  }

  GlassGround found() && {
    for (const Log& log : logs_)
      for (const auto& showing : log.inOrder()) ground_.showings.push_back(showing);
    return std::move(ground_);
  }

 private:
  using Log = SpanLog<std::size_t, GlassGround::Showing>;

  std::vector<TurnedGlass> glassAt(double t, const sight::Eye& eye) const {
    const auto found = foundAt(known_, t);
    return found.empty() ? turnedGlass(take_, take_.scene().at(t), eye, t) : found.front().glass;
  }

  LookState stateAt(double t, const sight::Eye& eye, const std::vector<TurnedGlass>& glass) const {
    LookState state{eye, {}, 0, 0};
    for (const TurnedGlass& part : glass) state.faces.push_back(part.face);
    const auto here = std::ranges::equal_range(changes_, t);
    state.changesBefore = static_cast<std::size_t>(here.begin() - changes_.begin());
    state.changesHere = here.size();
    return state;
  }

  /// The place of each part's pane among the panes.
  std::vector<int> placesOf(const std::vector<TurnedGlass>& glass) {
    std::vector<int> places;
    for (const TurnedGlass& part : glass) {
      auto& panes = ground_.panes;
      auto pane = std::ranges::find(panes, part.pane);
      if (pane == panes.end()) pane = panes.insert(pane, part.pane);
      places.push_back(static_cast<int>(pane - panes.begin()));
    }
    return places;
  }

  bool ask(const GlassLook& look, const std::vector<int>& paneOf, const base::Cancel& cancel) {
    std::atomic<bool> cancelled = false;
    team_.each((cells_.size() + kStretch - 1) / kStretch, [&](std::size_t stretch) {
      if (cancel.fired()) cancelled = true;
      if (cancelled) return;
      const std::size_t until = std::min(cells_.size(), (stretch + 1) * kStretch);
      for (std::size_t i = stretch * kStretch; i < until; ++i) {
        const bool reached = reach_[standsLow(bodies_[i]) ? 1 : 0].cells().at(cells_[i]);
        const auto part = reached ? look.showing(bodies_[i]) : std::nullopt;
        shown_[i] = part ? paneOf[*part] : kNone;
      }
    });
    return !cancelled;
  }

  const Take& take_;
  std::span<const GlassAt> known_;
  std::vector<double> changes_;
  GlassGround ground_;
  std::vector<std::size_t> cells_;   ///< those asked
  std::vector<sight::Body> bodies_;  ///< one on each of them
  std::vector<GlassReach> reach_;    ///< for who stands on the datum or higher, and for the others
  std::vector<int> shown_;           ///< the pane that shows each at the last look
  std::vector<Log> logs_;
  std::optional<LookState> last_;
  base::Team team_{kThreads};
};

}  // namespace

std::optional<GlassGround> glassGroundOf(const Take& take, const GlassQuestion& question, const base::Cancel& cancel,
                                         std::span<const GlassAt> known) {
  GroundLook look(take, question, known);
  const plan::SightRules& rules = take.plan().sightRules;
  const Span span{std::max(0.0, question.span.from - rules.late),
                  std::min(take.length(), question.span.until + rules.early)};
  if (span.until < span.from) return std::move(look).found();
  // Looks are counted as the rule counts them: the last one is the last before the take's end.
  const int last = static_cast<int>(take.length() / kGlassStep);
  const int from = static_cast<int>(std::ceil(span.from / kGlassStep - 1e-9));
  const int until = std::min(last, static_cast<int>(std::floor(span.until / kGlassStep + 1e-9)));
  for (int i = from; i <= until; ++i)
    if (!look.lookAt(i * kGlassStep, cancel)) return std::nullopt;
  return std::move(look).found();
}

std::vector<std::uint8_t> GlassGround::cellsDuring(Span span) const {
  std::vector<std::uint8_t> cells(grid.cells());
  for (const Showing& showing : showings)
    if (showing.span.from <= span.until && showing.span.until >= span.from) cells[showing.cell] = 1;
  return cells;
}

namespace {

/// What one cell leaves to its neighbour at the next look goes on, as SpanLog has it for one cell.
geometry::Spans joined(const geometry::Spans& spans) {
  geometry::Spans all;
  for (const Span& span : geometry::tidy(spans))
    if (!all.empty() && span.from - all.back().until <= 2.1 * kGlassStep)
      all.back().until = span.until;
    else
      all.push_back(span);
  return all;
}

}  // namespace

std::vector<GlassGround::OfPane> GlassGround::byPane() const {
  std::vector<OfPane> all;
  std::vector<std::size_t> lastCell(panes.size(), grid.cells());
  for (const std::string& pane : panes) all.push_back({pane, {}, 0});
  for (const Showing& showing : showings) {
    OfPane& of = all[showing.pane];
    of.spans.push_back(showing.span);
    if (std::exchange(lastCell[showing.pane], showing.cell) != showing.cell) ++of.cells;
  }
  std::erase_if(all, [](const OfPane& of) { return of.cells == 0; });
  for (OfPane& of : all) of.spans = joined(of.spans);
  return all;
}

}  // namespace wend::answers
