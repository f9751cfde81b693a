#pragma once
#include <string>

#include "sim/report/debrief_page.hpp"

/// The parts of the debrief page, each a piece of HTML; debrief_page puts them in order.
namespace stallwright::debrief {

std::string style_sheet();
std::string header(const DebriefInput& input);
std::string verdict(const DebriefInput& input);
std::string set_point_charts(const DebriefInput& input);
std::string set_point_tables(const DebriefInput& input);
std::string protection_table(const DebriefInput& input);
std::string split_charts(const DebriefInput& input);
std::string readings_charts(const DebriefInput& input);
std::string budgets(const DebriefInput& input);
std::string whole_flight(const DebriefInput& input);
std::string record_close_ups(const DebriefInput& input);
std::string events_and_counts(const DebriefInput& input);
std::string caution_list();

}  // namespace stallwright::debrief
