#include "ui/shell/top_bar.h"

#include <QHBoxLayout>
#include <QMenu>
#include <algorithm>

#include "core/base/text.h"
#include "core/plan/edits_plan.h"
#include "core/units/length.h"
#include "ui/shelf/shelf_window.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace wend::ui {

namespace {

constexpr double kSpeeds[] = {0.25, 0.5, 1};
const char* const kSpeedNames[] = {"\u00bc\u00d7", "\u00bd\u00d7", "1\u00d7"};

}  // namespace

QPushButton* TopBar::button(const QString& words, const QString& tip) {
  auto* made = new QPushButton(words, this);
  made->setToolTip(tip);
  made->setAccessibleName(tip);
  made->setFocusPolicy(Qt::TabFocus);
  return made;
}

TopBar::TopBar(Document& document, AnswersBridge& bridge, Transport& transport, QWidget* parent)
    : QWidget(parent), document_(document), bridge_(bridge), transport_(transport) {
  setFixedHeight(48);
  setAutoFillBackground(true);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(16, 8, 16, 8);
  row->setSpacing(8);
  title_ = new QLabel(this);
  title_->setFont(fontOf(18, true));
  revision_ = new QLabel(this);
  revision_->setFont(fontOf(14, true));
  facts_ = new QLabel(this);
  facts_->setFont(fontOf(14));
  for (auto* label : {title_, revision_, facts_}) row->addWidget(label);
  row->addStretch(1);
  addTransport(row);
  row->addStretch(1);
  undo_ = button(tr("Undo"), tr("Undo the last edit"));
  redo_ = button(tr("Redo"), tr("Redo the edit that was undone"));
  for (auto* made : {undo_, redo_}) row->addWidget(made);
  connect(undo_, &QPushButton::clicked, &document_.undoStack(), &QUndoStack::undo);
  connect(redo_, &QPushButton::clicked, &document_.undoStack(), &QUndoStack::redo);
  addUnits(row);
  snags_ = button(QString(), tr("List of snags"));
  auto* staves = button(tr("Staves \u25be"), tr("Staves of the score, by role or one by one"));
  connect(staves, &QPushButton::clicked, this,
          [this, staves] { Q_EMIT stavesAsked(staves->mapToGlobal(QPoint(0, staves->height()))); });
  for (auto* made : {snags_, staves, fileButton(), button(tr("Page"), tr("Dark, paper or red torch page"))})
    row->addWidget(made);
  connect(snags_, &QPushButton::clicked, this, &TopBar::snagsAsked);
  connect(qobject_cast<QPushButton*>(row->itemAt(row->count() - 1)->widget()), &QPushButton::clicked, this,
          &TopBar::themeAsked);
  connect(&document_, &Document::planChanged, this, &TopBar::refresh);
  connect(&document_, &Document::modifiedChanged, this, &TopBar::refresh);
  connect(&bridge_, &AnswersBridge::takeChanged, this, &TopBar::refresh);
  connect(&transport_, &Transport::changed, this, &TopBar::refresh);
  refresh();
}

void TopBar::addTransport(QHBoxLayout* row) {
  auto* back = button(QStringLiteral("|\u25c0"), tr("To the beat before"));
  play_ = button(QStringLiteral("\u25b6"), tr("Play (Space)"));
  auto* on = button(QStringLiteral("\u25b6|"), tr("To the next beat"));
  for (auto* made : {back, play_, on}) {
    made->setFixedWidth(44);
    row->addWidget(made);
  }
  connect(back, &QPushButton::clicked, &transport_, &Transport::toPreviousBeat);
  connect(play_, &QPushButton::clicked, &transport_, &Transport::toggle);
  connect(on, &QPushButton::clicked, &transport_, &Transport::toNextBeat);
  for (std::size_t i = 0; i < std::size(kSpeeds); ++i) {
    auto* speed = button(QString::fromUtf8(kSpeedNames[i]), tr("Play at that speed"));
    speed->setCheckable(true);
    speed->setFixedWidth(44);
    connect(speed, &QPushButton::clicked, this, [this, i] { transport_.setSpeed(kSpeeds[i]); });
    speeds_.push_back(speed);
    row->addWidget(speed);
  }
  loop_ = button(tr("loop beat"), tr("Play the beat over and over"));
  loop_->setCheckable(true);
  connect(loop_, &QPushButton::clicked, &transport_, &Transport::setLoopingBeat);
  row->addWidget(loop_);
}

/// One button for what happens once in an hour: a narrow screen has no room for five.
QPushButton* TopBar::fileButton() {
  auto* made = button(tr("File \u25be"), tr("Open, save and plans that were open last"));
  auto* menu = new QMenu(made);
  menu->addAction(tr("Open\tCtrl+O"), this, &TopBar::openAsked);
  menu->addAction(tr("Open one of the last"), this,
                  [this, made] { Q_EMIT recentAsked(made->mapToGlobal(QPoint(0, made->height()))); });
  menu->addSeparator();
  menu->addAction(tr("Save\tCtrl+S"), this, &TopBar::saveAsked);
  menu->addAction(tr("Save under another name\tCtrl+Shift+S"), this, &TopBar::saveAsAsked);
  menu->addSeparator();
  menu->addAction(tr("Lens charts\tCtrl+L"), this, [this] { showShelf(document_, window()); });
  made->setMenu(menu);
  made->setStyleSheet(QStringLiteral("QPushButton::menu-indicator { width: 0; }"));
  return made;
}

void TopBar::addUnits(QHBoxLayout* row) {
  metres_ = button(tr("m"), tr("Lengths in metres"));
  feet_ = button(tr("ft-in"), tr("Lengths in feet and inches"));
  for (auto* made : {metres_, feet_}) {
    made->setCheckable(true);
    made->setFixedWidth(52);
    row->addWidget(made);
  }
  const auto set = [this](plan::LengthUnit unit) {
    const auto changed = plan::displayUnitSet(*document_.plan(), unit);
    if (changed) document_.propose(std::make_shared<const plan::Plan>(*changed), tr("Change units"));
    refresh();
  };
  connect(metres_, &QPushButton::clicked, this, [set] { set(plan::LengthUnit::metres); });
  connect(feet_, &QPushButton::clicked, this, [set] { set(plan::LengthUnit::feet); });
}

void TopBar::setTheme(sheets::Theme theme) {
  QPalette palette = this->palette();
  palette.setColor(QPalette::Window, colourOf(geometry::Tone::panel, theme));
  setPalette(palette);
}

/// On a narrow screen the title is worth more than the take's facts.
void TopBar::resizeEvent(QResizeEvent*) {
  facts_->setVisible(width() >= 1600);
}

void TopBar::refresh() {
  const plan::Plan& plan = *document_.plan();
  const QString title = plan.title.empty() ? tr("Untitled") : QString::fromStdString(plan.title);
  title_->setText(document_.isModified() ? title + QStringLiteral(" \u2022") : title);
  title_->setToolTip(document_.isModified() ? tr("There are unsaved changes") : document_.path());
  revision_->setText(tr("rev %1").arg(QString::fromStdString(plan.revision)));
  std::string facts = base::fixed(plan.clock.length, 1) + " s \u00b7 " +
                      base::fixed(plan.clock.rate(), plan.clock.rateDenominator == 1 ? 0 : 2) + " fps";
  if (bridge_.answers()) {
    const auto unit = plan.display == plan::LengthUnit::feet ? units::LengthUnit::feet : units::LengthUnit::metres;
    facts += " \u00b7 " + units::lengthText(bridge_.answers()->take->people().camera().totalLength(), unit);
  }
  facts_->setText(QString::fromStdString(facts));
  play_->setText(transport_.playing() ? QStringLiteral("\u2759\u2759") : QStringLiteral("\u25b6"));
  for (std::size_t i = 0; i < speeds_.size(); ++i) speeds_[i]->setChecked(transport_.speed() == kSpeeds[i]);
  loop_->setChecked(transport_.loopingBeat());
  undo_->setEnabled(document_.undoStack().canUndo());
  redo_->setEnabled(document_.undoStack().canRedo());
  undo_->setToolTip(tr("Undo %1").arg(document_.undoStack().undoText()));
  redo_->setToolTip(tr("Redo %1").arg(document_.undoStack().redoText()));
  metres_->setChecked(plan.display == plan::LengthUnit::metres);
  feet_->setChecked(plan.display == plan::LengthUnit::feet);
  const bool known = bridge_.answers() && bridge_.answers()->snags;
  const auto open = known ? std::count_if(bridge_.answers()->snags->begin(), bridge_.answers()->snags->end(),
                                          [](const snags::Snag& snag) { return !snag.accepted; })
                          : 0;
  snags_->setText(!known            ? tr("snags \u2026")
                  : bridge_.stale() ? (open == 1 ? tr("1 snag, stale") : tr("%1 snags, stale").arg(open))
                  : open == 1       ? tr("1 snag")
                                    : tr("%1 snags").arg(open));
}

}  // namespace wend::ui
