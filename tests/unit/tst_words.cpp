// Sentences from messages.
#include <QtTest>

#include <regex>

#include "support/assets.h"

using namespace burrow;

namespace {

Words wordsOf(const std::string& extra) {
    const std::vector<std::string> files{
        test::slurp(std::string(BURROW_ASSETS_DIR) + "/words/en/calendar.json"), extra};
    return Words::fromJson(files).value();
}

const CivilDay friday = *civilDay({2026, 5, 8});

}  // namespace

class TestWords : public QObject {
    Q_OBJECT

private slots:
    void fillsHoles() {
        // No raw string: moc 6.4 takes a # inside one for a directive and loses the class.
        const auto words = wordsOf(
            "{\"a\": \"Ate {days:one day|# days} ago, gap {gap}\","
            "\"outcome.left_in\": \"left in, {count:one|# of them}\",\"b\": \"{@outcome}\"}");
        QCOMPARE(words.say({"a", {{"days", 9}, {"gap", 8.5}}}, friday),
                 std::string("Ate 9 days ago, gap 8.5"));
        QCOMPARE(words.say({"a", {{"days", 1}, {"gap", 8.0}}}, friday),
                 std::string("Ate one day ago, gap 8"));
        QCOMPARE(words.say({"b", {{"outcome", std::string("left_in")}, {"count", 2}}}, friday),
                 std::string("left in, 2 of them"));
        QCOMPARE(words.say({"b", {{"outcome", std::string("locust")}}}, friday),
                 std::string("locust"));
    }

    void showsWhatIsMissing() {
        const auto words = wordsOf(R"({"a": "{gone} here"})");
        QCOMPARE(words.say({"a"}, friday), std::string("[gone] here"));
        QCOMPARE(words.say({"none"}, friday), std::string("[none]"));
    }

    void namesDays_data() {
        QTest::addColumn<int>("away");
        QTest::addColumn<QString>("text");
        QTest::newRow("today") << 0 << "8 May";
        QTest::newRow("tomorrow") << 1 << "Saturday";
        QTest::newRow("in six days") << 6 << "Thursday";
        QTest::newRow("in a week") << 7 << "15 May";
        QTest::newRow("yesterday") << -1 << "7 May";
        QTest::newRow("last year") << -200 << "20 October 2025";
        QTest::newRow("long ago") << -1200 << "24 January 2023";
    }
    void namesDays() {
        QFETCH(int, away);
        QFETCH(QString, text);
        const auto words = wordsOf("{}");
        QCOMPARE(QString::fromStdString(words.day(friday + away, friday)), text);
    }

    void refusesBadCatalogues() {
        const std::vector<std::string> broken{"{\"a\": 1}"};
        const std::vector<std::string> twice{R"({"a": "x"})", R"({"a": "y"})"};
        QVERIFY(!Words::fromJson(broken));
        QVERIFY(!Words::fromJson(twice));
        QVERIFY(!Words::fromJson({}));
    }

    /// A catalogue that names itself ends.
    void survivesCircles() {
        const auto words = wordsOf(R"({"loop.x": "{@loop}", "a": "{@loop}"})");
        QVERIFY(!words.say({"a", {{"loop", std::string("x")}}}, friday).empty());
    }

    /// Every message that the sources name has a sentence, and no sentence breaks the house's rules.
    void catalogueIsComplete() {
        const auto words = test::englishWords();
        const std::regex named("\\{\"([a-z][A-Za-z]*\\.[A-Za-z.]+)\"[,}]");
        int found = 0;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(
                 std::filesystem::path(BURROW_ASSETS_DIR).parent_path() / "core")) {
            // The table of rules holds ids of its own kind.
            const bool isTable = entry.path().filename() == "rule_table.cpp";
            if (entry.path().extension() != ".cpp" || isTable) continue;
            const auto text = test::slurp(entry.path());
            for (std::sregex_iterator at(text.begin(), text.end(), named), end; at != end; ++at) {
                ++found;
                QVERIFY2(words.knows((*at)[1].str()), (*at)[1].str().c_str());
            }
        }
        QVERIFY(found > 20);
        for (const auto& id : words.ids()) {
            const auto sentence = words.say(id);
            for (const char* word : {"Oops", "nvalid", "ailed", "re you sure", "!"}) {
                QVERIFY2(sentence.find(word) == std::string::npos, sentence.c_str());
            }
        }
    }
};

QTEST_APPLESS_MAIN(TestWords)
#include "tst_words.moc"
