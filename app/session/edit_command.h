#pragma once

#include <QString>
#include <QUndoCommand>

#include "app/session/toy_delta.h"

namespace roundwright::app {

/// Who holds the toy that commands change.
class ToyOwner {
  public:
    virtual ~ToyOwner() = default;
    virtual void apply_delta(const ToyDelta& delta) = 0;
    virtual void revert_delta(const ToyDelta& delta) = 0;
};

/// One step of the undo stack. Steps with the same merge key, one right after the other, become one; one that
/// ends where it began drops out of the stack.
class EditCommand : public QUndoCommand {
  public:
    EditCommand(ToyOwner& owner, const QString& text, ToyDelta delta, const QString& merge_key);

    void redo() override { owner_.apply_delta(delta_); }
    void undo() override { owner_.revert_delta(delta_); }
    [[nodiscard]] int id() const override;
    bool mergeWith(const QUndoCommand* other) override;

  private:
    ToyOwner& owner_;
    ToyDelta delta_;
    QString merge_key_;
};

}  // namespace roundwright::app
