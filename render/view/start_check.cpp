// What a choice on the start page comes to, and why it cannot be flown.
#include <algorithm>
#include <cmath>

#include "aircraft/input_error.hpp"
#include "aircraft/math/angle.hpp"
#include "render/view/start_view.hpp"
#include "render/view/sun.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/who.hpp"
#include "sim/sortie/card_check.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright::view {
namespace {

template <class Offer>
const Offer* find(const std::vector<Offer>& offers, const std::string& key) {
  const auto at = std::find_if(offers.begin(), offers.end(), [&](const Offer& o) { return o.key == key; });
  return at == offers.end() ? nullptr : &*at;
}

/// An offer that can be used, else why not.
template <class Offer>
const Offer* usable(const std::vector<Offer>& offers, const std::string& key, const char* what,
                    std::vector<std::string>& problems) {
  const Offer* found = find(offers, key);
  if (found == nullptr) problems.push_back(std::string("There is no ") + what + " called " + key + " here.");
  if (found != nullptr && !found->problem.empty()) problems.push_back(found->problem);
  return found;
}

void load_it(const AircraftType& type, const StartChoice& choice, StartCheck& check) {
  check.loading = default_loading(type);
  for (std::size_t i = 0; i < type.mass.stations.size(); ++i)
    if (const auto kg = choice.load_kg.find(type.mass.stations[i].name); kg != choice.load_kg.end())
      check.loading.kg[i] = std::clamp(kg->second, 0.0, type.mass.stations[i].max_kg);
  const MassProperties mass = mass_properties(type, check.loading);
  check.mass_kg = mass.mass_kg;
  check.cg_aft_m = mass.cg.x_aft_m;
  check.range = envelope_range(type, mass.mass_kg);
  const std::vector<EnvelopeBreach> breaches = check_envelope(type, check.loading);
  check.inside = breaches.empty();
  check.balance = fixed(check.mass_kg, 0) + " kg, " + fixed(check.cg_aft_m, 3) +
                  " m aft: " + (check.inside ? "inside the envelope" : "OUTSIDE the envelope");
  for (const EnvelopeBreach& breach : breaches) check.problems.push_back("Loading: " + breach.sentence + ".");
}

void find_card(const StartView& view, const StartChoice& choice, StartCheck& check) {
  if (choice.card != "own") {
    check.card = usable(view.cards, choice.card, "card", check.problems);
    if (check.card == nullptr) return;
    check.flown_card = check.card->card;
    check.card_file = check.card->file;
    return;
  }
  check.card_file = choice.own_card;
  if (choice.own_card.empty()) {
    check.problems.emplace_back("Name the file of your own card.");
    return;
  }
  try {
    check.flown_card = load_test_card(choice.own_card);
  } catch (const std::exception& e) {
    check.problems.emplace_back(e.what());
  }
}

void check_taught(const StartView& view, const StartChoice& choice, StartCheck& check) {
  if (!check.flown_card.verifies) return;
  if (choice.set_points.empty()) {
    check.problems.emplace_back(view.taught.empty()
                                    ? "Verifying needs set points: fly the short or the thorough card first."
                                    : "Verifying needs set points: choose the flight that they come from.");
    return;
  }
  // The same folder may be spelt in more than one way.
  const auto at = std::find_if(view.taught.begin(), view.taught.end(), [&](const TaughtOffer& t) {
    std::error_code error;
    return t.folder.string() == choice.set_points ||
           std::filesystem::equivalent(t.folder, choice.set_points, error);
  });
  if (at == view.taught.end())
    check.problems.push_back("No set points of a flight in " + choice.set_points +
                             ", among the sorties of the logbook.");
  else if (check.aircraft != nullptr && at->aircraft != check.aircraft->type.name)
    check.problems.push_back("Those set points belong to " + at->aircraft + ", not to " +
                             check.aircraft->type.name + ".");
}

void check_fit(StartCheck& check) {
  if (check.aircraft == nullptr || !check.aircraft->problem.empty() || check.flown_card.points.empty())
    return;
  for (const std::string& problem : card_check(check.flown_card, check.aircraft->type))
    check.problems.push_back("The card does not fit this aeroplane: " + problem + ".");
}

void check_pilot(const StartChoice& choice, StartCheck& check) {
  if (choice.pilot.empty()) return;
  try {
    check_who({{choice.pilot}, ""});
  } catch (const InputError& e) {
    // The message speaks of the option of the command line.
    std::string text = e.what();
    const std::size_t colon = text.find(": ");
    check.problems.push_back("Pilot's name: " + (colon == std::string::npos ? text : text.substr(colon + 2)) +
                             ".");
  }
}

}  // namespace

StartCheck start_check(const StartView& view, const StartChoice& choice) {
  StartCheck check;
  check.aircraft = usable(view.aircraft, choice.aircraft, "aeroplane", check.problems);
  if (check.aircraft != nullptr && check.aircraft->problem.empty())
    load_it(check.aircraft->type, choice, check);
  find_card(view, choice, check);
  check_fit(check);
  check_taught(view, choice, check);
  check.air = usable(view.air, choice.air, "air", check.problems);
  check_pilot(choice, check);
  const double up = sun_over_the_place(choice.hour).elevation_deg;
  check.hour_words =
      hour_text(choice.hour) + (up < 0.0 ? ", the sun is down" : ", sun " + fixed(up, 0) + "\u00b0 up");
  return check;
}

std::string hour_text(double hour) {
  const long minutes = std::lround(hour * 60.0);
  const auto two = [](long value) { return (value < 10 ? "0" : "") + std::to_string(value); };
  return two(minutes / 60) + ":" + two(minutes % 60);
}

}  // namespace stallwright::view
