#pragma once

#include <QFontMetrics>
#include <QObject>
#include <QString>

namespace roundwright::app {

/// Text is text, in every window and dialog of the program and of Qt: nothing in it is taken for markup,
/// links or pictures, whoever wrote it.
/// - Labels, messages and tool tips show their text as it is. Where the program itself means markup it says
/// so
///   (`Qt::RichText`), in app/window/help alone.
/// - Messages and tool tips show what is quoted in them by the rules of `plain_message`, and tool tips break
/// into lines.
class PlainTexts : public QObject {
    Q_OBJECT
  public:
    /// From now on, for the whole program; more than once is as good as once.
    static void hold();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    explicit PlainTexts(QObject* parent);
};

/// A text for a menu, button or tab, where an "&" would mark the next letter.
[[nodiscard]] QString without_mnemonics(QString text);

/// A tool tip: lines of at most 100 letters and so many pixels, twenty of them, the last one ending in an
/// ellipsis if more would follow.
[[nodiscard]] QString tip_lines(const QString& text, const QFontMetrics& font, int width);

}  // namespace roundwright::app
