#include "app/gauge/measurements_model.h"

#include <utility>

#include "render/wording/as_sentence.h"
#include "render/wording/measurement_words.h"

namespace roundwright::app {

MeasurementsModel::MeasurementsModel(DocumentSession& session, QObject* parent)
    : CountedListModel(0, parent), session_(session) {
    connect(&session_, &DocumentSession::toy_changed, this, &MeasurementsModel::read_toy);
    connect(&session_, &DocumentSession::file_changed, this, &MeasurementsModel::read_toy);
    connect(&session_.preferences(), &Preferences::units_changed, this, &MeasurementsModel::read_toy);
    read_toy();
}

void MeasurementsModel::read_toy() {
    several_.measurements = measurements_of(session_.toy().gauge);
    combined_ = combined_gauge(several_, session_.toy().hook_mm);
    follow_count(static_cast<int>(several_.measurements.size()));
}

QString MeasurementsModel::words(std::size_t row) const {
    const GaugeMeasurement& measurement = several_.measurements[row];
    const MeasurementPart part = combined_ ? combined_->parts[row] : MeasurementPart{};
    return as_sentence(measurement_name(measurement)) + u'\n' +
           measurement_words(measurement, session_.preferences().units()) + u'\n' +
           share_words(measurement, part);
}

QVariant MeasurementsModel::data(const QModelIndex& index, int role) const {
    const auto row = static_cast<std::size_t>(index.row());
    if (!index.isValid() || row >= several_.measurements.size()) return {};
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return words(row);
    if (role == Qt::CheckStateRole) return several_.measurements[row].counts ? Qt::Checked : Qt::Unchecked;
    return {};
}

Qt::ItemFlags MeasurementsModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags usual = CountedListModel::flags(index);
    return index.isValid() && !session_.read_only() ? usual | Qt::ItemIsUserCheckable : usual;
}

bool MeasurementsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const auto row = static_cast<std::size_t>(index.row());
    if (role != Qt::CheckStateRole || row >= several_.measurements.size()) return false;
    SeveralGauge several = several_;
    GaugeMeasurement& measurement = several.measurements[row];
    const bool counts = value.toInt() == Qt::Checked;
    if (measurement.counts == counts) return false;
    measurement.counts = counts;
    change((counts ? tr("Count %1 again") : tr("Leave out %1")).arg(measurement_name(measurement)),
           std::move(several));
    return true;
}

QString MeasurementsModel::disagreement() const {
    return combined_ ? disagreement_words(several_, *combined_) : QString();
}

bool MeasurementsModel::has_room() const { return several_.measurements.size() < most_gauge_measurements; }

void MeasurementsModel::add(const GaugeMeasurement& measurement) {
    if (!has_room()) return;
    SeveralGauge several = several_;
    several.measurements.push_back(measurement);
    change(tr("Add %1").arg(measurement_name(measurement)), std::move(several));
}

void MeasurementsModel::replace(int row, const GaugeMeasurement& measurement) {
    SeveralGauge several = several_;
    several.measurements.at(static_cast<std::size_t>(row)) = measurement;
    change(tr("Change %1").arg(measurement_name(measurement)), std::move(several));
}

/// Without any, the gauge is that of the yarn's weight and the hook again.
void MeasurementsModel::remove(int row) {
    SeveralGauge several = several_;
    const auto place = several.measurements.begin() + row;
    const QString step = tr("Delete %1").arg(measurement_name(*place));
    several.measurements.erase(place);
    change(step, std::move(several));
}

void MeasurementsModel::change(const QString& step, SeveralGauge several) {
    session_.end_merging();
    session_.edit(step, [&several](Toy toy) {
        if (several.measurements.empty())
            toy.gauge = EstimatedGauge{toy.yarns.empty() ? YarnWeight::light : toy.yarns.front().weight};
        else
            toy.gauge = std::move(several);
        return toy;
    });
}

}  // namespace roundwright::app
