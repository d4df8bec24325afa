#pragma once

#include "core/base/diagnostic.h"

namespace roundwright::app {

/// A name for machines.
[[nodiscard]] constexpr const char* severity_name(Severity severity) {
    switch (severity) {
        case Severity::error:
            return "error";
        case Severity::warning:
            return "warning";
        case Severity::note:
            return "note";
    }
    return "";
}

}  // namespace roundwright::app
