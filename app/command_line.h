/// The words after `wend`, answered: a verb is run, a help page printed, a window opened.
///
/// Ensures   (1) standard output holds results and asked-for help only; everything else goes to standard error
///           (2) nothing depends on locale, home folder, display or width of the terminal, `open` and the window apart
///           (3) no exception and no trace reaches whoever typed the words
#pragma once

#include <string>
#include <vector>

#include "app/verbs/verb.h"

namespace wend::app {

Exit answered(const std::vector<std::string>& words);

}  // namespace wend::app
