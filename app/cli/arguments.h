#pragma once

#include <map>
#include <optional>
#include <span>

#include <QString>
#include <QStringList>

namespace roundwright::app {

/// An option of a command: "--units UNIT", or, without a value, "--json".
struct Option {
    const char* name;     ///< without the dashes
    char letter;          ///< "-o"; 0 for none
    const char* value;    ///< what stands for its value in the help; null for a flag
    const char* choices;  ///< the values it may have, parted by "|"; null for any
    const char* what;     ///< one line
};

/// The arguments of a command, after its name.
class Arguments {
  public:
    [[nodiscard]] const QStringList& operands() const { return operands_; }
    [[nodiscard]] bool has(const QString& option) const { return options_.contains(option); }
    /// The option's value, or `usual` where it was not given.
    [[nodiscard]] QString value(const QString& option, const QString& usual = {}) const;

  private:
    friend struct ArgumentParser;
    QStringList operands_;
    std::map<QString, QString> options_;
};

/// What was understood, or a sentence on what was not.
struct ParsedArguments {
    Arguments arguments;
    std::optional<QString> problem;
};

/// Takes "--name", "--name value", "--name=value", "-o value" and operands in any order; after "--" all are
/// operands.
[[nodiscard]] ParsedArguments parse_arguments(const QStringList& words, std::span<const Option> options);

}  // namespace roundwright::app
