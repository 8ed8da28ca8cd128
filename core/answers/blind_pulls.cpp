#include "core/answers/blind_pulls.h"

#include "core/answers/lens_work.h"
#include "core/answers/route_needs.h"
#include "core/geometry/spans.h"

namespace wend::answers {

namespace {

constexpr double kLook = 0.1;

/// Seconds of a span in which a member who is there does not see the subject.
double blindSeconds(const Take& take, std::size_t member, geometry::Span span) {
  const auto blind = [&](double t) {
    const CrewPose pose = take.people().crewAt(member, t, take.view().sensorAt(t));
    return pose.present && !seesSubject(take, member, pose.pos, t);
  };
  double seconds = 0;
  for (const auto& without : geometry::spansWhere(span, kLook, blind)) seconds += without.length();
  return seconds;
}

}  // namespace

std::vector<BlindPull> blindPulls(const Take& take, const std::vector<snags::Move>& moves) {
  std::vector<BlindPull> pulls;
  const plan::Plan& plan = take.plan();
  for (std::size_t i = 0; i < moves.size(); ++i) {
    const snags::Move& move = moves[i];
    if (move.axis != snags::Move::Axis::focus || move.cut()) continue;
    const std::string who = holderOf(plan, move.axis, move.from);
    if (!plan.crew.find(who)) continue;
    const std::size_t member = plan.crew.indexOf(who);
    const CrewPose pose = take.people().crewAt(member, move.from, take.view().sensorAt(move.from));
    if (!pose.present) continue;
    const double blind = blindSeconds(take, member, {move.from, move.until});
    if (blind > 0) pulls.push_back({i, who, pose.pos, blind});
  }
  return pulls;
}

}  // namespace wend::answers
