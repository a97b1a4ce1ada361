// One function for each command of `burrow`: takes what was typed, gives the exit status.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "terminal/session.h"

namespace burrow::terminal {

using Path = std::filesystem::path;

int newBook(const Setting& setting, const Path& book, const std::string& room,
            const std::string& code);

struct DemoOptions {
    int animals = 120;
    int years = 4;
    std::uint64_t seed = 1;
    std::string until;  ///< today where empty
};
int demo(const Setting& setting, const Path& book, const DemoOptions& options);

struct BringFiles {
    Path animals;
    Path enclosures;
    Path events;
    Path tags;
    Path settings;
    Path photos;             ///< the folder they stand in
    std::vector<Path> maps;  ///< each for the file of its kind
    bool skipBad = false;
};
int bringIn(const Setting& setting, const Path& book, const BringFiles& files);

int due(const Setting& setting, const Path& book, const std::string& on);
/// `care` names one kind; empty means all.
int why(const Setting& setting, const Path& book, const std::string& tag, const std::string& care,
        const std::string& on);
int show(const Setting& setting, const Path& book, const std::string& tag);
int scan(const Setting& setting, const Path& book, const Path& picture);
int log(const Setting& setting, const Path& book, const std::string& tag, const std::string& kind,
        const std::vector<std::string>& fields, const std::string& at);
int undo(const Setting& setting, const Path& book);
int checkBook(const Setting& setting, const Path& book, bool repairIt);

struct TagOptions {
    Path out;
    bool letter = false;
    int blank = 0;                  ///< so many tags without an animal
    std::vector<std::string> tags;  ///< everyone on the books where empty
};
int tagSheet(const Setting& setting, const Path& book, const TagOptions& options);
int careSheet(const Setting& setting, const Path& book, const std::string& tag, const Path& out);

struct RuleOptions {
    std::string id;                    ///< empty: all of them
    std::optional<std::string> value;  ///< to be set; empty gives back what holds without it
    std::string species;               ///< whom the value is for: one of these, or everyone
    std::string place;
    std::string tag;
    int previewDays = 0;  ///< show what would change instead of changing it
};
/// Lists the rules, sets one for this book, or shows what setting it would do.
int rules(const Setting& setting, const Path& book, const RuleOptions& options);

}  // namespace burrow::terminal
