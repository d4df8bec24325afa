#pragma once

#include <optional>
#include <vector>

#include <QDialog>
#include <QTimer>

#include "app/print/pattern_files.h"
#include "app/session/document_session.h"
#include "render/background/background.h"
#include "render/pages/pattern_pages.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QListView;
class QMenu;

namespace roundwright::app {

class Announcer;
class PagesView;
class ThumbnailsModel;

/// The pattern as it will be printed, following every edit of the toy, with what goes into it and what it
/// still leaves open.
class PatternPreview : public QDialog {
    Q_OBJECT
  public:
    explicit PatternPreview(DocumentSession& session, QWidget* parent = nullptr);

    [[nodiscard]] render::PatternOptions options() const;
    [[nodiscard]] PagesView& pages_view() { return *view_; }

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    void build();
    QWidget* choices();
    QWidget* buttons();
    void save(PatternForm form);
    void fill_view_menu(QMenu* menu);
    void follow();
    void compose_soon();
    void compose();
    void show_open_questions();
    void show_pages(const render::PatternPages& pages);
    void keep_choices() const;
    void restore_choices();

    DocumentSession& session_;
    render::Background composing_;
    QTimer soon_;
    Announcer* announcer_;
    std::optional<render::PatternPages> pages_;
    PagesView* view_;
    ThumbnailsModel* thumbnails_;
    QListView* thumbnail_list_;
    QComboBox* paper_;
    QComboBox* terms_;
    QComboBox* units_;
    std::vector<QCheckBox*> contents_;
    QLabel* open_questions_;
    QLabel* state_;
};

}  // namespace roundwright::app
