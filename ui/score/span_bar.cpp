#include "ui/score/span_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <array>

#include "core/answers/replanned.h"
#include "core/base/text.h"
#include "core/units/typed.h"
#include "ui/style/fonts.h"

namespace wend::ui {

namespace {

QLineEdit* secondsEdit(const QString& name, QWidget* parent) {
  auto* edit = new QLineEdit(parent);
  edit->setFixedWidth(76);
  edit->setAccessibleName(name);
  edit->setToolTip(name);
  return edit;
}

QPushButton* newButton(const QString& words, const QString& tip, QWidget* parent) {
  auto* made = new QPushButton(words, parent);
  made->setToolTip(tip);
  made->setAccessibleDescription(tip);
  made->setFocusPolicy(Qt::TabFocus);
  return made;
}

}  // namespace

SpanBar::SpanBar(Document& document, AnswersBridge& bridge, ScoreView& score, QWidget* parent)
    : QWidget(parent),
      document_(document),
      bridge_(bridge),
      score_(score),
      from_(secondsEdit(tr("The span begins, seconds"), this)),
      until_(secondsEdit(tr("The span ends, seconds"), this)),
      axis_(new QComboBox(this)),
      plan_(newButton(tr("Let Wend plan it"), tr("The fewest moves in the span, in the place of those by hand"), this)),
      hand_(newButton(tr("Keep as hand keys"), tr("The planned track as keys, to be dragged one by one"), this)) {
  setAccessibleName(tr("Chosen span"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(16, 2, 16, 2);
  row->setSpacing(8);
  auto* title = new QLabel(tr("Span"), this);
  title->setFont(fontOf(14, true));
  auto* clear = newButton(tr("No span"), tr("Choose no span (Escape)"), this);
  axis_->addItems({tr("focus"), tr("iris"), tr("zoom")});
  axis_->setAccessibleName(tr("What is planned"));
  for (QWidget* part : std::initializer_list<QWidget*>{title, from_, new QLabel(tr("to"), this), until_,
                                                       new QLabel(tr("s"), this), axis_, plan_, hand_, clear})
    row->addWidget(part);
  row->addStretch(1);
  for (QLineEdit* edit : {from_, until_}) connect(edit, &QLineEdit::editingFinished, this, &SpanBar::typed);
  connect(plan_, &QPushButton::clicked, this, &SpanBar::planIt);
  connect(hand_, &QPushButton::clicked, this, &SpanBar::takeInHand);
  connect(clear, &QPushButton::clicked, this, [this] { score_.setSpan(std::nullopt); });
  connect(&score_, &ScoreView::spanChanged, this, &SpanBar::refresh);
  connect(&document_, &Document::selectionChanged, this, [this] {
    const Kind kind = document_.selection().kind;
    if (kind == Kind::focus || kind == Kind::pull) axis_->setCurrentIndex(0);
    if (kind == Kind::iris) axis_->setCurrentIndex(1);
    if (kind == Kind::zoom) axis_->setCurrentIndex(2);
  });
  refresh();
}

void SpanBar::refresh() {
  setVisible(score_.span().has_value());
  if (!score_.span()) return;
  from_->setText(QString::fromStdString(base::fixed(score_.span()->from, 1)));
  until_->setText(QString::fromStdString(base::fixed(score_.span()->until, 1)));
}

void SpanBar::typed() {
  const auto a = units::typedNumber(from_->text().toStdString()), b = units::typedNumber(until_->text().toStdString());
  if (!score_.span()) return;
  if (!a || !b || !(*a < *b)) {
    Q_EMIT told(tr("A span goes from a second to a later one: type both as numbers"));
    return refresh();
  }
  const geometry::Span span{*a, *b};
  // What is shown is rounded: a field that was left alone changes nothing.
  if (base::fixed(score_.span()->from, 1) != from_->text().toStdString() ||
      base::fixed(score_.span()->until, 1) != until_->text().toStdString())
    score_.setSpan(span);
}

plan::Axis SpanBar::chosenAxis() const {
  constexpr std::array kAxes{plan::Axis::focus, plan::Axis::iris, plan::Axis::zoom};
  return kAxes.at(static_cast<std::size_t>(axis_->currentIndex()));
}

bool SpanBar::ready() const {
  return bridge_.answers() && bridge_.answers()->take->planPtr() == document_.plan();
}

void SpanBar::perform(const base::Result<plan::Plan>& edited, const QString& label, const QString& already) {
  if (!edited) {
    const auto& problem = edited.problems().front();
    return Q_EMIT told(QString::fromStdString(base::toText(problem)));
  }
  if (*edited == *document_.plan()) return Q_EMIT told(already);
  document_.propose(std::make_shared<const plan::Plan>(*edited), label);
}

void SpanBar::planIt() {
  if (!ready() || !score_.span()) return;
  perform(answers::replanned(*bridge_.answers()->take, chosenAxis(), *score_.span()),
          tr("Plan %1 in the span").arg(axis_->currentText()),
          tr("Nothing changed: the %1 is planned there already").arg(axis_->currentText()));
}

void SpanBar::takeInHand() {
  if (!ready()) return;
  perform(answers::inHand(*bridge_.answers()->take, chosenAxis()), tr("Keep %1 as hand keys").arg(axis_->currentText()),
          tr("Nothing changed: the %1 is set by hand already").arg(axis_->currentText()));
}

}  // namespace wend::ui
