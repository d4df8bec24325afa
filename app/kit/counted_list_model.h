#pragma once

#include <QAbstractListModel>

namespace roundwright::app {

/// A list that shows what stands elsewhere: it only keeps how many rows it has said there are. Its data must
/// be asked for with care while rows go, since what it shows has already changed by then.
class CountedListModel : public QAbstractListModel {
    Q_OBJECT
  public:
    explicit CountedListModel(int rows, QObject* parent = nullptr)
        : QAbstractListModel(parent), rows_(rows) {}

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
        return parent.isValid() ? 0 : rows_;
    }

  protected:
    /// Rows came or went at the end; those that are left may read otherwise.
    void follow_count(int rows);

  private:
    int rows_;
};

}  // namespace roundwright::app
