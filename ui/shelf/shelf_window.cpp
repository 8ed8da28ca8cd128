#include "ui/shelf/shelf_window.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QShortcut>
#include <QVBoxLayout>

#include "core/plan/edits_camera.h"
#include "ui/style/fonts.h"
#include "ui/style/rows.h"

namespace wend::ui {
namespace {

constexpr int kPlace = Qt::UserRole;

const QString kMask = QStringLiteral("*.wendchart");

/// Name over facts, both readable: two lines are taller than a row of one.
class ChartRow : public TallRows {
 public:
  using TallRows::TallRows;
  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    return TallRows::sizeHint(option, index).expandedTo(QSize(0, 48));
  }
};

}  // namespace

ShelfWindow::ShelfWindow(Document& document, ChartShelf shelf, QWidget* parent)
    : QDialog(parent),
      document_(document),
      shelf_(std::move(shelf)),
      search_(new QLineEdit(this)),
      newName_(new QLineEdit(this)),
      list_(new QListWidget(this)),
      facts_(new QLabel(this)),
      status_(new QLabel(this)),
      marks_(new LensMarksTable(document, this)),
      use_(newButton(tr("Use in the plan"), tr("The chart becomes the plan's lens (Return)"), &ShelfWindow::use)),
      keep_(newButton(tr("Keep the plan's lens"), tr("A new chart on the shelf"), &ShelfWindow::keep)),
      import_(newButton(tr("Import..."), tr("A chart, or the lens of a plan, from a file"), &ShelfWindow::askImport)),
      export_(newButton(tr("Export..."), tr("The chart into a file elsewhere"), &ShelfWindow::askExport)),
      rename_(newButton(tr("Rename"), tr("Another name for the chart (F2)"), &ShelfWindow::startRename)),
      remove_(newButton(tr("Remove"), tr("Moves the file to the folder 'removed' (Delete)"), &ShelfWindow::remove)),
      putBack_(newButton(tr("Put back"), tr("The chart that was removed last"), &ShelfWindow::putBack)) {
  setWindowTitle(tr("Lens charts"));
  layOut();
  addKeys();
  connect(search_, &QLineEdit::textChanged, this, &ShelfWindow::refresh);
  connect(search_, &QLineEdit::returnPressed, this, &ShelfWindow::use);
  connect(newName_, &QLineEdit::returnPressed, this, &ShelfWindow::rename);
  connect(list_, &QListWidget::itemActivated, this, &ShelfWindow::use);
  connect(list_, &QListWidget::currentItemChanged, this, &ShelfWindow::refreshButtons);
  connect(&document, &Document::planChanged, this, &ShelfWindow::refresh);
  refresh();
  search_->setFocus();
}

QPushButton* ShelfWindow::newButton(const QString& words, const QString& tip, void (ShelfWindow::*act)()) {
  auto* made = new QPushButton(words, this);
  made->setToolTip(tip);
  made->setAccessibleDescription(tip);
  made->setAutoDefault(false);  // Return in a field must not press it
  connect(made, &QPushButton::clicked, this, act);
  return made;
}

QWidget* ShelfWindow::chartsSide() {
  auto* side = new QWidget(this);
  auto* rows = new QVBoxLayout(side);
  rows->setContentsMargins(0, 0, 0, 0);
  rows->setSpacing(8);
  rows->addWidget(search_);
  rows->addWidget(list_, 1);
  rows->addWidget(newName_);
  rows->addWidget(facts_);
  for (const auto& line : {std::initializer_list<QPushButton*>{use_, keep_},
                           std::initializer_list<QPushButton*>{import_, export_, rename_, remove_, putBack_}}) {
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    for (QPushButton* button : line) row->addWidget(button);
    row->addStretch(1);
    rows->addLayout(row);
  }
  return side;
}

void ShelfWindow::layOut() {
  search_->setPlaceholderText(tr("name, 35 mm, T2"));
  search_->setAccessibleName(tr("Words to look for"));
  newName_->setAccessibleName(tr("New name"));
  newName_->hide();
  list_->setAccessibleName(tr("Charts"));
  list_->setItemDelegate(new ChartRow(list_));
  list_->setUniformItemSizes(true);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  for (QLabel* line : {facts_, status_}) {
    line->setFont(fontOf(12));
    line->setWordWrap(true);
    line->setTextFormat(Qt::PlainText);
    line->setTextInteractionFlags(Qt::TextSelectableByMouse);
    line->setFocusPolicy(Qt::NoFocus);
  }
  for (QWidget* part : std::initializer_list<QWidget*>{search_, newName_, list_}) part->setFont(fontOf(14));
  auto* columns = new QHBoxLayout;
  columns->setSpacing(16);
  columns->addWidget(chartsSide(), 1);
  columns->addWidget(marks_, 1);
  auto* rows = new QVBoxLayout(this);
  rows->setContentsMargins(16, 16, 16, 16);
  rows->setSpacing(8);
  rows->addLayout(columns, 1);
  rows->addWidget(status_);
  resize(1120, 640);
  for (QWidget* watched : std::initializer_list<QWidget*>{search_, list_, newName_}) watched->installEventFilter(this);
}

void ShelfWindow::addKeys() {
  const auto add = [this](const QKeySequence& keys, auto act) {
    connect(new QShortcut(keys, this), &QShortcut::activated, this, act);
  };
  add(QKeySequence::Undo, [this] { document_.undoStack().undo(); });
  add(QKeySequence(QStringLiteral("Ctrl+Shift+Z")), [this] { document_.undoStack().redo(); });
  add(QKeySequence(QStringLiteral("F2")), [this] { startRename(); });
}

const ShelvedChart* ShelfWindow::current() const {
  const QListWidgetItem* item = list_->currentItem();
  return item ? &shelf_.charts()[item->data(kPlace).toULongLong()] : nullptr;
}

void ShelfWindow::refresh() {
  const QString path = list_->currentItem() ? list_->currentItem()->data(kPlace + 1).toString() : QString();
  const bool feet = document_.plan()->display == plan::LengthUnit::feet;
  const QSignalBlocker quiet(list_);
  list_->clear();
  for (const std::size_t place : fitting(shelf_.charts(), search_->text())) {
    const ShelvedChart& shelved = shelf_.charts()[place];
    auto* item = new QListWidgetItem(nameOf(shelved) + QLatin1Char('\n') + factsOf(shelved, feet), list_);
    item->setData(kPlace, qulonglong(place));
    item->setData(kPlace + 1, shelved.path);
    item->setToolTip(item->text());
  }
  choose(path);
  refreshButtons();
}

void ShelfWindow::choose(const QString& path) {
  for (int i = 0; i < list_->count(); ++i)
    if (list_->item(i)->data(kPlace + 1).toString() == path) return list_->setCurrentRow(i);
  list_->setCurrentRow(list_->count() > 0 ? 0 : -1);
}

void ShelfWindow::refreshButtons() {
  const ShelvedChart* chart = current();
  const bool readable = chart && chart->readable(), own = chart && !chart->starter;
  use_->setEnabled(readable);
  export_->setEnabled(readable);
  rename_->setEnabled(readable && own);
  remove_->setEnabled(own);
  keep_->setEnabled(document_.plan()->lens.has_value());
  putBack_->setVisible(!lastRemoved_.isEmpty());
  newName_->hide();
  QString facts;
  if (readable) facts = QString::fromStdString(chart->chart.notes);
  if (chart)
    for (const auto& problem : chart->readable() ? chart->notes : chart->problems)
      facts += (facts.isEmpty() ? QString() : QStringLiteral("\n")) + QString::fromStdString(base::toText(problem));
  facts_->setText(facts);
}

void ShelfWindow::told(const base::Result<QString>& done, const QString& words) {
  marks_->dropRefusal();
  status_->setText(done ? words : QString::fromStdString(base::toText(done.problems().front())));
  if (!done) return;
  refresh();
  choose(*done);
  refreshButtons();
}

void ShelfWindow::use() {
  const ShelvedChart* chart = current();
  if (!chart) return;
  if (!chart->readable()) return told(chart->problems, {});
  auto edited = plan::lensSet(*document_.plan(), chart->chart.lens);
  if (!edited) return told(edited.problems(), {});
  const QString name = nameOf(*chart), path = chart->path;
  document_.propose(std::make_shared<const plan::Plan>(*std::move(edited)), tr("Take lens %1").arg(name));
  told(path, tr("The plan's lens is %1 now").arg(name));
}

void ShelfWindow::keep() {
  const auto& lens = document_.plan()->lens;
  if (!lens) return;
  search_->clear();
  const auto path = shelf_.keep({*lens, {}, {}});
  told(path, path ? tr("Kept as %1").arg(*path) : QString());
}

void ShelfWindow::askImport() {
  const QString path = QFileDialog::getOpenFileName(this, tr("Import a lens chart"), {},
                                                    tr("Lens charts and plans (*.wendchart *.wend);;All files (*)"));
  if (!path.isEmpty()) importFrom(path);
}

void ShelfWindow::importFrom(const QString& path) {
  search_->clear();
  const auto kept = shelf_.import(path);
  told(kept, kept ? tr("Imported as %1").arg(*kept) : QString());
}

void ShelfWindow::askExport() {
  if (!current()) return;
  const QString path = QFileDialog::getSaveFileName(
      this, tr("Export the lens chart"), nameOf(*current()) + kMask.mid(1), tr("Lens charts (%1)").arg(kMask));
  if (!path.isEmpty()) exportTo(path);
}

void ShelfWindow::exportTo(const QString& path) {
  const ShelvedChart* chart = current();
  if (!chart || !chart->readable()) return;
  const auto written = shelf_.exportTo(path, chart->chart);
  marks_->dropRefusal();
  status_->setText(written ? tr("Written to %1").arg(path)
                           : QString::fromStdString(base::toText(written.problems().front())));
}

void ShelfWindow::startRename() {
  if (!rename_->isEnabled()) return;
  newName_->setText(nameOf(*current()));
  newName_->show();
  newName_->setFocus();
  newName_->selectAll();
}

void ShelfWindow::rename() {
  const ShelvedChart* chart = current();
  if (!chart) return;
  const auto path = shelf_.rename(*chart, newName_->text());
  told(path, tr("Renamed"));
  if (path) list_->setFocus();
}

void ShelfWindow::remove() {
  const ShelvedChart* chart = current();
  if (!chart) return;
  const int row = list_->currentRow();
  const auto path = shelf_.remove(*chart);
  if (path) lastRemoved_ = *path;
  told(path, path ? tr("Moved to %1").arg(*path) : QString());
  if (path) list_->setCurrentRow(std::min(row, list_->count() - 1));
}

void ShelfWindow::putBack() {
  if (lastRemoved_.isEmpty()) return;
  const auto path = shelf_.putBack(lastRemoved_);
  if (path) {
    lastRemoved_.clear();
    search_->clear();
  }
  told(path, tr("Put back"));
}

bool ShelfWindow::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::KeyPress) return QDialog::eventFilter(watched, event);
  const int key = static_cast<QKeyEvent*>(event)->key();
  if (watched == search_ && (key == Qt::Key_Down || key == Qt::Key_Up)) {
    list_->setFocus(Qt::TabFocusReason);
    return true;
  }
  if (watched == list_ && key == Qt::Key_Delete) {
    remove();
    return true;
  }
  if (watched == newName_ && key == Qt::Key_Escape) {
    newName_->hide();
    list_->setFocus();
    return true;
  }
  return QDialog::eventFilter(watched, event);
}

void showShelf(Document& document, QWidget* window) {
  auto* shelf = window->findChild<ShelfWindow*>();
  if (!shelf) {
    shelf = new ShelfWindow(document, ChartShelf(ChartShelf::usersFolder()), window);
    shelf->setAttribute(Qt::WA_DeleteOnClose);
  }
  shelf->show();
  shelf->raise();
  shelf->activateWindow();
}

}  // namespace wend::ui
