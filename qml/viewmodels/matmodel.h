// The mat on which moults are photographed: printed under a name of its own, and what its bar measured.
#pragma once

#include <QVariantList>

#include "room/mats.h"
#include "viewmodels/sheetmodel.h"

namespace burrow {

class MatModel : public burrow::SheetModel {
    Q_OBJECT
    QML_ELEMENT
    /// 0 for A5, 1 for A4.
    Q_PROPERTY(int paper READ paper WRITE setPaper NOTIFY paperChanged FINAL)
    /// A mat that may have been printed elsewhere, "A5 7Q2M": it stands in the list as well.
    Q_PROPERTY(QString asked READ asked WRITE setAsked NOTIFY matsChanged FINAL)
    /// The same as it stands in the list; empty for none.
    Q_PROPERTY(QString askedName READ askedName NOTIFY matsChanged FINAL)
    Q_PROPERTY(QString askedTitle READ askedTitle NOTIFY matsChanged FINAL)
    /// [{name, title, sub, measured}], those without a measured bar first.
    Q_PROPERTY(QVariantList mats READ mats NOTIFY matsChanged FINAL)
    /// Why the bar can't be as it was typed.
    Q_PROPERTY(QString barError READ barError NOTIFY barErrorChanged FINAL)

public:
    explicit MatModel(QObject* parent = nullptr);

    [[nodiscard]] int paper() const { return paper_; }
    void setPaper(int paper);
    [[nodiscard]] QString asked() const;
    void setAsked(const QString& asked);
    [[nodiscard]] QString askedName() const;
    [[nodiscard]] QString askedTitle() const;
    [[nodiscard]] QVariantList mats() const;
    [[nodiscard]] QString barError() const { return barError_; }

public slots:
    /// What the bar of that mat measures, as typed. Emits barKept() once it is in the book.
    void setBar(const QString& name, const QString& typed);
    void clearBarError();

signals:
    void paperChanged();
    void matsChanged();
    void barErrorChanged();
    void barKept();

protected:
    void read() override;
    [[nodiscard]] std::string stem() const override;
    [[nodiscard]] std::string title() const override;
    void prepare(std::function<void()> go) override;

private:
    [[nodiscard]] std::vector<PrintedMat> listed() const;
    [[nodiscard]] QString titleOf(const PrintedMat& mat) const;
    [[nodiscard]] measure::MatPaper chosenPaper() const;
    /// The one that is shown.
    [[nodiscard]] PrintedMat matOf() const;
    [[nodiscard]] bool isPrinted() const;
    void layOutMat();

    int paper_ = 0;
    measure::MatName drawn_;  ///< of the sheet that is shown; empty until it is drawn
    PrintedMat laidOut_;
    std::optional<PrintedMat> asked_;
    QString barError_;
};

}  // namespace burrow
