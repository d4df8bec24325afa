#include "app/read_pattern/text_places.h"

#include <algorithm>
#include <vector>

#include <QTextBlock>
#include <QTextDocument>

namespace roundwright::app {
namespace {

/// How many units of UTF-16 so many code points of a line are.
int units_of(const QString& line, int code_points) {
    qsizetype unit = 0;
    for (int k = 0; k < code_points && unit < line.size(); ++k)
        unit += line[unit].isHighSurrogate() && unit + 1 < line.size() ? 2 : 1;
    return static_cast<int>(unit);
}

QTextCursor chosen(QTextDocument& document, const TextSpan& span, int at_least) {
    const QTextBlock block = document.findBlockByNumber(span.line - 1);
    QTextCursor cursor(block.isValid() ? block : document.lastBlock());
    if (!block.isValid()) return cursor;
    const QString line = block.text();
    const int column = std::max(span.column, 1) - 1;
    cursor.setPosition(block.position() + units_of(line, column));
    cursor.setPosition(block.position() + units_of(line, column + std::max(span.length, at_least)),
                       QTextCursor::KeepAnchor);
    return cursor;
}

}  // namespace

QTextCursor cursor_at(QTextDocument& document, const TextSpan& span) { return chosen(document, span, 1); }

QTextCursor make_mend(QTextDocument& document, const Mend& mend) {
    std::vector<TextEdit> edits = mend.edits;
    // From the end, so that the places before stay where they are.
    std::stable_sort(edits.begin(), edits.end(), [](const TextEdit& a, const TextEdit& b) {
        return std::pair(a.where.line, a.where.column) > std::pair(b.where.line, b.where.column);
    });
    QTextCursor step(&document);
    QTextCursor made = step;
    step.beginEditBlock();
    for (const TextEdit& edit : edits) {
        if (edit.where.line > document.blockCount()) continue;
        made = chosen(document, edit.where, 0);
        made.insertText(QString::fromStdString(edit.replacement));
    }
    step.endEditBlock();
    return made;
}

}  // namespace roundwright::app
