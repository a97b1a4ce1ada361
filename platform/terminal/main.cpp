// `burrow`: the book from a shell, for scripts, tests and work at a desk.
#include <fmt/format.h>

#include <QString>

#include "terminal/registry.h"

using namespace burrow;
using namespace burrow::terminal;

namespace {

/// The zone asked for, else that of TZ where it names one, else the device's.
Result<Zone> zoneFor(const std::string& asked) {
    if (!asked.empty()) return Zone::named(asked);
    if (const char* name = std::getenv("TZ"); name != nullptr && *name != '\0') {
        if (auto zone = Zone::named(name)) return zone;
    }
    return Zone::ofDevice();
}

std::string kindsHelp() {
    std::string text = "Kinds and an example of their fields:\n";
    for (const auto& kind : factKinds()) {
        text += fmt::format("  {:<15}{}\n", kind.name, kind.example);
    }
    return text + "Every kind takes text=... too.\n";
}

/// What is typed, in one place: CLI11 fills it, and the chosen command reads it.
struct Typed {
    Path book;
    std::string zone;
    std::string tag;
    std::string on;
    std::string at;
    std::string kind;
    std::string room;
    std::string code;
    std::vector<std::string> fields;
    Path picture;
    Path out;
    bool json = false;
    bool repair = false;
    std::string paper = "a4";
    std::string care;
    RuleOptions rule;
    BringFiles files;
    DemoOptions demo;
    TagOptions tags;
};

void addBookCommands(CLI::App& app, Typed& t, Command& chosen) {
    auto* made = addCommand(app, t.book, chosen, "new", "Start a new, empty book.",
                            "burrow new kiln-row.book --room \"Kiln Row\" --code KR",
                            [&](const Setting& s) { return newBook(s, t.book, t.room, t.code); });
    made->add_option("--room", t.room, "name of the room")->required();
    made->add_option("--code", t.code, "short code, printed before numbers")->required();

    auto* demo =
        addCommand(app, t.book, chosen, "demo", "Make an invented room with years of records.",
                   "burrow demo demo.book --animals 120 --years 4 --seed 1 --until 2026-05-08",
                   [&](const Setting& s) { return terminal::demo(s, t.book, t.demo); });
    demo->add_option("--animals", t.demo.animals, "how many")->check(CLI::Range(1, 20'000));
    demo->add_option("--years", t.demo.years, "of history")->check(CLI::Range(1, 20));
    demo->add_option("--seed", t.demo.seed, "the same seed makes the same room");
    demo->add_option("--until", t.demo.until, "last day, YYYY-MM-DD (today)");

    auto* bring = addCommand(app, t.book, chosen, "bring",
                             "Bring records in from CSV files: all of them, or none.",
                             "burrow bring kiln-row.book --animals animals.csv --events events.csv",
                             [&](const Setting& s) { return bringIn(s, t.book, t.files); });
    bring->add_option("--animals", t.files.animals,
                      "CSV: code,species,sex,hatched_on,acquired_on,source,status,place,enclosure,"
                      "mother,father,count");
    bring->add_option("--enclosures", t.files.enclosures,
                      "CSV: code,length_mm,width_mm,height_mm,substrate_mm,place");
    bring->add_option("--events", t.files.events,
                      "CSV: code,at,event,prey,prey_mm,count,outcome,span_mm,note");
    bring->add_option("--tags", t.files.tags, "CSV: code,side_mm,animal,enclosure");
    bring->add_option("--settings", t.files.settings, "CSV: name,value");
    bring->add_option("--photos", t.files.photos, "the folder of the photos that the events name");
    bring
        ->add_option("--map", t.files.maps,
                     "how the file of its kind is to be read, made by `burrow map`")
        ->allow_extra_args(false);
    bring->add_flag("--skip-bad", t.files.skipBad,
                    "bring in the good rows, write the others to FILE.bad.csv");

    auto* check = addCommand(app, t.book, chosen, "check", "Look a book over: is it whole?",
                             "burrow check kiln-row.book",
                             [&](const Setting& s) { return checkBook(s, t.book, t.repair); });
    check->add_flag("--repair", t.repair, "first rebuild all that follows from the journal");
}

void addCareCommands(CLI::App& app, Typed& t, Command& chosen) {
    auto* due = addCommand(app, t.book, chosen, "due", "What is due, in the order of the shelves.",
                           "burrow due kiln-row.book --on 2026-05-08",
                           [&](const Setting& s) { return terminal::due(s, t.book, t.on); });
    due->add_option("--on", t.on, "day, YYYY-MM-DD (today)");

    auto* why =
        addCommand(app, t.book, chosen, "why", "Why something is due for an animal, or is not.",
                   "burrow why kiln-row.book 214 feed --on 2026-05-08",
                   [&](const Setting& s) { return terminal::why(s, t.book, t.tag, t.care, t.on); });
    why->add_option("TAG", t.tag, "its number, or the code of its tag")->required();
    why->add_option("KIND", t.care,
                    "only this one: leftovers, look, feed, water, damp, moult_check, headcount, "
                    "measure, breeding, rehouse, quarantine");
    why->add_option("--on", t.on, "day, YYYY-MM-DD (today)");

    auto* scan = addCommand(app, t.book, chosen, "scan", "Read the tag in a picture (JPEG or PNG).",
                            "burrow scan kiln-row.book tub.jpg",
                            [&](const Setting& s) { return terminal::scan(s, t.book, t.picture); });
    scan->add_option("PICTURE", t.picture, "the picture")->required();

    auto* log = addCommand(
        app, t.book, chosen, "log", "Log what happened to an animal.",
        "burrow log kiln-row.book 214 offered prey=cricket prey_mm=8 outcome=ate\n" + kindsHelp(),
        [&](const Setting& s) { return terminal::log(s, t.book, t.tag, t.kind, t.fields, t.at); });
    log->add_option("TAG", t.tag, "its number, or the code of its tag")->required();
    log->add_option("KIND", t.kind, "what happened")->required();
    log->add_option("FIELDS", t.fields, "field=value ...");
    log->add_option("--at", t.at, "when: 2026-05-08 or 2026-05-08T21:14 (now)");

    addCommand(app, t.book, chosen, "undo", "Take back what was logged last.",
               "burrow undo kiln-row.book",
               [&](const Setting& s) { return terminal::undo(s, t.book); });

    auto* show = addCommand(app, t.book, chosen, "show", "An animal and its history.",
                            "burrow show kiln-row.book 214",
                            [&](const Setting& s) { return terminal::show(s, t.book, t.tag); });
    show->add_option("TAG", t.tag, "its number, or the code of its tag")->required();

    auto* rules = addCommand(
        app, t.book, chosen, "rules", "The rules of thumb with their sources, and your own values.",
        "burrow rules kiln-row.book feed.interval.adult 8-12 --place Nursery --preview 28",
        [&](const Setting& s) { return terminal::rules(s, t.book, t.rule); });
    rules->add_option("RULE", t.rule.id, "only this one");
    rules->add_option("VALUE", t.rule.value, "your own value; \"\" gives the one below it back");
    auto* species = rules->add_option("--species", t.rule.species, "for a species");
    auto* place = rules->add_option("--place", t.rule.place, "for a room, a rack or a shelf");
    auto* animal = rules->add_option("--animal", t.rule.tag, "for the one with this number");
    species->excludes(place)->excludes(animal);
    place->excludes(animal);
    rules
        ->add_option("--preview", t.rule.previewDays,
                     "change nothing; show what would be different in so many days")
        ->check(CLI::Range(1, 365));
}

void addPrintCommands(CLI::App& app, Typed& t, Command& chosen) {
    auto* tags = addCommand(app, t.book, chosen, "tags", "A sheet of tags to cut out, as PDF.",
                            "burrow tags kiln-row.book --out tags.pdf", [&](const Setting& s) {
                                t.tags.out = t.out;
                                t.tags.letter = t.paper == "letter";
                                return tagSheet(s, t.book, t.tags);
                            });
    tags->add_option("TAGS", t.tags.tags, "only these numbers (everyone)");
    tags->add_option("--out", t.out, "the PDF")->required();
    tags->add_option("--paper", t.paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
    tags->add_option("--blank", t.tags.blank, "so many tags without an animal, bound at first scan")
        ->check(CLI::Range(1, 2700));

    auto* sheet =
        addCommand(app, t.book, chosen, "caresheet", "A care sheet for whoever takes the animal.",
                   "burrow caresheet kiln-row.book 214 --out 214.pdf",
                   [&](const Setting& s) { return careSheet(s, t.book, t.tag, t.out); });
    sheet->add_option("TAG", t.tag, "its number, or the code of its tag")->required();
    sheet->add_option("--out", t.out, "the PDF")->required();
}

int run(int argc, char** argv) {
    CLI::App app("Burrowbook from a shell: the record book of an arachnid room.", "burrow");
    Typed typed;
    Command chosen;
    app.add_flag("--json", typed.json, "answer in JSON");
    app.add_option("--zone", typed.zone, "time zone, such as Europe/Berlin (the device's)");
    app.set_version_flag("--version", std::string("burrow ") + BURROW_VERSION);
    app.require_subcommand(1);
    app.fallthrough();
    addBookCommands(app, typed, chosen);
    addCareCommands(app, typed, chosen);
    addPrintCommands(app, typed, chosen);
    addFindCommand(app, chosen);
    addProfileCommands(app, chosen);
    addDifferenceCommands(app, chosen);
    addBackupCommands(app, chosen);
    addExchangeCommands(app, chosen);
    addLeavingCommands(app, chosen);
    addHomesCommand(app, chosen);
    addAirCommand(app, chosen);
    addAheadCommands(app, chosen);
    addAwayCommand(app, chosen);
    addSexCommands(app, chosen);
    addReminderCommand(app, chosen);
    addNumbersCommand(app, chosen);
    addMeasureCommands(app, chosen);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return app.exit(error) == 0 ? done : notUnderstood;
    }

    const auto reference = loadReference();
    if (!reference) {
        fmt::print(stderr, "{}\n", reference.error().message.id);
        return refused;
    }
    const SystemClock clock;
    SystemRandom random;
    Console console(reference->words, {});
    console.useJson(typed.json);
    const auto zone = zoneFor(typed.zone);
    if (!zone) return console.trouble(zone.error());
    console.setToday(zone->dayOf(clock.now()));
    return chosen({clock, random, *zone, *reference, console});
}

}  // namespace

int main(int argc, char** argv) {
    // Qt's own warnings (a missing runtime folder, say) are nothing to a keeper or a script.
    qInstallMessageHandler([](QtMsgType type, const QMessageLogContext&, const QString& text) {
        if (type == QtCriticalMsg || type == QtFatalMsg)
            fmt::print(stderr, "{}\n", text.toStdString());
    });
    return run(argc, argv);
}
