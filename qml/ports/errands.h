// Work for a thread of its own, one errand after the other, answered in the thread it came from.
#pragma once

#include <QObject>
#include <QPointer>
#include <QThreadPool>
#include <functional>
#include <memory>

namespace burrow {

/// Lives in the thread of the interface. Waits for what is under way when it goes.
class Errands {
public:
    Errands() { pool_.setMaxThreadCount(1); }
    ~Errands() { finish(); }
    Errands(const Errands&) = delete;
    Errands& operator=(const Errands&) = delete;

    /// `job` is called in the thread of errands; `answer` in the thread of the interface, unless
    /// `context` has gone by then.
    template <class T>
    void run(QObject* context, std::function<T()> job, std::function<void(T)> answer) {
        pool_.start(
            [this, guard = QPointer(context), job = std::move(job), answer = std::move(answer)] {
                const auto result = std::make_shared<T>(job());
                QMetaObject::invokeMethod(
                    &home_,
                    [guard, answer, result] {
                        if (guard) answer(std::move(*result));
                    },
                    Qt::QueuedConnection);
            });
    }

    /// What has not begun yet is never done, nor answered.
    void dropWaiting() { pool_.clear(); }

    /// Waits for what is under way; nothing new is taken meanwhile.
    void finish() { pool_.waitForDone(); }

private:
    QObject home_;
    QThreadPool pool_;
};

}  // namespace burrow
