#include "ui/details/snag_list.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QScrollBar>
#include <QVBoxLayout>

#include "core/plan/edits_plan.h"
#include "core/units/clock_time.h"
#include "ui/details/snag_row.h"
#include "ui/details/snag_words.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {
namespace {

QString words(const std::string& text) {
  return QString::fromStdString(text);
}

/// As the plan has it now, which may be ahead of the snags.
const plan::Accepted* acceptanceOf(const plan::Plan& plan, const std::string& key) {
  for (const auto& accepted : plan.accepted)
    if (accepted.key == key) return &accepted;
  return nullptr;
}

bool hasAllWords(const snags::Snag& snag, const plan::Accepted* accepted, const QString& filter) {
  const QString all = words(snag.text + " " + snag.mend + " " + snag.rule + " " + snag.who + " " +
                            (accepted ? "accepted " + accepted->by + " " + accepted->note : std::string()));
  for (const QString& word : filter.split(QLatin1Char(' '), Qt::SkipEmptyParts))
    if (!all.contains(word, Qt::CaseInsensitive)) return false;
  return true;
}

QListWidgetItem* itemOf(const snags::Snag& snag, const plan::Accepted* accepted) {
  auto* item = new QListWidgetItem;
  const QString time = words(units::takeTimeText(snag.from));
  const QString by = accepted ? QObject::tr("accepted by %1").arg(words(accepted->by)) : QString();
  const QString note = accepted && !accepted->note.empty() ? QStringLiteral(": ") + words(accepted->note) : QString();
  const QString below = accepted ? by + note : words(snag.mend);
  item->setData(snagKey, words(snag.key));
  item->setData(snagFrom, snag.from);
  item->setData(snagBars, int(snag.severity));
  item->setData(snagTime, time);
  item->setData(snagText, words(snag.text));
  item->setData(snagBelow, below);
  item->setData(snagAccepted, accepted != nullptr);
  const QString line = QStringLiteral("%1, %2, %3. %4").arg(time, barsOf(snag.severity), words(snag.text), below);
  item->setData(Qt::AccessibleTextRole, line);
  item->setToolTip(line);
  return item;
}

}  // namespace

SnagList::SnagList(Document& document, AnswersBridge& bridge, QWidget* parent)
    : QWidget(parent),
      document_(document),
      bridge_(bridge),
      count_(new QLabel(this)),
      filter_(new QLineEdit(this)),
      list_(new QListWidget(this)),
      entry_(new QWidget(this)),
      by_(new QLineEdit(entry_)),
      note_(new QLineEdit(entry_)),
      accept_(new QPushButton(tr("Accept..."), this)),
      takeBack_(new QPushButton(tr("Take back"), this)),
      problem_(new QLabel(this)) {
  setAccessibleName(tr("Snags"));
  layOut();
  connect(filter_, &QLineEdit::textChanged, this, &SnagList::refresh);
  connect(list_, &QListWidget::itemClicked, this, &SnagList::goTo);
  connect(list_, &QListWidget::itemActivated, this, &SnagList::goTo);
  connect(list_, &QListWidget::currentItemChanged, this, [this] {
    closeEntry();
    refreshButtons();
  });
  connect(accept_, &QPushButton::clicked, this, &SnagList::acceptPressed);
  connect(by_, &QLineEdit::returnPressed, this, &SnagList::accept);
  connect(note_, &QLineEdit::returnPressed, this, &SnagList::accept);
  connect(takeBack_, &QPushButton::clicked, this, &SnagList::takeBack);
  connect(&bridge, &AnswersBridge::takeChanged, this, &SnagList::refresh);
  connect(&document, &Document::planChanged, this, &SnagList::refresh);
  connect(&document, &Document::selectionChanged, this, &SnagList::selectionChanged);
  setTheme(theme_);
  refresh();
}

void SnagList::layOut() {
  auto* rows = new QVBoxLayout(this);
  rows->setContentsMargins(16, 8, 16, 8);
  rows->setSpacing(8);
  auto* top = new QHBoxLayout;
  top->addWidget(count_);
  top->addWidget(filter_, 1);
  rows->addLayout(top);
  rows->addWidget(list_, 1);
  auto* names = new QHBoxLayout(entry_);
  names->setContentsMargins(0, 0, 0, 0);
  names->addWidget(by_, 1);
  names->addWidget(note_, 2);
  rows->addWidget(entry_);
  rows->addWidget(problem_);
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(accept_);
  buttons->addWidget(takeBack_);
  buttons->addStretch(1);
  rows->addLayout(buttons);
  count_->setFont(fontOf(14, true));
  problem_->setFont(fontOf(12));
  problem_->setWordWrap(true);
  for (QLineEdit* edit : {filter_, by_, note_}) edit->setFont(fontOf(14));
  filter_->setPlaceholderText(tr("words to look for"));
  filter_->setAccessibleName(tr("Words to look for"));
  by_->setPlaceholderText(tr("accepted by"));
  by_->setAccessibleName(tr("Accepted by"));
  note_->setPlaceholderText(tr("why"));
  note_->setAccessibleName(tr("Why"));
  list_->setAccessibleName(tr("Snags"));
  list_->setItemDelegate(new SnagRow(list_));
  list_->setUniformItemSizes(true);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  for (QLineEdit* edit : {by_, note_}) edit->installEventFilter(this);
  entry_->hide();
  problem_->hide();
}

void SnagList::setTheme(sheets::Theme theme) {
  theme_ = theme;
  static_cast<SnagRow*>(list_->itemDelegate())->setTheme(theme);
  list_->viewport()->update();
}

QString SnagList::currentKey() const {
  const QListWidgetItem* item = list_->currentItem();
  return item ? item->data(snagKey).toString() : QString();
}

void SnagList::refresh() {
  const QString current = currentKey();
  const int scrolled = list_->verticalScrollBar()->value();
  const plan::Plan& plan = *document_.shown();
  const bool known = bridge_.answers() && bridge_.answers()->snags;
  const QSignalBlocker quiet(list_);
  list_->clear();
  int all = 0, accepted = 0;
  if (known) {
    for (const auto& snag : *bridge_.answers()->snags) {
      const plan::Accepted* by = acceptanceOf(plan, snag.key);
      ++all;
      accepted += by ? 1 : 0;
      if (!hasAllWords(snag, by, filter_->text())) continue;
      list_->addItem(itemOf(snag, by));
      if (words(snag.key) == current) list_->setCurrentRow(list_->count() - 1);
    }
  }
  list_->verticalScrollBar()->setValue(scrolled);
  QString count = known ? (all == 1 ? tr("1 snag, %1 accepted") : tr("%1 snags, %2 accepted").arg(all)).arg(accepted)
                        : tr("being computed");
  if (known && bridge_.stale()) count += tr(", stale");
  count_->setText(count);
  if (currentKey() != current) closeEntry();
  refreshButtons();
}

void SnagList::refreshButtons() {
  const QListWidgetItem* item = list_->currentItem();
  accept_->setEnabled(item != nullptr);
  takeBack_->setEnabled(item && item->data(snagAccepted).toBool());
}

void SnagList::selectionChanged() {
  if (document_.selection().kind != Kind::snag) return;
  const QString key = words(document_.selection().id);
  for (int row = 0; row < list_->count(); ++row)
    if (list_->item(row)->data(snagKey).toString() == key) list_->setCurrentRow(row);
}

void SnagList::goTo(const QListWidgetItem* item) {
  const Selection snag{Kind::snag, item->data(snagKey).toString().toStdString(), -1};
  document_.setPlayhead(item->data(snagFrom).toDouble());
  document_.select(snag);
}

void SnagList::acceptPressed() {
  if (entry_->isVisibleTo(this)) return accept();
  const auto* accepted = acceptanceOf(*document_.plan(), currentKey().toStdString());
  if (accepted) {
    by_->setText(words(accepted->by));
    note_->setText(words(accepted->note));
  } else {
    note_->clear();  // the name stays: one person goes through many
  }
  entry_->show();
  accept_->setText(tr("Accept"));
  (by_->text().isEmpty() ? by_ : note_)->setFocus();
}

void SnagList::accept() {
  const std::string by = by_->text().trimmed().toStdString(), note = note_->text().trimmed().toStdString();
  if (by.empty()) {
    problem_->setText(tr("Accepted by whom? Type a name."));
    problem_->show();
    by_->setFocus();
    return;
  }
  propose(plan::acceptedSnag(*document_.plan(), currentKey().toStdString(), by, note), tr("Accept snag"));
}

void SnagList::takeBack() {
  propose(plan::unacceptedSnag(*document_.plan(), currentKey().toStdString()), tr("Take back accepted snag"));
}

void SnagList::propose(base::Result<plan::Plan> edited, const QString& label) {
  if (!edited) {
    problem_->setText(words(base::toText(edited.problems().front())));
    problem_->show();
    Q_EMIT toldProblem(problem_->text());
    return;
  }
  closeEntry();
  document_.propose(std::make_shared<const plan::Plan>(*std::move(edited)), label);
  list_->setFocus();
}

void SnagList::closeEntry() {
  entry_->hide();
  problem_->hide();
  accept_->setText(tr("Accept..."));
}

bool SnagList::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    closeEntry();
    list_->setFocus();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace wend::ui
