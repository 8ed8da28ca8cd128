// Tables of words, for a terminal and for a spreadsheet.
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/text_tables.h"

namespace wend::sheets {

namespace {

constexpr std::size_t kWidest = 100, kLeastCut = 8, kGap = 2;

enum class Kind { words, number, wrapped };

Kind kindOf(const std::string& header) {
  if (header.empty()) return Kind::words;
  return header.front() == '>' ? Kind::number : header.front() == '~' ? Kind::wrapped : Kind::words;
}

std::string shownHeader(const std::string& header) {
  return kindOf(header) == Kind::words ? header : header.substr(1);
}

/// Takes from the widest columns of words, the later of equal ones first, until a line fits or no word is left that
/// could be cut. Columns of numbers stay whole: a cut number is another number.
void narrow(const std::vector<std::string>& headers, std::vector<std::size_t>& widths) {
  std::size_t total = kGap * (widths.size() - 1);
  for (const std::size_t width : widths) total += width;
  for (; total > kWidest; --total) {
    std::size_t* widest = nullptr;
    for (std::size_t i = 0; i < widths.size(); ++i)
      if (kindOf(headers[i]) != Kind::number && widths[i] > kLeastCut && (!widest || widths[i] >= *widest))
        widest = &widths[i];
    if (!widest) return;
    --*widest;
  }
}

/// Bytes of the first `columns` code points.
std::size_t bytesOf(const std::string& word, std::size_t columns) {
  std::size_t end = 0;
  for (; columns > 0 && end < word.size(); --columns) {
    ++end;
    while (end < word.size() && (static_cast<unsigned char>(word[end]) & 0xC0) == 0x80) ++end;
  }
  return end;
}

std::string cutTo(const std::string& word, std::size_t width) {
  if (base::columns(word) <= width) return word;
  return word.substr(0, bytesOf(word, width - 1)) + "\u2026";
}

/// The lines of one row of cells.
std::vector<std::string> linesOf(const std::vector<std::vector<std::string>>& cells,
                                 const std::vector<std::string>& headers, const std::vector<std::size_t>& widths) {
  std::size_t high = 1;
  for (const auto& cell : cells) high = std::max(high, cell.size());
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < high; ++i) {
    std::string line;
    for (std::size_t column = 0; column < widths.size(); ++column) {
      const std::string word = i < cells[column].size() ? cells[column][i] : std::string();
      line += std::string(column == 0 ? 0 : kGap, ' ');
      line += kindOf(headers[column]) == Kind::number ? base::padLeft(word, widths[column])
                                                      : base::padRight(word, widths[column]);
    }
    lines.push_back(line.substr(0, line.find_last_not_of(' ') + 1));
  }
  return lines;
}

std::string csvCell(std::string cell) {
  const bool formula = !cell.empty() && std::string("=+-@").find(cell.front()) != std::string::npos;
  if (formula && !base::readNumber(cell)) cell.insert(0, "'");
  if (cell.find_first_of(",\"\r\n") == std::string::npos) return cell;
  std::string quoted = "\"";
  for (const char c : cell) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

}  // namespace

std::vector<std::string> wrapped(const std::string& text, std::size_t width) {
  std::vector<std::string> lines = {""};
  for (const auto& word : base::split(text, ' ')) {
    std::string& line = lines.back();
    if (line.empty())
      line = word;
    else if (base::columns(line) + 1 + base::columns(word) <= width)
      line += " " + word;
    else
      lines.push_back(word);
  }
  return lines;
}

std::string TextTable::cell(std::size_t row, std::size_t column) const {
  if (row == 0) return shownHeader(headers_[column]);
  const auto& cells = rows_[row - 1];
  return column < cells.size() ? cells[column].words : std::string();
}

std::string TextTable::text() const {
  std::vector<std::size_t> widths(headers_.size());
  for (std::size_t row = 0; row <= rows_.size(); ++row)
    for (std::size_t column = 0; column < widths.size(); ++column)
      widths[column] = std::max(widths[column], base::columns(cell(row, column)));
  narrow(headers_, widths);
  std::string all;
  for (std::size_t row = 0; row <= rows_.size(); ++row) {
    std::vector<std::vector<std::string>> cells;
    for (std::size_t column = 0; column < widths.size(); ++column) {
      const std::string word = cell(row, column);
      std::vector<std::string> lines = {word};
      if (kindOf(headers_[column]) == Kind::wrapped) lines = wrapped(word, widths[column]);
      for (auto& line : lines) line = cutTo(line, widths[column]);
      cells.push_back(std::move(lines));
    }
    for (const auto& line : linesOf(cells, headers_, widths)) all += line + "\n";
  }
  return all;
}

std::vector<std::vector<std::string>> TextTable::cells() const {
  std::vector<std::vector<std::string>> all;
  for (std::size_t row = 0; row <= rows_.size(); ++row) {
    all.emplace_back();
    for (std::size_t column = 0; column < headers_.size(); ++column) all.back().push_back(cell(row, column));
  }
  return all;
}

std::vector<std::vector<Figure>> TextTable::figures() const {
  std::vector<std::vector<Figure>> all;
  for (const auto& row : rows_) {
    all.emplace_back();
    for (const Cell& one : row) all.back().insert(all.back().end(), one.figures.begin(), one.figures.end());
  }
  return all;
}

std::string TextTable::csv() const {
  std::string all;
  for (std::size_t row = 0; row <= rows_.size(); ++row) {
    const std::size_t wide = row == 0 ? headers_.size() : rows_[row - 1].size();
    for (std::size_t column = 0; column < wide; ++column) all += (column == 0 ? "" : ",") + csvCell(cell(row, column));
    all += "\r\n";
  }
  return all;
}

}  // namespace wend::sheets
