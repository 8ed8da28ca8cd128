/// The typeface of Wend: B612, whose digits are equally wide and which was drawn for panels read in the dark.
#pragma once

#include <QFont>
#include <QString>

namespace wend::ui {

/// B612 of that height in px, or the system's plain face where it is not installed. Never hinted: widths are the same
/// at every device ratio and on paper. Requires px >= 1.
/// Not to be asked for QFontInfo::exactMatch(), which ends the program on a font with several families (Qt 6.4).
QFont fontOf(int px, bool bold = false);

/// Empty when B612 is installed; else one sentence that says what is missing, what is used and how to install it.
QString missingFontWarning();

}  // namespace wend::ui
