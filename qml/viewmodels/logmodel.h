// What can be logged for a subject: a tile for every kind of thing that may have happened to it.
#pragma once

#include "viewmodels/factwords.h"

namespace burrow {

class LogModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    Q_PROPERTY(QString subject READ subject WRITE setSubject NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(bool missing READ isMissing NOTIFY changed FINAL)
    Q_PROPERTY(QString tag READ tag NOTIFY changed FINAL)
    Q_PROPERTY(QString binomial READ binomial NOTIFY changed FINAL)
    Q_PROPERTY(QString about READ about NOTIFY changed FINAL)
    Q_PROPERTY(QString punch READ punch NOTIFY changed FINAL)
    /// [{name, tiles: [{kind, text, glyph}]}], without groups that hold nothing.
    Q_PROPERTY(QVariantList groups READ groups NOTIFY changed FINAL)

public:
    explicit LogModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QString subject() const { return subject_; }
    void setSubject(const QString& subject);
    [[nodiscard]] bool isMissing() const { return desk_ && desk_->room() && !resident_; }
    [[nodiscard]] QString tag() const;
    [[nodiscard]] QString binomial() const;
    [[nodiscard]] QString about() const;
    [[nodiscard]] QString punch() const;
    [[nodiscard]] QVariantList groups() const;

public slots:
    /// A tile was tapped: what needs no more is logged, for the rest a page or a form is asked for.
    void choose(const QString& kind);

signals:
    void deskChanged();
    void changed();
    void logged();
    void formWanted(const QString& kind);
    void moultWanted();
    void photoWanted();

private:
    void read();

    QPointer<Desk> desk_;
    QString subject_;
    ResidentPtr resident_;
};

}  // namespace burrow
