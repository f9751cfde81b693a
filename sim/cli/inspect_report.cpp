#include "sim/cli/inspect_report.hpp"

#include <algorithm>

#include "aircraft/input_error.hpp"
#include "aircraft/toml_reader.hpp"

namespace stallwright::cli {
namespace {

const NamedFigure& figure_for(const CredibleBand& band, const std::vector<NamedFigure>& figures,
                              const std::string& where) {
  const auto found = std::find_if(figures.begin(), figures.end(), [&](const NamedFigure& figure) {
    return figure.quantity == band.quantity;
  });
  if (found == figures.end()) {
    std::vector<std::string> known;
    std::string list;
    for (const NamedFigure& figure : figures) {
      known.push_back(figure.quantity);
      list += (list.empty() ? "" : ", ") + figure.quantity;
    }
    const std::string nearest = nearest_word(band.quantity, known);
    throw InputError(where + ".quantity: expected one of " + list + ", found \"" + band.quantity + "\"" +
                     (nearest.empty() ? "" : "; perhaps " + nearest));
  }
  if (found->unit != band.unit)
    throw InputError(where + ".unit: expected \"" + found->unit + "\" for " + band.quantity + ", found \"" +
                     band.unit + "\"");
  return *found;
}

}  // namespace

int Inspection::outside() const {
  return static_cast<int>(
      std::count_if(verdicts.begin(), verdicts.end(), [](const BandVerdict& v) { return !v.inside(); }));
}

Inspection inspect_aircraft(const AircraftType& type, const std::string& file) {
  // Names are held against what a type with as many flaps would yield before anything is flown: mistakes show
  // at once.
  Performance unflown;
  unflown.stalls.resize(type.flaps.size());
  const std::vector<NamedFigure> names = named_figures(unflown);
  for (std::size_t i = 0; i < type.bands.size(); ++i)
    figure_for(type.bands[i], names, file + ": band[" + std::to_string(i + 1) + "]");

  Inspection inspection{book_aircraft(type), {}, {}};
  inspection.performance = performance(inspection.aircraft);
  const std::vector<NamedFigure> figures = named_figures(inspection.performance);
  for (const CredibleBand& band : type.bands)
    inspection.verdicts.push_back({band, figure_for(band, figures, file).value});
  return inspection;
}

}  // namespace stallwright::cli
