#include "sim/study/map/map_plan.hpp"

#include <algorithm>

#include "aircraft/math/units.hpp"
#include "sim/sortie/named_loading.hpp"
#include "sim/study/coverage_grid.hpp"
#include "sim/study/nested_windows.hpp"
#include "sim/truth/protection.hpp"

namespace stallwright {
namespace {

/// For names of files: small letters and digits, everything else a hyphen.
std::string plain(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool upper = c >= 'A' && c <= 'Z';
    const bool keep = upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (!keep && (out.empty() || out.back() == '-')) continue;
    out += upper ? static_cast<char>(c - 'A' + 'a') : keep ? c : '-';
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out;
}

std::vector<std::string> split_at_commas(const std::string& text) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == ',')
      parts.emplace_back();
    else if (c != ' ' || !parts.back().empty())
      parts.back() += c;
  }
  return parts;
}

/// "light" and "heavy" as in the table of what a warning protects, as near as the load stations allow; or stations by name.
Loading loading_of(const std::string& words, const SortieConfig& base, const std::string& where) {
  if (words != "light" && words != "heavy") return named_loading(base.type, split_at_commas(words), where);
  const double usual_cg_m = mass_properties(base.type, base.loading).cg.x_aft_m;
  const MassProperties mass = words == "light" ? light_mass(base.type) : heavy_mass(base.type, usual_cg_m);
  const CgRange within = envelope_range(base.type, mass.mass_kg);
  const CgRange reach = reachable_range(base.type, mass.mass_kg);
  const double forward_m = std::max(within.forward_m, reach.forward_m);
  const double aft_m = std::min(within.aft_m, reach.aft_m);
  if (forward_m > aft_m)
    throw InputError(where + ": expected a loading that " + base.type.name +
                     " can take within its envelope, found \"" + words + "\"");
  return loading_for(base.type, mass.mass_kg, std::clamp(mass.cg.x_aft_m, forward_m, aft_m));
}

std::string loading_text(const Loading& loading) {
  std::string text;
  for (const double kg : loading.kg) text += number_text(kg) + " ";
  return text;
}

/// Lays cells one after the other; each has a number of its own in its key.
class Layout {
 public:
  explicit Layout(MapPlan& plan) : plan_(plan) {}
  void add(std::vector<MapCell>& cells, MapCell cell, const SortieConfig& config) {
    std::string number = std::to_string(plan_.configs.size() + 1);
    if (number.size() < 2) number = "0" + number;
    cell.key = number + "-" + plain(plan_.map.airs[cell.air].name) + "-" + plain(config.pilot.name);
    if (!cell.varied.empty()) cell.key += "-" + plain(cell.varied) + "-" + plain(cell.value);
    cells.push_back(std::move(cell));
    plan_.configs.push_back(config);
  }

 private:
  MapPlan& plan_;
};

void add_varied(Layout& layout, MapPlan& plan, const MapSetup& setup, const std::string& file) {
  const RecipeVaried& varied = *setup.recipe.varied;
  plan.map.base_cell = plan.map.cell_index(varied.air, varied.pilot);
  const SortieConfig base = plan.configs[plan.map.base_cell];
  MapCell cell;
  cell.air = varied.air;
  cell.hand = varied.pilot;
  cell.sorties = setup.sorties.value_or(varied.sorties);
  const auto add = [&](const std::string& what, const std::string& to, const SortieConfig& config) {
    cell.varied = what;
    cell.value = to;
    layout.add(plan.map.varied, cell, config);
  };
  for (const double rate : varied.entry_rates_ktps) {
    SortieConfig config = base;
    for (TestPoint& point : config.card.points)
      if (point.is_stall()) point.entry_rate_ktps = rate;
    add("entry rate", number_text(rate) + " kt/s", config);
  }
  for (const std::string& sensors : varied.sensors) {
    SortieConfig config = base;
    config.instruments = instrument_grade(sensors);
    add("sensors", sensors, config);
  }
  for (const std::string& loading : varied.loadings) {
    SortieConfig config = base;
    config.loading = loading_of(loading, base, file + ": varied.loadings");
    add("loading", loading, config);
  }
  for (const RecipeAir& air : varied.airs) {
    SortieConfig config = base;
    config.air = air.preset;
    add("air", air.name, config);
  }
}

void add_lines(StudyMap& map, const SortieConfig& base) {
  for (const WindowLine& line : window_lines(base.card))
    map.lines.push_back(
        {line.set, line.card_point, line.name,
         base.type.flaps.at(base.card.points[line.card_point].flap_setting).deflection_rad / math::kDegree,
         line.is_stall, line.share, line.window_s});
}

/// Air up to the recipe's roughest; light, usual and heavy.
SensitivityRanges ranges_of(const StudyMap& map, const SortieConfig& base, const std::string& file) {
  SensitivityRanges ranges;
  ranges.first_seed = map.first_seed;
  for (const MapAir& air : map.airs)
    if (air.sigma_mps > ranges.roughest_mps) ranges.roughest_mps = air.sigma_mps;
  ranges.loading_names = {"light", "as loaded", "heavy"};
  for (const std::string& name : ranges.loading_names)
    ranges.loadings.push_back(name == "as loaded" ? base.loading : loading_of(name, base, file + ": sobol"));
  return ranges;
}

/// Everything that decides what is flown, in words; two studies are the same when they have the same words.
std::string decided_by(const MapSetup& setup, const MapPlan& plan) {
  std::string text = plan.map.version + "\n" + setup.aircraft_text + "\n" + setup.card_text + "\n" +
                     plan.map.sensors + "\n" + std::to_string(plan.map.airframe_seed) + "\n" +
                     std::to_string(plan.map.first_seed) + "\n";
  for (const RecipeAir& air : setup.recipe.airs) text += air.name + "\n" + air.source + "\n";
  if (setup.recipe.varied)
    for (const RecipeAir& air : setup.recipe.varied->airs) text += air.name + "\n" + air.source + "\n";
  for (std::size_t i = 0; i < plan.configs.size(); ++i) {
    const MapCell& cell = plan.map.any_cell(i);
    text += cell.key + " " + std::to_string(cell.sorties) + " " + cell.varied + " " + cell.value + " " +
            loading_text(plan.configs[i].loading) + "\n";
  }
  if (plan.map.sensitivity.base > 0) {
    text += "everything " + std::to_string(plan.map.sensitivity.base) + " " +
            number_text(plan.sensitivity.ranges.roughest_mps) + "\n";
    for (const Loading& loading : plan.sensitivity.ranges.loadings) text += loading_text(loading) + "\n";
  }
  return text;
}

}  // namespace

SortieConfig MapPlan::config(const Block& block, int k) const {
  if (block.cell >= configs.size()) return sensitivity.config(static_cast<std::size_t>(block.first + k));
  SortieConfig one = configs[block.cell];
  one.seed = map.sortie_seed(block.cell, block.first + k);
  return one;
}

MapPlan map_plan(const MapSetup& setup, const std::string& recipe_file) {
  MapPlan plan;
  StudyMap& map = plan.map;
  const Recipe& recipe = setup.recipe;
  const SortieConfig& base = setup.base;
  map.version = STALLWRIGHT_VERSION;
  map.recipe_key = recipe.key;
  map.recipe = recipe.name;
  map.summary = recipe.summary;
  map.aircraft_key = base.type.key;
  map.aircraft = base.type.name;
  map.card_key = base.card.key;
  map.card = base.card.name;
  map.sensors = base.instruments.name;
  map.first_seed = setup.first_seed;
  map.airframe_seed = base.airframe_seed;
  const MassProperties mass = mass_properties(base.type, base.loading);
  map.mass_kg = mass.mass_kg;
  map.cg_aft_m = mass.cg.x_aft_m;
  map.wanted_margin_kt = base.card.wanted_margin_kt;
  map.wanted_uncertainty_kt = base.card.wanted_uncertainty_kt;
  map.hands = recipe.pilots;
  const double height_m = base.card.working_height_ft * kFoot;
  for (const RecipeAir& air : recipe.airs)
    map.airs.push_back({air.name, turbulence_scales(air.preset.intensity(), height_m).sigma_w_mps});
  add_lines(map, base);
  Layout layout(plan);
  for (std::size_t air = 0; air < recipe.airs.size(); ++air)
    for (std::size_t hand = 0; hand < recipe.pilots.size(); ++hand) {
      SortieConfig config = base;
      config.air = recipe.airs[air].preset;
      config.pilot = pilot_grade(recipe.pilots[hand]);
      MapCell cell;
      cell.air = air;
      cell.hand = hand;
      cell.sorties = setup.sorties.value_or(recipe.sorties);
      layout.add(map.cells, cell, config);
    }
  if (recipe.varied) add_varied(layout, plan, setup, recipe_file);
  // As for the cells, a number of sorties that was asked for is not exceeded.
  const int base_points = std::min(recipe.sobol_base, setup.sorties.value_or(recipe.sobol_base));
  if (base_points > 0)
    plan.sensitivity = plan_sensitivity(map, base, ranges_of(map, base, recipe_file), base_points);
  map.identity = hash_text(hash_bytes(kHashSeed, decided_by(setup, plan)));
  return plan;
}

}  // namespace stallwright
