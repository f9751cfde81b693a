// stallwright-bench: times what tests/bench/run asks for. A request a line on stdin, an answer a line of JSON on stdout.
//
//   kernels                        names of all that can be timed
//   clock                          frequency of the processor
//   step KERNEL AEROPLANES STEPS   the flight alone
//   tick KERNEL AEROPLANES TICKS   flight, air, instruments
//   sorties KERNEL CARD COUNT      whole sorties in one thread
//   many CARD COUNT THREADS        whole sorties by the product's own way with many
//   operations                     of the source, for one aeroplane-step
//   export FOLDER AEROPLANES       aeroplane.json and samples.f64, for numpy_flight.py
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <stdexcept>

#include "tests/bench/aeroplane_json.hpp"
#include "tests/bench/sorties.hpp"
#include "tests/bench/steps.hpp"

namespace stallwright::bench {

std::vector<std::string> kernel_names() {
  std::vector<std::string> names;
  for (const LaneKernel& kernel : lane_kernels()) names.emplace_back(kernel.name);
  for (const LaneKernel& kernel : {libm_kernel(), libm_scalar_kernel()}) names.emplace_back(kernel.name);
  return names;
}

LaneKernel kernel_named(const std::string& name) {
  for (const LaneKernel& kernel : lane_kernels())
    if (kernel.name == name) return kernel;
  for (const LaneKernel& kernel : {libm_kernel(), libm_scalar_kernel()})
    if (name == kernel.name) return kernel;
  throw std::invalid_argument("no kernel \"" + name + "\"");
}

namespace {

using Json = nlohmann::ordered_json;

/// Samples are taken once, and anew where more are wanted.
const Samples& kept_samples(Samples& kept, std::size_t count) {
  if (kept.aeroplanes.size() < count) kept = samples(count);
  return kept;
}

/// Most memory that this program has had so far, KiB; getrusage would count whoever started it too.
long peak_kib() {
  std::ifstream status("/proc/self/status");
  std::string word;
  while (status >> word)
    if (word == "VmHWM:") break;
  long kib = 0;
  status >> kib;
  return kib;
}

Json answer(const Spent& spent, std::uint64_t steps) {
  const double count = static_cast<double>(steps);
  return {{"steps", steps},
          {"ns", spent.thread_ns / count},
          {"wall_ns", spent.wall_ns / count},
          {"wall_s", spent.wall_ns * 1e-9},
          {"peak_kib", peak_kib()}};
}

Json answer(const SortiesRun& run) {
  Json json = answer(run.spent, run.aeroplane_steps);
  json["sorties"] = run.sorties;
  return json;
}

Json per_step(const Operations& o, double steps) {
  const auto share = [&](std::uint64_t count) { return static_cast<double>(count) / steps; };
  return {{"arithmetic", share(o.arithmetic())},
          {"additions", share(o.additions)},
          {"multiplications", share(o.multiplications)},
          {"divisions", share(o.divisions)},
          {"roots", share(o.roots)},
          {"comparisons", share(o.comparisons)},
          {"selections", share(o.selections)},
          {"bit_steps", share(o.bit_steps)}};
}

Json operations(const Samples& from) {
  counted_operations();
  const StepsRun step = flight_steps(counted_kernel(), from, 1, 1);
  const Operations of_step = counted_operations();
  const StepsRun tick = kernel_ticks(counted_kernel(), from, 1, 10);
  return {{"step", per_step(of_step, static_cast<double>(step.aeroplane_steps))},
          {"tick", per_step(counted_operations(), static_cast<double>(tick.aeroplane_steps))}};
}

Json export_to(const std::string& folder, const Samples& from) {
  std::ofstream(folder + "/aeroplane.json") << aeroplane_json(from.known->aircraft);
  write_samples(from, folder + "/samples.f64");
  return {{"aeroplanes", from.aeroplanes.size()}};
}

Json answered(std::istream& request, Samples& kept) {
  std::string what, name, card;
  std::size_t aeroplanes = 0;
  int times = 0, threads = 0;
  request >> what;
  if (what == "kernels") return kernel_names();
  if (what == "clock") return {{"hz", clock_hz()}};
  if (what == "operations") return operations(kept_samples(kept, 1));
  if ((what == "step" || what == "tick") && request >> name >> aeroplanes >> times) {
    const StepsRun run = (what == "step" ? flight_steps : kernel_ticks)(
        kernel_named(name), kept_samples(kept, aeroplanes), aeroplanes, times);
    return answer(run.spent, run.aeroplane_steps);
  }
  if (what == "sorties" && request >> name >> card >> times)
    return answer(whole_sorties(kernel_named(name), card, times));
  if (what == "many" && request >> card >> times >> threads)
    return answer(many_sorties(card, times, threads));
  if (what == "export" && request >> name >> aeroplanes) return export_to(name, samples(aeroplanes));
  throw std::invalid_argument("no such request: " + what);
}

}  // namespace
}  // namespace stallwright::bench

int main() {
  stallwright::bench::Samples kept;
  for (std::string line; std::getline(std::cin, line);) {
    std::istringstream request(line);
    try {
      std::cout << stallwright::bench::answered(request, kept).dump() << std::endl;
    } catch (const std::exception& e) {
      std::cerr << "stallwright-bench: " << line << ": " << e.what() << '\n';
      return 2;
    }
  }
}
