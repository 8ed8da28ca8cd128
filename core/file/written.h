/// JSON on its way out: a tree that knows how it is laid out.
///
/// Ensures   (1) a list marked as lines has one item a line, an object that holds such a list one key a line; all the
///           rest stays on one line, so that an edit of one mark changes one line
///           (2) the same tree gives the same bytes, whatever the locale
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/plan/plan.h"

namespace wend::file {

class Written {
 public:
  /// JSON text taken as it is.
  static Written raw(std::string json);
  static Written number(double value);
  static Written text(std::string_view value);
  static Written flag(bool value);
  static Written object();
  /// With `lines`, one item a line.
  static Written list(bool lines = false);
  static Written point(plan::Point value);
  static Written points(const std::vector<plan::Point>& values);

  void add(std::string_view key, Written value);
  void add(Written item);
  bool empty() const { return children_.empty(); }
  bool isObject() const { return kind_ == Kind::object; }

  /// The whole text, one key of its own a line, a newline at its end.
  std::string document() const;

 private:
  enum class Kind { scalar, object, list };
  bool tall() const;
  void print(std::string& out, std::size_t indent, bool high) const;
  Kind kind_ = Kind::scalar;
  bool lines_ = false;
  std::string scalar_;
  std::vector<std::string> keys_;
  std::vector<Written> children_;
};

/// `text` between quotation marks, escaped where JSON asks for it. Requires UTF-8.
std::string jsonText(std::string_view text);

/// Adds the extras that lie directly under `prefix` to an object.
void addExtras(Written& object, const plan::Extras& extras, std::string_view prefix);

}  // namespace wend::file
