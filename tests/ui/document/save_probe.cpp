// Saves "new" N bytes long to a file and says how it went: what fault injection runs, small enough that a system call's
// number in the save is its number in the program.
#include <cstdio>
#include <cstdlib>
#include <string>

#include "ui/document/save.h"

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  const std::string bytes(std::strtoul(argv[2], nullptr, 10), 'n');
  const auto written = wend::ui::writeFile(QString::fromLocal8Bit(argv[1]), bytes);
  std::puts(written ? "saved" : written.problems()[0].code.c_str());
  return written ? 0 : 1;
}
