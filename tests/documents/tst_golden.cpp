// Sheets command by command, against files that people have looked at. After a change that is
// meant, run with BURROW_UPDATE_GOLDEN=1 and read the difference.
#include <QtTest>

#include <cstdlib>

#include "../support/assets.h"
#include "documents/mat.h"
#include "page_text.h"
#include "plain_measure.h"
#include "samples.h"

using namespace burrow;
using namespace burrow::documents;

class TestGolden : public QObject {
    Q_OBJECT

    const Words words = test::englishWords();
    const test::PlainMeasure measure{};

    static void compare(const std::string& name, const Page& page) {
        const auto path = std::filesystem::path(BURROW_GOLDEN_DIR) / name;
        const auto text = test::PageText::of(page);
        if (std::getenv("BURROW_UPDATE_GOLDEN") != nullptr) std::ofstream(path) << text;
        const auto expected = QString::fromStdString(test::slurp(path)).split('\n');
        const auto actual = QString::fromStdString(text).split('\n');
        for (qsizetype i = 0; i < std::min(expected.size(), actual.size()); ++i) {
            QCOMPARE(actual[i], expected[i]);
        }
        QCOMPARE(actual.size(), expected.size());
    }

private slots:
    void tags() {
        // The first row, the longest names and the most cautions.
        const auto all = test::labels();
        const std::vector<TagLabel> some{all[0], all[1], all[5], all[7], all[13]};
        compare("tags.txt", tagSheets("Kiln Row", Paper::a4, some, words, measure)->front());
    }
    void blankTags() {
        const auto codes = test::codes(2, 9);
        compare("blank_tags.txt",
                blankTagSheets("Kiln Row", Paper::letter, codes, words, measure)->front());
    }
    void mat() {
        compare("mat_a5.txt",
                matPage(burrow::measure::MatPaper::a5, "7Q2M", words, measure).value());
    }
    void careSheetOfASling() {
        compare("care_sling.txt", careSheet(test::slingSheet(), words, measure).value());
    }
    void crowdedCareSheet() {
        compare("care_crowded.txt", careSheet(test::crowdedSheet(), words, measure).value());
    }
};

QTEST_APPLESS_MAIN(TestGolden)
#include "tst_golden.moc"
