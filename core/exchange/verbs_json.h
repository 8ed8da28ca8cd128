/// What the verbs answer to --json: one object each, SI values, shortest numbers that read back exactly, an unbounded
/// far limit as null. Fields are only ever added. The schemas stand in tests/golden/schemas.
#pragma once

#include <string>

#include "core/answers/answers.h"
#include "core/answers/clear_ground.h"
#include "core/answers/glass_ground.h"
#include "core/base/problem.h"
#include "core/sheets/crew_sheet.h"
#include "core/sheets/dept_sheets.h"

namespace wend::exchange {

/// Links, booms, cables, exit lanes and ground outside over the take come with `evidence`, each where the plan has it.
std::string checkJson(const base::Problems& problems, const snags::Snags& snags,
                      const snags::Evidence* evidence = nullptr);
std::string instantJson(const answers::Instant& instant);
/// With the cures of a hot focus.
std::string instantJson(const plan::Plan& plan, const answers::Instant& instant);
/// Rows of instants.
std::string tableJson(const std::vector<answers::Instant>& instants);
/// With every move what of it shows, and for the iris what lamps could do instead.
std::string pullsJson(const answers::Answers& answers);
std::string spotJson(const answers::Take& take, geometry::Point pos, double height, const snags::SightOf& sight,
                     const std::vector<snags::PaneMirror>& panes);
/// `glass` is of the same span and of the clear ground alone; nothing is said of it where it is empty.
std::string clearJson(const answers::ClearGround& clear, const answers::GlassGround& glass);
std::string routesJson(const std::vector<sheets::RouteOf>& routes);
/// The sheets' own words in their columns, lengths in the plan's display units: what is printed, for programs that lay
/// out paper of their own. Beside them the figures behind each row to compute with, in SI under keys that end in their
/// unit.
std::string sheetsJson(const plan::Plan& plan, const std::vector<sheets::DeptSheet>& made);

}  // namespace wend::exchange
