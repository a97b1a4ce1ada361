// What the columns of a spreadsheet stand for: proposed, shown with what becomes of their cells, and put right
// by the keeper. What can be read in two ways is asked.
#pragma once

#include <QUrl>
#include <QVariantList>

#include "viewmodels/bringmodel.h"

namespace burrow {

class MappingModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    /// The bringing-in that the file belongs to, and its place there.
    Q_PROPERTY(
        burrow::BringModel* bring READ bring WRITE setBring NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(int file READ file WRITE setFile NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(QString name READ name NOTIFY changed FINAL)
    /// "2 questions have to be answered", "Nothing is left to be asked"
    Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
    Q_PROPERTY(bool open READ isOpen NOTIFY changed FINAL)
    /// [{word}] and which one the list is.
    Q_PROPERTY(QVariantList kinds READ kinds NOTIFY changed FINAL)
    Q_PROPERTY(int kind READ kind NOTIFY changed FINAL)
    /// [{text, open, options}]: options is [{word, sub}], empty where the answer is to be given below.
    Q_PROPERTY(QVariantList questions READ questions NOTIFY changed FINAL)
    /// "And 40 more"; empty where all are listed.
    Q_PROPERTY(QString moreQuestions READ moreQuestions NOTIFY changed FINAL)
    /// [{name, target, samples, trouble, dates, unit}]: dates and unit say how they are read, empty for a
    /// column that holds none.
    Q_PROPERTY(QVariantList columns READ columns NOTIFY changed FINAL)
    /// [{word, sub}] what a column may stand for.
    Q_PROPERTY(QVariantList targets READ targets NOTIFY changed FINAL)
    /// [{word, sub}] in which order dates may be, and in which units lengths.
    Q_PROPERTY(QVariantList orders READ orders NOTIFY changed FINAL)
    Q_PROPERTY(QVariantList units READ units NOTIFY changed FINAL)
    /// Where the mapping was saved, or what kept it from being, in words.
    Q_PROPERTY(QString savedText READ savedText NOTIFY savedChanged FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY savedChanged FINAL)

public:
    explicit MappingModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] BringModel* bring() const { return bring_; }
    void setBring(BringModel* bring);
    [[nodiscard]] int file() const { return file_; }
    void setFile(int file);
    [[nodiscard]] QString name() const;
    [[nodiscard]] QString summary() const;
    [[nodiscard]] bool isOpen() const { return review_.isOpen(); }
    [[nodiscard]] QVariantList kinds() const;
    [[nodiscard]] int kind() const;
    [[nodiscard]] QVariantList questions() const;
    [[nodiscard]] QString moreQuestions() const;
    [[nodiscard]] QVariantList columns() const;
    [[nodiscard]] QVariantList targets() const;
    [[nodiscard]] QVariantList orders() const;
    [[nodiscard]] QVariantList units() const;
    [[nodiscard]] QString savedText() const { return savedText_; }
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    /// The list is of another kind: its columns are looked at anew.
    void chooseKind(int kind);
    /// By their places in `columns`, `targets`, `orders` and `units`.
    void chooseTarget(int column, int target);
    void chooseOrder(int column, int order);
    void chooseUnit(int column, int unit);
    /// By their places in `questions` and its options.
    void answer(int question, int option);
    /// Hands the mapping to the bringing-in, which looks at its files again.
    void finish();
    /// As a file of its own, to be chosen together with the next sheet, or used by `burrow bring`.
    void saveTo(const QUrl& folder);

signals:
    void givenChanged();
    void changed();
    void savedChanged();

private:
    void readIfGiven();
    void review();
    [[nodiscard]] const Desk& desk() const { return *bring_->desk(); }
    [[nodiscard]] const Profiles& profiles() const { return desk().profiles(); }
    [[nodiscard]] QVariantMap optionFor(const exchange::MapQuestion& question,
                                        const std::string& choice) const;
    [[nodiscard]] std::vector<std::string> choicesOf(const exchange::MapQuestion& question) const;
    [[nodiscard]] QString targetWord(const exchange::ColumnMapping& column) const;
    [[nodiscard]] exchange::ColumnMapping* column(int at);
    void setTarget(exchange::ColumnMapping& column, const std::string& target);

    QPointer<BringModel> bring_;
    int file_ = -1;
    std::shared_ptr<const CsvFile> csv_;
    exchange::Mapping mapping_;
    exchange::MapReview review_;
    QString savedText_;
    QString trouble_;
};

}  // namespace burrow
