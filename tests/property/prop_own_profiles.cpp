// The keeper's own species profiles: beside the shipped ones, in a book, and on two devices.
#include <set>

#include "husbandry/profile_file.h"
#include "room/own_profiles.h"
#include "room/room.h"
#include "support/joined.h"
#include "support/profiles.h"

using namespace burrow;
using namespace burrow::test;

namespace {

bool ownHold() {
    bool ok = true;
    ok &= rc::check(
        "shipped and own together: each is found by its valid name, none is there twice", [] {
            auto own = severalOwn();
            std::vector<NameClash> clashes;
            const auto all = shipped().with(own, &clashes);
            std::set<std::string> names;
            for (const auto& profile : all.all()) {
                RC_ASSERT(names.insert(profile.name).second);
                RC_ASSERT(all.find(profile.name) == &profile);
            }
            for (const auto& profile : own) {
                RC_ASSERT(all.find(profile.name)->origin == ProfileOrigin::keeper);
            }
            for (const auto& profile : shipped().all())
                RC_ASSERT(all.find(profile.name) != nullptr);
            for (const auto& clash : clashes) {
                const auto* found = all.find(clash.name);
                RC_ASSERT(found != nullptr && found->name == clash.holder);
            }
        });
    return ok;
}

std::vector<Profile> ownIn(Book& book) { return ownProfiles(roomInfo(book).value()).profiles; }

bool bookHolds() {
    Checks check;
    TestBook at;
    auto nova = newSpecies();
    nova.tradeNames = {"new one"};
    const auto animal = at.add("500", "new one");
    const auto rules = shippedRules();
    const Room::Reference reference{shipped(), rules};
    const PlanDay today{day("2026-05-08"), Zone::utc()};
    auto room = Room::load(at.book, reference, today).value();
    check.that(room.find(animal)->profile == nullptr, "a stranger at first");

    const auto kept = keepProfiles(at.book, shipped(), std::vector{nova}).value();
    check.that(kept.added == std::vector{nova.name} && kept.changes.settings, "added");
    room = room.after(at.book, reference, kept.changes).value();
    const auto resident = room.find(animal);
    check.that(resident->profile != nullptr && resident->profile->name == nova.name, "known now");
    check.that(room.profiles().all().size() == shipped().all().size() + 1, "one more");

    const auto again = keepProfiles(at.book, shipped(), std::vector{nova}).value();
    check.that(again.same == std::vector{nova.name} && again.changes.isEmpty(), "nothing written");
    auto changed = nova;
    changed.temperament.value = Temperament::defensive;
    check.that(keepProfiles(at.book, shipped(), std::vector{changed}).value().replaced.size() == 1,
               "replaced");
    must(at.book.undo());
    auto expected = nova;
    expected.origin = ProfileOrigin::keeper;
    check.that(ownIn(at.book) == std::vector{expected}, "undo brings the one before back");

    auto renamed = nova;
    renamed.name = "Novagenus altera";
    renamed.otherNames = {"Novagenus nova"};
    must(keepProfiles(at.book, shipped(), std::vector{renamed}, nova.name));
    check.that(ownIn(at.book).size() == 1, "renamed, not doubled");
    room = Room::load(at.book, reference, today).value();
    check.that(room.find(animal)->profile->name == "Novagenus altera", "found by its trade name");
    check.that(room.profiles().find("Novagenus nova")->name == "Novagenus altera",
               "and its old one");
    // What was handed out earlier may outlive its room.
    check.that(resident->profile->name == nova.name, "residents keep their profile");

    must(dropProfile(at.book, "Novagenus altera"));
    check.that(ownIn(at.book).empty(), "dropped");
    check.that(!dropProfile(at.book, "Novagenus altera"), "not twice");
    must(at.book.undo());
    check.that(ownIn(at.book).size() == 1, "and back");
    return check.ok();
}

bool namesInABookHold() {
    Checks check;
    TestBook at;
    const auto keep = [&](const Profile& profile) {
        const auto kept = keepProfiles(at.book, shipped(), std::vector{profile});
        return kept ? std::string() : kept.error().message.id;
    };
    auto thief = newSpecies();
    thief.tradeNames = {"gooty"};
    check.that(keep(thief) == "profile.nameTwice", "a trade name of another species");
    thief.tradeNames = {"Brachypelma emilia"};
    check.that(keep(thief) == "profile.nameTwice", "a valid name as trade name");
    check.that(ownIn(at.book).empty(), "nothing written");

    // A synonym that the keeper sees as a species of its own.
    check.that(keep(newSpecies("Grammostola porteri")).empty(), "a synonym is revived");
    const auto with = [&] { return withOwnProfiles(shipped(), roomInfo(at.book).value()); };
    check.that(with()->find("Grammostola porteri")->origin == ProfileOrigin::keeper, "own");
    check.that(with()->find("Grammostola rosea")->origin == ProfileOrigin::assets, "shipped");

    // A revision after this version: the old valid name leads to the keeper's.
    auto revised = newSpecies("Novagenus emilia");
    revised.otherNames = {"Brachypelma emilia"};
    check.that(keep(revised).empty(), "takes the place of a shipped one");
    check.that(with()->find("Brachypelma emilia")->name == "Novagenus emilia", "old name");
    check.that(with()->all().size() == shipped().all().size() + 1, "its place");

    auto second = newSpecies("Novagenus secunda");
    second.otherNames = {"Brachypelma emilia"};
    check.that(keep(second) == "profile.nameTwice", "two own ones with one name");
    auto wrong = newSpecies();
    wrong.venom.source.clear();
    check.that(keep(wrong) == "profile.noSource", "a fact without source");
    wrong = newSpecies("nova");
    check.that(keep(wrong) == "profile.notBinomial", "no binomial");
    return check.ok();
}

/// Two devices change the same profile: both versions are kept, and the keeper is asked.
bool devicesHold() {
    Checks check;
    auto room = roomOf(2, 7);
    auto& a = *room[0];
    auto& b = *room[1];
    must(keepProfiles(a.book(), shipped(), std::vector{newSpecies()}));
    sendAll(a, b);
    check.that(ownIn(b.book()).size() == 1, "comes along");
    auto calm = newSpecies();
    calm.temperament.value = Temperament::calm;
    calm.housing = "Said here.";
    auto wild = newSpecies();
    wild.temperament.value = Temperament::defensive;
    b.clock.set({fridayEvening.ms + 1000});
    must(keepProfiles(a.book(), shipped(), std::vector{calm}));
    must(keepProfiles(b.book(), shipped(), std::vector{wild}));
    must(keepProfiles(b.book(), shipped(), std::vector{newSpecies("Novagenus altera")}));
    sendAll(b, a);
    check.that(ownIn(a.book()).size() == 2, "another one stands beside it");
    const auto differ = differences(a.book()).value();
    check.that(differ.size() == 1 && differ.front().name == "profile.Novagenus nova", "asked");
    const std::vector versions{profileText(calm), profileText(wild), std::string("unreadable")};
    const auto lines = differingLines(versions);
    check.that(lines[0].size() == 2 && lines[1].size() == 2 && lines[2].empty(),
               "temperament and housing differ");
    check.that(lines[0][0].name == "species.temperament" && lines[0][0] != lines[1][0], "said");
    if (!differ.empty()) must(settle(a.book(), differ.front(), 0));
    sendAll(a, b);
    check.that(differences(b.book()).value().empty(), "settled for both");
    check.that(ownIn(a.book()) == ownIn(b.book()), "the same on both");
    // From a later version: kept, passed over, and can be replaced.
    must(a.book().record(SetDraft{ThingType::book,
                                  a.book().id().uuid,
                                  {{"profile.Nova later", R"({"name": "Nova later"})"}}}));
    const auto info = roomInfo(a.book()).value();
    check.that(ownProfiles(info).unreadable == std::vector<std::string>{"Nova later"},
               "unreadable");
    check.that(withOwnProfiles(shipped(), info)->find("Novagenus nova") != nullptr, "others are");
    return check.ok();
}

}  // namespace

int main() {
    bool ok = true;
    const std::pair<const char*, bool (*)()> all[]{{"own beside shipped", ownHold},
                                                   {"own in a book", bookHolds},
                                                   {"names in a book", namesInABookHold},
                                                   {"two devices", devicesHold}};
    for (const auto& [name, holds] : all) {
        const bool good = holds();
        std::printf("%s: %s\n", name, good ? "holds" : "DOES NOT HOLD");
        ok &= good;
    }
    return ok ? 0 : 1;
}
