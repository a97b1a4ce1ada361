// The mat as a PDF, and what is measured in photos of it. These need no book.
#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <memory>

#include "base/file_writer.h"
#include "base/text.h"
#include "documents/mat.h"
#include "measure/beside.h"
#include "measure/flatten.h"
#include "measure/length.h"
#include "measure/survey.h"
#include "pictures/raster.h"
#include "room/mats.h"
#include "room/tables.h"
#include "terminal/printing.h"
#include "terminal/registry.h"

namespace burrow::terminal {
namespace {

using nlohmann::json;

struct Typed {
    Path out;
    std::string paper = "a5";
    std::string name;
    Path photo;
    std::string from;
    std::string to;
    double pixelsPerMm = 20;
    double pointPixels = 0.5;
    double heightMm = 0;
    double heightDeviationMm = 0;
    std::optional<double> barMm;
    Path book;  ///< where the bars of mats are kept
};

int mat(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    Printing printing;
    if (const auto started = printing.start(); !started) return console.trouble(started.error());
    const auto paper = typed.paper == "a4" ? measure::MatPaper::a4 : measure::MatPaper::a5;
    const auto name = typed.name.empty() ? measure::drawMatName(setting.random) : typed.name;
    const auto page = documents::matPage(paper, name, setting.reference.words, printing.measure());
    if (!page) return console.trouble(page.error());
    const auto written = printing.write(typed.out, std::span(&*page, 1), "Burrowbook mat");
    if (!written) return console.trouble(written.error());
    console.line(console.say({"said.mat", {{"name", name}, {"file", typed.out.string()}}}));
    console.value({{"file", typed.out.string()}, {"mat", name}, {"paper", typed.paper}});
    return done;
}

struct Opened {
    pictures::Raster photo;
    pictures::PictureInfo info;
};

Result<Opened> openPhoto(const Path& path) {
    DeviceFiles files;
    const pictures::Limits limits;
    BURROW_TRY(const auto bytes, files.read(path, limits.bytes));
    BURROW_TRY(const auto info, pictures::inspect(bytes, limits));
    BURROW_TRY(auto photo, pictures::decode(bytes, limits));
    return Opened{std::move(photo), info};
}

/// "1204,880.5"
Result<measure::ImagePoint> readPoint(const std::string& text) {
    const auto refuse = [&] {
        return fail(Trouble::badInput, {"measure.badPoint", {{"text", text}}});
    };
    const auto number = [](std::string_view part) -> std::optional<double> {
        double value = 0;
        const auto* end = part.data() + part.size();
        const auto [stopped, error] = std::from_chars(part.data(), end, value);
        if (error != std::errc() || stopped != end || !std::isfinite(value)) return std::nullopt;
        return value;
    };
    const auto comma = text.find(',');
    if (comma == std::string::npos) return refuse();
    const auto x = number(trimmed(std::string_view(text).substr(0, comma)));
    const auto y = number(trimmed(std::string_view(text).substr(comma + 1)));
    if (!x || !y) return refuse();
    return measure::ImagePoint{*x, *y};
}

/// What is known of the printer.
struct Printed {
    measure::PrintScale scale;  ///< where nobody says anything, a printer without a fault
    std::optional<double> barMm;
};

/// What is gone by: the numbers as shipped, or with the keeper's own of a book, and its mats.
struct Known {
    std::shared_ptr<const RoomTables> tables;
    std::optional<RoomInfo> info;

    [[nodiscard]] const measure::MeasureRules& rules() const { return tables->measure; }
};

Result<Known> knownTo(const Setting& setting, const Typed& typed) {
    const auto& numbers = setting.reference.numbers;
    if (typed.book.empty()) return Known{numbers.shipped(), std::nullopt};
    BURROW_TRY(auto book, openToRead(typed.book, setting));
    BURROW_TRY(auto info, roomInfo(book));
    auto tables = numbers.with(info);
    return Known{std::move(tables), std::move(info)};
}

/// The bar as it is typed or as the book keeps it. What a mat's bar measured says nothing of a tag, which
/// another printer may have made at another time.
Result<Printed> printedOf(const measure::Survey& survey, const Known& known, const Typed& typed) {
    if (typed.barMm) {
        if (!survey.mat) return fail(Trouble::badInput, {"measure.barOfTag"});
        BURROW_TRY(const auto scale,
                   measure::PrintScale::fromBar({*typed.barMm}, {known.rules().barDeviation}));
        return Printed{scale, typed.barMm};
    }
    if (!known.info) return Printed{};
    if (!survey.mat) return Printed{{1, known.rules().tagPrint}, std::nullopt};
    const auto& name = survey.mat->name;
    Printed printed{printScaleOf(*known.info, name, known.rules()), std::nullopt};
    const auto kept = readMat(settingOf(name), known.info->other(settingOf(name)));
    if (kept && kept->bar) printed.barMm = kept->bar->value;
    return printed;
}

/// A bar that none can be is refused before anything is read.
Done checkBar(const Typed& typed) {
    if (!typed.barMm) return {};
    BURROW_TRY(const auto scale, measure::PrintScale::fromBar({*typed.barMm}));
    static_cast<void>(scale);
    return {};
}

struct Measured {
    measure::Survey survey;
    measure::Length length;
    Printed printed;
};

Result<Measured> measureIt(const Setting& setting, const Typed& typed) {
    BURROW_TRY(const auto from, readPoint(typed.from));
    BURROW_TRY(const auto to, readPoint(typed.to));
    BURROW_DO(checkBar(typed));
    measure::LengthOptions options;
    options.pointDeviation = typed.pointPixels;
    options.height = {{typed.heightMm}, {typed.heightDeviationMm}};
    BURROW_TRY(const auto opened, openPhoto(typed.photo));
    const measure::ImagePoint middle{0.5 * (from.x + to.x), 0.5 * (from.y + to.y)};
    BURROW_TRY(const auto known, knownTo(setting, typed));
    BURROW_TRY(auto survey, measure::survey(opened.photo, middle, known.rules()));
    survey.focal35 = opened.info.focal35;
    BURROW_TRY(auto printed, printedOf(survey, known, typed));
    options.print = printed.scale;
    BURROW_TRY(const auto length, measure::lengthBetween(survey, from, to, options, known.rules()));
    return Measured{std::move(survey), length, printed};
}

/// To thousandths, which print as such.
double rounded(double value) { return std::round(value * 1000) / 1000; }

json barJson(const Printed& printed) { return printed.barMm ? json(*printed.barMm) : json(); }

/// By what it was measured, and what was taken for granted of the printer.
Message byWhat(const measure::Survey& survey, const Printed& printed, double residual) {
    if (!survey.mat) return {"said.lengthTag", {{"residual", residual}}};
    const bool isUnsure = !printed.barMm && printed.scale.deviation > 0;
    if (isUnsure) return {"said.lengthUnmeasured", {{"residual", residual}}};
    return {"said.lengthMat",
            {{"bar", printed.barMm.value_or(measure::barLength.value)}, {"residual", residual}}};
}

int measureLength(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    const auto measured = measureIt(setting, typed);
    if (!measured) return console.trouble(measured.error());
    const auto& [survey, length, printed] = *measured;
    const bool isMat = survey.scale == measure::ScaleKind::mat;
    const double residual = rounded(survey.residual);
    console.line(console.say(
        {"said.length",
         {{"mm", length.value.value}, {"low", length.low.value}, {"high", length.high.value}}}));
    console.line(console.say(byWhat(survey, printed, residual)));
    if (const auto warning = measure::copyWarning(survey, printed.scale)) {
        console.line(console.say(*warning));
    }
    console.value({{"mm", rounded(length.value.value)},
                   {"interval95", {rounded(length.low.value), rounded(length.high.value)}},
                   {"residual_px", residual},
                   {"scale", isMat ? "mat" : "tag"},
                   {"code", survey.code ? json(*survey.code) : json()},
                   {"codes", survey.codes},
                   {"mat", survey.mat ? json(survey.mat->name) : json()},
                   {"bar_mm", barJson(printed)},
                   {"printer_sd", rounded(printed.scale.deviation)},
                   {"tag_ratio", survey.beside ? json(rounded(survey.beside->ratio)) : json()},
                   {"px_per_mm", rounded(survey.pixelsPerMm)},
                   {"radial", survey.hasRadial ? json(survey.parameters[8]) : json()}});
    return done;
}

/// By the ending of the file that is asked for. A PNG goes to the file as it is made.
Done writePicture(const pictures::Raster& picture, const Path& out) {
    if (lowerAscii(out.extension().string()) == ".png") {
        BURROW_TRY(auto writer, FileWriter::create(out));
        BURROW_DO(pictures::writePng(picture, writer));
        return writer.finish();
    }
    constexpr int quality = 92;
    BURROW_TRY(const auto bytes, pictures::encodeJpeg(picture, quality));
    return DeviceFiles().write(out, bytes);
}

struct Flattened {
    int width = 0;
    int height = 0;
    measure::Survey survey;
    Printed printed;
    std::optional<Error> unbalanced;  ///< why the colours are as they were
};

Result<Flattened> flattenIt(const Setting& setting, const Typed& typed) {
    const auto ending = lowerAscii(typed.out.extension().string());
    if (ending != ".jpg" && ending != ".jpeg" && ending != ".png") {
        return fail(Trouble::badInput, {"measure.badEnding"});
    }
    BURROW_DO(checkBar(typed));
    BURROW_TRY(auto opened, openPhoto(typed.photo));
    auto& photo = opened.photo;
    BURROW_TRY(const auto known, knownTo(setting, typed));
    BURROW_TRY(auto survey, measure::survey(photo, std::nullopt, known.rules()));
    BURROW_TRY(const auto printed, printedOf(survey, known, typed));
    measure::FlattenOptions options;
    options.pixelsPerMm = typed.pixelsPerMm;
    options.print = printed.scale;
    std::optional<Error> unbalanced;
    if (survey.mat) {
        if (const auto balance = measure::balanceOf(photo, survey, known.rules())) {
            options.balance = *balance;
        } else {
            unbalanced = balance.error();
        }
    }
    BURROW_TRY(const auto flat, measure::flatten(photo, survey, options));
    // The two are as large as all that is held is meant to be; the file needs room of its own.
    photo = pictures::Raster();
    BURROW_DO(writePicture(flat, typed.out));
    return Flattened{flat.width(), flat.height(), std::move(survey), printed, unbalanced};
}

int flatten(const Setting& setting, const Typed& typed) {
    auto& console = setting.console;
    const auto result = flattenIt(setting, typed);
    if (!result) return console.trouble(result.error());
    const auto file = typed.out.string();
    console.line(console.say({"said.flattened", {{"file", file}, {"scale", typed.pixelsPerMm}}}));
    if (result->unbalanced) console.line(console.say(result->unbalanced->message));
    const auto& survey = result->survey;
    console.value({{"file", file},
                   {"width", result->width},
                   {"height", result->height},
                   {"px_per_mm", typed.pixelsPerMm},
                   {"scale", survey.scale == measure::ScaleKind::mat ? "mat" : "tag"},
                   {"code", survey.code ? json(*survey.code) : json()},
                   {"bar_mm", barJson(result->printed)},
                   {"white_balanced", survey.mat.has_value() && !result->unbalanced},
                   {"residual_px", rounded(survey.residual)}});
    return done;
}

/// What is known of the printer, in one way or the other.
void addPrinted(CLI::App& sub, Typed& typed) {
    auto* bar =
        sub.add_option("--bar-mm", typed.barMm,
                       "the mat's bar as measured with a ruler (taken for 100, and for sure)");
    sub.add_option(
           "--book", typed.book,
           "the book that keeps what the mat's bar measured; where it does not, the printer "
           "may be off by 2 %")
        ->excludes(bar);
}

CLI::App* addPlain(CLI::App& app, Command& chosen, const std::string& name, const std::string& what,
                   const std::string& example, Command command) {
    auto* sub = app.add_subcommand(name, what);
    sub->footer("Example:\n  " + example);
    sub->callback([&chosen, command = std::move(command)] { chosen = command; });
    return sub;
}

}  // namespace

void addMeasureCommands(CLI::App& app, Command& chosen) {
    const auto typed = std::make_shared<Typed>();
    auto* sheet = addPlain(app, chosen, "mat", "The mat on which moults are measured, as PDF.",
                           "burrow mat --out mat.pdf --paper a5",
                           [typed](const Setting& s) { return mat(s, *typed); });
    sheet->add_option("--out", typed->out, "the PDF")->required();
    sheet->add_option("--paper", typed->paper, "a5 or a4")->check(CLI::IsMember({"a5", "a4"}));
    sheet->add_option("--name", typed->name, "print this mat again (a new name)");

    auto* length = addPlain(app, chosen, "measure",
                            "A length in a photo of the mat, or of an enclosure's tag.",
                            "burrow measure moult.jpg --from 1204,880.5 --to 1391,902 --json",
                            [typed](const Setting& s) { return measureLength(s, *typed); });
    length->add_option("PHOTO", typed->photo, "JPEG or PNG")->required();
    length->add_option("--from", typed->from, "X,Y in pixels as stored, right and down")
        ->required();
    length->add_option("--to", typed->to, "X,Y of the other end")->required();
    length
        ->add_option("--point-px", typed->pointPixels,
                     "how exactly the points were set: standard deviation in pixels (0.5)")
        ->check(CLI::Range(0.0, 100.0));
    length
        ->add_option("--height-mm", typed->heightMm,
                     "how far it lies above the mat; nearer looks larger (0)")
        ->check(CLI::Range(0.0, 60.0));
    length
        ->add_option("--height-sd-mm", typed->heightDeviationMm,
                     "how sure that is: standard deviation (0)")
        ->check(CLI::Range(0.0, 30.0));
    addPrinted(*length, *typed);

    auto* flat = addPlain(app, chosen, "flatten",
                          "A photo of the mat as a picture with so many pixels to a millimetre.",
                          "burrow flatten moult.jpg --out flat.png --px-per-mm 20",
                          [typed](const Setting& s) { return flatten(s, *typed); });
    flat->add_option("PHOTO", typed->photo, "JPEG or PNG")->required();
    flat->add_option("--out", typed->out, "the picture, .jpg or .png")->required();
    flat->add_option("--px-per-mm", typed->pixelsPerMm, "pixels to a millimetre (20)")
        ->check(CLI::Range(1.0, 200.0));
    addPrinted(*flat, *typed);
}

}  // namespace burrow::terminal
