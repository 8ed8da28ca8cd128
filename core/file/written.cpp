#include "core/file/written.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/file/json_document.h"

namespace wend::file {

namespace {

std::string escaped(char c) {
  switch (c) {
    case '"':
      return "\\\"";
    case '\\':
      return "\\\\";
    case '\n':
      return "\\n";
    case '\t':
      return "\\t";
    case '\r':
      return "\\r";
    default:
      break;
  }
  constexpr std::string_view kHex = "0123456789abcdef";
  const auto code = static_cast<unsigned char>(c);
  if (code >= 0x20) return std::string(1, c);
  return std::string("\\u00") + kHex[code >> 4] + kHex[code & 15];
}

}  // namespace

std::string jsonText(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) out += escaped(c);
  return out + "\"";
}

Written Written::raw(std::string json) {
  Written written;
  written.scalar_ = std::move(json);
  return written;
}
Written Written::number(double value) {
  return raw(base::shortest(value));
}
Written Written::text(std::string_view value) {
  return raw(jsonText(value));
}
Written Written::flag(bool value) {
  return raw(value ? "true" : "false");
}
Written Written::object() {
  Written written;
  written.kind_ = Kind::object;
  return written;
}
Written Written::list(bool lines) {
  Written written;
  written.kind_ = Kind::list;
  written.lines_ = lines;
  return written;
}
Written Written::point(plan::Point value) {
  return raw("[" + base::shortest(value.x) + ", " + base::shortest(value.y) + "]");
}
Written Written::points(const std::vector<plan::Point>& values) {
  Written written = list();
  for (const plan::Point& value : values) written.add(point(value));
  return written;
}

void Written::add(std::string_view key, Written value) {
  keys_.emplace_back(key);
  children_.push_back(std::move(value));
}
void Written::add(Written item) {
  children_.push_back(std::move(item));
}

bool Written::tall() const {
  if (lines_) return !children_.empty();
  return kind_ == Kind::object &&
         std::any_of(children_.begin(), children_.end(), [](const auto& c) { return c.tall(); });
}

void Written::print(std::string& out, std::size_t indent, bool high) const {
  if (kind_ == Kind::scalar) {
    out += scalar_;
    return;
  }

  out += kind_ == Kind::object ? '{' : '[';
  for (std::size_t i = 0; i < children_.size(); ++i) {
    if (i > 0) out += high ? "," : ", ";
    if (high) out += "\n" + std::string(indent + 2, ' ');
    if (kind_ == Kind::object) out += jsonText(keys_[i]) + ": ";
    children_[i].print(out, indent + 2, children_[i].tall());
  }
  if (high) out += "\n" + std::string(indent, ' ');
  out += kind_ == Kind::object ? '}' : ']';
}

std::string Written::document() const {
  std::string out;
  print(out, 0, true);
  return out + "\n";
}

void addExtras(Written& object, const plan::Extras& extras, std::string_view prefix) {
  for (const auto& extra : extras) {
    if (!extra.key.starts_with(prefix)) continue;
    const std::string_view step = std::string_view(extra.key).substr(prefix.size());
    if (step.find('/') == std::string_view::npos) object.add(keyOfStep(step), Written::raw(extra.text));
  }
}

}  // namespace wend::file
