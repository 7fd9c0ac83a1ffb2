#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QFontMetricsF>
#include <QImage>
#include <QLineEdit>
#include <QPainter>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

#include "ui/look/icons.h"
#include "ui/look/severity_mark.h"
#include "ui/look/theme.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

/// The darkest or strongest colour of a picture: that of the pixel with the most cover.
QColor strongest(const QImage& image)
{
    QColor found(Qt::transparent);
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QColor here = image.pixelColor(x, y);
            if (here.alpha() > found.alpha()) found = here;
        }
    }
    return found;
}

}  // namespace

class ThemeTest : public QObject {
    Q_OBJECT

private slots:
    /// WCAG 2.1: 1.4.3 asks 4.5:1 of text, 1.4.11 3:1 of the outline of a control.
    void contrast_data()
    {
        QTest::addColumn<bool>("dark");
        QTest::newRow("light") << false;
        QTest::newRow("dark") << true;
    }
    void contrast()
    {
        QFETCH(bool, dark);
        const Ink ink = dark ? darkInk() : lightInk();
        for (const QColor& surface : {ink.sheet, ink.bench, ink.card}) {
            for (const QColor& text : {ink.ink, ink.pencil, ink.caution, ink.stop, ink.chosen}) {
                QVERIFY2(contrastRatio(text, surface) >= 4.5,
                         qPrintable(QStringLiteral("%1 on %2: %3")
                                        .arg(text.name(), surface.name())
                                        .arg(contrastRatio(text, surface))));
            }
        }
        for (const QColor& surface : {ink.sheet, ink.card}) {
            QVERIFY(contrastRatio(outlineOf(ink), surface) >= 3.0);
        }
        const QPalette palette = paletteOf(ink);
        QVERIFY(contrastRatio(palette.color(QPalette::HighlightedText), palette.color(QPalette::Highlight)) >= 4.5);
        QVERIFY(contrastRatio(palette.color(QPalette::ToolTipText), palette.color(QPalette::ToolTipBase)) >= 4.5);
        QVERIFY(contrastRatio(palette.color(QPalette::PlaceholderText), palette.color(QPalette::Base)) >= 4.5);
    }

    void paletteTellsItsInk()
    {
        QVERIFY(!inkOf(paletteOf(lightInk())).dark);
        QVERIFY(inkOf(paletteOf(darkInk())).dark);
    }

    void appearanceCanBeChanged()
    {
        Theme* theme = qApp->findChild<Theme*>();
        theme->setAppearance(Appearance::dark);
        QVERIFY(isDark(QApplication::palette()));
        QVERIFY(theme->ink().dark);
        theme->setAppearance(Appearance::light);
        QVERIFY(!isDark(QApplication::palette()));
        theme->setAppearance(Appearance::dark);
        theme->setAppearance(Appearance::asSystem);  // no desktop here: the default is light
        QVERIFY(!isDark(QApplication::palette()));
    }

    void targetsAreLargeEnough()
    {
        QPushButton push(QStringLiteral("Add"));
        QToolButton tool;
        QLineEdit line;
        QComboBox combo;
        for (const QWidget* widget : {static_cast<QWidget*>(&push), static_cast<QWidget*>(&tool),
                                      static_cast<QWidget*>(&line), static_cast<QWidget*>(&combo)}) {
            QVERIFY2(widget->sizeHint().height() >= kTargetPx, widget->metaObject()->className());
        }
        QVERIFY(tool.sizeHint().width() >= kTargetPx);
    }

    void figuresAreTabularAndBig()
    {
        const QFont text = QApplication::font();
        const QFont big = bigFigureFont(text);
        QCOMPARE(big.pointSizeF(), text.pointSizeF() * 1.6);
        const QFontMetricsF metrics(big);
        QCOMPARE(metrics.horizontalAdvance(QStringLiteral("1111")), metrics.horizontalAdvance(QStringLiteral("8808")));
        const QFontMetricsF small(figureFont(text));
        QCOMPARE(small.horizontalAdvance(QStringLiteral("1111")), small.horizontalAdvance(QStringLiteral("8808")));
    }

    void everyIconTakesTheInk()
    {
        const QDir folder(QStringLiteral(YARDCAST_SOURCE_DIR "/resources/icons"));
        const QStringList files = folder.entryList({QStringLiteral("*.svg")});
        QVERIFY(files.size() > 30);
        const QString own = QStringLiteral("yardcast.svg");  // the program's own picture keeps its colours
        for (const QString& file : files) {
            const QString name = file.chopped(4);
            QVERIFY2(hasIcon(name), qPrintable(file));
            if (file == own) continue;
            for (const Ink& ink : {lightInk(), darkInk()}) {
                const QImage image = icon(name, ink).pixmap(QSize(48, 48)).toImage();
                QCOMPARE(image.size(), QSize(48, 48));
                const QColor drawn = strongest(image);
                QVERIFY2(drawn.alpha() > 200, qPrintable(file));
                QVERIFY2(contrastRatio(QColor(drawn.rgb()), ink.card) > 4.5, qPrintable(file));
            }
        }
    }

    void iconsAreSharpAtEveryPixelRatio()
    {
        const QPixmap doubled = icon(QStringLiteral("counter"), lightInk()).pixmap(QSize(24, 24), 2.0);
        QCOMPARE(doubled.size(), QSize(48, 48));
        QCOMPARE(doubled.devicePixelRatio(), 2.0);
        const QImage normal = icon(QStringLiteral("counter"), lightInk()).pixmap(24, 24).toImage();
        const QImage disabled = icon(QStringLiteral("counter"), lightInk()).pixmap(24, 24, QIcon::Disabled).toImage();
        QVERIFY(normal != disabled);
    }

    void noSuchIconIsNull() { QVERIFY(icon(QStringLiteral("no-such-icon"), lightInk()).isNull()); }

    void severitiesDifferByShape()
    {
        const Ink ink = paperInk();  // all of one colour there
        QList<QImage> pictures;
        for (const Severity severity : {Severity::note, Severity::caution, Severity::stop}) {
            QImage image(24, 24, QImage::Format_ARGB32_Premultiplied);
            image.fill(Qt::white);
            QPainter painter(&image);
            paintSeverityMark(painter, QRectF(0, 0, 24, 24), severity, ink);
            painter.end();
            pictures.append(image);
        }
        QVERIFY(pictures[0] != pictures[1]);
        QVERIFY(pictures[1] != pictures[2]);
        QVERIFY(pictures[0] != pictures[2]);
    }
};

int main(int argc, char** argv)
{
    QApplication application(argc, argv);
    Theme theme(application);
    ThemeTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "theme_test.moc"
