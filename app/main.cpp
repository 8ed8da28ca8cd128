// The program. Verbs are answered before anything of the window is made, so that they need no display.
#include <string>
#include <vector>

#include "app/command_line.h"

int main(int argc, char** argv) {
  return static_cast<int>(wend::app::answered(std::vector<std::string>(argv + 1, argv + argc)));
}
