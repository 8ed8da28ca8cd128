/// What the program says of itself.
#pragma once

#include <string>

#include "app/verbs/verb.h"

namespace wend::app {

/// Purpose, verbs, how times are written, what the exit codes mean.
std::string helpText();

/// Purpose, an example that runs, options.
std::string helpText(const Verb& verb);

/// "wend 0.1.0", then what it was built with.
std::string versionText();

}  // namespace wend::app
