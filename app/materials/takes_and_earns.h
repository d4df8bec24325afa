#pragma once

#include <QWidget>

#include "app/session/document_session.h"

namespace roundwright::app {

/// What a toy takes, and below it what it earns: one panel, since small screens have room for few signs.
class TakesAndEarns : public QWidget {
    Q_OBJECT
  public:
    explicit TakesAndEarns(DocumentSession& session, QWidget* parent = nullptr);
};

}  // namespace roundwright::app
