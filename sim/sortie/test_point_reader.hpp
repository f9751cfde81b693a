#pragma once
#include "aircraft/toml_reader.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Members whose keys are left out keep the value that the struct gives them.
template <class T, std::size_t N>
void read_given(const TomlTable& table, const std::array<Field<T>, N>& fields, T& out) {
  for (const auto& field : fields) out.*field.member = table.number_or(field.in_file, out.*field.member);
}

/// Tells which keys a [[point]] may have. Done for all points before the first is read, so that a key of a
/// later one is not taken for a misspelling.
void announce_point_keys(const TomlTable& table);

/// Reads one [[point]] of a test card and checks that its values fit together. Throws InputError. The
/// document is asked for misspelt keys when the point names no target.
TestPoint read_test_point(const TomlDocument& document, const TomlTable& table);

}  // namespace stallwright
