/// Light distributions against closed forms and the lighting engineer's zonal method, and their cosine and distance
/// laws.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>

#include "core/base/text.h"
#include "core/exchange/ies_reader.h"
#include "core/light/fixture.h"

namespace wend::light {
namespace {

/// A photometric file written here, all round alike unless angles say otherwise.
std::string fileOf(const std::vector<double>& vertical, const std::vector<double>& horizontal,
                   const std::vector<std::vector<double>>& rows, int type = 1) {
  const auto listed = [](const std::vector<double>& values) {
    std::string text;
    for (const double value : values) text += base::shortest(value) + " ";
    return text + "\n";
  };
  std::string text = "IESNA:LM-63-2002\nTILT=NONE\n1 -1 1 " + std::to_string(vertical.size()) + " " +
                     std::to_string(horizontal.size()) + " " + std::to_string(type) + " 2 0 0 0\n1 1 60\n" +
                     listed(vertical) + listed(horizontal);
  for (const auto& row : rows) text += listed(row);
  return text;
}

Luminaire read(const std::string& text) {
  auto file = exchange::readIes(text);
  EXPECT_TRUE(file.ok());
  return std::move(file).value().luminaire;
}

/// The zonal method: candela in the middle of each zone around the axis, averaged over the planes, times the zone's
/// solid angle 2 pi (cos a - cos b) (Illuminating Engineering Society, "Lighting Handbook", zonal lumens; the method as
/// told at docs.agi32.com, "IES Indoor Report Zonal Lumens": the candela at the centre of the zone times the zonal
/// constant).
double zonalFlux(const Photometry& lamp, double zone) {
  double sum = 0;
  const int planes = 72;
  for (double a = 0; a < 180; a += zone) {
    const double constant =
        2 * std::numbers::pi * (std::cos(geometry::radians(a)) - std::cos(geometry::radians(a + zone)));
    for (int h = 0; h < planes; ++h) sum += constant * lamp.candelaAt(a + zone / 2, (h + 0.5) * 360 / planes) / planes;
  }
  return sum;
}

std::vector<double> angles(double from, double until, double step) {
  std::vector<double> all;
  for (int i = 0; from + i * step <= until + 1e-9; ++i) all.push_back(from + i * step);
  return all;
}

// The zonal constants of ten-degree zones as tables print them, to four places; from memory of the handbook's table and
// worked out again here.
TEST(ZonalConstants, AreTheSolidAnglesOfTheirZones) {
  const double printed[] = {0.0955, 0.2835, 0.4629, 0.6282, 0.7744, 0.8972, 0.9926, 1.0579, 1.0911};
  for (int i = 0; i < 9; ++i) {
    // A lamp that shines in one zone only: its flux is the constant, but for the two slopes at its edges.
    const double a = i * 10.0, b = a + 10, edge = 1e-6;
    std::vector<double> vertical{b, b + edge}, row{1, 0};
    if (a > 0) {
      vertical.insert(vertical.begin(), {a - edge, a});
      row.insert(row.begin(), {0, 1});
    } else {
      vertical.insert(vertical.begin(), 0);
      row.insert(row.begin(), 1);
    }
    EXPECT_NEAR(Photometry::of(vertical, {0}, {row})->totalFlux(), printed[i], 6e-5) << a;
  }
}

// An even source of I candela gives 4 pi I lumens and a matt one pi I: the definitions of the units.
TEST(TotalFlux, OfAnEvenAndOfAMattSource) {
  EXPECT_NEAR(read(fileOf({0, 180}, {0}, {{100, 100}})).photometry.totalFlux(), 1256.637, 1e-3);
  const auto vertical = angles(0, 90, 2.5);
  std::vector<double> row;
  for (const double v : vertical) row.push_back(std::max(0.0, 1000 * std::cos(geometry::radians(v))));
  // The table goes straight between its angles, which costs half a thousandth.
  EXPECT_NEAR(read(fileOf(vertical, {0}, {row})).photometry.totalFlux() / 3141.593, 1, 1e-3);
}

// Measured luminaires with absolute photometry, whose files state their lumens. Candela at every 2.5 degrees from the
// axis, as published; the flux is worked out here.
struct Measured {
  const char* source;
  double lumens;
  std::vector<double> horizontal;
  std::vector<std::vector<double>> candela;
};

TEST(TotalFlux, IsWhatFilesOfMeasuredLuminairesState) {
  const Measured measured[] = {
      {"GitHub echowuzangye/CU-calculations-based-on-IES-file, ies/7.IES, test ITL78222: a recessed downlight, 532 lm",
       532,
       {0},
       {{269, 268, 266, 264, 260, 256, 251, 245, 237, 229, 221, 211, 200, 189, 177, 165, 152, 140, 127,
         114, 102, 90,  79,  68,  58,  48,  39,  31,  24,  17,  12,  8,   6,   4,   3,   1,   0}}},
      {"GitHub polygonjs/polygonjs, src/core/lights/spotlight/ies/lm_63_1995.ts, luminaire 50988.2K3: 1218 lm",
       1218,
       {0},
       {{2225.9, 2154.6, 1986.3, 1758.9, 1532.7, 1342.4, 1182.9, 1045.2, 920.2, 806.6, 705.1, 617.7, 553.4,
         514.3,  474.4,  388.7,  249.2,  118.9,  46.3,   30.3,   26.5,   24.5,  23.0,  21.8,  20.6,  19.6,
         18.5,   17.0,   14.8,   12.0,   9.0,    6.5,    4.3,    2.5,    1.2,   0.4,   0.0}}},
      {"GitHub echowuzangye/CU-calculations-based-on-IES-file, ies/5.IES, test ITL84772: a pendant, 754 lm",
       754,
       {0, 22.5, 45, 67.5, 90},
       {{278, 278, 277, 275, 273, 270, 267, 263, 258, 252, 246, 239, 231, 223, 214, 205, 196, 186, 176,
         166, 156, 145, 135, 124, 113, 103, 92,  81,  70,  60,  50,  40,  31,  23,  15,  7,   0},
        {278, 278, 277, 275, 273, 270, 266, 262, 257, 251, 245, 238, 230, 222, 213, 204, 195, 185, 175,
         165, 155, 144, 134, 123, 112, 102, 91,  81,  70,  60,  50,  40,  31,  22,  14,  7,   0},
        {278, 278, 277, 275, 273, 270, 266, 261, 256, 250, 243, 236, 228, 220, 211, 202, 193, 183, 173,
         163, 152, 142, 132, 121, 111, 100, 90,  79,  69,  59,  49,  40,  31,  23,  15,  7,   0},
        {278, 278, 277, 275, 273, 269, 265, 260, 255, 248, 242, 234, 226, 218, 209, 200, 191, 181, 171,
         161, 150, 140, 130, 119, 109, 99,  89,  78,  68,  59,  49,  40,  31,  23,  15,  7,   0},
        {278, 278, 277, 275, 273, 269, 265, 260, 254, 248, 241, 233, 225, 217, 208, 198, 189, 179, 169,
         159, 149, 139, 128, 118, 108, 98,  88,  78,  67,  58,  48,  39,  30,  22,  14,  6,   0}}}};
  for (const Measured& one : measured) {
    const double lumens = read(fileOf(angles(0, 90, 2.5), one.horizontal, one.candela)).photometry.totalFlux();
    EXPECT_NEAR(lumens / one.lumens, 1, 0.005) << one.source;
  }
}

// The two ways of adding up agree within half a per cent, whatever the symmetry: what a data sheet's total would.
TEST(TotalFlux, AgreesWithTheZonalMethodForEverySymmetry) {
  const auto vertical = angles(0, 180, 5);
  const auto rowAt = [&](double h, bool turned) {
    std::vector<double> row;
    for (const double v : vertical) {
      const double c = std::cos(geometry::radians(v)), s = std::sin(geometry::radians(v));
      const double around = turned ? std::sin(geometry::radians(h)) : std::cos(geometry::radians(h));
      row.push_back(400 * std::exp(-2 * (1 - c)) * (1 + 0.6 * s * around) + 30);
    }
    return row;
  };
  struct Symmetry {
    const char* name;
    std::vector<double> horizontal;
    bool turned;
  };
  for (const Symmetry& one : {Symmetry{"all round", {0}, false},
                              {"quarters", angles(0, 90, 15), false},
                              {"half about 0-180", angles(0, 180, 15), false},
                              {"half about 90-270", angles(90, 270, 15), true},
                              {"none", angles(0, 360, 15), true}}) {
    std::vector<std::vector<double>> rows;
    for (const double h : one.horizontal) rows.push_back(rowAt(h, one.turned));
    const Photometry lamp = read(fileOf(vertical, one.horizontal, rows)).photometry;
    EXPECT_NEAR(lamp.totalFlux() / zonalFlux(lamp, 5), 1, 0.005) << one.name;
  }
}

/// A direction as the lamp sees it.
struct Ray {
  double right = 0, up = 0, ahead = 0;
};

/// The directions of the three types of table, written from their definitions: which axis the poles are on.
Ray rayOf(int type, double vertical, double horizontal) {
  const double v = geometry::radians(vertical), h = geometry::radians(horizontal);
  if (type == 1) return {-std::sin(v) * std::sin(h), std::sin(v) * std::cos(h), std::cos(v)};
  if (type == 2) return {std::sin(h), std::cos(h) * std::sin(v), std::cos(h) * std::cos(v)};
  return {std::cos(v) * std::sin(h), std::sin(v), std::cos(v) * std::cos(h)};
}

/// The same field of candela in a table of each type.
template <class Field>
Photometry tableOf(int type, double step, Field field) {
  const auto vertical = type == 1 ? angles(0, 90, step) : angles(-90, 90, step);
  const auto horizontal = type == 1 ? angles(0, 360, step) : angles(-90, 90, step);
  std::vector<std::vector<double>> rows;
  for (const double h : horizontal) {
    rows.emplace_back();
    for (const double v : vertical) rows.back().push_back(std::max(0.0, field(rayOf(type, v, h))));
  }
  return read(fileOf(vertical, horizontal, rows, type)).photometry;
}

/// An uneven lamp, brighter to the right and upwards.
double uneven(const Ray& ray) {
  return 300 + 200 * ray.right + 100 * ray.up + 400 * ray.ahead * ray.ahead;
}

TEST(TypesAAndB, GiveEverywhereTheCandelaOfTypeC) {
  const Photometry c = tableOf(1, 2.5, uneven), b = tableOf(2, 2.5, uneven), a = tableOf(3, 2.5, uneven);
  for (double v = 0; v < 90; v += 3.1)
    for (double h = 0; h < 360; h += 7.3) {
      const double exact = uneven(rayOf(1, v, h));
      for (const Photometry* lamp : {&c, &b, &a}) EXPECT_NEAR(lamp->candelaAt(v, h) / exact, 1, 0.005) << v << " " << h;
    }
}

/// A table of type A or B that shines at one pair of its angles only.
Photometry spot(int type, double vertical, double horizontal) {
  const auto all = angles(-90, 90, 15);
  std::vector<std::vector<double>> rows;
  for (const double h : all) {
    rows.emplace_back();
    for (const double v : all) rows.back().push_back(v == vertical && h == horizontal ? 1000 : 0);
  }
  return read(fileOf(all, all, rows, type)).photometry;
}

// ANSI/IESNA LM-63-02, section 3: photometric zero is at vertical angle 0 and photometric horizontal at vertical angle
// 90 of horizontal angle 0 in types B and C alike; horizontal angles run counter-clockwise in type C and clockwise in
// types A and B; in type A photometric zero, straight down, is at vertical angle -90 and photometric horizontal at 0.
TEST(TypesAAndB, TurnTheWayTheStandardSays) {
  EXPECT_NEAR(spot(2, 0, 0).candelaAt(0, 0), 1000, 1e-6) << "photometric zero of B is that of C";
  EXPECT_NEAR(spot(2, 90, 0).candelaAt(90, 0), 1000, 1e-6) << "photometric horizontal of B is that of C";
  EXPECT_NEAR(spot(2, -90, 0).candelaAt(90, 180), 1000, 1e-6);
  // 90 degrees clockwise of photometric horizontal is 270 counter-clockwise.
  EXPECT_NEAR(spot(2, 0, 45).candelaAt(45, 270), 1000, 1e-6);
  EXPECT_NEAR(spot(2, 0, 45).candelaAt(45, 90), 0, 1e-6);
  // A lamp of type A lights along photometric horizontal: what is down for the standard is its foot here, and looking
  // down on it clockwise is to its right, 270 in the angles of type C about its axis.
  EXPECT_NEAR(spot(3, 0, 0).candelaAt(0, 0), 1000, 1e-6);
  EXPECT_NEAR(spot(3, -60, 0).candelaAt(60, 180), 1000, 1e-6) << "towards photometric zero is down";
  EXPECT_NEAR(spot(3, 60, 0).candelaAt(60, 0), 1000, 1e-6);
  EXPECT_NEAR(spot(3, 0, 45).candelaAt(45, 270), 1000, 1e-6);
}

// Over the half sphere ahead an even source of I candela gives 2 pi I lumens, a matt one pi I, the uneven one
// 300 x 2 pi + 400 x 2 pi / 3: right and up cancel.
TEST(TypesAAndB, GiveTheLumensOfClosedForms) {
  const double pi = std::numbers::pi;
  for (const int type : {1, 2, 3}) {
    EXPECT_NEAR(tableOf(type, 5, [](const Ray&) { return 100.0; }).totalFlux() / (200 * pi), 1, 1e-9) << type;
    EXPECT_NEAR(tableOf(type, 5, [](const Ray& r) { return 1000 * r.ahead; }).totalFlux() / (1000 * pi), 1, 0.005)
        << type;
    EXPECT_NEAR(tableOf(type, 5, uneven).totalFlux() / (600 * pi + 800 * pi / 3), 1, 0.005) << type;
  }
}

// Only one side is listed; the other is its mirror image, so the flux is that of the whole.
TEST(TypesAAndB, CountBothSidesOfATableOfOne) {
  for (const int type : {2, 3}) {
    const auto vertical = angles(-90, 90, 5), horizontal = angles(0, 90, 5);
    std::vector<std::vector<double>> rows;
    for (const double h : horizontal) {
      rows.emplace_back();
      for (const double v : vertical) rows.back().push_back(std::max(0.0, 1000 * rayOf(type, v, h).ahead));
    }
    const Photometry lamp = read(fileOf(vertical, horizontal, rows, type)).photometry;
    EXPECT_NEAR(lamp.totalFlux() / (1000 * std::numbers::pi), 1, 0.005) << type;
    EXPECT_NEAR(lamp.spread(0.5, 90), 120, 0.5) << type << ": a matt source has half its light at 60 degrees";
  }
}

// ies.org/definitions/cosine-law: E = I cos a / d^2. The same floor below a lamp from a file, an eighth, a quarter and
// a half of its light by the cosine cubed at 60, about 51 and about 37.5 degrees off.
TEST(CosineLaw, HoldsBelowALampFromAFile) {
  const auto luminaire = std::make_shared<const Luminaire>(read(fileOf({0, 180}, {0}, {{900, 900}})));
  const Fixture lamp{{{0, 0, 3}, 0, -90}, distributionOf(luminaire, -90, 1), {}, {}};
  for (const double off : {0.0, 20.0, 37.467, 50.953, 60.0, 80.0}) {
    const Face floor{{3 * std::tan(geometry::radians(off)), 0, 0}, {0, 0, 1}};
    const double lux = luxAtFace(lamp, floor, 0, Receptor::flat, [](Point3, Point3) { return false; });
    EXPECT_NEAR(lux, 100 * std::pow(std::cos(geometry::radians(off)), 3), 1e-9) << off;
  }
}

// Worked out by hand for a table of four quarters hung 3 m over the floor with its 0 plane to the north: (2, 1) and
// (-2, 1) mirror each other. cos v = 3 / sqrt(14), h = 63.4349 degrees; bilinear 1022.1 cd; E = I cos v / 14.
TEST(Quarters, LightTheFloorAlikeOnBothSides) {
  const auto luminaire = std::make_shared<const Luminaire>(
      read(fileOf({0, 22.5, 45, 67.5, 90}, {0, 45, 90},
                  {{1800, 1620, 1080, 450, 0}, {1800, 1530, 900, 270, 0}, {1800, 1440, 720, 90, 0}})));
  const Fixture lamp{{{0, 0, 3}, 0, -90}, distributionOf(luminaire, -90, 1), {}, {}};
  const auto luxAt = [&](double x, double y) {
    return luxAtFace(lamp, {{x, y, 0}, {0, 0, 1}}, 0, Receptor::flat, [](Point3, Point3) { return false; });
  };
  const double v = geometry::degrees(std::acos(3 / std::sqrt(14.0))), h = geometry::degrees(std::atan2(2, 1));
  const double share = (v - 22.5) / 22.5, turn = (h - 45) / 45;
  const double candela =
      geometry::lerp(geometry::lerp(1530.0, 900.0, share), geometry::lerp(1440.0, 720.0, share), turn);
  EXPECT_NEAR(luxAt(2, 1), candela * (3 / std::sqrt(14.0)) / 14, 1e-9);
  EXPECT_NEAR(luxAt(-2, 1), luxAt(2, 1), 1e-9);
  EXPECT_NEAR(luxAt(2, -1), luxAt(2, 1), 1e-9);
}

}  // namespace
}  // namespace wend::light
