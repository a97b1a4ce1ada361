// The room "Kiln Row" on paper: invented animals of real species, for tests of printed sheets.
#pragma once

#include <string>
#include <vector>

#include "base/random.h"
#include "documents/caresheet.h"
#include "documents/tagsheet.h"
#include "tags/code.h"

namespace burrow::test {

inline std::vector<std::string> codes(std::size_t count, std::uint64_t seed = 1) {
    SeededRandom random(seed);
    std::vector<std::string> all;
    while (all.size() < count) all.push_back(tags::generateCode(random));
    return all;
}

/// Twenty-seven tags, one full A4 sheet, with the longest names and every set of cautions.
inline std::vector<documents::TagLabel> labels() {
    using enum Caution;
    std::vector<documents::TagLabel> all{
        {"", "214", "Brachypelma hamorii", Form::animal, Sex::female, {hairs}},
        {"", "087", "Poecilotheria regalis", Form::animal, Sex::female, {strongVenom, fast}},
        {"", "302", "Caribena versicolor", Form::animal, Sex::unknown, {fast, hairs}},
        {"", "118", "Grammostola pulchra", Form::animal, Sex::female, {hairs}},
        {"", "045", "Psalmopoeus irminia", Form::animal, Sex::male, {venom, fast}},
        {"", "260", "Neoholothele incei", Form::group, Sex::unknown, {fast, hairs}},
        {"", "331", "Caribena versicolor", Form::animal, Sex::unknown, {hairs}},
        {"",
         "1009",
         "Poecilotheria tigrinawesseli",
         Form::animal,
         Sex::unknown,
         {strongVenom, fast}},
        {"",
         "4340",
         "Dolichothele diamantinensis",
         Form::animal,
         Sex::female,
         {venom, fast, hairs}},
        {"", "010", "Pandinus imperator", Form::animal, Sex::male, {sting}},
        {"",
         "011",
         "Heterometrus spinifer",
         Form::animal,
         Sex::unknown,
         {strongVenom, sting, fast}},
        {"", "352", "Tliltocatl albopilosus", Form::lot, Sex::unknown, {hairs}},
        {"", "353", "Stromatopelma calceatum", Form::animal, Sex::female, {strongVenom, fast}},
        {"",
         "8888",
         "Poecilotheria tigrinawesseli",
         Form::animal,
         Sex::unknown,
         {strongVenom, sting, fast, hairs}},
        {"", "7", "Avicularia avicularia", Form::animal, Sex::unknown, {}},
    };
    for (int number = 400; all.size() < 27; ++number) {
        all.push_back({"",
                       std::to_string(number),
                       "Tliltocatl albopilosus",
                       Form::animal,
                       Sex::unknown,
                       {hairs}});
    }
    const auto fresh = codes(all.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i].code = fresh[i];
    return all;
}

inline CivilDay on(int year, int month, int day) { return *civilDay({year, month, day}); }

/// A tree-dwelling young one with hairs, five moults old.
inline documents::CareSheet slingSheet() {
    documents::CareSheet sheet;
    sheet.room = "Kiln Row";
    sheet.roomCode = "KR";
    sheet.contact = "bring this sheet to any Kiln Row table.";
    sheet.date = on(2026, 5, 16);
    sheet.revision = 6;
    sheet.number = "331";
    sheet.code = codes(1, 331).front();
    sheet.profile.emplace();
    sheet.profile->name = "Caribena versicolor";
    sheet.profile->habit.value = Habit::arboreal;
    sheet.profile->damp.value = Damp::moderate;
    sheet.profile->warmth.value = {{23}, {26}};
    sheet.profile->hairs.value = Hairs::abdomen;
    sheet.profile->housing = "Tall tub, 10x10x20 cm, holes on two sides, cork to climb.";
    sheet.profile->handling = "Do not. It jumps. Cover with a clear pot, slide card under.";
    sheet.span = Millimetres{11};
    sheet.hatched = on(2025, 11, 3);
    const auto moult = [](CivilDay day, double span) {
        return MoultMark{day, Millimetres{span}, std::nullopt};
    };
    sheet.moults = {moult(on(2025, 11, 4), 2.5), moult(on(2025, 12, 5), 4),
                    moult(on(2026, 1, 16), 5.5), moult(on(2026, 3, 5), 8),
                    moult(on(2026, 4, 27), 11)};
    for (int day = 12; day < 190; day += 6) {
        const auto outcome = day % 30 == 0 ? Outcome::refused : Outcome::ate;
        sheet.meals.push_back({on(2025, 11, 3) + day, "cricket", Millimetres{4}, 1, outcome});
    }
    sheet.sold = true;
    sheet.feeding = {4, 4, 1, "cricket", Millimetres{4}, 24};
    sheet.dampenEveryDays = 7;
    sheet.hardeningDays = 5;
    return sheet;
}

/// The most that a sheet has to hold: longest name, four digits, three cautions, trade listing.
inline documents::CareSheet crowdedSheet() {
    auto sheet = slingSheet();
    sheet.number = "1009";
    sheet.profile->name = "Poecilotheria tigrinawesseli";
    sheet.profile->order = Order::scorpion;
    sheet.profile->hairs.value = Hairs::none;
    sheet.profile->venom.value = Venom::significant;
    sheet.profile->fast.value = true;
    sheet.profile->listing.value = Listing::citesAppendixII;
    sheet.profile->listingAsOf = on(2019, 11, 26);
    sheet.feeding = {10, 14, 2, "crickets", Millimetres{22}, 24};
    sheet.sex = Sex::female;
    sheet.span = Millimetres{162.5};
    sheet.hatched.reset();
    sheet.acquired = on(2021, 3, 2);
    sheet.sold = false;
    return sheet;
}

/// An animal of a species that nothing is known of.
inline documents::CareSheet unknownSheet() {
    auto sheet = slingSheet();
    sheet.profile.reset();
    sheet.species = "Unheardofia incognita";
    return sheet;
}

/// Full sheets on both papers, blank stock on two sheets, and care sheets.
inline std::vector<documents::Page> everyPage(const Words& words,
                                              const documents::TextMeasure& measure) {
    using documents::Paper;
    const auto all = labels();
    const auto stock = codes(30, 9);
    std::vector<documents::Page> pages;
    for (const auto& sheets :
         {documents::tagSheets("Kiln Row", Paper::a4, all, words, measure),
          documents::tagSheets("Kiln Row", Paper::letter, all, words, measure),
          documents::blankTagSheets("Kiln Row", Paper::a4, stock, words, measure)}) {
        pages.insert(pages.end(), sheets->begin(), sheets->end());
    }
    for (const auto& sheet : {slingSheet(), crowdedSheet(), unknownSheet()}) {
        pages.push_back(documents::careSheet(sheet, words, measure).value());
    }
    return pages;
}

}  // namespace burrow::test
