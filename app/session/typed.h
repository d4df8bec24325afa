#pragma once

#include <optional>
#include <vector>

#include <QString>

namespace roundwright::app {

/// What stands in a cell of the table of rounds that is being edited.
struct TypedCell {
    QString text;
    int round = 0;       ///< from 0; as many as there are rounds: the next one
    bool words = false;  ///< the cell of the words, not of the stitches

    friend bool operator==(const TypedCell&, const TypedCell&) = default;
};

/// What was typed into a field of a dialog that is open.
struct TypedText {
    QString dialog;  ///< by a name of the program's own, never shown
    QString field;
    QString text;

    friend bool operator==(const TypedText&, const TypedText&) = default;
};

/// What is typed and not entered yet: no part of the toy, and lost with the window unless it is kept.
struct PendingEntry {
    QString text;   ///< in the line of next rounds
    int piece = 0;  ///< that it was typed for
    std::optional<TypedCell> cell{};
    std::vector<TypedText> texts{};

    [[nodiscard]] bool empty() const { return text.isEmpty() && !cell && texts.empty(); }
    friend bool operator==(const PendingEntry&, const PendingEntry&) = default;
};

}  // namespace roundwright::app
