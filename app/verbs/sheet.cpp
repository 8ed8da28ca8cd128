// wend sheet: paper for one department.
#include "app/verbs/common.h"

namespace wend::app {

const Verb kSheet{
    "sheet",
    "PLAN",
    "paper for one department (not yet)",
    "wend sheet samples/first-batch.wend --for focus",
    {{"--for", "WHOM", "focus, operator, crew, director, light, sound, marks, strips or all"}, kOutput, kQuiet},
    nullptr};

}  // namespace wend::app
