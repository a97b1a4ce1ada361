#include "viewmodels/matmodel.h"

#include <algorithm>

#include "documents/mat.h"
#include "viewmodels/files.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

using measure::MatPaper;

const char* paperName(MatPaper paper) { return paper == MatPaper::a5 ? "A5" : "A4"; }

std::vector<Draft> drafting(Book& book, const PrintedMat& mat) {
    return {SetDraft{ThingType::book, book.id().uuid, matFields(mat)}};
}

}  // namespace

MatModel::MatModel(QObject* parent) : SheetModel(parent) {}

MatPaper MatModel::chosenPaper() const { return paper_ == 0 ? MatPaper::a5 : MatPaper::a4; }

void MatModel::setPaper(int paper) {
    if (paper == paper_ || paper < 0 || paper > 1) return;
    paper_ = paper;
    emit paperChanged();
    if (!isReady()) return;
    // A name that is on paper already stands for that paper.
    if (isPrinted()) drawn_.clear();
    read();
}

QString MatModel::asked() const {
    if (!asked_) return {};
    return QString::fromLatin1(paperName(asked_->paper)) + ' ' + toQt(asked_->name);
}

void MatModel::setAsked(const QString& asked) {
    const auto words = asked.split(' ');
    const auto name = words.value(1).toStdString();
    asked_.reset();
    if (measure::isMatName(name)) {
        const bool isA5 = words.value(0) == QString::fromLatin1(paperName(MatPaper::a5));
        asked_ = PrintedMat{name, isA5 ? MatPaper::a5 : MatPaper::a4, std::nullopt};
    }
    emit matsChanged();
}

PrintedMat MatModel::matOf() const { return {drawn_, chosenPaper(), std::nullopt}; }

bool MatModel::isPrinted() const { return !desk_->room()->info().other(settingOf(drawn_)).empty(); }

std::vector<PrintedMat> MatModel::listed() const {
    if (!isReady()) return {};
    auto mats = matsOf(desk_->room()->info());
    const bool isKnown =
        asked_ && std::any_of(mats.begin(), mats.end(),
                              [this](const PrintedMat& mat) { return mat.name == asked_->name; });
    if (asked_ && !isKnown) mats.insert(mats.begin(), *asked_);
    std::stable_partition(mats.begin(), mats.end(),
                          [](const PrintedMat& mat) { return !mat.bar.has_value(); });
    return mats;
}

QString MatModel::titleOf(const PrintedMat& mat) const {
    return desk_->say({"mat.title", {{"name", mat.name}, {"paper", paperName(mat.paper)}}});
}

QString MatModel::askedName() const { return asked_ ? toQt(asked_->name) : QString(); }

QString MatModel::askedTitle() const { return asked_ && desk_ ? titleOf(*asked_) : QString(); }

QVariantList MatModel::mats() const {
    QVariantList list;
    for (const auto& mat : listed()) {
        const auto length = mat.bar.value_or(measure::barLength).value;
        list.append(
            QVariantMap{{QStringLiteral("name"), toQt(mat.name)},
                        {QStringLiteral("title"), titleOf(mat)},
                        {QStringLiteral("sub"),
                         desk_->say({mat.bar ? "mat.measured" : "mat.unmeasured",
                                     {{"length", length}, {"meant", measure::barLength.value}}})},
                        {QStringLiteral("measured"), mat.bar.has_value()}});
    }
    return list;
}

void MatModel::read() {
    emit matsChanged();
    if (!drawn_.empty()) {
        if (laidOut_ != matOf()) layOutMat();
        return;
    }
    // Each file has another name: a bar stays with the sheets that it was printed on.
    desk_->ask<measure::MatName>(
        this,
        [](Book& book) -> Result<measure::MatName> {
            return measure::drawMatName(book.surroundings().random);
        },
        [this](const Result<measure::MatName>& name) {
            if (!name) return tell(name.error());
            drawn_ = *name;
            if (isReady()) layOutMat();
        });
}

void MatModel::layOutMat() {
    laidOut_ = matOf();
    layOut([paper = chosenPaper(), name = drawn_, &words = desk_->knowledge().words](
               const documents::TextMeasure& measure) -> Result<std::vector<documents::Page>> {
        BURROW_TRY(auto page, documents::matPage(paper, name, words, measure));
        return std::vector{std::move(page)};
    });
}

/// The book knows the mat before there is a file to print.
void MatModel::prepare(std::function<void()> go) {
    if (isPrinted()) return go();
    const auto mat = matOf();
    Deed deed;
    deed.said = {"did.matPrinted", {{"name", mat.name}}};
    deed.compose = [mat](Book& book) -> Result<std::vector<Draft>> { return drafting(book, mat); };
    desk_->act(this, std::move(deed), [this, go = std::move(go)](const Result<ChangeSet>& done) {
        if (!done) return tell(done.error());
        go();
    });
}

void MatModel::setBar(const QString& name, const QString& typed) {
    const auto mats = listed();
    const auto found = std::find_if(mats.begin(), mats.end(),
                                    [&](const PrintedMat& mat) { return toQt(mat.name) == name; });
    if (found == mats.end()) return;
    const auto length = readBar(typed.toStdString());
    barError_ = length ? QString() : desk_->say(length.error().message);
    emit barErrorChanged();
    if (!length) return;
    auto mat = *found;
    mat.bar = *length;
    Deed deed;
    deed.said = {"did.matMeasured", {{"name", mat.name}, {"length", length->value}}};
    deed.compose = [mat](Book& book) -> Result<std::vector<Draft>> { return drafting(book, mat); };
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& done) {
        if (done) emit barKept();
    });
}

void MatModel::clearBarError() {
    if (barError_.isEmpty()) return;
    barError_.clear();
    emit barErrorChanged();
}

std::string MatModel::stem() const {
    return fileStem("mat-" + std::string(paperName(chosenPaper())) + "-" + drawn_);
}

std::string MatModel::title() const {
    return desk_->say({"mat.fileTitle", {{"name", drawn_}}}).toStdString();
}

}  // namespace burrow
