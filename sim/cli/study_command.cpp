#include "sim/cli/study_command.hpp"

#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <memory>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/stop_request.hpp"
#include "sim/cli/study_intervals_command.hpp"
#include "sim/cli/study_map_text.hpp"
#include "sim/cli/study_merge_command.hpp"
#include "sim/cli/study_options.hpp"
#include "sim/cli/study_place_command.hpp"
#include "sim/cli/study_progress.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/map/study_folder.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

/// Where blocks lie when nobody wants to keep them; goes away with what is in it.
class PassingFolder {
 public:
  PassingFolder() {
    std::string name = (fs::temp_directory_path() / "stallwright-study-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error(name + ": cannot make a folder");
    path_ = name;
  }
  ~PassingFolder() {
    std::error_code error;
    fs::remove_all(path_, error);
  }
  PassingFolder(const PassingFolder&) = delete;
  PassingFolder& operator=(const PassingFolder&) = delete;
  PassingFolder(PassingFolder&&) = delete;
  PassingFolder& operator=(PassingFolder&&) = delete;
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

std::string blocks_words(int blocks) { return std::to_string(blocks) + (blocks == 1 ? " block" : " blocks"); }

void tell_kept(const MapRun& run) {
  if (run.kept > 0)
    std::cerr << "stallwright: " << blocks_words(run.kept) << " of " << run.wanted << " there before, kept\n";
  if (run.damaged > 0) std::cerr << "stallwright: " << blocks_words(run.damaged) << " damaged, flown again\n";
}

int tell_stopped(const MapRun& run, const cli::StudyOptions& options) {
  const std::string kept = blocks_words(run.kept + run.flown) + " of " + std::to_string(run.wanted);
  std::cerr << "stallwright: stopped; "
            << (options.out_given
                    ? kept + " are kept in " + options.out + ", the same command goes on from there"
                    : "nothing is kept without --out")
            << '\n';
  return cli::kStopped;
}

int study(const cli::StudyOptions& options) {
  MapPlan plan = cli::study_plan(options);
  MapOrder order;
  cli::read_shard(options.shard, order);
  if (!options.shard.empty() && !options.out_given)
    throw InputError("--shard: expected --out with it, since the shards are merged later; found none");
  std::optional<PassingFolder> passing;
  if (!options.out_given) passing.emplace();
  order.folder = passing ? passing->path() : fs::path(options.out);
  order.threads = options.often.threads;
  order.progress = cli::progress_line();
  const cli::StopRequest request;
  order.stop = &request.stop();
  const MapRun run = fly_map(plan, order);
  cli::clear_progress_line();
  tell_kept(run);
  if (!run.complete()) return tell_stopped(run, options);
  if (order.shards > 1) {
    std::cout << "Shard " << order.shard << " of " << order.shards << ": " << blocks_words(run.wanted)
              << " in " << options.out << ". Tables come with `stallwright study merge`.\n";
    return cli::kYes;
  }
  if (passing)
    read_results(order.folder, plan.map);
  else
    write_tables(order.folder, plan.map);
  std::cout << (options.json ? map_to_json(plan.map) : cli::map_text(plan.map));
  return cli::kYes;
}

}  // namespace

void add_study_command(CLI::App& app, int& exit_code) {
  const auto options = std::make_shared<cli::StudyOptions>();
  CLI::App* command = app.add_subcommand(
      "study",
      "How much does rough air cost? Fly a card thousands of times over airs and pilots, and map the errors");
  cli::add_study_options(*command, *options);
  command->require_subcommand(0, 1);
  add_study_merge_command(*command, exit_code);
  add_study_place_command(*command, exit_code);
  add_study_intervals_command(*command, exit_code);
  command->footer(
      cli::footer("  stallwright study --out study\n"
                  "  stallwright study --recipe hours --sorties 50 --out hours\n"
                  "  stallwright study --out part-1 --shard 1/2   (and --out part-2 --shard 2/2 elsewhere)\n"
                  "  stallwright study merge part-1 part-2 --out study\n\n"
                  "Ctrl-C ends it with exit status 130; what is finished is kept, and the same command goes "
                  "on from there.\n"));
  command->callback([options, command, &exit_code] {
    if (!command->get_subcommands().empty()) return;
    options->out_given = command->count("--out") > 0;
    exit_code = study(*options);
  });
}

}  // namespace stallwright
