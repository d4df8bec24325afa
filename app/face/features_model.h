#pragma once

#include "app/kit/counted_list_model.h"
#include "app/session/document_session.h"

namespace roundwright::app {

/// The features of the current piece, one a row: what it is and where it sits.
class FeaturesModel : public CountedListModel {
    Q_OBJECT
  public:
    explicit FeaturesModel(DocumentSession& session, QObject* parent = nullptr);

    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

  private:
    [[nodiscard]] int features() const;
    void follow();

    DocumentSession& session_;
};

}  // namespace roundwright::app
