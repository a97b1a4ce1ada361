#include "viewmodels/caresheetmodel.h"

#include "room/sheets.h"
#include "viewmodels/deeds.h"
#include "viewmodels/files.h"
#include "viewmodels/wording.h"

namespace burrow {

void CareSheetModel::setSubject(const QString& subject) {
    if (subject_ == subject) return;
    subject_ = subject;
    if (isReady()) read();
    emit subjectChanged();
}

void CareSheetModel::read() {
    resident_ = residentOf(*desk_, subject_);
    if (!resident_) return showPages({});
    desk_->ask<std::vector<Fact>>(
        this,
        [id = resident_->subject().id](Book& book) { return history(book, id, wholeHistory); },
        [this](Result<std::vector<Fact>> facts) {
            if (!facts) return tell(facts.error());
            if (!resident_ || !desk_->room()) return;
            layOut([resident = resident_, room = desk_->room(), facts = *std::move(facts),
                    &words = desk_->knowledge().words](const documents::TextMeasure& measure)
                       -> Result<std::vector<documents::Page>> {
                BURROW_TRY(auto page,
                           documents::careSheet(careSheetFor(*resident, *room, facts, words), words,
                                                measure));
                return std::vector<documents::Page>{std::move(page)};
            });
        });
}

std::string CareSheetModel::stem() const {
    if (!resident_) return {};
    const auto& code = desk_->room()->info().code;
    const auto number = resident_->subject().number;
    return fileStem((code.empty() ? number : code + "-" + number) + "-care-sheet");
}

std::string CareSheetModel::title() const {
    return desk_
        ->say({"careSheet.fileTitle",
               {{"tag", tag().toStdString()}, {"species", binomial().toStdString()}}})
        .toStdString();
}

QString CareSheetModel::tag() const {
    return resident_ ? toQt(resident_->subject().number) : QString();
}

QString CareSheetModel::binomial() const { return resident_ ? speciesText(*resident_) : QString(); }

bool CareSheetModel::lacksContact() const {
    return isReady() && desk_->room()->info().contact.empty();
}

QString CareSheetModel::gap() const {
    if (!resident_ || resident_->profile != nullptr) return {};
    return desk_->say({"careSheet.unknownSpecies", {{"species", binomial().toStdString()}}});
}

}  // namespace burrow
