#include "ui/shell/run_window.h"

#include <QApplication>

#include "ui/shell/main_window.h"
#include "ui/style/fonts.h"

namespace wend::ui {

int runWindow(int argc, char** argv, const QString& planPath) {
  QApplication application(argc, argv);
  QApplication::setStyle(QStringLiteral("Fusion"));
  QApplication::setApplicationName(QStringLiteral("wend"));
  QApplication::setApplicationDisplayName(QStringLiteral("Wend"));
  QApplication::setFont(fontOf(14));
  MainWindow window;
  if (!planPath.isEmpty()) window.open(planPath);
  window.offerRecovery();
  window.show();
  return QApplication::exec();
}

}  // namespace wend::ui
