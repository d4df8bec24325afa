#include "render/wording/pattern/small_parts.h"

#include <algorithm>

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

bool has_small_parts(const Piece& piece) {
    if (piece.weight_grams > 0) return true;
    return std::any_of(piece.features.begin(), piece.features.end(), [](const Feature& feature) {
        return feature.kind == FeatureKind::safety_eye || feature.kind == FeatureKind::safety_nose;
    });
}

}  // namespace

bool names_small_parts(const Toy& toy) {
    if (std::any_of(toy.pieces.begin(), toy.pieces.end(), has_small_parts)) return true;
    static const QRegularExpression parts(
        QStringLiteral("\\b(eyes?|noses?|buttons?|beads?|bells?)\\b"),
        QRegularExpression::CaseInsensitiveOption | QRegularExpression::UseUnicodePropertiesOption);
    return all_words(toy).contains(parts);
}

}  // namespace roundwright::render
