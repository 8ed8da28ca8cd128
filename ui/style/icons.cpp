#include "ui/style/icons.h"

#include <QDir>
#include <QFile>
#include <QIconEngine>
#include <QPainter>
#include <QSvgRenderer>
#include <cmath>

#include "core/base/check.h"
#include "ui/style/palette.h"

namespace wend::ui {
namespace {

QByteArray iconText(const QString& name) {
  QFile file(QStringLiteral(":/icons/") + name + QStringLiteral(".svg"));
  WEND_CHECK(file.open(QIODevice::ReadOnly));
  return file.readAll();
}

void drawIcon(QPainter& painter, const QString& name, const QColor& colour, const QRectF& area) {
  QSvgRenderer renderer(iconText(name).replace("currentColor", colour.name().toLatin1()));
  WEND_CHECK(renderer.isValid());
  renderer.render(&painter, area);
}

class ToneIcon : public QIconEngine {
 public:
  ToneIcon(QString name, sheets::Theme theme) : name_(std::move(name)), theme_(theme) {}

  void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State state) override {
    const int side = std::min(rect.width(), rect.height());
    const QRectF square(rect.center().x() + 0.5 - side / 2.0, rect.center().y() + 0.5 - side / 2.0, side, side);
    drawIcon(*painter, name_, colour(mode, state), square);
  }
  QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
    QPixmap pixmap(size);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paint(&painter, QRect(QPoint(0, 0), size), mode, state);
    return pixmap;
  }
  QIconEngine* clone() const override { return new ToneIcon(*this); }

 private:
  QColor colour(QIcon::Mode mode, QIcon::State state) const {
    using geometry::Tone;
    if (mode == QIcon::Disabled) return colourOf(Tone::ink3, theme_);
    return colourOf(state == QIcon::On || mode == QIcon::Selected ? Tone::page : Tone::ink, theme_);
  }

  QString name_;
  sheets::Theme theme_;
};

}  // namespace

QStringList iconNames() {
  QStringList names = QDir(QStringLiteral(":/icons")).entryList({QStringLiteral("*.svg")}, QDir::Files, QDir::Name);
  for (QString& name : names) name.chop(4);
  return names;
}

QPixmap iconPixmap(const QString& name, QColor colour, int px, double ratio) {
  WEND_CHECK(px > 0 && ratio > 0);
  const int side = int(std::lround(px * ratio));
  QPixmap pixmap(side, side);
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  drawIcon(painter, name, colour, QRectF(0, 0, side, side));
  painter.end();
  pixmap.setDevicePixelRatio(ratio);
  return pixmap;
}

QIcon iconOf(const QString& name, sheets::Theme theme) {
  return QIcon(new ToneIcon(name, theme));
}

}  // namespace wend::ui
