/// A take written by hand in which nothing is wrong, and ways to spoil it.
#pragma once

#include <gtest/gtest.h>

#include "core/snags/rule_list.h"
#include "core/snags/stretch.h"

namespace wend::snags {

/// Ten seconds at ten samples a second of a take in which nothing is wrong.
inline Evidence quietTake() {
  auto plan = std::make_shared<plan::Plan>();
  plan->clock.length = 10;
  plan->beats.add({base::Id<plan::Beat>("b1"), "in", "", 2, {}});
  plan->lens = plan::Lens{};
  plan->performers.add({base::Id<plan::Performer>("ilse"), "ILSE", "A", 1.7, 0.25, {}, {}});
  plan->crew.add({base::Id<plan::Crew>("ac1"), "first assistant camera", 0.28, 1.8, 1.1, 1.1, {}, {}, {}});
  Evidence evidence;
  evidence.plan = plan;
  evidence.length = 10;
  evidence.step = 0.1;
  evidence.sightKnown = true;
  for (int i = 0; i <= 100; ++i) {
    Instant instant;
    instant.time = i * 0.1;
    instant.lens = LensAt{35, 39, 22, {0.35, 0.2}, 0};
    instant.focus.known = true;
    instant.focus.on = {"ilse"};
    instant.focus.wantedDistance = 2;
    instant.focus.warmth = 2;
    instant.focus.wobble = 0.1;
    instant.iris.set = 4;
    PerformerAt ilse;
    ilse.id = "ilse";
    ilse.present = true;
    ilse.pos = {0, 2};
    ilse.top = 1.7;
    ilse.inFrame = optics::Showing::whole;
    ilse.offset = 0.0;
    instant.performers = {ilse};
    CrewAt crew;
    crew.id = "ac1";
    crew.present = true;
    instant.crew = {crew};
    evidence.samples.push_back(instant);
  }
  return evidence;
}

/// What the rules find in the quiet take once it is changed.
template <class Change>
Snags with(Change change) {
  Evidence evidence = quietTake();
  change(evidence);
  return snagsOf(evidence);
}

/// Changes samples from second `from` to second `until`.
template <class Change>
Snags during(double from, double until, Change change) {
  return with([&](Evidence& evidence) {
    for (auto& sample : evidence.samples)
      if (sample.time >= from - 1e-9 && sample.time <= until + 1e-9) change(sample);
  });
}

inline void expectOne(const Snags& snags, const std::string& rule, Severity severity) {
  ASSERT_EQ(snags.size(), 1u) << rule;
  EXPECT_EQ(snags[0].rule, rule);
  EXPECT_EQ(snags[0].severity, severity);
  EXPECT_FALSE(snags[0].text.empty());
  EXPECT_FALSE(snags[0].mend.empty());
}

}  // namespace wend::snags
