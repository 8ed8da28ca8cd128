/// What is chosen, in words: its heading, a remark beside it, and what follows from it.
#pragma once

#include "ui/details/field.h"

namespace wend::ui {

/// "Camera mark 7, beat 6 + 15.0 s", "Tom", "Opening D1", "The plan".
std::string headingOf(const Subject& subject);

/// "on an arc", "carried by Tom", or nothing.
std::string remarkOf(const Subject& subject);

/// A line of what follows: not to be edited, in the words of the sheets.
struct Computed {
  std::string label, text;
};
std::vector<Computed> computedOf(const Subject& subject);

/// "beat 6 + 15.0 s", "7.0 s" before the first beat.
std::string afterBeat(const plan::Plan& plan, double seconds);

}  // namespace wend::ui
