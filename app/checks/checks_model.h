#pragma once

#include <optional>
#include <vector>

#include <QAbstractListModel>

#include "app/session/document_session.h"
#include "core/assembly/check_joins.h"
#include "core/checks/check_said_numbers.h"

namespace roundwright::app {

/// What the program found in all pieces: a sentence each, the worst first, with the label of its first cure.
class ChecksModel : public QAbstractListModel {
    Q_OBJECT
  public:
    enum Role { cure_label_role = Qt::UserRole + 1 };

    explicit ChecksModel(DocumentSession& session, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

    [[nodiscard]] const Check& check(int row) const { return checks_[static_cast<std::size_t>(row)]; }
    /// Brings the check's piece and round on show; where pieces run into each other, the whole toy.
    void show_place(int row);
    /// Makes the first cure of the check as one undo step; false if it has none.
    bool cure(int row);
    /// The same with any cure of a check.
    bool apply(const Check& check, const Cure& cure);

  Q_SIGNALS:
    /// The whole toy is on show; that is to be seen there which `AssembledToy::overlaps` counts so.
    void overlap_shown(std::size_t overlap);

  private:
    void refill();
    void add_said_numbers();
    void add_seams();
    [[nodiscard]] std::optional<CountsOfPieces> counts_worked_out() const;
    [[nodiscard]] QString sentence(const Check& check) const;

    DocumentSession& session_;
    std::vector<Check> checks_;
};

}  // namespace roundwright::app
