/// Reads photometric data files of luminaires: IES LM-63 text of 1986, 1991, 1995, 2002 and 2019, of types A, B and C.
///
/// What real files do is taken: bytes of Latin-1, any of the three line ends, numbers broken over lines at will and
/// parted by blanks or commas, counts written as 3.0, labels in any order or none, a circle that stops one step short
/// of 360. What would be a guess is refused: wrong counts, angles that do not increase, negative light, numbers left
/// over behind the table.
///
/// Source    IES LM-63, its editions told apart by their first lines; Ian Ashdown, "Parsing the IESNA LM-63 photometric
///           data file" (1998), for the meaning of the range of horizontal angles.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/light/luminaire.h"

namespace wend::exchange {

inline constexpr std::size_t kMostIesBytes = std::size_t{8} << 20;  ///< of a file
inline constexpr std::size_t kMostIesAngles = 3601;                 ///< a table with a tenth of a degree goes around

enum class IesEdition { of1986, of1991, of1995, of2002, of2019 };

/// "[LUMCAT] A 12" is {"LUMCAT", "A 12"}, lines of [MORE] joined to it by a line feed. A line without brackets, as in
/// 1986, has no keyword. UTF-8 whatever the file held.
struct IesLabel {
  std::string keyword, text;
};

struct IesFile {
  light::Luminaire luminaire;
  IesEdition edition = IesEdition::of1986;
  std::vector<IesLabel> labels;
  double lamps = 1;
  double lumensPerLamp = -1;  ///< as stated, not part of any candela; -1 where the light was measured without a lamp's
  double watts = 0;
  base::Problems notes;  ///< what was read although it is not as it should be
};

/// The luminaire of such a file. Candela are table x multiplier x ballast factor, in the editions of 1986 and 1991 also
/// x ballast-lamp factor; what stands in its place since 1995 is no factor. Lengths in feet become metres.
///
/// Ensures   (1) any bytes: a luminaire or at least one problem, each with its line, what was found, what was expected
///           and what to do; (2) time and memory linear in the bytes, whatever the counts in them claim; (3) line ends
///           and line breaks do not matter.
/// Fails     `ies-too-large`, `ies-no-tilt` (not such a file at all), `ies-tilt-file` (the factors stand in another
///           file), `ies-tilt`, `ies-short`, `ies-number`, `ies-count`, `ies-factor`, `ies-type`,
///           `ies-units`, `ies-candela`, `ies-surplus`; angles as Photometry::of.
base::Result<IesFile> readIes(std::string_view bytes);

}  // namespace wend::exchange
