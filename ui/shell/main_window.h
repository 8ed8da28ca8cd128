/// The window: plan, frame, score, now and details on one playhead and one selection.
///
/// Keys      Space plays, F next snag, Home or 0 on the plan the whole take, M tape, P V S one face full screen, Ctrl+Z
/// and Ctrl+Shift+Z undo and redo, Ctrl+O, Ctrl+S,
///           Ctrl+Shift+S, F6 from face to face. Letters act only while no field is being typed in.
#pragma once

#include <QMainWindow>
#include <memory>

#include "ui/canvas/plan_canvas.h"
#include "ui/document/file_lock.h"
#include "ui/document/recent.h"
#include "ui/document/recovery.h"
#include "ui/score/score_view.h"
#include "ui/shell/top_bar.h"
#include "ui/shell/transport.h"

class QScrollArea;
class QSplitter;

namespace wend::ui {

class DetailsPanel;
class FrameView;
class NowView;
class SnagList;
class SpanBar;
class Strip;

class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  MainWindow();
  ~MainWindow() override;

  /// Replaces the document; problems are shown in the strip at the bottom and leave the open plan as it is.
  bool open(const QString& path);
  /// What earlier sessions left unsaved is offered, newest first, without a question that blocks.
  void offerRecovery();

  Document& document() { return document_; }
  AnswersBridge& bridge() { return bridge_; }
  PlanCanvas& canvas() { return *canvas_; }
  ScoreView& score() { return *score_; }
  DetailsPanel& details() { return *details_; }
  const Strip& strip() const { return *strip_; }
  Transport& transport() { return transport_; }
  void setTheme(sheets::Theme theme);

 protected:
  void closeEvent(QCloseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* rail();
  void layOut();
  void layOutScore(QWidget* page);
  void shareOut();
  void addKeys();
  void addKey(const QKeySequence& keys, std::function<void()> act);
  void connectFaces();
  void tell(const QString& words);
  void tellChange();
  void tellProblems(const QString& what, const base::Problems& problems);
  void askOpen();
  bool save();
  bool saveAs();
  bool saveTo(const QString& path);
  void showRecent(QPoint at);
  void showStaves(QPoint at);
  void nextSnag();
  void showSnag(const snags::Snag& snag);
  void showSnagOf(const QString& key);
  void showOnly(QWidget* face);
  void titleChanged();

  Document document_;
  AnswersBridge bridge_;
  Transport transport_;
  RecentPlans recent_;
  std::unique_ptr<Recovery> recovery_;
  std::optional<FileLock> lock_;
  sheets::Theme theme_ = sheets::Theme::dark;

  TopBar* top_ = nullptr;
  PlanCanvas* canvas_ = nullptr;
  FrameView* frame_ = nullptr;
  NowView* now_ = nullptr;
  DetailsPanel* details_ = nullptr;
  SnagList* snags_ = nullptr;
  ScoreView* score_ = nullptr;
  SpanBar* span_ = nullptr;
  QScrollArea* scoreScroll_ = nullptr;
  QWidget* scoreFace_ = nullptr;
  QWidget* rail_ = nullptr;
  QWidget* right_ = nullptr;
  QSplitter* upper_ = nullptr;
  QSplitter* middle_ = nullptr;
  QSplitter* all_ = nullptr;
  Strip* strip_ = nullptr;
  bool sharedByHand_ = false;
};

}  // namespace wend::ui
