#pragma once

#include <QString>

class QAccessibleInterface;

namespace roundwright::app {

/// Tells the desktop's accessibility bus that the description of `about` is `words` now, as AT-SPI2 defines
/// the event (Event.Object PropertyChange "accessible-description", the words as its data). Up to 6.7 Qt sends
/// the object's path in place of the words, from which a screen reader can say nothing. Where there is no such
/// bus it does nothing.
void tell_at_spi_of_description(QAccessibleInterface& about, const QString& words);

}  // namespace roundwright::app
