/// How long work is told to stop. Polled at loop heads; cancelled work publishes nothing.
#pragma once

#include <atomic>
#include <cstdint>
#include <stop_token>
#include <utility>

namespace wend::base {

class Cancel {
 public:
  /// Never fires.
  Cancel() = default;
  /// Fires when the token's source is asked to stop.
  explicit Cancel(std::stop_token token) : token_(std::move(token)) {}
  /// Fires at the k-th poll and ever after: how tests reach every poll. Requires k >= 1.
  static Cancel atPoll(std::int64_t k) {
    Cancel cancel;
    cancel.budget_ = k;
    return cancel;
  }
  Cancel(const Cancel& other) : token_(other.token_), budget_(other.budget_), polls_(other.polls_.load()) {}
  Cancel& operator=(const Cancel&) = delete;

  bool fired() const {
    const std::int64_t polls = polls_.fetch_add(1, std::memory_order_relaxed) + 1;
    return token_.stop_requested() || (budget_ > 0 && polls >= budget_);
  }
  std::int64_t polls() const { return polls_.load(std::memory_order_relaxed); }

 private:
  std::stop_token token_;
  std::int64_t budget_ = 0;
  mutable std::atomic<std::int64_t> polls_{0};
};

}  // namespace wend::base
