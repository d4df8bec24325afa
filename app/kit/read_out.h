#pragma once

#include <QLabel>

namespace roundwright::app {

/// A result in words: a label with a name that is heard before its text and not seen ("Size: 84 mm wide"). An
/// accessible name would be heard in place of the text, so a read-out has none.
class ReadOut : public QLabel {
    Q_OBJECT
  public:
    explicit ReadOut(const QString& name, QWidget* parent = nullptr);

    [[nodiscard]] const QString& name() const { return name_; }
    /// The name and the whole text, or whichever of the two there is.
    [[nodiscard]] QString spoken() const;

  protected:
    /// The text as it is heard: whole, where it is seen cut.
    [[nodiscard]] virtual QString text_spoken() const;
    /// `setText` tells by itself.
    void tell_change();

  private:
    QString name_;
};

}  // namespace roundwright::app
