/// The parts of a plan that are more than one value and less than an entity, as JSON: the counterpart of read_parts.h.
/// Each takes the owner's extras and the path from the owner to the part, and gives back the keys kept there.
#pragma once

#include "core/file/written.h"

namespace wend::file {

Written writtenMoment(const plan::Moment& moment, const plan::Extras& extras, const std::string& prefix);
Written writtenTarget(const plan::Target& target, const plan::Extras& extras, const std::string& prefix);
/// Adds outline, disc or points.
void addFootprint(Written& object, const plan::Footprint& shape, const plan::Extras& extras, const std::string& prefix);
Written writtenOutput(const std::variant<plan::BeamOutput, plan::IesOutput>& output, const plan::Extras& extras,
                      const std::string& prefix);
/// Adds near with within, sees, stays, holds or reaches.
void addNeed(Written& object, const plan::Need::What& need);
Written writtenOverFocal(const plan::OverFocal& values);
Written writtenClockReadings(const std::vector<plan::ClockReading>& readings);
Written writtenThresholds(const std::map<std::string, double>& factors, const plan::Extras& extras,
                          const std::string& prefix);
Written writtenExpose(const std::string& performer, const plan::Extras& extras, const std::string& prefix);
/// True when some key is kept under that path.
bool keepsUnder(const plan::Extras& extras, const std::string& prefix);

}  // namespace wend::file
