#include "ui/document/state_folder.h"

#include <sys/stat.h>

#include <QDir>
#include <QFile>

namespace wend::ui {

QString stateFolder(const QString& xdgStateHome, const QString& home) {
  const bool given = xdgStateHome.startsWith(QLatin1Char('/'));
  return (given ? xdgStateHome : home + QStringLiteral("/.local/state")) + QStringLiteral("/wend");
}

bool madePrivate(const QString& folder) {
  if (QDir(folder).exists()) return true;
  return QDir().mkpath(folder) && ::chmod(QFile::encodeName(folder).constData(), 0700) == 0;
}

}  // namespace wend::ui
