#include "app/assembly/units_model.h"

#include <algorithm>

#include "app/session/assembled_toy.h"
#include "render/wording/as_sentence.h"
#include "render/wording/join_place.h"

namespace roundwright::app {

UnitsModel::UnitsModel(DocumentSession& session, ToyState& state, QObject* parent)
    : CountedListModel(0, parent), session_(session), state_(state) {
    follow();
    connect(&session_, &DocumentSession::toy_changed, this, &UnitsModel::follow);
    connect(&session_, &DocumentSession::assembled_changed, this, &UnitsModel::tell_shown);
    connect(&session_.preferences(), &Preferences::units_changed, this, &UnitsModel::tell_shown);
    connect(&state_, &ToyState::hidden_changed, this, &UnitsModel::tell_shown);
}

void UnitsModel::follow() {
    units_ = units_of(session_.toy());
    follow_count(static_cast<int>(units_.size()));
}

void UnitsModel::tell_shown() {
    if (rowCount() > 0) Q_EMIT dataChanged(index(0), index(rowCount() - 1));
}

int UnitsModel::row_of(const PieceCopy& copy) const {
    const auto found = std::ranges::find_if(units_, [&](const ToyUnit& unit) { return unit.has(copy); });
    return found == units_.end() ? -1 : static_cast<int>(found - units_.begin());
}

int UnitsModel::standing() const {
    return static_cast<int>(
        std::ranges::count_if(units_, [](const ToyUnit& unit) { return !unit.join.has_value(); }));
}

QString UnitsModel::title(const ToyUnit& unit) const {
    const Toy& toy = session_.toy();
    return as_sentence(unit.join ? join_title(toy, toy.joins[*unit.join])
                                 : copy_name(toy, unit.copies.front()));
}

QString UnitsModel::words(const ToyUnit& unit) const {
    const Toy& toy = session_.toy();
    if (!unit.join) return tr("stands by itself");
    return join_words(toy, toy.joins[*unit.join], session_.preferences().units());
}

QString UnitsModel::fault(int row) const {
    const auto assembled = session_.assembled();
    if (row < 0 || static_cast<std::size_t>(row) >= units_.size() || assembled == nullptr) return {};
    const auto& join = units_[static_cast<std::size_t>(row)].join;
    if (!join || assembled->toy->joins != session_.toy().joins) return {};
    const auto& problems = assembled->placed().problems;
    const auto found = std::ranges::find(problems, *join, &JoinProblem::join);
    return found == problems.end() ? QString() : join_fault_words(found->fault);
}

QVariant UnitsModel::data(const QModelIndex& index, int role) const {
    const auto row = static_cast<std::size_t>(index.row());
    if (!index.isValid() || row >= units_.size()) return {};
    const ToyUnit& unit = units_[row];
    const auto& joins = session_.toy().joins;
    if (unit.join && *unit.join >= joins.size()) return {};
    const QString wrong = fault(index.row());
    switch (role) {
        case Qt::DisplayRole:
            return wrong.isEmpty() ? title(unit) : tr("%1 (!)").arg(title(unit));
        case Qt::AccessibleTextRole:
            return wrong.isEmpty() ? tr("%1: %2").arg(title(unit), words(unit))
                                   : tr("%1: %2; %3").arg(title(unit), words(unit), wrong);
        case Qt::ToolTipRole:
            return as_sentence(wrong.isEmpty() ? words(unit) : tr("%1; %2").arg(words(unit), wrong));
        case Qt::CheckStateRole:
            return state_.is_hidden(unit.copies.front()) ? Qt::Unchecked : Qt::Checked;
        default:
            return {};
    }
}

bool UnitsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const auto row = static_cast<std::size_t>(index.row());
    if (role != Qt::CheckStateRole || !index.isValid() || row >= units_.size()) return false;
    state_.set_hidden(units_[row].copies, value.toInt() == Qt::Unchecked);
    return true;
}

Qt::ItemFlags UnitsModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags usual = CountedListModel::flags(index);
    return index.isValid() ? usual | Qt::ItemIsUserCheckable : usual;
}

}  // namespace roundwright::app
