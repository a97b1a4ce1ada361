#include "viewmodels/wording.h"

#include "husbandry/gaps.h"
#include "husbandry/prey.h"

namespace burrow {
namespace {

QVariantMap mark(const MoultMark& moult, const Resident& resident, const Rules& rules,
                 int hardening) {
    return {{QStringLiteral("day"), moult.day.days},
            {QStringLiteral("height"), markHeight(moult.carapace, moult.span, resident, rules)},
            {QStringLiteral("hardening"), hardening},
            {QStringLiteral("photo"), false}};
}

const char* cautionId(Caution caution) {
    switch (caution) {
        case Caution::strongVenom: return "caution.strongVenom";
        case Caution::venom: return "caution.venom";
        case Caution::sting: return "caution.sting";
        case Caution::fast: return "caution.fast";
        case Caution::hairs: return "caution.hairs";
        case Caution::spray: return "caution.spray";
        case Caution::unknown: return "caution.unknown";
    }
    return "";
}

Message saidOfOffer(const FactBody& body, Form form) {
    const auto outcome = body.outcome.value_or(Outcome::ate);
    const bool isGroup = form != Form::animal && outcome == Outcome::ate;
    Message said{isGroup ? "did.offered.group" : "did.offered." + std::string(name(outcome))};
    said.arguments = {{"count", std::int64_t{body.count.value_or(1)}},
                      {"prey", body.prey.value_or("unnamed")}};
    return said;
}

}  // namespace

QString shelfText(const Place& place, const Desk& desk) {
    if (place.shelf.empty() && place.rack.empty()) return desk.say("place.none");
    QStringList parts;
    if (!place.room.empty()) parts.append(toQt(place.room));
    if (!place.rack.empty()) parts.append(desk.say({"place.rack", {{"rack", place.rack}}}));
    if (!place.shelf.empty()) parts.append(desk.say({"place.shelf", {{"shelf", place.shelf}}}));
    return parts.join(QStringLiteral(", "));
}

QString placeText(const Place& place, const Desk& desk) {
    auto text = shelfText(place, desk);
    if (!place.position.empty()) {
        text += ", " + desk.say({"place.position", {{"position", place.position}}});
    }
    return text;
}

QString speciesText(const Resident& resident) {
    return toQt(resident.profile != nullptr ? resident.profile->name : resident.subject().species);
}

QString aboutText(const Resident& resident, const Desk& desk) {
    const auto& subject = resident.subject();
    if (subject.form != Form::animal) {
        return desk.say({"about." + std::string(name(subject.form)),
                         {{"count", std::int64_t{subject.headcount}}}});
    }
    const std::string stage(name(resident.plan.stage.stage));
    // A mature male says its sex already.
    if (resident.plan.stage.stage == Stage::matureMale) return desk.say({"stage." + stage});
    return desk.say({"about." + std::string(name(subject.sex)), {{"stage", stage}}});
}

QString sizeText(const Resident& resident, const Desk& desk) {
    const auto& digest = resident.kept.digest;
    if (digest.carapace) return desk.say({"size.carapace", {{"size", digest.carapace->value}}});
    if (!digest.span) return {};
    const bool isLong = resident.profile != nullptr && isMeasuredByBody(resident.profile->order);
    return desk.say({isLong ? "size.length" : "size.span", {{"size", digest.span->value}}});
}

QStringList cautionWords(const Resident& resident, const Desk& desk) {
    QStringList words;
    if (resident.profile == nullptr) return words;
    for (const auto caution : cautions(*resident.profile))
        words.append(desk.say(cautionId(caution)));
    return words;
}

QString punchFor(const Resident& resident, const Answer& answer) {
    if (answer.state == State::hold) {
        const bool isPremoult =
            answer.because == Because::premoult || answer.because == Because::likelyPremoult;
        return isPremoult ? QStringLiteral("premoult") : QStringLiteral("hold");
    }
    const bool isLook = answer.care == Care::look || answer.care == Care::moultCheck ||
                        answer.care == Care::headcount;
    if (isLook) return QStringLiteral("look");
    return resident.subject().form == Form::animal ? QStringLiteral("feed")
                                                   : QStringLiteral("group");
}

QString holdAdvice(const Answer& answer, const Desk& desk) {
    switch (answer.because) {
        case Because::hardening: return desk.say("round.adviceSoft");
        case Because::eggSac: return desk.say("round.adviceSac");
        case Because::settling: return desk.say("round.adviceSettle");
        case Because::tooCold: return desk.say("round.adviceCold");
        default: return desk.say("round.advicePremoult");
    }
}

QString punchFor(const Resident& resident) {
    const auto& subject = resident.subject();
    if (subject.standing == Standing::sold || subject.standing == Standing::given) {
        return QStringLiteral("sold");
    }
    if (subject.standing == Standing::dead) return QStringLiteral("slash");
    return subject.form == Form::animal ? QStringLiteral("blank") : QStringLiteral("group");
}

QString verbText(const Resident& resident, const Answer& answer, const Desk& desk) {
    return desk.say(answer.verb(resident.subject().form)) + '.';
}

double markHeight(const std::optional<Millimetres>& carapace,
                  const std::optional<Millimetres>& span, const Resident& resident,
                  const Rules& rules) {
    if (carapace) return carapace->value;
    if (!span) return 0;
    const bool isScorpion =
        resident.profile != nullptr && resident.profile->order == Order::scorpion;
    return span->value /
           rules.factor(isScorpion ? "size.body_per_carapace" : "size.span_per_carapace");
}

MoultLineData recentMoultLine(const Resident& resident, const Desk& desk) {
    const auto& digest = resident.kept.digest;
    MoultLineData line;
    const auto rules = desk.room()->rulesFor(resident);
    const auto hardening = rules.dayRange(ruleFor("hardening", resident.plan.stage.growing())).most;
    for (const auto& moult : digest.recentMoults) {
        line.marks.append(mark(moult, resident, rules, hardening));
    }
    for (const auto& offer : digest.recentOffers) {
        if (offer.outcome == Outcome::leftIn) continue;  // nobody has seen yet what became of it
        const bool took = offer.outcome == Outcome::ate || offer.outcome == Outcome::part;
        line.feedings.append(
            QVariantMap{{QStringLiteral("day"), offer.day.days}, {QStringLiteral("took"), took}});
    }
    line.nowDay = desk.today().days;
    if (const auto last = digest.lastMoult()) {
        line.description = desk.say(
            {"moultLine.spoken", {{"count", std::int64_t{digest.moultCount}}, {"last", *last}}});
    } else {
        line.description = desk.say("moultLine.spokenNone");
    }
    return line;
}

Message saidOf(const FactDraft& draft, Form form) {
    if (draft.kind == FactKind::offered) return saidOfOffer(draft.body, form);
    Message said{"did." + std::string(spec(draft.kind).name)};
    said.arguments = {{"count", std::int64_t{draft.body.count.value_or(1)}}};
    return said;
}

}  // namespace burrow
