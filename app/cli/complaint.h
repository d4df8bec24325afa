#pragma once

#include <QString>

namespace roundwright::app {

/// Thrown where arguments cannot be understood or met; `for_each_toy` says the words and goes on with the
/// next file.
struct Complaint {
    QString words;
};

}  // namespace roundwright::app
