#include "core/plan/lens_marks.h"

#include <limits>

namespace wend::plan {

double markValue(const FocusMark& mark) {
  return mark.distance.value_or(std::numeric_limits<double>::infinity());
}
double markValue(const IrisMark& mark) {
  return mark.stop;
}
double markValue(const ZoomMark& mark) {
  return mark.focal;
}

namespace {

/// 1 or -1 from `before` to `after`; 0 where they are equal.
int wayOf(double before, double after) {
  return int(after > before) - int(after < before);
}

template <class Mark>
std::size_t turningBack(const std::vector<Mark>& marks) {
  int values = 0, degrees = 0;
  for (std::size_t i = 1; i < marks.size(); ++i) {
    const int value = wayOf(markValue(marks[i - 1]), markValue(marks[i]));
    const int turn = wayOf(marks[i - 1].deg, marks[i].deg);
    if (i == 1) {
      values = value;
      degrees = turn;
    }
    if (value == 0 || turn == 0 || value != values || turn != degrees) return i;
  }
  return marks.size();
}

}  // namespace

std::size_t firstTurningBack(const std::vector<FocusMark>& marks) {
  return turningBack(marks);
}
std::size_t firstTurningBack(const std::vector<IrisMark>& marks) {
  return turningBack(marks);
}
std::size_t firstTurningBack(const std::vector<ZoomMark>& marks) {
  return turningBack(marks);
}

}  // namespace wend::plan
