#include "sim/study/map/fly_map.hpp"

#include <algorithm>
#include <map>
#include <mutex>

#include "aircraft/input_error.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/study/map/study_folder.hpp"
#include "sim/threads/parallel.hpp"

namespace stallwright {
namespace {

/// Truth for all that is flown. It depends on the day, the loading and the card's speeds, so most sorties share it.
class SharedTruth {
 public:
  SharedTruth(const MapPlan& plan, const std::vector<Block>& blocks, int threads) {
    for (const Block& block : blocks)
      if (block.cell < plan.configs.size())
        add(plan.configs[block.cell]);
      else
        for (int k = 0; k < block.sorties; ++k) add(plan.config(block, k));
    truth_.resize(apart_.size());
    for_each_index(static_cast<int>(apart_.size()), threads, [&](int i) {
      truth_[static_cast<std::size_t>(i)] = truth_for(apart_[static_cast<std::size_t>(i)]);
    });
  }

  const std::vector<TrueSet>& of(const SortieConfig& config) const { return truth_.at(place_of(config)); }

 private:
  static std::vector<TrueSet> truth_for(const SortieConfig& config) {
    try {
      return find_truth(make_aircraft(config.type, config.loading, config.airframe_seed), config.card,
                        working_air(config.card, config.air.day));
    } catch (const std::runtime_error& e) {
      throw InputError("expected a card that " + config.type.name + " can fly in " + config.air.name +
                       " air, found: " + e.what());
    }
  }

  std::size_t place_of(const SortieConfig& config) const {
    const auto same = std::find_if(apart_.begin(), apart_.end(), [&](const SortieConfig& other) {
      return other.air.day == config.air.day && other.loading == config.loading;
    });
    return static_cast<std::size_t>(same - apart_.begin());
  }
  void add(const SortieConfig& config) {
    if (place_of(config) == apart_.size()) apart_.push_back(config);
  }

  std::vector<SortieConfig> apart_;
  std::vector<std::vector<TrueSet>> truth_;  ///< as long
};

/// Collects numbers of sorties until a block is whole, and writes it. Sorties are handed out in order, so only about one
/// block for each thread is open at a time.
class Spill {
 public:
  Spill(const StudyMap& map, const MapOrder& order, const std::vector<Block>& blocks)
      : map_(map), order_(order), blocks_(blocks) {
    for (const Block& block : blocks) {
      begins_.push_back(sorties_);
      sorties_ += static_cast<std::size_t>(block.sorties);
    }
  }

  std::size_t sorties() const { return sorties_; }
  int written() const { return written_; }
  int sorties_written() const { return sorties_written_; }

  std::size_t block_of(std::size_t k) const {
    return static_cast<std::size_t>(std::upper_bound(begins_.begin(), begins_.end(), k) - begins_.begin()) -
           1;
  }
  int in_block(std::size_t k) const { return static_cast<int>(k - begins_[block_of(k)]); }

  void add(std::size_t k, SortieNumbers numbers) {
    const std::size_t index = block_of(k);
    const Block& block = blocks_[index];
    std::vector<SortieNumbers> whole;
    {
      const std::lock_guard<std::mutex> lock(guard_);
      Open& open = open_[index];
      open.numbers.resize(static_cast<std::size_t>(block.sorties));
      open.numbers[static_cast<std::size_t>(in_block(k))] = std::move(numbers);
      if (++open.count == block.sorties) {
        whole = std::move(open.numbers);
        open_.erase(index);
      }
      if (order_.progress) order_.progress(++done_, static_cast<int>(sorties_));
    }
    if (whole.empty()) return;
    write_whole_file(block_file(order_.folder, block), block_text(map_, block, whole));
    const std::lock_guard<std::mutex> lock(guard_);
    ++written_;
    sorties_written_ += block.sorties;
  }

 private:
  struct Open {
    std::vector<SortieNumbers> numbers;
    int count = 0;
  };
  const StudyMap& map_;
  const MapOrder& order_;
  const std::vector<Block>& blocks_;
  std::vector<std::size_t> begins_;
  std::size_t sorties_ = 0;
  std::mutex guard_;
  std::map<std::size_t, Open> open_;
  int done_ = 0, written_ = 0, sorties_written_ = 0;
};

std::vector<Block> shard_blocks(const StudyMap& map, int shard, int shards) {
  const std::vector<Block> all = blocks_of(map);
  std::vector<Block> mine;
  for (std::size_t i = 0; i < all.size(); ++i)
    if (i % static_cast<std::size_t>(shards) == static_cast<std::size_t>(shard - 1)) mine.push_back(all[i]);
  return mine;
}

int count_damaged(const std::filesystem::path& folder, const std::vector<Block>& missing) {
  return static_cast<int>(std::count_if(missing.begin(), missing.end(), [&](const Block& block) {
    return std::filesystem::exists(block_file(folder, block));
  }));
}

}  // namespace

MapRun fly_map(const MapPlan& plan, const MapOrder& order) {
  require_same_study(order.folder, plan.map);
  const std::vector<Block> wanted = shard_blocks(plan.map, order.shard, order.shards);
  const std::vector<Block> missing = missing_blocks(order.folder, plan.map, wanted);
  const SharedTruth truth(plan, missing, order.threads);
  prepare_study_folder(order.folder, plan.map);
  MapRun run;
  run.wanted = static_cast<int>(wanted.size());
  run.kept = static_cast<int>(wanted.size() - missing.size());
  run.damaged = count_damaged(order.folder, missing);
  Spill spill(plan.map, order, missing);
  const auto config_of = [&](std::size_t k) {
    return plan.config(missing[spill.block_of(k)], spill.in_block(k));
  };
  const auto done = [&](std::size_t k, EndedSortie& ended) {
    const Block& block = missing[spill.block_of(k)];
    const SortieConfig config = config_of(k);
    if (block.cell < plan.configs.size())
      return spill.add(k, sortie_numbers(ended, config, truth.of(config)));
    const auto number = static_cast<std::size_t>(block.first + spill.in_block(k));
    spill.add(k, cut_sortie_numbers(ended, config, truth.of(config),
                                    record_share_at(plan.sensitivity.points.at(number))));
  };
  fly_many(spill.sorties(), order.threads, config_of, done, order.stop);
  run.flown = spill.written();
  run.sorties = spill.sorties_written();
  return run;
}

}  // namespace stallwright
