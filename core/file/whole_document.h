/// A whole document of any kind, read and written: its stamp, then the keys that `describe` names.
#pragma once

#include "core/base/result.h"
#include "core/file/format_stamp.h"
#include "core/file/object_reader.h"
#include "core/file/object_writer.h"

namespace wend::file {

template <class T>
struct WholeRead {
  T it;
  base::Problems notes;  ///< unknown keys, with "did you mean"
};

/// Fails with all problems of the text, or with the one that keeps it from being looked at.
template <class T>
base::Result<WholeRead<T>> readWhole(std::string_view json, const FormatStamp& stamp) {
  ProblemList problems;
  JsonDocument document(json);
  if (!document.parse(problems)) return problems.told();
  if (auto problem = otherFormat(document.root(), stamp)) return *problem;
  ReadContext context(document.root(), problems);
  WholeRead<T> read;
  ObjectReader<T> reader(context, document.root(), read.it);
  reader.known("format");
  reader.known("version");
  describe(reader, Of<T>{});
  reader.finish();
  if (problems.count() > 0) return problems.told();
  read.notes = context.notes().told();
  return read;
}

template <class T>
std::string writtenWhole(const T& it, const FormatStamp& stamp) {
  ObjectWriter<T> writer(it);
  writer.fixed("format", Written::text(stamp.format));
  writer.fixed("version", Written::raw(std::to_string(stamp.version)));
  describe(writer, Of<T>{});
  return writer.finish().document();
}

}  // namespace wend::file
