// Whose moult a photo shows: by the tag that lies in it, or as the keeper says.
#pragma once

#include <QVariantList>

#include "viewmodels/wording.h"

namespace burrow {

class MoultFiling : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A moult has one.")
    /// What the keeper has to say, in words; empty for nothing.
    Q_PROPERTY(QString question READ question NOTIFY changed FINAL)
    /// [{word, sub}] to answer it with.
    Q_PROPERTY(QVariantList choices READ choices NOTIFY changed FINAL)
    /// "Filed under 214 by the tag in the photo."
    Q_PROPERTY(QString note READ note NOTIFY changed FINAL)
    /// Why the number that was typed names nobody.
    Q_PROPERTY(QString error READ error NOTIFY changed FINAL)

public:
    explicit MoultFiling(QObject* parent = nullptr) : QObject(parent) {}

    void setDesk(Desk* desk) { desk_ = desk; }
    /// Whose moult it is so far; null for nobody's yet.
    void setResident(const ResidentPtr& resident);
    /// Tags that lie in a photo.
    void see(const std::vector<std::string>& codes);

    [[nodiscard]] QString question() const;
    [[nodiscard]] QVariantList choices() const;
    [[nodiscard]] QString note() const { return note_; }
    [[nodiscard]] QString error() const { return error_; }

public slots:
    void choose(int at);
    /// By the number, as typed.
    void whose(const QString& number);
    void clearError();
    /// The tag that filed it means nothing, here and in the photos to come: it is nobody's again.
    void release();

signals:
    void changed();
    void found(const QString& subject);

private:
    void weigh(const std::vector<SubjectId>& tagged);
    void fileUnder(const ResidentPtr& resident);
    void refuse(const Message& message);

    QPointer<Desk> desk_;
    ResidentPtr resident_;
    std::vector<ResidentPtr> asked_;  ///< one of them, or the one it is filed under
    std::vector<SubjectId> settled_;  ///< whose tag was in view and was said to mean nothing
    QString note_;
    QString error_;
};

}  // namespace burrow
