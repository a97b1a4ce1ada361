#include "viewmodels/animalfacts.h"

#include <algorithm>

#include "documents/cautions.h"
#include "husbandry/gaps.h"
#include "room/sheets.h"
#include "room/tables.h"
#include "sexing/judge.h"
#include "viewmodels/answerwords.h"
#include "viewmodels/deeds.h"

namespace burrow {
namespace {

QVariantMap line(const QString& name, const QString& value, const QString& sub = {}) {
    return {{QStringLiteral("name"), name},      {QStringLiteral("value"), value},
            {QStringLiteral("sub"), sub},        {QStringLiteral("missing"), false},
            {QStringLiteral("page"), QString()}, {QStringLiteral("properties"), QVariantMap()}};
}

QVariantMap opening(QVariantMap line, const char* page, const char* property, const QString& id) {
    line[QStringLiteral("page")] = QString::fromLatin1(page);
    line[QStringLiteral("properties")] = QVariantMap{{QString::fromLatin1(property), id}};
    return line;
}

int wholeMonths(CivilDay from, CivilDay to) {
    const auto a = yearMonthDay(from);
    const auto b = yearMonthDay(to);
    return (b.year - a.year) * 12 + b.month - a.month - (b.day < a.day ? 1 : 0);
}

/// "14 months old", "5 years old"
QString ageText(CivilDay hatched, CivilDay day, const Desk& desk) {
    constexpr int monthsInYear = 12;
    const int months = wholeMonths(hatched, day);
    if (months < 1) return {};
    if (months < 2 * monthsInYear) {
        return desk.say({"animal.months", {{"count", std::int64_t{months}}}});
    }
    return desk.say({"animal.years", {{"count", std::int64_t{months / monthsInYear}}}});
}

class FactRows {
public:
    FactRows(const Resident& resident, const AnimalRecord& record, const Desk& desk)
        : resident_(resident), record_(record), desk_(desk), subject_(resident.subject()) {}

    QVariantList all() {
        addStanding();
        if (subject_.form != Form::animal) addCount();
        addOrigin();
        addParent("animal.mother", subject_.mother);
        addParent("animal.father", subject_.father);
        if (subject_.isKept()) addCare();
        addHome();
        addCautions();
        if (!subject_.note.empty()) rows_.append(line(say("animal.note"), toQt(subject_.note)));
        return rows_;
    }

private:
    [[nodiscard]] QString say(const char* id) const { return desk_.say(id); }

    void addOrMissing(const char* id, const QString& value, const QString& sub) {
        if (!value.isEmpty()) return rows_.append(line(say(id), value, sub));
        auto row = opening(line(say(id), say("animal.notRecorded")), "AnimalFormPage", "subject",
                           toQt(subject_.id.text()));
        row[QStringLiteral("missing")] = true;
        rows_.append(row);
    }

    /// On whose loan, how it ended: from the entry that says so.
    void addStanding() {
        if (subject_.standing == Standing::here) return;
        const auto ends = [](const Fact& fact) {
            return fact.kind == FactKind::lent || fact.kind == FactKind::died ||
                   fact.kind == FactKind::sold || fact.kind == FactKind::given;
        };
        const auto found = std::find_if(record_.facts.begin(), record_.facts.end(), ends);
        const auto name =
            desk_.say(Message("animal.gone." + std::string(burrow::name(subject_.standing))));
        if (found == record_.facts.end())
            return rows_.append(line(name, say("animal.notRecorded")));
        rows_.append(opening(line(name, dayText(found->day, desk_),
                                  factDetail(*found, resident_, desk_, record_.names)),
                             "EntryPage", "entry", toQt(found->id.text())));
    }

    void addCount() {
        const auto& digest = resident_.kept.digest;
        const std::int64_t left = subject_.headcount;
        rows_.append(line(
            say("animal.count"), QString::number(left),
            desk_.say({digest.gone > 0 ? "animal.putInLess" : "animal.putIn",
                       {{"count", left + digest.gone}, {"gone", std::int64_t{digest.gone}}}})));
        if (digest.lastSeen && digest.lastSeenCount) {
            rows_.append(line(say("animal.lastSeen"), QString::number(*digest.lastSeenCount),
                              desk_.say({"animal.onDay", {{"day", *digest.lastSeen}}})));
        } else {
            rows_.append(line(say("animal.lastSeen"), say("animal.neverCounted")));
        }
    }

    /// Today, or the day on which it died or left: its age is known up to then.
    [[nodiscard]] CivilDay lastDay() const {
        const auto& since = resident_.kept.digest.standingSince;
        return !subject_.isKept() && since ? *since : desk_.today();
    }

    void addOrigin() {
        const auto& hatched = subject_.hatched;
        addOrMissing("animal.source", toQt(subject_.source), {});
        addOrMissing("animal.hatched", hatched ? dayText(*hatched, desk_) : QString(),
                     hatched ? ageText(*hatched, lastDay(), desk_) : QString());
        if (subject_.acquired) {
            rows_.append(line(say("animal.acquired"), dayText(*subject_.acquired, desk_)));
        }
    }

    void addParent(const char* id, const std::optional<SubjectId>& parent) {
        if (!parent) return;
        const auto found = desk_.room()->find(*parent);
        if (!found) return rows_.append(line(say(id), say("animal.parentGone")));
        rows_.append(opening(line(say(id), toQt(found->subject().number), speciesText(*found)),
                             "AnimalPage", "subject", toQt(parent->text())));
    }

    [[nodiscard]] QString every(Range<int> gap) const {
        return desk_.say({gap.least == gap.most ? "animal.every" : "animal.everyRange",
                          {{"days", std::int64_t{gap.most}}, {"least", std::int64_t{gap.least}}}});
    }

    void addCare() {
        const auto& stage = resident_.plan.stage;
        const auto rules = desk_.room()->rulesFor(resident_);
        const auto amount = [this](Care care) {
            const auto& answer = resident_.plan.of(care);
            return answer.amount ? desk_.say(*answer.amount) : QString();
        };
        rows_.append(line(say("care.feed"), every(mealGap(stage, rules)),
                          desk_.say(suggestionFor(resident_, desk_).amount())));
        rows_.append(line(say("care.water"), every(waterGap(stage, rules)), amount(Care::water)));
        rows_.append(line(say("care.damp"), every(dampGap(stage, resident_.profile, rules)),
                          amount(Care::damp)));
    }

    void addHome() {
        if (!record_.enclosure) return addOrMissing("animal.enclosure", {}, {});
        const auto& home = *record_.enclosure;
        const auto size = innerSizeText(home, desk_);
        const auto& since = resident_.kept.digest.lastRehoused;
        QStringList more;
        if (!size.isEmpty()) more.append(toQt(home.name));
        if (since) more.append(desk_.say({"animal.rehoused", {{"day", *since}}}));
        rows_.append(opening(line(say("animal.enclosure"), size.isEmpty() ? toQt(home.name) : size,
                                  more.join(QStringLiteral(". "))),
                             "EnclosurePage", "enclosure", toQt(home.id.text())));
    }

    void addCautions() {
        const auto& words = desk_.knowledge().words;
        const auto* profile = resident_.profile;
        const auto all = profile != nullptr ? cautions(*profile) : std::vector{Caution::unknown};
        for (const auto caution : all) {
            rows_.append(line(say("animal.caution"),
                              toQt(documents::cautionHeading(caution, words)),
                              toQt(documents::cautionAdvice(caution, words))));
        }
        if (profile == nullptr) return;
        const bool isListed = profile->listing.value == Listing::citesAppendixII;
        rows_.append(line(say("animal.listing"),
                          say(isListed ? "animal.cites" : "animal.notInCites"),
                          desk_.say(listingNote(*profile))));
    }

    const Resident& resident_;
    const AnimalRecord& record_;
    const Desk& desk_;
    const Subject& subject_;
    QVariantList rows_;
};

}  // namespace

Result<AnimalRecord> readAnimal(Book& book, SubjectId subject) {
    AnimalRecord record;
    BURROW_TRY(record.facts, history(book, subject, wholeHistory));
    BURROW_TRY(record.names, enclosureNames(book));
    BURROW_TRY(const auto kept, burrow::kept(book, subject));
    if (kept && kept->subject.enclosure) {
        BURROW_TRY(record.enclosure, enclosure(book, *kept->subject.enclosure));
    }
    return record;
}

QVariantList factRows(const Resident& resident, const AnimalRecord& record, const Desk& desk) {
    return FactRows(resident, record, desk).all();
}

QVariantList whyRows(const Resident& resident, const Desk& desk) {
    QVariantList rows;
    for (const auto care : careAsShown) {
        const auto& answer = resident.plan.of(care);
        QStringList sub{desk.say(answer.reason)};
        if (answer.state == State::due && answer.amount) sub.append(desk.say(*answer.amount));
        auto row =
            opening(line(careText(care, desk), desk.say(answer.verb(resident.subject().form)),
                         sub.join(QStringLiteral(". "))),
                    "WhyPage", "subject", toQt(resident.subject().id.text()));
        row[QStringLiteral("properties")] =
            QVariantMap{{QStringLiteral("subject"), toQt(resident.subject().id.text())},
                        {QStringLiteral("care"), toQt(std::string(name(care)))}};
        rows.append(row);
    }
    if (resident.subject().isKept()) {
        const std::string stage(name(resident.plan.stage.stage));
        rows.append(line(desk.say("animal.stage"), desk.say(Message("stage." + stage)),
                         desk.say(resident.plan.stage.how)));
    }
    return rows;
}

namespace {

/// "A moult, clearly. Judged by Wren", and the keeper's note.
QString lookText(const Fact& fact, const Desk& desk) {
    const auto& body = fact.body;
    QStringList parts;
    if (body.look) parts.append(desk.say(Message("choice.look." + std::string(name(*body.look)))));
    if (body.clarity) {
        parts.append(
            desk.say({"sexing.howClearly", {{"clarity", std::string(name(*body.clarity))}}}));
    }
    if (body.judge) parts.append(desk.say({"sexing.byJudge", {{"judge", *body.judge}}}));
    const auto note = factNote(fact, desk);
    if (!note.isEmpty()) parts.append(note);
    return parts.join(QStringLiteral(". "));
}

}  // namespace

QVariantList sexRows(const Resident& resident, const AnimalRecord& record, const Desk& desk) {
    QVariantList rows;
    if (resident.subject().form != Form::animal) return rows;
    for (const auto& fact : record.facts) {
        const bool isUltimate =
            fact.kind == FactKind::moulted && fact.body.ultimate.value_or(false);
        if (!isUltimate && fact.kind != FactKind::sexed) continue;
        const Sex sex = isUltimate ? Sex::male : fact.body.sex.value_or(Sex::unknown);
        auto row =
            line(dayText(fact.day, desk), desk.say({"fact.sex", {{"sex", std::string(name(sex))}}}),
                 isUltimate ? desk.say("sex.ultimate") : lookText(fact, desk));
        rows.append(opening(std::move(row), "EntryPage", "entry", toQt(fact.id.text())));
    }
    return rows;
}

QString sexConflictOf(const Resident& resident, const AnimalRecord& record, const Desk& desk) {
    if (resident.subject().form != Form::animal) return {};
    const auto* profile = resident.profile;
    const auto order = profile != nullptr ? std::optional(profile->order) : std::nullopt;
    const auto seen = sexing::sightingsOf(resident.subject(), record.facts, order);
    const sexing::Question question{speciesText(resident).toStdString(),
                                    resident.subject().sex,
                                    {},
                                    order.value_or(Order::tarantula) == Order::tarantula};
    const auto finding = sexing::judge(seen, desk.tables()->sexing, question);
    return finding.conflicts.empty() ? QString() : desk.say(finding.conflicts.front().why);
}

}  // namespace burrow
