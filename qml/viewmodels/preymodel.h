// Feeders: what is in stock, what will be used in the days to come, and what to buy.
#pragma once

#include <QTimer>
#include <QVariantList>

#include "room/prey_need.h"
#include "viewmodels/desk.h"
#include "viewmodels/linesmodel.h"

namespace burrow {

class PreyModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY deskChanged REQUIRED FINAL)
    /// [{word}] how far ahead, and which was chosen.
    Q_PROPERTY(QVariantList spans READ spans NOTIFY deskChanged FINAL)
    Q_PROPERTY(int span READ span WRITE setSpan NOTIFY changed FINAL)
    /// What is there: name "Crickets, small", value "40", sub "counted today".
    Q_PROPERTY(burrow::LinesModel* stock READ stock CONSTANT FINAL)
    /// What to buy: name "44 crickets, small", value "2 packs, 9.00", sub why; heading its day.
    Q_PROPERTY(burrow::LinesModel* purchases READ purchases CONSTANT FINAL)
    /// What will be used: name, value "18 to 27", sub "about 22, 12 of them from your stock".
    Q_PROPERTY(burrow::LinesModel* uses READ uses CONSTANT FINAL)
    /// The sizes that can be counted: those that are not in stock yet.
    Q_PROPERTY(burrow::LinesModel* sizes READ sizes CONSTANT FINAL)
    /// "What you have is enough for 14 days."
    Q_PROPERTY(QString summary READ summary NOTIFY changed FINAL)
    /// "96 meals for 62 animals. 80 of 100 times between 88 and 131 prey, an estimate."
    Q_PROPERTY(QString outlookText READ outlookText NOTIFY changed FINAL)
    /// "18.50 in all, one without a price"; empty where nothing is to be bought.
    Q_PROPERTY(QString costText READ costText NOTIFY changed FINAL)
    /// The first answer has not come yet.
    Q_PROPERTY(bool waiting READ isWaiting NOTIFY changed FINAL)

    // The size that is being counted or priced.
    Q_PROPERTY(QString chosenName READ chosenName NOTIFY chosenChanged FINAL)
    Q_PROPERTY(QString chosenCount READ chosenCount NOTIFY chosenChanged FINAL)
    Q_PROPERTY(QString chosenPrice READ chosenPrice NOTIFY chosenChanged FINAL)
    Q_PROPERTY(bool chosenInStock READ isChosenInStock NOTIFY chosenChanged FINAL)
    Q_PROPERTY(QString countError READ countError NOTIFY chosenChanged FINAL)
    Q_PROPERTY(QString priceError READ priceError NOTIFY chosenChanged FINAL)

public:
    explicit PreyModel(QObject* parent = nullptr);

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] QVariantList spans() const;
    [[nodiscard]] int span() const { return span_; }
    void setSpan(int span);
    [[nodiscard]] LinesModel* stock() { return &stock_; }
    [[nodiscard]] LinesModel* purchases() { return &purchases_; }
    [[nodiscard]] LinesModel* uses() { return &uses_; }
    [[nodiscard]] LinesModel* sizes() { return &sizes_; }
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QString outlookText() const;
    [[nodiscard]] QString costText() const;
    [[nodiscard]] bool isWaiting() const { return !outlook_; }
    [[nodiscard]] QString chosenName() const;
    [[nodiscard]] QString chosenCount() const;
    [[nodiscard]] QString chosenPrice() const;
    [[nodiscard]] bool isChosenInStock() const;
    [[nodiscard]] QString countError() const { return countError_; }
    [[nodiscard]] QString priceError() const { return priceError_; }

public slots:
    /// One more, or one less, of the size with that key is there.
    void step(const QString& size, int by);
    /// What the list says was bought: it goes into the stock.
    void buy(const QString& purchase);
    void choose(const QString& size);
    /// Writes what differs for the chosen size, or says why it can't be; kept() answers.
    void keep(const QString& count, const QString& price);
    /// The chosen size is no longer counted.
    void forget();
    void clearErrors();

signals:
    void deskChanged();
    void changed();
    void chosenChanged();
    void kept();

private:
    void readStock();
    void readOutlook();
    void showOutlook();
    void write(FieldValues fields, const Message& said, std::function<void(bool)> then = {});
    [[nodiscard]] const stock::Feeders& feeders() const;
    [[nodiscard]] const StockLine* lineOf(std::size_t band) const;
    /// How many there are, as the keeper sees it.
    [[nodiscard]] int countOf(std::size_t band) const;
    [[nodiscard]] QString sizeName(std::size_t band) const;
    [[nodiscard]] QString costWords(stock::Cents cost) const;

    QPointer<Desk> desk_;
    LinesModel stock_;
    LinesModel purchases_;
    LinesModel uses_;
    LinesModel sizes_;
    std::vector<StockLine> lines_;
    std::optional<PreyOutlook> outlook_;
    QTimer later_;  ///< several taps ask once
    int asked_ = 0;
    int span_ = 1;
    /// Taps that are not on the device yet, by band: how many there will be, and how many are under way.
    struct Tapped {
        int count = 0;
        int underWay = 0;
    };
    std::map<std::size_t, Tapped> tapped_;
    std::optional<std::size_t> chosen_;
    QString countError_;
    QString priceError_;
};

}  // namespace burrow
