#include "core/checks/check.h"

namespace roundwright {

std::string_view check_code_name(CheckCode code) {
    switch (code) {
        case CheckCode::too_many_increases:
            return "too_many_increases";
        case CheckCode::too_many_decreases:
            return "too_many_decreases";
        case CheckCode::ruffles:
            return "ruffles";
        case CheckCode::cups_though_flat:
            return "cups_though_flat";
        case CheckCode::ruffles_though_flat:
            return "ruffles_though_flat";
        case CheckCode::gathers:
            return "gathers";
        case CheckCode::words_do_not_fit:
            return "words_do_not_fit";
        case CheckCode::gauge_missing:
            return "gauge_missing";
        case CheckCode::not_converged:
            return "not_converged";
        case CheckCode::too_many_stitches:
            return "too_many_stitches";
    }
    return "";
}

}  // namespace roundwright
