#pragma once
#include <filesystem>
#include <string_view>

namespace stallwright {

/// Writes a file whole or not at all: into a temporary name in the same folder, to the disk, then renamed
/// over the target. Whoever looks sees the old contents or the new, never a part, even if the power fails
/// between. An existing file is replaced (a link too: the link, not what it points to). The new one may be
/// read by whom the umask allows. Throws std::runtime_error, one line with the file and the system's reason;
/// the old file is then unharmed and no temporary is left.
void write_whole_file(const std::filesystem::path& file, std::string_view text);

/// By its name the temporary of such a write, under way or killed: `.stallwright-4711-0`.
bool is_unfinished_file(const std::filesystem::path& file);

}  // namespace stallwright
