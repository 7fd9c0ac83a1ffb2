#pragma once

#include <QObject>
#include <QStringList>

class QSettings;

namespace yardcast::ui {

/// The plan files opened or saved last, newest first, kept in the settings under "recent_files".
class RecentFiles : public QObject {
    Q_OBJECT

public:
    static constexpr int kMost = 10;

    explicit RecentFiles(QSettings& settings, QObject* parent = nullptr);

    /// Absolute paths that exist now. One that is missing (a drive that is not plugged in) is kept in the settings.
    QStringList files() const;
    void add(const QString& file);
    void remove(const QString& file);
    void clear();

signals:
    void changed();

private:
    QStringList stored() const;
    void store(const QStringList& files);

    QSettings& settings_;
};

}  // namespace yardcast::ui
