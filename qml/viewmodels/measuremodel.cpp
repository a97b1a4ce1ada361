#include "viewmodels/measuremodel.h"

#include <algorithm>
#include <cmath>

#include "journal/past.h"
#include "room/mats.h"
#include "room/tables.h"

namespace burrow {
namespace {

constexpr Millimetres tenth{0.1};

bool isPhotoOf(const Fact& fact, const EntryId& moult) {
    return fact.kind == FactKind::photo && fact.body.picture &&
           fact.body.about.value_or(fact.id) == moult;
}

/// As entries hold lengths.
Millimetres kept(Millimetres length) { return {std::round(length.value * 100) / 100}; }

}  // namespace

MeasureModel::MeasureModel(QObject* parent) : QObject(parent) {}

const measure::MeasureRules& MeasureModel::rules() const {
    return desk_ ? desk_->tables()->measure : measure::shippedRules();
}

void MeasureModel::setDesk(Desk* desk) {
    if (desk_ == desk) return;
    desk_ = desk;
    height_ = usualHeight(chosen(), rules());
    connect(desk, &Desk::written, this, &MeasureModel::read);
    read();
    emit givenChanged();
}

void MeasureModel::setDarkroom(Darkroom* darkroom) {
    darkroom_ = darkroom;
    read();
    emit givenChanged();
}

void MeasureModel::setMoult(const QString& moult) {
    if (moult_ == moult) return;
    moult_ = moult;
    read();
    emit givenChanged();
}

Result<MeasureModel::Record> MeasureModel::recordOf(Book& book, const EntryId& id,
                                                    const Profiles& profiles) {
    Record record;
    BURROW_TRY(record.moult, fact(book, id));
    if (!record.moult) return record;
    if (record.moult->kind == FactKind::photo && record.moult->body.about) {
        record.photo = id;
        BURROW_TRY(const auto moult, fact(book, *record.moult->body.about));
        if (moult) record.moult = moult;
    }
    BURROW_TRY(record.facts, burrow::history(book, record.moult->subject, wholeHistory));
    BURROW_TRY(record.sizes, sizesOf(book, record.moult->subject, profiles));
    return record;
}

void MeasureModel::read() {
    const auto id = Uuid::parse(moult_.toStdString());
    if (!desk_ || !desk_->room() || !darkroom_ || !id) return;
    desk_->ask<Record>(
        this,
        [moult = EntryId{*id}, room = desk_->room()](Book& book) {
            return recordOf(book, moult, room->profiles());
        },
        [this](const Result<Record>& record) { take(record ? *record : Record()); });
}

void MeasureModel::take(const Record& record) {
    const bool isFirst = !isRead_;
    isRead_ = true;
    record_ = record;
    const bool isThere = record.moult && desk_->room();
    resident_ = isThere ? desk_->room()->find(record.moult->subject) : nullptr;
    photos_.clear();
    for (const auto& fact : record.facts) {
        if (isThere && isPhotoOf(fact, record.moult->id)) photos_.insert(photos_.begin(), fact);
    }
    if (isFirst && record.photo) {
        const auto at = std::find_if(photos_.begin(), photos_.end(),
                                     [&](const Fact& photo) { return photo.id == *record.photo; });
        if (at != photos_.end()) photo_ = static_cast<int>(at - photos_.begin());
    }
    emit changed();
    if (!measured_ && !isLooking()) look();
    measure();  // the bar of its mat may have been measured meanwhile
}

void MeasureModel::look() {
    if (photo_ >= static_cast<int>(photos_.size())) {
        if (resident_) refusal_ = desk_->say("measuring.noPhotos");
        return emit photoChanged();
    }
    const auto& body = photos_[static_cast<std::size_t>(photo_)].body;
    auto& files = darkroom_->files();
    const pictures::Store store(pictures::Store::folderFor(desk_->bookPath()), files);
    // The original has what was lost when it was packed again; other devices have only copies.
    std::vector<std::filesystem::path> candidates;
    if (body.original) candidates.push_back(store.originalPath(*body.original));
    candidates.push_back(store.picturePath(*body.picture));
    candidates.push_back(store.reducedPath(*body.picture));
    looking_.dropWaiting();
    looking_.run<std::shared_ptr<Result<MeasuredPhoto>>>(
        this,
        [&files, candidates = std::move(candidates), room = desk_->room(),
         tables = desk_->tables()] {
            const auto& rules = tables->measure;
            PrintOf print;
            if (room) {
                print = [&](const auto& name) { return printScaleOf(room->info(), name, rules); };
            }
            return std::make_shared<Result<MeasuredPhoto>>(
                MeasuredPhoto::read(files, candidates, rules, print));
        },
        [this, asked = ++asked_](const std::shared_ptr<Result<MeasuredPhoto>>& photo) {
            if (asked != asked_) return;
            answered_ = asked;
            show(std::move(*photo));
        });
    emit photoChanged();
}

void MeasureModel::show(Result<MeasuredPhoto> photo) {
    refusal_.clear();
    measured_.reset();
    if (photo) {
        measured_ = *std::move(photo);
        if (!measured_->canBeMeasured()) refusal_ = desk_->say(measured_->sight().trouble);
    } else {
        refusal_ = desk_->say(photo.error().message);
    }
    emit photoChanged();
    emit changed();
    measure();
}

void MeasureModel::setPhoto(int photo) {
    if (photo == photo_ || photo < 0 || photo >= static_cast<int>(photos_.size())) return;
    photo_ = photo;
    measured_.reset();
    length_.reset();
    refusal_.clear();
    ends_ = {QPointF(0.5, 0.35), QPointF(0.5, 0.65)};
    isSet_ = {};
    look();
    emit changed();
    emit endsChanged();
}

void MeasureModel::setScreenScale(qreal scale) {
    if (scale == screenScale_ || !(scale > 0)) return;
    // What was set stays as exact as it was set.
    screenScale_ = scale;
    emit screenScaleChanged();
}

void MeasureModel::forgetEnds() {
    isSet_ = {};
    measure();
}

measure::PrintScale MeasureModel::print() const {
    const auto& survey = measured_->sight().survey;
    // A tag says how large it was printed; printers that shrink shrink tags too.
    if (!survey->mat) return {1, rules().tagPrint};
    return printScaleOf(desk_->room()->info(), survey->mat->name, rules());
}

void MeasureModel::measure() {
    length_.reset();
    endsTrouble_.clear();
    if (canMeasure() && desk_->room() && areEndsSet()) {
        const auto& height = rules().heights[static_cast<std::size_t>(height_)];
        measure::LengthOptions options;
        options.height = {height.above, height.deviation};
        options.print = print();
        // One for both: their variances add up in the length, so it is the root of their mean square.
        options.pointDeviation = std::hypot(deviations_[From], deviations_[To]) / std::sqrt(2);
        const auto length =
            measure::lengthBetween(*measured_->sight().survey, measured_->inPhoto(ends_[From]),
                                   measured_->inPhoto(ends_[To]), options, rules());
        if (length) {
            length_ = *length;
        } else {
            endsTrouble_ = desk_->say(length.error().message);
        }
    }
    emit endsChanged();
}

void MeasureModel::moveEnd(End end, const QPointF& part) {
    if (!canMeasure()) return;
    ends_[end] = {std::clamp(part.x(), 0.0, 1.0), std::clamp(part.y(), 0.0, 1.0)};
    isSet_[end] = true;
    deviations_[end] = std::max(rules().leastPointDeviation,
                                rules().fingerDeviation / screenScale_ * measured_->photoPixels());
    measure();
}

void MeasureModel::nudge(End end, int right, int down) {
    if (!measured_) return;
    const int tenths = std::max(std::abs(right), std::abs(down));
    moveEnd(end, measured_->moved(ends_[end], QPointF(right, down), tenth * tenths));
}

void MeasureModel::stretch(End end, int tenths) {
    if (!measured_) return;
    const auto size = measured_->picture().image().size();
    const auto away = ends_[end] - ends_[end == From ? To : From];
    const QPointF way(away.x() * size.width(), away.y() * size.height());
    moveEnd(end, measured_->moved(ends_[end], tenths < 0 ? -way : way, tenth * std::abs(tenths)));
}

const LengthKind& MeasureModel::chosen() const {
    return lengthKinds()[static_cast<std::size_t>(kind_)];
}

bool MeasureModel::isOfLeg() const { return chosen().length == &FactBody::segmentLength; }

std::string MeasureModel::chosenSegment() const {
    return isOfLeg() ? segmentText(leg_, segment_) : std::string();
}

void MeasureModel::setKind(int kind) {
    if (kind == kind_ || kind < 0 || kind >= static_cast<int>(lengthKinds().size())) return;
    kind_ = kind;
    height_ = usualHeight(chosen(), rules());
    setTyped({});
    emit changed();
    forgetEnds();
}

void MeasureModel::setLeg(int leg) {
    if (leg == leg_ || leg < 0 || leg >= static_cast<int>(legs().size())) return;
    leg_ = leg;
    emit changed();
    forgetEnds();
}

void MeasureModel::setSegment(int segment) {
    if (segment == segment_ || segment < 0 || segment >= static_cast<int>(segments().size()))
        return;
    segment_ = segment;
    emit changed();
    forgetEnds();
}

void MeasureModel::setHeight(int height) {
    if (height == height_ || height < 0 || height >= static_cast<int>(rules().heights.size()))
        return;
    height_ = height;
    emit changed();
    measure();
}

void MeasureModel::setTyped(const QString& typed) {
    if (typed_ == typed && typedError_.isEmpty()) return;
    typed_ = typed;
    typedError_.clear();
    emit typedChanged();
    emit endsChanged();
}

bool MeasureModel::canSave() const {
    return resident_ && (!typed_.trimmed().isEmpty() || length_.has_value());
}

bool MeasureModel::readTyped(FactBody& body) {
    auto text = typed_.trimmed().toStdString();
    std::replace(text.begin(), text.end(), ',', '.');
    const auto done = setField(body, FactKind::measured, chosen().field, text);
    if (!done) {
        auto message = done.error().message;
        for (auto& argument : message.arguments) {
            if (argument.name == "field") argument.value = kindWord();
        }
        typedError_ = desk_->say(message);
        emit typedChanged();
        return false;
    }
    body.method = Method::ruler;
    return true;
}

void MeasureModel::putMeasured(FactBody& body) const {
    body.*chosen().length = kept(length_->value);
    body.low = kept(length_->low);
    body.high = kept(length_->high);
    body.height = rules().heights[static_cast<std::size_t>(height_)].above;
    body.method = Method::photo;
}

void MeasureModel::save() {
    if (busy_ || !canSave()) return;
    FactBody body;
    if (typed_.trimmed().isEmpty()) {
        putMeasured(body);
        // What no arachnid has is a slip of the finger here too.
        const auto checked = factBody(FactKind::measured, toJson(body));
        if (!checked) {
            endsTrouble_ = desk_->say(checked.error().message);
            return emit endsChanged();
        }
    } else if (!readTyped(body)) {
        return;
    }
    if (isOfLeg()) body.segment = chosenSegment();
    body.about = record_.moult->id;
    write(std::move(body));
}

void MeasureModel::write(FactBody body) {
    // As it was when the skin was shed: in the history it stands with its moult.
    FactDraft draft{resident_->subject().id, FactKind::measured, body, record_.moult->happenedAt};
    Deed deed;
    deed.tag = tag();
    deed.said = {"did.measuredSkin",
                 {{"what", kindWord()}, {"length", (body.*chosen().length)->value}}};
    deed.compose = [draft](Book& book) { return logging(book, draft); };
    busy_ = true;
    emit busyChanged();
    desk_->act(this, std::move(deed), [this](const Result<ChangeSet>& done) {
        busy_ = false;
        emit busyChanged();
        if (!done) return;
        setTyped({});
        emit saved();
    });
}

}  // namespace burrow
