#pragma once

#include <QHash>
#include <QObject>
#include <QVariant>

class QDBusVariant;

namespace roundwright::app {

/// What the desktop says its user wants: dark or light, more contrast, less motion, larger text. Asked of the
/// desktop's settings portal (org.freedesktop.portal.Settings), which also tells of each change; where there
/// is none, the palette the program was started with tells dark from light.
class SystemWishes : public QObject {
    Q_OBJECT
  public:
    /// Made on first use; the application object has to be there, with its palette untouched.
    [[nodiscard]] static SystemWishes& instance();

    [[nodiscard]] bool prefers_dark() const { return prefers_dark_; }
    [[nodiscard]] bool prefers_less_motion() const;
    [[nodiscard]] bool prefers_more_contrast() const;
    /// How much larger the desktop's text is than when the program started. What it was then is in the font
    /// that Qt gave, and where Qt follows a change by the screen's resolution, this stays 1.
    [[nodiscard]] double text_growth() const;

  Q_SIGNALS:
    void changed();

  private Q_SLOTS:
    void setting_changed(const QString& group, const QString& key, const QDBusVariant& value);

  private:
    explicit SystemWishes(QObject* parent);
    void ask(const QString& group, const QString& key);
    void take(const QString& group, const QString& key, const QVariant& value);

    bool prefers_dark_ = false;
    QHash<QString, QVariant> told_;   ///< by group and key
    double text_scale_at_start_ = 0;  ///< 0: not told yet
    double resolution_at_start_ = 0;  ///< dots per inch that Qt reckons with for text
};

}  // namespace roundwright::app
