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

QString withoutCode(const QString& number, const Room& room) {
    const auto code = toQt(room.info().code) + '-';
    return code.size() > 1 && number.startsWith(code, Qt::CaseInsensitive) ? number.mid(code.size())
                                                                           : number;
}

bool isWholeWord(const QString& text, qsizetype at, qsizetype size) {
    const auto isGap = [&](qsizetype i) {
        return i < 0 || i >= text.size() || !text[i].isLetterOrNumber();
    };
    return isGap(at - 1) && isGap(at + size);
}

bool holdsWholeWord(const QString& text, const QString& word) {
    for (auto at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1)) {
        if (isWholeWord(text, at, word.size())) return true;
    }
    return false;
}

}  // namespace

QString searchText(const Resident& resident, const Desk& desk) {
    const auto& subject = resident.subject();
    const auto number = toQt(subject.number);
    QStringList parts{number,
                      toQt(desk.room()->info().code) + '-' + number,
                      toQt(subject.species),
                      placeText(resident.kept.place, desk),
                      toQt(subject.source),
                      toQt(subject.note)};
    if (resident.profile != nullptr) parts += namesOf(*resident.profile);
    return parts.join('\n').toCaseFolded();
}

Search::Search(const QString& typed, const Desk& desk)
    : words_(typed.toCaseFolded().split(' ', Qt::SkipEmptyParts)) {
    if (words_.isEmpty() || !desk.room()) return;
    number_ = withoutLeadingZeros(withoutCode(typed.trimmed(), *desk.room()));
    species_ = desk.profiles().find(typed.trimmed().toStdString());
}

bool Search::fits(const Resident& resident, const QString& text) const {
    if (species_ != nullptr && resident.profile == species_) return true;
    if (withoutLeadingZeros(toQt(resident.subject().number)) == number_) return true;
    return std::all_of(words_.begin(), words_.end(), [&](const QString& word) {
        const bool isPart = word.size() > 1 || words_.size() == 1;
        return isPart ? text.contains(word) : holdsWholeWord(text, word);
    });
}

std::vector<ResidentPtr> numbered(const Room& room, const QString& number) {
    const auto whole = number.trimmed();
    const auto wanted = withoutCode(whole, room);
    const auto those = [&](auto fits) {
        std::vector<ResidentPtr> found;
        const auto all = room.residents();
        std::copy_if(all.begin(), all.end(), std::back_inserter(found),
                     [&](const ResidentPtr& one) { return fits(toQt(one->subject().number)); });
        return found;
    };
    if (wanted.isEmpty()) return {};
    auto found = those([&](const QString& own) { return own == whole; });
    if (found.empty()) found = those([&](const QString& own) { return own == wanted; });
    if (!found.empty()) return found;
    return those([bare = withoutLeadingZeros(wanted)](const QString& own) {
        return withoutLeadingZeros(own) == bare;
    });
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
    for (const auto& name :
         profiles.suggest(wanted.toStdString(), static_cast<std::size_t>(most))) {
        if (!found.contains(toQt(name))) found.append(toQt(name));
    }
    return found.mid(0, most);
}

}  // namespace burrow
