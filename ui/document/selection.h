/// What is chosen: one thing of the plan, or one mark, key or corner of it. Chosen in one face is chosen in all.
#pragma once

#include <string>

#include "core/plan/plan.h"

namespace wend::ui {

enum class Kind {
  none,
  beat,
  room,
  wall,
  opening,
  piece,
  area,
  underlay,
  prop,
  performer,
  camera,
  aim,
  lens,
  focus,  ///< keys: who the focus is on
  pull,   ///< keys by hand
  zoom,
  iris,
  fixture,
  crew,
  shelter,
  gear,
  cable,
  pole,
  link,
  pieceMove,  ///< a piece that moves; the index is of its keys
  density,    ///< keys of the variable density
  sight,      ///< the rules of sight
  sizes,      ///< the table of shot sizes
  speech,
  handover,
  snag,  ///< id: the snag's key; not part of the plan
};

struct Selection {
  Kind kind = Kind::none;
  std::string id;  ///< of a table's entity; empty for the camera, its keys and the plan's lists
  int index = -1;  ///< of a mark, key, corner or row; -1: the thing itself
  bool operator==(const Selection&) const = default;
  bool any() const { return kind != Kind::none; }
};

/// True when the plan has what is chosen. A snag is taken at its word.
bool exists(const plan::Plan& plan, const Selection& selection);

}  // namespace wend::ui
