#include "ui/style/fonts.h"

#include <QFontInfo>
#include <QStringList>

namespace wend::ui {

QFont fontOf(int px, bool bold) {
  QFont font;
  font.setFamilies({QStringLiteral("B612"), QStringLiteral("DejaVu Sans"), QStringLiteral("sans-serif")});
  font.setPixelSize(px);
  font.setBold(bold);
  font.setHintingPreference(QFont::PreferNoHinting);
  return font;
}

QString missingFontWarning() {
  const QFontInfo found(fontOf(14));
  if (found.family() == QStringLiteral("B612")) return {};
  return QStringLiteral(
             "The typeface B612 is not installed, %1 is used: digits may jump and lines run wider. "
             "Install the package fonts-b612.")
      .arg(found.family());
}

}  // namespace wend::ui
