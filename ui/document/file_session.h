#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QByteArray>
#include <QDateTime>
#include <QObject>
#include <QString>
#include <QTimer>

#include "core/io/plan_file.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

class QFileSystemWatcher;
class QLockFile;

namespace yardcast::ui {

class PlanDocument;

/// What opening gave. Not opened: the current plan is as it was, and either the system said why (`reason`) or the
/// text could not be understood (`problems`, all at once, each with pointer). Opened: `problems` may still hold
/// cautions about the file.
struct OpenOutcome {
    bool opened = false;
    QString reason;
    std::vector<Finding> problems;
};

enum class SaveResult { saved, changedOnDisk, failed };

/// `failed`: nothing was written, the old file is whole, and `reason` says why. `changedOnDisk`: somebody else wrote
/// the file since it was read; nothing was written.
struct SaveOutcome {
    SaveResult result = SaveResult::failed;
    QString reason;
    bool isSaved() const { return result == SaveResult::saved; }
};

/// Who else has the file open.
struct OtherWindow {
    qint64 process = 0;
    QString computer;
};

/// The file behind the plan of a window. Knows no widget: it never asks, it tells; the window asks.
///
/// What a crash (kill -9, power cut) in each step leaves behind. F is the plan file, B its backup ".F.autosave",
/// T the new file being written beside its target:
///
/// | step                                     | left behind                   | what the next start makes of it      |
/// | ---------------------------------------- | ----------------------------- | ------------------------------------ |
/// | open: lock of F taken                    | F whole, stale lock           | stale lock is taken over             |
/// | change made, backup not yet due          | F whole                       | at most `Autosave::kDelayMs` and the |
/// |                                          |                               | time to write one file are lost      |
/// | backup: T of B half written              | F and old B whole, stray T    | old B is offered; T is left alone    |
/// | backup: T renamed to B                   | F whole, B whole              | B is offered (newer, other content)  |
/// | save: T of F half written                | F and B whole, stray T        | B is offered; T is left alone        |
/// | save: T flushed, not yet renamed         | F and B whole, whole stray T  | B is offered: same work as T         |
/// | save: T renamed to F, folder not flushed | old F or new F, B whole       | B is offered unless F holds the same |
/// | save: done, B not yet removed            | new F, B with the same work   | nothing to offer: B is older or same |
/// | close: B removed, lock still there       | F whole, stale lock           | stale lock is taken over             |
/// | restore: B read, applied, not yet saved  | F whole, B whole              | B is offered again                   |
///
/// A backup is removed only after what it held was saved or was given up in an answer of the person.
class FileSession : public QObject {
    Q_OBJECT

public:
    explicit FileSession(PlanDocument& document, QObject* parent = nullptr);
    ~FileSession() override;

    /// Absolute; empty while the plan was never saved.
    const QString& path() const { return path_; }
    bool isUntitled() const { return path_.isEmpty(); }
    /// File name without extension, or empty.
    QString name() const;
    /// By the undo list: going back to the saved state is no change.
    bool hasUnsavedChanges() const;

    /// A plan without a file; the unsaved changes of the current one are given up (the caller has asked).
    void startUntitled(Plan plan);
    OpenOutcome open(const QString& file);
    SaveOutcome save(bool overwriteOthers = false);
    /// ".yardplan" is added where the name has no extension. The session goes on with the new file.
    SaveOutcome saveAs(const QString& file);
    /// The file as it is on disk now, as one step of the undo list; nothing is lost.
    OpenOutcome readAgain(const QString& nameOfStep);

    /// Somebody else wrote the file since it was read or saved here.
    bool changedOnDisk() const { return changedOnDisk_; }
    /// Looks at the disk now; `changedOnDisk()` tells.
    void lookAtDisk();

    /// Another window has the file open (found when it was opened here).
    const std::optional<OtherWindow>& otherWindow() const { return otherWindow_; }
    /// This window holds the lock of the file, so what lies beside it is its own.
    bool ownsLock() const { return lock_ != nullptr; }

    /// Gives up the file and its lock; call when the window closes and the person has answered.
    void close();

signals:
    /// The plan of the window is about to be another one, or the window closes; what was unsaved is given up.
    void leaving();
    /// Another path, or another plan without one.
    void pathChanged();
    void modifiedChanged(bool modified);
    /// The plan is safely on disk.
    void saved();
    void changedOnDiskChanged();

private:
    void follow(const QString& file);
    void takeLock();
    void rememberDisk(const QByteArray& text);
    SaveOutcome write(const QString& file);

    PlanDocument& document_;
    QString path_;
    std::unique_ptr<QLockFile> lock_;
    std::optional<OtherWindow> otherWindow_;
    QFileSystemWatcher* watcher_;
    QTimer lookSoon_;
    QByteArray textMark_;   ///< hash of what was last read or written here
    QDateTime writtenAt_;
    qint64 sizeBytes_ = -1;
    bool changedOnDisk_ = false;
};

/// A path for core, whatever letters it holds.
std::filesystem::path corePath(const QString& file);

}  // namespace yardcast::ui
