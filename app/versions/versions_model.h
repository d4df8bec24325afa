#pragma once

#include <memory>
#include <vector>

#include <QAbstractTableModel>

#include "app/versions/version.h"
#include "core/differences/difference.h"
#include "core/differences/toy_totals.h"

namespace roundwright::app {

enum class VersionColumn { when, kind, pieces, rounds, stitches };
inline constexpr int version_columns = 5;

/// A version once it was read.
struct ReadVersion {
    std::shared_ptr<const Toy> toy;  ///< null: it cannot be read
    QString problem;                 ///< why
    bool newer = false;              ///< written by a newer program: taken back, it would lose what is new
    ToyTotals totals;
    std::vector<Difference> differences;  ///< of the toy in the window from it
    QByteArray bytes;
};

/// The earlier versions of a toy, newest first: when each was kept, how it came about and how large it is,
/// which comes when it was read.
class VersionsModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    using QAbstractTableModel::QAbstractTableModel;

    void set_versions(std::vector<Version> versions);
    void set_read(std::size_t row, std::shared_ptr<const ReadVersion> read);

    [[nodiscard]] const Version& version(std::size_t row) const { return rows_[row].version; }
    /// Null: not read yet.
    [[nodiscard]] std::shared_ptr<const ReadVersion> read(std::size_t row) const { return rows_[row].read; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    struct Row {
        Version version;
        std::shared_ptr<const ReadVersion> read;
    };
    [[nodiscard]] static QString text(const Row& row, VersionColumn column);

    std::vector<Row> rows_;
};

}  // namespace roundwright::app
