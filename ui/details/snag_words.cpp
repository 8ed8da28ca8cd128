#include "ui/details/snag_words.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/units/clock_time.h"

namespace wend::ui {
namespace {

QString lineOf(const snags::Snag& snag, QChar sign) {
  return sign + QLatin1Char(' ') + QString::fromStdString(units::takeTimeText(snag.from)) + QStringLiteral("  ") +
         barsOf(snag.severity) + QStringLiteral("  ") + QString::fromStdString(snag.text);
}

QString translated(const char* text) {
  return QCoreApplication::translate("SnagWords", text);
}

}  // namespace

QString barsOf(snags::Severity severity) {
  switch (severity) {
    case snags::Severity::stops:
      return translated("3 bars");
    case snags::Severity::risks:
      return translated("2 bars");
    case snags::Severity::note:
      return translated("1 bar");
  }
  return {};
}

QString changeWords(const snags::SnagChange& change, int most) {
  const int all = int(change.appeared.size() + change.cleared.size());
  if (all == 0) return translated("After the last edit: no snag came or went");
  QStringList lines{
      translated("After the last edit: %1 came, %2 went").arg(change.appeared.size()).arg(change.cleared.size())};
  for (const auto& snag : change.appeared) lines.append(lineOf(snag, QLatin1Char('+')));
  for (const auto& snag : change.cleared) lines.append(lineOf(snag, QChar(0x2212)));
  if (all <= most) return lines.join(QLatin1Char('\n'));
  lines.erase(lines.begin() + 1 + most, lines.end());
  lines.append(translated("and %1 more").arg(all - most));
  return lines.join(QLatin1Char('\n'));
}

}  // namespace wend::ui
