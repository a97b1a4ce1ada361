#include "viewmodels/specieslike.h"

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

}  // namespace

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
    for (const auto& name :
         profiles.suggest(wanted.toStdString(), static_cast<std::size_t>(most))) {
        if (!found.contains(toQt(name))) found.append(toQt(name));
    }
    return found.mid(0, most);
}

}  // namespace burrow
