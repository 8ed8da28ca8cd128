#include "ui/document/answers_bridge.h"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <algorithm>

#include "core/answers/footing.h"
#include "core/answers/glass_ground.h"
#include "core/answers/routes.h"

namespace wend::ui {

using answers::AnswersPtr;

namespace {

bool namesFiles(const plan::Plan& plan) {
  for (const auto& fixture : plan.fixtures)
    if (std::holds_alternative<plan::IesOutput>(fixture.output)) return true;
  return false;
}

/// The ground that shows in turned glass over the whole take. Null when cancelled.
std::shared_ptr<const answers::GlassGround> glassOf(const answers::Answers& answers, const base::Cancel& cancel) {
  const answers::Take& take = *answers.take;
  const double height = take.plan().sightRules.height;
  auto glass = answers::glassGroundOf(
      take, {height, {0, take.length()}, answers::groundCells(take, answers::groundGrid(take), height)}, cancel,
      answers.evidence->known->glass);
  return glass ? std::make_shared<const answers::GlassGround>(std::move(*glass)) : nullptr;
}

}  // namespace

AnswersBridge::AnswersBridge(Document& document, QObject* parent) : QObject(parent), document_(document) {
  connect(&document, &Document::planChanged, this, &AnswersBridge::edited);
  connect(&document, &Document::previewChanged, this, &AnswersBridge::planShown);
  connect(&document, &Document::playheadChanged, this, &AnswersBridge::playheadMoved);
  connect(&document, &Document::pathChanged, this, &AnswersBridge::moved);
  worker_ = std::jthread([this](std::stop_token stop) { work(stop); });
  planShown();
}

AnswersBridge::~AnswersBridge() {
  worker_.request_stop();
  const std::lock_guard lock(mutex_);
  running_.request_stop();
  if (waiting_) waiting_->stop.request_stop();
}

AnswersPtr AnswersBridge::withOldEvidence(const answers::TakePtr& take) const {
  auto answers = std::make_shared<answers::Answers>();
  answers->take = take;
  if (!whole_) return answers;
  // Old evidence is drawn against a new take only where both speak of the same people.
  const auto& before = whole_->take->plan();
  const auto& now = take->plan();
  const bool samePeople = before.performers.size() == now.performers.size() && before.crew.size() == now.crew.size();
  answers->ground = whole_->ground;
  answers->glass = whole_->glass;
  if (!samePeople) return answers;
  answers->evidence = whole_->evidence;
  answers->snags = whole_->snags;
  return answers;
}

/// A drag ends with the plan that was shown last: its snags may be known already.
void AnswersBridge::edited() {
  if (now_) before_ = now_;
  now_.reset();
  planShown();
  if (!stale_ && whole_ && whole_->take->planPtr() == document_.plan()) {
    compare();
    Q_EMIT takeChanged();
  }
}

/// What the edit that led to the plan did to the snags.
void AnswersBridge::compare() {
  now_ = whole_->snags;
  if (before_) change_ = snags::changeOf(*before_, *now_);
  // While routes are still looked for nobody knows that the lack of one is mended.
  if (answers::routesSearched(*whole_))
    std::erase_if(change_.cleared, [](const auto& snag) { return snag.rule == "route-impossible"; });
}

void AnswersBridge::planShown() {
  if (plan_ == document_.shown()) return;
  plan_ = document_.shown();
  auto take = answers::Take::of(plan_, attached_.luminairesOf(*plan_, document_.path()));
  if (!take) {
    trouble_ = take.problems();
    Q_EMIT changed();
    return;
  }
  trouble_.clear();
  stale_ = true;
  shown_ = withOldEvidence(*take);
  const double t = std::clamp(document_.playhead(), 0.0, (*take)->length());
  instant_ = answers::instantAt(**take, t, shown_->evidence.get());
  {
    const std::lock_guard lock(mutex_);
    running_.request_stop();
    waiting_ = Job{*take, std::stop_source(), ++asked_};
  }
  wake_.notify_one();
  Q_EMIT changed();
  Q_EMIT takeChanged();
}

void AnswersBridge::moved() {
  // Another plan was opened: its snags are no edit's doing.
  if (plan_ != document_.shown()) before_ = now_ = nullptr;
  // The files beside the plan are others now; a plan that names none has the same answers wherever it lies.
  if (!plan_ || !namesFiles(*plan_)) return;
  plan_.reset();
  planShown();
}

void AnswersBridge::playheadMoved() {
  if (!shown_) return;
  const double t = std::clamp(document_.playhead(), 0.0, shown_->take->length());
  instant_ = answers::instantAt(*shown_->take, t, shown_->evidence.get());
  Q_EMIT changed();
}

void AnswersBridge::work(std::stop_token stop) {
  // The newest that was worked out of each, whatever plan it is of: what edits leave alone is taken over.
  answers::Answers last;
  while (!stop.stop_requested()) {
    Job job;
    {
      std::unique_lock lock(mutex_);
      if (!wake_.wait(lock, stop, [this] { return waiting_.has_value(); })) return;
      job = std::move(*waiting_);
      waiting_.reset();
      running_ = job.stop;
    }
    const base::Cancel cancel(job.stop.get_token());
    auto evidence = answers::evidenceOf(*job.take, cancel, &last);
    if (!evidence) continue;
    last.take = job.take, last.evidence = *evidence;
    auto answers = std::make_shared<answers::Answers>();
    answers->take = job.take;
    answers->evidence = *evidence;
    answers->snags = std::make_shared<const snags::Snags>(snags::snagsOf(**evidence));
    const auto tell = [this, number = job.number](AnswersPtr done) {
      QMetaObject::invokeMethod(
          this, [this, number, done] { deliver(number, done); }, Qt::QueuedConnection);
    };
    tell(answers);
    if (auto ground = answers::groundOf(*job.take, {job.take->plan().sightRules.height}, cancel, last.ground.get())) {
      last.ground = *ground;
      auto withGround = std::make_shared<answers::Answers>(*answers);
      withGround->ground = *ground;
      tell(withGround);
      AnswersPtr latest = withGround;
      // Routes take longest, and few ask for them; glass that has turned is rare, and told after all else.
      const auto withRoutes = answers::withRoutes(withGround, cancel, last.routeGround);
      if (withRoutes && (*withRoutes)->routes) {
        last.routeGround = (*withRoutes)->routeGround;
        tell(latest = *withRoutes);
      }
      const auto glass = glassOf(*withGround, cancel);
      const bool news = glass && (!glass->empty() || (last.glass && !last.glass->empty()));
      if (glass) last.glass = glass;
      if (news) {
        auto withGlass = std::make_shared<answers::Answers>(*latest);
        withGlass->glass = glass;
        tell(withGlass);
      }
    }
  }
}

void AnswersBridge::deliver(quint64 number, AnswersPtr answers) {
  if (number != asked_ || answers->take->planPtr() != plan_) return;
  // The ground comes second, turned glass last: until then the old one stays, as old as it is.
  if (whole_ && ((!answers->ground && whole_->ground) || (!answers->glass && whole_->glass))) {
    auto patched = std::make_shared<answers::Answers>(*answers);
    if (!patched->ground) patched->ground = whole_->ground;
    if (!patched->glass) patched->glass = whole_->glass;
    answers = patched;
  }
  whole_ = shown_ = answers;
  if (answers->take->planPtr() == document_.plan()) compare();
  stale_ = false;
  instant_ = answers::instantAt(*shown_->take, instant_.time, shown_->evidence.get());
  Q_EMIT changed();
  Q_EMIT takeChanged();
}

void AnswersBridge::finish() {
  QElapsedTimer timer;
  timer.start();
  while (trouble_.empty() && (stale_ || !shown_->ground) && timer.elapsed() < 60000) {
    if (!stale_ && !shown_->take->plan().lens) return;
    QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 20);
  }
}

}  // namespace wend::ui
