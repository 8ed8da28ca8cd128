#include "ui/details/site_words.h"

#include "core/base/text.h"
#include "core/plan/date.h"

namespace wend::ui {

namespace {

base::Problem badSite(const std::string& text, const std::string& expected) {
  return {"bad-site", "/site", "\"" + text + "\"", expected, "type it like 51.5, -0.12, 2026-06-21, 1"};
}

}  // namespace

std::string siteText(const plan::Site& site) {
  return base::shortest(site.latitude) + ", " + base::shortest(site.longitude) + ", " + plan::dateText(site.date) +
         ", " + base::shortest(site.utcOffset);
}

base::Result<plan::Site> siteFrom(const std::string& text, plan::Site before) {
  const auto parts = base::split(text, ',');
  if (parts.size() != 3 && parts.size() != 4)
    return badSite(text, "degrees north, degrees east, a day, and hours ahead of UTC");
  const auto latitude = base::readNumber(base::trimmed(parts[0])),
             longitude = base::readNumber(base::trimmed(parts[1]));
  if (!latitude || !longitude) return badSite(text, "degrees north and degrees east first");
  const auto date = plan::dateFrom(base::trimmed(parts[2]));
  if (!date) return badSite(text, "a day as YYYY-MM-DD in the third place");
  const auto ahead = parts.size() == 4 ? base::readNumber(base::trimmed(parts[3])) : std::optional(0.0);
  if (!ahead) return badSite(text, "hours ahead of UTC in the last place");
  before.latitude = *latitude;
  before.longitude = *longitude;
  before.date = *date;
  before.utcOffset = *ahead;
  return before;
}

}  // namespace wend::ui
