/// The one-room sample opened in a document with its answers: what the tests of the panels work on.
#pragma once

#include <gtest/gtest.h>

#include <QTest>

#include "ui/document/answers_bridge.h"
#include "ui/document/plan_file.h"

namespace wend::ui {

class OneRoom : public ::testing::Test {
 protected:
  OneRoom() {
    const auto opened = openPlan(QString::fromUtf8(WEND_SOURCE_DIR "/samples/one-room.wend"));
    EXPECT_TRUE(opened.ok());
    document.start(opened->plan, {});
  }

  const plan::Plan& plan() const { return *document.plan(); }
  int steps() { return document.undoStack().count(); }

  Document document;
  AnswersBridge bridge{document};
};

}  // namespace wend::ui
