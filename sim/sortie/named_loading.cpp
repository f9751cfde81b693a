#include "sim/sortie/named_loading.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "aircraft/input_error.hpp"
#include "aircraft/toml_reader.hpp"

namespace stallwright {
namespace {

double kilograms(const std::string& text, const std::string& option, const std::string& where) {
  double kg = kUnset;
  const char* end = text.data() + text.size();
  const auto result = std::from_chars(text.data(), end, kg);
  if (result.ec != std::errc() || result.ptr != end || !std::isfinite(kg))
    throw InputError(where + ": expected STATION=KG with a number of kg, found \"" + option + "\"");
  return kg;
}

void put_load(const std::string& option, const AircraftType& type, const std::string& where,
              Loading& loading) {
  const std::size_t equals = option.rfind('=');
  if (equals == std::string::npos)
    throw InputError(where + ": expected STATION=KG, found \"" + option + "\"");
  const std::string name = option.substr(0, equals);
  const double kg = kilograms(option.substr(equals + 1), option, where);
  std::vector<std::string> names;
  for (const LoadStation& station : type.mass.stations) names.push_back(station.name);
  const auto found = std::find(names.begin(), names.end(), name);
  if (found == names.end()) {
    const std::string nearest = nearest_word(name, names);
    throw InputError(where + ": expected one of " + joined_words(names) + ", found \"" + name + "\"" +
                     (nearest.empty() ? "" : "; perhaps " + nearest));
  }
  const auto index = static_cast<std::size_t>(found - names.begin());
  const double most = type.mass.stations[index].max_kg;
  if (kg < 0.0 || kg > most)
    throw InputError(where + ": " + name + ": expected 0 to " + number_text(most) + " kg, found " +
                     number_text(kg));
  loading.kg[index] = kg;
}

}  // namespace

Loading named_loading(const AircraftType& type, const std::vector<std::string>& loads,
                      const std::string& where) {
  Loading loading = default_loading(type);
  for (const std::string& option : loads) put_load(option, type, where, loading);
  std::vector<std::string> breaches;
  for (const EnvelopeBreach& breach : check_envelope(type, loading)) breaches.push_back(breach.sentence);
  if (!breaches.empty())
    throw InputError(where + ": expected a loading within the envelope of " + type.name + ", found " +
                     joined_words(breaches));
  return loading;
}

}  // namespace stallwright
