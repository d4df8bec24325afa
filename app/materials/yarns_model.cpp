#include "app/materials/yarns_model.h"

#include <QColor>
#include <QPainter>
#include <QPixmap>

#include "render/wording/colour_words.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {

namespace {

constexpr int swatch_size = 18;

QPixmap swatch(const Colour& colour) {
    QPixmap pixmap(swatch_size, swatch_size);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QColor(128, 128, 128));
    painter.setBrush(QColor(colour.red, colour.green, colour.blue));
    painter.drawEllipse(1, 1, swatch_size - 2, swatch_size - 2);
    return pixmap;
}

}  // namespace

YarnsModel::YarnsModel(DocumentSession& session, QObject* parent)
    : CountedListModel(static_cast<int>(session.toy().yarns.size()), parent), session_(session) {
    connect(&session_, &DocumentSession::toy_changed, this, &YarnsModel::follow);
}

QVariant YarnsModel::data(const QModelIndex& index, int role) const {
    // While rows are being removed the toy is already without them.
    const auto& yarns = session_.toy().yarns;
    if (!index.isValid() || static_cast<std::size_t>(index.row()) >= yarns.size()) return {};
    const Yarn& yarn = yarns[static_cast<std::size_t>(index.row())];
    switch (role) {
        case Qt::DisplayRole:
            return name_in_words(yarn.name);
        case Qt::EditRole:
            return QString::fromStdString(yarn.name);
        case Qt::AccessibleTextRole:
            return tr("%1, %2").arg(yarn.name.empty() ? tr("Yarn without a name") : name_in_words(yarn.name),
                                    colour_name(yarn.colour));
        case Qt::DecorationRole:
            return swatch(yarn.colour);
        default:
            return {};
    }
}

bool YarnsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !checkIndex(index, CheckIndexOption::IndexIsValid)) return false;
    const auto row = static_cast<std::size_t>(index.row());
    const std::string name = value.toString().trimmed().toStdString();
    if (name.empty()) return false;
    return session_.edit(tr("Name yarn"), [row, &name](Toy toy) {
        toy.yarns[row].name = name;
        return toy;
    });
}

Qt::ItemFlags YarnsModel::flags(const QModelIndex& index) const {
    return index.isValid() ? QAbstractListModel::flags(index) | Qt::ItemIsEditable : Qt::NoItemFlags;
}

void YarnsModel::follow(const ChangeSet& changes) {
    if (!changes.everything && !changes.materials) return;
    follow_count(static_cast<int>(session_.toy().yarns.size()));
}

}  // namespace roundwright::app
