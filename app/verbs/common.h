/// What every verb does alike: reading the plan, understanding a time, handing out what it made.
#pragma once

#include <string>

#include "app/verbs/verb.h"
#include "core/answers/answers.h"

namespace wend::app {

/// Prints the problems on standard error, each with its place and remedy, and answers `unusable`.
Exit refused(const base::Problems& problems, const std::string& file = {});
Exit refused(const base::Problem& problem);

/// The content of that file; "-" is standard input.
base::Result<std::string> bytesAt(const std::string& path);
/// The problems of a file's content, the file's name before each place.
base::Problems inFile(const std::string& path, base::Problems problems);

struct Loaded {
  plan::PlanPtr plan;
  base::Problems notes;          ///< of the plan and of the files it names
  light::Luminaires luminaires;  ///< of the photometric files beside the plan
};
/// The plan at that path; "-" is standard input, which has no folder and so no files beside it.
base::Result<Loaded> loaded(const std::string& path);

/// The plan's path, the first operand, resolved to its take or its answers. Notes of the file go to standard error.
base::Result<answers::TakePtr> takeAt(const std::string& path);
base::Result<answers::AnswersPtr> answersAt(const std::string& path, bool quiet);

/// Seconds of a typed time within the take: seconds, timecode, beat with an offset.
base::Result<double> timeWithin(const answers::Take& take, const std::string& text);

/// What verbs that need sight answer where the plan has no lens.
base::Problem noLens();

/// Requires as many operands as the verb names, those in [brackets] left out or not; else the problem names the first
/// missing or surplus one.
base::Result<bool> operandsCount(const Arguments& arguments, const Verb& verb);

/// Whether --output ends in what the verb writes: one of `endings`, or .json or .txt beside --json. A name without an
/// ending does.
base::Result<bool> endingFits(const Arguments& arguments, std::vector<std::string> endings);

/// Prints, or writes to --output as a whole or not at all. A reader that closes the pipe has seen enough: that is fine.
Exit handedOut(const Arguments& arguments, const std::string& bytes);

}  // namespace wend::app
