// Simulated turbulence of both models against the printed spectra: every auto-spectrum, and the cross-spectra that must
// be there and that must not. [MIL-F-8785C 3.7]
#include <gsl/gsl_cdf.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "tests/published/evidence.hpp"
#include "tests/published/gust_series.hpp"
#include "tests/published/printed_spectra.hpp"

using namespace stallwright;
using namespace stallwright::published;

namespace {

const evidence::Published kSpectra{"MIL-F-8785C", "3.7, spectra", "read in a copy"};
constexpr double kSpan_m = 36.0 * kFoot, kAirspeed_mps = 40.0;

/// Three lengths and strengths that differ, so that none can stand for another.
TurbulenceScales<double> scales() {
  const double l = 500.0 * kFoot;
  return {1.0, 1.2, 0.8, l, 1.3 * l, 0.8 * l};
}

/// A stretch of frequencies, by the step of the series: from the fourth bin, past the window's leak, to well below Nyquist,
/// where aliasing adds under 2 %. The two together are x = L w/V from 0.5 to 120.
struct Stretch {
  const char* name;
  double step_s;
  std::size_t length, end;
  std::uint32_t sortie;
};
constexpr Stretch kStretches[] = {{"L w/V 0.5 to 5", 0.025, 8192, 44, 1},
                                  {"L w/V 2 to 120", 0.01, 4096, 204, 2}};
constexpr std::size_t kFirstBin = 4;
constexpr std::size_t kSegments = 96;

WelchSpectra flown(TurbulenceModel model, const Stretch& s) {
  return WelchSpectra(gust_series(model, scales(), kSpan_m, kAirspeed_mps, s.step_s, s.length * kSegments,
                                  {20240229, s.sortie}),
                      s.length, s.step_s);
}

/// Neighbouring bins of a Hann window go together: the variance of a mean over bins is 1.94 times that of free ones.
double bin_mean_sigma(double bins) { return std::sqrt(1.94 / bins); }

}  // namespace

TEST_CASE("simulated spectra of u, v, w, p, q and r are the printed ones in both models",
          "[air][published][spectra]") {
  const auto model = GENERATE(TurbulenceModel::kDryden, TurbulenceModel::kVonKarman);
  const PrintedSpectra printed{model, scales(), kSpan_m, kAirspeed_mps};
  for (const Stretch& stretch : kStretches) {
    const WelchSpectra welch = flown(model, stretch);
    const double n = 2.0 * kSegments, low = gsl_cdf_chisq_Pinv(0.025, n) / n,
                 high = gsl_cdf_chisq_Qinv(0.025, n) / n;
    for (std::size_t q = 0; q < 6; ++q) {
      double inside = 0.0, sum = 0.0, bins = 0.0;
      for (std::size_t k = kFirstBin; k < stretch.end; ++k, bins += 1.0) {
        const double ratio = welch.power(q, k) / printed.at(static_cast<int>(q), welch.frequency(k));
        inside += ratio > low && ratio < high ? 1.0 : 0.0;
        sum += ratio;
      }
      const std::string what = std::string(word(model)) + ", " + kGustNames[q] + ", " + stretch.name;
      evidence::hold(kSpectra, what + ": share of bins within the 95 % interval of Welch's estimate",
                     inside / bins, 0.95, 4.0 * std::sqrt(0.95 * 0.05) * bin_mean_sigma(bins) + 0.02, "1",
                     "four times the spread of a share of correlated bins, and 2 % for aliasing and fit");
      evidence::hold(kSpectra, what + ": mean ratio of simulated to printed", sum / bins, 1.0,
                     4.0 * bin_mean_sigma(bins) / std::sqrt(welch.segments()) + 0.01, "1",
                     "four times the sampling spread, and 1 % for aliasing and fit");
    }
  }
}

TEST_CASE(
    "gusts that the source calls independent are, and gust rates follow their gust by the printed filter",
    "[air][published][spectra]") {
  const auto model = GENERATE(TurbulenceModel::kDryden, TurbulenceModel::kVonKarman);
  const PrintedSpectra printed{model, scales(), kSpan_m, kAirspeed_mps};
  const evidence::Published filters{"MIL-F-8785C", "3.7, filters of q and r", "read in a copy"};
  const Stretch& stretch = kStretches[1];
  const WelchSpectra welch = flown(model, stretch);
  const double bins = static_cast<double>(stretch.end - kFirstBin);
  const std::string of = std::string(word(model)) + ": ";
  // Every pair but w-q and v-r.
  for (std::size_t a = 0; a < 6; ++a)
    for (std::size_t b = a + 1; b < 6; ++b) {
      if ((a == 2 && b == 4) || (a == 1 && b == 5)) continue;
      double coherence = 0.0;
      for (std::size_t k = kFirstBin; k < stretch.end; ++k) coherence += welch.coherence(a, b, k) / bins;
      const double chance = 1.0 / welch.segments();
      evidence::hold(kSpectra, of + "squared coherence of " + kGustNames[a] + " and " + kGustNames[b],
                     coherence, 0.0, chance * (1.0 + 4.0 * bin_mean_sigma(bins)), "1",
                     "what 96 segments of independent noise show, 1/96, and four times its spread");
    }
  const auto follows = [&](std::size_t gust, std::size_t rate, auto transfer) {
    const std::string pair = of + kGustNames[rate] + " from " + kGustNames[gust];
    double size = 0.0, phase = 0.0;
    for (std::size_t k = 2 * kFirstBin; k < stretch.end; ++k) {
      const auto error = welch.cross(gust, rate, k) / welch.power(gust, k) / transfer(welch.frequency(k));
      size = std::max(size, std::abs(std::abs(error) - 1.0));
      phase = std::max(phase, std::abs(std::arg(error)) / math::kDegree);
    }
    for (const std::size_t k : {std::size_t{8}, std::size_t{40}, std::size_t{160}}) {
      const auto measured = welch.cross(gust, rate, k) / welch.power(gust, k),
                 exact = transfer(welch.frequency(k));
      const std::string at = pair + " at " + std::to_string(welch.frequency(k)).substr(0, 5) + " rad/s";
      evidence::hold(filters, at + ": gain", std::abs(measured), std::abs(exact), 0.03 * std::abs(exact),
                     "1/m", "3 %: aliasing and the window's leak");
      evidence::hold(filters, at + ": phase", std::arg(measured) / math::kDegree,
                     std::arg(exact) / math::kDegree, 2.0, "deg", "2 deg: aliasing and the window's leak");
    }
    evidence::hold(filters, pair + ": largest error of gain over L w/V 4 to 120", size, 0.0, 0.03, "1",
                   "as above");
    evidence::hold(filters, pair + ": largest error of phase over L w/V 4 to 120", phase, 0.0, 2.0, "deg",
                   "as above");
  };
  follows(2, 4, [&](double w) { return printed.pitch_rate_of_w(w); });
  follows(1, 5, [&](double w) { return printed.yaw_rate_of_v(w); });
}
