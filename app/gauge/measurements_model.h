#pragma once

#include <vector>

#include "app/kit/counted_list_model.h"
#include "app/session/document_session.h"
#include "core/gauge/combined_gauge.h"

namespace roundwright::app {

/// The measurements that the toy's gauge comes from, one a row: what was measured, when, and its share. A
/// tick says whether it counts. Every change is one undo step.
class MeasurementsModel : public CountedListModel {
    Q_OBJECT
  public:
    explicit MeasurementsModel(DocumentSession& session, QObject* parent = nullptr);

    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

    [[nodiscard]] const std::vector<GaugeMeasurement>& measurements() const { return several_.measurements; }
    /// Which of them disagrees with the others, as a sentence; empty: none.
    [[nodiscard]] QString disagreement() const;

    [[nodiscard]] bool has_room() const;
    void add(const GaugeMeasurement& measurement);
    void replace(int row, const GaugeMeasurement& measurement);
    void remove(int row);

  private:
    void read_toy();
    void change(const QString& step, SeveralGauge several);
    [[nodiscard]] QString words(std::size_t row) const;

    DocumentSession& session_;
    SeveralGauge several_;
    std::optional<CombinedGauge> combined_;
};

}  // namespace roundwright::app
