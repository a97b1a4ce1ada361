// A rule of the keeper's own, put straight into the book.
#pragma once

#include "viewmodels/desk_fixture.h"

namespace burrow::test {

/// `key` as in core/husbandry/rule_scope.h; null takes the value out.
inline void setRule(DeskFixture& at, const std::string& key, const nlohmann::json& value) {
    Deed deed;
    deed.compose = [key, value](Book& book) -> Result<std::vector<Draft>> {
        return std::vector<Draft>{
            SetDraft{ThingType::book, book.id().uuid, {{std::string(setting::rule) + key, value}}}};
    };
    at.desk.act(&at.desk, std::move(deed));
    at.settle();
    QVERIFY2(at.desk.trouble().isEmpty(), qPrintable(at.desk.trouble()));
}

/// The keeper's own values as the book holds them.
inline std::vector<OwnRule> rulesIn(const DeskFixture& at) { return at.desk.room()->info().rules; }

}  // namespace burrow::test
