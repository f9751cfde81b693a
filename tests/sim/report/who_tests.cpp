#include <catch2/catch.hpp>

#include "aircraft/input_error.hpp"
#include "sim/report/who.hpp"
#include "tests/sim/cli/run_program.hpp"

using namespace stallwright;
using Catch::Matchers::Contains;

TEST_CASE("names and date come back from their file as they were given", "[report][who]") {
  const cli_test::Folder folder;
  const std::vector<Who> all = {
      {{"Wilma Quill", "J. \u00d8st & S\u00f8n <\"'>"}, "a Tuesday in June"}, {{}, "1 May"}, {{"One"}, ""}};
  for (const Who& who : all) {
    cli_test::put(folder / "who.json", who_to_json(who));
    CHECK(read_who(folder.path()) == who);
  }
}

TEST_CASE("a folder without names has none", "[report][who]") {
  const cli_test::Folder folder;
  CHECK(read_who(folder.path()).empty());
}

TEST_CASE("what is given replaces what was kept, part by part", "[report][who]") {
  const Who kept{{"A", "B"}, "May"};
  CHECK(with_given(kept, {}) == kept);
  CHECK(with_given(kept, {{"C"}, ""}) == Who{{"C"}, "May"});
  CHECK(with_given(kept, {{}, "June"}) == Who{{"A", "B"}, "June"});
}

TEST_CASE("eighty characters fit and eighty-one do not, counted in letters and not in bytes",
          "[report][who]") {
  std::string most;
  for (int i = 0; i < 80; ++i) most += "\u00f8";
  CHECK_NOTHROW(check_who({{most}, most}));
  CHECK_THROWS_WITH(check_who({{most + "x"}, ""}), "--who: expected 1 to 80 characters, found 81");
  CHECK_THROWS_WITH(check_who({{}, most + "x"}), "--date: expected 1 to 80 characters, found 81");
}

TEST_CASE("control characters, blank names and bytes that are no letters are refused", "[report][who]") {
  for (const char* bad : {"a\nb", "a\tb", "\x1b[2J", "a\x7f", "\u0085", "\u009b2J", "\u2028", "\u202egnirts",
                          "\u2066", "\uffff", "", "   ", "\xff", "\xc3", "\xed\xa0\x80", "\xc0\xaf"}) {
    INFO(bad);
    CHECK_THROWS_AS(check_who({{bad}, ""}), InputError);
  }
  CHECK_NOTHROW(check_who({{"\u0391\u03b2 \u65e5\u672c O'Neil-Smith"}, ""}));
}

TEST_CASE("more names than fit the sheet are refused", "[report][who]") {
  CHECK_NOTHROW(check_who({std::vector<std::string>(6, "A"), ""}));
  CHECK_THROWS_WITH(check_who({std::vector<std::string>(7, "A"), ""}),
                    "--who: expected at most 6 names, found 7");
}

TEST_CASE("a spoilt file of names is refused in one line that names it", "[report][who]") {
  const cli_test::Folder folder;
  const std::string head = R"({"format": "stallwright-who-1", )";
  for (const std::string& bad :
       {std::string(""), std::string("[]"), std::string(R"({"format": "other", "names": []})"), head + "}",
        head + R"("names": "A"})", head + R"("names": [1]})", head + R"("names": ["a\nb"]})",
        head + R"("names": [], "date": 3})", head + R"("names": [""]})",
        head + R"("names": ["1","2","3","4","5","6","7"]})", std::string(70000, ' ')}) {
    cli_test::put(folder / "who.json", bad);
    INFO(bad.substr(0, 80));
    try {
      read_who(folder.path());
      FAIL_CHECK("was read");
    } catch (const InputError& e) {
      CHECK_THAT(e.what(), Contains("who.json") && !Contains("\n"));
    }
  }
}
