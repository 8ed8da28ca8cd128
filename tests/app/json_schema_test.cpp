// What --json prints is what tests/golden/schemas says, field for field.
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "tests/app/program.h"

namespace wend::app::test {

using nlohmann::json;

namespace {

bool isOf(const json& value, const std::string& type) {
  if (type == "object") return value.is_object();
  if (type == "array") return value.is_array();
  if (type == "string") return value.is_string();
  if (type == "boolean") return value.is_boolean();
  if (type == "null") return value.is_null();
  if (type == "integer") return value.is_number_integer();
  return type == "number" && value.is_number();
}

bool isOfAny(const json& value, const json& types) {
  if (types.is_string()) return isOf(value, types.get<std::string>());
  for (const auto& type : types)
    if (isOf(value, type.get<std::string>())) return true;
  return false;
}

/// Faults of a value against the part of JSON Schema 2020-12 that our schemas use: type, enum, required, properties,
/// additionalProperties (false, or what all of them hold), items, minItems, maxItems, minimum, maximum.
void check(const json& value, const json& schema, const std::string& at, std::vector<std::string>& faults) {
  if (!isOfAny(value, schema.at("type"))) return faults.push_back(at + ": not " + schema["type"].dump());
  if (schema.contains("enum") && std::count(schema["enum"].begin(), schema["enum"].end(), value) == 0)
    faults.push_back(at + ": " + value.dump() + " is none of " + schema["enum"].dump());
  if (value.is_number()) {
    if (schema.contains("minimum") && value < schema["minimum"]) faults.push_back(at + ": too small");
    if (schema.contains("maximum") && value > schema["maximum"]) faults.push_back(at + ": too large");
  }
  if (value.is_array()) {
    if (schema.contains("minItems") && value.size() < schema["minItems"]) faults.push_back(at + ": too short");
    if (schema.contains("maxItems") && value.size() > schema["maxItems"]) faults.push_back(at + ": too long");
    for (std::size_t i = 0; i < value.size(); ++i)
      check(value[i], schema.at("items"), at + "/" + std::to_string(i), faults);
  }
  if (!value.is_object()) return;
  for (const auto& name : schema.at("required"))
    if (!value.contains(name.get<std::string>())) faults.push_back(at + ": lacks " + name.get<std::string>());
  // Objects whose keys nobody lists tell what all of them hold.
  const bool open = schema.contains("additionalProperties") && schema["additionalProperties"].is_object();
  for (const auto& [name, part] : value.items()) {
    if (open && !schema.at("properties").contains(name))
      check(part, schema["additionalProperties"], at + "/" + name, faults);
    else if (!schema.at("properties").contains(name))
      faults.push_back(at + ": " + name + " is not in the schema");
    else
      check(part, schema["properties"][name], at + "/" + name, faults);
  }
}

std::vector<std::string> faultsOf(const json& value, const json& schema) {
  std::vector<std::string> faults;
  check(value, schema, "", faults);
  return faults;
}

json schemaOf(const std::string& verb) {
  return json::parse(
      contentOf(std::filesystem::path(WEND_SOURCE_DIR) / "tests/golden/schemas" / (verb + ".schema.json")));
}

class JsonOf : public ::testing::TestWithParam<std::vector<std::string>> {};

TEST_P(JsonOf, KeepsToItsSchema) {
  std::vector<std::string> words = GetParam();
  words.push_back("--json");
  const Ran got = ran(words);
  ASSERT_LE(got.code, 1) << got.err;
  const json value = json::parse(got.out, nullptr, false);
  ASSERT_FALSE(value.is_discarded()) << got.out.substr(0, 200);
  for (const auto& fault : faultsOf(value, schemaOf(words[0]))) ADD_FAILURE() << fault;
}

INSTANTIATE_TEST_SUITE_P(
    Verbs, JsonOf,
    ::testing::Values(std::vector<std::string>{"check", kBatch}, std::vector<std::string>{"check", kRoom},
                      std::vector<std::string>{"at", kBatch, "b6+5"}, std::vector<std::string>{"at", kBatch, "150"},
                      std::vector<std::string>{"at", kRoom, "0"},
                      std::vector<std::string>{"table", kBatch, "--step", "7"},
                      std::vector<std::string>{"pulls", kBatch}, std::vector<std::string>{"pulls", kRoom},
                      std::vector<std::string>{"spot", kBatch, "8.5", "0.6"},
                      std::vector<std::string>{"clear", kRoom, "--from", "2", "--until", "9"},
                      std::vector<std::string>{"sheet", kBatch, "--for", "all"},
                      std::vector<std::string>{"sheet", kRoom, "--for", "focus"},
                      std::vector<std::string>{"chart", kBatch}, std::vector<std::string>{"routes", kBatch},
                      std::vector<std::string>{"routes", kRoom}, std::vector<std::string>{"check", kLinks},
                      std::vector<std::string>{"at", kLinks, "3"}, std::vector<std::string>{"at", kLinks, "b3+2"},
                      std::vector<std::string>{"table", kLinks, "--step", "3"}));

TEST(SchemaChecker, FindsEveryKindOfFault) {
  const json schema = schemaOf("spot");
  const json fine = json::parse(
      R"({"pos": [1, 2], "height": 1.8, "ground": true, "takenBy": null, "seen": [], "clear": [{"from": 0, "until": 1,
                                    "marginDeg": null}], "glass": [], "taken": [], "closed": []})");
  EXPECT_EQ(faultsOf(fine, schema), std::vector<std::string>{});
  const auto faultsWith = [&](const char* pointer, const json& value) {
    json broken = fine;
    broken[json::json_pointer(pointer)] = value;
    return faultsOf(broken, schema).size();
  };
  EXPECT_EQ(faultsWith("/pos", "here"), 1U);
  EXPECT_EQ(faultsWith("/pos", json::array({1})), 1U);
  EXPECT_EQ(faultsWith("/pos", json::array({1, 2, 3})), 1U);
  EXPECT_EQ(faultsWith("/clear/0/from", nullptr), 1U);
  EXPECT_EQ(faultsWith("/clear/0/shade", 1), 1U);
  const json open = json::parse(R"({"type": "object", "required": [], "properties": {},
                                   "additionalProperties": {"type": "number"}})");
  EXPECT_EQ(faultsOf({{"any", 1.5}}, open).size(), 0U);
  EXPECT_EQ(faultsOf({{"any", "word"}}, open).size(), 1U);
  json lacking = fine;
  lacking.erase("height");
  EXPECT_EQ(faultsOf(lacking, schema).size(), 1U);
}

TEST(JsonOfCheck, HoldsTheProblemsOfAFaultyFile) {
  const Folder folder;
  write(folder / "faulty.wend", R"({"format": "wend", "version": 1, "title": 3})");
  const Ran got = ran({"check", (folder / "faulty.wend").string(), "--json"});
  EXPECT_EQ(got.code, 2);
  const json value = json::parse(got.out, nullptr, false);
  ASSERT_FALSE(value.is_discarded());
  EXPECT_EQ(faultsOf(value, schemaOf("check")), std::vector<std::string>{});
  EXPECT_FALSE(value["problems"].empty());
}

TEST(JsonOfRoutes, SaysWhyThereIsNoneAndWhatFreesIt) {
  json plan = json::parse(contentOf(std::filesystem::path(WEND_SOURCE_DIR) / kBatch));
  for (auto& crew : plan["crew"]) {
    if (crew["id"] != "ac1") continue;
    crew.erase("marks");
    crew["needs"][0]["within"] = 1;
  }
  const Folder folder;
  write(folder / "stuck.wend", plan.dump());
  const json value = json::parse(ran({"routes", (folder / "stuck.wend").string(), "--json"}).out, nullptr, false);
  ASSERT_FALSE(value.is_discarded());
  EXPECT_EQ(faultsOf(value, schemaOf("routes")), std::vector<std::string>{});
  for (const auto& crew : value["crew"]) {
    const bool stuck = crew["id"] == "ac1";
    ASSERT_EQ(crew["why"].is_object(), stuck) << crew["id"];
    EXPECT_EQ(stuck && !crew["why"]["frees"].empty(), stuck);
  }
}

TEST(JsonOfSheet, RowsAreAsLongAsTheirColumns) {
  const json sheet = json::parse(ran({"sheet", kBatch, "--for", "all", "--json"}).out);
  std::size_t rows = 0;
  for (const auto& made : sheet["sheets"])
    for (const auto& part : made["parts"])
      for (const auto& row : part["rows"]) {
        EXPECT_EQ(row.size(), part["columns"].size());
        ++rows;
      }
  EXPECT_GT(rows, 50U);
}

TEST(JsonOfCheck, HoldsLinksBoomsCablesLanesAndGroundOutsideWhereThePlanHasThem) {
  const json links = json::parse(ran({"check", kLinks, "--json"}).out);
  for (const char* key : {"links", "booms", "cameraCable", "lanes", "outside"}) EXPECT_TRUE(links.contains(key)) << key;
  EXPECT_EQ(links["links"].size(), 2U);
  EXPECT_LT(links["links"][0]["weakest"]["margin"], 0) << "the steel door";
  EXPECT_FALSE(links["links"][0]["lost"].empty());
  const json room = json::parse(ran({"check", kRoom, "--json"}).out);
  for (const char* key : {"links", "booms", "shutIn", "cameraCable", "lanes"}) EXPECT_FALSE(room.contains(key)) << key;
}

TEST(JsonOfAt, HoldsTheLineOfSpeechThatRunsAndTheCameraCable) {
  const json speaks = json::parse(ran({"at", kLinks, "3", "--json"}).out);
  ASSERT_EQ(speaks["booms"].size(), 1U);
  EXPECT_EQ(speaks["booms"][0]["who"], "mara");
  EXPECT_EQ(speaks["links"].size(), 2U);
  const json quiet = json::parse(ran({"at", kLinks, "8", "--json"}).out);
  EXPECT_FALSE(quiet.contains("booms"));
  EXPECT_GT(quiet["cameraCable"], speaks["cameraCable"]);
}

TEST(JsonOfClear, RowsAddUpToTheGrid) {
  const json clear = json::parse(ran({"clear", kRoom, "--json"}).out);
  ASSERT_EQ(clear["rows"].size(), clear["cells"][1]);
  for (const auto& row : clear["rows"]) {
    int cells = 0;
    for (const auto& run : row) cells += run.get<int>();
    EXPECT_EQ(cells, clear["cells"][0]);
  }
}

}  // namespace

}  // namespace wend::app::test
