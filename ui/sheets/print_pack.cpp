#include "ui/sheets/print_pack.h"

#include <QCryptographicHash>
#include <QPageLayout>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

#include "core/io/plan_file.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_words.h"

namespace yardcast::ui {

namespace {

/// Six signs that are the same on sheets of the same plan and differ when anything in it was changed.
QString planMark(const Plan& plan)
{
    const std::string text = writePlan(plan);
    const QByteArray digest = QCryptographicHash::hash(
        QByteArrayView(text.data(), static_cast<qsizetype>(text.size())), QCryptographicHash::Sha256);
    return QString::fromLatin1(digest.toHex().left(6)).toUpper();
}

std::vector<SheetPage> pagesOf(const Plan& plan, const Assessment& assessment, const QStringList& sheets,
                               const SheetOptions& options)
{
    std::vector<SheetPage> pages;
    const auto add = [&](std::vector<SheetPage> more) {
        pages.insert(pages.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    };
    for (const QString& name : sheetNames()) {
        if (!sheets.contains(name)) {
            continue;
        }
        if (name == QLatin1String("shopping")) {
            add(shoppingPages(plan, assessment));
        } else if (name == QLatin1String("saw")) {
            add(sawPages(plan, assessment));
        } else if (name == QLatin1String("plan")) {
            add(planPages(plan, assessment));
        } else if (name == QLatin1String("front")) {
            add(frontPages(plan, options.frontLookDeg));
        } else if (name == QLatin1String("strength")) {
            add(strengthPages(plan, assessment));
        } else if (name == QLatin1String("steel")) {
            add(steelPages(plan, assessment));
        } else if (name == QLatin1String("mould")) {
            add(mouldPages(plan, assessment, options.only));
        } else if (name == QLatin1String("template")) {
            add(templatePages(plan, assessment, options.only));
        } else if (name == QLatin1String("mix")) {
            add(mixPages(plan, assessment));
        } else if (name == QLatin1String("pour")) {
            add(pourPages(plan, assessment));
        } else if (name == QLatin1String("lift")) {
            add(liftPages(plan, assessment));
        }
    }
    return pages;
}

QPageLayout layoutOf(bool landscape)
{
    QPageLayout layout(QPageSize(QPageSize::A4), landscape ? QPageLayout::Landscape : QPageLayout::Portrait,
                       QMarginsF(0.0, 0.0, 0.0, 0.0), QPageLayout::Millimeter);
    layout.setMode(QPageLayout::FullPageMode);
    return layout;
}

/// `lies`: what it is painted on is wider than high.
void paintPage(QPainter& painter, double dotsPerMmX, double dotsPerMmY, bool lies, const SheetPage& page,
               const TitleBlock& block)
{
    painter.save();
    painter.scale(dotsPerMmX, dotsPerMmY);
    if (page.landscape && !lies) {
        // A printer that cannot turn its pages in the middle of a job: the drawing is turned instead.
        painter.translate(sheetSize(false).width(), 0.0);
        painter.rotate(90.0);
    } else if (!page.landscape && lies) {
        painter.translate(0.0, sheetSize(true).height());
        painter.rotate(-90.0);
    }
    page.paint(painter, contentBox(page.landscape, page.scaleOf > 0.0));
    paintFrame(painter, page, block);
    painter.restore();
}

TitleBlock blockOf(const Plan& plan, const SheetOptions& options, int pages)
{
    TitleBlock block;
    block.plan = QString::fromStdString(plan.title);
    block.date = options.date;
    block.version = QStringLiteral(YARDCAST_VERSION) + QStringLiteral(" / ") + planMark(plan);
    block.pages = pages;
    return block;
}

void setError(QString* error, const QString& text)
{
    if (error) {
        *error = text;
    }
}

}  // namespace

QStringList sheetNames()
{
    return {QStringLiteral("shopping"), QStringLiteral("saw"), QStringLiteral("plan"), QStringLiteral("front"),
            QStringLiteral("strength"), QStringLiteral("steel"), QStringLiteral("mould"), QStringLiteral("template"),
            QStringLiteral("mix"), QStringLiteral("pour"), QStringLiteral("lift")};
}

QStringList usualSheetNames()
{
    QStringList names = sheetNames();
    names.removeAll(QStringLiteral("template"));
    return names;
}

QString sheetTitle(const QString& name)
{
    if (name == QLatin1String("shopping")) {
        return Sheets::tr("Shopping list");
    }
    if (name == QLatin1String("saw")) {
        return Sheets::tr("Saw list");
    }
    if (name == QLatin1String("plan")) {
        return Sheets::tr("Plan drawing");
    }
    if (name == QLatin1String("front")) {
        return Sheets::tr("Front elevation");
    }
    if (name == QLatin1String("strength")) {
        return Sheets::tr("Strength");
    }
    if (name == QLatin1String("steel")) {
        return Sheets::tr("Steel");
    }
    if (name == QLatin1String("mould")) {
        return Sheets::tr("Mould");
    }
    if (name == QLatin1String("template")) {
        return Sheets::tr("Template, true size");
    }
    if (name == QLatin1String("mix")) {
        return Sheets::tr("Mixing card");
    }
    if (name == QLatin1String("pour")) {
        return Sheets::tr("Pour day");
    }
    if (name == QLatin1String("lift")) {
        return Sheets::tr("Weight and lifting");
    }
    return {};
}

struct SheetPack::Pages {
    PlanPtr plan;               ///< what the pages refer to
    AssessmentPtr assessment;
    std::vector<SheetPage> all;
    TitleBlock block;
};

SheetPack::SheetPack(PlanPtr plan, AssessmentPtr assessment, const QStringList& sheets, const SheetOptions& options)
    : pages_(std::make_unique<Pages>())
{
    pages_->plan = std::move(plan);
    pages_->assessment = std::move(assessment);
    pages_->all = pagesOf(*pages_->plan, *pages_->assessment, sheets, options);
    pages_->block = blockOf(*pages_->plan, options, count());
}

SheetPack::~SheetPack() = default;

int SheetPack::count() const { return static_cast<int>(pages_->all.size()); }

bool SheetPack::isLandscape(int page) const { return pages_->all[static_cast<std::size_t>(page)].landscape; }

QString SheetPack::title(int page) const
{
    const SheetPage& of = pages_->all[static_cast<std::size_t>(page)];
    return of.part.isEmpty() ? of.sheet : Sheets::tr("%1, %2", "sheet, part").arg(of.sheet, of.part);
}

QImage SheetPack::picture(int page, int widthPx) const
{
    const SheetPage& of = pages_->all[static_cast<std::size_t>(page)];
    const QSizeF mm = sheetSize(of.landscape);
    const double scale = widthPx / mm.width();
    QImage image(widthPx, qRound(mm.height() * scale), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing | QPainter::SmoothPixmapTransform);
    TitleBlock block = pages_->block;
    block.page = page + 1;
    paintPage(painter, scale, scale, of.landscape, of, block);
    return image;
}

int packPageCount(const Plan& plan, const Assessment& assessment, const QStringList& sheets,
                  const SheetOptions& options)
{
    return static_cast<int>(pagesOf(plan, assessment, sheets, options).size());
}

int paintPack(QPagedPaintDevice& device, const Plan& plan, const Assessment& assessment, const QStringList& sheets,
              const SheetOptions& options)
{
    const std::vector<SheetPage> pages = pagesOf(plan, assessment, sheets, options);
    if (pages.empty()) {
        return 0;
    }
    TitleBlock block = blockOf(plan, options, static_cast<int>(pages.size()));
    device.setPageLayout(layoutOf(pages.front().landscape));
    QPainter painter;
    if (!painter.begin(&device)) {
        return 0;
    }
    painter.setRenderHint(QPainter::Antialiasing);
    for (const SheetPage& page : pages) {
        if (block.page > 1) {
            device.setPageLayout(layoutOf(page.landscape));
            if (!device.newPage()) {
                return 0;
            }
        }
        paintPage(painter, device.logicalDpiX() / 25.4, device.logicalDpiY() / 25.4,
                  device.pageLayout().orientation() == QPageLayout::Landscape, page, block);
        ++block.page;
    }
    painter.end();
    return block.pages;
}

bool writePackPdf(const QString& path, const Plan& plan, const Assessment& assessment, const QStringList& sheets,
                  QString* error, const SheetOptions& options)
{
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly)) {
        setError(error, file.errorString());
        return false;
    }
    {
        QPdfWriter writer(&file);
        writer.setResolution(1200);
        writer.setTitle(QString::fromStdString(plan.title));
        writer.setCreator(QStringLiteral("Yardcast " YARDCAST_VERSION));
        if (paintPack(writer, plan, assessment, sheets, options) == 0) {
            setError(error, Sheets::tr("there is no sheet to print"));
            return false;
        }
    }
    if (!file.commit()) {
        setError(error, file.errorString());
        return false;
    }
    return true;
}

}  // namespace yardcast::ui
