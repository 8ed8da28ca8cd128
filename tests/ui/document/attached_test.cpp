#include "ui/document/attached.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "ui/document/answers_bridge.h"

namespace wend::ui {
namespace {

constexpr const char* kBulb = "TILT=NONE\n1 1 1 2 1 1 2 0 0 0\n1 1 60\n0 180\n0\n100 100\n";

class PlanFolder : public ::testing::Test {
 protected:
  void SetUp() override {
    ASSERT_TRUE(root.isValid());
    QDir(root.path()).mkpath(QStringLiteral("plan/lamps"));
  }
  QString at(const char* name) const { return root.filePath(QString::fromLatin1(name)); }
  void put(const char* name, const char* text) const {
    QFile file(at(name));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(text);
  }
  std::string codeOf(const char* name) const {
    const auto path = fileBelow(at("plan"), name);
    return path ? "" : path.problems()[0].code;
  }
  static plan::Plan naming(const std::vector<std::string>& files) {
    plan::Plan plan;
    for (const auto& file : files) {
      plan::Fixture lamp;
      lamp.id = base::Id<plan::Fixture>("f" + std::to_string(plan.fixtures.size()));
      lamp.output = plan::IesOutput{file, 1};
      plan.fixtures.add(lamp);
    }
    return plan;
  }
  QTemporaryDir root;
};

TEST_F(PlanFolder, HoldsWhatMayBeRead) {
  put("plan/lamps/bulb.ies", kBulb);
  put("secret.ies", kBulb);
  EXPECT_EQ(codeOf("lamps/bulb.ies"), "");
  EXPECT_EQ(codeOf("lamps/../lamps/bulb.ies"), "");
  EXPECT_EQ(codeOf("lamps/none.ies"), "no-file");
  EXPECT_EQ(codeOf("../secret.ies"), "outside-folder");
  EXPECT_EQ(codeOf("lamps/../../secret.ies"), "outside-folder");
  EXPECT_EQ(codeOf(at("secret.ies").toUtf8().constData()), "outside-folder");
  EXPECT_EQ(codeOf(""), "outside-folder");
}

TEST_F(PlanFolder, IsNotLeftThroughALink) {
  put("secret.ies", kBulb);
  put("plan/lamps/bulb.ies", kBulb);
  ASSERT_TRUE(QFile::link(at("secret.ies"), at("plan/link.ies")));
  ASSERT_TRUE(QFile::link(root.path(), at("plan/up")));
  ASSERT_TRUE(QFile::link(at("plan/lamps/bulb.ies"), at("plan/inside.ies")));
  EXPECT_EQ(codeOf("link.ies"), "outside-folder");
  EXPECT_EQ(codeOf("up/secret.ies"), "outside-folder");
  EXPECT_EQ(codeOf("inside.ies"), "");
}

TEST_F(PlanFolder, GivesItsLuminairesByTheNamesOfThePlan) {
  put("plan/lamps/bulb.ies", kBulb);
  put("plan/broken.ies", "TILT=NONE\n1 1 1 2 1 4 2 0 0 0\n1 1 60\n0 180\n0\n100 100\n");
  Attached attached;
  const auto plan = naming({"lamps/bulb.ies", "broken.ies", "none.ies", "lamps/bulb.ies"});
  const auto luminaires = attached.luminairesOf(plan, at("plan/a.wend"));
  ASSERT_EQ(luminaires.size(), 1u);
  EXPECT_EQ(luminaires.at("lamps/bulb.ies")->photometry.candelaAt(30, 0), 100);
  ASSERT_EQ(attached.notes().size(), 2u);
  EXPECT_EQ(attached.notes()[0].code, "ies-type");
  EXPECT_EQ(attached.notes()[0].where, "/fixtures/1/output/ies broken.ies line 2");
  EXPECT_EQ(attached.notes()[1].code, "no-file");
  EXPECT_TRUE(attached.luminairesOf(naming({}), at("plan/a.wend")).empty());
  EXPECT_TRUE(attached.notes().empty());
}

TEST_F(PlanFolder, IsReadAgainWhereAFileChanged) {
  put("plan/bulb.ies", kBulb);
  Attached attached;
  const auto plan = naming({"bulb.ies"});
  const auto first = attached.luminairesOf(plan, at("plan/a.wend")).at("bulb.ies");
  EXPECT_EQ(attached.luminairesOf(plan, at("plan/a.wend")).at("bulb.ies"), first) << "kept, not read again";
  put("plan/bulb.ies", "TILT=NONE\n1 1 1 2 1 1 2 0 0 0\n1 1 60\n0 180\n0\n2000 2000\n");
  EXPECT_EQ(attached.luminairesOf(plan, at("plan/a.wend")).at("bulb.ies")->photometry.peak(), 2000);
}

TEST_F(PlanFolder, IsMissingForAPlanWithoutAFile) {
  Attached attached;
  EXPECT_TRUE(attached.luminairesOf(naming({"bulb.ies"}), QString()).empty());
  ASSERT_EQ(attached.notes().size(), 1u);
  EXPECT_EQ(attached.notes()[0].code, "no-folder");
}

TEST_F(PlanFolder, GoesWithThePlanThatIsSavedElsewhere) {
  put("plan/bulb.ies", kBulb);
  plan::Plan plan = naming({"bulb.ies"});
  plan.clock.length = 1;
  plan.camera.marks.emplace_back().id = "c1";
  Document document;
  AnswersBridge bridge(document);
  document.start(std::make_shared<const plan::Plan>(plan), at("plan/a.wend"));
  EXPECT_EQ(bridge.answers()->take->luminaires().size(), 1u);
  EXPECT_TRUE(bridge.attachedNotes().empty());
  document.saved(at("b.wend"), {});
  EXPECT_TRUE(bridge.answers()->take->luminaires().empty()) << "there is no such file beside it there";
  ASSERT_EQ(bridge.attachedNotes().size(), 1u);
  EXPECT_EQ(bridge.attachedNotes()[0].code, "no-file");
  bridge.finish();
  EXPECT_EQ(bridge.answers()->take->luminaires().size(), 0u);
}

}  // namespace
}  // namespace wend::ui
