#pragma once

#include <vector>

#include <QAbstractTableModel>

#include "core/language/pattern/read_pattern.h"

namespace roundwright::app {

/// What was understood of a pattern's text, a row for every line that says something: beside its place in the
/// text.
class ReviewModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    enum Column { place, kind, understood, stitches, columns };

    explicit ReviewModel(QObject* parent = nullptr) : QAbstractTableModel(parent) {}

    void set_pattern(const ReadPattern& pattern);
    [[nodiscard]] const ReadLine& line(int row) const { return lines_[static_cast<std::size_t>(row)]; }
    /// The row for a line of the text (from 1); -1: none.
    [[nodiscard]] int row_of_line(int text_line) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    [[nodiscard]] QString text(const ReadLine& line, int column) const;

    std::vector<ReadLine> lines_;
};

}  // namespace roundwright::app
