#include "ui/document/save.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QFile>
#include <QFileInfo>
#include <cerrno>
#include <climits>
#include <cstdlib>
#include <string>
#include <utility>

#include "ui/document/open.h"

namespace wend::ui {
namespace {

base::Problem problem(const char* code, const QString& path, const std::string& found, const std::string& expected,
                      const std::string& remedy) {
  return {code, path.toStdString(), found, expected, remedy};
}

std::string reason(int error) {
  return qt_error_string(error).toStdString();
}

base::Problem writeFailed(const QString& path, int error) {
  return problem("write-failed", path, reason(error), "room and permission to write",
                 "Nothing was changed; free some space or save elsewhere, then save again.");
}

/// Closes itself when it goes and leaves errno alone.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  ~Descriptor() {
    const int error = errno;
    if (fd_ >= 0) ::close(fd_);
    errno = error;
  }
  Descriptor(Descriptor&& other) noexcept : fd_(std::exchange(other.fd_, -1)) {}
  Descriptor& operator=(Descriptor&&) = delete;
  int get() const { return fd_; }
  bool valid() const { return fd_ >= 0; }

 private:
  int fd_;
};

/// Where the file is behind links. A link that leads nowhere yet is followed one step, as the file is to be made there.
std::string behindLinks(const std::string& path) {
  char buffer[PATH_MAX];
  if (::realpath(path.c_str(), buffer) != nullptr) return buffer;
  const ssize_t length = ::readlink(path.c_str(), buffer, sizeof buffer);
  if (length <= 0) return path;
  const std::string target(buffer, std::size_t(length));
  return target.front() == '/' ? target : path.substr(0, path.rfind('/') + 1) + target;
}

struct Place {
  std::string folder;     ///< ends with "/"
  std::string file;       ///< whole path
  std::string temporary;  ///< whole path
};

Place placeOf(const QString& path) {
  Place place;
  place.file = behindLinks(QFile::encodeName(QFileInfo(path).absoluteFilePath()).toStdString());
  const std::size_t cut = place.file.rfind('/') + 1;
  place.folder = place.file.substr(0, cut);
  place.temporary = place.folder + "." + place.file.substr(cut) + ".saving";
  return place;
}

bool writtenWhole(int fd, QByteArrayView bytes) {
  while (!bytes.isEmpty()) {
    const ssize_t count = ::write(fd, bytes.data(), std::size_t(bytes.size()));
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return false;
    if (count == 0) return errno = ENOSPC, false;
    bytes = bytes.sliced(count);
  }
  return true;
}

bool isAt(int fd, const std::string& path) {
  struct stat open {
  }, named{};
  return ::fstat(fd, &open) == 0 && ::lstat(path.c_str(), &named) == 0 && open.st_ino == named.st_ino &&
         open.st_dev == named.st_dev;
}

/// The lock of a save under way. Only who holds it may rename or remove the temporary file; a file system without locks
/// answers with another error than "taken" and is trusted.
bool locked(int fd, const std::string& temporary) {
  if (::flock(fd, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK) return false;
  return isAt(fd, temporary) || (errno = EWOULDBLOCK, false);
}

/// Removes what a killed save left, unless a living one holds it. False, with errno, when the name stays taken.
bool swept(const std::string& temporary) {
  const Descriptor stray(::open(temporary.c_str(), O_WRONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC));
  if (!stray.valid()) return errno == ENOENT;
  struct stat is {};
  if (::fstat(stray.get(), &is) != 0) return false;
  if (!S_ISREG(is.st_mode)) return errno = EEXIST, false;
  return locked(stray.get(), temporary) && ::unlink(temporary.c_str()) == 0;
}

/// An empty file under the temporary name, locked. Not valid, with errno, when there is none.
Descriptor begun(const std::string& temporary) {
  if (!swept(temporary)) return Descriptor(-1);
  Descriptor fd(::open(temporary.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666));
  if (!fd.valid() && errno == EEXIST) errno = EWOULDBLOCK;  // another save began in this very moment
  if (fd.valid() && !locked(fd.get(), temporary)) return Descriptor(-1);
  return fd;
}

bool keptRights(int fd, const struct stat& old) {
  // Only root may give a file away; anybody else's own file is theirs already.
  if (::geteuid() == 0 && ::fchown(fd, old.st_uid, old.st_gid) != 0) return false;
  return ::fchmod(fd, old.st_mode & 07777) == 0;
}

bool folderSynced(const std::string& folder) {
  const Descriptor fd(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  // Some network folders cannot be synced and say so; there is nothing more to ask of them.
  return fd.valid() && (::fsync(fd.get()) == 0 || errno == EINVAL || errno == ENOTSUP);
}

base::Problems obstacles(const QString& path, const Place& place, bool exists, const struct stat& old) {
  if (place.temporary.size() - place.folder.size() > NAME_MAX)
    return {problem("file-name-too-long", path,
                    "a name of " + std::to_string(place.file.size() - place.folder.size()) + " bytes",
                    "at most 247 bytes", "Choose a shorter name.")};
  if (exists && !S_ISREG(old.st_mode))
    return {problem("not-a-file", path, S_ISDIR(old.st_mode) ? "a folder" : "a device or a pipe", "a plain file",
                    "Choose another name.")};
  if (exists && ::access(place.file.c_str(), W_OK) != 0)
    return {problem("write-protected", path, reason(errno), "a file that may be changed",
                    "Save under another name, or allow writing to this file.")};
  struct stat folder {};
  if (::stat(place.folder.c_str(), &folder) != 0 || !S_ISDIR(folder.st_mode))
    return {
        problem("no-folder", path, "no folder " + place.folder, "a folder that exists", "Save into another folder.")};
  return {};
}

/// Error number of the step that failed, or 0. The temporary file is gone in either case.
int replaced(const Place& place, QByteArrayView bytes, bool exists, const struct stat& old) {
  const Descriptor fd = begun(place.temporary);
  if (!fd.valid()) return errno;
  const bool done = writtenWhole(fd.get(), bytes) && (!exists || keptRights(fd.get(), old)) && ::fsync(fd.get()) == 0 &&
                    ::rename(place.temporary.c_str(), place.file.c_str()) == 0;
  if (done) return 0;
  const int error = errno;
  ::unlink(place.temporary.c_str());
  return error;
}

}  // namespace

base::Result<Written> writeFile(const QString& path, QByteArrayView bytes) {
  const Place place = placeOf(path);
  struct stat old {};
  const bool exists = ::stat(place.file.c_str(), &old) == 0;
  if (base::Problems found = obstacles(path, place, exists, old); !found.empty()) return found;
  const int error = replaced(place, bytes, exists, old);
  if (error == EWOULDBLOCK)
    return problem("being-saved", path, "another save of this file", "one save at a time", "Try again in a moment.");
  if (error != 0) return writeFailed(path, error);
  if (!folderSynced(place.folder))
    return problem("not-confirmed", path, reason(errno), "a disk that confirms",
                   "The file was written, but may be lost if the power fails; save again, here or elsewhere.");
  return Written{QFile::decodeName(QByteArray::fromStdString(place.file)), contentHashOf(bytes)};
}

}  // namespace wend::ui
