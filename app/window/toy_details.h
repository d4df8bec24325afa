#pragma once

class QWidget;

namespace roundwright::app {

class DocumentSession;

/// Asks for the toy's title, its designer and notes; one undo step.
void ask_toy_details(DocumentSession& session, QWidget* window);

}  // namespace roundwright::app
