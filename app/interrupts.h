/// What happens when somebody presses Ctrl-C or closes the pipe that is written to.
#pragma once

namespace wend::app {

/// Ctrl-C says so on standard error and ends the program with 130; a closed pipe is told to whoever writes, not by a
/// signal.
void endQuietlyOnInterrupts();

/// The system's own ways again, for the window.
void leaveInterruptsToSystem();

/// Holds Ctrl-C back while it lives, so that a file that is being written is written.
class UninterruptedWriting {
 public:
  UninterruptedWriting();
  ~UninterruptedWriting();
  UninterruptedWriting(const UninterruptedWriting&) = delete;
  UninterruptedWriting& operator=(const UninterruptedWriting&) = delete;
};

}  // namespace wend::app
