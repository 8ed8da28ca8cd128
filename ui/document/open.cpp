#include "ui/document/open.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <cerrno>

namespace wend::ui {
namespace {

base::Problem problem(const char* code, const QString& path, const std::string& found, const std::string& expected,
                      const std::string& remedy) {
  return {code, path.toStdString(), found, expected, remedy};
}

base::Problem notReadable(const QString& path, int error) {
  return problem("not-readable", path, qt_error_string(error).toStdString(), "a file that may be read",
                 "Check the permissions of the file and of its folders.");
}

base::Problem notAFile(const QString& path, mode_t mode) {
  return problem("not-a-file", path, S_ISDIR(mode) ? "a folder" : "a device or a pipe", "a plain file",
                 S_ISDIR(mode) ? "Choose a file inside this folder." : "Choose another file.");
}

base::Problem tooLarge(const QString& path, std::size_t most) {
  return problem("too-large", path, "a file of more than " + std::to_string(most) + " bytes",
                 "at most " + std::to_string(most) + " bytes", "Choose another file.");
}

/// Reads on until the end or one byte beyond `most`. False, with errno, when reading fails.
bool readAll(int fd, std::size_t most, std::string& bytes) {
  char block[65536];
  while (bytes.size() <= most) {
    const ssize_t count = ::read(fd, block, std::min(sizeof block, most + 1 - bytes.size()));
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return false;
    if (count == 0) break;
    bytes.append(block, std::size_t(count));
  }
  return true;
}

base::Result<FileContent> contentOf(int fd, const QString& path, std::size_t most) {
  struct stat is {};
  if (::fstat(fd, &is) != 0) return notReadable(path, errno);
  if (!S_ISREG(is.st_mode)) return notAFile(path, is.st_mode);
  FileContent content;
  if (!readAll(fd, most, content.bytes)) return notReadable(path, errno);
  if (content.bytes.size() > most) return tooLarge(path, most);
  content.path = QFileInfo(path).absoluteFilePath();
  content.contentHash = contentHashOf(content.bytes);
  return content;
}

}  // namespace

QByteArray contentHashOf(QByteArrayView bytes) {
  QCryptographicHash hash(QCryptographicHash::Sha256);
  hash.addData(bytes);
  return hash.result().toHex();
}

base::Result<FileContent> readFile(const QString& path, std::size_t most) {
  const QByteArray name = QFile::encodeName(path);
  struct stat is {};
  if (::stat(name.constData(), &is) != 0) {
    if (errno != ENOENT) return notReadable(path, errno);
    return problem("no-file", path, "no such file", "a file that exists", "Check the name and the folder.");
  }
  // Opening a device can already do something to it, so it is refused before; a file swapped in between is met again
  // by its descriptor, which does not wait for the other end of a pipe.
  if (!S_ISREG(is.st_mode)) return notAFile(path, is.st_mode);
  if (is.st_size > 0 && std::size_t(is.st_size) > most) return tooLarge(path, most);
  const int fd = ::open(name.constData(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC);
  if (fd < 0) return notReadable(path, errno);
  base::Result<FileContent> content = contentOf(fd, path, most);
  ::close(fd);
  return content;
}

bool changedOnDisk(const QString& path, const QByteArray& contentHash, std::size_t most) {
  const base::Result<FileContent> now = readFile(path, most);
  return !now || now->contentHash != contentHash;
}

}  // namespace wend::ui
