#include "ui/document/document.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/check.h"
#include "ui/document/replace_plan.h"

namespace wend::ui {

Document::Document(QObject* parent) : QObject(parent), plan_(std::make_shared<const plan::Plan>()) {
  connect(&undo_, &QUndoStack::cleanChanged, this, &Document::tellModified);
}

// The stack empties itself when it goes and must not tell a document that is half gone.
Document::~Document() {
  undo_.disconnect(this);
}

void Document::start(plan::PlanPtr plan, const QString& path, const QByteArray& contentHash, bool recovered) {
  WEND_CHECK(plan != nullptr);
  preview_ = nullptr;
  plan_ = std::move(plan);
  path_ = path;
  contentHash_ = contentHash;
  recovered_ = recovered;
  undo_.clear();
  const bool hadSelection = std::exchange(selection_, {}).any();
  const bool hadPlayhead = std::exchange(playhead_, 0) != 0;
  Q_EMIT pathChanged();
  Q_EMIT planChanged();
  if (hadSelection) Q_EMIT selectionChanged();
  if (hadPlayhead) Q_EMIT playheadChanged(playhead_);
  tellModified();
}

void Document::propose(plan::PlanPtr after, const QString& label, const QString& mergeKey,
                       std::optional<Selection> selection) {
  WEND_CHECK(after != nullptr);
  if (*after == *plan_) {
    dropPreview();
    if (selection) select(*selection);
    return;
  }
  const Selection chosen = selection.value_or(selection_);
  undo_.push(new ReplacePlan(*this, {plan_, std::move(after), label, mergeKey, selection_, chosen}));
}

void Document::setPreview(plan::PlanPtr preview) {
  WEND_CHECK(preview != nullptr);
  preview_ = std::move(preview);
  Q_EMIT previewChanged();
  keepInPlan();
}

void Document::dropPreview() {
  if (!preview_) return;
  preview_ = nullptr;
  Q_EMIT previewChanged();
  keepInPlan();
}

void Document::commitPreview(const QString& label, const QString& mergeKey) {
  if (preview_) propose(preview_, label, mergeKey);
}

void Document::setPlayhead(double seconds) {
  WEND_CHECK(!std::isnan(seconds));
  const double held = std::clamp(seconds, 0.0, std::max(0.0, shown()->clock.length));
  if (held == playhead_) return;
  playhead_ = held;
  Q_EMIT playheadChanged(held);
}

void Document::select(const Selection& selection) {
  const Selection next = exists(*shown(), selection) ? selection : Selection{};
  if (next == selection_) return;
  selection_ = next;
  Q_EMIT selectionChanged();
}

void Document::saved(const QString& path, const QByteArray& contentHash) {
  const bool moved = path != path_;
  path_ = path;
  contentHash_ = contentHash;
  recovered_ = false;
  undo_.setClean();
  if (moved) Q_EMIT pathChanged();
  tellModified();
}

void Document::show(plan::PlanPtr plan, const Selection& selection) {
  preview_ = nullptr;
  plan_ = std::move(plan);
  Q_EMIT planChanged();
  select(selection);
  keepInPlan();
}

void Document::keepInPlan() {
  setPlayhead(playhead_);
  select(selection_);
}

void Document::tellModified() {
  if (isModified() == toldModified_) return;
  toldModified_ = isModified();
  Q_EMIT modifiedChanged(toldModified_);
}

}  // namespace wend::ui
