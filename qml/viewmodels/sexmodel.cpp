#include "viewmodels/sexmodel.h"

#include <algorithm>
#include <array>

#include "journal/past.h"
#include "room/sheets.h"
#include "viewmodels/photofiles.h"

namespace burrow {
namespace {

constexpr std::array sexes{Sex::female, Sex::male, Sex::unknown};
constexpr int clarityStops = 5;

bool isMoultPhoto(const Fact& fact) {
    return fact.kind == FactKind::photo && fact.body.role == PhotoRole::moult && fact.body.picture;
}

/// The moult that a photo shows; one that names none stands for itself.
EntryId moultOf(const Fact& photo) { return photo.body.about.value_or(photo.id); }

QVariantMap photoMap(const Fact& photo, const QString& name, const Desk& desk) {
    return {{QStringLiteral("url"), pictureUrl(desk, *photo.body.picture)},
            {QStringLiteral("thumbnail"), thumbnailUrl(desk, *photo.body.picture)},
            {QStringLiteral("name"), name}};
}

QString clarityWord(int stop, const Desk& desk) {
    return desk.say(Message("sexing.clarity." + std::to_string(stop)));
}

/// Takes the last examination back, and puts back the one that it replaced.
Result<ChangeSet> withdraw(Book& book, const std::optional<TakenOut>& replaced) {
    BURROW_TRY(auto undone, book.undo());
    if (!replaced) return std::move(undone.first);
    return putBack(book, *replaced);
}

}  // namespace

/// What the book has about a moult, all facts newest first.
struct SexModel::Record {
    std::optional<Fact> moult;  ///< or the photo that stands for it
    std::vector<Fact> facts;    ///< of its animal
    std::optional<Fact> said;
};

void SexModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::written, this, &SexModel::read);
    read();
    emit givenChanged();
}

void SexModel::setMoult(const QString& moult) {
    if (moult_ == moult) return;
    moult_ = moult;
    read();
    emit givenChanged();
}

Result<SexModel::Record> SexModel::recordOf(Book& book, const EntryId& moult) {
    Record record;
    BURROW_TRY(record.moult, fact(book, moult));
    if (!record.moult) return record;
    BURROW_TRY(record.facts, history(book, record.moult->subject, wholeHistory));
    for (const auto& fact : record.facts) {
        if (fact.kind != FactKind::sexed || fact.body.about != moult) continue;
        record.said = fact;
        break;
    }
    return record;
}

void SexModel::read() {
    const auto id = Uuid::parse(moult_.toStdString());
    if (!desk_ || !id) return;
    desk_->ask<Record>(
        this, [moult = EntryId{*id}](Book& book) { return recordOf(book, moult); },
        [this](const Result<Record>& record) { show(record ? *record : Record()); });
}

void SexModel::show(const Record& record) {
    isRead_ = true;
    photos_.clear();
    earlier_.clear();
    said_ = record.said;
    const bool isThere = record.moult && desk_->room();
    resident_ = isThere ? desk_->room()->find(record.moult->subject) : nullptr;
    if (resident_) {
        const auto day = record.moult->day;
        const auto size = record.moult->body.carapace;
        title_ = desk_->say({size ? "sexing.titleWithSize" : "sexing.title",
                             {{"day", day}, {"size", size.value_or(Millimetres{}).value}}});
        for (const auto& fact : record.facts) {
            if (!isMoultPhoto(fact)) continue;
            const auto name = desk_->say({"sexing.title", {{"day", fact.day}}});
            if (moultOf(fact) == record.moult->id) {
                photos_.prepend(photoMap(fact, name, *desk_));
            } else if (fact.day <= day) {
                earlier_.append(photoMap(fact, name, *desk_));
            }
        }
    }
    emit changed();
}

QString SexModel::subject() const {
    return resident_ ? toQt(resident_->subject().id.text()) : QString();
}
QString SexModel::tag() const { return resident_ ? toQt(resident_->subject().number) : QString(); }
QString SexModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }
QString SexModel::about() const { return resident_ ? aboutText(*resident_, *desk_) : QString(); }

QStringList SexModel::guidance() const {
    if (!resident_) return {};
    const auto* profile = resident_->profile;
    if (profile != nullptr && profile->order != Order::tarantula) {
        return {desk_->say("sexing.notATarantula")};
    }
    return {desk_->say("sexing.where"), desk_->say("sexing.what"), desk_->say("sexing.worth")};
}

QString SexModel::verdict() const {
    if (!said_) return {};
    const auto sex = said_->body.sex.value_or(Sex::unknown);
    return desk_->say({"sexing.said", {{"day", said_->day}, {"verdict", std::string(name(sex))}}});
}

void SexModel::setChoice(int choice) {
    if (choice_ == choice) return;
    choice_ = choice;
    emit changed();
}

QVariantList SexModel::choices() const {
    QVariantList list;
    if (!desk_) return list;
    for (const auto sex : sexes) {
        const std::string id = "sexing.choice." + std::string(name(sex));
        list.append(QVariantMap{{QStringLiteral("word"), desk_->say(Message(id))},
                                {QStringLiteral("sub"), desk_->say(Message(id + ".sub"))}});
    }
    return list;
}

void SexModel::setClarity(int clarity) {
    if (clarity_ == clarity) return;
    clarity_ = clarity;
    emit changed();
}

QVariantList SexModel::clarities() const {
    QVariantList list;
    if (!desk_) return list;
    for (int stop = 0; stop < clarityStops; ++stop) list.append(clarityWord(stop, *desk_));
    return list;
}

void SexModel::save() {
    const auto id = Uuid::parse(moult_.toStdString());
    const bool isChosen = choice_ >= 0 && choice_ < static_cast<int>(sexes.size());
    if (busy_ || !resident_ || !id || !isChosen) return;
    FactDraft draft{resident_->subject().id, FactKind::sexed, {}, std::nullopt};
    draft.body.sex = sexes.at(static_cast<std::size_t>(choice_));
    draft.body.about = EntryId{*id};
    if (clarity_ >= 0) {
        draft.body.text =
            desk_->say({"sexing.note", {{"clarity", clarityWord(clarity_, *desk_).toStdString()}}})
                .toStdString();
    }
    Deed deed;
    deed.tag = tag();
    deed.said = {"did.sexedBy." + std::string(name(*draft.body.sex))};
    const auto replaced = std::make_shared<std::optional<TakenOut>>();
    deed.compose = [draft, said = said_, replaced](Book& book) -> Result<std::vector<Draft>> {
        std::vector<Draft> drafts;
        if (said) {
            BURROW_TRY(*replaced, takingOut(book, said->id));
            if (*replaced) drafts = (*replaced)->drafts;
        }
        drafts.emplace_back(draft);
        return drafts;
    };
    if (said_) deed.takeBack = [replaced](Book& book) { return withdraw(book, *replaced); };
    busy_ = true;
    emit changed();
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& done) {
        busy_ = false;
        emit changed();
        if (done) emit saved();
    });
}

}  // namespace burrow
