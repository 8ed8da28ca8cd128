#include "core/exchange/ies_reader.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "core/base/text.h"
#include "core/exchange/ies_scan.h"

namespace wend::exchange {
namespace {

using base::Problem;

constexpr double kFoot = 0.3048;
constexpr const char* kExportAgain = "export the file again from where it came";

std::string lineName(int line) {
  return "line " + std::to_string(line);
}

std::string upper(std::string_view text) {
  std::string result(base::trimmed(text));
  for (char& c : result)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return result;
}

/// What the first line says; nothing for one that is a label already, as all are in 1986.
std::optional<IesEdition> editionOf(const std::string& firstLine) {
  if (firstLine.starts_with("IESNA91") || firstLine.starts_with("IESNA:LM-63-1991")) return IesEdition::of1991;
  if (firstLine.starts_with("IESNA:LM-63-1995")) return IesEdition::of1995;
  if (firstLine.starts_with("IESNA:LM-63-2002")) return IesEdition::of2002;
  if (firstLine.starts_with("IES:LM-63-2019")) return IesEdition::of2019;
  if (firstLine.starts_with("IESNA:LM-63-1986")) return IesEdition::of1986;
  return std::nullopt;
}

bool countsBallastLampFactor(IesEdition edition) {
  return edition == IesEdition::of1986 || edition == IesEdition::of1991;
}

/// Ten numbers on the lamp and three on what drives it, in the order of the file.
enum Field {
  lamps,
  lumens,
  multiplier,
  verticals,
  horizontals,
  type,
  units,
  width,
  length,
  height,
  ballast,
  second,
  watts
};
constexpr std::array<const char*, 13> kFieldNames = {"the number of lamps",
                                                     "the lumens of a lamp",
                                                     "the candela multiplier",
                                                     "the number of vertical angles",
                                                     "the number of horizontal angles",
                                                     "the photometric type",
                                                     "the type of units",
                                                     "the opening's width",
                                                     "the opening's length",
                                                     "the opening's height",
                                                     "the ballast factor",
                                                     "the ballast-lamp factor",
                                                     "the input watts"};

struct Number {
  double value = 0;
  int line = 1;
};

class Reader {
 public:
  explicit Reader(std::string_view bytes) : scan_(bytes) {}

  base::Result<IesFile> read() {
    if (!readLabels() || !readTilt() || !readFields() || !readTable()) return problems_;
    return made();
  }

 private:
  bool refuse(std::string code, int line, std::string found, std::string expected, std::string remedy) {
    problems_.push_back({std::move(code), lineName(line), std::move(found), std::move(expected), std::move(remedy)});
    return false;
  }
  void note(std::string code, int line, std::string found, std::string expected, std::string remedy) {
    notes_.push_back({std::move(code), lineName(line), std::move(found), std::move(expected), std::move(remedy)});
  }

  /// `what` names it where it is missing or no number: a function, since a table has a million of them.
  template <class Name>
  std::optional<Number> number(const Name& what) {
    const auto word = scan_.word();
    if (!word) {
      refuse("ies-short", scan_.lineNumber(), "the end of the file", what(), kExportAgain);
      return std::nullopt;
    }
    const auto value = base::readNumber(word->text);
    if (!value) {
      refuse("ies-number", word->line, "\"" + shownText(word->text) + "\"", what() + ", a number", kExportAgain);
      return std::nullopt;
    }
    return Number{*value, word->line};
  }
  std::optional<Number> number(const char* what) {
    return number([what] { return std::string(what); });
  }

  /// How many there are, as an integer however it is written. Nothing, and a problem, outside `least` to `most`.
  std::optional<std::size_t> countIn(Number number, const std::string& what, std::size_t least, std::size_t most) {
    if (number.value == std::floor(number.value) && number.value >= double(least) && number.value <= double(most))
      return static_cast<std::size_t>(number.value);
    refuse("ies-count", number.line, base::shortest(number.value),
           what + ", a whole number from " + std::to_string(least) + " to " + std::to_string(most), kExportAgain);
    return std::nullopt;
  }

  /// So many numbers; `line` becomes that of the first.
  std::optional<std::vector<double>> numbers(std::size_t count, const std::string& what, int& line) {
    std::vector<double> values;
    for (std::size_t i = 0; i < count; ++i) {
      const auto next = number([&] { return what + " " + std::to_string(i + 1) + " of " + std::to_string(count); });
      if (!next) return std::nullopt;
      if (i == 0) line = next->line;
      values.push_back(next->value);
    }
    return values;
  }

  void addLabel(std::string_view line) {
    const std::string_view text = base::trimmed(line);
    if (text.empty()) return;
    const std::size_t close = text.front() == '[' ? text.find(']') : std::string_view::npos;
    if (close == std::string_view::npos) {
      labels_.push_back({"", shownText(text, 256)});
      return;
    }
    const std::string keyword = shownText(text.substr(1, close - 1));
    const std::string value = shownText(base::trimmed(text.substr(close + 1)), 256);
    if (keyword == "MORE" && !labels_.empty())
      labels_.back().text += "\n" + value;
    else
      labels_.push_back({keyword, value});
  }

  void readEdition(const IesScan::Piece& first) {
    const std::string line = upper(first.text);
    const auto known = editionOf(line);
    if (known) {
      edition_ = *known;
    } else if (line.starts_with("IESNA:") || line.starts_with("IES:")) {
      edition_ = IesEdition::of2002;
      note("ies-edition", first.line, "\"" + shownText(first.text) + "\"", "an edition from 1986 to 2019",
           "read as one of 2002; compare a few candela with the data sheet");
    } else {
      addLabel(first.text);
    }
  }

  /// All up to the line that says where the tilt factors are.
  bool readLabels() {
    bool first = true;
    while (const auto line = scan_.line()) {
      const std::string text = upper(line->text);
      const std::size_t equals = text.find('=');
      if (text.starts_with("TILT") && equals != std::string::npos) {
        tiltWord_ = upper(std::string_view(text).substr(equals + 1));
        tiltLine_ = line->line;
        return true;
      }
      if (first)
        readEdition(*line);
      else
        addLabel(line->text);
      first = false;
    }
    return refuse("ies-no-tilt", scan_.lineNumber(), "the end of the file",
                  "a line that starts with TILT=", "this is no photometric file of IES LM-63; choose another");
  }

  bool readTilt() {
    if (tiltWord_ == "NONE") return true;
    if (tiltWord_ == "INCLUDE") return readTiltFactors();
    if (tiltWord_.empty())
      return refuse("ies-tilt", tiltLine_, "TILT= and nothing", "TILT=NONE or TILT=INCLUDE", kExportAgain);
    return refuse("ies-tilt-file", tiltLine_, "tilt factors in another file, " + shownText(tiltWord_),
                  "TILT=NONE or TILT=INCLUDE",
                  "put the factors into this file, or write TILT=NONE if the lamp does not mind being tilted");
  }

  bool readTiltFactors() {
    const auto geometry = number("how the lamp lies in the luminaire, 1, 2 or 3");
    if (!geometry || !countIn(*geometry, "how the lamp lies in the luminaire", 1, 3)) return false;
    const auto written = number("the number of tilt angles");
    if (!written) return false;
    const auto count = countIn(*written, "the number of tilt angles", 1, kMostIesAngles);
    if (!count) return false;
    int line = 1, factorLine = 1;
    const auto angles = numbers(*count, "tilt angle", line);
    if (!angles) return false;
    const auto factors = numbers(*count, "tilt factor", factorLine);
    if (!factors) return false;
    return checkedTilt(*angles, line, *factors, factorLine);
  }

  bool checkedTilt(const std::vector<double>& angles, int line, const std::vector<double>& factors, int factorLine) {
    for (std::size_t i = 0; i < angles.size(); ++i) {
      if (angles[i] < 0 || angles[i] > 180 || (i > 0 && angles[i] <= angles[i - 1]))
        return refuse("ies-tilt", line, "tilt angle " + base::shortest(angles[i]), "increasing angles from 0 to 180",
                      kExportAgain);
      if (factors[i] < 0)
        return refuse("ies-tilt", factorLine, "tilt factor " + base::shortest(factors[i]), "0 or more", kExportAgain);
      tilt_.push_back({angles[i], factors[i]});
    }
    return true;
  }

  bool readFields() {
    for (std::size_t i = 0; i < fields_.size(); ++i) {
      const auto next = number(kFieldNames[i]);
      if (!next) return false;
      fields_[i] = *next;
    }
    checkFactors();
    checkKinds();
    const auto v = countIn(fields_[verticals], kFieldNames[verticals], 2, kMostIesAngles);
    const auto h = countIn(fields_[horizontals], kFieldNames[horizontals], 1, kMostIesAngles);
    if (v) verticalCount_ = *v;
    if (h) horizontalCount_ = *h;
    return problems_.empty();
  }

  void checkFactors() {
    for (const Field field : {multiplier, ballast, second}) {
      if (field == second && !countsBallastLampFactor(edition_)) continue;
      if (!(fields_[field].value > 0))
        refuse("ies-factor", fields_[field].line, base::shortest(fields_[field].value),
               std::string(kFieldNames[field]) + ", more than 0", kExportAgain);
    }
  }

  void checkKinds() {
    const double kind = fields_[type].value;
    if (kind != 1 && kind != 2 && kind != 3)
      refuse("ies-type", fields_[type].line, "photometric type " + base::shortest(kind),
             "1, 2 or 3: photometry of type C, B or A", kExportAgain);
    if (fields_[units].value != 1 && fields_[units].value != 2)
      refuse("ies-units", fields_[units].line, base::shortest(fields_[units].value), "1 for feet or 2 for metres",
             kExportAgain);
  }

  light::PhotometryType kind() const {
    return fields_[type].value == 1   ? light::PhotometryType::c
           : fields_[type].value == 2 ? light::PhotometryType::b
                                      : light::PhotometryType::a;
  }

  bool readTable() {
    auto v = numbers(verticalCount_, "vertical angle", verticalLine_);
    if (!v) return false;
    auto h = numbers(horizontalCount_, "horizontal angle", horizontalLine_);
    if (!h) return false;
    vertical_ = std::move(*v);
    horizontal_ = std::move(*h);
    const double scale = fields_[multiplier].value * fields_[ballast].value *
                         (countsBallastLampFactor(edition_) ? fields_[second].value : 1);
    for (std::size_t i = 0; i < horizontalCount_; ++i)
      if (!readRow(i, scale)) return false;
    return atTheEnd();
  }

  bool readRow(std::size_t row, double scale) {
    std::vector<double> values;
    for (std::size_t i = 0; i < verticalCount_; ++i) {
      const auto next = number([&] {
        return "candela " + std::to_string(i + 1) + " of " + std::to_string(verticalCount_) + " at horizontal angle " +
               base::shortest(horizontal_[row]);
      });
      if (!next) return false;
      if (row == 0 && i == 0) candelaLine_ = next->line;
      if (next->value < 0)
        return refuse("ies-candela", next->line, base::shortest(next->value), "candela, 0 or more", kExportAgain);
      values.push_back(next->value * scale);
    }
    candela_.push_back(std::move(values));
    return true;
  }

  bool atTheEnd() {
    const auto word = scan_.word();
    if (!word) return true;
    if (base::readNumber(word->text))
      return refuse("ies-surplus", word->line, "more numbers: " + shownText(word->text),
                    "the end of the file after " + std::to_string(horizontalCount_) + " x " +
                        std::to_string(verticalCount_) + " candela",
                    "compare the counts of angles with the table; they cannot both be right");
    note("ies-text-after", word->line, "\"" + shownText(word->text) + "\"", "the end of the file",
         "it was passed over");
    return true;
  }

  /// Tables of type C start on the axis or level with the lamp, and end level with it or behind it (LM-63). Beyond a
  /// table's own angles there is no light in it.
  void noteReach() {
    if (kind() != light::PhotometryType::c) return;
    const double first = vertical_.front(), last = vertical_.back();
    if ((first == 0 || first == 90) && (last == 90 || last == 180)) return;
    note("ies-part", verticalLine_, "vertical angles from " + base::shortest(first) + " to " + base::shortest(last),
         "from 0 or 90 to 90 or 180", "beyond them the lamp is taken to give nothing; compare with its data sheet");
  }

  /// Some tables go all round but leave out 360, which is 0 again.
  void closeTheCircle() {
    if (kind() != light::PhotometryType::c) return;
    if (horizontal_.size() < 3 || horizontal_.front() != 0 || horizontal_.back() <= 180 || horizontal_.back() >= 360)
      return;
    double widest = 0;
    for (std::size_t i = 1; i < horizontal_.size(); ++i) widest = std::max(widest, horizontal_[i] - horizontal_[i - 1]);
    if (360 - horizontal_.back() > widest) return;
    note("ies-open-circle", horizontalLine_, "horizontal angles up to " + base::shortest(horizontal_.back()),
         "up to 360", "the row at 0 stands for 360 as well");
    horizontal_.push_back(360);
    candela_.push_back(candela_.front());
  }

  base::Problems placed(base::Problems problems) const {
    for (Problem& problem : problems) {
      const int line = problem.where.starts_with("vertical")     ? verticalLine_
                       : problem.where.starts_with("horizontal") ? horizontalLine_
                                                                 : candelaLine_;
      problem.where = lineName(line) + ", " + problem.where;
    }
    return problems;
  }

  /// A table of type A or B may hold one half of the field only, and leave the other to be guessed.
  void noteHalves() {
    if (kind() == light::PhotometryType::c || vertical_.front() < 0) return;
    note("ies-upper-half", verticalLine_, "vertical angles from " + base::shortest(vertical_.front()),
         "from -90, or from as far down as there is light",
         "nothing is taken to shine below; compare a few candela with the data sheet");
  }

  base::Result<IesFile> made() {
    noteReach();
    closeTheCircle();
    noteHalves();
    auto photometry = light::Photometry::of(std::move(vertical_), std::move(horizontal_), std::move(candela_), kind());
    if (!photometry) return placed(photometry.problems());
    double largest = 0;
    for (const Field side : {width, length, height}) largest = std::max(largest, std::abs(fields_[side].value));
    light::Luminaire luminaire{std::move(photometry).value(), std::move(tilt_),
                               fields_[units].value == 1 ? largest * kFoot : largest};
    return IesFile{
        std::move(luminaire), edition_,         std::move(labels_), fields_[lamps].value, fields_[lumens].value,
        fields_[watts].value, std::move(notes_)};
  }

  IesScan scan_;
  base::Problems problems_, notes_;
  IesEdition edition_ = IesEdition::of1986;
  std::vector<IesLabel> labels_;
  std::string tiltWord_;
  int tiltLine_ = 1;
  std::vector<light::TiltFactor> tilt_;
  std::array<Number, 13> fields_;
  std::size_t verticalCount_ = 0, horizontalCount_ = 0;
  int verticalLine_ = 1, horizontalLine_ = 1, candelaLine_ = 1;
  std::vector<double> vertical_, horizontal_;
  std::vector<std::vector<double>> candela_;
};

}  // namespace

base::Result<IesFile> readIes(std::string_view bytes) {
  if (bytes.size() > kMostIesBytes)
    return Problem{"ies-too-large", "line 1", std::to_string(bytes.size()) + " bytes",
                   "at most " + std::to_string(kMostIesBytes) + " bytes", "choose a photometric file"};
  return Reader(bytes).read();
}

}  // namespace wend::exchange
