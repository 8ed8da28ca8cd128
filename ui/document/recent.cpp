#include "ui/document/recent.h"

#include <QFileInfo>

#include "ui/document/open.h"
#include "ui/document/save.h"
#include "ui/document/state_folder.h"

namespace wend::ui {

QStringList RecentPlans::paths() const {
  constexpr std::size_t kMostBytes = std::size_t{1} << 20;
  const auto content = readFile(file(), kMostBytes);
  QStringList paths;
  if (!content) return paths;
  for (const QByteArray& line : QByteArray::fromStdString(content->bytes).split('\n')) {
    const QString path = QString::fromUtf8(QByteArray::fromPercentEncoding(line));
    if (path.startsWith(QLatin1Char('/')) && !paths.contains(path) && paths.size() < kMost) paths.append(path);
  }
  return paths;
}

void RecentPlans::add(const QString& path) {
  const QString whole = QFileInfo(path).absoluteFilePath();
  QStringList list = paths();
  list.removeAll(whole);
  list.prepend(whole);
  write(list.mid(0, kMost));
}

void RecentPlans::forget(const QString& path) {
  QStringList list = paths();
  if (list.removeAll(QFileInfo(path).absoluteFilePath()) > 0) write(list);
}

/// One path a line; newlines and percent signs of a name are percent-encoded.
void RecentPlans::write(const QStringList& list) const {
  if (!madePrivate(folder_)) return;
  QByteArray text;
  for (const QString& path : list) text += path.toUtf8().toPercentEncoding("/ ") + '\n';
  const auto written = writeFile(file(), text);
  Q_UNUSED(written);  // a list that could not be kept is no trouble worth a word
}

}  // namespace wend::ui
