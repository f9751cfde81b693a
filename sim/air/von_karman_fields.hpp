#pragma once
#include <array>
#include <cstddef>

/// The von Karman spectra as a sum of Dryden fields.
///
///   Phi_u = 2 sigma^2 L / (pi V) / (1 + (a x)^2)^(5/6),                                 x = L w/V
///   Phi_v,w = sigma^2 L / (pi V) (1 + 8/3 (a x)^2) / (1 + (a x)^2)^(11/6)               [MIL-F-8785C 3.7]
///     a = Gamma(1/3) / (sqrt(pi) Gamma(5/6)) = 1.33899, with which the variance is sigma^2; printed as 1.339
///
/// (1 + z)^(-5/6) is a Stieltjes function, a mixture of 1/(t + z) over t >= 1 with positive weights, so Phi_u is
/// exactly a mixture of Dryden's longitudinal spectra over scale lengths. Isotropy, Phi_w = (Phi_u - w dPhi_u/dw)/2,
/// holds between the two spectra of either model and is linear, so Phi_v and Phi_w are the same mixture of Dryden's
/// transverse ones. A few independent Dryden fields therefore stand for the whole: all poles are real, every share is
/// positive, isotropy holds to the last digit, and the filters of dryden.hpp, which are stepped exactly, serve again.
///
/// Five fields, fitted: least squares of the error in dB of both spectra, at twenty places a decade of x from 0.01 to
/// 1000, with the shares held to a sum of 1. `tests/published/von_karman_fit_tests.cpp` works the fit again.
/// Error: at most 0.084 dB (2 %) in either spectrum over those five decades, 0.026 dB rms; in the variance none. Below
/// x = 0.01 both are flat (0.004 dB). Above x = 1000 the sum falls as x^-2, under the spectrum's x^-5/3; 0.6 % of the
/// variance of u lies there, 0.8 % of that of v and w. The rms of q and r comes out 0.5 % low by it
/// (L 500 ft, b 36 ft).
namespace stallwright {

inline constexpr std::size_t kVonKarmanFields = 5;
inline constexpr double kVonKarmanConstant = 1.33898527906528;  ///< a

/// Scale length of each field in units of L (fitted, see above).
inline constexpr std::array<double, kVonKarmanFields> kFieldLengths{1.22382, 0.303893, 0.0547249, 0.00968757,
                                                                    0.00160524};
/// Share of the variance of each field (fitted, see above); their sum is 1.
inline constexpr std::array<double, kVonKarmanFields> kFieldShares{0.775612, 0.154746, 0.0488124, 0.0154392,
                                                                   0.0053904};

}  // namespace stallwright
