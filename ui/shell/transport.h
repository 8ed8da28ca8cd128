/// Playing the take against the wall clock.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

#include "ui/document/document.h"

namespace wend::ui {

class Transport : public QObject {
  Q_OBJECT

 public:
  explicit Transport(Document& document, QObject* parent = nullptr);

  bool playing() const { return timer_.isActive(); }
  double speed() const { return speed_; }
  bool loopingBeat() const { return loop_; }

 public Q_SLOTS:
  void toggle();
  void stop();
  /// Times the wall clock. Requires speed > 0.
  void setSpeed(double speed);
  /// Plays the beat that runs over and over.
  void setLoopingBeat(bool loop);
  void toStart();
  void toNextBeat();
  void toPreviousBeat();

 Q_SIGNALS:
  void changed();

 private:
  void tick();
  /// The beat that runs at t, as a span.
  std::pair<double, double> beatAround(double t) const;

  Document& document_;
  QTimer timer_;
  QElapsedTimer clock_;
  double speed_ = 1;
  bool loop_ = false;
};

}  // namespace wend::ui
