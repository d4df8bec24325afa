#include "app/read_pattern/mends_model.h"

#include <utility>

#include "render/wording/counted.h"
#include "render/wording/diagnostic_sentence.h"

namespace roundwright::app {
namespace {

/// The question of these has the stitches in it.
bool says_stitches(MendCode code) {
    return code == MendCode::change_stated_count || code == MendCode::bracket_count ||
           code == MendCode::space_evenly;
}

}  // namespace

void MendsModel::set_mends(std::vector<Mend> mends) {
    beginResetModel();
    mends_ = std::move(mends);
    endResetModel();
}

int MendsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(mends_.size());
}

QVariant MendsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
    const Mend& mend = mends_[static_cast<std::size_t>(index.row())];
    const QString question = mend_question(mend);
    if (mend.stitches < 0 || says_stitches(mend.code)) return question;
    return tr("%1 It then has %2.").arg(question, stitches_words(mend.stitches));
}

}  // namespace roundwright::app
