#include "app/verbs/common.h"

#include <unistd.h>

#include <QByteArray>
#include <QString>
#include <algorithm>
#include <cerrno>
#include <cstdio>

#include "app/interrupts.h"
#include "core/base/text.h"
#include "core/file/limits.h"
#include "core/file/plan_reader.h"
#include "core/units/time_text.h"
#include "ui/document/attached.h"
#include "ui/document/open.h"
#include "ui/document/save.h"

namespace wend::app {

using base::Problem;
using base::Result;

namespace {

void say(const std::string& line) {
  std::fprintf(stderr, "%s\n", line.c_str());
}

Result<std::string> standardInput() {
  std::string bytes;
  char buffer[65536];
  while (const std::size_t got = std::fread(buffer, 1, sizeof buffer, stdin)) {
    bytes.append(buffer, got);
    if (bytes.size() > file::kMostBytes)
      return Problem{"too-large", "standard input", "over 64 MiB", "a plan of at most 64 MiB",
                     "check what is piped in"};
  }
  return bytes;
}

}  // namespace

Exit refused(const base::Problems& problems, const std::string& file) {
  for (const auto& problem : problems) say("wend: " + (file.empty() ? "" : file + ": ") + base::toText(problem));
  return Exit::unusable;
}

Exit refused(const Problem& problem) {
  return refused(base::Problems{problem});
}

Result<std::string> bytesAt(const std::string& path) {
  if (path == "-") return standardInput();
  auto content = ui::readFile(QString::fromStdString(path), file::kMostBytes);
  if (!content) return content.problems();
  return std::move(content->bytes);
}

base::Problems inFile(const std::string& path, base::Problems problems) {
  for (auto& problem : problems) problem.where = path + (problem.where.empty() ? "" : " " + problem.where);
  return problems;
}

Result<Loaded> loaded(const std::string& path) {
  const auto bytes = bytesAt(path);
  if (!bytes) return bytes.problems();
  auto read = file::readPlan(*bytes);
  if (!read) return inFile(path, read.problems());
  Loaded loaded{std::make_shared<const plan::Plan>(std::move(read->plan)), std::move(read->notes), {}};
  ui::Attached attached;
  loaded.luminaires = attached.luminairesOf(*loaded.plan, path == "-" ? QString() : QString::fromStdString(path));
  loaded.notes.insert(loaded.notes.end(), attached.notes().begin(), attached.notes().end());
  return loaded;
}

Result<answers::TakePtr> takeAt(const std::string& path) {
  auto plan = loaded(path);
  if (!plan) return plan.problems();
  for (const auto& note : plan->notes) say("wend: note: " + path + " " + base::toText(note));
  return answers::Take::of(plan->plan, plan->luminaires);
}

Result<answers::AnswersPtr> answersAt(const std::string& path, bool quiet) {
  auto plan = loaded(path);
  if (!plan) return plan.problems();
  for (const auto& note : plan->notes) say("wend: note: " + path + " " + base::toText(note));
  const bool talk = !quiet && isatty(STDERR_FILENO) != 0;
  auto take = answers::Take::of(plan->plan, plan->luminaires);
  if (!take) return take.problems();
  if (talk) std::fprintf(stderr, "wend: computing the take ...\r");
  auto answers = answers::answersOf(*take);
  if (talk) std::fprintf(stderr, "\33[2K\r");
  return answers;
}

Result<double> timeWithin(const answers::Take& take, const std::string& text) {
  const plan::Plan& plan = take.plan();
  const units::TimecodeKind kind{take.frameRate(), plan.clock.dropFrame};
  const auto start = units::framesFrom(plan.clock.startTimecode, kind);
  const auto typed = units::timeFrom(text, {kind, start ? *start : 0});
  if (!typed) {
    base::Problems problems = typed.problems();
    for (auto& problem : problems) problem.where = "TIME";
    return problems;
  }
  if (!typed->beat.empty() && !plan::hasBeat(plan, typed->beat)) {
    std::vector<std::string> ids = {plan::kEndBeat};
    for (const auto& beat : plan.beats) ids.push_back(beat.id.text());
    const auto nearest = base::nearestWord(typed->beat, ids);
    return Problem{"no-such-beat", "TIME", "\"" + typed->beat + "\"", "a beat of the plan, seconds or a timecode",
                   nearest ? "did you mean " + *nearest + "?" : "the plan's beats are listed in its file"};
  }
  const double t = plan::secondsOf(plan, {typed->beat, typed->seconds});
  if (t < 0 || t > take.length()) {
    const bool label = std::count(text.begin(), text.end(), ':') + std::count(text.begin(), text.end(), ';') >= 2;
    return Problem{"out-of-take", "TIME", label ? "\"" + text + "\"" : base::shortest(t) + " s",
                   label ? take.timecodeAt(0) + " to " + take.timecodeAt(take.length())
                         : "0 to " + base::shortest(take.length()) + " s",
                   label ? "the take starts at " + take.timecodeAt(0) : "give a time within the take"};
  }
  return t;
}

Problem noLens() {
  return {"no-lens", "/lens", "no lens in the plan", "a lens", "without one nothing is known of sight; add it"};
}

Result<bool> operandsCount(const Arguments& arguments, const Verb& verb) {
  std::vector<std::string> wanted;
  for (const auto& word : base::split(verb.operands, ' '))
    if (!word.empty()) wanted.push_back(word);
  const auto& given = arguments.operands();
  if (given.size() < wanted.size() && wanted[given.size()].front() != '[')
    return Problem{"missing-operand", verb.name, "no " + wanted[given.size()], verb.operands,
                   "for example: " + verb.example};
  if (given.size() > wanted.size())
    return Problem{"surplus-operand", verb.name, "\"" + given[wanted.size()] + "\"",
                   verb.operands.empty() ? "nothing more" : verb.operands, "for example: " + verb.example};
  return true;
}

Result<bool> endingFits(const Arguments& arguments, std::vector<std::string> endings) {
  const std::string output = arguments.text("--output").value_or("-");
  const std::string name = output.substr(output.find_last_of('/') + 1);
  const std::size_t dot = name.find_last_of('.');
  // A name without an ending says nothing of what is wanted, and so does a hidden one.
  if (dot == std::string::npos || dot == 0) return true;
  if (arguments.has("--json")) endings = {".json", ".txt"};
  std::string expected;
  for (std::size_t i = 0; i < endings.size(); ++i) {
    if (output.ends_with(endings[i])) return true;
    expected += (i == 0 ? "" : i + 1 == endings.size() ? " or " : ", ") + endings[i];
  }
  return Problem{"unknown-format", "--output", "\"" + output + "\"", "a name that ends in " + expected,
                 "let the ending say what is wanted"};
}

Exit handedOut(const Arguments& arguments, const std::string& bytes) {
  const auto output = arguments.text("--output");
  if (output && *output != "-") {
    const UninterruptedWriting whole;
    const auto written =
        ui::writeFile(QString::fromStdString(*output), QByteArrayView(bytes.data(), qsizetype(bytes.size())));
    return written ? Exit::fine : refused(written.problems());
  }
  errno = 0;
  const bool whole = std::fwrite(bytes.data(), 1, bytes.size(), stdout) == bytes.size() && std::fflush(stdout) == 0;
  if (whole || errno == EPIPE) return Exit::fine;
  return refused(Problem{"write-failed", "standard output", "a write that failed", "room for what is printed",
                         "see whether the disk is full, or print elsewhere"});
}

}  // namespace wend::app
