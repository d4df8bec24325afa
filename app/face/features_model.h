#pragma once

#include <QAbstractListModel>

#include "app/session/document_session.h"

namespace roundwright::app {

/// The features of the current piece, one a row: what it is and where it sits.
class FeaturesModel : public QAbstractListModel {
    Q_OBJECT
  public:
    explicit FeaturesModel(DocumentSession& session, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

  private:
    [[nodiscard]] int features() const;
    void follow();

    DocumentSession& session_;
    int rows_ = 0;
};

}  // namespace roundwright::app
