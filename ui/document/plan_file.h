/// A plan's file: opened into a plan, and a document saved into it.
#pragma once

#include <QByteArray>
#include <QString>

#include "core/base/result.h"
#include "core/plan/plan.h"
#include "ui/document/document.h"
#include "ui/document/save.h"

namespace wend::ui {

struct OpenedPlan {
  plan::PlanPtr plan;
  base::Problems notes;  ///< what was kept without being understood
  QString path;          ///< absolute
  QByteArray contentHash;
};

/// Reads the file without waiting and the plan in it strictly.
/// Fails     as readFile of open.h and file::readPlan; problems of the plan stand at JSON pointers into the file
base::Result<OpenedPlan> openPlan(const QString& path);

/// Writes the document's plan, never its preview, and tells the document. After a failure the document, its undo and
/// its modified mark are as before.
/// Fails     as writeFile of save.h
base::Result<Written> savePlan(Document& document, const QString& path);

/// True when the document's file holds something else than what was opened or saved last: another program or another
/// person wrote it. False for a document without a file.
bool changedByOthers(const Document& document);

}  // namespace wend::ui
