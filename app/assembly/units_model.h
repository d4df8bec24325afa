#pragma once

#include "app/assembly/toy_state.h"
#include "app/assembly/toy_units.h"
#include "app/kit/counted_list_model.h"

namespace roundwright::app {

/// The toy's pieces as they are sewn together, one a row: what is sewn to what. A tick shows or hides it.
class UnitsModel : public CountedListModel {
    Q_OBJECT
  public:
    UnitsModel(DocumentSession& session, ToyState& state, QObject* parent = nullptr);

    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

    [[nodiscard]] const std::vector<ToyUnit>& units() const { return units_; }
    /// The row of a copy; -1: it is not there.
    [[nodiscard]] int row_of(const PieceCopy& copy) const;
    /// How many stand by themselves.
    [[nodiscard]] int standing() const;
    /// What is wrong with a row's join, as a sentence without its stop; empty: nothing.
    [[nodiscard]] QString fault(int row) const;

  private:
    void follow();
    void tell_shown();
    [[nodiscard]] QString title(const ToyUnit& unit) const;
    [[nodiscard]] QString words(const ToyUnit& unit) const;

    DocumentSession& session_;
    ToyState& state_;
    std::vector<ToyUnit> units_;
};

}  // namespace roundwright::app
