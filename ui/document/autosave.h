#pragma once

#include <memory>

#include <QDateTime>
#include <QObject>
#include <QString>
#include <QThreadPool>
#include <QTimer>

#include "core/plan/plan.h"
#include "ui/document/backups.h"

class QLockFile;

namespace yardcast::ui {

class FileSession;
class PlanDocument;

/// Keeps a backup of unsaved work: written on a thread of its own, at the latest `kDelayMs` after a change (and never
/// more often), beside the file or, where that cannot be written, in `backupFolder()`. A backup left by an earlier
/// crash is never written over: this one then takes the next free name. See FileSession for what a crash leaves.
class Autosave : public QObject {
    Q_OBJECT

public:
    static constexpr int kDelayMs = 2000;

    Autosave(PlanDocument& document, FileSession& session, QObject* parent = nullptr);
    /// Waits for a write in progress. What was not given up or saved stays on disk.
    ~Autosave() override;

    /// The backup this window wrote and still holds, or empty.
    const QString& backup() const { return backup_; }
    /// A backup that was restored into the plan: removed, like this window's own, once the plan is saved or given up.
    void adopt(const Backup& restored);
    /// For tests: writes what is due now and waits for it.
    void flush();

signals:
    void written(const QString& backup);
    /// Neither place could be written; told once until a write succeeds again.
    void failed(const QString& reason);

private:
    void changed();
    void start();
    void finished(const QString& backup, const QString& reason);
    void removeOwn();
    QString nextSibling() const;

    PlanDocument& document_;
    FileSession& session_;
    QTimer due_;
    QThreadPool pool_;
    QString owner_;
    QDateTime startedAt_;
    QString backup_;
    std::unique_ptr<QLockFile> backupLock_;
    QStringList adopted_;
    bool writing_ = false;
    bool again_ = false;
    bool toldFailure_ = false;
};

}  // namespace yardcast::ui
