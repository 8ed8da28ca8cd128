/// Where Wend keeps what is neither plan nor setting: recovery, locks, the recent list.
#pragma once

#include <QString>

namespace wend::ui {

/// `$XDG_STATE_HOME/wend`, by default `~/.local/state/wend` (XDG Base Directory Specification 0.8; a relative value
/// counts as none). The caller reads the environment. Makes nothing.
QString stateFolder(const QString& xdgStateHome, const QString& home);

/// Makes the folder, and those above it, for its owner only. False when that fails.
bool madePrivate(const QString& folder);

}  // namespace wend::ui
