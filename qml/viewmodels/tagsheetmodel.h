// Sheets of tags: for everyone, for one shelf, for some; or blank stock.
#pragma once

#include <QVariantList>
#include <map>

#include "room/room.h"
#include "viewmodels/sheetmodel.h"

namespace burrow {

class TagSheetModel : public burrow::SheetModel {
    Q_OBJECT
    QML_ELEMENT
    /// Those to print for; empty for all.
    Q_PROPERTY(QList<QString> subjects READ subjects WRITE setSubjects NOTIFY choiceChanged FINAL)
    /// [{word, sub}] for whom there may be tags, and which was chosen.
    Q_PROPERTY(QVariantList kinds READ kinds NOTIFY choiceChanged FINAL)
    Q_PROPERTY(int kind READ kind WRITE setKind NOTIFY choiceChanged FINAL)
    Q_PROPERTY(bool byShelf READ isByShelf NOTIFY choiceChanged FINAL)
    Q_PROPERTY(bool blank READ isBlank NOTIFY choiceChanged FINAL)
    /// [{name, count}] in walking order.
    Q_PROPERTY(QVariantList shelves READ shelves NOTIFY choiceChanged FINAL)
    Q_PROPERTY(int shelf READ shelf WRITE setShelf NOTIFY choiceChanged FINAL)
    Q_PROPERTY(QString shelfName READ shelfName NOTIFY choiceChanged FINAL)
    /// 0 for A4, 1 for letter.
    Q_PROPERTY(int paper READ paper WRITE setPaper NOTIFY choiceChanged FINAL)
    /// How many blank tags, as typed.
    Q_PROPERTY(QString blankCount READ blankCount WRITE setBlankCount NOTIFY choiceChanged FINAL)
    Q_PROPERTY(QString blankError READ blankError NOTIFY choiceChanged FINAL)
    /// "27 tags on one page. 3 of them get their first code when the file is saved."
    Q_PROPERTY(QString summary READ summary NOTIFY pagesChanged FINAL)

public:
    explicit TagSheetModel(QObject* parent = nullptr) : SheetModel(parent) {}

    [[nodiscard]] QStringList subjects() const { return subjects_; }
    void setSubjects(const QStringList& subjects);
    [[nodiscard]] QVariantList kinds() const;
    [[nodiscard]] int kind() const { return kind_; }
    void setKind(int kind);
    [[nodiscard]] bool isByShelf() const { return chosenKind() == Kind::Shelf; }
    [[nodiscard]] bool isBlank() const { return chosenKind() == Kind::Blank; }
    [[nodiscard]] QVariantList shelves() const;
    [[nodiscard]] int shelf() const { return shelf_; }
    void setShelf(int shelf);
    [[nodiscard]] QString shelfName() const;
    [[nodiscard]] int paper() const { return paper_; }
    void setPaper(int paper);
    [[nodiscard]] QString blankCount() const { return blankTyped_; }
    void setBlankCount(const QString& typed);
    [[nodiscard]] QString blankError() const { return blankError_; }
    [[nodiscard]] QString summary() const;

signals:
    void choiceChanged();

protected:
    void read() override;
    [[nodiscard]] std::string stem() const override;
    [[nodiscard]] std::string title() const override;
    void prepare(std::function<void()> go) override;

private:
    enum class Kind { These, Everyone, Shelf, Blank };
    /// Codes by subject, for those who have none in the book yet.
    using NewCodes = std::map<SubjectId, std::string>;

    [[nodiscard]] std::vector<Kind> offered() const;
    [[nodiscard]] Kind chosenKind() const;
    [[nodiscard]] std::vector<Place> shelfPlaces() const;
    [[nodiscard]] std::vector<ResidentPtr> chosen() const;
    void choiceMade();
    void layOutBlank();
    void layOutTags(const std::vector<std::string>& drawn);

    QStringList subjects_;
    int kind_ = 0;
    int shelf_ = 0;
    int paper_ = 0;
    int blankCount_ = 27;  // one page
    QString blankTyped_ = QStringLiteral("27");
    QString blankError_;
    int tagCount_ = 0;
    NewCodes newCodes_;
};

}  // namespace burrow
