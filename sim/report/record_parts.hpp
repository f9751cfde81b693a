#pragma once
#include <string>
#include <string_view>

#include "sim/report/sortie_folder.hpp"
#include "sim/report/who.hpp"

/// The parts of the page to keep, each a piece of HTML; record_page puts them in order.
namespace stallwright::record {

/// A part with its heading, and on the same line where its numbers come from.
std::string section(std::string_view heading, std::string_view source, const std::string& inner);

std::string header(const Debrief& debrief, const Who& who);
std::string flight(const Debrief& debrief);
std::string loading(const Debrief& debrief);
std::string fly_it_again(const FlownSortie& flown);
std::string set_points(const Debrief& debrief);
std::string protection(const Debrief& debrief);
std::string verdict(const Debrief& debrief);
std::string further_cautions();
std::string sign_off(const Debrief& debrief, const Who& who);
std::string style_sheet();

/// Hours as HH:MM.
std::string clock_text(double hours);

/// The command that flies the same sortie again from its own folder, for a POSIX shell.
std::string fly_again_command(const FlownSortie& flown);

}  // namespace stallwright::record
