#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

#include "aircraft/input_error.hpp"
#include "sim/reduction/csv.hpp"

using namespace stallwright;
namespace fs = std::filesystem;

namespace {

// A folder of this process's own, gone with the test.
struct Folder {
  fs::path path = fs::temp_directory_path() / ("stallwright-csv-" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { fs::remove_all(path); }
};

std::string content(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

// The message that the text is refused with; it must be one line.
std::string refusal(std::string_view text, const CsvRequest& request = {}) {
  try {
    parse_csv(text, "log.csv", request);
  } catch (const InputError& error) {
    const std::string message = error.what();
    CHECK(message.find_first_of("\r\n\0") == std::string::npos);
    return message;
  }
  return "accepted";
}

CsvRequest numbers(std::vector<std::string> names) {
  CsvRequest request;
  request.numbers = std::move(names);
  return request;
}

CsvRequest texts(std::vector<std::string> names) {
  CsvRequest request;
  request.texts = std::move(names);
  return request;
}

}  // namespace

TEST_CASE("a plain table is read by column", "[reduction]") {
  const NumericTable table = parse_csv("t_s,v_kt\n0,60.5\n0.02, +61 \n0.04,-1.5e-3\n", "log.csv");
  CHECK(table.rows == 3);
  CHECK(table.column("t_s") == std::vector<double>{0.0, 0.02, 0.04});
  CHECK(table.column("v_kt") == std::vector<double>{60.5, 61.0, -1.5e-3});
  CHECK(table.line_of_row == std::vector<std::size_t>{2, 3, 4});
  CHECK(table.warnings.empty());
}

TEST_CASE("CR LF, a byte-order mark, blank lines at the end and comments on request are accepted",
          "[reduction]") {
  CHECK(parse_csv("\xEF\xBB\xBFt_s,a\r\n0,1\r\n1,2\r\n\r\n \r\n", "log.csv").column("a") ==
        std::vector<double>{1, 2});
  CsvRequest request;
  request.skip_comments = true;
  const NumericTable table = parse_csv("# from a book\na\n1\n# and\n# so on\n2\n", "log.csv", request);
  CHECK(table.column("a") == std::vector<double>{1, 2});
  CHECK(table.line_of_row == std::vector<std::size_t>{3, 6});
}

TEST_CASE("quoted fields hold commas, quotes and line ends", "[reduction]") {
  const NumericTable table = parse_csv("a,\"note, long\",b\n1,\"say \"\"when\"\"\nand stop\",2\n\"3\",,4\n",
                                       "log.csv", texts({"note, long"}));
  CHECK(table.texts.at("note, long") == std::vector<std::string>{"say \"when\"\nand stop", ""});
  CHECK(table.column("a") == std::vector<double>{1, 3});
  CHECK(table.line_of_row == std::vector<std::size_t>{2, 4});
}

TEST_CASE("columns that were not asked for are passed over when numbers are named", "[reduction]") {
  const NumericTable table = parse_csv("t_s,who,a\n0,me,1\n1,you,2\n", "log.csv", numbers({"a"}));
  CHECK(table.column("a") == std::vector<double>{1, 2});
  CHECK(table.numbers.size() == 1);
  CHECK(table.texts.empty());
}

TEST_CASE("an empty field is a number's absence only where that is allowed", "[reduction]") {
  CsvRequest request;
  request.numbers_or_empty = {"a"};
  const NumericTable table = parse_csv("t_s,a\n0,1\n1,\n", "log.csv", request);
  CHECK(std::isnan(table.column("a")[1]));
  CHECK(refusal("t_s,a\n0,1\n1,\n") == "log.csv:3: column a: expected a number, found an empty field");
}

TEST_CASE("each fault of a table is named with its line, column, expectation and finding", "[reduction]") {
  CHECK(refusal("") == "log.csv: expected a CSV table with a header row, found an empty file");
  CHECK(refusal("\n\n") == "log.csv:1: expected a header row of column names, found nothing");
  CHECK(refusal("\nt_s,a\n0,1\n") == "log.csv:1: expected a header row of column names, found a blank line");
  CHECK(refusal("0,1\n1,2\n") == "log.csv:1: expected a header row of column names, found numbers");
  CHECK(refusal("t_s;a\n0;1\n") == "log.csv:1: expected columns separated by commas, found 't_s;a'");
  CHECK(refusal("t_s,\n0,1\n") == "log.csv:1: expected a name for column 2, found an empty field");
  CHECK(refusal("a,a\n0,1\n") == "log.csv:1: column 'a': expected each name once, found it twice");
  CHECK(refusal("t_s,a\n") == "log.csv:1: expected 1 or more rows of data below the header, found 0");
  CHECK(refusal("t_s,a\n0,1\n1\n2,3\n") == "log.csv:3: expected 2 fields, found 1");
  CHECK(refusal("t_s,a\n0,1\n\n2,3\n") == "log.csv:3: expected 2 fields, found 1");
  CHECK(refusal("t_s,a\n0,1,5\n") == "log.csv:2: expected 2 fields, found 3");
  CHECK(refusal("t_s,a\n0,x1\n") == "log.csv:2: column a: expected a number, found 'x1'");
  CHECK(refusal("t_s,a\n0,1.5kt\n") == "log.csv:2: column a: expected a number, found '1.5kt'");
  CHECK(refusal("t_s,a\n0,nan\n") == "log.csv:2: column a: expected a finite number, found 'nan'");
  CHECK(refusal("t_s,a\n0,-inf\n") == "log.csv:2: column a: expected a finite number, found '-inf'");
  CHECK(refusal("t_s,a\n0,1e999\n") ==
        "log.csv:2: column a: expected a number within the range of a double, found '1e999'");
  CHECK(refusal("t_s,a\n0,\"1\n2,3\n4,5\n") ==
        "log.csv:2: expected a closing quote, found the end of the file");
  CHECK(refusal("\"t_s,a\n0,1\n") == "log.csv:1: expected a closing quote, found the end of the file");
}

TEST_CASE("time must rise strictly in the column t_s", "[reduction]") {
  CHECK(refusal("t_s,a\n0,1\n0.02,1\n0.02,1\n") ==
        "log.csv:4: column t_s: expected a time later than the row before, found '0.02'");
  CHECK(refusal("a,t_s\n0,2\n0,1\n") ==
        "log.csv:3: column t_s: expected a time later than the row before, found '1'");
  CHECK(refusal("time,a\n2,1\n1,1\n") == "accepted");
}

TEST_CASE("a missing column is named with the nearest one there is", "[reduction]") {
  CHECK(refusal("t_s,ratio,mass_kg\n0,1,2\n", numbers({"mas_kg"})) ==
        "log.csv:1: column mas_kg: expected in the header, found none; the nearest is 'mass_kg'");
  CHECK(refusal("t_s,a\n0,1\n", texts({"temperature_C"})) ==
        "log.csv:1: column temperature_C: expected in the header, found none");
  const NumericTable table = parse_csv("t_s,ratio\n0,1\n", "log.csv");
  CHECK_THROWS_WITH(table.column("ration"),
                    "log.csv:1: column ration: expected in the header, found none; the nearest is 'ratio'");
}

TEST_CASE("NUL bytes and megabytes of zeros are refused in one line", "[reduction]") {
  CHECK(refusal(std::string(3 << 20, '\0')) ==
        "log.csv:1: expected text, found a NUL byte (a damaged or binary file)");
  CHECK(refusal(std::string("t_s,a\n0,1\n1,") + std::string(4096, '\0')) ==
        "log.csv:3: expected text, found a NUL byte (a damaged or binary file)");
}

TEST_CASE("what was found is shown short and on one line", "[reduction]") {
  const std::string message = refusal("t_s,a\n0,\"x\ny" + std::string(500, 'z') + "\"\n");
  CHECK(message.find("found 'x\\x0ay") != std::string::npos);
  CHECK(message.size() < 120);
}

TEST_CASE("a last line that breaks off is kept if whole and dropped with a warning if not", "[reduction]") {
  CHECK(parse_csv("t_s,a\n0,1\n1,2", "log.csv").column("a") == std::vector<double>{1, 2});
  CHECK(parse_csv("t_s,a\r\n0,1\r\n1,2\r", "log.csv").column("a") == std::vector<double>{1, 2});
  for (const char* text :
       {"t_s,a\n0,1\n1", "t_s,a\n0,1\n1,", "t_s,a\n0,1\n1,-", "t_s,a\n0,1\n1,\"2", "t_s,a\n0,1\n0.0,4"}) {
    const NumericTable table = parse_csv(text, "log.csv");
    INFO(text);
    CHECK(table.column("a") == std::vector<double>{1});
    REQUIRE(table.warnings.size() == 1);
    CHECK(table.warnings[0].rfind("log.csv:3: the file breaks off here, line dropped (", 0) == 0);
  }
}

TEST_CASE("files that cannot be a table are refused by name", "[reduction]") {
  const Folder folder;
  const std::string missing = (folder.path / "none.csv").string();
  CHECK_THROWS_WITH(read_csv(missing), missing + ": expected a CSV file, found no such file");
  CHECK_THROWS_WITH(read_csv(folder.path), folder.path.string() + ": expected a CSV file, found a folder");
  const fs::path empty = folder.path / "empty.csv";
  std::ofstream(empty).close();
  CHECK_THROWS_AS(read_csv(empty), InputError);
}

TEST_CASE("numbers are written shortest or with fixed digits, texts quoted where needed", "[reduction]") {
  const Folder folder;
  const fs::path file = folder.path / "log.csv";
  {
    CsvWriter writer(file, {{"t_s", 2}, {"ratio"}, {"note, free"}});
    writer.write_row(std::vector<CsvValue>{0.02, 0.1, "plain"});
    writer.write_row(std::vector<CsvValue>{-0.001, 1e-7, "say \"when\",\nplease"});
    writer.write_row(std::vector<CsvValue>{2.675, 1.0 / 3.0, ""});
  }
  CHECK(content(file) ==
        "t_s,ratio,\"note, free\"\n0.02,0.1,plain\n0.00,1e-07,\"say \"\"when\"\",\nplease\"\n"
        "2.67,0.3333333333333333,\n");
}

TEST_CASE("shortest numbers read back as the same bits", "[reduction]") {
  const Folder folder;
  const fs::path file = folder.path / "log.csv";
  const std::vector<double> values = {0.1,  -1.0 / 3.0,         1e300, std::numeric_limits<double>::min(),
                                      -0.0, 123456789.123456789};
  {
    CsvWriter writer(file, {{"a"}});
    for (const double value : values) writer.write_row(std::vector<double>{value});
  }
  const NumericTable table = read_csv(file);
  CHECK(table.column("a") == values);
  CHECK(std::signbit(table.column("a")[4]));
}

TEST_CASE("a refused row leaves nothing behind and the writer goes on", "[reduction]") {
  const Folder folder;
  const fs::path file = folder.path / "log.csv";
  {
    CsvColumn gap{"b"};
    gap.may_be_empty = true;
    CsvWriter writer(file, {{"a"}, gap});
    writer.write_row(std::vector<double>{1.0, NAN});
    CHECK_THROWS_WITH(writer.write_row(std::vector<double>{NAN, 1.0}),
                      file.string() + ":3: column a: a number that is not finite cannot be written");
    CHECK_THROWS_AS(writer.write_row(std::vector<double>{1.0}), std::invalid_argument);
    CHECK_THROWS_AS(writer.write_row(std::vector<double>{2.0, INFINITY}), std::invalid_argument);
    writer.write_row(std::vector<double>{2.0, 3.0});
  }
  CHECK(content(file) == "a,b\n1,\n2,3\n");
}

TEST_CASE("a program that is killed leaves whole lines and loses less than one group", "[reduction]") {
  const Folder folder;
  const fs::path file = folder.path / "log.csv";
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    CsvWriter writer(file, {{"t_s"}, {"a", 17}}, 50);
    for (int i = 0; i < 1234; ++i) writer.write_row(std::vector<double>{0.02 * i, 1.0 / (1.0 + i)});
    ::raise(SIGKILL);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  REQUIRE(WIFSIGNALED(status));
  const NumericTable table = read_csv(file);
  CHECK(table.rows == 1200);
  CHECK(content(file).back() == '\n');
  CHECK(table.warnings.empty());
}

TEST_CASE("a file that cannot be opened or written is reported", "[reduction]") {
  const Folder folder;
  CHECK_THROWS_AS(CsvWriter(folder.path / "no" / "log.csv", {{"a"}}), std::runtime_error);
  CHECK_THROWS_AS(CsvWriter(folder.path / "log.csv", {}), std::invalid_argument);
  CHECK_THROWS_AS(CsvWriter(folder.path / "log.csv", {{"a", 18}}), std::invalid_argument);
  CHECK_FALSE(fs::exists(folder.path / "log.csv"));
  if (fs::exists("/dev/full")) CHECK_THROWS_AS(CsvWriter("/dev/full", {{"a"}}), std::runtime_error);
}

TEST_CASE("a disk that is full keeps whole lines, and nothing comes behind them", "[reduction]") {
  const Folder folder;
  const fs::path file = folder.path / "log.csv";
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    // What is larger than this does not fit, as on a full disk; it ends in the middle of a line.
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit full{1003, 4096}, room{4096, 4096};
    ::setrlimit(RLIMIT_FSIZE, &full);
    int told = 0;
    {
      CsvWriter writer(file, {{"t_s"}, {"text"}}, 10);
      for (int k = 0; k < 200; ++k) {
        if (k == 150) ::setrlimit(RLIMIT_FSIZE, &room);
        try {
          writer.write_row(std::vector<double>{k + 0.0, 1000.0});
        } catch (const std::runtime_error&) {
          ++told;
        }
      }
    }
    ::_exit(told > 1 ? 0 : 1);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  REQUIRE(WIFEXITED(status));
  CHECK(WEXITSTATUS(status) == 0);
  CHECK(content(file).size() > 990);
  CHECK(content(file).size() < 1004);
  CHECK(content(file).back() == '\n');
  const NumericTable table = read_csv(file);
  CHECK(table.warnings.empty());
  CHECK(table.column("t_s").back() == static_cast<double>(table.rows - 1));
}
