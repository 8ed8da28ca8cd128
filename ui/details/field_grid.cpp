#include "ui/details/field_grid.h"

#include <algorithm>

namespace wend::ui {
namespace {

constexpr int kPitch = FieldBox::kWidth + FieldBox::kGap;

}  // namespace

FieldGrid::FieldGrid(QWidget* parent) : QWidget(parent) {
  // Not fixed: that would hold the height to the hint's, which is that of four columns, and centre it in what fewer
  // need.
  QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
}

void FieldGrid::setTheme(sheets::Theme theme) {
  theme_ = theme;
  for (FieldBox* box : boxes_) box->setTheme(theme);
}

bool FieldGrid::fits(const Fields& fields) const {
  if (fields.size() != boxes_.size()) return false;
  for (std::size_t i = 0; i < fields.size(); ++i) {
    const bool same = boxes_[i]->label() == QString::fromStdString(fields[i].label) &&
                      quantities_[i] == fields[i].quantity && editable_[i] == fields[i].editable();
    if (!same) return false;
  }
  return true;
}

void FieldGrid::showFields(const Fields& fields, const plan::Plan& plan) {
  if (!fits(fields)) rebuild(fields);
  for (std::size_t i = 0; i < fields.size(); ++i) boxes_[i]->showValue(fields[i], plan);
}

void FieldGrid::rebuild(const Fields& fields) {
  QString focused;
  for (FieldBox* box : boxes_) {
    if (box->editor()->hasFocus()) focused = box->label();
    box->disconnect(this);
    box->hide();
    box->deleteLater();  // one of them may be telling us right now
  }
  boxes_.clear();
  quantities_.clear();
  editable_.clear();
  for (const Field& field : fields) {
    auto* box = new FieldBox(field, this);
    const int index = int(boxes_.size());
    connect(box, &FieldBox::committed, this, [this, index] { Q_EMIT committed(index); });
    connect(box, &FieldBox::restored, this, [this, index] { Q_EMIT restored(index); });
    connect(box, &FieldBox::nudgedBy, this, [this, index](double steps) { Q_EMIT nudgedBy(index, steps); });
    box->setTheme(theme_);
    box->show();
    boxes_.push_back(box);
    quantities_.push_back(field.quantity);
    editable_.push_back(field.editable());
    if (!focused.isEmpty() && box->label() == focused) box->editor()->setFocus();
  }
  for (std::size_t i = 1; i < boxes_.size(); ++i) setTabOrder(boxes_[i - 1]->editor(), boxes_[i]->editor());
  place();
  updateGeometry();
}

int FieldGrid::columnsIn(int width) {
  return std::clamp((width + FieldBox::kGap) / kPitch, 1, kColumns);
}

template <class Put>
int FieldGrid::flow(int columns, Put put) const {
  int column = 0, row = 0;
  for (FieldBox* box : boxes_) {
    const int wide = (box->width() + FieldBox::kGap) / kPitch;
    if (column > 0 && column + wide > columns) {
      column = 0;
      ++row;
    }
    put(box, column, row);
    column += wide;
  }
  return boxes_.empty() ? 0 : row + 1;
}

int FieldGrid::heightForWidth(int width) const {
  return flow(columnsIn(width), [](FieldBox*, int, int) {}) * FieldBox::kHeight;
}

QSize FieldGrid::sizeHint() const {
  const int width = kColumns * kPitch - FieldBox::kGap;
  return {width, heightForWidth(width)};
}

void FieldGrid::place() {
  flow(columnsIn(width()),
       [](FieldBox* box, int column, int row) { box->move(column * kPitch, row * FieldBox::kHeight); });
}

void FieldGrid::resizeEvent(QResizeEvent*) {
  place();
}

}  // namespace wend::ui
