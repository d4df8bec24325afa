#include "render/wording/line_words.h"

#include <QCoreApplication>

namespace roundwright {
namespace {

struct LineText {
    Q_DECLARE_TR_FUNCTIONS(LineText)
};

QString rounds_of(const ReadLine& line) {
    if (line.last_round <= line.first_round) return LineText::tr("round %1").arg(line.first_round + 1);
    return LineText::tr("rounds %1–%2").arg(line.first_round + 1).arg(line.last_round + 1);
}

}  // namespace

QString line_lot_words(const ReadLine& line) {
    switch (line.kind) {
        case ReadLineKind::title:
            return LineText::tr("title");
        case ReadLineKind::heading:
            return LineText::tr("piece");
        case ReadLineKind::terms:
            return LineText::tr("terms");
        case ReadLineKind::yarn:
            return LineText::tr("yarn");
        case ReadLineKind::start:
            return LineText::tr("start");
        case ReadLineKind::note:
            return LineText::tr("note");
        case ReadLineKind::section:
            return LineText::tr("heading");
        case ReadLineKind::materials:
            return LineText::tr("materials");
        case ReadLineKind::abbreviation:
            return LineText::tr("abbreviation");
        case ReadLineKind::assembly:
            return LineText::tr("assembly");
        case ReadLineKind::not_read:
            return LineText::tr("not understood");
        case ReadLineKind::like_piece:
        case ReadLineKind::round:
            break;
    }
    return rounds_of(line);
}

QString line_part_words(const ReadLine& line) {
    const bool rounds = line.kind == ReadLineKind::round || line.kind == ReadLineKind::like_piece;
    return rounds ? LineText::tr("part of %1").arg(rounds_of(line)) : line_lot_words(line);
}

QString line_understood_words(const ReadLine& line) {
    const QString words = QString::fromStdString(line.understood);
    return line.kind == ReadLineKind::like_piece ? LineText::tr("like “%1”").arg(words) : words;
}

}  // namespace roundwright
