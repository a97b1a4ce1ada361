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
constexpr std::array forms{Spelling{"animal", Form::animal}, Spelling{"group", Form::group},
                           Spelling{"lot", Form::lot}, Spelling{"communal", Form::group}};
constexpr std::array sexes{
    Spelling{"unknown", Sex::unknown}, Spelling{"female", Sex::female}, Spelling{"male", Sex::male},
    Spelling{"unsexed", Sex::unknown}, Spelling{"u", Sex::unknown},     Spelling{"?", Sex::unknown},
    Spelling{"0.0.1", Sex::unknown},   Spelling{"f", Sex::female},      Spelling{"0.1", Sex::female},
    Spelling{"0.1.0", Sex::female},    Spelling{"m", Sex::male},        Spelling{"1.0", Sex::male},
    Spelling{"1.0.0", Sex::male},
};
constexpr std::array standings{
    Spelling{"here", Standing::here},       Spelling{"on_loan", Standing::onLoan},
    Spelling{"dead", Standing::dead},       Spelling{"sold", Standing::sold},
    Spelling{"given", Standing::given},     Spelling{"alive", Standing::here},
    Spelling{"kept", Standing::here},       Spelling{"loan", Standing::onLoan},
    Spelling{"loaned", Standing::onLoan},   Spelling{"lent", Standing::onLoan},
    Spelling{"died", Standing::dead},       Spelling{"given_away", Standing::given},
    Spelling{"away_on_loan", Standing::onLoan},
};
constexpr std::array outcomes{
    Spelling{"ate", Outcome::ate},         Spelling{"part", Outcome::part},
    Spelling{"refused", Outcome::refused}, Spelling{"left_in", Outcome::leftIn},
    Spelling{"took", Outcome::ate},        Spelling{"took_it", Outcome::ate},
    Spelling{"eaten", Outcome::ate},       Spelling{"accepted", Outcome::ate},
    Spelling{"partly", Outcome::part},     Spelling{"ate_part", Outcome::part},
    Spelling{"left", Outcome::leftIn},     Spelling{"left_it_in", Outcome::leftIn},
    Spelling{"leftin", Outcome::leftIn},
};
constexpr std::array methods{Spelling{"eye", Method::eye}, Spelling{"ruler", Method::ruler},
                             Spelling{"photo", Method::photo}};
constexpr std::array roles{Spelling{"animal", PhotoRole::animal},
                           Spelling{"moult", PhotoRole::moult},
                           Spelling{"enclosure", PhotoRole::enclosure}};

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
template std::optional<Form> parseTerm(std::string_view);
template std::optional<Sex> parseTerm(std::string_view);
template std::optional<Standing> parseTerm(std::string_view);
template std::optional<Outcome> parseTerm(std::string_view);
template std::optional<Method> parseTerm(std::string_view);
template std::optional<PhotoRole> parseTerm(std::string_view);

}  // namespace burrow
