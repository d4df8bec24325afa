#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QAbstractTableModel>
#include <QIcon>

#include "app/kit/announcer.h"
#include "app/rounds/round_edits.h"
#include "app/session/document_session.h"
#include "core/face/work_steps.h"

namespace roundwright::app {

enum class RoundColumn { number, stitches, change, words, yarn, lie, width };
inline constexpr int round_columns = 7;

/// The rounds of the current piece as a table, and one row more where the next round is typed.
class RoundsModel : public QAbstractTableModel, public AnnouncedAtACell {
    Q_OBJECT
  public:
    explicit RoundsModel(DocumentSession& session, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

    [[nodiscard]] int rounds() const { return rounds_; }
    [[nodiscard]] bool is_next_round(const QModelIndex& index) const { return index.row() == rounds_; }
    /// The rounds an edit of `row` is for: the selected ones, if it is among several.
    [[nodiscard]] std::vector<int> edited_rounds(int row) const;
    /// What was typed as a count of rounds, or, with none, of the next round. False: nothing changed.
    bool set_count(const std::vector<int>& rounds, const QString& text);
    /// What was typed as the words of a round, or of the next.
    bool set_words(int row, const QString& text);
    bool set_yarn(const std::vector<int>& rounds, int yarn);
    void set_announced(const QModelIndex& cell, const QString& words) override;
    [[nodiscard]] RoundEdits& edits() { return edits_; }
    [[nodiscard]] DocumentSession& session() { return session_; }

  Q_SIGNALS:
    /// What was typed could not be taken, and why.
    void entry_refused(const QString& why);

  private:
    /// A copy of its own, since views ask for rows while the toy has others already.
    struct Row {
        int number = 0;
        Round round;
        int stitches = 0;
        int below = 0;
        mutable std::optional<QString> words;

        [[nodiscard]] bool says_the_same_as(const Row& other) const {
            return number == other.number && round == other.round && stitches == other.stitches &&
                   below == other.below;
        }
    };

    void follow(const ChangeSet& changes);
    void follow_file();
    void splice(const Splice& rounds);
    void refill();
    void refresh();
    void refresh_changed_rows(bool had_study);
    void read_rows();
    void take_study(int piece);
    [[nodiscard]] const Row& row(int round) const { return rows_[static_cast<std::size_t>(round)]; }
    [[nodiscard]] const Round& round_at(int round) const { return row(round).round; }
    [[nodiscard]] const PieceStudy* fitting_study() const;
    [[nodiscard]] QString text(int round, RoundColumn column) const;
    [[nodiscard]] QString words(int round) const;
    [[nodiscard]] QString words_to_edit(int round) const;
    [[nodiscard]] QString width(int round) const;
    [[nodiscard]] QString lie(int round) const;
    [[nodiscard]] QString next_round_text(RoundColumn column) const;
    [[nodiscard]] QString spoken(int round, RoundColumn column) const;
    [[nodiscard]] QString next_round_spoken(RoundColumn column) const;
    [[nodiscard]] QStringList signs_in_words(int round) const;
    [[nodiscard]] QString spoken_about(int round) const;
    [[nodiscard]] QVariant decoration(int round, RoundColumn column) const;
    [[nodiscard]] QString tip(int round, RoundColumn column) const;
    [[nodiscard]] QString number(int round) const;
    [[nodiscard]] QStringList due_after(int round) const;
    [[nodiscard]] QString about(int round) const;
    [[nodiscard]] std::optional<Severity> worst_check(int round) const;

    DocumentSession& session_;
    RoundEdits edits_;
    int rounds_ = 0;
    bool has_next_round_ = false;  ///< the row where it is typed
    int next_number_ = 1;          ///< shown on the row for the next round
    std::vector<Row> rows_;
    std::shared_ptr<const PieceStudy> study_;
    QPersistentModelIndex announced_at_;
    QString announced_;
    std::vector<WorkStep> steps_;  ///< what is due between the rounds, in their order
};

}  // namespace roundwright::app
