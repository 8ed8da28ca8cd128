// wend open: the window.
#include "app/interrupts.h"
#include "app/verbs/common.h"
#include "ui/shell/run_window.h"

namespace wend::app {

namespace {

/// Qt ends the program when it finds none, with words about plug-ins.
bool displayNamed() {
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    if (!qEnvironmentVariableIsEmpty(name)) return true;
  return false;
}

Exit open(const Arguments& arguments) {
  if (!displayNamed())
    return refused(base::Problem{"no-display", "the window", "no display", "a desktop session, or DISPLAY set",
                                 "without one, every verb but open works: see wend --help"});
  leaveInterruptsToSystem();
  // Qt keeps these for as long as the window lives.
  static char name[] = "wend";
  static char* argv[] = {name, nullptr};
  const auto& operands = arguments.operands();
  return static_cast<Exit>(ui::runWindow(1, argv, operands.empty() ? QString() : QString::fromStdString(operands[0])));
}

}  // namespace

const Verb kOpen{"open", "[PLAN]", "the window, on a plan if one is given", "wend open samples/first-batch.wend",
                 {},     open};

}  // namespace wend::app
