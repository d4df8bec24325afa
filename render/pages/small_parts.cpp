#include "render/pages/small_parts.h"

#include <QRegularExpression>
#include <QString>

namespace roundwright::render {
namespace {

QString all_words(const Toy& toy) {
    QString text;
    const auto add = [&](const std::string& part) {
        text += QString::fromStdString(part) + QLatin1Char('\n');
    };
    for (const std::string* part : {&toy.title, &toy.notes, &toy.text.introduction, &toy.text.notions,
                                    &toy.text.assembly, &toy.text.finishing}) {
        add(*part);
    }
    for (const Piece& piece : toy.pieces) {
        for (const Round& round : piece.rounds) add(round.note);
    }
    return text;
}

}  // namespace

bool names_small_parts(const Toy& toy) {
    static const QRegularExpression parts(
        QStringLiteral("\\b(eyes?|noses?|buttons?|beads?|bells?)\\b"),
        QRegularExpression::CaseInsensitiveOption | QRegularExpression::UseUnicodePropertiesOption);
    return all_words(toy).contains(parts);
}

}  // namespace roundwright::render
