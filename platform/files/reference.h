// The words, species, rules and tables that travel inside the program.
#pragma once

#include "base/result.h"
#include "husbandry/profiles.h"
#include "husbandry/rules.h"
#include "room/own_numbers.h"
#include "words/words.h"

namespace burrow {

struct Reference {
    Words words;
    Profiles profiles;
    Rules rules;
    NumberTables numbers;
};

/// Fails only in a broken build: a test loads the same files.
Result<Reference> loadReference();

}  // namespace burrow
