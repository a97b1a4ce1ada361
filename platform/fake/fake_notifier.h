// A notifier that records what it was given, and taps it when the script says so.
#pragma once

#include <vector>

#include "ports/notifier.h"

namespace burrow {

class FakeNotifier final : public Notifier {
    Q_OBJECT

public:
    using Notifier::Notifier;

    // The script's side.
    void setNobodyThere(bool nobody) { nobodyThere_ = nobody; }
    void tap(const QString& tag) { emit opened(tag); }
    [[nodiscard]] const std::vector<Note>& notes() const { return notes_; }

    // The app's side.
    void show(const Note& note) override;
    void withdraw(const QString& tag) override;

private:
    std::vector<Note> notes_;
    bool nobodyThere_ = false;
};

}  // namespace burrow
