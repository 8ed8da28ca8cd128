// Tables of words, for a terminal and for a spreadsheet.
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/text_tables.h"

namespace wend::sheets {

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
  std::string all;
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    std::string line;
    for (std::size_t column = 0; column < widths.size(); ++column) {
      const bool right = !headers[column].empty() && headers[column].front() == '>';
      const std::string word = cell(row, column);
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
