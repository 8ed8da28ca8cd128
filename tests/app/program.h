/// Runs the built program the way a shell does.
#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace wend::app::test {

inline std::string contentOf(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream bytes;
  bytes << in.rdbuf();
  return bytes.str();
}

inline void write(const std::filesystem::path& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

/// A folder of its own that goes when the test does.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "wend-app-XXXXXX").string();
    path_ = mkdtemp(name.data());
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

struct Ran {
  int code = -1;
  std::string out, err;
};

inline std::string quoted(const std::string& word) {
  std::string text = "'";
  for (const char c : word) text += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return text + "'";
}

/// A shell line in the project's folder; "wend" in it is the built program.
inline Ran ranInShell(const std::string& line) {
  const Folder folder;
  const std::string command = "cd " + quoted(WEND_SOURCE_DIR) + " && wend() { " + quoted(WEND_PROGRAM) +
                              " \"$@\"; }; { " + line + "\n} >" + quoted((folder / "out").string()) + " 2>" +
                              quoted((folder / "err").string());
  const int status = std::system(("bash -c " + quoted(command)).c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, contentOf(folder / "out"), contentOf(folder / "err")};
}

inline Ran ran(const std::vector<std::string>& words) {
  std::string line = "wend";
  for (const auto& word : words) line += " " + quoted(word);
  return ranInShell(line);
}

inline const std::string kBatch = "samples/first-batch.wend";
inline const std::string kRoom = "samples/one-room.wend";
inline const std::string kLinks = "samples/links-and-booms.wend";

}  // namespace wend::app::test
