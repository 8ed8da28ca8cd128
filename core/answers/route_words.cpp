#include "core/answers/route_words.h"

#include <cmath>

#include "core/base/text.h"
#include "core/geometry/polygon.h"

namespace wend::answers {

using base::fixed;

namespace {

std::string placeWords(geometry::Point p) {
  return fixed(p.x, 2) + ", " + fixed(p.y, 2);
}

/// Seconds to a tenth, no fewer than these.
std::string enough(double seconds) {
  return fixed(std::ceil(seconds * 10 - 1e-6) / 10, 1);
}

std::string endWords(const crew::Stuck& stuck) {
  if (stuck.where.empty()) return "nowhere to start from";
  if (stuck.until <= 0) return "nobody unseen gets past the start, wherever they begin";
  const std::string past = "nobody unseen gets past " + fixed(stuck.until, 1) + " s";
  if (stuck.where.size() == 1) return past + ", at " + placeWords(stuck.where.front());
  const geometry::Extent last = geometry::extentOf(stuck.where);
  return past + ", by when all who got so far are between " + placeWords(last.low) + " and " + placeWords(last.high);
}

std::string exposureWords(const crew::Exposure& exposure) {
  std::string text =
      fixed(exposure.span.from, 1) + "\u2013" + fixed(exposure.span.until, 1) + " s from " + placeWords(exposure.at);
  std::vector<std::string> cures;
  if (exposure.laterBy) cures.push_back("began " + enough(*exposure.laterBy) + " s later");
  if (exposure.earlierBy) cures.push_back("ended " + enough(*exposure.earlierBy) + " s earlier");
  return cures.empty() ? text : text + " (clear if the sight " + joined(cures, " or ") + ")";
}

std::string leastWords(const crew::Stuck& stuck) {
  if (!stuck.least) return "even seen there is no way: what stands there, closed ground and needs leave none";
  std::vector<std::string> spans;
  for (const auto& exposure : stuck.exposures) spans.push_back(exposureWords(exposure));
  return "at best seen, or nearly, for " + fixed(stuck.least->seconds, 1) + " s: " + joined(spans, "; ");
}

}  // namespace

std::string stuckWords(const crew::Stuck& stuck) {
  return endWords(stuck) + ". " + leastWords(stuck);
}

std::vector<Freeing> freeingsOf(const crew::Stuck& stuck, const std::vector<std::string>& needs) {
  using Kind = Freeing::Kind;
  std::vector<Freeing> frees;
  for (const std::size_t need : stuck.needs) frees.push_back({Kind::need, {}, "not " + needs[need]});
  if (stuck.speed) frees.push_back({Kind::speed, stuck.speed, "walking up to " + fixed(*stuck.speed, 2) + " m/s"});
  if (stuck.early) frees.push_back({Kind::early, stuck.early, enough(*stuck.early) + " s less before sight"});
  if (stuck.late) frees.push_back({Kind::late, stuck.late, enough(*stuck.late) + " s less after sight"});
  if (stuck.anyEnd) frees.push_back({Kind::anyEnd, {}, "ending anywhere"});
  if (stuck.anyStand) frees.push_back({Kind::anyStand, {}, "standing or walking outside every room"});
  return frees;
}

std::string joined(const std::vector<std::string>& parts, const std::string& between) {
  std::string text;
  for (const auto& part : parts) text += (text.empty() ? "" : between) + part;
  return text;
}

}  // namespace wend::answers
