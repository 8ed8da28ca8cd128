#include "ui/details/contents_box.h"

#include <algorithm>

#include "core/snags/stretch.h"

namespace wend::ui {
namespace {

class Lister {
 public:
  explicit Lister(const plan::Plan& plan) : plan_(plan) {}

  void one(const QString& words, Kind kind) { contents.push_back({words, {kind, {}, -1}}); }

  template <class T>
  void table(const QString& word, Kind kind, const base::Table<T>& rows) {
    for (const auto& row : rows) {
      const std::string id = row.id.text();
      contents.push_back({word + QLatin1Char(' ') + QString::fromStdString(snags::nameOf(plan_, id)), {kind, id, -1}});
    }
  }

  void rows(const QString& word, Kind kind, std::size_t count, const std::string& id = {}) {
    for (std::size_t i = 0; i < count; ++i)
      contents.push_back({word + QLatin1Char(' ') + QString::number(i + 1), {kind, id, int(i)}});
  }

  std::vector<Content> contents;

 private:
  const plan::Plan& plan_;
};

}  // namespace

std::vector<Content> contentsOf(const plan::Plan& plan) {
  Lister list(plan);
  list.one(QObject::tr("the plan"), Kind::none);
  list.one(QObject::tr("rules of sight"), Kind::sight);
  list.one(QObject::tr("shot sizes"), Kind::sizes);
  list.one(QObject::tr("camera"), Kind::camera);
  if (plan.lens) list.one(QObject::tr("lens"), Kind::lens);
  list.one(QObject::tr("focus"), Kind::focus);
  list.one(QObject::tr("zoom"), Kind::zoom);
  list.one(QObject::tr("iris"), Kind::iris);
  list.one(QObject::tr("density"), Kind::density);
  list.rows(QObject::tr("density key"), Kind::density, plan.camera.nd.size());
  list.rows(QObject::tr("pull"), Kind::pull, plan.focus.pulls.size());
  list.table(QObject::tr("beat"), Kind::beat, plan.beats);
  list.table(QObject::tr("performer"), Kind::performer, plan.performers);
  list.table(QObject::tr("prop"), Kind::prop, plan.props);
  list.table(QObject::tr("crew"), Kind::crew, plan.crew);
  list.table(QObject::tr("shelter"), Kind::shelter, plan.shelters);
  list.table(QObject::tr("gear"), Kind::gear, plan.gear);
  list.table(QObject::tr("cable"), Kind::cable, plan.cables);
  list.table(QObject::tr("pole"), Kind::pole, plan.poles);
  list.table(QObject::tr("link"), Kind::link, plan.links);
  list.table(QObject::tr("fixture"), Kind::fixture, plan.fixtures);
  list.table(QObject::tr("room"), Kind::room, plan.set.rooms);
  list.table(QObject::tr("wall"), Kind::wall, plan.set.walls);
  list.table(QObject::tr("opening"), Kind::opening, plan.set.openings);
  list.table(QObject::tr("piece"), Kind::piece, plan.set.pieces);
  for (const auto& piece : plan.set.pieces)
    list.rows(QObject::tr("move of %1").arg(QString::fromStdString(snags::nameOf(plan, piece.id.text()))),
              Kind::pieceMove, piece.moved.size(), piece.id.text());
  list.table(QObject::tr("area"), Kind::area, plan.set.areas);
  list.rows(QObject::tr("line"), Kind::speech, plan.speech.size());
  list.rows(QObject::tr("handover"), Kind::handover, plan.handovers.size());
  return std::move(list.contents);
}

ContentsBox::ContentsBox(Document& document, QWidget* parent) : QComboBox(parent), document_(document) {
  setAccessibleName(tr("Everything in the plan"));
  setToolTip(accessibleName());
  setMaxVisibleItems(24);
  setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  setMinimumContentsLength(16);
  connect(this, &QComboBox::activated, this, [this](int row) { document_.select(contents_[std::size_t(row)].what); });
  connect(&document, &Document::planChanged, this, &ContentsBox::refresh);
  connect(&document, &Document::selectionChanged, this, &ContentsBox::showChosen);
  refresh();
}

void ContentsBox::refresh() {
  if (listed_ == document_.plan()) return;
  listed_ = document_.plan();
  contents_ = contentsOf(*listed_);
  clear();
  for (const Content& content : contents_) addItem(content.words);
  showChosen();
}

/// What is chosen, or the whole it is a part of; nothing for a snag.
void ContentsBox::showChosen() {
  const Selection& chosen = document_.selection();
  const auto is = [&](int index) {
    return std::find_if(contents_.begin(), contents_.end(), [&](const Content& content) {
      return content.what == Selection{chosen.kind, chosen.id, index};
    });
  };
  auto found = is(chosen.index);
  if (found == contents_.end()) found = is(-1);
  setCurrentIndex(found == contents_.end() ? -1 : int(found - contents_.begin()));
}

}  // namespace wend::ui
