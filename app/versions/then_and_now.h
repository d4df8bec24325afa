#pragma once

#include <memory>
#include <optional>

#include <QWidget>

#include "app/kit/preferences.h"
#include "app/versions/rounds_then_and_now_model.h"
#include "core/reshape/silhouette.h"
#include "render/background/background.h"

class QBoxLayout;
class QComboBox;
class QLabel;

namespace roundwright::app {

class OutlineView;

/// The pieces of two states of a toy to look at, one at a time: rounds side by side, and the stuffed outlines
/// over each other.
class ThenAndNow : public QWidget {
    Q_OBJECT
  public:
    explicit ThenAndNow(const Preferences& preferences, QWidget* parent = nullptr);

    /// Shows the first piece that differs, or the one that the maker chose to look at.
    void show_toys(std::shared_ptr<const Toy> then, std::shared_ptr<const Toy> now);
    void show_nothing();
    /// The rounds over the outlines, for large type.
    void stack();
    [[nodiscard]] bool busy() const { return task_.busy(); }
    [[nodiscard]] QString legend() const;

  private:
    /// A piece then, now or both.
    struct Pair {
        std::optional<std::size_t> then;
        std::optional<std::size_t> now;
        QString words;
        bool differs = false;
    };
    struct Outlines {
        std::optional<Silhouette> then;
        std::optional<Silhouette> now;
        bool round = true;  ///< false: one of them has a shape that no outline shows
    };

    void build(const Preferences& preferences);
    void find_pairs();
    void show_piece();
    void take(const Outlines& outlines);
    [[nodiscard]] static std::optional<Silhouette> outline(const Toy& toy, std::size_t piece,
                                                           const std::stop_token& stop, bool& round);

    std::shared_ptr<const Toy> then_;
    std::shared_ptr<const Toy> now_;
    std::vector<Pair> pairs_;
    QString looked_at_;  ///< the piece that the maker chose; empty: none yet
    RoundsThenAndNowModel* rounds_;
    QComboBox* pieces_;
    QBoxLayout* both_ = nullptr;  ///< rounds and outlines
    OutlineView* outline_;
    QLabel* legend_;
    render::Background task_;
};

}  // namespace roundwright::app
