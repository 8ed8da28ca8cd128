/// The plan's lists: ordered entities shared between snapshots, found by id.
///
/// Ensures   (1) copying a table shares every entity: an edit of one entity copies one entity
///           (2) order is kept; ids are unique (checked)
/// Cost      copy O(n) pointers; find O(n) over n <= some hundred pointers; replace O(n)
/// Tests     tests/core/base/table_test.cpp
#pragma once

#include <cstddef>
#include <memory>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/check.h"

namespace wend::base {

/// T has a member `id` with `.text()`.
template <class T>
class Table {
 public:
  using Ref = std::shared_ptr<const T>;

  std::size_t size() const { return rows_.size(); }
  bool empty() const { return rows_.empty(); }
  const T& operator[](std::size_t i) const { return *rows_.at(i); }
  const Ref& ref(std::size_t i) const { return rows_.at(i); }

  /// The entity of that id, or null.
  const T* find(std::string_view id) const {
    for (const auto& row : rows_)
      if (row->id.text() == id) return row.get();
    return nullptr;
  }
  /// Its index, or size().
  std::size_t indexOf(std::string_view id) const {
    std::size_t i = 0;
    while (i < rows_.size() && rows_[i]->id.text() != id) ++i;
    return i;
  }

  void add(T entity) { insert(rows_.size(), std::move(entity)); }
  void insert(std::size_t at, T entity) {
    WEND_CHECK(at <= rows_.size() && !find(entity.id.text()));
    rows_.insert(rows_.begin() + static_cast<std::ptrdiff_t>(at), std::make_shared<const T>(std::move(entity)));
  }
  /// All of `entities` after the rows there are. Requires ids unique, which is checked. Cost O(n log n).
  void append(std::vector<T> entities) {
    std::set<std::string_view> ids;
    for (const auto& row : rows_) ids.insert(row->id.text());
    for (T& entity : entities) {
      rows_.push_back(std::make_shared<const T>(std::move(entity)));
      WEND_CHECK(ids.insert(rows_.back()->id.text()).second);
    }
  }
  void replace(std::size_t at, T entity) {
    const std::size_t other = indexOf(entity.id.text());
    WEND_CHECK(at < rows_.size() && (other == at || other == rows_.size()));
    rows_[at] = std::make_shared<const T>(std::move(entity));
  }
  void remove(std::size_t at) {
    WEND_CHECK(at < rows_.size());
    rows_.erase(rows_.begin() + static_cast<std::ptrdiff_t>(at));
  }
  /// The same entity at another index; the others close up.
  void move(std::size_t from, std::size_t to) {
    WEND_CHECK(from < rows_.size() && to < rows_.size());
    Ref row = rows_[from];
    remove(from);
    rows_.insert(rows_.begin() + static_cast<std::ptrdiff_t>(to), std::move(row));
  }

  /// Iterates over const T&.
  class Iterator {
   public:
    explicit Iterator(typename std::vector<Ref>::const_iterator at) : at_(at) {}
    const T& operator*() const { return **at_; }
    Iterator& operator++() { return ++at_, *this; }
    bool operator!=(const Iterator& other) const { return at_ != other.at_; }

   private:
    typename std::vector<Ref>::const_iterator at_;
  };
  Iterator begin() const { return Iterator(rows_.begin()); }
  Iterator end() const { return Iterator(rows_.end()); }

  /// Same entities in the same order, by identity first and value second.
  bool operator==(const Table& other) const {
    if (size() != other.size()) return false;
    for (std::size_t i = 0; i < size(); ++i)
      if (rows_[i] != other.rows_[i] && !(*rows_[i] == *other.rows_[i])) return false;
    return true;
  }

 private:
  std::vector<Ref> rows_;
};

}  // namespace wend::base
