#pragma once
#include "sim/study/study_sortie.hpp"

namespace stallwright::cli {

/// Tells on the standard error, on one line written over and over, how many sorties are done, of how many, how fast and how
/// long it will take; the line goes when all are done. On a terminal only; a pipe gets nothing.
StudyProgress progress_line();

/// "4 min", "1 h 20 min", "30 s": rounded as one would say it.
std::string duration_words(double time_s);

/// Wipes the line where one was left unfinished, before something else is said.
void clear_progress_line();

}  // namespace stallwright::cli
