/// The window as the program starts it.
#pragma once

#include <QString>

namespace wend::ui {

/// Opens the window, on the plan at that path if one is given, and runs until it is closed. Returns the exit code. A
/// plan that cannot be opened leaves the window open with the reason in it. Requires a display.
int runWindow(int argc, char** argv, const QString& planPath);

}  // namespace wend::ui
