#pragma once

#include <map>

#include <QLabel>
#include <QLineEdit>
#include <QWidget>

#include "app/rounds/entry_reading.h"
#include "app/session/document_session.h"

class QGridLayout;
class QUndoCommand;

namespace roundwright::app {

/// The line under the table that takes many rounds at once. While it is typed it says what it understood, and
/// the shape shows what that would make. Undoing rounds that were added here, from here, brings back the
/// words they were typed in, to be put right; redoing takes them away again.
class FastEntryLine : public QWidget {
    Q_OBJECT
  public:
    explicit FastEntryLine(DocumentSession& session, QWidget* parent = nullptr);

    /// Takes a pasted text as if it had been typed, and waits for Enter; a pattern of several lines in words
    /// is handed on.
    void take_text(const QString& text);
    void focus_line();
    /// Puts back what stood in the line, ready to be gone on with.
    void bring_back(const QString& typed);
    [[nodiscard]] QLineEdit* line() { return line_; }
    [[nodiscard]] QString understood() const { return understood_->text(); }
    /// Of what stands in the line: "4 rounds of 24", and what is wrong with it; empty: nothing.
    [[nodiscard]] const QString& what_was_understood() const { return reading_.understood; }
    [[nodiscard]] const QString& problem() const { return reading_.problem; }

  Q_SIGNALS:
    void rounds_added();
    void not_understood(const QString& why);  ///< Enter was pressed, and nothing could be added
    void pattern_pasted(const QString& text);
    void left_upwards();  ///< by the Up key

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    void arrange();
    void read();
    void show_understood();
    void try_out();
    void add_rounds();
    [[nodiscard]] QString typed() const;
    void remember_step(const QString& typed);
    void follow_steps(int step);

    /// A step that was made here.
    struct Added {
        const QUndoCommand* step;
        QString typed;
    };

    DocumentSession& session_;
    QLabel* name_ = nullptr;
    QLineEdit* line_;
    QLabel* understood_;
    QGridLayout* layout_ = nullptr;
    bool below_ = false;  ///< what was understood, under the line
    EntryReading reading_;
    std::map<int, Added> added_;  ///< by how many steps there are after it
    QString brought_back_;        ///< by an undo, and not changed since; empty: nothing
    bool adding_ = false;
};

}  // namespace roundwright::app
