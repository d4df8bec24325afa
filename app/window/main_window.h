#pragma once

#include <functional>
#include <initializer_list>
#include <utility>

#include <QMainWindow>

#include "app/files/autosave.h"
#include "app/files/last_chances.h"
#include "app/kit/theme.h"
#include "app/on_disk/file_follower.h"
#include "app/rounds/rounds_model.h"
#include "app/session/document_session.h"
#include "app/versions/version_keeper.h"

class QLabel;
class QSplitter;

namespace roundwright::app {

class Announcer;
class ChartWindow;
class ChecksList;
class DocumentFiles;
class ExportActions;
class FacePanel;
class FastEntryLine;
class NoticeBar;
class OwnPieceActions;
class PanelColumn;
class PatternPreview;
class PieceActions;
class PreferenceActions;
class GaugeActions;
class ReshapeActions;
class RoundActions;
class RoundsView;
struct ShapeActions;
class ShapePanel;
class PatternTextActions;
class VersionActions;
class WindowParts;
class WorkAlongActions;
class WholeToy;
class WorkArea;

/// The one window: rounds, shape and panels side by side, the fast entry line and the checks below.
class MainWindow : public QMainWindow {
    Q_OBJECT
  public:
    /// `state_folder`: where autosave keeps its notes; empty: the usual place.
    explicit MainWindow(DocumentSession& session, const QString& state_folder = {},
                        QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Opens the file; with none, offers what a crash left, or begins with a first or an empty toy.
    void begin(const QString& path);

    [[nodiscard]] DocumentSession& session() { return session_; }
    [[nodiscard]] RoundsView& rounds_view() { return *rounds_view_; }
    [[nodiscard]] RoundsModel& rounds_model() { return *rounds_model_; }
    [[nodiscard]] ShapePanel& shape() { return *shape_; }
    [[nodiscard]] WholeToy& whole_toy() { return *whole_toy_; }
    [[nodiscard]] FastEntryLine& fast_entry() { return *fast_entry_; }
    [[nodiscard]] ChecksList& checks() { return *checks_; }
    [[nodiscard]] PanelColumn& panels() { return *panels_; }
    [[nodiscard]] FacePanel& face() { return *face_; }
    [[nodiscard]] DocumentFiles& files() { return *files_; }
    [[nodiscard]] Autosave& autosave() { return autosave_; }
    [[nodiscard]] VersionKeeper& versions() { return versions_; }
    /// Where what lasts is said: put up by its cause, taken down when that is gone.
    [[nodiscard]] NoticeBar& notices() { return *notices_; }
    [[nodiscard]] FileFollower& follower() { return follower_; }
    [[nodiscard]] Announcer& announcer() { return *announcer_; }

  protected:
    void showEvent(QShowEvent* event) override;
    void closeEvent(QCloseEvent* event) override;

  private:
    void build_menus();
    void fill_edit_menu(QMenu* menu);
    void name_as_text(QAction& action, const QString& what, void (QUndoStack::*changed)(const QString&));
    void fill_pattern_menu(QMenu* menu);
    void fill_help_menu(QMenu* menu);
    void fill_go_menu(QMenu* menu);
    /// Of the catalogue, in this window and in the menu.
    void add_actions(QMenu* menu,
                     std::initializer_list<std::pair<const char*, std::function<void()>>> actions);
    void add_whole_toy();
    void order_parts();
    void show_shortcuts();
    void say_which_keys_are_lost();
    void fill_panels();
    void show_preview();
    void show_chart();
    void lay_out();
    [[nodiscard]] QWidget* rounds_side();
    void fill_status_bar();
    void show_counts();
    void follow_session();
    void follow_keeping();
    void say_what_was_left();
    void show_name();
    void tell(const QString& text);
    void announce();
    void show_said(const QString& words);
    void set_up_scene();
    [[nodiscard]] bool wants_less_motion() const;
    [[nodiscard]] bool open_last_toy();
    void bring_back_typing();
    void bring_back_last(const PendingEntry& pending);
    [[nodiscard]] PendingEntry pending_entry() const;
    void bring_back(const PendingEntry& pending);
    void bring_back_dialog(const std::vector<TypedText>& texts);
    void go_to_rounds(Qt::FocusReason reason);
    void go_up_to_rounds();
    void offer_first_steps();
    void restore_places();
    void keep_places() const;

    DocumentSession& session_;
    Autosave autosave_;
    VersionKeeper versions_;
    LastChances last_chances_;
    FileFollower follower_;
    Theme theme_;
    Announcer* announcer_;
    NoticeBar* notices_;
    RoundsModel* rounds_model_;
    RoundsView* rounds_view_;
    RoundActions* round_actions_;
    PieceActions* piece_actions_;
    ReshapeActions* reshape_actions_;
    OwnPieceActions* own_pieces_;
    GaugeActions* gauge_actions_;
    WorkAlongActions* work_along_actions_;
    ShapeActions* shape_actions_;
    ExportActions* export_actions_;
    DocumentFiles* files_;
    VersionActions* version_actions_;
    ShapePanel* shape_;
    FastEntryLine* fast_entry_;
    ChecksList* checks_;
    PanelColumn* panels_;
    PreferenceActions* preference_actions_;
    FacePanel* face_ = nullptr;
    WindowParts* parts_ = nullptr;
    QWidget* rounds_side_ = nullptr;
    WholeToy* whole_toy_ = nullptr;
    PatternPreview* preview_ = nullptr;
    PatternTextActions* pattern_text_actions_ = nullptr;
    ChartWindow* chart_ = nullptr;
    WorkArea* work_area_ = nullptr;
    QSplitter* rows_ = nullptr;  ///< the checks below all else
    QLabel* counts_ = nullptr;
    bool turn_once_ = false;
};

}  // namespace roundwright::app
