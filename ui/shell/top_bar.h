/// The bar over everything: which plan, transport, undo, units, snags, files.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QWidget>

#include "core/sheets/theme.h"
#include "ui/document/answers_bridge.h"
#include "ui/shell/transport.h"

class QHBoxLayout;

namespace wend::ui {

class TopBar : public QWidget {
  Q_OBJECT

 public:
  TopBar(Document& document, AnswersBridge& bridge, Transport& transport, QWidget* parent = nullptr);
  void setTheme(sheets::Theme theme);

 Q_SIGNALS:
  void openAsked();
  void saveAsked();
  void saveAsAsked();
  void recentAsked(QPoint below);
  void snagsAsked();
  void themeAsked();
  void stavesAsked(QPoint below);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  QPushButton* button(const QString& words, const QString& tip);
  QPushButton* fileButton();
  void addTransport(QHBoxLayout* row);
  void addUnits(QHBoxLayout* row);
  void refresh();

  Document& document_;
  AnswersBridge& bridge_;
  Transport& transport_;
  QLabel *title_, *revision_, *facts_;
  QPushButton *play_, *loop_, *undo_, *redo_, *snags_, *metres_, *feet_;
  std::vector<QPushButton*> speeds_;
};

}  // namespace wend::ui
