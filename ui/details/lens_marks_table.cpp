#include "ui/details/lens_marks_table.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QVBoxLayout>
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/chart_text.h"
#include "core/units/angle.h"
#include "ui/style/fonts.h"
#include "ui/style/rows.h"

namespace wend::ui {

using optics::ScaleOf;

namespace {

QString words(const std::string& text) {
  return QString::fromStdString(text);
}

QLineEdit* newEdit(const QString& name, QWidget* parent) {
  auto* edit = new QLineEdit(parent);
  edit->setPlaceholderText(name);
  edit->setAccessibleName(name);
  edit->setFont(fontOf(14));
  return edit;
}

QLabel* newLine(QWidget* parent) {
  auto* line = new QLabel(parent);
  line->setFont(fontOf(12));
  line->setWordWrap(true);
  line->setTextFormat(Qt::PlainText);
  return line;
}

std::optional<answers::ChartScale> scaleOf(const plan::Plan& plan, ScaleOf of) {
  if (!plan.lens) return std::nullopt;
  for (auto& scale : answers::chartScales(*plan.lens))
    if (scale.of == of) return std::move(scale);
  return std::nullopt;
}

}  // namespace

LensMarksTable::LensMarksTable(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      rings_(new QTabBar(this)),
      table_(new QTableWidget(0, columns, this)),
      value_(newEdit(tr("new mark"), this)),
      degrees_(newEdit(tr("degrees"), this)),
      witness_(newEdit(tr("witness"), this)),
      add_(new QPushButton(tr("Add"), this)),
      remove_(new QPushButton(tr("Remove row"), this)),
      advice_(newLine(this)),
      problem_(newLine(this)) {
  setAccessibleName(tr("Marks of the lens"));
  for (const QString& ring : {tr("Focus"), tr("Iris"), tr("Zoom")}) rings_->addTab(ring);
  layOut();
  table_->installEventFilter(this);
  connect(rings_, &QTabBar::currentChanged, this, [this] {
    problem_->hide();
    refresh();
  });
  connect(table_, &QTableWidget::cellChanged, this, &LensMarksTable::typed);
  connect(add_, &QPushButton::clicked, this, &LensMarksTable::add);
  for (QLineEdit* edit : {value_, degrees_, witness_})
    connect(edit, &QLineEdit::returnPressed, this, &LensMarksTable::add);
  connect(remove_, &QPushButton::clicked, this, &LensMarksTable::removeRow);
  connect(&document, &Document::planChanged, this, [this] {
    dropRefusal();
    refresh();
  });
  refresh();
}

void LensMarksTable::layOut() {
  auto* rows = new QVBoxLayout(this);
  rows->setContentsMargins(0, 0, 0, 0);
  rows->setSpacing(8);
  rings_->setAccessibleName(tr("Ring"));
  rings_->setExpanding(false);
  table_->setAccessibleName(tr("Marks"));
  table_->setItemDelegate(new TallRows(table_));
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->setTabKeyNavigation(false);
  table_->verticalHeader()->setDefaultSectionSize(32);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  table_->setFont(fontOf(14));
  auto* entry = new QHBoxLayout;
  for (QLineEdit* edit : {value_, degrees_, witness_}) entry->addWidget(edit, 1);
  entry->addWidget(add_);
  entry->addWidget(remove_);
  rows->addWidget(rings_);
  rows->addWidget(table_, 1);
  rows->addLayout(entry);
  rows->addWidget(advice_);
  rows->addWidget(problem_);
  problem_->hide();
  for (QPushButton* button : {add_, remove_}) button->setAutoDefault(false);
}

void LensMarksTable::showRow(int row, const RingMark& mark, const QString& miss) {
  const auto unit = document_.plan()->display;
  const QString texts[columns] = {words(markValueText(of(), mark.value, unit)), words(base::shortest(mark.degrees)),
                                  words(mark.witness), miss};
  for (int column = 0; column < columns; ++column) {
    // The item that is being typed into must outlive the edit it makes, so items are kept.
    if (QTableWidgetItem* kept = table_->item(row, column)) {
      kept->setText(texts[column]);
      continue;
    }
    auto* item = new QTableWidgetItem(texts[column]);
    if (column != witnessColumn) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    if (column == missColumn) item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
    table_->setItem(row, column, item);
  }
}

void LensMarksTable::refresh() {
  const plan::Plan& plan = *document_.plan();
  const bool feet = plan.display == plan::LengthUnit::feet;
  const QString measure = of() == ScaleOf::distance ? (feet ? tr("feet, inches") : tr("metres"))
                          : of() == ScaleOf::stop   ? tr("T")
                                                    : tr("mm");
  const int row = table_->currentRow(), column = table_->currentColumn();
  filling_ = true;
  table_->setHorizontalHeaderLabels({measure, tr("barrel, \u00b0"), tr("witness"), tr("others say")});
  table_->horizontalHeaderItem(missColumn)->setToolTip(tr("What the other marks say here when this one is left out"));
  table_->setColumnHidden(witnessColumn, of() != ScaleOf::distance);
  witness_->setVisible(of() == ScaleOf::distance);
  const auto marks = ringMarks(plan, of());
  const auto scale = scaleOf(plan, of());
  table_->setRowCount(int(marks.size()));
  for (std::size_t i = 0; i < marks.size(); ++i)
    showRow(int(i), marks[i], words(scale ? sheets::markMissText(*scale, i, plan.display) : "\u2013"));
  if (row >= 0) table_->setCurrentCell(std::min(row, table_->rowCount() - 1), std::max(column, 0));
  filling_ = false;
  setEnabled(plan.lens.has_value());
  showAdvice();
}

void LensMarksTable::showAdvice() {
  const plan::Plan& plan = *document_.plan();
  const auto scale = scaleOf(plan, of());
  if (!plan.lens)
    advice_->setText(tr("The plan has no lens: take one from the shelf."));
  else if (!scale)
    advice_->setText(tr("Two marks make a table; mark both ends of the ring first."));
  else
    advice_->setText(words(sheets::scaleAdvice(*scale, plan.display)));
}

void LensMarksTable::typed(int row, int column) {
  if (filling_ || column == missColumn) return;
  const plan::Plan& plan = *document_.plan();
  auto marks = ringMarks(plan, of());
  if (row < 0 || std::size_t(row) >= marks.size()) return;
  RingMark& mark = marks[std::size_t(row)];
  const std::string text = table_->item(row, column)->text().toStdString();
  if (column == witnessColumn) mark.witness = std::string(base::trimmed(text));
  if (column == valueColumn) {
    if (text == markValueText(of(), mark.value, plan.display)) return;
    const auto value = markValueFrom(of(), text, plan.display);
    if (!value) return refuse(value.problems().front());
    mark.value = *value;
  }
  if (column == degreesColumn) {
    const auto degrees = units::angleFrom(text);
    if (!degrees) return refuse(degrees.problems().front());
    mark.degrees = *degrees;
  }
  if (!propose(markSet(plan, of(), std::size_t(row), mark), tr("Set mark %1 of the lens").arg(row + 1),
               turnsBackWords(plan, of(), mark, std::size_t(row))))
    return;
  table_->setCurrentCell(row, column);
}

void LensMarksTable::add() {
  const plan::Plan& plan = *document_.plan();
  if (!plan.lens) return;
  if (value_->text().trimmed().isEmpty()) return value_->setFocus();
  if (degrees_->text().trimmed().isEmpty()) return degrees_->setFocus();
  const auto value = markValueFrom(of(), value_->text().toStdString(), plan.display);
  if (!value) return refuse(value.problems().front());
  const auto degrees = units::angleFrom(degrees_->text().toStdString());
  if (!degrees) return refuse(degrees.problems().front());
  const std::string witness = of() == ScaleOf::distance ? witness_->text().trimmed().toStdString() : std::string();
  const RingMark mark{*value, *degrees, witness};
  if (!propose(markAdded(plan, of(), mark), tr("Add mark of the lens"), turnsBackWords(plan, of(), mark, {}))) return;
  for (QLineEdit* edit : {value_, degrees_, witness_}) edit->clear();
  value_->setFocus();
}

void LensMarksTable::removeRow() {
  const int row = table_->currentRow();
  if (row < 0 || !document_.plan()->lens) return;
  propose(markRemoved(*document_.plan(), of(), std::size_t(row)), tr("Remove mark %1 of the lens").arg(row + 1));
}

bool LensMarksTable::propose(base::Result<plan::Plan> edited, const QString& label, const std::string& turnsBack) {
  if (!edited) {
    const base::Problem& problem = edited.problems().front();
    refuse(problem.code == "marks-turn-back" && !turnsBack.empty() ? turnsBack : base::toText(problem));
    return false;
  }
  problem_->hide();
  document_.propose(std::make_shared<const plan::Plan>(*std::move(edited)), label);
  return true;
}

/// The cell shows the plan's mark again; what was typed stands in the line.
void LensMarksTable::refuse(const std::string& why) {
  problem_->setText(words(why));
  problem_->show();
  refresh();
}

bool LensMarksTable::eventFilter(QObject* watched, QEvent* event) {
  if (watched == table_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Delete) {
    removeRow();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace wend::ui
