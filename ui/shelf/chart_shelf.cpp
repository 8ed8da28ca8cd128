#include "ui/shelf/chart_shelf.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>
#include <QStandardPaths>
#include <algorithm>

#include "core/base/text.h"
#include "core/file/chart_file.h"
#include "core/file/limits.h"
#include "core/file/plan_reader.h"
#include "core/units/length.h"
#include "core/units/stop.h"
#include "core/units/typed.h"
#include "ui/document/open.h"
#include "ui/document/save.h"
#include "ui/document/state_folder.h"

namespace wend::ui {
namespace {

const QString kEnding = QStringLiteral(".wendchart");

QString words(const std::string& text) {
  return QString::fromStdString(text);
}

ShelvedChart shelvedFrom(const QString& path, bool starter, const base::Result<std::string>& bytes) {
  ShelvedChart shelved{path, starter, {}, {}, {}};
  if (!bytes) {
    shelved.problems = bytes.problems();
    return shelved;
  }
  auto read = file::readChart(*bytes);
  if (!read) {
    shelved.problems = read.problems();
    return shelved;
  }
  shelved.chart = std::move(read->chart);
  shelved.notes = std::move(read->notes);
  return shelved;
}

base::Result<std::string> bytesOf(const QString& path) {
  auto content = readFile(path, file::kMostBytes);
  if (!content) return content.problems();
  return std::move(content->bytes);
}

base::Result<std::string> bytesOfStarter(const QString& path) {
  QFile inside(path);
  if (!inside.open(QIODevice::ReadOnly))
    return base::Problem{"not-readable", path.toStdString(), "nothing", "a chart inside the program", ""};
  return inside.readAll().toStdString();
}

void sortByName(std::vector<ShelvedChart>& charts) {
  std::stable_sort(charts.begin(), charts.end(), [](const ShelvedChart& a, const ShelvedChart& b) {
    return a.starter != b.starter ? b.starter : QString::localeAwareCompare(nameOf(a), nameOf(b)) < 0;
  });
}

/// A file name from a lens' name: what no file system minds.
QString fileNameFor(const std::string& name) {
  QString plain;
  for (const QChar c : words(name).simplified())
    plain += c.isLetterOrNumber() || QStringLiteral(" .,-_()").contains(c) ? c : QLatin1Char('-');
  while (plain.startsWith(QLatin1Char('.'))) plain.remove(0, 1);
  plain = plain.left(60).trimmed();
  return plain.isEmpty() ? QStringLiteral("lens") : plain;
}

/// A path of that name nobody has: "name", "name 2", "name 3".
QString freePath(const QString& folder, const QString& name) {
  for (int i = 1;; ++i) {
    const QString number = i == 1 ? QString() : QStringLiteral(" %1").arg(i);
    const QString path = QDir(folder).filePath(name + number + kEnding);
    if (!QFileInfo(path).exists() && !QFileInfo(path).isSymLink()) return path;
  }
}

std::string rangeText(const std::array<double, 2>& focal) {
  const std::string least = base::shortest(focal[0]), most = base::shortest(focal[1]);
  return least == most ? least : least + "-" + most;
}

bool fits(const ShelvedChart& shelved, const QString& word) {
  const plan::Lens& lens = shelved.chart.lens;
  if (word.startsWith(QLatin1Char('t'), Qt::CaseInsensitive))
    if (const auto stop = units::stopFrom(word.toStdString()))
      return shelved.readable() && lens.stop[0] <= *stop * (1 + 1e-6);
  const QString all = nameOf(shelved) + QLatin1Char('\n') + words(shelved.chart.notes) + QLatin1Char('\n') +
                      QFileInfo(shelved.path).fileName();
  QString number = word;
  if (number.endsWith(QStringLiteral("mm"), Qt::CaseInsensitive)) number.chop(2);
  const auto focal = units::typedNumber(number.toStdString());
  if (!focal) return all.contains(word, Qt::CaseInsensitive);
  // "35" is not a part of "135".
  static const QString kAlone = QStringLiteral("(?<![0-9.])%1(?![0-9.])");
  return (shelved.readable() && lens.focal[0] <= *focal && *focal <= lens.focal[1]) ||
         all.contains(QRegularExpression(kAlone.arg(QRegularExpression::escape(word))));
}

base::Problem fixedChart(const ShelvedChart& shelved) {
  return {"starter-chart", shelved.path.toStdString(), "a chart that comes with Wend", "a chart of your own",
          "Use it in the plan, then keep the plan's lens under a name of your own."};
}

}  // namespace

QString nameOf(const ShelvedChart& shelved) {
  return shelved.chart.lens.name.empty() ? QFileInfo(shelved.path).completeBaseName() : words(shelved.chart.lens.name);
}

QString factsOf(const ShelvedChart& shelved, bool feet) {
  if (!shelved.readable()) {
    const QString first = words(base::toText(shelved.problems.front()));
    const int more = int(shelved.problems.size()) - 1;
    return QObject::tr("cannot be read: %1").arg(first) +
           (more > 0 ? QObject::tr("; and %1 more").arg(more) : QString());
  }
  const plan::Lens& lens = shelved.chart.lens;
  const auto unit = feet ? units::LengthUnit::feet : units::LengthUnit::metres;
  return words(rangeText(lens.focal) + " mm   " + "T" + base::shortest(lens.stop[0]) + "   from " +
               units::lengthText(lens.closeFocus, unit) + "   " + std::to_string(lens.focusMarks.size()) +
               (lens.focusMarks.size() == 1 ? " focus mark" : " focus marks"));
}

std::vector<std::size_t> fitting(const std::vector<ShelvedChart>& charts, const QString& typed) {
  const QStringList all = typed.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < charts.size(); ++i)
    if (std::all_of(all.begin(), all.end(), [&](const QString& word) { return fits(charts[i], word); }))
      found.push_back(i);
  return found;
}

ChartShelf::ChartShelf(QString folder) : folder_(std::move(folder)) {
  reread();
}

QString ChartShelf::usersFolder() {
  return QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) + QStringLiteral("/wend/charts");
}

void ChartShelf::reread() {
  charts_.clear();
  const QStringList mask{QLatin1Char('*') + kEnding};
  for (const QFileInfo& file : QDir(folder_).entryInfoList(mask, QDir::Files | QDir::System))
    charts_.push_back(shelvedFrom(file.filePath(), false, bytesOf(file.filePath())));
  for (const QFileInfo& file : QDir(QStringLiteral(":/charts")).entryInfoList(mask))
    charts_.push_back(shelvedFrom(file.filePath(), true, bytesOfStarter(file.filePath())));
  sortByName(charts_);
}

base::Result<QString> ChartShelf::keep(const plan::LensChart& chart) {
  if (!madePrivate(folder_))
    return base::Problem{"no-folder", folder_.toStdString(), "a folder that cannot be made", "room for charts",
                         "Check the permissions of the folder above it."};
  const auto path = exportTo(freePath(folder_, fileNameFor(chart.lens.name)), chart);
  if (path) reread();
  return path;
}

base::Result<QString> ChartShelf::import(const QString& path) {
  const auto bytes = bytesOf(path);
  if (!bytes) return bytes.problems();
  const auto read = file::readChart(*bytes);
  if (read) {
    plan::LensChart chart = read->chart;
    if (chart.lens.name.empty()) chart.lens.name = QFileInfo(path).completeBaseName().toStdString();
    return keep(chart);
  }
  const auto plan = file::readPlan(*bytes);
  if (!plan) return read.problems();
  if (!plan->plan.lens)
    return base::Problem{"no-lens", path.toStdString(), "a plan without a lens", "a chart, or a plan with a lens",
                         "Choose another file."};
  return keep({*plan->plan.lens, {}, {}});
}

base::Result<QString> ChartShelf::exportTo(const QString& path, const plan::LensChart& chart) {
  const std::string text = file::writeChart(chart);
  const auto written = writeFile(path, QByteArrayView(text.data(), qsizetype(text.size())));
  if (!written) return written.problems();
  return path;
}

base::Result<QString> ChartShelf::rename(const ShelvedChart& shelved, const QString& name) {
  if (shelved.starter) return fixedChart(shelved);
  if (!shelved.readable()) return shelved.problems;
  plan::LensChart chart = shelved.chart;
  chart.lens.name = name.simplified().toStdString();
  if (chart.lens.name.empty())
    return base::Problem{"empty-field", shelved.path.toStdString(), "no name", "a name", "Type one."};
  const auto path = exportTo(shelved.path, chart);
  if (path) reread();
  return path;
}

base::Result<QString> ChartShelf::moved(const QString& from, const QString& toFolder) {
  const QString to = freePath(toFolder, QFileInfo(from).completeBaseName());
  // QFile::rename never replaces a file.
  if (!madePrivate(toFolder) || !QFile::rename(from, to))
    return base::Problem{"not-moved", from.toStdString(), "a file that cannot be moved", "permission to move it",
                         "Nothing was changed; check the permissions of the folder."};
  reread();
  return to;
}

base::Result<QString> ChartShelf::remove(const ShelvedChart& shelved) {
  if (shelved.starter) return fixedChart(shelved);
  return moved(shelved.path, folder_ + QStringLiteral("/removed"));
}

base::Result<QString> ChartShelf::putBack(const QString& removedPath) {
  return moved(removedPath, folder_);
}

}  // namespace wend::ui
