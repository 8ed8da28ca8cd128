#include "ui/shell/rail.h"

#include <QVBoxLayout>

#include "core/plan/edits_marks.h"
#include "ui/style/fonts.h"
#include "ui/style/icons.h"
#include "ui/style/palette.h"

namespace wend::ui {

Rail::Rail(Document& document, AnswersBridge& bridge, PlanCanvas& canvas, QWidget* parent)
    : QWidget(parent), document_(document), bridge_(bridge), canvas_(canvas) {
  setFixedWidth(kWidth);
  setAutoFillBackground(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(4, 8, 4, 8);
  column->setSpacing(4);
  pointer_ = add(QStringLiteral("aim"), tr("choose"), tr("Choose and drag marks; click ground for its windows"), true);
  tape_ = add(QStringLiteral("opening"), tr("tape"), tr("Tape between two points (M)"), true);
  auto* mark = add(QStringLiteral("mark"), tr("add mark"), tr("Add a mark to the chosen way at the playhead"), false);
  column->addSpacing(16);
  seen_ = add(QStringLiteral("crew"), tr("seen in"), tr("Ground: seconds until the lens sees it"), true);
  span_ = add(QStringLiteral("beat"), tr("this beat"), tr("Ground: clear over the beat that runs"), true);
  light_ = add(QStringLiteral("light-area"), tr("light"), tr("Ground: light against the set stop"), true);
  plain_ = add(QStringLiteral("wall"), tr("plain"), tr("Ground: the floor alone"), true);
  column->addStretch(1);
  connect(pointer_, &QToolButton::clicked, this, [this] { canvas_.setTaping(false); });
  connect(tape_, &QToolButton::clicked, this, [this] { canvas_.setTaping(!canvas_.taping()); });
  connect(mark, &QToolButton::clicked, this, &Rail::addMark);
  const auto ground = [this](QToolButton* button, sheets::Ground what) {
    connect(button, &QToolButton::clicked, this, [this, what] {
      canvas_.setGround(what);
      refresh();
    });
  };
  ground(seen_, sheets::Ground::untilSeen);
  ground(light_, sheets::Ground::light);
  ground(plain_, sheets::Ground::plain);
  connect(span_, &QToolButton::clicked, this, [this] {
    double from = 0, until = document_.shown()->clock.length;
    for (const auto& beat : document_.shown()->beats) {
      if (beat.time <= document_.playhead()) from = beat.time;
      if (beat.time > document_.playhead()) until = std::min(until, beat.time);
    }
    canvas_.setSpan({from, until});
    canvas_.setGround(sheets::Ground::clearSpan);
    refresh();
  });
  connect(&canvas_, &PlanCanvas::tapingChanged, this, &Rail::refresh);
  refresh();
}

QToolButton* Rail::add(const QString& icon, const QString& word, const QString& tip, bool checkable) {
  auto* button = new QToolButton(this);
  button->setText(word);
  button->setToolTip(tip);
  button->setAccessibleName(tip);
  button->setFont(fontOf(12));
  button->setToolButtonStyle(Qt::ToolButtonTextUnderIcon);
  button->setIconSize({24, 24});
  button->setFixedSize(76, 46);
  button->setCheckable(checkable);
  button->setAutoRaise(true);
  layout()->addWidget(button);
  buttons_.emplace_back(button, icon);
  return button;
}

void Rail::addMark() {
  const auto mark = markOf(document_.selection());
  if (!mark || !bridge_.answers()) return Q_EMIT canvas_.told(tr("Choose a mark of the way first"));
  const auto& people = bridge_.answers()->take->people();
  const auto& plan = *document_.plan();
  const motion::Track* track = mark->owner == plan::Owner::camera ? &people.camera()
                               : mark->owner == plan::Owner::performer
                                   ? people.performer(plan.performers.indexOf(mark->id))
                                   : people.crew(plan.crew.indexOf(mark->id));
  if (!track) return;
  const double t = document_.playhead();
  const auto added = plan::insertedMark(plan, {mark->owner, mark->id}, t, track->place(t));
  if (!added) return Q_EMIT canvas_.told(QString::fromStdString(added.problems().front().remedy));
  document_.propose(std::make_shared<const plan::Plan>(*added), tr("Add mark"));
}

void Rail::setTheme(sheets::Theme theme) {
  QPalette palette = this->palette();
  palette.setColor(QPalette::Window, colourOf(geometry::Tone::panel, theme));
  setPalette(palette);
  for (const auto& [button, icon] : buttons_) button->setIcon(iconOf(icon, theme));
}

void Rail::refresh() {
  pointer_->setChecked(!canvas_.taping());
  tape_->setChecked(canvas_.taping());
  seen_->setChecked(canvas_.ground() == sheets::Ground::untilSeen);
  span_->setChecked(canvas_.ground() == sheets::Ground::clearSpan);
  light_->setChecked(canvas_.ground() == sheets::Ground::light);
  plain_->setChecked(canvas_.ground() == sheets::Ground::plain);
}

}  // namespace wend::ui
