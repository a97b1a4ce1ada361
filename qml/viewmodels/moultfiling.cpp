#include "viewmodels/moultfiling.h"

#include <algorithm>

namespace burrow {

void MoultFiling::setResident(const ResidentPtr& resident) {
    resident_ = resident;
    emit changed();
}

void MoultFiling::see(const std::vector<std::string>& codes) {
    desk_->ask<std::vector<SubjectId>>(
        this,
        [codes](Book& book) -> Result<std::vector<SubjectId>> {
            std::vector<SubjectId> all;
            for (const auto& code : codes) {
                BURROW_TRY(const auto tagged, subjectsTagged(book, code));
                all.insert(all.end(), tagged.begin(), tagged.end());
            }
            return all;
        },
        [this](const Result<std::vector<SubjectId>>& tagged) {
            if (!tagged) return refuse(tagged.error().message);
            weigh(*tagged);
        });
}

void MoultFiling::weigh(const std::vector<SubjectId>& tagged) {
    std::vector<ResidentPtr> found;
    for (const auto& id : tagged) {
        const auto resident = desk_->room() ? desk_->room()->find(id) : nullptr;
        const bool isThere = std::any_of(found.begin(), found.end(), [&id](const auto& other) {
            return other->subject().id == id;
        });
        if (resident && !isThere) found.push_back(resident);
    }
    if (found.empty()) {
        // A tag of another book says nothing about whose moult this is.
        if (!resident_) refuse({"moult.tagUnknown"});
        return;
    }
    const auto isMeant = [this](const ResidentPtr& resident) {
        return resident_ && resident->subject().id == resident_->subject().id;
    };
    if (std::any_of(found.begin(), found.end(), isMeant)) return;
    std::erase_if(found, [this](const ResidentPtr& resident) {
        return std::ranges::find(settled_, resident->subject().id) != settled_.end();
    });
    if (!resident_ && found.size() == 1) {
        note_ = desk_->say({"moult.filed", {{"tag", found.front()->subject().number}}});
        return fileUnder(found.front());
    }
    asked_ = std::move(found);
    emit changed();
}

QString MoultFiling::question() const {
    if (asked_.empty()) return {};
    if (asked_.size() > 1) return desk_->say("moult.whichOfThese");
    return desk_->say({"moult.otherTag", {{"tag", asked_.front()->subject().number}}});
}

QVariantList MoultFiling::choices() const {
    QVariantList list;
    const auto add = [&](const ResidentPtr& resident) {
        list.append(QVariantMap{{QStringLiteral("word"), toQt(resident->subject().number)},
                                {QStringLiteral("sub"), speciesText(*resident)}});
    };
    for (const auto& resident : asked_) add(resident);
    if (!asked_.empty() && resident_) add(resident_);
    return list;
}

void MoultFiling::choose(int at) {
    const auto index = static_cast<std::size_t>(at);
    if (at < 0 || index > asked_.size() || (index == asked_.size() && !resident_)) return;
    for (const auto& resident : asked_) settled_.push_back(resident->subject().id);
    const auto chosen = index < asked_.size() ? asked_[index] : resident_;
    note_.clear();
    fileUnder(chosen);
}

void MoultFiling::fileUnder(const ResidentPtr& resident) {
    asked_.clear();
    error_.clear();
    emit changed();
    emit found(toQt(resident->subject().id.text()));
}

void MoultFiling::whose(const QString& number) {
    const auto word = number.trimmed().toStdString();
    if (word.empty()) return;
    desk_->ask<std::vector<SubjectId>>(
        this, [word](Book& book) { return subjectsNumbered(book, word); },
        [this, word](const Result<std::vector<SubjectId>>& numbered) {
            if (!numbered) return refuse(numbered.error().message);
            const auto resident = numbered->size() == 1 && desk_->room()
                                      ? desk_->room()->find(numbered->front())
                                      : nullptr;
            if (resident) return fileUnder(resident);
            refuse({numbered->size() > 1 ? "tag.clash" : "moult.noNumber", {{"tag", word}}});
        });
}

void MoultFiling::refuse(const Message& message) {
    error_ = desk_->say(message);
    emit changed();
}

void MoultFiling::release() {
    if (note_.isEmpty() || !resident_) return;
    settled_.push_back(resident_->subject().id);
    note_.clear();
    emit changed();
    emit found(QString());
}

void MoultFiling::clearError() {
    if (error_.isEmpty()) return;
    error_.clear();
    emit changed();
}

}  // namespace burrow
