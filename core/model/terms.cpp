#include "model/terms.h"

#include <array>
#include <span>
#include <string>

#include "base/text.h"

namespace burrow {
namespace {

template <class Term>
struct Spelling {
    std::string_view text;
    Term term;
};

// The first spelling of each term is the one that files use.
constexpr std::array<Spelling<Form>, 4> forms{{
    {"animal", Form::animal},
    {"group", Form::group},
    {"lot", Form::lot},
    {"communal", Form::group},
}};
constexpr std::array<Spelling<Sex>, 13> sexes{{
    {"unknown", Sex::unknown},
    {"female", Sex::female},
    {"male", Sex::male},
    {"unsexed", Sex::unknown},
    {"u", Sex::unknown},
    {"?", Sex::unknown},
    {"0.0.1", Sex::unknown},
    {"f", Sex::female},
    {"0.1", Sex::female},
    {"0.1.0", Sex::female},
    {"m", Sex::male},
    {"1.0", Sex::male},
    {"1.0.0", Sex::male},
}};
constexpr std::array<Spelling<Standing>, 13> standings{{
    {"here", Standing::here},
    {"on_loan", Standing::onLoan},
    {"dead", Standing::dead},
    {"sold", Standing::sold},
    {"given", Standing::given},
    {"alive", Standing::here},
    {"kept", Standing::here},
    {"loan", Standing::onLoan},
    {"loaned", Standing::onLoan},
    {"lent", Standing::onLoan},
    {"died", Standing::dead},
    {"given_away", Standing::given},
    {"away_on_loan", Standing::onLoan},
}};
constexpr std::array<Spelling<Outcome>, 13> outcomes{{
    {"ate", Outcome::ate},
    {"part", Outcome::part},
    {"refused", Outcome::refused},
    {"left_in", Outcome::leftIn},
    {"took", Outcome::ate},
    {"took_it", Outcome::ate},
    {"eaten", Outcome::ate},
    {"accepted", Outcome::ate},
    {"partly", Outcome::part},
    {"ate_part", Outcome::part},
    {"left", Outcome::leftIn},
    {"left_it_in", Outcome::leftIn},
    {"leftin", Outcome::leftIn},
}};
constexpr std::array<Spelling<Method>, 3> methods{{
    {"eye", Method::eye},
    {"ruler", Method::ruler},
    {"photo", Method::photo},
}};
constexpr std::array<Spelling<PhotoRole>, 3> roles{{
    {"animal", PhotoRole::animal},
    {"moult", PhotoRole::moult},
    {"enclosure", PhotoRole::enclosure},
}};

constexpr std::array<Spelling<Clarity>, 6> clarities{{
    {"barely", Clarity::barely},
    {"partly", Clarity::partly},
    {"fairly", Clarity::fairly},
    {"clearly", Clarity::clearly},
    {"beyond_doubt", Clarity::beyondDoubt},
    {"beyonddoubt", Clarity::beyondDoubt},
}};
constexpr std::array<Spelling<Look>, 7> looks{{
    {"moult", Look::moult},
    {"underside", Look::underside},
    {"mature", Look::mature},
    {"colour", Look::colour},
    {"molt", Look::moult},
    {"ventral", Look::underside},
    {"color", Look::colour},
}};

template <class Term>
constexpr auto& spellings() {
    if constexpr (std::is_same_v<Term, Form>) {
        return forms;
    } else if constexpr (std::is_same_v<Term, Sex>) {
        return sexes;
    } else if constexpr (std::is_same_v<Term, Standing>) {
        return standings;
    } else if constexpr (std::is_same_v<Term, Outcome>) {
        return outcomes;
    } else if constexpr (std::is_same_v<Term, Method>) {
        return methods;
    } else if constexpr (std::is_same_v<Term, Clarity>) {
        return clarities;
    } else if constexpr (std::is_same_v<Term, Look>) {
        return looks;
    } else {
        return roles;
    }
}

}  // namespace

std::string normalTerm(std::string_view text) {
    auto result = lowerAscii(trimmed(text));
    for (auto& c : result) {
        if (c == ' ' || c == '-') c = '_';
    }
    return result;
}

template <class Term>
std::string_view name(Term term) {
    for (const auto& spelling : spellings<Term>()) {
        if (spelling.term == term) return spelling.text;
    }
    return {};
}

template <class Term>
std::optional<Term> parseTerm(std::string_view text) {
    const auto wanted = normalTerm(text);
    for (const auto& spelling : spellings<Term>()) {
        if (spelling.text == wanted) return spelling.term;
    }
    return std::nullopt;
}

template std::string_view name(Form);
template std::string_view name(Sex);
template std::string_view name(Standing);
template std::string_view name(Outcome);
template std::string_view name(Method);
template std::string_view name(PhotoRole);
template std::string_view name(Clarity);
template std::string_view name(Look);
template std::optional<Form> parseTerm(std::string_view);
template std::optional<Sex> parseTerm(std::string_view);
template std::optional<Standing> parseTerm(std::string_view);
template std::optional<Outcome> parseTerm(std::string_view);
template std::optional<Method> parseTerm(std::string_view);
template std::optional<PhotoRole> parseTerm(std::string_view);
template std::optional<Clarity> parseTerm(std::string_view);
template std::optional<Look> parseTerm(std::string_view);

}  // namespace burrow
