#include "viewmodels/filework.h"

#include <array>

#include "viewmodels/wording.h"

namespace burrow {
namespace {

/// Often enough to be followed, seldom enough to cost nothing.
constexpr qint64 betweenWords = 100;

Message wordsFor(const exchange::Progress& progress) {
    constexpr std::array names{"opening", "photos", "entries", "checking", "placing"};
    const auto* name = names.at(static_cast<std::size_t>(progress.step));
    return {std::string("work.") + name, {}};
}

}  // namespace

exchange::OnProgress FileWork::watch(const Desk& desk) {
    goOn_ = std::make_shared<std::atomic_bool>(true);
    text_ = desk.say("work.opening");
    share_ = -1;
    emit changed();
    const auto clock = std::make_shared<QElapsedTimer>();
    return [guard = QPointer(this), home = QPointer(&desk), goOn = goOn_,
            clock](const exchange::Progress& progress) {
        if (!*goOn) return false;
        if (clock->isValid() && clock->elapsed() < betweenWords) return true;
        clock->start();
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [guard, home, goOn, progress] {
                if (!guard || !home || guard->goOn_ != goOn) return;
                const auto share = progress.total == 0 ? -1.0
                                                       : static_cast<double>(progress.done) /
                                                             static_cast<double>(progress.total);
                guard->show(home->say(wordsFor(progress)), share);
            },
            Qt::QueuedConnection);
        return true;
    };
}

void FileWork::show(const QString& text, double share) {
    text_ = text;
    share_ = share;
    emit changed();
}

void FileWork::end() {
    goOn_.reset();
    show({}, -1);
}

void FileWork::stop() {
    if (goOn_) *goOn_ = false;
}

}  // namespace burrow
