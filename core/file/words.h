/// The words that stand for a choice in a plan, each table in the order of its enum.
#pragma once

#include <string_view>

#include "core/plan/plan.h"

namespace wend::file {

/// A choice's word in the file.
template <class Enum>
struct Word {
  Enum value;
  std::string_view text;
};

inline constexpr Word<plan::LengthUnit> kLengthUnits[]{{plan::LengthUnit::metres, "m"}, {plan::LengthUnit::feet, "ft"}};
inline constexpr Word<plan::Pace> kPaces[]{{plan::Pace::even, "even"}, {plan::Pace::eased, "eased"}};
inline constexpr Word<plan::OpeningFill> kFills[]{{plan::OpeningFill::open, "open"},
                                                  {plan::OpeningFill::solid, "solid"},
                                                  {plan::OpeningFill::glass, "glass"},
                                                  {plan::OpeningFill::curtain, "curtain"}};
inline constexpr Word<plan::LeafKind> kLeafKinds[]{
    {plan::LeafKind::swing, "swing"}, {plan::LeafKind::slide, "slide"}, {plan::LeafKind::lift, "lift"}};
inline constexpr Word<plan::LeafHinge> kHinges[]{{plan::LeafHinge::start, "start"}, {plan::LeafHinge::end, "end"}};
inline constexpr Word<plan::WallSide> kSides[]{{plan::WallSide::left, "left"}, {plan::WallSide::right, "right"}};
inline constexpr Word<plan::Surface> kSurfaces[]{
    {plan::Surface::solid, "solid"}, {plan::Surface::glass, "glass"}, {plan::Surface::mirror, "mirror"}};
inline constexpr Word<plan::AreaUse> kUses[]{{plan::AreaUse::light, "light"},     {plan::AreaUse::hazard, "hazard"},
                                             {plan::AreaUse::keepOut, "keepOut"}, {plan::AreaUse::exitLane, "exitLane"},
                                             {plan::AreaUse::noisy, "noisy"},     {plan::AreaUse::outside, "outside"}};
inline constexpr Word<plan::Posture> kPerformerPostures[]{{plan::Posture::stand, "stand"},
                                                          {plan::Posture::sit, "sit"},
                                                          {plan::Posture::kneel, "kneel"},
                                                          {plan::Posture::lie, "lie"}};
inline constexpr Word<plan::Posture> kCrewPostures[]{{plan::Posture::stand, "stand"},
                                                     {plan::Posture::crouch, "crouch"}};
inline constexpr Word<plan::LegShape> kLegShapes[]{
    {plan::LegShape::straight, "straight"}, {plan::LegShape::smooth, "smooth"}, {plan::LegShape::arc, "arc"}};
inline constexpr Word<plan::Receptor> kReceptors[]{{plan::Receptor::dome, "dome"}, {plan::Receptor::flat, "flat"}};
inline constexpr Word<plan::RigKind> kRigKinds[]{{plan::RigKind::stabilised, "stabilised"},
                                                 {plan::RigKind::handheld, "handheld"},
                                                 {plan::RigKind::dolly, "dolly"},
                                                 {plan::RigKind::crane, "crane"}};
inline constexpr Word<plan::BodiesHide> kBodiesHide[]{{plan::BodiesHide::nobody, "nobody"},
                                                      {plan::BodiesHide::performers, "performers"},
                                                      {plan::BodiesHide::everybody, "everybody"}};
inline constexpr Word<plan::LinkKind> kLinkKinds[]{{plan::LinkKind::control, "control"},
                                                   {plan::LinkKind::picture, "picture"},
                                                   {plan::LinkKind::sound, "sound"},
                                                   {plan::LinkKind::talk, "talk"}};
inline constexpr Word<plan::DistanceKind> kDistanceKinds[]{
    {plan::DistanceKind::flat, "flat"}, {plan::DistanceKind::slant, "slant"}, {plan::DistanceKind::floor, "floor"}};

}  // namespace wend::file
