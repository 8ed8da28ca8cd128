#include "ui/document/plan_file.h"

#include <utility>

#include "core/file/limits.h"
#include "core/file/plan_reader.h"
#include "core/file/plan_writer.h"
#include "ui/document/open.h"

namespace wend::ui {

base::Result<OpenedPlan> openPlan(const QString& path) {
  const base::Result<FileContent> content = readFile(path, file::kMostBytes);
  if (!content) return content.problems();
  base::Result<file::PlanRead> read = file::readPlan(content->bytes);
  if (!read) return read.problems();
  file::PlanRead plan = std::move(read).value();
  return OpenedPlan{std::make_shared<const plan::Plan>(std::move(plan.plan)), std::move(plan.notes), content->path,
                    content->contentHash};
}

base::Result<Written> savePlan(Document& document, const QString& path) {
  base::Result<Written> written = writeFile(path, file::writePlan(*document.plan()));
  if (written) document.saved(path, written->contentHash);
  return written;
}

bool changedByOthers(const Document& document) {
  return !document.path().isEmpty() && changedOnDisk(document.path(), document.contentHash(), file::kMostBytes);
}

}  // namespace wend::ui
