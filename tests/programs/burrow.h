// Runs `burrow` in a folder of its own.
#pragma once

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <nlohmann/json.hpp>
#include <string>

namespace burrow::test {

struct Run {
    int status = -1;
    QString out;
    QString err;

    [[nodiscard]] nlohmann::json json() const {
        return nlohmann::json::parse(out.toStdString(), nullptr, false);
    }
};

class Shell {
public:
    /// `words` are split at spaces; what has spaces of its own goes into `more`.
    Run operator()(const QString& words, const QStringList& more = {}) const {
        QProcess process;
        process.setWorkingDirectory(folder_.path());
        auto environment = QProcessEnvironment::systemEnvironment();
        environment.insert("TZ", "Europe/Berlin");
        process.setProcessEnvironment(environment);
        process.start(BURROW_PROGRAM, words.split(' ', Qt::SkipEmptyParts) + more);
        if (!process.waitForFinished(120'000)) return {-2, {}, "does not end"};
        const int status = process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -3;
        return {status, QString::fromUtf8(process.readAllStandardOutput()),
                QString::fromUtf8(process.readAllStandardError())};
    }

    [[nodiscard]] QString path(const QString& name) const { return folder_.filePath(name); }
    void write(const QString& name, const QByteArray& bytes) const {
        QFile file(path(name));
        if (!file.open(QIODevice::WriteOnly)) qFatal("%s", qPrintable(name));
        file.write(bytes);
    }
    [[nodiscard]] QByteArray read(const QString& name) const {
        QFile file(path(name));
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }
    /// The book and what SQLite keeps beside it.
    [[nodiscard]] QByteArray bookBytes(const QString& name) const {
        return read(name) + read(name + "-wal");
    }

private:
    QTemporaryDir folder_;
};

}  // namespace burrow::test
