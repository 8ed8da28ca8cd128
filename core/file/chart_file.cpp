#include "core/file/chart_file.h"

#include "core/base/text.h"
#include "core/file/describe_camera.h"
#include "core/file/format_stamp.h"
#include "core/file/object_reader.h"
#include "core/file/object_writer.h"

namespace wend::file {

template <class Fields>
void describe(Fields& f, Of<plan::LensChart>) {
  using T = plan::LensChart;
  f.text("notes", &T::notes);
  f.object("lens", &T::lens, Presence::must);
}

namespace {

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
  ProblemList problems;
  JsonDocument document(json);
  if (!document.parse(problems)) return problems.told();
  if (auto problem = otherFormat(document.root(), {kChartFormat, kChartVersion, "lens chart"})) return *problem;
  ReadContext context(document.root(), problems);
  ChartRead read;
  ObjectReader<plan::LensChart> reader(context, document.root(), read.chart);
  reader.known("format");
  reader.known("version");
  describe(reader, Of<plan::LensChart>{});
  reader.finish();
  if (problems.count() > 0) return problems.told();
  read.notes = context.notes().told();
  noteTooNear(read.chart.lens, read.notes);
  return read;
}

std::string writeChart(const plan::LensChart& chart) {
  ObjectWriter<plan::LensChart> writer(chart);
  writer.fixed("format", Written::text(kChartFormat));
  writer.fixed("version", Written::raw(std::to_string(kChartVersion)));
  describe(writer, Of<plan::LensChart>{});
  return writer.finish().document();
}

}  // namespace wend::file
