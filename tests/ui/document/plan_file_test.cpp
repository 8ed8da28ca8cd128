#include "ui/document/plan_file.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "core/file/plan_writer.h"
#include "ui/document/open.h"

namespace wend::ui {
namespace {

class PlanFile : public ::testing::Test {
 protected:
  QString at(const QString& name) const { return folder.filePath(name); }
  void put(const QString& name, const QByteArray& bytes) const {
    QFile file(name);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes);
  }
  static QByteArray bytesOf(const QString& name) {
    QFile file(name);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  }
  QTemporaryDir folder;
  QString path = folder.filePath(QStringLiteral("plan.wend"));
};

TEST_F(PlanFile, SamplesOpenAndSaveToTheSamePlan) {
  const QDir samples(QStringLiteral(WEND_SOURCE_DIR "/samples"));
  int opened = 0;
  for (const QString& name : samples.entryList({QStringLiteral("*.wend"), QStringLiteral("*.json")}, QDir::Files)) {
    const auto sample = openPlan(samples.filePath(name));
    ASSERT_TRUE(sample.ok()) << qPrintable(name) << ": " << base::toText(sample.problems()[0]);
    Document document;
    document.start(sample->plan, {}, {});
    ASSERT_TRUE(savePlan(document, path).ok());
    const auto again = openPlan(path);
    ASSERT_TRUE(again.ok()) << qPrintable(name) << ": " << base::toText(again.problems()[0]);
    EXPECT_EQ(*again->plan, *sample->plan);
    ++opened;
  }
  EXPECT_GT(opened, 0);
}

TEST_F(PlanFile, SavingTellsTheDocument) {
  Document document;
  plan::Plan plan;
  plan.title = "Bakery";
  document.propose(std::make_shared<const plan::Plan>(plan), QStringLiteral("Rename"));
  ASSERT_TRUE(savePlan(document, path).ok());
  EXPECT_FALSE(document.isModified());
  EXPECT_EQ(document.path(), path);
  EXPECT_FALSE(changedByOthers(document));
  EXPECT_EQ(openPlan(path)->contentHash, document.contentHash());
  EXPECT_EQ(openPlan(path)->plan->title, "Bakery");
}

TEST_F(PlanFile, SavingSavesThePlanAndNotAPreview) {
  Document document;
  plan::Plan preview;
  preview.title = "half way";
  document.setPreview(std::make_shared<const plan::Plan>(preview));
  ASSERT_TRUE(savePlan(document, path).ok());
  EXPECT_EQ(bytesOf(path), QByteArray::fromStdString(file::writePlan({})));
}

TEST_F(PlanFile, AFailedSaveChangesNothing) {
  Document document;
  document.start(document.plan(), path, "hash");
  plan::Plan plan;
  plan.title = "Bakery";
  document.propose(std::make_shared<const plan::Plan>(plan), QStringLiteral("Rename"));
  const auto written = savePlan(document, at(QStringLiteral("none/plan.wend")));
  ASSERT_FALSE(written.ok());
  EXPECT_EQ(written.problems()[0].code, "no-folder");
  EXPECT_TRUE(document.isModified());
  EXPECT_TRUE(document.undoStack().canUndo());
  EXPECT_EQ(document.path(), path);
  EXPECT_EQ(document.contentHash(), QByteArray("hash"));
}

TEST_F(PlanFile, UndoAfterASaveIsSavedToo) {
  Document document;
  plan::Plan plan;
  plan.title = "Bakery";
  document.propose(std::make_shared<const plan::Plan>(plan), QStringLiteral("Rename"));
  ASSERT_TRUE(savePlan(document, path).ok());
  document.undoStack().undo();
  EXPECT_TRUE(document.isModified());
  ASSERT_TRUE(savePlan(document, path).ok());
  EXPECT_EQ(openPlan(path)->plan->title, "");
  EXPECT_FALSE(document.isModified());
}

TEST_F(PlanFile, ASaveWithoutAChangeWritesTheSameBytes) {
  Document document;
  ASSERT_TRUE(savePlan(document, path).ok());
  const QByteArray first = bytesOf(path);
  const auto opened = openPlan(path);
  ASSERT_TRUE(opened.ok());
  document.start(opened->plan, path, opened->contentHash);
  ASSERT_TRUE(savePlan(document, path).ok());
  EXPECT_EQ(bytesOf(path), first);
}

TEST_F(PlanFile, AnothersChangeIsNoticedByContentAlone) {
  Document document;
  EXPECT_FALSE(changedByOthers(document));
  ASSERT_TRUE(savePlan(document, path).ok());
  const QByteArray bytes = bytesOf(path);
  put(path, bytes);
  EXPECT_FALSE(changedByOthers(document));
  put(path, bytes + " ");
  EXPECT_TRUE(changedByOthers(document));
  QFile::remove(path);
  EXPECT_TRUE(changedByOthers(document));
}

TEST_F(PlanFile, WhatIsNoPlanIsNamed) {
  const std::pair<QByteArray, const char*> cases[] = {
      {"", "empty"}, {"{", "cut"}, {"[]", "list"}, {QByteArray(100, '['), "nest"}};
  for (const auto& [bytes, name] : cases) {
    put(path, bytes);
    const auto opened = openPlan(path);
    ASSERT_FALSE(opened.ok()) << name;
    EXPECT_FALSE(opened.problems()[0].code.empty()) << name;
    EXPECT_FALSE(opened.problems()[0].remedy.empty()) << name;
  }
  EXPECT_EQ(openPlan(folder.path()).problems()[0].code, "not-a-file");
  EXPECT_EQ(openPlan(at(QStringLiteral("none"))).problems()[0].code, "no-file");
}

}  // namespace
}  // namespace wend::ui
