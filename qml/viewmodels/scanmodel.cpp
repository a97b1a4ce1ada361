#include "viewmodels/scanmodel.h"

#include "journal/fields.h"
#include "viewmodels/deeds.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

/// What a tag hangs on: those who may be meant, none for a tag that is not in the book.
using Targets = std::vector<SubjectId>;

}  // namespace

void ScanModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit deskChanged();
}

void ScanModel::setScanner(Scanner* scanner) {
    if (scanner_ == scanner) return;
    if (scanner_) scanner_->disconnect(this);
    scanner_ = scanner;
    if (scanner_) {
        connect(scanner_, &Scanner::sighted, this, &ScanModel::see);
        connect(scanner_, &Scanner::stateChanged, this, &ScanModel::cameraChanged);
    }
    emit scannerChanged();
}

void ScanModel::start() {
    clear();
    if (scanner_) scanner_->start();
}

void ScanModel::stop() {
    if (scanner_) scanner_->stop();
}

void ScanModel::reset(Sight sight) {
    sight_ = sight;
    resident_.reset();
    message_.clear();
    unbound_.reset();
    several_.clear();
}

void ScanModel::clear() {
    reset(Sight::Nothing);
    emit sightChanged();
}

void ScanModel::tell(const Message& message) {
    reset(Sight::Message);
    message_ = desk_->say(message);
    emit sightChanged();
}

void ScanModel::show(const ResidentPtr& resident) {
    reset(Sight::Found);
    resident_ = resident;
    emit sightChanged();
    emit found(subject());
}

void ScanModel::see(const QByteArray& payload) {
    const auto reading =
        tags::parsePayload({payload.constData(), static_cast<std::size_t>(payload.size())});
    if (const auto* own = std::get_if<tags::OwnTag>(&reading)) return lookUp(*own);
    if (std::holds_alternative<tags::DamagedTag>(reading)) return tell({"scan.damaged"});
    if (const auto* foreign = std::get_if<tags::ForeignSymbol>(&reading)) {
        return tell({foreign->webAddress ? "scan.webAddress" : "scan.foreign",
                     {{"shown", foreign->shown}}});
    }
    tell({"scan.unreadable"});
}

void ScanModel::lookUp(const tags::OwnTag& tag) {
    desk_->ask<Targets>(
        this, [code = tag.code](Book& book) { return subjectsTagged(book, code); },
        [this, tag](const Result<Targets>& targets) {
            if (!targets) return tell(targets.error().message);
            std::vector<ResidentPtr> residents;
            for (const auto& id : *targets) {
                if (auto resident = desk_->room() ? desk_->room()->find(id) : nullptr) {
                    residents.push_back(std::move(resident));
                }
            }
            if (residents.size() == 1) return show(residents.front());
            reset(residents.empty() ? Sight::Unbound : Sight::Several);
            if (residents.empty()) unbound_ = tag;
            several_ = std::move(residents);
            emit sightChanged();
        });
}

void ScanModel::typed(const QString& text) {
    const auto word = text.trimmed().toStdString();
    if (word.empty()) return;
    desk_->ask<Targets>(
        this, [word](Book& book) { return subjectsNumbered(book, word); },
        [this, word](const Result<Targets>& numbered) {
            if (!numbered) return tell(numbered.error().message);
            if (numbered->size() == 1) return choose(toQt(numbered->front().text()));
            if (numbered->size() > 1) return tell({"tag.clash", {{"tag", word}}});
            const auto code = tags::parseTyped(word);
            if (code) return lookUp({*code, tags::printedSide});
            // Short words are meant as numbers: their sentence is about the number, not about codes.
            constexpr std::size_t shortWord = 6;
            tell(word.size() < shortWord ? Message{"scan.noNumber", {{"tag", word}}}
                                         : code.error().message);
        });
}

void ScanModel::choose(const QString& subject) {
    if (const auto resident = residentOf(*desk_, subject)) show(resident);
}

void ScanModel::hangOn(const QString& number) {
    if (!unbound_) return;
    const auto tag = *unbound_;
    Deed deed;
    deed.tag = number.trimmed();
    deed.said = {"did.tagged"};
    const auto target = std::make_shared<QString>();
    deed.compose = [tag, target,
                    word = number.toStdString()](Book& book) -> Result<std::vector<Draft>> {
        BURROW_TRY(const auto numbered, subjectsNumbered(book, word));
        if (numbered.size() != 1) {
            return fail(Trouble::notFound,
                        {numbered.empty() ? "scan.noNumber" : "tag.clash", {{"tag", word}}});
        }
        *target = toQt(numbered.front().text());
        const Tag bound{tag.code, tag.side, numbered.front(), std::nullopt};
        return std::vector<Draft>{SetDraft{ThingType::tag, tagThing(tag.code), toFields(bound)}};
    };
    desk_->act(this, std::move(deed), [this, target](const Result<ChangeSet>& done) {
        if (!done) return tell(done.error().message);
        clear();
        emit bound(*target);
    });
}

QString ScanModel::subject() const {
    return resident_ ? toQt(resident_->subject().id.text()) : QString();
}

QString ScanModel::tag() const { return resident_ ? toQt(resident_->subject().number) : QString(); }

QString ScanModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }

QString ScanModel::punch() const {
    if (!resident_) return QStringLiteral("none");
    const auto& main = mainAnswer(resident_->plan);
    return isListed(main) ? punchFor(*resident_, main) : punchFor(*resident_);
}

QString ScanModel::verb() const {
    if (!resident_) return {};
    if (!resident_->subject().isKept()) return desk_->say(mainAnswer(resident_->plan).reason);
    return verbText(*resident_, mainAnswer(resident_->plan), *desk_);
}

QStringList ScanModel::cautions() const {
    return resident_ ? cautionWords(*resident_, *desk_) : QStringList();
}

QString ScanModel::cameraTrouble() const {
    if (!scanner_ || !desk_ || scanner_->trouble().isEmpty()) return {};
    return desk_->say(Message(scanner_->trouble().toStdString()));
}

qreal ScanModel::unboundSide() const {
    return unbound_.value_or(tags::OwnTag{{}, tags::printedSide}).side.value;
}

QString ScanModel::unboundCode() const {
    return unbound_ ? toQt(tags::displayCode(unbound_->code)) : QString();
}

QVariantList ScanModel::choices() const {
    QVariantList list;
    for (const auto& resident : several_) {
        list.append(QVariantMap{{QStringLiteral("subject"), toQt(resident->subject().id.text())},
                                {QStringLiteral("tag"), toQt(resident->subject().number)},
                                {QStringLiteral("binomial"), speciesText(*resident)}});
    }
    return list;
}

}  // namespace burrow
