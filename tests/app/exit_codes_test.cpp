// What the program answers when something is wrong: code 2, the place and the remedy on standard error, nothing on
// standard output, no file half written.
#include <gtest/gtest.h>
#include <sys/stat.h>

#include "core/base/text.h"
#include "tests/app/program.h"

namespace wend::app::test {

namespace {

/// A word of the sample replaced, once.
std::string sampleWith(const std::string& was, const std::string& is) {
  std::string plan = contentOf(std::filesystem::path(WEND_SOURCE_DIR) / kRoom);
  const auto at = plan.find(was);
  EXPECT_NE(at, std::string::npos) << was;
  if (at != std::string::npos) plan.replace(at, was.size(), is);
  return plan;
}

struct Fault {
  const char* name;
  std::string plan;
  const char* says;
};

void expectRefused(const std::vector<std::string>& words, const std::string& says) {
  const Ran got = ran(words);
  EXPECT_EQ(got.code, 2) << got.out.substr(0, 200);
  EXPECT_EQ(got.out, "");
  EXPECT_EQ(got.err.rfind("wend: ", 0), 0U) << got.err;
  EXPECT_NE(got.err.find(says), std::string::npos) << got.err;
  EXPECT_NE(got.err.find("; "), std::string::npos) << "no remedy: " << got.err;
}

TEST(FaultyPlan, IsRefusedWithPlaceAndRemedy) {
  const std::string whole = contentOf(std::filesystem::path(WEND_SOURCE_DIR) / kRoom);
  std::string nested(200, '[');
  nested += std::string(200, ']');
  const Fault faults[] = {
      {"truncated", whole.substr(0, whole.size() / 2), "line"},
      {"empty", "", ""},
      {"type", sampleWith("\"title\": ", "\"title\": 7, \"ttl\": "), "/title"},
      {"nan", sampleWith("\"length\": ", "\"length\": NaN, \"was\": "), "line"},
      {"nested", nested, ""},
      {"twice", sampleWith("\"title\": ", "\"title\": \"a\", \"title\": "), "title"},
      {"newer", sampleWith("\"version\": 1", "\"version\": 99"), "99"},
  };
  const Folder folder;
  for (const auto& fault : faults) {
    SCOPED_TRACE(fault.name);
    const auto path = folder / (std::string(fault.name) + ".wend"), out = folder / "out.txt";
    write(path, fault.plan);
    expectRefused({"check", path.string(), "-o", out.string()}, fault.says);
    EXPECT_FALSE(std::filesystem::exists(out));
  }
}

TEST(FaultyPlan, WithAMissingReferenceNamesIt) {
  const Folder folder;
  const auto path = folder / "reference.wend";
  write(path, sampleWith("\"performer\": \"", "\"performer\": \"nobody-"));
  const Ran got = ran({"check", path.string()});
  EXPECT_EQ(got.code, 2);
  EXPECT_NE(got.err.find("nobody-"), std::string::npos) << got.err;
}

TEST(Plan, ThatIsNoFileIsRefused) {
  expectRefused({"check", "samples"}, "a folder");
  expectRefused({"check", "samples/none.wend"}, "no such file");
  expectRefused({"check", "/dev/zero"}, "device");
}

TEST(Plan, ThatMayNotBeReadIsRefused) {
  if (geteuid() == 0) GTEST_SKIP() << "root may read every file";
  const Folder folder;
  write(folder / "secret.wend", "{}");
  chmod((folder / "secret.wend").c_str(), 0);
  expectRefused({"check", (folder / "secret.wend").string()}, "may be read");
}

TEST(Plan, ComesFromStandardInputToo) {
  const Ran piped = ranInShell("wend pulls - <" + kRoom), named = ran({"pulls", kRoom});
  EXPECT_EQ(piped.code, 0) << piped.err;
  EXPECT_EQ(piped.out, named.out);
  EXPECT_FALSE(named.out.empty());
}

TEST(CommandLine, RefusesWhatItDoesNotKnowAndSuggests) {
  expectRefused({"chekc", kRoom}, "did you mean check?");
  expectRefused({"check", kRoom, "--jsn"}, "did you mean --json?");
  expectRefused({"at", kRoom}, "no TIME");
  expectRefused({"at", kRoom, "1", "2"}, "\"2\"");
  expectRefused({"at", kRoom, "b99"}, "b99");
  expectRefused({"at", kRoom, "1e9"}, "TIME");
  expectRefused({"spot", kRoom, "one", "2"}, "X");
  expectRefused({"table", kRoom, "--step", "0"}, "--step");
  expectRefused({"table", kRoom, "--step"}, "--step");
  expectRefused({"clear", kRoom, "--from", "9", "--until", "3"}, "--until");
  expectRefused({"sheet", kRoom}, "--for");
  expectRefused({"sheet", kRoom, "--for", "sund"}, "did you mean sound?");
  expectRefused({"sheet", kRoom, "--for", "strips"}, "strips");
  expectRefused({"draw", kRoom, "--view", "fram"}, "did you mean frame?");
  expectRefused({"draw", kRoom, "-o", "picture.bmp"}, ".svg or .png");
  expectRefused({"--json", "check", kRoom}, "--json");
  expectRefused({"drift", kRoom}, "not do yet");
}

TEST(CommandLine, TakesOptionsAnywhereInEitherForm) {
  const std::string plain = ran({"spot", kBatch, "8.5", "0.6", "--height", "1.2"}).out;
  EXPECT_EQ(ran({"spot", "--height=1.2", kBatch, "8.5", "0.6"}).out, plain);
  EXPECT_EQ(ran({"spot", kBatch, "--height", "1.2", "--", "8.5", "0.6"}).out, plain);
  EXPECT_NE(ran({"spot", kBatch, "8.5", "0.6"}).out, plain);
  EXPECT_EQ(ran({"spot", kBatch, "-1.5", "-2"}).code, 0);
}

TEST(CommandLine, TellsOfStopperSnagsByOne) {
  EXPECT_EQ(ran({"check", kBatch}).code, 1);
  EXPECT_EQ(ran({"check", kRoom}).code, 0);
}

TEST(Help, HoldsPurposeAndExampleInTenLines) {
  for (const char* verb : {"open", "check", "at", "table", "pulls", "clear", "spot", "routes", "sheet", "draw"}) {
    const Ran help = ran({verb, "--help"});
    EXPECT_EQ(help.code, 0);
    EXPECT_EQ(help.err, "");
    EXPECT_EQ(ran({"help", verb}).out, help.out);
    EXPECT_EQ(ran({verb, kRoom, "-h", "--nonsense"}).out, help.out);
    const auto lines = base::split(help.out, '\n');
    bool example = false;
    for (std::size_t i = 0; i < std::min<std::size_t>(10, lines.size()); ++i)
      example |= lines[i].rfind(std::string("  wend ") + verb, 0) == 0;
    EXPECT_TRUE(example) << help.out;
  }
}

TEST(Help, ExamplesRun) {
  for (const char* verb : {"check", "at", "table", "pulls", "clear", "spot", "routes", "sheet"}) {
    const auto lines = base::split(ran({verb, "--help"}).out, '\n');
    for (const auto& line : lines) {
      if (line.rfind("  wend ", 0) != 0) continue;
      const Ran got = ranInShell(line);
      EXPECT_LE(got.code, 1) << line << "\n" << got.err;
      EXPECT_FALSE(got.out.empty()) << line;
    }
  }
}

TEST(Version, StandsOnTheFirstLine) {
  const auto lines = base::split(ran({"--version"}).out, '\n');
  ASSERT_GE(lines.size(), 3U);
  EXPECT_EQ(lines[0].rfind("wend ", 0), 0U);
  EXPECT_EQ(lines[1].rfind("Qt 6.", 0), 0U);
}

TEST(Output, IsTheSameInEveryLocale) {
  const std::string verbs = " at " + kBatch + " b6+5 --json";
  const Ran plain = ranInShell("LC_ALL=C wend" + verbs);
  ASSERT_EQ(plain.code, 0) << plain.err;
  // A locale with a decimal comma, made here; the shell's own printf tells whether it took.
  const Folder folder;
  const std::string locale = "LOCPATH=" + (folder / "").string() + " LC_ALL=de_DE.UTF-8 ";
  ranInShell("localedef -i de_DE -f UTF-8 " + (folder / "de_DE.UTF-8").string());
  if (ranInShell(locale + "bash -c 'printf %.1f 1,5'").out != "1,5")
    GTEST_SKIP() << "no locale with a decimal comma can be made";
  for (const std::string& words : {verbs, " sheet " + kBatch + " --for all", " draw " + kBatch + " --at 60"})
    EXPECT_EQ(ranInShell(locale + quoted(WEND_PROGRAM) + words).out, ranInShell("LC_ALL=C wend" + words).out) << words;
}

TEST(Output, NeedsNeitherDisplayNorHome) {
  const Folder folder;
  const std::string picture = (folder / "frame.png").string();
  const Ran got = ranInShell("env -i " + quoted(WEND_PROGRAM) + " draw " + kRoom + " --view frame -o " + picture);
  EXPECT_EQ(got.code, 0);
  EXPECT_EQ(got.err, "");
  EXPECT_EQ(contentOf(picture).substr(1, 3), "PNG");
  const Ran window = ranInShell("env -i " + quoted(WEND_PROGRAM) + " open " + kRoom);
  EXPECT_EQ(window.code, 2);
  EXPECT_NE(window.err.find("display"), std::string::npos) << window.err;
}

TEST(Output, EndsQuietlyWhenNobodyReadsOn) {
  const Ran got = ranInShell("set -o pipefail; wend table " + kRoom + " | head -1");
  EXPECT_EQ(got.code, 0);
  EXPECT_EQ(got.err, "");
}

TEST(Output, ThatCannotBeWrittenIsAFailure) {
  const Ran full = ranInShell("wend pulls " + kRoom + " >/dev/full");
  EXPECT_EQ(full.code, 2);
  EXPECT_NE(full.err.find("disk is full"), std::string::npos) << full.err;
  expectRefused({"pulls", kRoom, "-o", "/none/pulls.txt"}, "/none");
}

TEST(Output, GoesToAFileWhole) {
  const Folder folder;
  const auto path = folder / "pulls.txt";
  write(path, "old");
  EXPECT_EQ(ran({"pulls", kRoom, "--output", path.string()}).code, 0);
  EXPECT_EQ(contentOf(path), ran({"pulls", kRoom, "-o", "-"}).out);
}

TEST(Output, IsRefusedWithAnEndingThatTheVerbDoesNotWrite) {
  const Folder folder;
  for (const char* verb : {"pulls", "check", "table"})
    expectRefused({verb, kRoom, "-o", (folder / "paper.pdf").string()}, "unknown-format");
  EXPECT_FALSE(std::filesystem::exists(folder / "paper.pdf"));
}

TEST(Interrupt, EndsWithItsCodeAndWritesNothing) {
  const Folder folder;
  const auto path = folder / "table.csv";
  const Ran got = ranInShell("wend=" + quoted(WEND_PROGRAM) + "; timeout --preserve-status -s INT 0.3 $wend table " +
                             kBatch + " -o " + path.string());
  EXPECT_EQ(got.code, 130) << got.err;
  EXPECT_NE(got.err.find("stopped"), std::string::npos);
  EXPECT_FALSE(std::filesystem::exists(path));
}

TEST(Draw, GivesAllViewsInAllThemes) {
  const Folder folder;
  for (const char* view : {"plan", "frame", "score"}) {
    std::string before;
    for (const char* theme : {"paper", "dark", "torch"}) {
      const auto path = folder / (std::string(view) + theme + ".svg");
      const Ran got = ran({"draw", kRoom, "--at", "5", "--view", view, "--theme", theme, "-o", path.string()});
      ASSERT_EQ(got.code, 0) << got.err;
      const std::string svg = contentOf(path);
      EXPECT_NE(svg.find("<svg"), std::string::npos);
      EXPECT_NE(svg, before) << "a theme changes colours";
      before = svg;
    }
  }
}

}  // namespace

}  // namespace wend::app::test
