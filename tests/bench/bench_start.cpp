// From a cold process to the first due list with 1,000 animals and 300,000 entries, against an empty
// Qt Quick Controls window with the same fonts: time and resident memory, each to stay within twice.
// Runs both programs in turn, as often as the argument says, and prints medians and ratios.
#include <QCoreApplication>
#include <QElapsedTimer>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <algorithm>
#include <cstdio>
#include <vector>

namespace {

struct Start {
    double ms = 0;
    double kb = 0;
};

Start run(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.setProcessChannelMode(QProcess::MergedChannels);
    QElapsedTimer timer;
    timer.start();
    process.start(program, arguments);
    process.waitForFinished();
    const double ms = static_cast<double>(timer.nsecsElapsed()) / 1e6;
    static const QRegularExpression memory("VmRSS:\\s*(\\d+)");
    const auto found = memory.match(QString::fromUtf8(process.readAll()));
    if (!found.hasMatch()) qFatal("%s does not show its window", qPrintable(program));
    return {ms, found.captured(1).toDouble()};
}

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

}  // namespace

int main(int argc, char* argv[]) {
    QCoreApplication app(argc, argv);
    const int rounds = 3 + 4 * app.arguments().value(1, "5").toInt();
    QTemporaryDir folder;
    const auto book = folder.filePath("large.book");
    QProcess::execute(BURROW_PROGRAM, {"demo", book, "--animals", "1000", "--years", "4"});
    std::vector<double> ms;
    std::vector<double> kb;
    std::vector<double> emptyMs;
    std::vector<double> emptyKb;
    for (int i = 0; i < rounds; ++i) {
        const auto ours = run(BURROW_APP, {"--measure-start", book});
        const auto empty = run(BURROW_EMPTY, {});
        ms.push_back(ours.ms);
        kb.push_back(ours.kb);
        emptyMs.push_back(empty.ms);
        emptyKb.push_back(empty.kb);
    }
    std::printf("start   %7.1f ms   empty window %7.1f ms   ratio %.2f (at most 2)\n", median(ms),
                median(emptyMs), median(ms) / median(emptyMs));
    std::printf("memory  %7.1f MB   empty window %7.1f MB   ratio %.2f (at most 2)\n",
                median(kb) / 1024, median(emptyKb) / 1024, median(kb) / median(emptyKb));
    return 0;
}
