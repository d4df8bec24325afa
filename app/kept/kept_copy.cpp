#include "app/kept/kept_copy.h"

#include <QCryptographicHash>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QList>

namespace roundwright::app {
namespace {

const QByteArray mark = QByteArrayLiteral("roundwright-kept 1 ");

const auto kept_key = QStringLiteral("kept");
const auto document_key = QStringLiteral("document");
const auto began_from_key = QStringLiteral("began_from");
const auto typed_key = QStringLiteral("typed");
const auto text_key = QStringLiteral("text");
const auto piece_key = QStringLiteral("piece");
const auto cell_key = QStringLiteral("cell");
const auto round_key = QStringLiteral("round");
const auto words_key = QStringLiteral("words");
const auto texts_key = QStringLiteral("texts");
const auto dialog_key = QStringLiteral("dialog");
const auto field_key = QStringLiteral("field");

QByteArray sha256_of(const QByteArray& bytes) {
    return QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex();
}

// Numbers of 64 bits are words in JSON, whose numbers are doubles here.
QJsonObject json_of(const FileStamp& stamp) {
    return {{QStringLiteral("device"), QString::number(stamp.device)},
            {QStringLiteral("inode"), QString::number(stamp.inode)},
            {QStringLiteral("size"), QString::number(stamp.size)},
            {QStringLiteral("changed_ns"), QString::number(stamp.changed_ns)},
            {QStringLiteral("moved_ns"), QString::number(stamp.moved_ns)},
            {QStringLiteral("sha256"), QString::fromLatin1(stamp.sha256.toHex())}};
}

FileStamp stamp_of(const QJsonObject& json) {
    return {json.value(QStringLiteral("device")).toString().toULongLong(),
            json.value(QStringLiteral("inode")).toString().toULongLong(),
            json.value(QStringLiteral("size")).toString().toLongLong(),
            json.value(QStringLiteral("changed_ns")).toString().toLongLong(),
            json.value(QStringLiteral("moved_ns")).toString().toLongLong(),
            QByteArray::fromHex(json.value(QStringLiteral("sha256")).toString().toLatin1())};
}

QJsonObject json_of(const PendingEntry& typed) {
    QJsonObject json{{text_key, typed.text}, {piece_key, typed.piece}};
    if (typed.cell) {
        json.insert(cell_key, QJsonObject{{text_key, typed.cell->text},
                                          {round_key, typed.cell->round},
                                          {words_key, typed.cell->words}});
    }
    QJsonArray texts;
    for (const TypedText& each : typed.texts)
        texts.append(QJsonObject{{dialog_key, each.dialog}, {field_key, each.field}, {text_key, each.text}});
    if (!texts.isEmpty()) json.insert(texts_key, texts);
    return json;
}

PendingEntry typed_of(const QJsonObject& json) {
    PendingEntry typed{json.value(text_key).toString(), json.value(piece_key).toInt()};
    if (const auto cell = json.value(cell_key).toObject(); !cell.isEmpty())
        typed.cell = {cell.value(text_key).toString(), cell.value(round_key).toInt(),
                      cell.value(words_key).toBool()};
    for (const auto& value : json.value(texts_key).toArray()) {
        const auto text = value.toObject();
        typed.texts.push_back({text.value(dialog_key).toString(), text.value(field_key).toString(),
                               text.value(text_key).toString()});
    }
    return typed;
}

QByteArray head_line(const KeptHead& head) {
    const QJsonObject json{{kept_key, head.kept.toUTC().toString(Qt::ISODateWithMs)},
                           {document_key, head.document},
                           {began_from_key, json_of(head.began_from)},
                           {typed_key, json_of(head.typed)}};
    return QJsonDocument(json).toJson(QJsonDocument::Compact);
}

KeptHead head_of(std::uint64_t number, const QByteArray& line) {
    const auto json = QJsonDocument::fromJson(line).object();
    return {number, QDateTime::fromString(json.value(kept_key).toString(), Qt::ISODateWithMs),
            json.value(document_key).toString(), stamp_of(json.value(began_from_key).toObject()),
            typed_of(json.value(typed_key).toObject())};
}

}  // namespace

QByteArray kept_bytes(const KeptCopy& copy) {
    const QByteArray rest = head_line(copy.head) + '\n' + copy.toy;
    return mark + QByteArray::number(static_cast<qulonglong>(copy.head.number)) + ' ' + sha256_of(rest) +
           '\n' + rest;
}

std::uint64_t kept_number(const QByteArray& beginning) {
    if (!beginning.startsWith(mark)) return 0;
    const auto end = beginning.indexOf(' ', mark.size());
    return end < 0 ? 0 : beginning.mid(mark.size(), end - mark.size()).toULongLong();
}

std::optional<KeptCopy> read_kept(const QByteArray& bytes) {
    const std::uint64_t number = kept_number(bytes);
    const auto end_of_mark = bytes.indexOf('\n');
    if (number == 0 || end_of_mark < 0) return std::nullopt;
    const QByteArray rest = bytes.mid(end_of_mark + 1);
    if (bytes.left(end_of_mark).split(' ').last() != sha256_of(rest)) return std::nullopt;
    const auto end_of_head = rest.indexOf('\n');
    if (end_of_head < 0) return std::nullopt;
    return KeptCopy{head_of(number, rest.left(end_of_head)), rest.mid(end_of_head + 1)};
}

}  // namespace roundwright::app
