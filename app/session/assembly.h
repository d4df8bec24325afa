#pragma once

#include <memory>
#include <vector>

#include <QObject>

#include "app/session/assembled_toy.h"
#include "app/session/studies.h"
#include "render/background/background.h"

namespace roundwright::app {

/// Puts the toy together in the background, while somebody wants it: whenever the shapes of all its pieces
/// are known for the toy as it is now, and something of what it is made from has changed since.
class Assembly : public QObject {
    Q_OBJECT
  public:
    explicit Assembly(const Studies& studies, QObject* parent = nullptr);

    void set_wanted(bool wanted);
    void follow(const Toy& toy);
    /// A shape came in.
    void shape_came() { bring_up_to_date(); }
    /// All pieces together get coarser to stay below this many triangles.
    void set_most_triangles(std::size_t triangles);
    /// Another toy is opened.
    void clear();

    /// The last one that was made; null: none so far.
    [[nodiscard]] const std::shared_ptr<const AssembledToy>& toy() const { return made_; }
    /// Whether that is of the toy as it is now.
    [[nodiscard]] bool is_up_to_date() const { return made_ != nullptr && made_of_ == wanted_; }

  Q_SIGNALS:
    /// Made anew, or measured.
    void changed();
    void failed(const QString& why);

  private:
    /// What an assembled toy depends on.
    struct Inputs {
        std::shared_ptr<const Toy> toy;
        std::vector<std::shared_ptr<const PieceStudy>> studies;
        std::size_t most_triangles = 0;

        bool operator==(const Inputs& other) const;
    };
    void bring_up_to_date();
    void start();
    void take(const Inputs& of, std::shared_ptr<const AssembledToy> made);
    void measure();
    [[nodiscard]] bool find_studies();

    const Studies& studies_;
    render::Background background_;
    render::Background measuring_;
    Inputs wanted_, made_of_;
    std::shared_ptr<const AssembledToy> made_;
    bool is_wanted_ = false;
    bool running_ = false;
};

}  // namespace roundwright::app
