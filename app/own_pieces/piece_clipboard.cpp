#include "app/own_pieces/piece_clipboard.h"

#include "core/document/json_document.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

const auto piece_type = QStringLiteral("application/x-roundwright-piece+json");

}  // namespace

QMimeData* piece_to_clipboard(const Toy& piece) {
    auto* data = new QMimeData;
    data->setData(piece_type, QByteArray::fromStdString(write_document(piece)));
    data->setText(name_in_words(piece.title));
    return data;
}

std::optional<Toy> pieces_from_clipboard(const QMimeData& data) {
    if (!data.hasFormat(piece_type)) return std::nullopt;
    try {
        Toy toy = read_document(data.data(piece_type).toStdString()).toy;
        return toy.pieces.empty() ? std::nullopt : std::optional(std::move(toy));
    } catch (const DocumentError&) {
        return std::nullopt;
    }
}

}  // namespace roundwright::app
