#include "ui/shell/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QMenu>
#include <QMessageBox>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QUndoStack>
#include <QVBoxLayout>
#include <algorithm>

#include "core/file/plan_reader.h"
#include "core/file/plan_writer.h"
#include "core/sheets/text_tables.h"
#include "ui/details/details_panel.h"
#include "ui/details/snag_list.h"
#include "ui/details/snag_words.h"
#include "ui/document/plan_file.h"
#include "ui/document/state_folder.h"
#include "ui/frame/frame_view.h"
#include "ui/frame/now_view.h"
#include "ui/score/span_bar.h"
#include "ui/shelf/shelf_window.h"
#include "ui/shell/rail.h"
#include "ui/shell/strip.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {

namespace {

QString stateFolderHere() {
  return stateFolder(qEnvironmentVariable("XDG_STATE_HOME"), qEnvironmentVariable("HOME"));
}

}  // namespace

MainWindow::MainWindow() : bridge_(document_), transport_(document_), recent_(stateFolderHere()) {
  recovery_ = std::make_unique<Recovery>(
      document_, [](const plan::Plan& plan) { return file::writePlan(plan); },
      stateFolderHere() + QStringLiteral("/recovery"));
  layOut();
  addKeys();
  connectFaces();
  setTheme(theme_);
  titleChanged();
}

MainWindow::~MainWindow() {
  transport_.stop();
}

void MainWindow::layOut() {
  auto* page = new QWidget(this);
  auto* rows = new QVBoxLayout(page);
  rows->setContentsMargins(0, 0, 0, 0);
  rows->setSpacing(0);
  top_ = new TopBar(document_, bridge_, transport_, page);
  canvas_ = new PlanCanvas(document_, bridge_, page);
  frame_ = new FrameView(document_, bridge_, page);
  now_ = new NowView(document_, bridge_, page);
  details_ = new DetailsPanel(document_, bridge_, page);
  snags_ = new SnagList(document_, bridge_, page);
  snags_->hide();
  score_ = new ScoreView(document_, bridge_, page);
  rail_ = new Rail(document_, bridge_, *canvas_, page);
  layOutScore(page);
  auto* detailsScroll = new QScrollArea(page);
  detailsScroll->setWidget(details_);
  detailsScroll->setWidgetResizable(true);
  detailsScroll->setFrameShape(QFrame::NoFrame);
  middle_ = new QSplitter(Qt::Vertical, page);
  for (QWidget* part : std::initializer_list<QWidget*>{frame_, detailsScroll, snags_}) middle_->addWidget(part);
  middle_->setStretchFactor(0, 1);
  right_ = new QWidget(page);
  auto* rightRow = new QHBoxLayout(right_);
  rightRow->setContentsMargins(0, 0, 0, 0);
  rightRow->setSpacing(0);
  rightRow->addWidget(middle_, 1);
  now_->setFixedWidth(240);
  rightRow->addWidget(now_);
  upper_ = new QSplitter(Qt::Horizontal, page);
  upper_->addWidget(rail_);
  upper_->addWidget(canvas_);
  upper_->addWidget(right_);
  upper_->setStretchFactor(1, 1);
  all_ = new QSplitter(Qt::Vertical, page);
  all_->addWidget(upper_);
  all_->addWidget(scoreFace_);
  all_->setStretchFactor(0, 1);
  for (QSplitter* splitter : {upper_, middle_, all_})
    connect(splitter, &QSplitter::splitterMoved, this, [this] { sharedByHand_ = true; });
  strip_ = new Strip(QString::fromUtf8(sheets::kCaution).replace(QLatin1Char('\n'), QLatin1Char(' ')), page);
  rows->addWidget(top_);
  rows->addWidget(all_, 1);
  rows->addWidget(strip_);
  setCentralWidget(page);
  resize(1920, 1040);
}

/// The score with the bar of its span over it.
void MainWindow::layOutScore(QWidget* page) {
  span_ = new SpanBar(document_, bridge_, *score_, page);
  scoreScroll_ = new QScrollArea(page);
  scoreScroll_->setWidget(score_);
  scoreScroll_->setWidgetResizable(true);
  scoreScroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scoreScroll_->setFrameShape(QFrame::NoFrame);
  scoreFace_ = new QWidget(page);
  auto* scoreRows = new QVBoxLayout(scoreFace_);
  scoreRows->setContentsMargins(0, 0, 0, 0);
  scoreRows->setSpacing(0);
  scoreRows->addWidget(span_);
  scoreRows->addWidget(scoreScroll_, 1);
}

/// The faces share out the window by its size until a hand has moved what is between them.
void MainWindow::shareOut() {
  const bool small = width() < 1600;
  upper_->setSizes({Rail::kWidth, width() - Rail::kWidth - (small ? 584 : 700), small ? 584 : 700});
  const int score = height() < 900 ? 304 : height() / 2;
  const int upper = height() - 48 - 26 - score;
  all_->setSizes({upper, score});
  middle_->setSizes({upper / 2, upper - upper / 2, 240});
}

void MainWindow::resizeEvent(QResizeEvent* event) {
  QMainWindow::resizeEvent(event);
  if (!sharedByHand_) shareOut();
}

void MainWindow::addKey(const QKeySequence& keys, std::function<void()> act) {
  auto* shortcut = new QShortcut(keys, this);
  connect(shortcut, &QShortcut::activated, this, std::move(act));
}

void MainWindow::addKeys() {
  addKey(Qt::Key_Space, [this] { transport_.toggle(); });
  addKey(Qt::Key_F, [this] { nextSnag(); });
  addKey(Qt::Key_M, [this] { canvas_->setTaping(!canvas_->taping()); });
  addKey(Qt::Key_P, [this] { showOnly(canvas_); });
  addKey(Qt::Key_V, [this] { showOnly(right_); });
  addKey(Qt::Key_S, [this] { showOnly(scoreFace_); });
  addKey(Qt::Key_E, [this] { frame_->setFromSide(!frame_->fromSide()); });
  addKey(QKeySequence::Undo, [this] { document_.undoStack().undo(); });
  addKey(QKeySequence(QStringLiteral("Ctrl+Shift+Z")), [this] { document_.undoStack().redo(); });
  addKey(QKeySequence(QStringLiteral("Ctrl+Y")), [this] { document_.undoStack().redo(); });
  addKey(QKeySequence::Delete, [this] { details_->removeByKey(); });
  addKey(QKeySequence::Open, [this] { askOpen(); });
  addKey(QKeySequence::Save, [this] { save(); });
  addKey(QKeySequence(QStringLiteral("Ctrl+Shift+S")), [this] { saveAs(); });
  addKey(QKeySequence(QStringLiteral("Ctrl+L")), [this] { showShelf(document_, this); });
  addKey(QKeySequence::Quit, [this] { close(); });
  addKey(Qt::Key_F6, [this] {
    QWidget* faces[] = {canvas_, details_, score_};
    const auto* at = std::find(std::begin(faces), std::end(faces), focusWidget());
    faces[at == std::end(faces) ? 0 : (at - std::begin(faces) + 1) % 3]->setFocus(Qt::TabFocusReason);
  });
}

void MainWindow::connectFaces() {
  connect(top_, &TopBar::openAsked, this, &MainWindow::askOpen);
  connect(top_, &TopBar::saveAsked, this, &MainWindow::save);
  connect(top_, &TopBar::saveAsAsked, this, &MainWindow::saveAs);
  connect(top_, &TopBar::recentAsked, this, &MainWindow::showRecent);
  connect(top_, &TopBar::snagsAsked, this, [this] { snags_->setVisible(!snags_->isVisible()); });
  connect(top_, &TopBar::themeAsked, this,
          [this] { setTheme(static_cast<sheets::Theme>((static_cast<int>(theme_) + 1) % 3)); });
  connect(canvas_, &PlanCanvas::told, this, &MainWindow::tell);
  connect(canvas_, &PlanCanvas::spotChanged, this, [this] { score_->setSpot(canvas_->spot()); });
  connect(score_, &ScoreView::told, this, &MainWindow::tell);
  connect(span_, &SpanBar::told, this, [this](const QString& words) { strip_->refuse(words); });
  connect(canvas_, &PlanCanvas::refused, this, [this](const QString& words) { strip_->refuse(words); });
  connect(score_, &ScoreView::refused, this, [this](const QString& words) { strip_->refuse(words); });
  connect(canvas_, &PlanCanvas::snagChosen, this, &MainWindow::showSnagOf);
  connect(score_, &ScoreView::snagChosen, this, &MainWindow::showSnagOf);
  connect(&document_, &Document::planChanged, this, [this] { strip_->settle(); });
  // Once the step stands: while its plan is being put in place there is nothing to undo yet.
  connect(&document_.undoStack(), &QUndoStack::indexChanged, this, &MainWindow::tellChange);
  connect(&bridge_, &AnswersBridge::takeChanged, this, &MainWindow::tellChange);
  connect(top_, &TopBar::stavesAsked, this, &MainWindow::showStaves);
  connect(details_, &DetailsPanel::toldProblem, this, [this](const QString& words) { strip_->refuse(words); });
  connect(details_, &DetailsPanel::problemOver, this, [this] { strip_->settle(); });
  connect(snags_, &SnagList::toldProblem, this, [this](const QString& words) { strip_->refuse(words); });
  connect(recovery_.get(), &Recovery::failed, this, &MainWindow::tell);
  connect(&document_, &Document::modifiedChanged, this, &MainWindow::titleChanged);
  connect(&document_, &Document::pathChanged, this, &MainWindow::titleChanged);
  connect(&document_, &Document::planChanged, this, &MainWindow::titleChanged);
  connect(&bridge_, &AnswersBridge::changed, this, [this] {
    if (!bridge_.trouble().empty()) tellProblems(tr("The plan cannot be computed"), bridge_.trouble());
  });
}

void MainWindow::setTheme(sheets::Theme theme) {
  theme_ = theme;
  qApp->setPalette(paletteOf(theme));
  qApp->setStyleSheet(styleSheetOf(theme));
  top_->setTheme(theme);
  canvas_->setTheme(theme);
  frame_->setTheme(theme);
  now_->setTheme(theme);
  details_->setTheme(theme);
  snags_->setTheme(theme);
  score_->setTheme(theme);
  static_cast<Rail*>(rail_)->setTheme(theme);
}

void MainWindow::tell(const QString& words) {
  strip_->say(words);
}

/// What the last edit did to the snags stays in sight until the next one. While something is dragged nothing is edited
/// yet.
void MainWindow::tellChange() {
  if (document_.hasPreview()) return;
  const bool edited = document_.undoStack().canUndo() || document_.undoStack().canRedo();
  strip_->showChange(!edited           ? QString()
                     : bridge_.stale() ? tr("After the last edit: being computed")
                                       : changeWords(bridge_.change(), 4));
}

void MainWindow::tellProblems(const QString& what, const base::Problems& problems) {
  QString words = what + QStringLiteral(": ") + QString::fromStdString(base::toText(problems.front()));
  if (problems.size() > 1) words += tr("; and %n more", nullptr, static_cast<int>(problems.size()) - 1);
  tell(words);
}

void MainWindow::titleChanged() {
  const QString name = document_.path().isEmpty() ? tr("Untitled") : QFileInfo(document_.path()).fileName();
  setWindowTitle(tr("%1%2 - Wend").arg(document_.isModified() ? QStringLiteral("*") : QString(), name));
}

bool MainWindow::open(const QString& path) {
  const auto opened = openPlan(path);
  if (!opened) {
    tellProblems(tr("%1 stays closed").arg(path), opened.problems());
    return false;
  }
  transport_.stop();
  document_.start(opened->plan, opened->path, opened->contentHash);
  lock_ = planLock(stateFolderHere(), opened->path);
  recent_.add(opened->path);
  canvas_->showWholeTake();
  canvas_->setFocus();
  if (!opened->notes.empty()) tellProblems(tr("Kept without being understood"), opened->notes);
  if (!lock_) tell(tr("Another window has this plan open: saving here replaces what it saves"));
  return true;
}

void MainWindow::offerRecovery() {
  const auto left = unsavedSessions(stateFolderHere() + QStringLiteral("/recovery"));
  for (const auto& session : left) {
    if (session.states.empty()) continue;
    const auto& state = session.states.front();
    const auto read = file::readPlan(state.planText);
    if (!read) continue;
    const QString name = state.planPath.isEmpty() ? tr("a plan without a file") : QFileInfo(state.planPath).fileName();
    auto* bar = new QPushButton(tr("Unsaved changes of %1 from %2 were kept: open them")
                                    .arg(name, state.when.toLocalTime().toString(QStringLiteral("d MMM hh:mm:ss"))),
                                this);
    centralWidget()->layout()->addWidget(bar);
    connect(bar, &QPushButton::clicked, this, [this, bar, session, state, plan = read->plan] {
      document_.start(std::make_shared<const plan::Plan>(plan), state.planPath, state.planFileHash, true);
      if (recovery_->writeNow()) discard(stateFolderHere() + QStringLiteral("/recovery"), session);
      bar->deleteLater();
    });
    return;
  }
}

void MainWindow::askOpen() {
  const QString path =
      QFileDialog::getOpenFileName(this, tr("Open a plan"), document_.path(), tr("Wend plans (*.wend);;All files (*)"));
  if (!path.isEmpty()) open(path);
}

bool MainWindow::save() {
  return document_.path().isEmpty() ? saveAs() : saveTo(document_.path());
}

bool MainWindow::saveAs() {
  const QString path =
      QFileDialog::getSaveFileName(this, tr("Save the plan as"), document_.path(), tr("Wend plans (*.wend)"));
  return !path.isEmpty() && saveTo(path);
}

bool MainWindow::saveTo(const QString& path) {
  if (path == document_.path() && changedByOthers(document_)) {
    tell(tr("%1 was changed by another program since it was opened: save under another name").arg(path));
    return false;
  }
  const auto written = savePlan(document_, path);
  if (!written) {
    tellProblems(tr("Not saved"), written.problems());
    return false;
  }
  recent_.add(path);
  tell(tr("Saved %1").arg(path));
  return true;
}

void MainWindow::showRecent(QPoint at) {
  QMenu menu(this);
  for (const QString& path : recent_.paths()) menu.addAction(path, this, [this, path] { open(path); });
  if (menu.isEmpty()) menu.addAction(tr("No plan was open before"))->setEnabled(false);
  menu.exec(at);
}

/// The staves of a role, or one by one: the twin of a click on their names.
void MainWindow::showStaves(QPoint at) {
  struct Entry {
    QString words;
    sheets::Role role;
  };
  const Entry roles[] = {{tr("All staves"), sheets::Role::everybody},
                         {tr("Camera assistant"), sheets::Role::assistant},
                         {tr("Photography"), sheets::Role::photography},
                         {tr("Director"), sheets::Role::director},
                         {tr("Operator"), sheets::Role::operating},
                         {tr("Floor"), sheets::Role::floor},
                         {tr("Sound"), sheets::Role::sound}};
  QMenu menu(this);
  for (const Entry& entry : roles)
    menu.addAction(entry.words, this, [this, role = entry.role] { score_->setFolded(sheets::foldedFor(role)); });
  menu.addSeparator();
  for (const auto& box : score_->staves()) {
    if (box.name == "clock" || box.name == "beats") continue;
    auto* action =
        menu.addAction(QString::fromStdString(box.name), this, [this, name = box.name] { score_->toggleStave(name); });
    action->setCheckable(true);
    action->setChecked(!box.folded);
  }
  menu.exec(at);
}

void MainWindow::nextSnag() {
  if (!bridge_.answers() || !bridge_.answers()->snags) return tell(tr("Snags are being computed"));
  const snags::Snag *next = nullptr, *first = nullptr;
  for (const auto& snag : *bridge_.answers()->snags) {
    if (snag.accepted) continue;
    if (!first) first = &snag;
    if (!next && snag.from > document_.playhead() + 1e-6) next = &snag;
  }
  if (!next) next = first;
  if (!next) return tell(tr("No snag found"));
  showSnag(*next);
}

void MainWindow::showSnag(const snags::Snag& snag) {
  const QString words = QString::fromStdString(snag.mend.empty() ? snag.text : snag.text + ". Mend: " + snag.mend);
  const auto place = snag.pos;
  const Selection chosen{Kind::snag, snag.key, -1};
  document_.setPlayhead(snag.from);
  document_.select(chosen);
  if (place) canvas_->showPlace(*place);
  tell(words);
}

void MainWindow::showSnagOf(const QString& key) {
  if (!bridge_.answers() || !bridge_.answers()->snags) return;
  const auto& all = *bridge_.answers()->snags;
  const auto snag = std::find_if(all.begin(), all.end(), [&](const auto& s) { return s.key == key.toStdString(); });
  if (snag != all.end()) showSnag(*snag);
}

/// The same key again brings everything back.
void MainWindow::showOnly(QWidget* face) {
  QWidget* all[] = {rail_, canvas_, right_, scoreFace_};
  const bool alone =
      std::all_of(std::begin(all), std::end(all), [face](QWidget* w) { return w == face || !w->isVisible(); });
  for (QWidget* w : all) w->setVisible(alone || w == face);
  upper_->setVisible(alone || face != scoreFace_);
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!document_.isModified()) return event->accept();
  QMessageBox ask(this);
  ask.setText(tr("There are unsaved changes."));
  auto* saveIt = ask.addButton(tr("Save"), QMessageBox::AcceptRole);
  auto* drop = ask.addButton(tr("Close without saving"), QMessageBox::DestructiveRole);
  auto* stay = ask.addButton(tr("Stay"), QMessageBox::RejectRole);
  ask.setEscapeButton(stay);
  ask.exec();
  const bool goes = ask.clickedButton() == drop || (ask.clickedButton() == saveIt && save());
  goes ? event->accept() : event->ignore();
}

}  // namespace wend::ui
