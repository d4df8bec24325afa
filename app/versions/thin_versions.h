#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace roundwright::app {

/// How much of a toy's past is kept.
struct VersionLimits {
    std::size_t most = 10;                  ///< versions of one toy
    std::size_t newest = 3;                 ///< of them kept whatever their age
    std::int64_t bytes = 16 << 20;          ///< of one toy; its newest version may be larger
    std::int64_t bytes_in_all = 256 << 20;  ///< of all toys
};

struct AgedVersion {
    std::int64_t age_s = 0;
    std::int64_t bytes = 0;
};

/// Which versions of a toy (newest first) are to go, as indices in ascending order. The newest ones stay, and
/// so does the oldest; between them goes, again and again, the one whose neighbours' ages are nearest to each
/// other in proportion. What is left stands about evenly on a logarithmic scale: of the last minutes, an hour
/// ago, a day, a week, a month. Over `bytes`, the newest stays alone if need be.
[[nodiscard]] std::vector<std::size_t> superfluous_versions(std::span<const AgedVersion> versions,
                                                            const VersionLimits& limits = {});

}  // namespace roundwright::app
