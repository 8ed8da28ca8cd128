#include "app/interrupts.h"

#include <signal.h>
#include <unistd.h>

namespace wend::app {

namespace {

constexpr int kInterrupted = 130;  // 128 + SIGINT, as shells have it

// Only what a signal may do: write and leave.
void interrupted(int) {
  constexpr char kWords[] = "\nwend: stopped; nothing was written\n";
  [[maybe_unused]] const auto written = write(STDERR_FILENO, kWords, sizeof kWords - 1);
  _exit(kInterrupted);
}

void masked(int how) {
  sigset_t set;
  sigemptyset(&set);
  sigaddset(&set, SIGINT);
  sigaddset(&set, SIGTERM);
  pthread_sigmask(how, &set, nullptr);
}

}  // namespace

void endQuietlyOnInterrupts() {
  struct sigaction action {};
  action.sa_handler = interrupted;
  sigaction(SIGINT, &action, nullptr);
  action.sa_handler = SIG_IGN;
  sigaction(SIGPIPE, &action, nullptr);
}

void leaveInterruptsToSystem() {
  struct sigaction action {};
  action.sa_handler = SIG_DFL;
  sigaction(SIGINT, &action, nullptr);
  sigaction(SIGPIPE, &action, nullptr);
}

UninterruptedWriting::UninterruptedWriting() {
  masked(SIG_BLOCK);
}

UninterruptedWriting::~UninterruptedWriting() {
  masked(SIG_UNBLOCK);
}

}  // namespace wend::app
