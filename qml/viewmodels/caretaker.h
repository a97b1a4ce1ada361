// Does what a book needs now and then without anybody asking: the backup of the day, and no litter
// among the photos.
#pragma once

#include <QObject>

#include "ports/errands.h"
#include "viewmodels/desk.h"

namespace burrow {

/// Lives as long as the app. Works once a book lies open and again when the day turns, in a thread of
/// its own; what cannot be done today is tried tomorrow. The invented room needs none of it.
class Caretaker : public QObject {
    Q_OBJECT

public:
    /// The desk is not owned.
    explicit Caretaker(Desk& desk, QObject* parent = nullptr);

signals:
    /// For tests: what was to be done is done.
    void rested();

private:
    void look();

    Desk& desk_;
    std::filesystem::path caredFor_;
    CivilDay day_;
    Errands errands_;
};

}  // namespace burrow
