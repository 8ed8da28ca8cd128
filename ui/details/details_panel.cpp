#include "ui/details/details_panel.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMenu>
#include <QVBoxLayout>

#include "ui/details/chosen_words.h"
#include "ui/details/fields.h"
#include "ui/details/new_things.h"
#include "ui/details/referrer_words.h"
#include "ui/details/snag_words.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {

using geometry::Tone;

namespace {

QLabel* newLabel(int px, bool bold, QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setFont(fontOf(px, bold));
  label->setTextFormat(Qt::PlainText);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  return label;
}

QLabel* newWrapped(QWidget* parent) {
  QLabel* label = newLabel(12, false, parent);
  label->setWordWrap(true);
  label->setFocusPolicy(Qt::NoFocus);
  return label;
}

void setColour(QLabel* label, Tone tone, sheets::Theme theme) {
  label->setStyleSheet(QStringLiteral("color: %1").arg(colourOf(tone, theme).name()));
}

void setTextOrHide(QLabel* label, const QString& text) {
  label->setText(text);
  label->setVisible(!text.isEmpty());
}

}  // namespace

DetailsPanel::DetailsPanel(Document& document, AnswersBridge& bridge, QWidget* parent)
    : QWidget(parent),
      document_(document),
      bridge_(bridge),
      heading_(newLabel(14, true, this)),
      remark_(newLabel(12, false, this)),
      problem_(newWrapped(this)),
      computed_(newWrapped(this)),
      change_(newWrapped(this)),
      contents_(new ContentsBox(document, this)),
      grid_(new FieldGrid(this)),
      lensMarks_(new LensMarksTable(document, this)),
      add_(new QPushButton(this)),
      remove_(new QPushButton(this)),
      way_(new QPushButton(tr("Remove all marks"), this)),
      route_(new QPushButton(tr("Take this route over"), this)),
      new_(new QPushButton(this)) {
  setAccessibleName(tr("Details"));
  setFocusPolicy(Qt::ClickFocus);
  layOut();
  connect(grid_, &FieldGrid::committed, this, &DetailsPanel::commit);
  connect(grid_, &FieldGrid::restored, this, &DetailsPanel::clearProblem);
  connect(grid_, &FieldGrid::nudgedBy, this, &DetailsPanel::nudge);
  connect(add_, &QPushButton::clicked, this, &DetailsPanel::addAtPlayhead);
  connect(remove_, &QPushButton::clicked, this, &DetailsPanel::removeChosen);
  connect(way_, &QPushButton::clicked, this, [this] { performRemoval(removedWay(subject())); });
  connect(route_, &QPushButton::clicked, this, [this] { perform(routeTakenOver(subject())); });
  connect(new_->menu(), &QMenu::aboutToShow, this, &DetailsPanel::offerNewThings);
  connect(new_->menu(), &QMenu::triggered, this, [this](const QAction* action) { addThing(action->text()); });
  connect(&document, &Document::selectionChanged, this, &DetailsPanel::refresh);
  connect(&document, &Document::planChanged, this, &DetailsPanel::refresh);
  connect(&document, &Document::previewChanged, this, &DetailsPanel::refresh);
  connect(&bridge, &AnswersBridge::takeChanged, this, &DetailsPanel::refresh);
  setTheme(theme_);
  refresh();
}

DetailsPanel::~DetailsPanel() = default;

void DetailsPanel::layOut() {
  auto* rows = rows_ = new QVBoxLayout(this);
  rows->setContentsMargins(16, 8, 16, 8);
  rows->setSpacing(4);
  auto* top = new QHBoxLayout;
  heading_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  top->addWidget(heading_, 1);
  remark_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  top->addWidget(remark_);
  rows->addWidget(contents_);
  rows->addLayout(top);
  rows->addWidget(grid_);
  rows->addWidget(lensMarks_);
  rows->addWidget(problem_);
  rows->addWidget(computed_);
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(add_);
  buttons->addWidget(remove_);
  buttons->addStretch(1);
  buttons->addWidget(new_);
  rows->addLayout(buttons);
  wayButtons_ = new QWidget(this);
  auto* wayButtons = new QHBoxLayout(wayButtons_);
  wayButtons->setContentsMargins(0, 0, 0, 0);
  wayButtons->addWidget(route_);
  wayButtons->addWidget(way_);
  wayButtons->addStretch(1);
  rows->addWidget(wayButtons_);
  rows->addWidget(change_);
  rows->addStretch(1);
  remove_->setText(tr("Remove"));
  new_->setText(tr("New\u2026"));
  new_->setMenu(new QMenu(new_));
  problem_->hide();
}

void DetailsPanel::setTheme(sheets::Theme theme) {
  theme_ = theme;
  setColour(heading_, Tone::ink, theme);
  setColour(remark_, Tone::ink2, theme);
  setColour(problem_, Tone::ink, theme);
  setColour(computed_, Tone::ink2, theme);
  setColour(change_, Tone::ink2, theme);
  grid_->setTheme(theme);
}

QWidget* DetailsPanel::editorOf(const QString& label) const {
  for (const FieldBox* box : grid_->boxes())
    if (box->label() == label) return box->editor();
  return nullptr;
}

Subject DetailsPanel::subject() const {
  return {*document_.shown(), chosen_, bridge_.answers().get(), document_.playhead()};
}

void DetailsPanel::refresh() {
  const Selection& now = document_.selection();
  const Selection before = chosen_;
  chosen_ = exists(*document_.shown(), now) ? now : Selection{};
  if (chosen_ != before) clearProblem();
  if (chosen_ != emptied_) emptied_ = {};
  const Subject about = subject();
  fields_ = fieldsOf(about);
  grid_->showFields(fields_, about.plan);
  lensMarks_->setVisible(chosen_.kind == Kind::lens);
  heading_->setText(QString::fromStdString(headingOf(about)));
  remark_->setText(QString::fromStdString(remarkOf(about)));
  refreshComputed(about);
  refreshButtons(about);
  refreshChange();
}

void DetailsPanel::refreshComputed(const Subject& about) {
  QStringList lines;
  for (const auto& line : computedOf(about))
    lines.append(QString::fromStdString(line.label) + QStringLiteral(": ") + QString::fromStdString(line.text));
  setTextOrHide(computed_, lines.join(QLatin1Char('\n')));
}

void DetailsPanel::refreshButtons(const Subject& about) {
  const auto adds = addedAtPlayhead(about);
  add_->setVisible(adds.has_value());
  if (adds) add_->setText(adds->label == "Add mark" ? tr("Add mark here") : tr("Add key here"));
  const auto removes = removedChosen(about);
  remove_->setVisible(removes.has_value());
  if (removes) remove_->setToolTip(QString::fromStdString(removes->label));
  const bool way = removedWay(about).has_value(), route = routeTakenOver(about).has_value();
  way_->setVisible(way);
  route_->setVisible(route);
  wayButtons_->setVisible(way || route);
  placeRoute(route);
}

/// A route that was found is why somebody without marks is looked at: it stands over their fields, where a low window
/// shows it; everything else that is computed stands under the fields that it follows from.
void DetailsPanel::placeRoute(bool first) {
  if (first == (rows_->indexOf(computed_) < rows_->indexOf(grid_))) return;
  for (QWidget* part : {static_cast<QWidget*>(computed_), wayButtons_}) rows_->removeWidget(part);
  const int at = first ? rows_->indexOf(grid_) : rows_->indexOf(problem_) + 1;
  rows_->insertWidget(at, computed_);
  rows_->insertWidget(first ? at + 1 : rows_->indexOf(change_), wayButtons_);
}

void DetailsPanel::refreshChange() {
  const bool edited = document_.undoStack().canUndo() || document_.undoStack().canRedo();
  setTextOrHide(change_, !edited           ? QString()
                         : bridge_.stale() ? tr("After the last edit: being computed")
                                           : changeWords(bridge_.change(), 8));
}

void DetailsPanel::commit(int index) {
  if (std::size_t(index) >= fields_.size()) return;
  const Field field = fields_[std::size_t(index)];
  FieldBox* const box = grid_->boxes()[std::size_t(index)];
  const std::string typed = box->text().toStdString();
  if (typed == textOf(field, *document_.shown())) return clearProblem();
  const auto value = valueFrom(field, *document_.plan(), typed);
  if (!value)
    refuse(box->label(), value.problems().front());
  else if (propose(field, *value, {}))
    return;
  // Whatever was chosen goes back to what is; what was typed stays to be mended.
  if (box->edit())
    box->edit()->setRefused(true);
  else
    box->showValue(field, *document_.shown());
}

bool DetailsPanel::propose(const Field& field, const Value& value, const QString& mergeKey) {
  auto edited = field.set(*document_.plan(), value);
  const QString label = QString::fromStdString(field.label);
  if (!edited) {
    refuse(label, edited.problems().front());
    return false;
  }
  clearProblem();
  for (FieldBox* box : grid_->boxes())
    if (box->label() == label && box->edit()) box->edit()->setPlanText(box->text());
  document_.propose(std::make_shared<const plan::Plan>(*std::move(edited)), tr("Set %1").arg(label), mergeKey);
  refresh();
  return true;
}

void DetailsPanel::nudge(int index, double steps) {
  FieldBox* const box = grid_->boxes()[std::size_t(index)];
  if (box->edit()->typed()) commit(index);
  if (std::size_t(index) >= fields_.size() || box->edit()->refused()) return;
  const Field field = fields_[std::size_t(index)];
  const auto value = nudged(field, *document_.plan(), steps);
  if (!value) return;
  propose(field, *value,
          QStringLiteral("nudge %1 %2 %3 %4")
              .arg(QString::fromStdString(field.label), QString::fromStdString(chosen_.id))
              .arg(int(chosen_.kind))
              .arg(chosen_.index));
}

bool DetailsPanel::perform(const std::optional<ChosenEdit>& edit) {
  if (!edit) return false;
  auto edited = edit->edited();
  const QString label = QString::fromStdString(edit->label);
  if (!edited) {
    const std::string referrers = referrersOf(*document_.shown(), edited.problems());
    referrers.empty() ? refuse(label, edited.problems().front()) : refuseAsNamed(label, referrers);
    return false;
  }
  clearProblem();
  document_.propose(std::make_shared<const plan::Plan>(*std::move(edited)), label, {}, edit->after);
  return true;
}

void DetailsPanel::performRemoval(const std::optional<ChosenEdit>& edit) {
  const bool wasPart = chosen_.index >= 0 || (edit && edit->after.any());
  const Selection after = edit ? edit->after : Selection{};
  if (perform(edit) && wasPart && after.index < 0 && document_.selection() == after) emptied_ = after;
}

void DetailsPanel::removeChosen() {
  performRemoval(removedChosen(subject()));
}

void DetailsPanel::removeByKey() {
  const Subject about = subject();
  if (!emptied_.any() || emptied_ != chosen_ || !removedChosen(about)) return removeChosen();
  tellProblem(tr("%1 stays: its last mark or key is gone. The button Remove takes it out, too")
                  .arg(QString::fromStdString(headingOf(about))));
}

void DetailsPanel::addAtPlayhead() {
  perform(addedAtPlayhead(subject()));
}

void DetailsPanel::offerNewThings() {
  new_->menu()->clear();
  for (const ChosenEdit& thing : newThings(subject())) new_->menu()->addAction(QString::fromStdString(thing.label));
}

void DetailsPanel::addThing(const QString& label) {
  for (ChosenEdit thing : newThings(subject())) {
    if (QString::fromStdString(thing.label) != label) continue;
    thing.label = "Add " + thing.label;
    perform(thing);
    return;
  }
}

void DetailsPanel::refuse(const QString& what, const base::Problem& problem) {
  QStringList parts;
  if (!problem.found.empty()) parts.append(QString::fromStdString(problem.found));
  if (!problem.expected.empty()) parts.append(tr("expected %1").arg(QString::fromStdString(problem.expected)));
  QString line = what + QStringLiteral(": ") + parts.join(QStringLiteral(", "));
  if (!problem.remedy.empty()) line += QStringLiteral("; ") + QString::fromStdString(problem.remedy);
  tellProblem(line);
}

void DetailsPanel::refuseAsNamed(const QString& what, const std::string& referrers) {
  tellProblem(tr("%1: refused, for %2 would be left pointing at nothing. Point that at something else or take it out "
                 "first")
                  .arg(what, QString::fromStdString(referrers)));
}

void DetailsPanel::tellProblem(const QString& line) {
  setTextOrHide(problem_, line);
  Q_EMIT toldProblem(line);
}

void DetailsPanel::clearProblem() {
  if (problem_->text().isEmpty()) return;
  setTextOrHide(problem_, {});
  Q_EMIT problemOver();
}

void DetailsPanel::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace) return removeByKey();
  QWidget::keyPressEvent(event);
}

}  // namespace wend::ui
