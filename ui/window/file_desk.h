#pragma once

#include <functional>

#include <QList>
#include <QObject>
#include <QString>
#include <QStringList>

#include "core/plan/finding.h"

class QWidget;

namespace yardcast::ui {

class Autosave;
class FileSession;
class MessageBar;
class PlanDocument;
class RecentFiles;
struct Backup;

struct SamplePlan {
    QString title;
    QString file;  ///< resource path
};
QList<SamplePlan> samplePlans();
/// Where a file is proposed that has no place yet: the person's documents, or their home where there is no such folder.
QString documentsFolder();

/// The file commands of a window: asks before unsaved work is given up (the one modal question), tells everything
/// else in the message bar.
class FileDesk : public QObject {
    Q_OBJECT

public:
    FileDesk(QWidget& window, PlanDocument& document, FileSession& session, Autosave& autosave, RecentFiles& recent,
             MessageBar& messages);

    /// Each first asks about unsaved work; false when the person stayed or it failed.
    bool newPlan();
    bool newFromSample(const QString& file);
    bool openByDialog();
    bool open(const QString& file);

    /// A logger's table becomes the plan's readings, as one edit; false where it cannot be read or nobody chose one.
    bool readTemperaturesByDialog();
    bool readTemperatures(const QString& file);

    /// False: not saved, the reason stands in the message bar.
    bool save();
    bool saveAsByDialog();
    bool saveAs(const QString& file);
    /// True when nothing would be lost, because it was saved, there is nothing, or the person gives it up.
    bool mayLeave();

    /// Offers backups of plans that were never saved. For a start without a file.
    void offerUntitledBackups();
    /// Text typed in a field that has the focus becomes part of the plan before it is saved or asked about.
    static void commitField();

signals:
    /// Another plan is on the sheet.
    void opened();

private:
    void tellProblems(const QString& file, const QString& reason, const std::vector<Finding>& problems, bool opened);
    void offerBackups(const QList<Backup>& backups);
    void restore(const Backup& backup);
    void tellOtherWindow();
    void tellChangedOnDisk(bool whileSaving);
    void readAgain();
    void dismissAll();
    bool tellSaved(bool saved, const QString& reason);
    QString folderForDialogs() const;

    QWidget& window_;
    PlanDocument& document_;
    FileSession& session_;
    Autosave& autosave_;
    RecentFiles& recent_;
    MessageBar& messages_;
};

}  // namespace yardcast::ui
