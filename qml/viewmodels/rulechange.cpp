#include "viewmodels/rulechange.h"

namespace burrow {
namespace {

const char* saidOf(const RuleChange& change) {
    if (!change.isTakenBack()) return "did.ruleChanged";
    return change.key.scope == RuleScope::everyone ? "did.ruleReset" : "did.ruleTakenBack";
}

}  // namespace

Deed deedOf(const RuleChange& change, const Room& room) {
    Deed deed;
    deed.tag = QString::fromStdString(room.info().code);
    if (change.key.scope == RuleScope::animal) {
        const auto id = Uuid::parse(change.key.of);
        const auto resident = id ? room.find(SubjectId{*id}) : nullptr;
        if (resident) deed.tag = QString::fromStdString(resident->subject().number);
    }
    deed.said = {saidOf(change)};
    deed.compose = [change](Book& book) -> Result<std::vector<Draft>> {
        BURROW_TRY(const auto info, roomInfo(book));
        const auto fields = fieldsOf(change, info);
        std::vector<Draft> drafts;
        if (!fields.empty()) drafts.emplace_back(SetDraft{ThingType::book, book.id().uuid, fields});
        return drafts;
    };
    return deed;
}

}  // namespace burrow
