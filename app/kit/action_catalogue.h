#pragma once

#include <vector>

#include <QKeySequence>
#include <QList>
#include <QString>

namespace roundwright::app {

/// Where an action's keys count. Two windows may use the same keys for different things.
enum class ActionWindow { main, work_along, preview, beside, review };  ///< beside: any but the main one

/// The menu that holds an action.
enum class ActionPlace {
    file,
    recent,
    samples,
    edit,
    lengths,
    look,
    text_size,
    round,
    piece,
    start,
    worked,
    toy,
    shape,
    on_the_face,
    pattern,
    languages,
    go,
    panels,
    help,
    work_along,
    preview,
    beside,
    review
};

/// One thing that the maker can have done by a key or from a menu.
struct ActionEntry {
    QString id;  ///< stays for ever: the maker's keys are stored under it
    ActionPlace place = ActionPlace::file;
    const char* text = "";      ///< in English, with its mnemonic
    QList<QKeySequence> usual;  ///< the first one is shown
    QString icon{};
};

/// Every action of the program, by place and as it stands in its menu. The application has to be there: some
/// keys are the desktop's to say.
[[nodiscard]] const std::vector<ActionEntry>& action_catalogue();

/// Throws std::out_of_range if there is none of this id.
[[nodiscard]] const ActionEntry& action_entry(const QString& id);

[[nodiscard]] ActionWindow window_of(ActionPlace place);
[[nodiscard]] bool stands_in_menu_bar(ActionPlace place);

/// What a menu shows, with its mnemonic: "&Next check".
[[nodiscard]] QString action_text(const ActionEntry& entry);
/// What a list shows: "Next check".
[[nodiscard]] QString action_name(const ActionEntry& entry);
/// The menu's title, with its mnemonic.
[[nodiscard]] QString place_text(ActionPlace place);
/// The way to the menu: "Edit, Look".
[[nodiscard]] QString place_name(ActionPlace place);

}  // namespace roundwright::app
