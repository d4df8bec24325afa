#pragma once

#include <memory>

#include <QDialog>

#include "app/session/document_session.h"
#include "app/versions/version_keeper.h"
#include "app/versions/versions_model.h"
#include "render/background/background.h"

class QDialogButtonBox;
class QLabel;
class QListWidget;
class QPushButton;
class QStackedWidget;
class QTableView;

namespace roundwright::app {

class ThenAndNow;

/// The earlier versions of the toy in the window: what has changed since each, to look at and to take back as
/// one undo step, or to save elsewhere. Nothing changes before.
class VersionsDialog : public QDialog {
    Q_OBJECT
  public:
    VersionsDialog(DocumentSession& session, VersionKeeper& keeper, QWidget* parent = nullptr);

    /// Versions are still being read.
    [[nodiscard]] bool busy() const;
    [[nodiscard]] VersionsModel& model() { return *model_; }
    /// What stands in the place of the list where there is nothing to list; empty otherwise.
    [[nodiscard]] QString empty_words() const;
    /// What has changed since the chosen version, a line each.
    [[nodiscard]] QString changes() const;

    void accept() override;

  private:
    void build();
    QWidget* list_side();
    QWidget* changes_side();
    void make_buttons();
    void connect_all();
    void load();
    void show_empty(const QString& words);
    void read_all();
    [[nodiscard]] std::shared_ptr<const ReadVersion> chosen() const;
    [[nodiscard]] QString chosen_when() const;
    void show_chosen();
    void show_changes(const ReadVersion* read);
    void update_buttons(const ReadVersion* read);
    [[nodiscard]] QString ask_copy_path();
    void save_copy();
    void tell(const QString& what, const QString& why);
    void forget();

    DocumentSession& session_;
    VersionKeeper& keeper_;
    std::shared_ptr<const Toy> now_;
    VersionsModel* model_;
    render::Background reading_;

    QStackedWidget* pages_;
    QLabel* empty_;
    QTableView* list_;
    QLabel* since_;
    QListWidget* changes_;
    ThenAndNow* then_and_now_;
    QDialogButtonBox* buttons_;
    QPushButton* take_back_;
    QPushButton* save_copy_;
    QPushButton* forget_;
};

}  // namespace roundwright::app
