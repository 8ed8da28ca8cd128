/// Reads whole files that people name, without being held up by what only looks like a file.
#pragma once

#include <QByteArray>
#include <QString>
#include <cstddef>
#include <string>

#include "core/base/result.h"

namespace wend::ui {

/// A text that is equal exactly when the bytes are, in all likelihood: SHA-256 in hexadecimal.
QByteArray contentHashOf(QByteArrayView bytes);

struct FileContent {
  QString path;  ///< absolute, as it was named
  std::string bytes;
  QByteArray contentHash;
};

/// Ensures   (1) never waits: pipes, sockets and devices are refused unopened
///           (2) never holds more than `most` bytes, whatever size the file claims
/// Fails     "no-file", "not-a-file", "not-readable", "too-large"
base::Result<FileContent> readFile(const QString& path, std::size_t most);

/// True when the file now holds other bytes than those of the hash, or cannot be read any more.
bool changedOnDisk(const QString& path, const QByteArray& contentHash, std::size_t most);

}  // namespace wend::ui
