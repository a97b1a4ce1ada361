#include "viewmodels/profilewords.h"

#include <array>

namespace burrow {
namespace {

// As message ids spell them, in the order of the enumerations.
constexpr std::array orders{"tarantula", "trueSpider", "scorpion", "whipSpider"};
constexpr std::array habits{"terrestrial", "arboreal", "fossorial"};
constexpr std::array regions{"newWorld", "oldWorld"};
constexpr std::array damps{"dry", "moderate", "moist", "swamp"};
constexpr std::array temperaments{"calm", "skittish", "defensive"};
constexpr std::array venoms{"mild", "notable", "significant"};
constexpr std::array hairs{"none", "abdomen", "palps"};
constexpr std::array groups{"no", "tolerated"};

template <class Value, std::size_t n>
std::string idOf(Value value, const std::array<const char*, n>& names) {
    return names.at(static_cast<std::size_t>(value));
}

/// Collects lines: a name, a value in words, a source.
class Lines {
public:
    explicit Lines(const Desk& desk) : desk_(desk) {}

    void add(const char* nameId, const QString& value, const std::string& source = {}) {
        if (value.isEmpty()) return;
        lines_.append(QVariantMap{{QStringLiteral("name"), desk_.say(nameId)},
                                  {QStringLiteral("value"), value},
                                  {QStringLiteral("source"), toQt(source)}});
    }
    template <class Value, std::size_t n>
    void add(const char* nameId, const char* family, const Sourced<Value>& fact,
             const std::array<const char*, n>& names) {
        add(nameId, desk_.say(Message(family + idOf(fact.value, names))), fact.source);
    }
    [[nodiscard]] QVariantList taken() { return std::move(lines_); }

private:
    const Desk& desk_;
    QVariantList lines_;
};

}  // namespace

QString kindText(const Profile& profile, const Desk& desk) {
    return desk.say(
        {"species.kind",
         {{"habit", idOf(profile.habit.value, habits)}, {"order", idOf(profile.order, orders)}}});
}

QString joinedNames(const std::vector<std::string>& names) {
    QStringList list;
    for (const auto& name : names) list.append(toQt(name));
    return list.join(QStringLiteral(", "));
}

QVariantList profileLines(const Profile& profile, const Desk& desk) {
    Lines lines(desk);
    const bool isScorpion = profile.order == Order::scorpion;
    lines.add("species.authority", toQt(profile.authority), profile.authoritySource);
    lines.add("species.otherNames", joinedNames(profile.otherNames));
    lines.add("species.tradeNames", joinedNames(profile.tradeNames));
    lines.add("species.region", "species.region.", profile.region, regions);
    lines.add("species.habit", "species.habit.", profile.habit, habits);
    const auto& span = profile.adultSpan;
    lines.add(isScorpion ? "species.adultLength" : "species.adultSpan",
              desk.say({"species.mm",
                        {{"least", span.value.least.value}, {"most", span.value.most.value}}}),
              span.source);
    const auto& warmth = profile.warmth;
    lines.add("species.warmth",
              desk.say({"species.celsius",
                        {{"least", warmth.value.least.value}, {"most", warmth.value.most.value}}}),
              warmth.source);
    lines.add("species.damp", "species.damp.", profile.damp, damps);
    lines.add("species.temperament", "species.temperament.", profile.temperament, temperaments);
    lines.add("species.fast", desk.say(profile.fast.value ? "species.fast.yes" : "species.fast.no"),
              profile.fast.source);
    lines.add("species.venom", "species.venom.", profile.venom, venoms);
    lines.add("species.hairs", "species.hairs.", profile.hairs, hairs);
    lines.add("species.groups", "species.groups.", profile.groups, groups);
    lines.add("species.listing", desk.say(listingNote(profile)), profile.listing.source);
    lines.add("species.housing", toQt(profile.housing));
    lines.add("species.handling", toQt(profile.handling));
    return lines.taken();
}

}  // namespace burrow
