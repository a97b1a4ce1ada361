// Second opinions on moults: a question out, an answer back.
#include <memory>

#include "base/files.h"
#include "exchange/opinion.h"
#include "room/sex_case.h"
#include "room/tables.h"
#include "terminal/describe_sex.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct Typed {
    Path book;
    Path file;
    Path out;
    Path photos;
    std::string tag;
    std::string day;
    std::string note;
    std::string sex;
    std::string clarity;
    std::string judge;
};

/// The moult that is asked about: that of the day where one was typed, else the newest with a photo.
Result<PhotographedMoult> chosenMoult(Book& book, const Setting& setting, const Typed& typed) {
    BURROW_TRY(const auto subject, findSubject(book, typed.tag));
    BURROW_TRY(const auto day, maybeDay(typed.day));
    BURROW_TRY(const auto tables, tablesOf(book, setting));
    BURROW_TRY(const auto found,
               sexCase(book, subject, tables->sexing, setting.reference.profiles));
    if (found) {
        for (const auto& moult : found->moults) {
            if (!day || moult.day == *day) return moult;
        }
    }
    return fail(Trouble::notFound, {"opinion.nothingToAsk", {{"tag", typed.tag}}});
}

int ask(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToRead(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto moult = chosenMoult(*book, setting, typed);
    if (!moult) return console.trouble(moult.error());
    const auto question = exchange::askOpinion(*book, moult->moult, typed.out, typed.note);
    if (!question) return console.trouble(question.error());
    console.line(console.say({"opinion.asked",
                              {{"count", static_cast<std::int64_t>(question->photos.size())},
                               {"day", moult->day},
                               {"file", typed.out.string()}}}));
    console.line(console.say(Message{"opinion.privacy"}));
    console.value({{"file", typed.out.string()},
                   {"question", question->id.text()},
                   {"photos", question->photos.size()}});
    return done;
}

Message holds(const exchange::OpinionQuestion& question) {
    Message message(question.species.empty() ? "opinion.holdsUnnamed"
                    : question.carapace      ? "opinion.holdsSized"
                                             : "opinion.holds");
    message.arguments = {{"species", question.species},
                         {"size", question.carapace.value_or(Millimetres{}).value},
                         {"count", static_cast<std::int64_t>(question.photos.size())}};
    return message;
}

json toJson(const exchange::OpinionQuestion& question) {
    json value{{"question", question.id.text()},
               {"species", question.species},
               {"carapace_mm", question.carapace ? json(question.carapace->value) : json()},
               {"span_mm", question.span ? json(question.span->value) : json()},
               {"note", question.note},
               {"photos", json::array()}};
    for (const auto& photo : question.photos) value["photos"].push_back(photo.picture.hex());
    return value;
}

Result<exchange::OpinionAnswer> answerTo(const exchange::OpinionQuestion& question,
                                         const Typed& typed) {
    const auto sex = parseTerm<Sex>(typed.sex);
    const auto clarity = parseTerm<Clarity>(typed.clarity);
    if (!sex || !clarity) {
        return fail(Trouble::badInput, {"field.unreadable",
                                        {{"field", std::string(sex ? "clarity" : "sex")},
                                         {"value", sex ? typed.clarity : typed.sex}}});
    }
    return exchange::OpinionAnswer{question.id, *sex, *clarity, typed.judge, typed.note};
}

int judgeQuestion(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    DeviceFiles files;
    const auto question = typed.photos.empty()
                              ? exchange::peekQuestion(typed.file)
                              : exchange::openQuestion(typed.file, typed.photos, files);
    if (!question) return console.trouble(question.error());
    auto value = toJson(*question);
    if (typed.out.empty()) {
        console.line(console.say(holds(*question)));
        if (!question->note.empty()) console.line(question->note);
        console.value(value);
        return done;
    }
    const auto answer = answerTo(*question, typed);
    if (!answer) return console.trouble(answer.error());
    const auto written = exchange::writeAnswer(*answer, typed.out);
    if (!written) return console.trouble(written.error());
    console.line(console.say({"opinion.answered", {{"file", typed.out.string()}}}));
    value["file"] = typed.out.string();
    console.value(value);
    return done;
}

int takeIn(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    auto book = openToWrite(typed.book, setting);
    if (!book) return console.trouble(book.error());
    const auto taken = exchange::takeAnswer(*book, typed.file);
    if (!taken) return console.trouble(taken.error());
    const auto who = kept(*book, taken->subject);
    if (!who) return console.trouble(who.error());
    const auto number = *who ? (*who)->subject.number : std::string();
    const auto& answer = taken->answer;
    if (taken->isKnown) {
        console.line(console.say(Message{"opinion.known"}));
    } else {
        console.line(console.say({"opinion.taken." + std::string(name(answer.sex)),
                                  {{"judge", answer.judge},
                                   {"clarity", std::string(name(answer.clarity))},
                                   {"tag", number}}}));
    }
    console.value({{"code", number},
                   {"moult", taken->moult.text()},
                   {"sex", std::string(name(answer.sex))},
                   {"clarity", std::string(name(answer.clarity))},
                   {"judge", answer.judge},
                   {"known", taken->isKnown}});
    return done;
}

}  // namespace

void addOpinionCommands(CLI::App& app, Command& chosen) {
    auto typed = std::make_shared<Typed>();
    auto& t = *typed;
    auto* out = addCommand(app, t.book, chosen, "ask",
                           "A file with the photos of a moult, for another keeper's opinion.",
                           "burrow ask kiln-row.book 214 --out 214.burrowask",
                           [typed](const Setting& s) { return ask(s, *typed); });
    out->add_option("TAG", t.tag, "its number, or the code of its tag")->required();
    out->add_option("--out", t.out, "the file")->required();
    out->add_option("--day", t.day, "of the moult, YYYY-MM-DD (the newest with a photo)");
    out->add_option("--note", t.note, "what you want to ask");

    auto* judge =
        app.add_subcommand("judge", "What is asked in such a file; and your answer to it.");
    judge->footer(
        "Example:\n  burrow judge 214.burrowask --photos look/\n"
        "  burrow judge 214.burrowask --sex female --clarity clearly --name Wren "
        "--out 214.burrowsaid");
    judge->add_option("FILE", t.file, "the question")->required();
    judge->add_option("--photos", t.photos, "put the photos into this folder");
    auto* answer = judge->add_option("--out", t.out, "write the answer to this file");
    auto* sex = judge->add_option("--sex", t.sex, "female, male or unknown");
    auto* clarity = judge->add_option("--clarity", t.clarity,
                                      "barely, partly, fairly, clearly or beyond_doubt");
    auto* name = judge->add_option("--name", t.judge, "how you want to be called");
    judge->add_option("--note", t.note, "what you want to add");
    answer->needs(sex)->needs(clarity)->needs(name);
    sex->needs(answer);
    judge->callback([&chosen, typed] {
        chosen = [typed](const Setting& s) { return judgeQuestion(s, *typed); };
    });

    auto* in = addCommand(app, t.book, chosen, "answer", "Take another keeper's answer in.",
                          "burrow answer kiln-row.book 214.burrowsaid",
                          [typed](const Setting& s) { return takeIn(s, *typed); });
    in->add_option("FILE", t.file, "the answer")->required();
}

}  // namespace burrow::terminal
