// How a command comes to be known: its name, its words and what it does.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <string>

#include "terminal/commands.h"

namespace burrow::terminal {

using Command = std::function<int(const Setting&)>;

/// A command on a book, whose path CLI11 puts into `book`. When it is typed, it becomes `chosen`.
inline CLI::App* addCommand(CLI::App& app, Path& book, Command& chosen, const std::string& name,
                            const std::string& what, const std::string& example, Command command) {
    auto* sub = app.add_subcommand(name, what);
    sub->footer("Example:\n  " + example);
    sub->add_option("BOOK", book, "the book's file")->required();
    sub->callback([&chosen, command = std::move(command)] { chosen = command; });
    return sub;
}

/// Differences of books that were united, and taking a merge back.
void addDifferenceCommands(CLI::App& app, Command& chosen);
/// The species known in a book, and profiles of the keeper's own.
void addProfileCommands(CLI::App& app, Command& chosen);
/// Finding animals by what is written of them.
void addFindCommand(CLI::App& app, Command& chosen);
/// Keeping copies of a book, and going back to one.
void addBackupCommands(CLI::App& app, Command& chosen);
/// Bundles out and in, and shared folders.
void addExchangeCommands(CLI::App& app, Command& chosen);
void addShareCommand(CLI::App& app, Command& chosen);
/// Taking everything along, due dates for a calendar, and mappings of spreadsheets.
void addLeavingCommands(CLI::App& app, Command& chosen);
/// Who has outgrown its home, and the moves.
void addHomesCommand(CLI::App& app, Command& chosen);
/// Readings of temperature and humidity.
void addAirCommand(CLI::App& app, Command& chosen);
/// Prey that will be used and what to buy, and the evenings on which to feed whom.
void addAheadCommands(CLI::App& app, Command& chosen);
/// What to do before, during and after an absence, and the sheet for a sitter.
void addAwayCommand(CLI::App& app, Command& chosen);
/// The evidence for an animal's sex, whose moults wait, sizes over its moults, and second opinions.
void addSexCommands(CLI::App& app, Command& chosen);
/// What a device would remind of.
void addReminderCommand(CLI::App& app, Command& chosen);
/// The numbers of the tables, and the keeper's own.
void addNumbersCommand(CLI::App& app, Command& chosen);
/// The mat, lengths in photos of it, and photos made flat.
void addMeasureCommands(CLI::App& app, Command& chosen);

}  // namespace burrow::terminal
