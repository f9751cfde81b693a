#include <catch2/catch.hpp>
#include <vector>

#include "tests/sim/cli/run_program.hpp"
#include "tests/sim/report/page_checks.hpp"

namespace stallwright::cli_test {
using page_checks::count_of;
using page_checks::imbalance;

TEST_CASE("the plan page is one well-formed file beside the same text", "[cli][plan]") {
  const Folder folder;
  const Result with = run(folder, "plan --aircraft sarsen --html page.html");
  CHECK(with.status == 0);
  CHECK(folder.listing() == "page.html\n");
  CHECK(with.out == run(folder, "plan --aircraft sarsen").out);
  const std::string page = text_of(folder / "page.html");
  CHECK(page.starts_with("<!DOCTYPE html>"));
  CHECK(imbalance(page) == "");
  CHECK(page.find("<script") == std::string::npos);
  CHECK(page.find("src=") == std::string::npos);
  CHECK(count_of(page, "http") == count_of(page, "xmlns=\"http://www.w3.org/2000/svg\""));
  // The envelope is drawn, with the load in it, and every try has its line to write in.
  CHECK(count_of(page, "<svg") == 1);
  CHECK(page.find("kg at 0.") != std::string::npos);
  CHECK(page.find("FLOOR 1500 ft") != std::string::npos);
  CHECK(page.find("spin recovery") != std::string::npos);
  CHECK(page.find("Knock it off") != std::string::npos);
}

TEST_CASE("a hostile card name stays text on the plan page", "[cli][plan]") {
  const Folder folder;
  std::string card = text_of(fs::path(STALLWRIGHT_SOURCE_DIR) / "assets/cards/short.toml");
  const std::string name = "\"Short card\"", point = "name = \"approach\"";
  card.replace(card.find(name), name.size(), "'</title><script>alert(1)</script> & \"x\"'");
  card.replace(card.find(point), point.size(), "name = '<b onload=x>'");
  put(folder / "bad.toml", card);
  REQUIRE(run(folder, "plan --card bad.toml --html page.html").err.empty());
  const std::string page = text_of(folder / "page.html");
  CHECK(imbalance(page) == "");
  CHECK(page.find("<script") == std::string::npos);
  CHECK(page.find("<b onload") == std::string::npos);
  CHECK(page.find("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;x&quot;") != std::string::npos);
  CHECK(page.find("&lt;b onload=x&gt;") != std::string::npos);
}

TEST_CASE("the plan page is not written over a folder, nor where no folder is", "[cli][plan]") {
  const Folder folder;
  fs::create_directory(folder / "here");
  for (const std::string place : {"here", "here/", "nowhere/page.html"}) {
    CAPTURE(place);
    const Result result = run(folder, "plan --html " + place);
    CHECK(result.status == 2);
    CHECK(result.out.empty());
    CHECK(result.err_lines() == 1);
    CHECK(result.err.find("--html: expected") != std::string::npos);
    CHECK(folder.listing() == "here\n");
  }
}

TEST_CASE("a load outside the envelope is refused and no page is left", "[cli][plan]") {
  const Folder folder;
  const std::string load =
      "--load 'left seat=100' --load 'right seat=100' --load bags=25 --load 'left tank=36' --load 'right "
      "tank=36'";
  const Result result = run(folder, "plan --aircraft sarsen " + load + " --html p.html");
  CHECK(result.status == 2);
  CHECK(result.err_lines() == 1);
  CHECK(folder.listing().empty());
}

}  // namespace stallwright::cli_test
