#include "tests/core/snags/quiet_take.h"

namespace wend::snags {
namespace {

Snags glass(const std::string& who, double returned, double until) {
  return with([&](Evidence& e) { e.panes = {{{3, until}, "w1", who, returned, 4.3, 12, {}}}; });
}

TEST(GlassMirror, IsANoteFromHalfTheBrightnessAndASecondOn) {
  expectOne(glass("", 0.5, 4), "glass-mirror", Severity::note);
  EXPECT_TRUE(glass("", 0.49, 4).empty());
  EXPECT_TRUE(glass("", 2, 3.9).empty());
  EXPECT_EQ(glass("", 1.3, 4)[0].key, "glass-mirror/camera/w1/b1/1");
  EXPECT_NE(glass("", 1.3, 4)[0].text.find("4.3 stops darker"), std::string::npos);
}

TEST(GlassShows, IsARiskAsSoonAsItShowsSomebody) {
  const Snags snags = glass("ac1", 1.3, 4);
  expectOne(snags, "glass-shows", Severity::risks);
  EXPECT_EQ(snags[0].key, "glass-shows/ac1/w1/b1/1");
  EXPECT_EQ(snags[0].text.rfind("first assistant camera shows in w1", 0), 0u);
  EXPECT_TRUE(glass("ac1", 1.3, 3.1).empty());
}

}  // namespace
}  // namespace wend::snags
