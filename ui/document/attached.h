/// The photometric files that a plan's lamps name, read from the plan's own folder and nowhere else.
#pragma once

#include <QDateTime>
#include <QString>
#include <map>

#include "core/base/result.h"
#include "core/light/luminaire.h"
#include "core/plan/plan.h"

namespace wend::ui {

/// The file that a plan in `folder` names.
/// Ensures   the answer lies in the folder or below it, links followed.
/// Fails     `outside-folder` for a name that is absolute, climbs, or leads out through a link; `no-file`
base::Result<QString> fileBelow(const QString& folder, const std::string& name);

/// Keeps what it read: files are read again only when they changed, so that it may be asked on every mouse move.
class Attached {
 public:
  /// The luminaires of the plan's lamps, by the names it gives their files. `planPath` says where the plan's folder is;
  /// a plan without a file has none, and its files stay unread.
  light::Luminaires luminairesOf(const plan::Plan& plan, const QString& planPath);

  /// What kept files of the last plan asked for from being read, and what was odd about those that were: `where` is the
  /// lamp's place in the plan, then the file and the line.
  const base::Problems& notes() const { return notes_; }

 private:
  struct Known {
    QDateTime changed;
    qint64 size = -1;
    std::shared_ptr<const light::Luminaire> luminaire;  ///< null: it could not be read
    base::Problems problems;
  };
  base::Result<const Known*> known(const std::string& name, const QString& planPath);
  static Known readNow(const QString& path);

  std::map<QString, Known> files_;  ///< by canonical path
  base::Problems notes_;
};

}  // namespace wend::ui
