#pragma once
#include <CLI/CLI.hpp>
#include <string>

#include "sim/cli/flown_often.hpp"
#include "sim/study/map/fly_map.hpp"

namespace stallwright::cli {

/// Options of `study` itself.
struct StudyOptions {
  FlownOften often;
  std::string recipe = "air-and-hands", out, shard;
  int sorties = 0;
  bool json = false, out_given = false;
};

void add_study_options(CLI::App& command, StudyOptions& options);

/// Reads the files that the options name and lays out the study. Throws InputError for anything that cannot be flown.
MapPlan study_plan(const StudyOptions& options);

/// K/N, with K from 1 to N, into the order; an empty text leaves it whole. Throws InputError.
void read_shard(const std::string& text, MapOrder& order);

}  // namespace stallwright::cli
