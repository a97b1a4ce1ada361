// Commands that make PDF files.
#include "room/sheets.h"
#include "tags/code.h"
#include "terminal/commands.h"
#include "terminal/printing.h"

namespace burrow::terminal {
namespace {

/// Those asked for, else everyone on the books.
Result<std::vector<ResidentPtr>> chosen(Book& book, const Room& room,
                                        const std::vector<std::string>& tags) {
    std::vector<ResidentPtr> residents;
    for (const auto& tag : tags) {
        BURROW_TRY(const auto id, findSubject(book, tag));
        residents.push_back(room.find(id));
    }
    if (!tags.empty()) return residents;
    for (const auto& resident : room.residents()) {
        if (resident->subject().isKept()) residents.push_back(resident);
    }
    return residents;
}

Result<std::vector<documents::Page>> sheets(const Setting& setting, const Path& path,
                                            const TagOptions& options, const Printing& printing) {
    BURROW_TRY(auto book, openToWrite(path, setting));
    const auto& words = setting.reference.words;
    const auto paper = options.letter ? documents::Paper::letter : documents::Paper::a4;
    if (options.blank > 0) {
        BURROW_TRY(const auto info, roomInfo(book));
        std::vector<std::string> codes;
        for (int i = 0; i < options.blank; ++i) codes.push_back(tags::generateCode(setting.random));
        return documents::blankTagSheets(info.name, paper, codes, words, printing.measure());
    }
    BURROW_TRY(const auto first, roomOn(book, setting, std::nullopt));
    BURROW_TRY(const auto wanted, chosen(book, first, options.tags));
    if (wanted.empty()) return fail(Trouble::notFound, {"print.nobody"});
    BURROW_DO(giveTags(book, wanted));
    BURROW_TRY(const auto room, roomOn(book, setting, std::nullopt));
    std::vector<documents::TagLabel> labels;
    for (const auto& resident : wanted) {
        labels.push_back(tagLabelFor(*room.find(resident->subject().id)));
    }
    return documents::tagSheets(room.info().name, paper, labels, words, printing.measure());
}

Result<documents::Page> sheetFor(const Setting& setting, const Path& path, const std::string& tag,
                                 const Printing& printing) {
    BURROW_TRY(auto book, openToRead(path, setting));
    BURROW_TRY(const auto id, findSubject(book, tag));
    BURROW_TRY(const auto room, roomOn(book, setting, std::nullopt));
    const auto resident = room.find(id);
    BURROW_TRY(const auto facts, history(book, id, wholeHistory));
    const auto& words = setting.reference.words;
    return documents::careSheet(careSheetFor(*resident, room, facts, words), words,
                                printing.measure());
}

}  // namespace

int tagSheet(const Setting& setting, const Path& path, const TagOptions& options) {
    auto& console = setting.console;
    Printing printing;
    if (const auto started = printing.start(); !started) return console.trouble(started.error());
    const auto pages = sheets(setting, path, options, printing);
    if (!pages) return console.trouble(pages.error());
    const auto written = printing.write(options.out, *pages, "Burrowbook tags");
    if (!written) return console.trouble(written.error());
    const auto count = static_cast<std::int64_t>(pages->size());
    console.line(console.say({"said.printed", {{"pages", count}, {"file", options.out.string()}}}));
    console.value({{"file", options.out.string()}, {"pages", count}});
    return done;
}

int careSheet(const Setting& setting, const Path& path, const std::string& tag, const Path& out) {
    auto& console = setting.console;
    Printing printing;
    if (const auto started = printing.start(); !started) return console.trouble(started.error());
    const auto page = sheetFor(setting, path, tag, printing);
    if (!page) return console.trouble(page.error());
    const auto written = printing.write(out, std::span(&*page, 1), "Burrowbook care sheet");
    if (!written) return console.trouble(written.error());
    console.line(console.say({"said.printed", {{"pages", 1}, {"file", out.string()}}}));
    console.value({{"file", out.string()}, {"pages", 1}});
    return done;
}

}  // namespace burrow::terminal
