#include "sim/cli/who_options.hpp"

namespace stallwright::cli {

void add_who_options(CLI::App& command, Who& who) {
  command
      .add_option("--who", who.names,
                  "Name for record.html, as of pilot or instructor; repeatable; otherwise a line to write on")
      ->type_name("NAME")
      ->allow_extra_args(false);
  command.add_option("--date", who.date, "Date for record.html, in any words; otherwise a line to write on")
      ->type_name("TEXT")
      // An empty date stands for none inside; typed, it is a mistake.
      ->check([](const std::string& text) { return text.empty() ? "expected a date, found nothing" : ""; });
}

}  // namespace stallwright::cli
