#include "app/rounds/rounds_model.h"

#include <algorithm>

#include <QPainter>
#include <QPixmap>

#include "app/kit/cell_words.h"
#include "app/kit/icons.h"
#include "app/kit/theme.h"
#include "app/rounds/lie_glyph.h"
#include "app/rounds/round_counts.h"
#include "core/language/round/read_round.h"
#include "core/language/round/write.h"
#include "core/rounds/piece_graph.h"
#include "render/wording/check_sentence.h"
#include "render/wording/counted.h"
#include "render/wording/feature_words.h"
#include "render/wording/length_text.h"
#include "render/wording/plain_text.h"
#include "render/wording/round_phrases.h"

namespace roundwright::app {
namespace {

RoundColumn column_of(const QModelIndex& index) { return static_cast<RoundColumn>(index.column()); }

std::size_t index_of(int round) { return static_cast<std::size_t>(round); }

/// A patch of the yarn's colour with an edge that shows on any ground.
QIcon swatch(const Colour& colour) {
    QPixmap pixmap(32, 32);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(Theme::colours().quiet_text, 1.5));
    painter.setBrush(QColor(colour.red, colour.green, colour.blue));
    painter.drawEllipse(QRectF(3, 3, 26, 26));
    return QIcon(pixmap);
}

QString spoken_column(RoundColumn column) {
    switch (column) {
        case RoundColumn::number:
            return RoundsModel::tr("round");
        case RoundColumn::stitches:
            return RoundsModel::tr("stitches");
        case RoundColumn::change:
            return RoundsModel::tr("change");
        case RoundColumn::words:
            return RoundsModel::tr("worked as");
        case RoundColumn::yarn:
            return RoundsModel::tr("yarn");
        case RoundColumn::lie:
            return RoundsModel::tr("fabric");
        case RoundColumn::width:
            return RoundsModel::tr("width");
    }
    return {};
}

bool is_numeric(RoundColumn column) {
    return column == RoundColumn::number || column == RoundColumn::stitches ||
           column == RoundColumn::change || column == RoundColumn::width;
}

}  // namespace

RoundsModel::RoundsModel(DocumentSession& session, QObject* parent)
    : QAbstractTableModel(parent), session_(session), edits_(session) {
    connect(&session_, &DocumentSession::toy_changed, this, &RoundsModel::follow);
    connect(&session_, &DocumentSession::current_piece_changed, this, &RoundsModel::refill);
    connect(&session_, &DocumentSession::study_ready, this, &RoundsModel::take_study);
    connect(&session_, &DocumentSession::file_changed, this, &RoundsModel::follow_file);
    connect(&session_.preferences(), &Preferences::units_changed, this, &RoundsModel::refresh);
    connect(&session_.preferences(), &Preferences::terms_changed, this, &RoundsModel::refresh);
    refill();
}

int RoundsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : rounds_ + (has_next_round_ ? 1 : 0);
}

int RoundsModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : round_columns; }

// --- following the toy

void RoundsModel::refill() {
    beginResetModel();
    rounds_ = session_.piece() ? static_cast<int>(session_.piece()->rounds.size()) : 0;
    has_next_round_ = session_.piece() && !session_.read_only();
    rows_.assign(index_of(rounds_), {});
    study_ = session_.study(session_.current_piece());
    read_rows();
    endResetModel();
}

/// A toy to look at only has no next round. Saving under another name changes nothing, and the cursor stays.
void RoundsModel::follow_file() {
    if (has_next_round_ != (session_.piece() && !session_.read_only())) refill();
}

void RoundsModel::follow(const ChangeSet& changes) {
    if (changes.piece_list()) return refill();
    const bool ours = changes.touches_piece(session_.current_piece());
    const bool had_study = fitting_study() != nullptr;
    if (ours && !changes.rounds.empty()) splice(changes.rounds);
    if (changes.materials)
        refresh();
    else if (ours)
        refresh_changed_rows(had_study);
}

/// Rounds added at the end: the row of the next round becomes the first of them, with the cursor or editor in
/// it, and the next round gets a new row.
void RoundsModel::splice(const Splice& rounds) {
    const int shared = std::min(rounds.removed, rounds.inserted);
    const int at = rounds.first + shared;
    if (rounds.inserted > shared) {
        const int more = rounds.inserted - shared;
        const int first = at == rounds_ && has_next_round_ ? at + 1 : at;
        beginInsertRows({}, first, first + more - 1);
        rows_.insert(rows_.begin() + at, index_of(more), Row{});
        rows_[index_of(at)].number = at + 1;  // as it stood on the row of the next round
        rounds_ += more;
        endInsertRows();
    } else if (rounds.removed > shared) {
        const int fewer = rounds.removed - shared;
        beginRemoveRows({}, at, at + fewer - 1);
        rows_.erase(rows_.begin() + at, rows_.begin() + at + fewer);
        rounds_ -= fewer;
        endRemoveRows();
    }
}

void RoundsModel::read_rows() {
    next_number_ = rounds_ + 1;
    steps_.clear();
    if (!session_.piece()) return;
    const auto& piece = *session_.piece();
    if (fitting_study()) steps_ = work_steps(piece, study_->problem().rest_loop_mm, study_->fabric.mm);
    const auto graph = session_.graph_of(session_.toy(), session_.current_piece());
    const auto counts = edge_counts(graph->get().graph, piece.rounds.size());
    for (std::size_t round = 0; round < rows_.size(); ++round) {
        rows_[round] = {
            static_cast<int>(round) + 1, piece.rounds[round], counts[round + 1], counts[round], {}};
    }
}

void RoundsModel::refresh() {
    read_rows();
    Q_EMIT headerDataChanged(Qt::Horizontal, 0, round_columns - 1);
    if (rowCount() > 0) Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, round_columns - 1));
}

/// While keys come, painting the whole table would take a third of a frame.
void RoundsModel::refresh_changed_rows(bool had_study) {
    const auto rows = rows_;
    const auto steps = steps_;
    read_rows();
    const bool all = had_study != (fitting_study() != nullptr) || steps != steps_;
    const auto told = [&](std::size_t row) { return !all && rows[row].says_the_same_as(rows_[row]); };
    for (std::size_t row = 0; row < rows_.size(); ++row) {
        if (told(row)) continue;
        const std::size_t first = row;
        while (row + 1 < rows_.size() && !told(row + 1)) ++row;
        Q_EMIT dataChanged(index(static_cast<int>(first), 0),
                           index(static_cast<int>(row), round_columns - 1));
    }
    if (has_next_round_) Q_EMIT dataChanged(index(rounds_, 0), index(rounds_, round_columns - 1));
}

void RoundsModel::take_study(int piece) {
    if (piece != session_.current_piece()) return;
    study_ = session_.study(piece);
    refresh();
}

const PieceStudy* RoundsModel::fitting_study() const {
    return study_ && study_->lies().size() == rows_.size() ? study_.get() : nullptr;
}

// --- what is shown

QVariant RoundsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const auto column = column_of(index);
    if (role == Qt::AccessibleDescriptionRole && announced_at_ == index) return announced_;
    if (role == Qt::TextAlignmentRole && is_numeric(column))
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    if (is_next_round(index)) {
        if (role == Qt::DisplayRole) return next_round_text(column);
        if (role == Qt::ForegroundRole) return Theme::colours().quiet_text;
        if (role == Qt::EditRole) return QString();
        if (role == Qt::AccessibleTextRole) return next_round_spoken(column);
        return {};
    }
    switch (role) {
        case Qt::EditRole:
            if (column == RoundColumn::words) return words_to_edit(index.row());
            [[fallthrough]];
        case Qt::DisplayRole:
            return text(index.row(), column);
        case Qt::AccessibleTextRole:
            return spoken(index.row(), column);
        case Qt::AccessibleDescriptionRole:
            return column == RoundColumn::number ? spoken_about(index.row()) : QString();
        case Qt::DecorationRole:
            return decoration(index.row(), column);
        case Qt::ToolTipRole:
            return tip(index.row(), column);
        case Qt::ForegroundRole:
            if (column == RoundColumn::number) return Theme::colours().quiet_text;
            break;
        default:
            break;
    }
    return {};
}

void RoundsModel::set_announced(const QModelIndex& cell, const QString& words) {
    announced_at_ = cell;
    announced_ = words;
}

QString RoundsModel::text(int round, RoundColumn column) const {
    switch (column) {
        case RoundColumn::number:
            return number(round);
        case RoundColumn::stitches:
            return QString::number(row(round).stitches);
        case RoundColumn::change:
            return row(round).below == 0 ? QString() : change_phrase(row(round).stitches - row(round).below);
        case RoundColumn::words:
            return line_in_words(words(round));
        case RoundColumn::yarn:
            return QString::fromStdString(yarn_letter(static_cast<int>(round_at(round).yarn)));
        case RoundColumn::lie:
            return lie(round);
        case RoundColumn::width:
            return width(round);
    }
    return {};
}

/// "✓ 4" is worked, "▸ 5" in hand.
QString RoundsModel::number(int round) const {
    const QString plain = QString::number(row(round).number);
    const WorkedSoFar& worked = session_.piece()->worked;
    if (round < worked.rounds) return QStringLiteral("\u2713 %1").arg(plain);
    const bool in_hand = round == worked.rounds && worked != WorkedSoFar{};
    return in_hand ? QStringLiteral("\u25B8 %1").arg(plain) : plain;
}

QString RoundsModel::words(int round) const {
    const auto& kept = row(round).words;
    if (kept) return *kept;
    if (const auto* written = std::get_if<AsWritten>(&round_at(round).working)) {
        row(round).words =
            QString::fromStdString(words_in_terms(written->words, Terms::us, session_.preferences().terms()));
    } else if (fitting_study() && index_of(round) < study_->graph().graph.rounds.size()) {
        row(round).words = QString::fromStdString(round_words(
            study_->graph().graph, round, session_.preferences().terms(), session_.piece()->start));
    } else {
        return {};
    }
    return *row(round).words;
}

/// Of the toy as it is, though the study that `words` reads may be of an earlier one for a moment.
QString RoundsModel::words_to_edit(int round) const {
    if (session_.is_up_to_date(session_.current_piece()) ||
        !std::holds_alternative<WorkedEvenly>(round_at(round).working))
        return words(round);
    const auto graph = session_.graph_of(session_.toy(), session_.current_piece());
    return QString::fromStdString(
        round_words(graph->get().graph, round, session_.preferences().terms(), session_.piece()->start));
}

QString RoundsModel::lie(int round) const {
    if (!fitting_study()) return {};
    return lie_phrase(study_->lies()[index_of(round)].lie);
}

QString RoundsModel::width(int round) const {
    const auto* study = fitting_study();
    if (!study || index_of(round) >= study->measures().rounds()) return {};
    return length_number(study->measures().round(index_of(round)).width_mm, session_.preferences().units());
}

QString RoundsModel::next_round_text(RoundColumn column) const {
    if (column == RoundColumn::number) return QString::number(next_number_);
    if (column == RoundColumn::words) return rounds_ == 0 ? tr("type 6 to begin") : tr("next round");
    return {};
}

/// "Round 28, stitches, 12". What the number's cell says by signs is said in words.
QString RoundsModel::spoken(int round, RoundColumn column) const {
    const QString named = tr("Round %1").arg(row(round).number);
    switch (column) {
        case RoundColumn::number:
            return (QStringList{named} + signs_in_words(round)).join(QStringLiteral(", "));
        case RoundColumn::change:
            if (row(round).below > 0 && row(round).stitches == row(round).below)
                return cell_words(named, spoken_column(column), tr("none"));
            break;
        case RoundColumn::yarn:
            return cell_words(named, spoken_column(column),
                              tr("%1 %2").arg(text(round, column), tip(round, column)).trimmed());
        case RoundColumn::width:
            if (const QString wide = width(round); !wide.isEmpty())
                return cell_words(named, spoken_column(column),
                                  tr("%1 %2").arg(wide, unit_name(session_.preferences().units())));
            break;
        default:
            break;
    }
    return cell_words(named, spoken_column(column), text(round, column));
}

QString RoundsModel::next_round_spoken(RoundColumn column) const {
    const QString named = tr("Next round, %1").arg(next_number_);
    return column == RoundColumn::number ? named : cell_words(named, spoken_column(column), {});
}

QStringList RoundsModel::signs_in_words(int round) const {
    QStringList signs;
    const WorkedSoFar& worked = session_.piece()->worked;
    if (round < worked.rounds) signs << tr("worked");
    if (round == worked.rounds && worked != WorkedSoFar{}) signs << tr("on the hook");
    if (const auto worst = worst_check(round))
        signs << (*worst == Severity::error     ? tr("to fix")
                  : *worst == Severity::warning ? tr("worth a look")
                                                : tr("good to know"));
    const auto due = std::ranges::find(steps_, round, &WorkStep::after_round);
    if (due != steps_.end())
        signs << (due->kind == StepKind::fit_feature ? tr("part of the face due") : tr("something due"));
    if (!round_at(round).note.empty()) signs << tr("has a note");
    return signs;
}

/// The checks of the round, and what the tip says.
QString RoundsModel::spoken_about(int round) const {
    QStringList lines;
    if (fitting_study()) {
        for (const Check& check : study_->checks())
            if (check.round == round) lines << check_sentence(check, session_.preferences().units());
    }
    lines << about(round);
    lines.removeAll(QString());
    return lines.join(QLatin1Char('\n'));
}

QStringList RoundsModel::due_after(int round) const {
    QStringList due;
    for (const WorkStep& step : steps_) {
        if (step.after_round == round) due << step_words(step, *session_.piece());
    }
    return due;
}

/// What is to be known of a round besides its columns.
QString RoundsModel::about(int round) const {
    QStringList lines;
    const WorkedSoFar& worked = session_.piece()->worked;
    if (round < worked.rounds) {
        lines << tr("Worked");
    } else if (round == worked.rounds && worked != WorkedSoFar{}) {
        lines << tr("On the hook: %1 of %2 worked")
                     .arg(worked.stitches)
                     .arg(stitches_words(row(round).stitches));
    }
    if (!round_at(round).note.empty()) lines << text_in_words(QString::fromStdString(round_at(round).note));
    const QStringList due = due_after(round);
    if (!due.isEmpty()) lines << tr("After this round: %1").arg(due.join(QLatin1Char(' ')));
    return lines.join(QLatin1Char('\n'));
}

std::optional<Severity> RoundsModel::worst_check(int round) const {
    std::optional<Severity> worst;
    if (!fitting_study()) return worst;
    for (const auto& check : study_->checks()) {
        if (check.round == round && (!worst || check.severity > *worst)) worst = check.severity;
    }
    return worst;
}

QVariant RoundsModel::decoration(int round, RoundColumn column) const {
    if (column == RoundColumn::yarn) {
        const auto yarn = round_at(round).yarn;
        const auto& yarns = session_.toy().yarns;
        return yarn < yarns.size() ? swatch(yarns[yarn].colour) : QIcon();
    }
    if (column == RoundColumn::lie && fitting_study())
        return icon(lie_glyph(study_->lies()[index_of(round)].lie));
    if (column != RoundColumn::number) return {};
    if (const auto worst = worst_check(round)) {
        return icon(*worst == Severity::error ? QStringLiteral("error") : QStringLiteral("warning"));
    }
    const auto due = std::ranges::find(steps_, round, &WorkStep::after_round);
    if (due != steps_.end()) {
        return icon(due->kind == StepKind::fit_feature ? QStringLiteral("face") : QStringLiteral("stuffing"));
    }
    return round_at(round).note.empty() ? QVariant() : icon(QStringLiteral("note"));
}

QString RoundsModel::tip(int round, RoundColumn column) const {
    if (column == RoundColumn::number) return about(round);
    if (column == RoundColumn::yarn) {
        const auto yarn = round_at(round).yarn;
        const auto& yarns = session_.toy().yarns;
        return yarn < yarns.size() ? name_in_words(yarns[yarn].name) : QString();
    }
    return column == RoundColumn::words ? words(round) : QString();
}

QVariant RoundsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical && role == Qt::AccessibleTextRole)
        return section < rounds_ ? tr("Round %1").arg(section + 1) : tr("Next round, %1").arg(section + 1);
    if (orientation != Qt::Horizontal || section < 0 || section >= round_columns) return {};
    const auto column = static_cast<RoundColumn>(section);
    if (role == Qt::TextAlignmentRole) {
        return QVariant((is_numeric(column) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    }
    const bool in_full = role == Qt::ToolTipRole || role == Qt::AccessibleTextRole;
    if (role != Qt::DisplayRole && !in_full) return {};
    switch (column) {
        case RoundColumn::number:
            return in_full ? tr("Round") : tr("#");
        case RoundColumn::stitches:
            return in_full ? tr("Stitches") : tr("sts");
        case RoundColumn::change:
            return in_full ? tr("Change from the round below") : tr("change");
        case RoundColumn::words:
            return in_full ? tr("Worked as") : tr("worked as");
        case RoundColumn::yarn:
            return in_full ? tr("Yarn") : tr("yarn");
        case RoundColumn::lie:
            return in_full ? tr("How the fabric lies") : tr("fabric");
        case RoundColumn::width:
            return in_full ? tr("Width at the round, %1").arg(unit_name(session_.preferences().units()))
                           : unit_name(session_.preferences().units());
    }
    return {};
}

Qt::ItemFlags RoundsModel::flags(const QModelIndex& index) const {
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    if (!index.isValid()) return Qt::NoItemFlags;
    if (session_.read_only()) return flags;
    const auto column = column_of(index);
    const bool typed =
        column == RoundColumn::stitches || column == RoundColumn::change || column == RoundColumn::words;
    const bool chosen = column == RoundColumn::yarn && !is_next_round(index);
    return typed || chosen ? flags | Qt::ItemIsEditable : flags;
}

// --- what is typed

std::vector<int> RoundsModel::edited_rounds(int row) const {
    if (row >= rounds_) return {};
    const auto& selected = session_.selection();
    return std::ranges::binary_search(selected, row) ? selected : std::vector<int>{row};
}

bool RoundsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !checkIndex(index, CheckIndexOption::IndexIsValid)) return false;
    switch (column_of(index)) {
        case RoundColumn::stitches:
        case RoundColumn::change:
            return set_count(edited_rounds(index.row()), value.toString());
        case RoundColumn::words:
            return set_words(index.row(), value.toString());
        case RoundColumn::yarn:
            return set_yarn(edited_rounds(index.row()), value.toInt());
        default:
            return false;
    }
}

bool RoundsModel::set_count(const std::vector<int>& rounds, const QString& text) {
    if (text.trimmed().isEmpty()) return false;
    const auto entry = parse_count_entry(text);
    if (!entry) {
        Q_EMIT entry_refused(
            tr("“%1” is not a count. Type a number of stitches, or +6, −6 or = from the round below.")
                .arg(text.trimmed()));
        return false;
    }
    return rounds.empty() ? edits_.append_count(*entry) : edits_.set_count(rounds, *entry);
}

bool RoundsModel::set_words(int row, const QString& text) {
    return row >= rounds_ ? edits_.append_words(text) : edits_.set_words(row, text);
}

bool RoundsModel::set_yarn(const std::vector<int>& rounds, int yarn) {
    return yarn >= 0 && edits_.set_yarn(rounds, static_cast<std::size_t>(yarn));
}

}  // namespace roundwright::app
