#pragma once

#include <memory>
#include <vector>

#include <QLayout>

namespace roundwright::app {

/// Items side by side at the left, in as many rows as the width takes: one row if all fit into it. Lengths in
/// pixels. It can be as narrow as its widest item.
class FlowLayout : public QLayout {
    Q_OBJECT
  public:
    explicit FlowLayout(QWidget* parent = nullptr);
    ~FlowLayout() override;

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] int count() const override;
    [[nodiscard]] QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;

    [[nodiscard]] Qt::Orientations expandingDirections() const override { return {}; }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;  ///< that of one row
    [[nodiscard]] QSize minimumSize() const override;
    void setGeometry(const QRect& place) override;

  private:
    /// Places the items if `places` them; the height that they take.
    int flow(const QRect& place, bool places) const;
    [[nodiscard]] QSize with_margins(QSize size) const;

    std::vector<std::unique_ptr<QLayoutItem>> items_;
};

}  // namespace roundwright::app
