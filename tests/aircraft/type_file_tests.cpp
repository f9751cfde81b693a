#include <unistd.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <set>
#include <sstream>
#include <string>

#include "aircraft/type_file.hpp"

using namespace stallwright;
namespace fs = std::filesystem;

namespace {

std::string slurp(const fs::path& file) {
  std::ostringstream out;
  out << std::ifstream(file, std::ios::binary).rdbuf();
  return out.str();
}

/// A changed copy of the first aeroplane, removed when the test ends.
class Copy {
 public:
  explicit Copy(const std::string& name)
      : path_(fs::temp_directory_path() /
              ("stallwright-type-" + std::to_string(getpid()) + "-" + name + ".toml")) {
    text_ = slurp(find_aircraft_file("marram"));
  }
  ~Copy() {
    std::error_code ignored;
    fs::remove(path_, ignored);
  }
  Copy(const Copy&) = delete;
  Copy& operator=(const Copy&) = delete;
  Copy(Copy&&) = delete;
  Copy& operator=(Copy&&) = delete;

  /// Replaces the first `old_text` after the line that begins with `table`, and remembers the line it stood
  /// on.
  Copy& change(const std::string& table, const std::string& old_text, const std::string& new_text) {
    const auto begin = text_.find("\n" + table + "\n");
    REQUIRE(begin != std::string::npos);
    const auto at = text_.find(old_text, begin + 1);
    REQUIRE(at != std::string::npos);
    line_ = 1 + std::count(text_.begin(), text_.begin() + std::ptrdiff_t(at), '\n');
    text_.replace(at, old_text.size(), new_text);
    return *this;
  }
  Copy& set_text(std::string text) {
    text_ = std::move(text);
    return *this;
  }
  long line() const { return line_; }
  const std::string& text() const { return text_; }
  const fs::path& path() const { return path_; }

  std::string error() const {
    std::ofstream(path_, std::ios::binary) << text_;
    try {
      load_aircraft_type(path_);
    } catch (const InputError& e) {
      return e.what();
    }
    return "no error";
  }
  /// `FILE:LINE: ` as it must begin, for the line of the change or another.
  std::string at(long line) const { return path_.string() + ":" + std::to_string(line) + ": "; }
  std::string here() const { return at(line_); }

 private:
  fs::path path_;
  std::string text_;
  long line_ = 0;
};

long line_of(const std::string& text, const std::string& line) {
  const auto at = text.find("\n" + line + "\n");
  REQUIRE(at != std::string::npos);
  return 2 + std::count(text.begin(), text.begin() + std::ptrdiff_t(at), '\n');
}

}  // namespace

TEST_CASE("all aeroplanes that come with the program load, and say that they are invented", "[type_file]") {
  const auto names = list_aircraft_types();
  CHECK(names == std::vector<std::string>{"marram", "sarsen", "tarnfell"});
  for (const auto& name : names) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    CAPTURE(name);
    CHECK(type.key == name);
    CHECK(type.summary.find("Invented") == 0);
    CHECK(type.bands.size() >= 14);
  }
}

TEST_CASE("degrees, knots, rpm, kilowatts and millimetres of the file are SI in the struct", "[type_file]") {
  const AircraftType type = load_aircraft_type(find_aircraft_file("marram"));
  CHECK(type.wing.section.stall_rad == Approx(16.5 * 3.14159265358979 / 180).epsilon(1e-12));
  CHECK(type.limits.v_ne_mps == Approx(125.0 * 1852 / 3600).epsilon(1e-12));
  CHECK(type.engine.rated_speed_radps == Approx(2550 * 2 * 3.14159265358979 / 60).epsilon(1e-12));
  CHECK(type.engine.rated_power_w == Approx(75000).epsilon(1e-12));
  CHECK(type.engine.fuel_flow_kgps == Approx(20.0 / 3600).epsilon(1e-12));
  CHECK(type.pitot_static.tube_diameter_m == Approx(0.0045).epsilon(1e-12));
  CHECK(type.pitot_static.volume_m3 == Approx(250e-6).epsilon(1e-12));
  CHECK(type.elevator.rate_limit_radps == Approx(75 * 3.14159265358979 / 180).epsilon(1e-12));
}

TEST_CASE("a wrong value is reported with file, line, field, range, unit and what was found", "[type_file]") {
  const std::string stall = "wing.section.stall_deg: expected a number from 5 to 30 deg, found ";
  struct Case {
    const char *value, *found;
  };
  for (const Case c : {Case{"\"abc\"", "\"abc\""}, Case{"nan", "nan"}, Case{"inf", "inf"},
                       Case{"-inf", "-inf"}, Case{"31.0", "31"}, Case{"4", "4"}, Case{"true", "true"},
                       Case{"[1, 2, 3]", "a list of 3"}, Case{"{ a = 1 }", "a table"},
                       Case{"1979-05-27", "a date or time"}, Case{"\"a\\nb\\u0007\"", "\"a?b?\""}}) {
    Copy copy("value");
    copy.change("[wing.section]", "stall_deg = 16.5", std::string("stall_deg = ") + c.value);
    CHECK(copy.error() == copy.here() + stall + c.found);
  }
}

TEST_CASE("both ends of a range are allowed, and whole numbers need no point", "[type_file]") {
  for (const char* value : {"5", "30", "30.0"}) {
    Copy copy("ends");
    copy.change("[wing.section]", "stall_deg = 16.5", std::string("stall_deg = ") + value);
    CHECK(copy.error() == "no error");
  }
}

TEST_CASE("a missing field is reported at the line of its table", "[type_file]") {
  Copy copy("missing");
  copy.change("[elevator]", "max_positive_deg = 18.0\n", "");
  CHECK(copy.error() == copy.at(line_of(copy.text(), "[elevator]")) +
                            "elevator.max_positive_deg: expected a number from 1 to 60 deg, found nothing");
}

TEST_CASE("a missing table is reported by name", "[type_file]") {
  Copy copy("table");
  copy.change("[engine]", "[engine]", "[motor]");
  CHECK(copy.error() == copy.at(1) + "engine: expected a table, found nothing");
}

TEST_CASE("a misspelt key is reported at its own line with the nearest known one", "[type_file]") {
  Copy required("misspelt");
  required.change("[wing.section]", "stall_width_deg", "stall_widht_deg");
  CHECK(required.error() ==
        required.here() + "wing.section.stall_widht_deg: unknown key, expected perhaps stall_width_deg");
}

TEST_CASE("a key too many is reported at its own line", "[type_file]") {
  Copy near("near"), far("far"), inside("inside"), top("top");
  near.change("[limits]", "v_no_kt = ", "v_mo_kt = 1\nv_no_kt = ");
  CHECK(near.error() == near.here() + "limits.v_mo_kt: unknown key, expected perhaps v_no_kt");
  far.change("[asymmetry]", "stall_sd_deg", "colour = \"red\"\nstall_sd_deg");
  CHECK(far.error() ==
        far.here() + "asymmetry.colour: unknown key, expected one of stall_sd_deg, twist_sd_deg");
  inside.change("[[flap.setting]]", "moment = 0.0", "moment = 0.0\nnonsense = 1");
  CHECK(inside.error().find(inside.at(inside.line() + 1) + "flap.setting[1].nonsense: unknown key") == 0);
  top.change("[limits]", "[limits]", "[cargo_hook]\nx = 1\n[limits]");
  CHECK(top.error().find(top.here() + "cargo_hook: unknown key, expected one of format, name") == 0);
}

TEST_CASE("numbers in lists are checked one by one, in length, and for rising", "[type_file]") {
  Copy word("word"), fall("fall"), shorter("short"), none("none");
  word.change("[propeller]", "0.092,", "\"x\",");
  CHECK(word.error() ==
        word.here() + "propeller.thrust_coefficient[2]: expected a number from -2 to 1, found \"x\"");
  fall.change("[propeller]", "0.3, ", "0.1, ");
  CHECK(fall.error() ==
        fall.here() +
            "propeller.advance_ratio[3]: expected a number above 0.2 (the list must rise), found 0.1");
  shorter.change("[propeller]", "0.045, ", "");
  CHECK(shorter.error().find(
            "propeller.thrust_coefficient: expected a list of 13 numbers from -2 to 1, found a list of 12") !=
        std::string::npos);
  none.change("[mass]", "envelope_aft_m = [0.450, 0.450, 0.450]", "envelope_aft_m = []");
  CHECK(none.error() == none.here() +
                            "mass.envelope_aft_m: expected a list of 3 numbers from -10 to 20 m, "
                            "found a list of 0");
}

TEST_CASE("values that do not fit together are reported", "[type_file]") {
  struct Case {
    const char *table, *old_text, *new_text, *message;
  };
  for (const Case c : {
           Case{"[[flap.setting]]", "deflection_deg = 0.0", "deflection_deg = 5.0",
                "flap.setting[1].deflection_deg: expected 0 deg (the first setting is flaps up), found 5"},
           Case{"[[flap.setting]]", "deflection_deg = 35.0", "deflection_deg = 15.0",
                "flap.setting[3].deflection_deg: expected a number above 15 deg (settings must rise), found "
                "15"},
           Case{"[[wing.station]]", "span_m = 0.0", "span_m = 0.2",
                "wing.station[1].span_m: expected 0 m (the first station is the root), found 0.2"},
           Case{"[[tail.station]]", "span_m = 1.55", "span_m = 0",
                "tail.station[2].span_m: expected a number above 0 m (stations must rise), found 0"},
           Case{
               "[aileron]", "outboard_m = 5.2", "outboard_m = 5.4",
               "aileron.outboard_m: expected a number above 3.2 and up to 5.3 m (on the surface), found 5.4"},
           Case{"[rudder]", "inboard_m = 0.05", "inboard_m = 2",
                "rudder.inboard_m: expected a number from 0 to below 1.35 m (on the surface), found 2"},
           Case{"[mass]", "envelope_aft_m = [0.450", "envelope_aft_m = [0.250",
                "mass.envelope_aft_m: expected numbers behind those of envelope_forward_m, above 0.3 m, "
                "found 0.25"},
           Case{"[mass]", "envelope_forward_m = [0.300, 0.300, 0.330]",
                "envelope_forward_m = [0.44, 0.44, 0.44]",
                "mass.envelope_forward_m: expected the default loading within the limits, found centre of "
                "gravity "},
           Case{"[mass]", "empty_izz_kgm2 = 1620.0", "empty_izz_kgm2 = 1790",
                "mass.empty_izz_kgm2: expected at most the sum of the other two, 1740 kg m2, found 1790"},
           Case{"[mass]", "reference_kg = 600.0", "reference_kg = 601",
                "mass.reference_kg: expected a number from empty_kg to max_kg, 365 to 600 kg, found 601"},
           Case{"[[mass.station]]", "default_kg = 85.0", "default_kg = 111",
                "mass.station[1].default_kg: expected at most max_kg, 110 kg, found 111"},
           Case{"[mass]", "empty_kg = 365.0", "empty_kg = 465.0",
                "mass.max_kg: expected the default loading within the limits, found mass "},
           Case{"[limits]", "v_no_kt = 98", "v_no_kt = 130",
                "limits.v_no_kt: expected a speed below v_ne_kt, 125 kt, found 130"},
           Case{"[limits]", "book_v_s0_kt = 38.0", "book_v_s0_kt = 43",
                "limits.book_v_s0_kt: expected at most book_v_s1_kt, 42 kt, found 43"},
           Case{"[limits]", "v_fe_kt = 75.0", "v_fe_kt = 85",
                "limits.v_fe_kt: expected the limit speed of the last flap setting, 75 kt, found 85"},
           Case{"[[band]]", "high = 43.0", "high = 38",
                "band[1].high: expected a number above low, 38, found 38"},
       }) {
    Copy copy("fit");
    copy.change(c.table, c.old_text, c.new_text);
    const std::string error = copy.error();
    CAPTURE(error, c.message);
    CHECK(error.find(c.message) != std::string::npos);
    CHECK(error.find('\n') == std::string::npos);
    const bool points_at_the_change = error.find(copy.here()) == 0;
    const bool points_at_max_mass = error.find("mass.max_kg") != std::string::npos;
    CHECK((points_at_the_change || points_at_max_mass));
  }
}

TEST_CASE("an engine that idles faster than it is rated is reported", "[type_file]") {
  Copy copy("idle");
  copy.change("[engine]", "rated_speed_rpm = 2550.0", "rated_speed_rpm = 1000");
  copy.change("[engine]", "idle_speed_rpm = 650.0", "idle_speed_rpm = 1200");
  CHECK(copy.error() ==
        copy.here() + "engine.idle_speed_rpm: expected a speed below rated_speed_rpm, 1000 rpm, found 1200");
}

TEST_CASE("a file that is no TOML file is refused with one line", "[type_file]") {
  const fs::path folder = fs::temp_directory_path();
  const auto error_of = [](const fs::path& file) -> std::string {
    try {
      load_aircraft_type(file);
    } catch (const InputError& e) {
      return e.what();
    }
    return "no error";
  };
  CHECK(error_of(folder / "stallwright-no-such.toml") ==
        (folder / "stallwright-no-such.toml").string() + ": expected a TOML file, found no such file");
  CHECK(error_of(folder) == folder.string() + ": expected a TOML file, found a folder");
  CHECK(error_of("/dev/zero") == "/dev/zero: expected a TOML file, found something that is not a plain file");

  Copy zeros("zeros"), few("few"), broken("broken"), empty("empty");
  zeros.set_text(std::string(3'000'000, '\0'));
  CHECK(zeros.error() ==
        zeros.path().string() + ": expected a TOML file of at most 1 MB, found 3000000 bytes");
  few.set_text("format = 1\n" + std::string(10, '\0'));
  CHECK(few.error() == few.path().string() + ": expected a TOML file, found binary data (a zero byte)");
  broken.set_text("format = \"stallwright-aircraft-1\"\nname = = 3\n");
  CHECK(broken.error().find(broken.at(2) + "not TOML: ") == 0);
  CHECK(broken.error().find('\n') == std::string::npos);
  empty.set_text("");
  CHECK(empty.error() == empty.at(1) + "format: expected stallwright-aircraft-1, found nothing");
}

TEST_CASE("a type file cut off anywhere gives one line and never loads", "[type_file]") {
  Copy copy("cut");
  const std::string whole = copy.text();
  const std::size_t last_needed = whole.find("[[band]]");  // the bands may be left out
  for (std::size_t n = 0; n < last_needed; n += 97) {
    copy.set_text(whole.substr(0, n));
    const std::string error = copy.error();
    CAPTURE(n, error);
    const bool before_the_last_number = n < whole.find("buffet_strength");
    if (before_the_last_number) CHECK(error.find(copy.path().string() + ":") == 0);
    CHECK(error.find('\n') == std::string::npos);
  }
}

TEST_CASE("an aeroplane is found by name or by path", "[type_file]") {
  CHECK(find_aircraft_file("marram").filename() == "marram.toml");
  CHECK(find_aircraft_file("here/mine.toml") == "here/mine.toml");
  CHECK(find_aircraft_file("mine.toml") == "mine.toml");
  CHECK_THROWS_WITH(find_aircraft_file("maram"),
                    "aircraft: expected one of marram, sarsen, tarnfell or a path to a "
                    ".toml file, found \"maram\"; perhaps marram");
  CHECK_THROWS_WITH(find_aircraft_file(""),
                    "aircraft: expected one of marram, sarsen, tarnfell or a path to a "
                    ".toml file, found \"\"");
}

namespace {

void replace_all(std::vector<KnownField>& rows, const std::string& word, const std::vector<std::string>& by) {
  std::vector<KnownField> out;
  for (const auto& row : rows) {
    if (row.path.rfind(word + ".", 0) != 0) {
      out.push_back(row);
      continue;
    }
    for (const auto& each : by) out.push_back({each + row.path.substr(word.size()), row.unit, row.range});
  }
  rows = out;
}

std::string trimmed(const std::string& text) {
  const auto begin = text.find_first_not_of(" `"), end = text.find_last_not_of(" `");
  return begin == std::string::npos ? "" : text.substr(begin, end - begin + 1);
}

/// The rows of the page's tables `| field | unit | range | meaning |`.
std::vector<KnownField> documented_fields() {
  std::ifstream page(fs::path(STALLWRIGHT_SOURCE_DIR) / "aircraft/types/README.md");
  std::vector<KnownField> rows;
  bool inside = false;
  for (std::string line; std::getline(page, line);) {
    if (line.rfind("| field |", 0) == 0) inside = true;
    if (line.empty()) inside = false;
    if (!inside || line.rfind("| `", 0) != 0) continue;
    std::istringstream cells(line.substr(1));
    std::string path, unit_name, range;
    std::getline(cells, path, '|');
    std::getline(cells, unit_name, '|');
    std::getline(cells, range, '|');
    rows.push_back({trimmed(path), trimmed(unit_name), trimmed(range)});
  }
  replace_all(rows, "SURFACE", {"wing", "tail", "fin"});
  replace_all(rows, "CONTROL", {"aileron", "elevator", "rudder"});
  replace_all(rows, "POINT",
              {"body.centre", "propeller.hub", "mass.empty_cg", "mass.station[].at", "probe.at"});
  return rows;
}

std::set<std::string> as_lines(const std::vector<KnownField>& fields) {
  std::set<std::string> out;
  for (const auto& f : fields) {
    if (f.range != "table" && f.range != "tables") out.insert(f.path + " | " + f.unit + " | " + f.range);
  }
  return out;
}

}  // namespace

TEST_CASE("the page on how to write an aeroplane lists the loader's fields, units and ranges, and no others",
          "[type_file][documentation]") {
  std::vector<KnownField> known;
  load_aircraft_type(find_aircraft_file("marram"), known);
  const auto in_loader = as_lines(known), on_page = as_lines(documented_fields());
  CHECK(in_loader.size() > 150);
  for (const auto& line : in_loader) {
    INFO("not on the page: " << line);
    CHECK(on_page.count(line) == 1);
  }
  for (const auto& line : on_page) {
    INFO("not in the loader: " << line);
    CHECK(in_loader.count(line) == 1);
  }
}
