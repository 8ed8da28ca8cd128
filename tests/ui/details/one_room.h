/// A sample opened in a document with its answers: what the tests of the panels work on.
#pragma once

#include <gtest/gtest.h>

#include <QTest>

#include "ui/document/answers_bridge.h"
#include "ui/document/plan_file.h"

namespace wend::ui {

class OnSample : public ::testing::Test {
 protected:
  explicit OnSample(const char* sample) {
    const auto opened = openPlan(QString::fromUtf8(WEND_SOURCE_DIR "/samples/") + QString::fromUtf8(sample));
    EXPECT_TRUE(opened.ok());
    document.start(opened->plan, {});
  }

  const plan::Plan& plan() const { return *document.plan(); }
  int steps() { return document.undoStack().count(); }

  Document document;
  AnswersBridge bridge{document};
};

class OneRoom : public OnSample {
 protected:
  OneRoom() : OnSample("one-room.wend") {}
};

}  // namespace wend::ui
