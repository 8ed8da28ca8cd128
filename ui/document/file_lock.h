/// A lock that the system takes back when its holder ends, however it ends: no lock of a dead process is ever met.
#pragma once

#include <QString>
#include <optional>
#include <utility>

namespace wend::ui {

class FileLock {
 public:
  /// Holds the lock of that file, which is made when missing; nothing when another holds it or the file cannot be made.
  static std::optional<FileLock> taken(const QString& path);

  FileLock(FileLock&& other) noexcept : fd_(std::exchange(other.fd_, -1)) {}
  FileLock& operator=(FileLock&& other) noexcept;
  ~FileLock();

 private:
  explicit FileLock(int fd) : fd_(fd) {}
  int fd_;
};

/// The lock of a plan's file among the windows of one user on one machine, kept in `folder` so that nothing is left
/// beside the plan. Two paths to one file have one lock. Nothing when another window has the plan open.
std::optional<FileLock> planLock(const QString& folder, const QString& planPath);

}  // namespace wend::ui
