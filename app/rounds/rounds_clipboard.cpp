#include "app/rounds/rounds_clipboard.h"

#include <algorithm>

#include <QStringList>

#include "core/document/json_document.h"
#include "core/language/round/write.h"
#include "core/rounds/piece_graph.h"

namespace roundwright::app {
namespace {

const auto rounds_type = QStringLiteral("application/x-roundwright-rounds+json");

QString words_of(const DocumentSession& session, const std::vector<int>& rounds) {
    const auto shared = session.graph_of(session.toy(), session.current_piece());
    const StitchGraph& graph = shared->get().graph;
    const Terms terms = session.preferences().terms();
    QStringList lines;
    for (const int round : rounds) {
        const auto words = QString::fromStdString(round_words(graph, round, terms, session.piece()->start));
        const int count = graph.rounds[static_cast<std::size_t>(round)].loops_left;
        lines << QStringLiteral("%1: %2 (%3)").arg(round + 1).arg(words).arg(count);
    }
    return lines.join(u'\n');
}

}  // namespace

QMimeData* rounds_to_clipboard(const DocumentSession& session, const std::vector<int>& rounds) {
    Toy carrier;
    carrier.yarns = session.toy().yarns;
    carrier.pieces.emplace_back();
    for (const int round : rounds) {
        carrier.pieces.front().rounds.push_back(session.piece()->rounds[static_cast<std::size_t>(round)]);
    }
    auto* data = new QMimeData;
    data->setData(rounds_type, QByteArray::fromStdString(write_document(carrier)));
    data->setText(words_of(session, rounds));
    return data;
}

std::vector<Round> rounds_from_clipboard(const QMimeData& data, std::size_t yarns) {
    if (!data.hasFormat(rounds_type)) return {};
    try {
        auto carrier = read_document(data.data(rounds_type).toStdString()).toy;
        if (carrier.pieces.empty()) return {};
        auto rounds = std::move(carrier.pieces.front().rounds);
        for (auto& round : rounds) round.yarn = std::min(round.yarn, yarns == 0 ? 0 : yarns - 1);
        return rounds;
    } catch (const DocumentError&) {
        return {};
    }
}

}  // namespace roundwright::app
