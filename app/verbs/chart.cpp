// wend chart: what a lens' own tables are worth, of a chart on its own or of a plan's lens.
#include "app/verbs/common.h"
#include "core/exchange/chart_json.h"
#include "core/file/chart_file.h"
#include "core/file/plan_reader.h"
#include "core/sheets/chart_text.h"
#include "core/sheets/text_tables.h"

namespace wend::app {

namespace {

/// Of a chart, or of the lens of a plan.
base::Result<file::ChartRead> chartAt(const std::string& path) {
  const auto bytes = bytesAt(path);
  if (!bytes) return bytes.problems();
  const auto chart = file::readChart(*bytes);
  if (chart) return chart;
  if (chart.problems().front().code != "wrong-format") return inFile(path, chart.problems());
  const auto read = file::readPlan(*bytes);
  if (!read) return inFile(path, read.problems().front().code == "wrong-format" ? chart.problems() : read.problems());
  if (!read->plan.lens) return noLens();
  return file::ChartRead{{*read->plan.lens, {}, {}}, {}};
}

Exit chart(const Arguments& arguments) {
  if (const auto fits = endingFits(arguments, {".txt", ".wendchart"}); !fits) return refused(fits.problems());
  const auto read = chartAt(arguments.operands()[0]);
  if (!read) return refused(read.problems());
  const plan::LensChart& chart = read->chart;
  if (arguments.text("--output").value_or("").ends_with(".wendchart"))
    return handedOut(arguments, file::writeChart(chart));
  if (arguments.has("--json")) return handedOut(arguments, exchange::chartJson(chart));
  const auto unit = arguments.has("--feet") ? units::LengthUnit::feet : units::LengthUnit::metres;
  return handedOut(arguments, sheets::problemsText(read->notes) + sheets::chartText(chart, unit));
}

}  // namespace

const Verb kChart{
    "chart",
    "CHART",
    "a lens chart, or a plan's lens: what its marks are worth, and which to add",
    "wend chart samples/first-batch.wend",
    {{"--feet", "", "distances in feet and inches"},
     kJson,
     {"--output", "FILE", "write there instead of printing; .wendchart saves the lens on its own (also -o)"},
     kQuiet},
    chart};

}  // namespace wend::app
