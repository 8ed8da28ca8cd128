/// The plans that were open last, newest first.
#pragma once

#include <QString>
#include <QStringList>

namespace wend::ui {

/// A list in a file of its own. A missing or damaged file is an empty list; a failed write loses only the list.
class RecentPlans {
 public:
  explicit RecentPlans(QString stateFolder) : folder_(std::move(stateFolder)) {}

  /// Absolute paths, each once, at most kMost. Files that are gone stay: a drive may come back.
  QStringList paths() const;
  void add(const QString& path);
  void forget(const QString& path);

  static constexpr int kMost = 12;

 private:
  QString file() const { return folder_ + QStringLiteral("/recent"); }
  void write(const QStringList& paths) const;

  QString folder_;
};

}  // namespace wend::ui
