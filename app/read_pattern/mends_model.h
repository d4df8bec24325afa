#pragma once

#include <vector>

#include <QAbstractListModel>

#include "core/language/round/read_diagnostic.h"

namespace roundwright::app {

/// The mends that are offered for a finding, the likeliest first, each as a question with the stitches that
/// the round has with it.
class MendsModel : public QAbstractListModel {
    Q_OBJECT
  public:
    explicit MendsModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

    void set_mends(std::vector<Mend> mends);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

  private:
    std::vector<Mend> mends_;
};

}  // namespace roundwright::app
