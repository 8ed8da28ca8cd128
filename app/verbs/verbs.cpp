#include "app/verbs/verb.h"

namespace wend::app {

const Verb kDrift{"drift", "PLAN", "simulated takes (not yet)", "wend drift samples/first-batch.wend", {}, nullptr};
const Verb kExport{"export", "PLAN", "other formats (not yet)", "wend export samples/first-batch.wend --to take.csv",
                   {},       nullptr};
const Verb kNew{"new", "FILE", "a new plan (not yet)", "wend new scene.wend", {}, nullptr};

const std::vector<Verb>& verbs() {
  // Filled on first use: the verbs are values of other files, made before main begins.
  static const std::vector<Verb> all = {kOpen,   kCheck, kAt,    kTable, kPulls, kClear,  kSpot,
                                        kRoutes, kDrift, kSheet, kDraw,  kChart, kExport, kNew};
  return all;
}

}  // namespace wend::app
