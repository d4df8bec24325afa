#pragma once

#include <QObject>
#include <QVariant>

class QDBusVariant;

namespace roundwright::app {

/// What the desktop says its user wants: dark or light, and less motion. Asked of the desktop's settings
/// portal (org.freedesktop.portal.Settings); where there is none, the palette the program was started with
/// tells dark from light.
class SystemWishes : public QObject {
    Q_OBJECT
  public:
    /// Made on first use; the application object has to be there, with its palette untouched.
    [[nodiscard]] static SystemWishes& instance();

    [[nodiscard]] bool prefers_dark() const { return prefers_dark_; }
    [[nodiscard]] bool prefers_less_motion() const { return prefers_less_motion_; }

  Q_SIGNALS:
    void changed();

  private Q_SLOTS:
    void setting_changed(const QString& group, const QString& key, const QDBusVariant& value);

  private:
    explicit SystemWishes(QObject* parent);
    void ask(const QString& group, const QString& key);
    void take(const QString& group, const QString& key, const QVariant& value);

    bool prefers_dark_ = false;
    bool prefers_less_motion_ = false;
};

}  // namespace roundwright::app
