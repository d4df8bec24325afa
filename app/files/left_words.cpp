#include "app/files/left_words.h"

#include <algorithm>
#include <numeric>

#include <QCoreApplication>
#include <QFileInfo>
#include <QLocale>
#include <QStringList>

#include "core/rounds/piece_graph.h"
#include "render/wording/counted.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

constexpr qsizetype most_lines = 6;
constexpr int longest_typed = 60;

struct LeftText {
    Q_DECLARE_TR_FUNCTIONS(LeftBehind)
};

QString size_words(const Piece& piece) {
    const auto counts = stitch_counts(piece_graph(piece).graph);
    const int stitches = std::accumulate(counts.begin(), counts.end(), 0);
    return LeftText::tr("%1, %2").arg(rounds_words(static_cast<int>(counts.size())),
                                      stitches_words(stitches));
}

QString name_of(const Piece& piece) {
    return piece.name.empty() ? LeftText::tr("Piece without a name") : name_in_words(piece.name);
}

QString piece_words(const Piece& piece, const Piece* saved) {
    const QString size = size_words(piece);
    if (!saved) return LeftText::tr("%1: %2").arg(name_of(piece), size);
    const QString size_in_file = size_words(*saved);
    return size == size_in_file
               ? LeftText::tr("%1: %2, not the same as in the file").arg(name_of(piece), size)
               : LeftText::tr("%1: %2 (in the file: %3)").arg(name_of(piece), size, size_in_file);
}

QStringList pieces_words(const Toy& toy, const Toy* saved) {
    QStringList lines;
    for (std::size_t k = 0; k < toy.pieces.size(); ++k) {
        const auto in_file = saved ? saved->pieces.index_of(toy.pieces.id(k)) : std::nullopt;
        const Piece* before = in_file ? &saved->pieces[*in_file] : nullptr;
        if (!before || !(*before == toy.pieces[k])) lines << piece_words(toy.pieces[k], before);
    }
    if (saved && lines.isEmpty() && !(*saved == toy))
        lines << LeftText::tr("The rounds are the same as in the file; other details of the toy differ.");
    const auto more = lines.size() - most_lines;
    if (more <= 0) return lines;
    lines = lines.mid(0, most_lines);
    return lines << LeftText::tr("and %n more piece(s)", nullptr, static_cast<int>(more));
}

QString shortened(QString typed) {
    typed.replace(u'\n', u' ');
    return typed.size() <= longest_typed ? typed : typed.left(longest_typed) + QStringLiteral("…");
}

QStringList typed_words(const PendingEntry& typed) {
    QStringList lines;
    if (!typed.text.isEmpty())
        lines << LeftText::tr("Typed and not entered yet: “%1”").arg(shortened(typed.text));
    if (typed.cell)
        lines << LeftText::tr("Typed in round %1 and not entered yet: “%2”")
                     .arg(typed.cell->round + 1)
                     .arg(shortened(typed.cell->text));
    for (const TypedText& each : typed.texts)
        lines << LeftText::tr("Typed in a dialog and not entered yet: “%1”").arg(shortened(each.text));
    return lines;
}

}  // namespace

QString left_name(const KeptHead& head, const Toy* toy) {
    if (!head.document.isEmpty())
        return LeftText::tr("“%1”").arg(name_in_words(QFileInfo(head.document).fileName()));
    return toy && !toy->title.empty() ? LeftText::tr("“%1”").arg(name_in_words(toy->title))
                                      : LeftText::tr("a toy that was not saved yet");
}

QString left_words(const KeptHead& head, const Toy& toy, const Toy* saved) {
    const QString when = QLocale().toString(head.kept.toLocalTime(), QLocale::ShortFormat);
    const QStringList lines =
        QStringList{LeftText::tr("Kept: %1").arg(when)} + pieces_words(toy, saved) + typed_words(head.typed);
    return lines.join(u'\n');
}

}  // namespace roundwright::app
