#pragma once

#include <vector>

#include <QObject>
#include <QPointer>
#include <QTimer>

class QWidget;

namespace roundwright::app {

class RingWidget;

/// The ring around whatever has the keyboard, the same for every kind of control: 2 px thick, outside the
/// control where there is room, in the accent, which stands at 3 to 1 on the grounds of both themes (WCAG
/// 2.2, 2.4.13). In lists and tables it is around the current item, inside it; where that is selected, with a
/// second band in the colour of selected text, so that one of the two stands out from any row.
///
/// It lies in the window above all controls, so that neither layouts nor styles have to leave room for it.
/// The 3D view has a ring of its own (render/raster/scene_frame.h), since nothing lies above a native window.
class FocusRing : public QObject {
    Q_OBJECT
  public:
    /// Follows the focus of the program from now on, once however often it is called.
    static void follow_focus();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    explicit FocusRing(QObject* parent);
    void follow(QWidget* widget);
    void watch();
    void place();

    QPointer<QWidget> focused_;
    QPointer<RingWidget> ring_;
    std::vector<QPointer<QObject>> watched_;  ///< whose moves move the ring
    QTimer place_later_;
};

}  // namespace roundwright::app
