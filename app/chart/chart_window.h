#pragma once

#include <vector>

#include <QDialog>

#include "app/session/document_session.h"
#include "render/chart/chart_layout.h"

class QComboBox;

namespace roundwright::render {
class RoundChartView;
}

namespace roundwright::app {

/// The symbol chart of the current piece, part by part: it follows edits and the selected rounds, selects the
/// round that is clicked, and is written as SVG.
class ChartWindow : public QDialog {
    Q_OBJECT
  public:
    explicit ChartWindow(DocumentSession& session, QWidget* parent = nullptr);

    [[nodiscard]] int parts() const { return static_cast<int>(parts_.size()); }
    /// The part on show as an SVG file with its key; empty if there is none.
    [[nodiscard]] QByteArray svg() const;

  private:
    void build();
    void follow();
    void show_part();
    void save_svg();

    DocumentSession& session_;
    std::vector<render::ChartPart> parts_;
    QComboBox* part_;
    render::RoundChartView* view_;
};

}  // namespace roundwright::app
