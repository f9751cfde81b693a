// What came of a verifying sortie, as a page.
#include <algorithm>
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"
#include "sim/report/verdict_text.hpp"
#include "sim/report/verification_report.hpp"

namespace stallwright {

std::string verified_flight_words(const VerifiedPoint& v) {
  std::string text = power_name(v.power);
  if (v.bank_deg != 0.0) text += ", " + fixed(v.bank_deg, 0) + "\u00b0 of bank";
  return text;
}

std::string verified_outcome(const VerifiedPoint& v) {
  return !v.in_use ? "not judged" : v.ok ? "good" : "NO";
}

std::string verification_verdict(const VerificationDebrief& debrief) {
  const Verification& v = debrief.verification;
  if (v.pass) return "Pass.";
  std::string again;
  for (const std::string& name : v.fly_again) again += (again.empty() ? "" : "; ") + name;
  return again.empty() ? "Not verified: fly this card again." : "Teach again: " + again + ".";
}

std::string tone_words(const VerifiedPoint& v) {
  if (!v.slow_run) return std::to_string(v.nuisance_tones) + (v.nuisance_tones == 1 ? " tone" : " tones");
  return std::isfinite(v.tone_kt) ? fixed(v.tone_kt, 1) : "none";
}

namespace {

std::string page_table(const VerificationDebrief& debrief) {
  html::Table table;
  table.caption = "Speed at the tone against the stall, kt indicated";
  table.headings = {"point",    "flaps",  "flown",     "tone at",        "taught at",
                    "stall at", "margin", "in order?", "what came of it"};
  table.numeric = {false, true, false, true, true, true, true, false, false};
  for (const VerifiedPoint& v : debrief.verification.points)
    table.rows.push_back(
        {escaped(v.name), page_fixed(v.flap_deg, 0) + "\u00b0", verified_flight_words(v), tone_words(v),
         page_fixed(v.taught_kt, 1), page_fixed(v.stall_kt, 1), page_signed(v.margin_kt, 1),
         v.in_use && !v.ok ? html::element("strong", verified_outcome(v) + " \u25bc") : verified_outcome(v),
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

std::string verification_page(const VerificationDebrief& debrief) {
  using html::element;
  using html::text_element;
  const std::string title = "Verified: " + debrief.page.summary.aircraft + ", " + debrief.page.summary.card;
  const std::string verdict = element("section",
                                      text_element("p", verification_verdict(debrief), "class=\"sentence\"") +
                                          text_element("p", "Reason: " + debrief.verification.sentence + "."),
                                      "class=\"verdict\"");
  std::string body = debrief::header(debrief.page) + verdict;
  body += element("section", text_element("h2", "When the tone came") + chart(debrief) + page_table(debrief));
  body += element("section", text_element("h2", "The flight") + debrief::whole_flight(debrief.page),
                  "class=\"fresh\"");
  body += text_element("p", unit_words(debrief.flown.config.unit), "class=\"note\"");
  body += element("section", text_element("h2", "Cautions") + debrief::caution_list());
  return html::page(title, debrief::style_sheet(), body);
}

}  // namespace stallwright
