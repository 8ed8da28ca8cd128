// Tables of words, for a terminal and for a spreadsheet.
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/text_tables.h"

namespace wend::sheets {

namespace {

constexpr std::size_t kWidest = 100, kLeastCut = 8, kGap = 2;

/// Takes from the widest columns of words, the later of equal ones first, until a line fits or no word is left that
/// could be cut. Columns of numbers stay whole: a cut number is another number.
void narrow(const std::vector<std::string>& headers, std::vector<std::size_t>& widths) {
  std::size_t total = kGap * (widths.size() - 1);
  for (const std::size_t width : widths) total += width;
  for (; total > kWidest; --total) {
    std::size_t* widest = nullptr;
    for (std::size_t i = 0; i < widths.size(); ++i) {
      const bool words = headers[i].empty() || headers[i].front() != '>';
      if (words && widths[i] > kLeastCut && (!widest || widths[i] >= *widest)) widest = &widths[i];
    }
    if (!widest) return;
    --*widest;
  }
}

std::string cutTo(const std::string& word, std::size_t width) {
  if (base::columns(word) <= width) return word;
  std::size_t end = 0;
  for (std::size_t kept = 0; kept + 1 < width; ++kept) do
      ++end;
    while (end < word.size() && (static_cast<unsigned char>(word[end]) & 0xC0) == 0x80);
  return word.substr(0, end) + "\u2026";
}

}  // namespace

std::string TextTable::text() const {
  const auto headers = rows_.front();
  std::vector<std::size_t> widths(headers.size());
  const auto cell = [&](std::size_t row, std::size_t column) {
    std::string word = column < rows_[row].size() ? rows_[row][column] : std::string();
    if (row == 0 && !word.empty() && word.front() == '>') word.erase(0, 1);
    return word;
  };
  for (std::size_t row = 0; row < rows_.size(); ++row)
    for (std::size_t column = 0; column < widths.size(); ++column)
      widths[column] = std::max(widths[column], base::columns(cell(row, column)));
  narrow(headers, widths);
  std::string all;
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    std::string line;
    for (std::size_t column = 0; column < widths.size(); ++column) {
      const bool right = !headers[column].empty() && headers[column].front() == '>';
      const std::string word = cutTo(cell(row, column), widths[column]);
      line += (column == 0 ? "" : "  ");
      line += right ? base::padLeft(word, widths[column]) : base::padRight(word, widths[column]);
    }
    all += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
  }
  return all;
}

namespace {

std::string csvCell(std::string cell) {
  const bool formula = !cell.empty() && std::string("=+-@").find(cell.front()) != std::string::npos;
  if (formula && !base::readNumber(cell)) cell.insert(0, "'");
  if (cell.find_first_of(",\"\r\n") == std::string::npos) return cell;
  std::string quoted = "\"";
  for (const char c : cell) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

}  // namespace

std::string TextTable::csv() const {
  std::string all;
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    for (std::size_t column = 0; column < rows_[row].size(); ++column) {
      std::string word = rows_[row][column];
      if (row == 0 && !word.empty() && word.front() == '>') word.erase(0, 1);
      all += (column == 0 ? "" : ",") + csvCell(word);
    }
    all += "\r\n";
  }
  return all;
}

}  // namespace wend::sheets
