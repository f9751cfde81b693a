// What came of a verifying sortie, as a table for terminals and as a page.
#include <algorithm>
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"
#include "sim/report/verdict_text.hpp"
#include "sim/report/verification_report.hpp"

namespace stallwright {
namespace {

std::string flight_words(const VerifiedPoint& v) {
  std::string text = v.power == PowerRule::idle ? "idle" : v.power == PowerRule::level ? "level" : "descent";
  if (v.bank_deg != 0.0) text += ", " + fixed(v.bank_deg, 0) + "\u00b0 of bank";
  return text;
}

std::string outcome_word(const VerifiedPoint& v) { return !v.in_use ? "not judged" : v.ok ? "good" : "NO"; }

std::string verdict_words(const VerificationDebrief& debrief) {
  const Verification& v = debrief.verification;
  if (v.pass) return "Pass.";
  std::string again;
  for (const std::string& name : v.fly_again) again += (again.empty() ? "" : "; ") + name;
  return again.empty() ? "Not verified: fly this card again." : "Teach again: " + again + ".";
}

/// Padded to a width in letters.
std::string cell(std::string text, std::size_t width, bool right) {
  const auto letters = static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
  const std::string blanks(letters < width ? width - letters : 0, ' ');
  return right ? blanks + text : text + blanks;
}

std::string line(const std::string& name, const std::string& flaps, const std::string& flight,
                 const std::string& tone, const std::string& stall, const std::string& margin,
                 const std::string& result) {
  return "  " + cell(name, 18, false) + cell(flaps, 7, true) + "  " + cell(flight, 20, false) +
         cell(tone, 9, true) + cell(stall, 9, true) + cell(margin, 10, true) + "  " + result + "\n";
}

/// In lines of at most 100 letters, set in below the first.
std::string wrapped(const std::string& first, const std::string& text) {
  std::string out, row = first;
  std::string word;
  const std::string in(9, ' ');
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i < text.size() && text[i] != ' ') {
      word += text[i];
      continue;
    }
    if (row.size() + word.size() + 1 > 100) {
      out += row + "\n";
      row = in;
    }
    row += (row.empty() || row.back() == ' ' ? "" : " ") + word;
    word.clear();
  }
  return out + row + "\n";
}

std::string tone_text(const VerifiedPoint& v, std::string (*number)(double, int)) {
  if (!v.slow_run) return std::to_string(v.nuisance_tones) + (v.nuisance_tones == 1 ? " tone" : " tones");
  return std::isfinite(v.tone_kt) ? number(v.tone_kt, 1) : "none";
}

std::string page_table(const VerificationDebrief& debrief) {
  html::Table table;
  table.caption = "Speed at the tone against the stall, kt indicated";
  table.headings = {"point",    "flaps",  "flown",     "tone at",        "taught at",
                    "stall at", "margin", "in order?", "what came of it"};
  table.numeric = {false, true, false, true, true, true, true, false, false};
  for (const VerifiedPoint& v : debrief.verification.points)
    table.rows.push_back(
        {escaped(v.name), page_fixed(v.flap_deg, 0) + "\u00b0", flight_words(v), tone_text(v, page_fixed),
         page_fixed(v.taught_kt, 1), page_fixed(v.stall_kt, 1), page_signed(v.margin_kt, 1),
         v.in_use && !v.ok ? html::element("strong", outcome_word(v) + " \u25bc") : outcome_word(v),
         escaped(v.text)});
  return table.str();
}

constexpr double kWidth = 800, kLeft = 210, kRight = 770, kTop = 44, kRow = 30;

/// Tone and stall of every run on one axis of speed, faster to the left as on every chart.
std::string chart(const VerificationDebrief& debrief) {
  std::vector<const VerifiedPoint*> runs;
  Extent extent;
  for (const VerifiedPoint& v : debrief.verification.points)
    if (v.slow_run) {
      runs.push_back(&v);
      for (const double kt : {v.tone_kt, v.stall_kt, v.taught_kt}) extent.add(kt);
    }
  if (runs.empty() || extent.empty()) return "";
  const double wanted = debrief.flown.config.card.wanted_margin_kt;
  const Extent wide = extent.widened(0.08, 5.0);
  const Scale x{wide.low(), wide.high(), kRight, kLeft};
  const double bottom = kTop + kRow * static_cast<double>(runs.size());
  Svg svg(kWidth, bottom + 34, "Tone and stall of every run");
  for (const double kt : nice_ticks(x.low, x.high, 10).values) {
    svg.line({x(kt), kTop}, {x(kt), bottom + 4}, {theme::kGrid});
    svg.text({x(kt), bottom + 18}, page_fixed(kt, 0), {12, Anchor::middle});
  }
  svg.text({kLeft - 12, bottom + 18}, "kt indicated", {12, Anchor::end});
  svg.mark(Mark::circle, {kLeft + 6, 14}, 5, theme::kMeasured);
  svg.text({kLeft + 16, 18}, "tone", {12});
  svg.mark(Mark::square, {kLeft + 76, 14}, 4.5, theme::kPaper);
  svg.text({kLeft + 86, 18}, "as taught", {12});
  svg.mark(Mark::diamond, {kLeft + 176, 14}, 5, theme::kTruth);
  svg.text({kLeft + 186, 18}, "stall (truth)", {12});
  svg.box({kLeft + 282, 8, 26, 10}, theme::kOutside, 0.25);
  svg.text({kLeft + 316, 18}, "a tone in here is too late", {12});
  double y = kTop + 0.5 * kRow;
  for (const VerifiedPoint* v : runs) {
    svg.text({kLeft - 12, y + 4}, v->name + ", " + flap_words(v->flap_deg), {12, Anchor::end, v->in_use});
    svg.box({x(v->stall_kt + wanted), y - 7, x(v->stall_kt) - x(v->stall_kt + wanted), 14}, theme::kOutside,
            0.25);
    svg.line({x(v->tone_kt), y}, {x(v->stall_kt), y}, {theme::kInk, 1.4});
    svg.mark(Mark::diamond, {x(v->stall_kt), y}, 5.5, theme::kTruth);
    svg.mark(Mark::square, {x(v->taught_kt), y}, 4.5, theme::kPaper);
    svg.mark(Mark::circle, {x(v->tone_kt), y}, 5.5, theme::kMeasured);
    y += kRow;
  }
  return html::figure(svg, made_by(debrief.page.summary) + ".");
}

std::string unit_words(const WarningUnit& unit) {
  return "The unit that was listened to: the probe ratio smoothed over " + fixed(unit.smoothing_s, 2) +
         " s, the tone on where that has stood at or above the warning for " + fixed(unit.delay_s, 2) +
         " s, off where it has fallen " + fixed(unit.hysteresis_ratio, 2) +
         " below; with the warning of the nearest flap setting. Another unit has other figures.";
}

}  // namespace

std::string verification_table(const VerificationDebrief& debrief) {
  const SortieSummary& s = debrief.page.summary;
  std::string text = s.aircraft + " (invented), " + s.card + ". " + made_by(s) + ".\n\n";
  text += line("point", "flaps", "flown", "tone, kt", "stall", "margin", "in order?");
  text += "  " + std::string(92, '-') + "\n";
  for (const VerifiedPoint& v : debrief.verification.points)
    text += line(v.name, v.flap_deg == 0.0 ? "up" : fixed(v.flap_deg, 0) + "\u00b0", flight_words(v),
                 tone_text(v, fixed), std::isfinite(v.stall_kt) ? fixed(v.stall_kt, 1) : "",
                 std::isfinite(v.margin_kt) ? fixed(v.margin_kt, 1) : "", outcome_word(v));
  text += "\n" + wrapped("Verdict:", verdict_words(debrief)) +
          wrapped("Reason: ", debrief.verification.sentence + ".");
  return text + wrapped("Caution:", cautions().front());
}

std::string verification_page(const VerificationDebrief& debrief) {
  using html::element;
  using html::text_element;
  const std::string title = "Verified: " + debrief.page.summary.aircraft + ", " + debrief.page.summary.card;
  const std::string head =
      "<meta charset=\"utf-8\"/>\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n" +
      text_element("title", title) + element("style", debrief::style_sheet());
  const std::string verdict = element("section",
                                      text_element("p", verdict_words(debrief), "class=\"sentence\"") +
                                          text_element("p", "Reason: " + debrief.verification.sentence + "."),
                                      "class=\"verdict\"");
  std::string body = debrief::header(debrief.page) + verdict;
  body += element("section", text_element("h2", "When the tone came") + chart(debrief) + page_table(debrief));
  body += element("section", text_element("h2", "The flight") + debrief::whole_flight(debrief.page),
                  "class=\"fresh\"");
  body += text_element("p", unit_words(debrief.flown.config.unit), "class=\"note\"");
  body += element("section", text_element("h2", "Cautions") + debrief::caution_list());
  return "<!DOCTYPE html>\n" +
         element("html", element("head", head) + element("body", element("main", body)), "lang=\"en\"");
}

}  // namespace stallwright
