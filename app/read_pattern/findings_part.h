#pragma once

#include <vector>

#include <QWidget>

#include "core/language/round/read_diagnostic.h"

class QListView;
class QListWidget;

namespace roundwright::app {

class MendsModel;

/// A finding with its place: "Line 4, column 20: The count says 20, but ...".
[[nodiscard]] QString finding_words(const ReadDiagnostic& finding);

/// What was found in a text, and beside it the mends of the finding that is current, the likeliest marked.
/// Enter makes the mend that is marked, once for each time it is pressed; Enter on a finding goes to its
/// mends.
class FindingsPart : public QWidget {
    Q_OBJECT
  public:
    explicit FindingsPart(QWidget* parent = nullptr);

    /// The current one stays in its place, as far as there are so many.
    void set_findings(const std::vector<ReadDiagnostic>& findings);
    [[nodiscard]] int count() const { return static_cast<int>(findings_.size()); }
    /// An index; -1: none.
    [[nodiscard]] int current() const;
    void set_current(int finding);
    /// Index of the mend of the current finding that is marked; -1: none.
    [[nodiscard]] int marked_mend() const;
    /// The keyboard goes to the mends; false: there are none.
    bool go_to_mends();

  Q_SIGNALS:
    /// By the maker, in the list.
    void picked(int finding);
    void fix_wanted();
    /// Enter on a finding that has no mends.
    void text_wanted();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void show_mends();

    std::vector<ReadDiagnostic> findings_;
    QListWidget* list_;
    QListView* mends_;
    MendsModel* model_;
};

}  // namespace roundwright::app
