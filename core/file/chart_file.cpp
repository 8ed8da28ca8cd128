#include "core/file/chart_file.h"

#include "core/base/text.h"
#include "core/file/describe_camera.h"
#include "core/file/whole_document.h"

namespace wend::file {

template <class Fields>
void describe(Fields& f, Of<plan::LensChart>) {
  using T = plan::LensChart;
  f.text("notes", &T::notes);
  f.object("lens", &T::lens, Presence::must);
}

namespace {

constexpr FormatStamp kStamp{kChartFormat, kChartVersion, "lens chart"};

/// Marks nearer than the lens is said to focus: one of the two is a slip, and who measured it knows which.
void noteTooNear(const plan::Lens& lens, base::Problems& notes) {
  constexpr double kRounding = 1.005;  // an engraved foot mark is rounded to the half inch
  for (std::size_t i = 0; i < lens.focusMarks.size(); ++i) {
    const auto& distance = lens.focusMarks[i].distance;
    if (!distance || *distance * kRounding >= lens.closeFocus) continue;
    notes.push_back({"mark-nearer-than-closest", "/lens/focusMarks/" + std::to_string(i) + "/distance",
                     base::shortest(*distance) + " m", base::shortest(lens.closeFocus) + " m, closeFocus, or more",
                     "correct the mark or closeFocus"});
  }
}

}  // namespace

base::Result<ChartRead> readChart(std::string_view json) {
  auto whole = readWhole<plan::LensChart>(json, kStamp);
  if (!whole) return whole.problems();
  auto [chart, notes] = std::move(whole).value();
  noteTooNear(chart.lens, notes);
  return ChartRead{std::move(chart), std::move(notes)};
}

std::string writeChart(const plan::LensChart& chart) {
  return writtenWhole(chart, kStamp);
}

}  // namespace wend::file
