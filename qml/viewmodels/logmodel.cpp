#include "viewmodels/logmodel.h"

#include <array>

#include "viewmodels/deeds.h"

namespace burrow {
namespace {

using Kind = FactKind;

struct Group {
    const char* name;
    std::array<std::optional<Kind>, 5> kinds;
};

// In the order in which things happen at a tub; what ends it comes last.
constexpr std::array groupsOfKinds{
    Group{"log.food", {Kind::offered, Kind::leftoversOut}},
    Group{"log.water", {Kind::watered, Kind::dampened}},
    Group{"log.growth",
          {Kind::premoultSign, Kind::moulted, Kind::fangsBlack, Kind::measured, Kind::sexed}},
    Group{"log.home", {Kind::seen, Kind::note, Kind::photo, Kind::rehoused, Kind::moved}},
    Group{"log.breeding", {Kind::spermWeb, Kind::paired, Kind::sacLaid, Kind::sacOut}},
    Group{"log.leaving", {Kind::died, Kind::sold, Kind::given, Kind::lent, Kind::returned}},
};

/// Whether it can happen to one of its form, where it stands now.
bool suits(Kind kind, const Subject& subject) {
    const bool isSeveral = subject.form != Form::animal;
    if (kind == Kind::note) return true;
    if (isSeveral && (kind == Kind::sexed || kind == Kind::lent)) return false;
    if (subject.sex == Sex::female && kind == Kind::spermWeb) return false;
    if (subject.sex == Sex::male && (kind == Kind::sacLaid || kind == Kind::sacOut)) return false;
    switch (subject.standing) {
        case Standing::here: return kind != Kind::returned;
        case Standing::onLoan:
            return kind == Kind::returned || kind == Kind::died || kind == Kind::sold ||
                   kind == Kind::given;
        case Standing::dead: return kind == Kind::photo || kind == Kind::measured;
        case Standing::sold:
        case Standing::given: break;
    }
    return false;
}

/// Whether there is nothing more to say than that it happened.
bool isSimple(Kind kind, const Subject& subject) {
    switch (kind) {
        case Kind::leftoversOut:
        case Kind::watered:
        case Kind::dampened:
        case Kind::fangsBlack:
        case Kind::returned: return true;
        case Kind::seen: return subject.form == Form::animal;
        default: return false;
    }
}

}  // namespace

void LogModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &LogModel::read);
    read();
    emit deskChanged();
}

void LogModel::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    read();
}

void LogModel::read() {
    resident_ = desk_ ? residentOf(*desk_, subject_) : nullptr;
    emit changed();
}

QString LogModel::tag() const { return resident_ ? toQt(resident_->subject().number) : QString(); }

QString LogModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }

QString LogModel::about() const { return resident_ ? aboutText(*resident_, *desk_) : QString(); }

QString LogModel::punch() const {
    return resident_ ? punchFor(*resident_) : QStringLiteral("none");
}

QVariantList LogModel::groups() const {
    QVariantList list;
    if (!resident_) return list;
    const auto& subject = resident_->subject();
    for (const auto& group : groupsOfKinds) {
        QVariantList tiles;
        for (const auto& kind : group.kinds) {
            if (!kind || !suits(*kind, subject)) continue;
            const bool isCount = *kind == Kind::seen && subject.form != Form::animal;
            tiles.append(QVariantMap{{QStringLiteral("kind"), toQt(std::string(spec(*kind).name))},
                                     {QStringLiteral("text"), isCount ? desk_->say("kind.count")
                                                                      : kindTitle(*kind, *desk_)},
                                     {QStringLiteral("glyph"), factGlyph(*kind)}});
        }
        if (tiles.isEmpty()) continue;
        list.append(QVariantMap{{QStringLiteral("name"), desk_->say(group.name)},
                                {QStringLiteral("tiles"), tiles}});
    }
    return list;
}

void LogModel::choose(const QString& kindName) {
    const auto kind = parseFactKind(kindName.toStdString());
    if (!kind || !resident_) return;
    if (*kind == Kind::moulted) return emit moultWanted();
    if (*kind == Kind::photo) return emit photoWanted();
    if (!isSimple(*kind, resident_->subject())) return emit formWanted(kindName);
    FactDraft fact{resident_->subject().id, *kind, {}, std::nullopt};
    if (*kind == Kind::seen) fact.body.count = 1;
    logFact(*desk_, this, *resident_, std::move(fact), [this](const Result<ChangeSet>& done) {
        if (done) emit logged();
    });
}

}  // namespace burrow
