/// The parts of problemsOf, one a file. Private to core/plan.
#pragma once

#include "core/plan/invariants.h"

namespace wend::plan {

/// Says what need not be looked at again: what `before` already holds, unless something everything hangs on changed.
class Fresh {
 public:
  /// Everything is fresh.
  Fresh() = default;
  /// Only what `before` does not share is; `anchors` says that beats, lengths, ids or shelters are not what they were.
  Fresh(const Plan& before, bool anchors) : before_(anchors ? nullptr : &before) {}

  template <class T>
  bool operator()(base::Table<T> Plan::*table, const base::Table<T>& rows, std::size_t i) const {
    return before_ == nullptr || !holds(before_->*table, rows, i);
  }
  template <class T>
  bool operator()(base::Table<T> Set::*table, const base::Table<T>& rows, std::size_t i) const {
    return before_ == nullptr || !holds(before_->set.*table, rows, i);
  }

 private:
  template <class T>
  static bool holds(const base::Table<T>& old, const base::Table<T>& rows, std::size_t i) {
    if (i < old.size() && old.ref(i) == rows.ref(i)) return true;
    for (std::size_t k = 0; k < old.size(); ++k)
      if (old.ref(k) == rows.ref(i)) return true;
    return false;
  }
  const Plan* before_ = nullptr;
};

void addIdProblems(const Plan& plan, base::Problems& problems);
/// References first: the others read times through beats that must exist.
void addReferenceProblems(const Plan& plan, const Fresh& fresh, base::Problems& problems);
void addTimeProblems(const Plan& plan, const Fresh& fresh, base::Problems& problems);
void addSetProblems(const Plan& plan, const Fresh& fresh, base::Problems& problems);
/// Lens, poles and links.
void addEquipmentProblems(const Plan& plan, const Fresh& fresh, base::Problems& problems);

}  // namespace wend::plan
