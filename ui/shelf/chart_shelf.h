/// The chart shelf: a folder of lens charts, one lens a file, and beside them the generic ones that come with Wend.
///
/// Ensures   (1) nothing is lost: no file is ever replaced by another lens, and what is taken off the shelf lies in the
///           folder's `removed` until somebody empties it
///           (2) a file that cannot be read stays where it is and is listed with its problems
///           (3) everything is written by writeFile of ui/document/save.h
#pragma once

#include <QString>
#include <vector>

#include "core/base/result.h"
#include "core/plan/lens_chart.h"

namespace wend::ui {

struct ShelvedChart {
  QString path;             ///< of the file; of a starter inside the program
  bool starter = false;     ///< comes with Wend: neither renamed nor removed
  plan::LensChart chart;    ///< as read; empty where it could not be read
  base::Problems problems;  ///< why it could not be read
  base::Problems notes;     ///< what was kept without being understood
  bool readable() const { return problems.empty(); }
};

/// "generic 35 mm prime, T1.5"; the file's name where the lens has none or cannot be read.
QString nameOf(const ShelvedChart& shelved);
/// Its range in one line: "24-70 mm   T2.8   from 0.75 m   11 focus marks", or what is wrong with the file.
QString factsOf(const ShelvedChart& shelved, bool feet);

/// Those that fit all the words, in their order, as places in `charts`. A word fits a chart that has it in its name,
/// notes or file name; "50" and "50mm" also a lens whose range holds that focal length; "T2" fits lenses that open to
/// T2 or wider.
std::vector<std::size_t> fitting(const std::vector<ShelvedChart>& charts, const QString& words);

class ChartShelf {
 public:
  /// Reads the folder, which need not exist before the first chart is kept.
  explicit ChartShelf(QString folder);

  /// `charts` in the user's data folder of Wend.
  static QString usersFolder();

  const QString& folder() const { return folder_; }
  /// By name, the user's own before those that come with Wend.
  const std::vector<ShelvedChart>& charts() const { return charts_; }
  void reread();

  /// A new file, called after the lens, with a number where that name is taken. Gives its path.
  /// Fails     as writeFile; no-folder where the folder cannot be made
  base::Result<QString> keep(const plan::LensChart& chart);
  /// Takes a chart file from anywhere, or the lens of a plan's file.
  /// Fails     as readFile and readChart; no-lens for a plan without one
  base::Result<QString> import(const QString& path);
  /// Writes a chart of the shelf elsewhere. Fails as writeFile.
  base::Result<QString> exportTo(const QString& path, const plan::LensChart& chart);
  /// Another name for the lens, in the same file.
  base::Result<QString> rename(const ShelvedChart& shelved, const QString& name);
  /// Moves the file to `removed`; gives where it lies now.
  base::Result<QString> remove(const ShelvedChart& shelved);
  /// And back, with a number where its name has been taken since.
  base::Result<QString> putBack(const QString& removedPath);

 private:
  base::Result<QString> moved(const QString& from, const QString& toFolder);

  QString folder_;
  std::vector<ShelvedChart> charts_;
};

}  // namespace wend::ui
