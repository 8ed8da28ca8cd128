// The sheets put together and printed.
#include "core/sheets/dept_sheets.h"

#include "core/base/check.h"

namespace wend::sheets {

using answers::Answers;

namespace {

std::vector<SheetPart> nothingMore(const Answers&) {
  return {};
}

struct Department {
  const char* whom;
  DeptSheet (*sheet)(const Answers&);
  std::vector<SheetPart> (*more)(const Answers&) = nothingMore;  ///< tables that not every plan has
};

/// A new sheet gets a line here.
constexpr Department kDepartments[] = {
    {"focus", focusSheet},
    {"operator", operatorSheet},
    {"crew", crewPaper, lockUpParts},
    {"director", directorSheet, lockUpParts},
    {"light", lightSheet, lightTrapParts},
    {"sound", soundSheet, boomAndLinkParts},
    {"marks", marksSheet},
};

std::string unitsWords(const plan::Plan& plan) {
  const char* lengths = plan.display == plan::LengthUnit::feet ? "feet and inches" : "metres";
  return std::string(lengths) + ", seconds from the start, T-stops, degrees; places x, y in plan metres";
}

std::string revisionWords(const plan::Plan& plan) {
  return plan.revision.empty() ? "revision unknown" : "revision " + plan.revision;
}

}  // namespace

const std::vector<std::string>& departments() {
  static const std::vector<std::string> words = [] {
    std::vector<std::string> all;
    for (const auto& department : kDepartments) all.push_back(department.whom);
    return all;
  }();
  return words;
}

DeptSheet deptSheet(const Answers& answers, const std::string& whom) {
  const Department* found = nullptr;
  for (const auto& department : kDepartments)
    if (whom == department.whom) found = &department;
  WEND_CHECK(found);
  DeptSheet sheet = found->sheet(answers);
  for (auto& part : found->more(answers)) sheet.parts.push_back(std::move(part));
  return sheet;
}

std::string sheetText(const plan::Plan& plan, const DeptSheet& sheet) {
  std::string text = sheet.title + "\n" + plan.title + ", " + revisionWords(plan) + "\n" + unitsWords(plan) + "\n";
  for (const auto& part : sheet.parts)
    text += "\n" + part.heading + "\n" + (part.table.empty() ? std::string("none\n") : part.table.text());
  return text + "\n" + kCaution + "\n";
}

std::string sheetCsv(const plan::Plan& plan, const DeptSheet& sheet) {
  TextTable head({"sheet", sheet.title});
  head.add({"title", plan.title});
  head.add({"revision", plan.revision.empty() ? "unknown" : plan.revision});
  head.add({"units", unitsWords(plan)});
  std::string caution = kCaution;
  for (char& c : caution) c = c == '\n' ? ' ' : c;
  head.add({"caution", caution});
  std::string text = head.csv();
  for (const auto& part : sheet.parts) text += "\r\n" + TextTable({part.heading}).csv() + part.table.csv();
  return text;
}

}  // namespace wend::sheets
