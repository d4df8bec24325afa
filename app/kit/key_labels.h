#pragma once

#include <QString>

namespace roundwright::app {

/// The first keys of an action, with names that are read out well: "Page Down" where menus have "PgDown".
[[nodiscard]] QString keys_spoken(const QString& id);

/// "Round done (Page Down)", with the keys that the action has now; the words alone where it has none.
[[nodiscard]] QString with_keys(const QString& words, const QString& id);

}  // namespace roundwright::app
