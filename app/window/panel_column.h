#pragma once

#include <vector>

#include <QScrollArea>
#include <QToolButton>
#include <QVBoxLayout>
#include <QWidget>

#include "app/kit/flow_layout.h"

namespace roundwright::app {

/// The column of titled sections at the right of the window. One is open at a time; a click on its title
/// folds it. Which one was open is remembered by its key. The column is always as wide, whichever is open and
/// whatever it says, so that nothing beside it moves. Where a window has no room for that, it can be a strip
/// of signs while all are folded.
class PanelColumn : public QWidget {
    Q_OBJECT
  public:
    explicit PanelColumn(QWidget* parent = nullptr);

    /// `key` names the section in the settings, `icon_name` one of the program's icons. The column takes the
    /// panel over.
    void add_section(const QString& key, const QString& title, const QString& icon_name, QWidget* panel);
    void open_section(const QString& key);
    /// Opens it and puts the focus into its first field.
    void go_to_section(const QString& key);
    /// To the panel that is open, or to the first title; false: there is none.
    bool take_keyboard();
    void fold_all();
    [[nodiscard]] QString open_key() const { return open_key_; }
    [[nodiscard]] QStringList keys() const;
    [[nodiscard]] QString title(const QString& key) const;

    /// Opens the section that was open last.
    void restore();
    /// What a panel may take in width, its margins included.
    [[nodiscard]] int panel_width() const;

    /// As a strip, the column shows signs alone, and beside that of an open section its title, over it. Which
    /// section is open is remembered for the column alone.
    void set_strip(bool strip);
    /// With a panel open, in pixels.
    [[nodiscard]] int column_width() const;
    /// As a strip with all folded, in pixels.
    [[nodiscard]] int strip_width() const;

  Q_SIGNALS:
    void section_opened(const QString& key);  ///< empty: all are folded

  protected:
    void changeEvent(QEvent* event) override;

  private:
    struct Section {
        QString key;
        QString icon_name;
        QToolButton* title = nullptr;
        QScrollArea* body = nullptr;
    };
    void show_open(const QString& key);
    void fix_width();
    void place_titles();
    void remember() const;

    std::vector<Section> sections_;
    FlowLayout* signs_;  ///< the titles, while they stand over a panel
    QVBoxLayout* layout_;
    QString open_key_;
    bool strip_ = false;
};

}  // namespace roundwright::app
