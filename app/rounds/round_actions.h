#pragma once

#include <vector>

#include <QObject>

#include "app/rounds/round_edits.h"
#include "app/session/document_session.h"

class QAction;
class QMenu;

namespace roundwright::app {

class RoundsView;

/// The Round menu, and cut, copy and paste of rounds for the Edit menu. All work on the selected rounds.
class RoundActions : public QObject {
    Q_OBJECT
  public:
    RoundActions(DocumentSession& session, RoundsView& view, QWidget* window);

    void fill(QMenu* menu);
    [[nodiscard]] QList<QAction*> clipboard_actions() const { return {cut_, copy_, paste_, select_all_}; }
    [[nodiscard]] QList<QAction*> row_actions() const { return {add_after_, repeat_, up_, down_, remove_}; }

  Q_SIGNALS:
    /// Text on the clipboard that is no copied rounds: counts or a pattern in words.
    void text_pasted(const QString& text);

  private:
    /// A copy: edits change the selection while they are made.
    [[nodiscard]] std::vector<int> selected() const { return session_.selection(); }
    [[nodiscard]] int place_after_selection() const;
    void make_row_actions(QWidget* window);
    void make_clipboard_actions(QWidget* window);
    void make_working_actions(QWidget* window);
    void fill_stitches(QMenu* menu);
    void fill_loops(QMenu* menu);
    void fill_spacing(QMenu* menu);
    void fill_yarns(QMenu* menu);
    void copy_rounds();
    void paste_rounds();
    void edit_note();
    void mend();
    void stagger();
    void update_mend();
    void update_enabled();

    DocumentSession& session_;
    RoundEdits edits_;
    RoundsView& view_;
    QWidget* window_;
    QList<QAction*> of_rounds_;  ///< need a selected round
    QAction* add_after_ = nullptr;
    QAction* add_before_ = nullptr;
    QAction* repeat_ = nullptr;
    QAction* remove_ = nullptr;
    QAction* up_ = nullptr;
    QAction* down_ = nullptr;
    QAction* cut_ = nullptr;
    QAction* copy_ = nullptr;
    QAction* paste_ = nullptr;
    QAction* select_all_ = nullptr;
    QAction* count_ = nullptr;
    QAction* words_ = nullptr;
    QAction* evenly_ = nullptr;
    QAction* flat_ = nullptr;
    QAction* stagger_ = nullptr;
    QAction* note_ = nullptr;
    QAction* mend_ = nullptr;
};

}  // namespace roundwright::app
