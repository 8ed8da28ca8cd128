/// Collects what holds at sampled instants into spans, a list a key. Seconds.
#pragma once

#include <algorithm>
#include <map>
#include <vector>

#include "core/geometry/point.h"

namespace wend::answers {

/// `Entry` has a `span`. Hits of the same key go on where they are no more than two steps apart.
template <class Key, class Entry>
class SpanLog {
 public:
  explicit SpanLog(double step) : step_(step) {}

  /// The entry that now holds t, for the caller to note in it what it likes: the one that went on, or `fresh`.
  /// Requires  times of one key not falling.
  Entry& add(double t, const Key& key, const Entry& fresh) {
    auto& list = entries_[key];
    if (list.empty() || t - list.back().span.until > 2.1 * step_) {
      list.push_back(fresh);
      list.back().span.from = t;
    }
    list.back().span.until = t;
    return list.back();
  }

  /// By the start of their spans, then by key.
  std::vector<Entry> inOrder() const {
    std::vector<Entry> all;
    for (const auto& [key, list] : entries_) all.insert(all.end(), list.begin(), list.end());
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
    return all;
  }

 private:
  double step_;
  std::map<Key, std::vector<Entry>> entries_;
};

}  // namespace wend::answers
