#pragma once
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "tests/sim/cli/run_program.hpp"

namespace stallwright::cli_test {

/// Refused as bad input, with these words in the line, and the folder as it was.
inline void refused(const Folder& folder, const std::string& arguments,
                    const std::vector<std::string>& words) {
  const std::string before = folder.listing();
  const Result result = run(folder, arguments);
  INFO("stallwright " << arguments << "\nstandard error: " << result.err);
  CHECK(result.status == 2);
  CHECK(result.err_lines() == 1);
  CHECK(result.out.empty());
  CHECK(folder.listing() == before);
  for (const std::string& word : words) {
    INFO("expected to read: " << word);
    CHECK(result.err.find(word) != std::string::npos);
  }
}

}  // namespace stallwright::cli_test
