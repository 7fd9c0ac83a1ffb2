#include "ui/window/file_desk.h"

#include <filesystem>
#include <utility>

#include <QApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QLocale>
#include <QMessageBox>
#include <QPushButton>
#include <QRegularExpression>
#include <QStandardPaths>

#include "core/io/plan_file.h"
#include "core/io/temperature_log.h"
#include "ui/document/autosave.h"
#include "ui/document/backups.h"
#include "ui/document/file_session.h"
#include "ui/document/plan_document.h"
#include "ui/document/recent_files.h"
#include "ui/window/message_bar.h"
#include "ui/window/new_plan.h"
#include "ui/wording/finding_words.h"

namespace yardcast::ui {

namespace {

constexpr auto kProblems = "problems";
constexpr auto kSaving = "saving";
constexpr auto kBackup = "backup";
constexpr auto kDisk = "disk";
constexpr auto kOther = "other-window";
constexpr auto kAutosave = "autosave";
constexpr auto kTemperatures = "temperatures";

QString planFilter() { return FileDesk::tr("Plans (*.yardplan);;All files (*)"); }

QString shortPath(const QString& file) { return QFileInfo(file).fileName(); }

/// "14:32" today, otherwise with the day.
QString whenText(const QDateTime& time)
{
    const QLocale locale;
    const QString clock = locale.toString(time.time(), "HH:mm");
    if (time.date() == QDate::currentDate()) return clock;
    return FileDesk::tr("%1, %2").arg(locale.toString(time.date(), QLocale::ShortFormat), clock);
}

QStringList problemLines(const std::vector<Finding>& problems)
{
    QStringList lines;
    for (const Finding& problem : problems) {
        QString line = findingText(problem);
        if (const QString help = findingHelp(problem); !help.isEmpty()) line += " " + help;
        if (!problem.pointer.empty()) {
            line = FileDesk::tr("%1: %2").arg(QString::fromStdString(problem.pointer), line);
        }
        lines.append(line);
    }
    return lines;
}

}  // namespace

QString documentsFolder()
{
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    return QFileInfo(folder).isDir() ? folder : QDir::homePath();
}

QList<SamplePlan> samplePlans()
{
    return {{FileDesk::tr("Grill bench (small)"), ":/samples/grill-bench.yardplan"},
            {FileDesk::tr("Corner kitchen on the slope"), ":/samples/corner-kitchen.yardplan"},
            {FileDesk::tr("Two-level garden bar (large)"), ":/samples/two-level-bar.yardplan"}};
}

FileDesk::FileDesk(QWidget& window, PlanDocument& document, FileSession& session, Autosave& autosave,
                   RecentFiles& recent, MessageBar& messages)
    : QObject(&window), window_(window), document_(document), session_(session), autosave_(autosave), recent_(recent),
      messages_(messages)
{
    connect(&session, &FileSession::changedOnDiskChanged, this, [this] {
        if (session_.changedOnDisk()) {
            tellChangedOnDisk(false);
        } else {
            messages_.dismiss(kDisk);
        }
    });
    connect(&autosave, &Autosave::failed, this, [this](const QString& reason) {
        messages_.show({kAutosave, Message::Weight::caution,
                        tr("No backup of the unsaved work could be written: %1").arg(reason),
                        {}, {{tr("Save now"), [this] { save(); }}}, {}});
    });
    connect(&autosave, &Autosave::written, this, [this] { messages_.dismiss(kAutosave); });
}

bool FileDesk::newPlan()
{
    if (!mayLeave()) return false;
    dismissAll();
    session_.startUntitled(emptyPlan());
    emit opened();
    return true;
}

bool FileDesk::newFromSample(const QString& file)
{
    if (!mayLeave()) return false;
    QFile sample(file);
    if (!sample.open(QIODevice::ReadOnly)) return false;
    PlanReading reading = readPlan(sample.readAll().toStdString());
    if (!reading.plan) {
        tellProblems(file, {}, reading.problems, false);
        return false;
    }
    dismissAll();
    session_.startUntitled(std::move(*reading.plan));
    emit opened();
    return true;
}

bool FileDesk::openByDialog()
{
    const QString file = QFileDialog::getOpenFileName(&window_, tr("Open a plan"), folderForDialogs(), planFilter());
    return !file.isEmpty() && open(file);
}

bool FileDesk::open(const QString& file)
{
    if (!mayLeave()) return false;
    const OpenOutcome outcome = session_.open(file);
    if (!outcome.opened) {
        if (!QFileInfo::exists(file)) recent_.remove(file);
        tellProblems(file, outcome.reason, outcome.problems, false);
        return false;
    }
    dismissAll();
    recent_.add(session_.path());
    if (!outcome.problems.empty()) tellProblems(file, {}, outcome.problems, true);
    tellOtherWindow();
    offerBackups(backupsOf(session_.path(), session_.ownsLock()));
    emit opened();
    return true;
}

bool FileDesk::readTemperaturesByDialog()
{
    const QString file = QFileDialog::getOpenFileName(&window_, tr("Read temperatures"), folderForDialogs(),
                                                      tr("Tables (*.csv *.txt *.tsv);;All files (*)"));
    return !file.isEmpty() && readTemperatures(file);
}

bool FileDesk::readTemperatures(const QString& file)
{
    commitField();
    const FileText text = readFile(std::filesystem::path(file.toStdString()));
    const TemperatureLog log = text.text ? readTemperatureLog(*text.text) : TemperatureLog{};
    if (!text.text || !log.problems.empty()) {
        const QString reason = text.text ? QString() : QString::fromStdString(text.error);
        const QString what = tr("%1 was not read as a table of temperatures.").arg(shortPath(file));
        messages_.show({kTemperatures, Message::Weight::caution,
                        reason.isEmpty() ? what : tr("%1 %2").arg(what, reason), problemLines(log.problems), {}, {}});
        return false;
    }
    document_.apply(tr("Read temperatures"), [&](const Plan& plan) {
        Plan changed = plan;
        changed.conditions.measured = log.rows;
        return changed;
    });
    const int rows = static_cast<int>(log.rows.size());
    messages_.show({kTemperatures, Message::Weight::note,
                    rows == 1 ? tr("1 reading of %1 is part of the plan now.").arg(shortPath(file))
                              : tr("%1 readings of %2 are part of the plan now.").arg(rows).arg(shortPath(file)),
                    log.fromClock ? QStringList{tr("Its hours are counted from the first row: that must be the pour.")}
                                  : QStringList{},
                    {}, {}});
    return true;
}

bool FileDesk::save()
{
    commitField();
    if (session_.isUntitled()) return saveAsByDialog();
    const SaveOutcome outcome = session_.save();
    if (outcome.result == SaveResult::changedOnDisk) {
        tellChangedOnDisk(true);
        return false;
    }
    return tellSaved(outcome.isSaved(), outcome.reason);
}

bool FileDesk::saveAsByDialog()
{
    commitField();
    QString proposed = session_.path();
    if (proposed.isEmpty()) {
        QString name = QString::fromStdString(document_.committed()->title).simplified();
        name.remove(QRegularExpression("[/\\\\:*?\"<>|]"));
        if (name.isEmpty()) name = tr("kitchen");
        proposed = QDir(folderForDialogs()).filePath(name + ".yardplan");
    }
    QFileDialog dialog(&window_, tr("Save the plan as"), proposed, planFilter());
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix("yardplan");
    dialog.selectFile(proposed);
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return false;
    return saveAs(dialog.selectedFiles().first());
}

bool FileDesk::saveAs(const QString& file)
{
    const SaveOutcome outcome = session_.saveAs(file);
    if (outcome.isSaved()) tellOtherWindow();
    return tellSaved(outcome.isSaved(), outcome.reason);
}

bool FileDesk::mayLeave()
{
    commitField();
    if (!session_.hasUnsavedChanges()) return true;
    QMessageBox box(QMessageBox::NoIcon, tr("Unsaved changes"),
                    session_.isUntitled() ? tr("This plan was not saved yet.")
                                          : tr("The changes to %1 are not saved.").arg(shortPath(session_.path())),
                    QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, &window_);
    box.setInformativeText(tr("What is not saved will be lost."));
    box.button(QMessageBox::Discard)->setText(tr("Don't save"));
    box.setDefaultButton(QMessageBox::Save);
    switch (box.exec()) {
    case QMessageBox::Save: return save();
    case QMessageBox::Discard: return true;
    default: return false;
    }
}

void FileDesk::offerUntitledBackups() { offerBackups(untitledBackups()); }

void FileDesk::commitField()
{
    QWidget* field = QApplication::focusWidget();
    if (!field) return;
    field->clearFocus();
    field->setFocus();
}

void FileDesk::tellProblems(const QString& file, const QString& reason, const std::vector<Finding>& problems,
                            bool opened)
{
    Message message{kProblems, Message::Weight::stop, {}, problemLines(problems), {}, {}};
    if (opened) {
        message.weight = Message::Weight::caution;
        message.text = tr("%1 was opened, but:").arg(shortPath(file));
    } else if (!reason.isEmpty()) {
        message.text = tr("%1 could not be read: %2").arg(QDir::toNativeSeparators(file), reason);
    } else {
        message.text = tr("%1 could not be opened; the plan on the sheet is as it was. "
                          "These places need mending (%n):", nullptr, int(problems.size()))
                           .arg(shortPath(file));
    }
    messages_.show(message);
}

void FileDesk::offerBackups(const QList<Backup>& backups)
{
    if (backups.isEmpty()) return;
    const Backup newest = backups.first();
    const QString when = whenText(newest.writtenAt);
    QString text = newest.of.isEmpty()
                       ? tr("The program ended without saving. A plan that was never saved is still there, from %1.")
                       : tr("The program ended without saving. Newer work on this plan is still there, from %1.");
    text = text.arg(when);
    if (backups.size() > 1) {
        text += " " + tr("(%n older backups lie in the same place.)", nullptr, int(backups.size()) - 1);
    }
    messages_.show({kBackup, Message::Weight::caution, text, {},
                    {{tr("Restore the work of %1").arg(when), [this, newest] { restore(newest); }},
                     {tr("Leave it"), {}},
                     {tr("Delete it"), [file = newest.file] { deleteBackup(file); }}},
                    {}});
}

void FileDesk::restore(const Backup& backup)
{
    const FileText text = readFile(corePath(backup.file));
    PlanReading reading = text.text ? readPlan(*text.text) : PlanReading{};
    if (!reading.plan) {
        tellProblems(backup.file, QString::fromStdString(text.error), reading.problems, false);
        return;
    }
    // As an edit: the way back to what was on the sheet stays open.
    document_.apply(tr("Restore the work of %1").arg(whenText(backup.writtenAt)),
                    [&](const Plan&) { return *reading.plan; });
    autosave_.adopt(backup);
    emit opened();
}

void FileDesk::tellOtherWindow()
{
    if (!session_.otherWindow()) {
        messages_.dismiss(kOther);
        return;
    }
    const OtherWindow& other = *session_.otherWindow();
    messages_.show({kOther, Message::Weight::caution,
                    tr("%1 is open in another window too (computer %2, process %3). Who saves last overwrites the "
                       "other's changes.")
                        .arg(shortPath(session_.path()), other.computer)
                        .arg(other.process),
                    {},
                    {{tr("Save under another name..."), [this] { saveAsByDialog(); }}},
                    {}});
}

void FileDesk::tellChangedOnDisk(bool whileSaving)
{
    const QString name = shortPath(session_.path());
    Message message{kDisk, Message::Weight::caution, {}, {}, {}, {}};
    if (whileSaving) {
        message.text = tr("Not saved: %1 was changed by another program since it was opened.").arg(name);
        message.answers.push_back({tr("Overwrite it"), [this] {
                                       const SaveOutcome outcome = session_.save(true);
                                       tellSaved(outcome.isSaved(), outcome.reason);
                                   }});
        message.answers.push_back({tr("Save under another name..."), [this] { saveAsByDialog(); }});
    } else {
        message.text = tr("%1 was changed by another program.").arg(name);
        message.answers.push_back({tr("Keep mine"), {}});
    }
    message.answers.push_back({tr("Read it again"), [this] { readAgain(); }});
    messages_.show(message);
}

void FileDesk::readAgain()
{
    const OpenOutcome outcome = session_.readAgain(tr("Read again from disk"));
    if (!outcome.opened || !outcome.problems.empty()) {
        tellProblems(session_.path(), outcome.reason, outcome.problems, outcome.opened);
    }
}

void FileDesk::dismissAll()
{
    for (const char* id : {kProblems, kSaving, kBackup, kDisk, kOther, kAutosave, kTemperatures}) messages_.dismiss(id);
}

bool FileDesk::tellSaved(bool saved, const QString& reason)
{
    if (saved) {
        messages_.dismiss(kSaving);
        messages_.dismiss(kDisk);
        recent_.add(session_.path());
        return true;
    }
    messages_.show({kSaving, Message::Weight::stop,
                    tr("The plan was not saved: %1 The file on disk is as it was.").arg(reason),
                    {}, {{tr("Save under another name..."), [this] { saveAsByDialog(); }}}, {}});
    return false;
}

QString FileDesk::folderForDialogs() const
{
    if (!session_.isUntitled()) return QFileInfo(session_.path()).absolutePath();
    const QStringList files = recent_.files();
    if (!files.isEmpty()) return QFileInfo(files.first()).absolutePath();
    return documentsFolder();
}

}  // namespace yardcast::ui
