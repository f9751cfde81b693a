#pragma once
#include <map>
#include <string>

#include "sim/motion/trim.hpp"

namespace stallwright::published {

/// Stability derivatives of one of our own aeroplanes about a steady flight, by holding it in a stream and changing one
/// thing at a time: stability axes (x along the trimmed flow), per radian, rates by b/2V and c/2V, in the usual signs
/// (elevator down, aileron rolling right, rudder left positive). Keys CL (of the trim itself), CLa, CDa, Cma, Cmadot, Cmq, CLde, Cmde, CYb, Clb,
/// Cnb, Clp, Cnp, Clr, Cnr, Clda, Cndr. Propeller speed and throttle are held.
std::map<std::string, double> strip_derivatives(const Aircraft& aircraft, const Trim& trim,
                                                double density_kgpm3);

}  // namespace stallwright::published
