/// The one function of Wend that writes files.
///
/// Ensures   (1) whatever fails or is killed, the file is byte for byte the old one or the new one
///           (2) success is told only when all bytes were written and the disk has confirmed file and folder
///           (3) a symbolic link stays and its target is replaced; permissions stay, and the owner where allowed
///           (4) what a killed save left beside the file, `.NAME.saving`, is swept by the next save of that file, no
///               other file ever is
///           (5) devices, pipes, folders and write-protected files are refused
/// Source    the order of steps is common practice for durable files: write, sync, rename, sync the folder. Qt's
///           QSaveFile (6.4) is not used: its commit() overlooks a failed last write or sync and may leave an empty
///           file
#pragma once

#include <QByteArray>
#include <QString>

#include "core/base/result.h"

namespace wend::ui {

struct Written {
  QString path;            ///< of the file itself, behind links
  QByteArray contentHash;  ///< as contentHashOf in open.h
};

/// Replaces the file, or makes it in a folder that exists.
/// Fails     "not-a-file", "write-protected", "file-name-too-long", "no-folder", "being-saved", "write-failed",
///           "not-confirmed" (written, but the folder could not be synced)
base::Result<Written> writeFile(const QString& path, QByteArrayView bytes);

}  // namespace wend::ui
