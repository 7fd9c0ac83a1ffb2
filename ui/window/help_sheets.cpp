#include "ui/window/help_sheets.h"

#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QFile>
#include <QKeySequence>
#include <QScreen>
#include <QTabWidget>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "ui/look/theme.h"
#include "ui/window/commands.h"
#include "ui/wording/figure_notes.h"

namespace yardcast::ui {

namespace {

class HelpSheets {
    Q_DECLARE_TR_FUNCTIONS(yardcast::ui::HelpSheets)
};

QTextBrowser* textView(const QString& html)
{
    auto* view = new QTextBrowser;
    view->setOpenExternalLinks(false);
    view->setOpenLinks(false);
    view->document()->setDocumentMargin(4 * kStepPx);
    view->setHtml(html);
    return view;
}

/// The dialog with this name, made at the first call; null when it was there already and came forward.
QDialog* sheet(QWidget& window, const char* name, const QString& title, QSize size)
{
    if (auto* there = window.findChild<QDialog*>(name, Qt::FindDirectChildrenOnly)) {
        there->show();
        there->raise();
        there->activateWindow();
        return nullptr;
    }
    auto* dialog = new QDialog(&window);
    dialog->setObjectName(name);
    dialog->setWindowTitle(title);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setModal(false);
    new QVBoxLayout(dialog);
    const QSize room = window.screen()->availableGeometry().size() * 0.9;
    dialog->resize(size.boundedTo(room));
    return dialog;
}

void finish(QDialog& dialog, QWidget* content)
{
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::close);
    dialog.layout()->addWidget(content);
    dialog.layout()->addWidget(buttons);
    dialog.show();
}

QString heading(const QString& text) { return "<h3>" + text.toHtmlEscaped() + "</h3>"; }

QString list(const QStringList& lines)
{
    QString html = "<ul>";
    for (const QString& line : lines) html += "<li>" + line.toHtmlEscaped() + "</li>";
    return html + "</ul>";
}

QString keyRow(const QString& keys, const QString& what, const QString& says = {})
{
    QString row = "<tr><td style='padding:2px 18px 2px 0; white-space:nowrap'><b>" + keys.toHtmlEscaped() +
                  "</b></td><td style='padding:2px 0'>" + what.toHtmlEscaped();
    if (!says.isEmpty()) row += " – " + says.toHtmlEscaped();
    return row + "</td></tr>";
}

QString keysHtml()
{
    QString html = heading(HelpSheets::tr("Hands on the sheet")) + "<table>";
    html += keyRow(HelpSheets::tr("Wheel, pinch"), HelpSheets::tr("zooms at the pointer"));
    html += keyRow(HelpSheets::tr("Two fingers, middle button, Space"), HelpSheets::tr("moves the sheet"));
    html += keyRow(HelpSheets::tr("Arrows"), HelpSheets::tr("move what is chosen by 10 mm, with Shift by 1 mm"));
    html += keyRow(HelpSheets::tr("Digits"),
                   HelpSheets::tr("while drawing or dragging: type the size – 1850, 1850 620, 185 cm, 1.85 m"));
    html += keyRow(HelpSheets::tr("Alt"), HelpSheets::tr("suspends snapping while it is held"));
    html += keyRow(HelpSheets::tr("Shift and click"), HelpSheets::tr("adds to what is chosen or takes away from it"));
    html += keyRow(HelpSheets::tr("Click again"), HelpSheets::tr("goes to what lies under"));
    html += keyRow(HelpSheets::tr("Escape"), HelpSheets::tr("undoes the gesture, then puts the tool away"));
    html += "</table>";
    Menu menu = Menu::file;
    bool first = true;
    for (const CommandSpec& spec : commandTable()) {
        if (first || spec.menu != menu) {
            if (!first) html += "</table>";
            menu = spec.menu;
            html += heading(menuTitle(menu).remove('&')) + "<table>";
            first = false;
        }
        QStringList keys;
        for (const QKeySequence& key : keysOf(spec)) keys.append(key.toString(QKeySequence::NativeText));
        html += keyRow(keys.join(HelpSheets::tr(" or ")), textOf(spec).remove('&').remove("..."),
                       *spec.says ? QCoreApplication::translate("yardcast::ui::Commands", spec.says) : QString());
    }
    return html + "</table>";
}

QString cautionsHtml()
{
    QString html = heading(HelpSheets::tr("What can hurt"));
    html += list({
        HelpSheets::tr("Wet cement burns skin and eyes. Wear waterproof gloves and eye protection; wash at once with "
                       "plenty of water; see a doctor if it gets into an eye."),
        HelpSheets::tr("Dust of dry mix, silica fume, and of grinding or drilling concrete damages the lungs for good. "
                       "Work wet or with extraction, and wear a well-fitting P3 (FFP3) mask."),
        HelpSheets::tr("The pieces are heavier than they look. Plan every lift, clear the way, keep hands and feet "
                       "from under the piece, and do not lift more than the least strong of the crew can bear."),
        HelpSheets::tr("A fresh slab can break while it is turned. Nobody stands below or in front of it."),
        HelpSheets::tr("Gas, mains power and drinking water belong to licensed trades. Leave the ways for them open."),
        HelpSheets::tr("Keep the distances that the maker of a grill, oven or burner prints, and give gas bottles "
                       "openings low and high."),
    });
    html += heading(HelpSheets::tr("What this program does not know"));
    html += list({
        HelpSheets::tr("Your ground, your local rules, your permits. Near a retaining wall, a roof or an edge ask an "
                       "engineer."),
        HelpSheets::tr("Your bag. Mixes in a new plan are invented examples: write in what your bag says, and weigh "
                       "one trial batch before the pour."),
        HelpSheets::tr("Your prices. The example price book is invented; the total is only as good as what you put "
                       "in."),
        HelpSheets::tr("Your strength. The limit for each person is yours to set; the reduction for teams is published "
                       "guidance, not a promise."),
        HelpSheets::tr("Your concrete. Strength is that of the class of the mix at its age; nobody has broken a cube. "
                       "Sun, frost, shrinkage and a knock at the corner come on top, and a piece that holds on the "
                       "screen can still crack."),
    });
    html += "<p>" +
            HelpSheets::tr("Figures marked as estimates, judgement or common practice are no more than that. Every "
                           "figure answers a click with its formula, its source and what was assumed.")
                .toHtmlEscaped() +
            "</p>";
    return html;
}

QString aboutHtml()
{
    QString html = "<h2>Yardcast " + QCoreApplication::applicationVersion().toHtmlEscaped() + "</h2><p>" +
                   HelpSheets::tr("Draw an outdoor kitchen of concrete once; everything else the job needs is computed "
                                  "from the drawing.")
                       .toHtmlEscaped() +
                   "</p><p>" +
                   HelpSheets::tr("Works offline: no account, nothing is sent anywhere. Backups of unsaved work lie "
                                  "beside the plan file.")
                       .toHtmlEscaped() +
                   "</p>";
    html += heading(HelpSheets::tr("Built with"));
    html += list({
        HelpSheets::tr("Qt 6 (LGPL 3): window, drawing, printing"),
        HelpSheets::tr("JSON for Modern C++ (MIT): plan files"),
        HelpSheets::tr("Clipper (Boost Software License): shapes united, cut and offset"),
        HelpSheets::tr("CLI11 (BSD): the command line"),
    });
    return html;
}

QString sourcesHtml()
{
    QString html = "<p>" +
                   HelpSheets::tr("Where each figure comes from. \"Common practice, no source\" and \"from memory\" "
                                  "mean exactly that.")
                       .toHtmlEscaped() +
                   "</p>";
    for (const std::string& code : figureCodes()) {
        const FigureNote note = figureNote(code);
        html += "<p><b>" + note.title.toHtmlEscaped() + "</b><br>" + note.formula.toHtmlEscaped() + "<br><i>" +
                note.source.toHtmlEscaped() + "</i>";
        if (!note.assumption.isEmpty()) html += "<br>" + note.assumption.toHtmlEscaped();
        html += "</p>";
    }
    return html;
}

QString licenceHtml()
{
    QFile file(":/COPYING");
    const QString text = file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
    return "<p>" +
           HelpSheets::tr("Yardcast is free software under the GNU General Public License, version 3 or later. It "
                          "comes without any warranty. The plans, lists and drawings you make with it are yours.")
               .toHtmlEscaped() +
           "</p><pre>" + text.toHtmlEscaped() + "</pre>";
}

}  // namespace

void showKeysSheet(QWidget& window)
{
    QDialog* dialog = sheet(window, "keys-sheet", HelpSheets::tr("Keys"), {640, 620});
    if (dialog) finish(*dialog, textView(keysHtml()));
}

void showCautionsSheet(QWidget& window)
{
    QDialog* dialog = sheet(window, "cautions-sheet", HelpSheets::tr("Cautions"), {620, 560});
    if (dialog) finish(*dialog, textView(cautionsHtml()));
}

void showAboutSheet(QWidget& window)
{
    QDialog* dialog = sheet(window, "about-sheet", HelpSheets::tr("About Yardcast"), {620, 560});
    if (!dialog) return;
    auto* tabs = new QTabWidget;
    tabs->addTab(textView(aboutHtml()), HelpSheets::tr("Yardcast"));
    tabs->addTab(textView(sourcesHtml()), HelpSheets::tr("Sources"));
    tabs->addTab(textView(licenceHtml()), HelpSheets::tr("Licence"));
    finish(*dialog, tabs);
}

}  // namespace yardcast::ui
