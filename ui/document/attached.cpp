#include "ui/document/attached.h"

#include <QDir>
#include <QFileInfo>

#include "core/exchange/ies_reader.h"
#include "ui/document/open.h"

namespace wend::ui {
namespace {

base::Problem outside(const std::string& name) {
  return {"outside-folder", name, "a file outside the plan's folder", "a file in the plan's folder or below it",
          "move the file next to the plan and name it relative to the plan"};
}

base::Problem noFolder(const std::string& name) {
  return {"no-folder", name, "a plan that is no file", "a plan in a folder, with this file beside it",
          "save the plan first; until then the lamp's light is unknown"};
}

}  // namespace

base::Result<QString> fileBelow(const QString& folder, const std::string& name) {
  const QString written = QString::fromStdString(name);
  if (written.isEmpty() || QDir::isAbsolutePath(written) || written.contains(QChar(0))) return outside(name);
  // Climbing is refused as it is written, so that the answer does not depend on which folders exist.
  if (QDir::cleanPath(written).startsWith(QStringLiteral(".."))) return outside(name);
  const QString root = QFileInfo(folder).canonicalFilePath();
  const QString path = QFileInfo(QDir(root).filePath(written)).canonicalFilePath();
  if (root.isEmpty() || path.isEmpty())
    return base::Problem{"no-file", name, "no such file", "a file that exists", "put the file beside the plan"};
  const QString below = root.endsWith(QLatin1Char('/')) ? root : root + QLatin1Char('/');
  if (!path.startsWith(below)) return outside(name);
  return path;
}

Attached::Known Attached::readNow(const QString& path) {
  Known known;
  const auto content = readFile(path, exchange::kMostIesBytes);
  if (!content) {
    known.problems = content.problems();
    return known;
  }
  auto read = exchange::readIes(content->bytes);
  known.problems = read.ok() ? read->notes : read.problems();
  if (read.ok()) known.luminaire = std::make_shared<const light::Luminaire>(std::move(read.value().luminaire));
  return known;
}

base::Result<const Attached::Known*> Attached::known(const std::string& name, const QString& planPath) {
  if (planPath.isEmpty()) return noFolder(name);
  const auto path = fileBelow(QFileInfo(planPath).absolutePath(), name);
  if (!path) return path.problems();
  const QFileInfo now(*path);
  Known& known = files_[*path];
  if (known.size != now.size() || known.changed != now.lastModified()) {
    known = readNow(*path);
    known.size = now.size();
    known.changed = now.lastModified();
  }
  return &known;
}

light::Luminaires Attached::luminairesOf(const plan::Plan& plan, const QString& planPath) {
  light::Luminaires luminaires;
  notes_.clear();
  for (std::size_t i = 0; i < plan.fixtures.size(); ++i) {
    const auto* ies = std::get_if<plan::IesOutput>(&plan.fixtures[i].output);
    if (!ies || luminaires.count(ies->file)) continue;
    const auto file = known(ies->file, planPath);
    for (base::Problem problem : file.ok() ? (*file)->problems : file.problems()) {
      const std::string line = problem.where.starts_with("line ") ? " " + problem.where : "";
      problem.where = "/fixtures/" + std::to_string(i) + "/output/ies " + ies->file + line;
      notes_.push_back(std::move(problem));
    }
    if (file.ok() && (*file)->luminaire) luminaires[ies->file] = (*file)->luminaire;
  }
  return luminaires;
}

}  // namespace wend::ui
