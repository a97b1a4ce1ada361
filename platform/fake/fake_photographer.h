// A photographer with prepared pictures.
#pragma once

#include <QList>

#include "ports/photographer.h"

namespace burrow {

/// Answers from the event loop, as a device does: the prepared pictures one after the other, then
/// refusals.
class FakePhotographer final : public Photographer {
    Q_OBJECT

public:
    explicit FakePhotographer(QObject* parent = nullptr) : Photographer(parent) {}

    // The script's side.
    void prepare(const QByteArray& jpeg) { prepared_.append(jpeg); }
    /// How many photos were asked for.
    [[nodiscard]] int asked() const { return asked_; }

    // The app's side.
    void take() override;

private:
    void answer();

    QList<QByteArray> prepared_;
    int asked_ = 0;
};

}  // namespace burrow
