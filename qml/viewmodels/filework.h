// What is under way with a file in the book's thread: how far it is, and the keeper's wish to end it.
#pragma once

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QObject>
#include <atomic>
#include <memory>

#include "exchange/bundle.h"
#include "viewmodels/desk.h"

namespace burrow {

/// Lives in the thread of the interface; what watch() gives is called in the book's.
class FileWork : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A page's model has one.")
    Q_PROPERTY(bool active READ isActive NOTIFY changed FINAL)
    /// "Photos, 120 of 312"
    Q_PROPERTY(QString text READ text NOTIFY changed FINAL)
    /// From 0 to 1; negative where it is not known.
    Q_PROPERTY(double share READ share NOTIFY changed FINAL)

public:
    explicit FileWork(QObject* parent = nullptr) : QObject(parent) {}
    ~FileWork() override { stop(); }

    [[nodiscard]] bool isActive() const { return goOn_ != nullptr; }
    [[nodiscard]] QString text() const { return text_; }
    [[nodiscard]] double share() const { return share_; }

    /// Begins anew.
    [[nodiscard]] exchange::OnProgress watch(const Desk& desk);
    void end();

public slots:
    /// Nothing is kept of what is under way.
    void stop();

signals:
    void changed();

private:
    void show(const QString& text, double share);

    std::shared_ptr<std::atomic_bool> goOn_;
    QString text_;
    double share_ = -1;
};

}  // namespace burrow
