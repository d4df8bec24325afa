#pragma once

#include "app/kit/counted_list_model.h"
#include "app/session/document_session.h"

namespace roundwright::app {

/// The yarns of the toy, one a row: name, and colour as the decoration.
class YarnsModel : public CountedListModel {
    Q_OBJECT
  public:
    explicit YarnsModel(DocumentSession& session, QObject* parent = nullptr);

    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

  private:
    void follow(const ChangeSet& changes);

    DocumentSession& session_;
};

}  // namespace roundwright::app
