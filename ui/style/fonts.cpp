#include "ui/style/fonts.h"

#include <QDirIterator>
#include <QFile>
#include <QFontDatabase>
#include <QFontInfo>
#include <QStandardPaths>
#include <QStringList>
#include <QtEndian>

namespace wend::ui {
namespace {

quint16 u16(const QByteArray& data, qsizetype at) {
  return at + 2 <= data.size() ? qFromBigEndian<quint16>(data.constData() + at) : quint16(0);
}
quint32 u32(const QByteArray& data, qsizetype at) {
  return at + 4 <= data.size() ? qFromBigEndian<quint32>(data.constData() + at) : 0;
}

/// Where the table of that tag begins, or -1. ISO/IEC 14496-22 (OpenType), table directory.
qsizetype tableAt(const QByteArray& font, const char* tag) {
  for (qsizetype i = 0; i < u16(font, 4); ++i)
    if (font.mid(12 + 16 * i, 4) == tag) return u32(font, 12 + 16 * i + 8);
  return -1;
}

/// The font with its family called "Wend" instead of "B612": both are four letters, so nothing moves. ISO/IEC 14496-22,
/// naming table: ids 1 and 16 are families, 4 the full name, platform 1 is of one byte a letter, 0 and 3 of two.
QByteArray renamed(QByteArray font) {
  const qsizetype names = tableAt(font, "name");
  if (names < 0) return font;
  const qsizetype strings = names + u16(font, names + 4);
  for (qsizetype i = 0; i < u16(font, names + 2); ++i) {
    const qsizetype record = names + 6 + 12 * i, at = strings + u16(font, record + 10);
    const quint16 id = u16(font, record + 6);
    const bool wide = u16(font, record) != 1;
    const QByteArray from = wide ? QByteArray("\0B\0006\0001\0002", 8) : QByteArray("B612");
    const QByteArray to = wide ? QByteArray("\0W\0e\0n\0d", 8) : QByteArray("Wend");
    if ((id == 1 || id == 4 || id == 16) && font.mid(at, from.size()) == from) font.replace(at, to.size(), to);
  }
  return font;
}

QString familyName() {
  return QStringLiteral("Wend");
}

/// B612 Mono calls itself B612 as well, and Qt mixes the two up. So the two cuts of B612 are read from their files and
/// registered under a name of their own, inside this program only.
bool b612Registered() {
  const QStringList cuts{QStringLiteral("B612-Regular.otf"), QStringLiteral("B612-Bold.otf"),
                         QStringLiteral("B612-Regular.ttf"), QStringLiteral("B612-Bold.ttf")};
  int registered = 0;
  for (const QString& folder : QStandardPaths::standardLocations(QStandardPaths::FontsLocation)) {
    QDirIterator files(folder, cuts, QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
      QFile file(files.next());
      if (!file.open(QIODevice::ReadOnly)) continue;
      const int id = QFontDatabase::addApplicationFontFromData(renamed(file.readAll()));
      registered += QFontDatabase::applicationFontFamilies(id).contains(familyName());
    }
  }
  return registered >= 2;
}

bool b612IsThere() {
  static const bool there = b612Registered();
  return there;
}

}  // namespace

QFont fontOf(int px, bool bold) {
  QStringList families{QStringLiteral("DejaVu Sans"), QStringLiteral("sans-serif")};
  if (b612IsThere()) families.prepend(familyName());
  QFont font;
  font.setFamilies(families);
  font.setPixelSize(px);
  font.setBold(bold);
  font.setHintingPreference(QFont::PreferNoHinting);
  return font;
}

QString missingFontWarning() {
  if (b612IsThere()) return {};
  return QStringLiteral(
             "The typeface B612 is not installed, %1 is used: digits may jump and lines run wider. "
             "Install the package fonts-b612.")
      .arg(QFontInfo(fontOf(14)).family());
}

}  // namespace wend::ui
