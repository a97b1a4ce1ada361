#include "viewmodels/tagsheetmodel.h"

#include <algorithm>

#include "room/sheets.h"
#include "tags/code.h"
#include "viewmodels/deeds.h"
#include "viewmodels/files.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

constexpr int mostBlankTags = 540;  // twenty pages

using Codes = std::vector<std::string>;

Result<Codes> drawCodes(Book& book, std::size_t count) {
    Codes codes;
    for (std::size_t i = 0; i < count; ++i) {
        codes.push_back(tags::generateCode(book.surroundings().random));
    }
    return codes;
}

documents::Paper paperOf(int choice) {
    return choice == 0 ? documents::Paper::a4 : documents::Paper::letter;
}

}  // namespace

std::vector<TagSheetModel::Kind> TagSheetModel::offered() const {
    if (subjects_.isEmpty()) return {Kind::Everyone, Kind::Shelf, Kind::Blank};
    return {Kind::These, Kind::Everyone, Kind::Blank};
}

TagSheetModel::Kind TagSheetModel::chosenKind() const {
    return offered().at(static_cast<std::size_t>(kind_));
}

QVariantList TagSheetModel::kinds() const {
    QVariantList list;
    if (!desk_) return list;
    for (const auto kind : offered()) {
        std::string id;
        switch (kind) {
            case Kind::These: id = "tagSheet.these"; break;
            case Kind::Everyone: id = "tagSheet.everyone"; break;
            case Kind::Shelf: id = "tagSheet.shelf"; break;
            case Kind::Blank: id = "tagSheet.blank"; break;
        }
        list.append(QVariantMap{
            {QStringLiteral("word"), desk_->say(Message(id))},
            {QStringLiteral("sub"),
             desk_->say({id + ".sub", {{"count", static_cast<std::int64_t>(subjects_.size())}}})}});
    }
    return list;
}

std::vector<Place> TagSheetModel::shelfPlaces() const {
    std::vector<Place> places;
    if (!desk_ || !desk_->room()) return places;
    for (const auto& resident : desk_->room()->residents()) {
        const auto place = resident->kept.place.shelfOnly();
        const bool isNew = std::find(places.begin(), places.end(), place) == places.end();
        if (resident->subject().isKept() && isNew) places.push_back(place);
    }
    return places;
}

QVariantList TagSheetModel::shelves() const {
    QVariantList list;
    for (const auto& place : shelfPlaces()) {
        std::int64_t count = 0;
        for (const auto& resident : desk_->room()->residents()) {
            count += resident->subject().isKept() && resident->kept.place.shelfOnly() == place;
        }
        list.append(QVariantMap{
            {QStringLiteral("name"), shelfText(place, *desk_)},
            {QStringLiteral("count"), desk_->say({"tagSheet.tags", {{"count", count}}})}});
    }
    return list;
}

QString TagSheetModel::shelfName() const {
    const auto places = shelfPlaces();
    if (places.empty()) return {};
    return shelfText(places[static_cast<std::size_t>(shelf_)], *desk_);
}

std::vector<ResidentPtr> TagSheetModel::chosen() const {
    std::vector<ResidentPtr> chosen;
    const auto kind = chosenKind();
    const auto places = shelfPlaces();
    for (const auto& resident : desk_->room()->residents()) {
        if (!resident->subject().isKept()) continue;
        const auto id = toQt(resident->subject().id.text());
        if (kind == Kind::These && !subjects_.contains(id)) continue;
        const bool isElsewhere = places.empty() || resident->kept.place.shelfOnly() !=
                                                       places[static_cast<std::size_t>(shelf_)];
        if (kind == Kind::Shelf && isElsewhere) continue;
        chosen.push_back(resident);
    }
    return chosen;
}

void TagSheetModel::choiceMade() {
    emit choiceChanged();
    if (isReady()) read();
}

void TagSheetModel::setSubjects(const QStringList& subjects) {
    if (subjects_ == subjects) return;
    subjects_ = subjects;
    kind_ = 0;
    choiceMade();
}

void TagSheetModel::setKind(int kind) {
    if (kind == kind_ || kind < 0 || kind >= static_cast<int>(offered().size())) return;
    kind_ = kind;
    setPage(0);
    choiceMade();
}

void TagSheetModel::setShelf(int shelf) {
    if (shelf == shelf_ || shelf < 0 || shelf >= static_cast<int>(shelfPlaces().size())) return;
    shelf_ = shelf;
    setPage(0);
    choiceMade();
}

void TagSheetModel::setPaper(int paper) {
    if (paper == paper_) return;
    paper_ = paper;
    choiceMade();
}

void TagSheetModel::setBlankCount(const QString& typed) {
    if (typed == blankTyped_) return;
    blankTyped_ = typed;
    bool isNumber = false;
    const int count = typed.trimmed().toInt(&isNumber);
    const bool isFine = isNumber && count >= 1 && count <= mostBlankTags;
    blankError_ = isFine
                      ? QString()
                      : desk_->say({"tagSheet.oddCount", {{"most", std::int64_t{mostBlankTags}}}});
    if (!isFine) return emit choiceChanged();
    blankCount_ = count;
    choiceMade();
}

void TagSheetModel::read() {
    shelf_ = std::clamp(shelf_, 0, std::max(0, static_cast<int>(shelfPlaces().size()) - 1));
    emit choiceChanged();
    if (isBlank()) return layOutBlank();
    const auto everyone = chosen();
    const auto lacking = static_cast<std::size_t>(
        std::count_if(everyone.begin(), everyone.end(), [this](const ResidentPtr& resident) {
            return !resident->kept.tagCode && !newCodes_.contains(resident->subject().id);
        }));
    desk_->ask<Codes>(
        this, [lacking](Book& book) { return drawCodes(book, lacking); },
        [this](const Result<Codes>& codes) {
            if (!codes) return tell(codes.error());
            if (!isBlank() && isReady()) layOutTags(*codes);
        });
}

void TagSheetModel::layOutTags(const Codes& drawn) {
    std::vector<documents::TagLabel> labels;
    auto next = drawn.begin();
    for (const auto& resident : chosen()) {
        auto label = tagLabelFor(*resident);
        if (!resident->kept.tagCode) {
            auto& code = newCodes_[resident->subject().id];
            if (code.empty() && next != drawn.end()) code = *next++;
            if (code.empty()) continue;  // came since the codes were drawn; it is read again soon
            label.code = code;
        }
        labels.push_back(std::move(label));
    }
    tagCount_ = static_cast<int>(labels.size());
    layOut([labels = std::move(labels), room = desk_->room()->info().name, paper = paperOf(paper_),
            &words = desk_->knowledge().words](const documents::TextMeasure& measure) {
        return documents::tagSheets(room, paper, labels, words, measure);
    });
}

void TagSheetModel::layOutBlank() {
    const auto count = static_cast<std::size_t>(blankCount_);
    desk_->ask<Codes>(
        this, [count](Book& book) { return drawCodes(book, count); },
        [this](const Result<Codes>& codes) {
            if (!codes) return tell(codes.error());
            if (!isBlank() || !isReady()) return;
            tagCount_ = static_cast<int>(codes->size());
            layOut([codes = *codes, room = desk_->room()->info().name, paper = paperOf(paper_),
                    &words = desk_->knowledge().words](const documents::TextMeasure& measure) {
                return documents::blankTagSheets(room, paper, codes, words, measure);
            });
        });
}

/// Whoever has no tag yet gets the one that is printed, before there is a file to print.
void TagSheetModel::prepare(std::function<void()> go) {
    std::vector<Draft> drafts;
    if (!isBlank()) {
        for (const auto& resident : chosen()) {
            const auto found = newCodes_.find(resident->subject().id);
            if (resident->kept.tagCode || found == newCodes_.end()) continue;
            drafts.emplace_back(hangTag(found->second, found->first));
        }
    }
    if (drafts.empty()) return go();
    Deed deed;
    deed.tag = toQt(desk_->room()->info().code);
    deed.said = {"did.tagsGiven", {{"count", static_cast<std::int64_t>(drafts.size())}}};
    deed.compose = [drafts](Book&) -> Result<std::vector<Draft>> { return drafts; };
    desk_->act(this, std::move(deed), [this, go = std::move(go)](const Result<ChangeSet>& done) {
        if (!done) return tell(done.error());
        go();
    });
}

QString TagSheetModel::summary() const {
    if (!isReady()) return {};
    if (!isBlank() && chosen().empty()) return desk_->say("print.nobody");
    if (tagCount_ == 0) return {};
    auto text =
        desk_->say({"tagSheet.summary",
                    {{"count", std::int64_t{tagCount_}}, {"pages", std::int64_t{pageCount()}}}});
    std::int64_t lacking = 0;
    if (!isBlank()) {
        for (const auto& resident : chosen()) lacking += !resident->kept.tagCode;
    }
    if (lacking > 0) text += ' ' + desk_->say({"tagSheet.lacking", {{"count", lacking}}});
    return text;
}

std::string TagSheetModel::stem() const {
    const auto& code = desk_->room()->info().code;
    return fileStem((code.empty() ? std::string() : code + "-") +
                    (isBlank() ? "blank-tags" : "tags"));
}

std::string TagSheetModel::title() const {
    return desk_->say({"tagSheet.fileTitle", {{"room", desk_->room()->info().name}}}).toStdString();
}

}  // namespace burrow
