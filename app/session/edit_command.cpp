#include "app/session/edit_command.h"

#include <utility>

namespace roundwright::app {

EditCommand::EditCommand(ToyOwner& owner, const QString& text, ToyDelta delta, const QString& merge_key)
    : QUndoCommand(text), owner_(owner), delta_(std::move(delta)), merge_key_(merge_key) {}

int EditCommand::id() const { return merge_key_.isEmpty() ? -1 : 1; }

bool EditCommand::mergeWith(const QUndoCommand* other) {
    const auto* next = static_cast<const EditCommand*>(other);
    if (next->merge_key_ != merge_key_) return false;
    delta_ = ToyDelta(delta_.before(), next->delta_.after());
    setText(next->text());
    setObsolete(delta_.empty());
    return true;
}

}  // namespace roundwright::app
