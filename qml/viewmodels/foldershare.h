// The shared folder that keeps the book alike on several devices. Visited when the app starts, after
// something was written, when something changes in the folder, and every few minutes.
#pragma once

#include <QFileSystemWatcher>
#include <QTimer>
#include <QUrl>
#include <QVariantList>

#include "exchange/share.h"
#include "ports/darkroom.h"
#include "viewmodels/desk.h"
#include "viewmodels/filework.h"
#include "viewmodels/settings.h"

namespace burrow {

/// Lives as long as the app, in the thread of the interface; the visits are in the book's thread. The
/// invented room is never shared.
class FolderShare : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes it.")
    /// Empty for none.
    Q_PROPERTY(QString folder READ folder NOTIFY changed FINAL)
    /// "Alike with everyone since 18:06"
    Q_PROPERTY(QString state READ state NOTIFY changed FINAL)
    Q_PROPERTY(bool visiting READ isVisiting NOTIFY changed FINAL)
    Q_PROPERTY(burrow::FileWork* work READ work CONSTANT FINAL)
    /// What the last visit brought: [{name, value, sub}]
    Q_PROPERTY(QVariantList outcome READ outcome NOTIFY changed FINAL)
    /// Files that could not be taken in: [{name, reason}]
    Q_PROPERTY(QVariantList left READ left NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    /// None of them is owned.
    FolderShare(Desk& desk, Settings& settings, Darkroom& darkroom, QObject* parent = nullptr);
    ~FolderShare() override;

    [[nodiscard]] QString folder() const;
    [[nodiscard]] QString state() const;
    [[nodiscard]] bool isVisiting() const { return visiting_; }
    [[nodiscard]] FileWork* work() { return &work_; }
    [[nodiscard]] QVariantList outcome() const;
    [[nodiscard]] QVariantList left() const;
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    void choose(const QUrl& folder);
    /// The folder and what is in it stay as they are.
    void leave();
    void visit();

signals:
    void changed();

private:
    void visitSoon();
    void watchFolders();
    void show(const Result<exchange::ShareReport>& report);

    Desk& desk_;
    Settings& settings_;
    Darkroom& darkroom_;
    FileWork work_;
    QFileSystemWatcher watcher_;
    QTimer soon_;
    QTimer regularly_;
    bool visiting_ = false;
    bool again_ = false;  ///< something came up during a visit
    std::optional<exchange::ShareReport> last_;
    Instant lastAt_;
    QString trouble_;
};

}  // namespace burrow
