#include "viewmodels/judgemodel.h"

#include "room/tables.h"
#include "viewmodels/files.h"
#include "viewmodels/sexwords.h"

namespace burrow {

void JudgeModel::setDesk(Desk* desk) {
    desk_ = desk;
    emit changed();
}

void JudgeModel::setSharer(Sharer* sharer) {
    sharer_ = sharer;
    emit changed();
}

void JudgeModel::setSettings(Settings* settings) {
    settings_ = settings;
    if (settings_ && name_.isEmpty()) name_ = settings_->judgeName();
    emit changed();
}

void JudgeModel::setChoice(int choice) {
    if (choice_ == choice) return;
    choice_ = choice;
    emit changed();
}

void JudgeModel::setClarity(int clarity) {
    if (clarity_ == clarity) return;
    clarity_ = clarity;
    emit changed();
}

void JudgeModel::setName(const QString& name) {
    if (name_ == name) return;
    name_ = name;
    emit changed();
}

void JudgeModel::setNote(const QString& note) {
    if (note_ == note) return;
    note_ = note;
    emit changed();
}

QVariantList JudgeModel::choices() const { return desk_ ? sexChoices(*desk_) : QVariantList(); }

QStringList JudgeModel::clarities() const { return desk_ ? clarityWords(*desk_) : QStringList(); }

void JudgeModel::tell(const QString& done) {
    doneText_ = done;
    trouble_.clear();
    emit changed();
}

void JudgeModel::tell(const Error& error) {
    doneText_.clear();
    trouble_ = desk_->say(error.message);
    emit changed();
}

void JudgeModel::read(const QUrl& file) {
    if (!desk_) return;
    const auto path = pathOf(file);
    if (!path) return tell(path.error());
    auto folder =
        std::make_shared<std::unique_ptr<QTemporaryDir>>(std::make_unique<QTemporaryDir>());
    const std::filesystem::path into = (*folder)->path().toStdString();
    desk_->ask<exchange::OpinionQuestion>(
        this,
        [path = *path, into](Book&) {
            DeviceFiles files;
            return exchange::openQuestion(path, into, files);
        },
        [this, folder,
         stem = path->stem().string()](const Result<exchange::OpinionQuestion>& question) {
            // One that can't be read leaves the one before where it is.
            if (!question) return tell(question.error());
            question_ = *question;
            folder_ = std::move(*folder);
            stem_ = stem;
            choice_ = clarity_ = -1;
            note_.clear();
            tell(QString());
        });
}

QString JudgeModel::about() const {
    if (!question_) return {};
    const char* id = question_->species.empty() ? "opinion.holdsUnnamed"
                     : question_->carapace      ? "opinion.holdsSized"
                                                : "opinion.holds";
    return desk_->say({id,
                       {{"species", question_->species},
                        {"size", question_->carapace.value_or(Millimetres{}).value},
                        {"count", static_cast<std::int64_t>(question_->photos.size())}}});
}

QString JudgeModel::asked() const { return question_ ? toQt(question_->note) : QString(); }

QVariantList JudgeModel::photos() const {
    QVariantList list;
    if (!question_ || !folder_) return list;
    for (const auto& photo : question_->photos) {
        const auto file = folder_->filePath(toQt(photo.picture.hex() + ".jpg"));
        const auto url = QUrl::fromLocalFile(file);
        list.append(QVariantMap{{QStringLiteral("files"), QStringList{file}},
                                {QStringLiteral("url"), url},
                                {QStringLiteral("thumbnail"), url},
                                {QStringLiteral("name"), about()}});
    }
    return list;
}

QVariantList JudgeModel::drawings() const { return desk_ ? sexDrawings(*desk_) : QVariantList(); }

double JudgeModel::closeMm() const {
    if (!desk_ || !question_) return 0;
    return desk_->tables()->sexing.closeUp(question_->carapace).value;
}

QString JudgeModel::missing() const {
    if (!question_) return {};
    if (choice_ < 0) return desk_->say("opinion.noChoice");
    if (clarity_ < 0) return desk_->say("opinion.noClarity");
    return name_.trimmed().isEmpty() ? desk_->say("opinion.noNameYet") : QString();
}

Result<std::filesystem::path> JudgeModel::writeInto(const std::filesystem::path& folder) {
    const exchange::OpinionAnswer answer{question_->id, sexOf(choice_),
                                         static_cast<Clarity>(clarity_),
                                         name_.trimmed().toStdString(), note_.toStdString()};
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    const auto path = freePath(folder, fileStem(stem_, "moult"), exchange::answerEnding);
    BURROW_DO(exchange::writeAnswer(answer, path));
    if (settings_) settings_->setJudgeName(name_.trimmed());
    return path;
}

void JudgeModel::saveTo(const QUrl& folder) {
    if (!isComplete()) return;
    const auto place = pathOf(folder);
    if (!place) return tell(place.error());
    const auto path = writeInto(*place);
    if (!path) return tell(path.error());
    tell(desk_->say({"opinion.answered", {{"file", path->filename().string()}}}));
}

void JudgeModel::share() {
    if (!isComplete() || !canShare()) return;
    const auto path = writeInto(sharer_->folder());
    if (!path) return tell(path.error());
    if (const auto shared = sharer_->share(*path); !shared) return tell(shared.error());
    tell(desk_->say({"opinion.answered", {{"file", path->filename().string()}}}));
}

}  // namespace burrow
