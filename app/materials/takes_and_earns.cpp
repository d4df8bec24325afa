#include "app/materials/takes_and_earns.h"

#include <QVBoxLayout>

#include "app/materials/earns_panel.h"
#include "app/materials/takes_panel.h"

namespace roundwright::app {

TakesAndEarns::TakesAndEarns(DocumentSession& session, QWidget* parent) : QWidget(parent) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(new TakesPanel(session));
    layout->addWidget(new EarnsPanel(session));
    layout->addStretch(1);
}

}  // namespace roundwright::app
