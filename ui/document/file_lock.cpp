#include "ui/document/file_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "ui/document/open.h"

namespace wend::ui {

std::optional<FileLock> FileLock::taken(const QString& path) {
  const int fd = ::open(QFile::encodeName(path).constData(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
  if (fd < 0) return std::nullopt;
  FileLock lock(fd);
  if (::flock(fd, LOCK_EX | LOCK_NB) != 0) return std::nullopt;
  return lock;
}

FileLock& FileLock::operator=(FileLock&& other) noexcept {
  std::swap(fd_, other.fd_);
  return *this;
}

FileLock::~FileLock() {
  if (fd_ >= 0) ::close(fd_);
}

std::optional<FileLock> planLock(const QString& folder, const QString& planPath) {
  const QFileInfo plan(planPath);
  const QString place = plan.exists() ? plan.canonicalFilePath() : plan.absoluteFilePath();
  QDir().mkpath(folder);
  return FileLock::taken(folder + QLatin1Char('/') + QLatin1String(contentHashOf(place.toUtf8()).left(32)) +
                         QStringLiteral(".lock"));
}

}  // namespace wend::ui
