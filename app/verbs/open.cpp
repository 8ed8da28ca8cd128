// wend open: the window.
#include "app/interrupts.h"
#include "app/verbs/common.h"
#include "ui/shell/run_window.h"

namespace wend::app {

namespace {

Exit open(const Arguments& arguments) {
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
