#include "app/versions/version.h"

#include <array>
#include <utility>

#include <QCryptographicHash>
#include <QRegularExpression>

namespace roundwright::app {
namespace {

const auto time_format = QStringLiteral("yyyyMMdd'T'HHmmsszzz'Z'");

constexpr std::array<std::pair<VersionKind, const char*>, 3> kind_names{
    {{VersionKind::found, "found"}, {VersionKind::saved, "saved"}, {VersionKind::not_saved, "not_saved"}}};

QString name_of(VersionKind kind) {
    for (const auto& [known, name] : kind_names) {
        if (known == kind) return QString::fromLatin1(name);
    }
    return {};
}

std::optional<VersionKind> kind_named(const QString& name) {
    for (const auto& [kind, known] : kind_names) {
        if (name == QLatin1String(known)) return kind;
    }
    return std::nullopt;
}

}  // namespace

QString version_file_name(const Version& version) {
    return QStringLiteral("%1-%2-%3-%4.roundwright")
        .arg(version.number, 8, 10, QLatin1Char('0'))
        .arg(version.when.toUTC().toString(time_format), name_of(version.kind),
             QString::fromLatin1(version.sha256));
}

std::optional<Version> version_named(const QString& file_name) {
    static const QRegularExpression pattern(QRegularExpression::anchoredPattern(
        QStringLiteral("([0-9]{8,19})-([0-9]{8}T[0-9]{9}Z)-([a-z_]+)-([0-9a-f]{64})\\.roundwright")));
    const auto match = pattern.match(file_name);
    if (!match.hasMatch()) return std::nullopt;
    const auto kind = kind_named(match.captured(3));
    auto when = QDateTime::fromString(match.captured(2), time_format);
    if (!kind || !when.isValid()) return std::nullopt;
    when.setTimeSpec(Qt::UTC);
    return Version{match.captured(1).toULongLong(), when, *kind, match.captured(4).toLatin1(), {}, 0};
}

QByteArray content_sha256(const QByteArray& bytes) {
    return QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex();
}

}  // namespace roundwright::app
