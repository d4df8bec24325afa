#pragma once

#include <vector>

#include <QAbstractTableModel>

#include "core/language/pattern/read_pattern.h"

namespace roundwright::app {

/// What each line of a pattern's text came to, in the order of the text. A line has a row for each entry of
/// the reading that begins on it, and one where it is part of an entry that began before; a line with nothing
/// on it has none.
class ReviewModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { place, lot, understood, stitches, columns };

    explicit ReviewModel(QObject* parent = nullptr) : QAbstractTableModel(parent) {}

    void set_pattern(const ReadPattern& pattern);
    /// Of the text, from 1.
    [[nodiscard]] int line(int row) const { return rows_[static_cast<std::size_t>(row)].line; }
    /// The first row of a line of the text, or of the next line that has one; -1: none.
    [[nodiscard]] int row_of_line(int text_line) const;
    /// Index of the first of the reading's diagnostics about this row; -1: none.
    [[nodiscard]] int finding(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    struct Row {
        int line = 1;
        int entry = 0;
        bool part = false;  ///< its entry began on a line before
        std::vector<int> findings{};
    };

    [[nodiscard]] const ReadLine& entry(const Row& row) const {
        return lines_[static_cast<std::size_t>(row.entry)];
    }
    void make_rows(const std::vector<LineAccount>& account);
    void place_findings();
    [[nodiscard]] QString text(const Row& row, int column) const;
    [[nodiscard]] QString spoken(const Row& row, int column) const;
    [[nodiscard]] QString whole_row_words(const Row& row) const;
    [[nodiscard]] QString findings_words(const Row& row) const;
    [[nodiscard]] QVariant sign(const Row& row) const;

    std::vector<ReadLine> lines_;
    std::vector<ReadDiagnostic> diagnostics_;
    std::vector<Row> rows_;
};

}  // namespace roundwright::app
