// The page to keep, made by the program: from one sortie, since flying is what takes time.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <regex>

#include "sim/report/number_text.hpp"
#include "sim/report/svg.hpp"
#include "tests/sim/cli/least_card.hpp"
#include "tests/sim/cli/run_program.hpp"

namespace stallwright::cli_test {
namespace {

using Json = nlohmann::json;
using Catch::Matchers::Contains;

/// With a name that a page must escape.
const std::string kCard = std::string(kLeastCard).replace(kLeastCard.find("Least card"), 10, "Least <card>");

/// What stands in the <pre>, as a person would type it.
std::string command_on(const std::string& page) {
  const std::size_t from = page.find("<pre>") + 5;
  const std::string line = page.substr(from, page.find("</pre>") - from);
  return std::regex_replace(std::regex_replace(line, std::regex("<[^>]*>"), ""), std::regex("&#39;"), "'");
}

}  // namespace

TEST_CASE("rehearse writes the record with who flew, and debrief makes the same page again",
          "[cli][record]") {
  const Folder folder;
  put(folder / "least.toml", kCard);
  const Result flown =
      run(folder,
          "rehearse --card least.toml --air light --seed 5 --load 'front seat=80.5' --out first "
          "--who 'Wilma <Quill>' --who 'O'\\''Reed' --date '1 May'");
  INFO(flown.err);
  REQUIRE(answered(flown.status));
  const fs::path first = folder / "first";
  const std::string page = text_of(first / "record.html"), names = text_of(first / "who.json");
  CHECK_THAT(page, Contains("Wilma &lt;Quill&gt;") && Contains("O&#39;Reed") && Contains("1 May") &&
                       Contains("Least &lt;card&gt;"));
  CHECK(Json::parse(names).at("names") == Json({"Wilma <Quill>", "O'Reed"}));
  CHECK(Json::parse(names).at("date") == "1 May");
  for (const auto& entry : fs::directory_iterator(first))
    if (entry.path().filename() != "record.html" && entry.path().filename() != "who.json") {
      INFO(entry.path());
      CHECK_THAT(text_of(entry.path()), !Contains("Quill"));
    }
  CHECK_THAT(flown.out, Contains("record.html") && !Contains("Quill"));

  {
    INFO("its numbers are those of the files that it names");
    const Json judgement = Json::parse(text_of(first / "judgement.json"));
    const Json sortie = Json::parse(text_of(first / "sortie.json"));
    for (const Json& point : judgement.at("sets").at(0).at("points")) {
      REQUIRE(point.at("ratio").is_number());
      const std::string row = "<th scope=\"row\">" + point.at("name").get<std::string>() +
                              "</th>\n<td class=\"number\">" +
                              page_fixed(point.at("ratio").get<double>(), 4) + "</td>\n";
      const Json& interval = point.at("interval_95");
      const double half = 0.5 * (interval.at(1).get<double>() - interval.at(0).get<double>());
      CHECK_THAT(page, Contains(row + "<td class=\"number\">\u00b1 " + page_fixed(half, 4) +
                                "</td>\n<td class=\"number\">\u00b1 " +
                                page_fixed(point.at("expanded_kt").get<double>(), 2) +
                                "</td>\n<td class=\"number\">" +
                                page_fixed(point.at("speed_kt").get<double>(), 1) + "</td>"));
    }
    CHECK_THAT(page, Contains(escaped(judgement.at("reason").get<std::string>())));
    const Json& mass = sortie.at("mass");
    for (const char* key : {"true_kg", "stated_kg"})
      CHECK_THAT(page, Contains(page_fixed(mass.at(key).get<double>(), 1)));
    for (const char* key : {"cg_aft_m", "cg_forward_limit_m", "cg_aft_limit_m"})
      CHECK_THAT(page, Contains(page_fixed(mass.at(key).get<double>(), 3)));
  }
  {
    INFO("the line on the page flies the same sortie again");
    const std::string line = command_on(page), program = "stallwright ";
    REQUIRE(line.starts_with(program));
    CHECK(std::system(("cd '" + first.string() + "' && '" STALLWRIGHT_PROGRAM "' " +
                       line.substr(program.size()) + " >/dev/null 2>&1")
                          .c_str()) != -1);
    CHECK(text_of(folder / "again/log.csv") == text_of(first / "log.csv"));
    CHECK(text_of(folder / "again/truth.csv") == text_of(first / "truth.csv"));
  }
  {
    INFO("debrief makes it again, byte for byte, and keeps the names");
    fs::remove(first / "record.html");
    CHECK(run(folder, "debrief first").status == flown.status);
    CHECK(text_of(first / "record.html") == page);
    CHECK(text_of(first / "who.json") == names);
  }
  {
    INFO("names that are refused and a spoilt file of names leave the folder alone");
    const auto refused = [&](const std::string& arguments) {
      const Result result = run(folder, arguments);
      INFO(result.err);
      CHECK(result.status == 2);
      CHECK(result.err_lines() == 1);
      CHECK(text_of(first / "judgement.json") == "old");
      CHECK(text_of(first / "record.html") == page);
    };
    put(first / "judgement.json", "old");
    refused("debrief first --who \"$(printf 'a\\033[2J')\"");
    refused("debrief first --date ''");
    refused("debrief first --who " + std::string(81, 'x'));
    CHECK(text_of(first / "who.json") == names);
    put(first / "who.json", "{");
    refused("debrief first");
    put(first / "who.json", names);
  }
  {
    INFO("debrief takes other names and keeps the date; without the file of names there are none");
    CHECK(answered(run(folder, "debrief first --who 'Third Hand'").status));
    CHECK_THAT(text_of(first / "record.html"),
               Contains("Third Hand") && Contains("1 May") && !Contains("Quill"));
    fs::remove(first / "who.json");
    CHECK(answered(run(folder, "debrief first").status));
    CHECK_THAT(text_of(first / "record.html"), !Contains("Third Hand") && !Contains("1 May"));
    CHECK_FALSE(fs::exists(first / "who.json"));
  }
}

TEST_CASE("names that are refused stop a rehearsal before anything is written", "[cli][record]") {
  const Folder folder;
  const std::string before = folder.listing();
  const std::string many = "--who a --who b --who c --who d --who e --who f --who g";
  for (const std::string& bad :
       {"--who " + std::string(81, 'x'), std::string("--who ''"), std::string("--who \"$(printf 'a\\tb')\""),
        "--date " + std::string(81, 'x'), std::string("--date ''"), many}) {
    const Result result = run(folder, "rehearse --out out " + bad);
    INFO(bad << ": " << result.err);
    CHECK(result.status == 2);
    CHECK(result.err_lines() == 1);
    CHECK(folder.listing() == before);
  }
}

}  // namespace stallwright::cli_test
