#pragma once

#include <map>

#include <QWidget>

#include "app/session/document_session.h"

class QComboBox;
class QLabel;
class QStackedWidget;

namespace roundwright::app {

class CirclePage;
class GivenPage;
class SwatchPage;

/// Where the gauge comes from, and what it comes to: width and height of a stitch, with their range.
class GaugePanel : public QWidget {
    Q_OBJECT
  public:
    /// `from_finished_piece` (may be null) is offered as a button.
    explicit GaugePanel(DocumentSession& session, QAction* from_finished_piece = nullptr,
                        QWidget* parent = nullptr);

  private:
    void add_pages();
    void lay_out(QAction* from_finished_piece);
    void choose_source(int index);
    [[nodiscard]] GaugeSource unmeasured(int kind) const;
    void take(const GaugeSource& source);
    void set_source(const GaugeSource& source);
    void show_toy();
    void show_page();
    void show_unmeasured();
    void show_pages();
    void show_result();

    DocumentSession& session_;
    QComboBox* source_;
    QStackedWidget* pages_;
    QLabel* result_;
    SwatchPage* swatch_;
    CirclePage* circle_;
    GivenPage* given_;
    int asked_ = -1;    ///< the page that is being filled in and gives no gauge yet; -1: none
    GaugeSource seen_;  ///< of the toy, when it was shown last
    std::map<int, GaugeSource>
        measured_;  ///< by kind, what this toy had: looking at another kind loses nothing
};

}  // namespace roundwright::app
