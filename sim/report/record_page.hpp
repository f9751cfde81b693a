#pragma once
#include <string>

#include "sim/report/sortie_folder.hpp"
#include "sim/report/who.hpp"

namespace stallwright {

/// The page to keep: record.html, made to be printed on A4 and filed. What was flown, loading and air, seeds and
/// the line that flies it again, the set points with their uncertainty and windows, what the warning protects,
/// verdict, cautions, lines to sign; each part says which file of the folder its numbers come from. One HTML
/// file as debrief_page makes it: nothing loaded, no script, well-formed XML. Same input, same bytes: the date
/// is what `who` says or a line to write on, never the clock's. Numbers that do not exist show as a dash.
std::string record_page(const Debrief& debrief, const Who& who);

}  // namespace stallwright
