#include "viewmodels/search.h"

#include <algorithm>

#include "viewmodels/wording.h"

namespace burrow {
namespace {

QStringList namesOf(const Profile& profile) {
    QStringList names{toQt(profile.name)};
    for (const auto& name : profile.otherNames) names.append(toQt(name));
    for (const auto& name : profile.tradeNames) names.append(toQt(name));
    return names;
}

QString withoutLeadingZeros(const QString& number) {
    qsizetype zeros = 0;
    while (zeros + 1 < number.size() && number[zeros] == u'0') ++zeros;
    return number.mid(zeros).toCaseFolded();
}

}  // namespace

QString searchText(const Resident& resident, const Desk& desk) {
    const auto& subject = resident.subject();
    const auto number = toQt(subject.number);
    QStringList parts{number, toQt(desk.room()->info().code) + '-' + number, toQt(subject.species),
                      placeText(resident.kept.place, desk), toQt(subject.source),
                      toQt(subject.note)};
    if (resident.profile != nullptr) parts += namesOf(*resident.profile);
    return parts.join('\n').toCaseFolded();
}

Search::Search(const QString& typed, const Profiles& profiles)
    : words_(typed.toCaseFolded().split(' ', Qt::SkipEmptyParts)),
      species_(words_.isEmpty() ? nullptr : profiles.find(typed.trimmed().toStdString())) {}

bool Search::fits(const Resident& resident, const QString& text) const {
    if (species_ != nullptr && resident.profile == species_) return true;
    return std::all_of(words_.begin(), words_.end(),
                       [&](const QString& word) { return text.contains(word); });
}

std::vector<ResidentPtr> numbered(const Room& room, const QString& number) {
    const auto wanted = number.trimmed();
    std::vector<ResidentPtr> exact;
    std::vector<ResidentPtr> alike;
    if (wanted.isEmpty()) return exact;
    for (const auto& resident : room.residents()) {
        const auto own = toQt(resident->subject().number);
        if (own == wanted) exact.push_back(resident);
        if (withoutLeadingZeros(own) == withoutLeadingZeros(wanted)) alike.push_back(resident);
    }
    return exact.empty() ? alike : exact;
}

QStringList speciesLike(const QString& typed, const Profiles& profiles, int most) {
    const auto wanted = typed.simplified().toCaseFolded();
    QStringList found;
    if (wanted.isEmpty()) return found;
    for (const auto& profile : profiles.all()) {
        const auto names = namesOf(profile);
        const bool fits = std::any_of(names.begin(), names.end(), [&](const QString& name) {
            return name.toCaseFolded().contains(wanted);
        });
        if (fits) found.append(toQt(profile.name));
    }
    if (const auto* species = profiles.find(wanted.toStdString())) {
        found.removeAll(toQt(species->name));
        found.prepend(toQt(species->name));
    }
    for (const auto& name : profiles.suggest(wanted.toStdString(), static_cast<std::size_t>(most))) {
        if (!found.contains(toQt(name))) found.append(toQt(name));
    }
    return found.mid(0, most);
}

}  // namespace burrow
