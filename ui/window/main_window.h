#pragma once

#include <memory>

#include <QMainWindow>
#include <QString>
#include <QTimer>

class QMenu;

namespace yardcast::ui {

class Canvas;
class Commands;
class DrawDesk;
class Docks;
class EditDesk;
class ExportDesk;
class FileDesk;
class LiveCard;
class MeasureLine;
class MessageBar;
class PrintDesk;
class Theme;
class WindowMemory;
struct Workbench;
struct Cards;
enum class Stage;

/// The window puts the pieces together and does nothing by itself: commands, rows, canvas, cards, messages.
class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    MainWindow(Workbench& bench, Theme& theme, QWidget* parent = nullptr);
    ~MainWindow() override;

    /// What stands on the sheet at the start: the named plan; at the very first start a sample; otherwise an empty
    /// plan. Backups that a crash left are offered. False when the named plan could not be opened.
    bool start(const QString& file);
    /// The window as a picture will show it: this stage, this view, the whole drawing.
    void showStage(Stage stage);

    Canvas& canvas() const { return *canvas_; }
    Commands& commands() const { return *commands_; }
    FileDesk& files() const { return *files_; }
    MessageBar& messages() const { return *messages_; }
    PrintDesk& prints() const { return *print_; }
    ExportDesk& exports() const { return *export_; }
    MeasureLine& measureLine() const { return *measureLine_; }

protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    QMenu* createPopupMenu() override;

private:
    void buildCards();
    void connectStages();
    void openStageCard(LiveCard* card);
    void connectFiles();
    void connectHelp();
    void connectLook();
    void fillRecent();
    void fillSamples();
    void showTitle();
    void showHint();

    Workbench& bench_;
    Theme& theme_;
    Commands* commands_;
    MessageBar* messages_;
    Canvas* canvas_;
    FileDesk* files_;
    PrintDesk* print_;
    ExportDesk* export_;
    EditDesk* edit_;
    DrawDesk* draw_;
    Docks* docks_;
    MeasureLine* measureLine_;
    QMenu* samples_;
    QMenu* recent_;
    QMenu* context_;
    QTimer freshPlan_;
    LiveCard* stageCard_ = nullptr;
    std::unique_ptr<Cards> cards_;
    std::unique_ptr<WindowMemory> memory_;
};

}  // namespace yardcast::ui
