#pragma once

#include <functional>
#include <string>

#include <QObject>
#include <QString>
#include <QThreadPool>

class QWidget;

namespace yardcast::ui {

class Commands;
class MessageBar;
struct Workbench;

/// A file for other programs.
enum class Export { planSvg, planDxf, kitchenStl, mouldSvg, mouldDxf, formersStl, cutsCsv };

/// Files for other programs, of the plan as it is committed, one after the other beside the window; the message bar
/// tells how each ended. A file is whole or as it was before. What is about moulds is of the casting that is chosen: the
/// one that card Mould shows, else the first of the parts chosen; without any, of all.
class ExportDesk : public QObject {
    Q_OBJECT

public:
    /// `shownMould`: the casting that the card Mould shows, or empty.
    ExportDesk(QWidget& window, const Commands& commands, Workbench& bench, MessageBar& messages,
               std::function<std::string()> shownMould);
    ~ExportDesk() override;

    /// Begins it; `written` comes when it is done.
    void write(Export what, const QString& file);
    /// The casting whose mould would be written; empty for all.
    std::string chosenCasting() const;

signals:
    void written(bool well);

private:
    void ask(Export what);
    /// Why there is nothing to write, or nothing.
    QString nothingToWrite(Export what) const;

    QWidget& window_;
    Workbench& bench_;
    MessageBar& messages_;
    std::function<std::string()> shownMould_;
    QThreadPool pool_;
};

}  // namespace yardcast::ui
