#pragma once
// `plumbrule transcribe`: a submittal written in another form.

#include <string>

#include "doors/command/output.hpp"

namespace plumbrule::command {

enum class SubmittalForm : std::uint8_t { yaml, json, csv };

struct TranscribeOptions {
  std::string submittal;
  std::string record;  // of a sheet of several: its number or its mix
  SubmittalForm form = SubmittalForm::yaml;
  std::string out;  // a file, or empty
};

/// Status 0, or 4 if the submittal cannot be read, cannot be written in the form, or not be written at all.
[[nodiscard]] Exit transcribe(const TranscribeOptions& options);

}  // namespace plumbrule::command
