#include "fake/fake_notifier.h"

#include <algorithm>

namespace burrow {

void FakeNotifier::show(const Note& note) {
    if (nobodyThere_) {
        emit failed(note.tag, QStringLiteral("nobody there"));
        return;
    }
    notes_.push_back(note);
    emit shown(note.tag);
}

void FakeNotifier::withdraw(const QString& tag) {
    std::erase_if(notes_, [&](const Note& note) { return note.tag == tag; });
}

}  // namespace burrow
