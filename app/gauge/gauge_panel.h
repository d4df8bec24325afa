#pragma once

#include <map>

#include <QTimer>
#include <QWidget>

#include "app/session/document_session.h"
#include "render/background/background.h"

class QComboBox;
class QLabel;
class QStackedWidget;

namespace roundwright::app {

class CircleOffer;
class CirclePage;
class GivenPage;
class SeveralPage;
class StillLabel;
class SwatchPage;

/// Where the gauge comes from, and what it comes to: width and height of a stitch, with their range. While it
/// is not measured, the gauge circle is offered; afterwards, what a next measurement would help most.
class GaugePanel : public QWidget {
    Q_OBJECT
  public:
    /// `from_finished_piece` (may be null) is offered as a button.
    explicit GaugePanel(DocumentSession& session, QAction* from_finished_piece = nullptr,
                        QWidget* parent = nullptr);

    /// Brings the keyboard to the length of the gauge circle; asks for one more where others were measured.
    void ask_for_circle();
    /// The offer that is on show; null where the gauge is measured.
    [[nodiscard]] CircleOffer* offer() const;
    [[nodiscard]] SeveralPage& several() { return *several_; }
    /// What a next measurement would help; empty until it is worked out.
    [[nodiscard]] QString next() const;
    [[nodiscard]] bool busy() const { return next_later_.isActive() || task_.busy(); }

  Q_SIGNALS:
    /// The offered circle was measured, and the panel had the keyboard.
    void circle_measured();

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    void add_pages();
    [[nodiscard]] QWidget* page_with_offer(const QString& words, CircleOffer* offer);
    void lay_out(QAction* from_finished_piece);
    void choose_source(int index);
    [[nodiscard]] GaugeSource unmeasured(int kind) const;
    void take(const GaugeSource& source);
    void take_circle(const GaugeSource& source);
    void set_source(const GaugeSource& source);
    void show_toy();
    void show_page();
    void show_unmeasured();
    void show_pages();
    void show_result();
    void show_next_later();
    void work_out_next();

    DocumentSession& session_;
    QComboBox* source_;
    QStackedWidget* pages_;
    QLabel* result_;
    StillLabel* next_;
    SwatchPage* swatch_;
    CirclePage* circle_;
    GivenPage* given_;
    SeveralPage* several_;
    CircleOffer* offer_unknown_;
    CircleOffer* offer_estimate_;
    render::Background task_;
    QTimer next_later_;
    int asked_ = -1;    ///< the page that is being filled in and gives no gauge yet; -1: none
    GaugeSource seen_;  ///< of the toy, when it was shown last
    std::map<int, GaugeSource>
        measured_;  ///< by kind, what this toy had: looking at another kind loses nothing
};

}  // namespace roundwright::app
