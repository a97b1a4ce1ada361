#include "viewmodels/profilefiles.h"

#include "husbandry/profile_share.h"
#include "room/own_profiles.h"
#include "viewmodels/files.h"
#include "viewmodels/profilewords.h"

namespace burrow {
namespace {

/// "New: Grammostola porteri", "Instead of yours: ..." for what became of those taken in.
QString detailOf(const KeptProfiles& kept, const Desk& desk) {
    std::vector<std::string> added;
    std::vector<std::string> overShipped;
    for (const auto& name : kept.added) {
        const bool isShipped = desk.knowledge().profiles.find(name) != nullptr;
        (isShipped ? overShipped : added).push_back(name);
    }
    QStringList lines;
    const auto add = [&](const char* id, const std::vector<std::string>& names) {
        if (names.empty()) return;
        lines.append(desk.say({id, {{"species", joinedNames(names).toStdString()}}}));
    };
    add("profileFiles.added", added);
    add("profileFiles.overShipped", overShipped);
    add("profileFiles.replaced", kept.replaced);
    add("profileFiles.same", kept.same);
    return lines.join(QChar::LineFeed);
}

}  // namespace

void ProfileFiles::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    connect(desk, &Desk::roomChanged, this, &ProfileFiles::changed);
    emit changed();
}

void ProfileFiles::setSharer(Sharer* sharer) {
    sharer_ = sharer;
    emit changed();
}

int ProfileFiles::ownCount() const {
    if (!desk_) return 0;
    int count = 0;
    for (const auto& profile : desk_->profiles().all()) {
        count += profile.origin == ProfileOrigin::keeper;
    }
    return count;
}

std::vector<Profile> ProfileFiles::chosen() const {
    std::vector<Profile> profiles;
    if (!species_.isEmpty()) {
        const auto* profile = desk_->profiles().find(species_.toStdString());
        if (profile != nullptr) profiles.push_back(*profile);
        return profiles;
    }
    for (const auto& profile : desk_->profiles().all()) {
        if (profile.origin == ProfileOrigin::keeper) profiles.push_back(profile);
    }
    return profiles;
}

std::string ProfileFiles::stem() const {
    if (!species_.isEmpty()) return fileStem(species_.toStdString(), "species");
    return fileStem(desk_->room()->info().name, "room") + "-species";
}

Done ProfileFiles::write(const std::filesystem::path& path) const {
    const auto profiles = chosen();
    if (profiles.empty()) return fail(Trouble::notFound, Message{"profiles.noneOwn"});
    DeviceFiles files;
    return files.write(path, bytesOf(sharedProfilesText(profiles)));
}

void ProfileFiles::tell(const QString& done, const QString& detail) {
    doneText_ = done;
    doneDetail_ = detail;
    trouble_.clear();
    emit changed();
}

void ProfileFiles::tell(const Error& error) {
    doneText_.clear();
    doneDetail_.clear();
    trouble_ = desk_->say(error.message);
    emit changed();
}

void ProfileFiles::saveTo(const QUrl& folder) {
    if (!desk_ || !desk_->room()) return;
    const auto place = pathOf(folder);
    if (!place) return tell(place.error());
    const auto path = freePath(*place, stem(), ".json");
    if (const auto written = write(path); !written) return tell(written.error());
    tell(desk_->say({"sheet.saved",
                     {{"file", path.filename().string()},
                      {"folder", path.parent_path().filename().string()}}}));
}

void ProfileFiles::share() {
    if (!desk_ || !desk_->room() || !canShare()) return;
    const auto path = sharer_->folder() / (stem() + ".json");
    if (const auto written = write(path); !written) return tell(written.error());
    if (const auto shared = sharer_->share(path); !shared) return tell(shared.error());
    tell(QString());
}

void ProfileFiles::takeIn(const QUrl& file) {
    if (!desk_ || !desk_->room()) return;
    const auto path = pathOf(file);
    if (!path) return tell(path.error());
    const auto kept = std::make_shared<KeptProfiles>();
    Deed deed;
    deed.tag = toQt(desk_->room()->info().code);
    deed.said = {"did.speciesTakenIn"};
    deed.write = [path = *path, kept,
                  &shipped = desk_->knowledge().profiles](Book& book) -> Result<ChangeSet> {
        BURROW_TRY(const auto bytes, DeviceFiles().read(path, largestSharedProfiles));
        BURROW_TRY(const auto profiles, sharedProfiles(textOf(bytes)));
        BURROW_TRY(*kept, keepProfiles(book, shipped, profiles));
        return kept->changes;
    };
    desk_->act(this, std::move(deed), [this, kept](const Result<ChangeSet>& done) {
        if (!done) return tell(QString());  // the desk says why
        const auto all = kept->added.size() + kept->replaced.size() + kept->same.size();
        tell(desk_->say({"profileFiles.tookIn", {{"count", static_cast<std::int64_t>(all)}}}),
             detailOf(*kept, *desk_));
    });
}

}  // namespace burrow
