#pragma once

#include <memory>

#include <QDialog>

#include "ui/live/newest_work.h"
#include "ui/sheets/print_pack.h"

class QLabel;
class QPushButton;
class QScrollArea;

namespace yardcast::ui {

/// The sheets as they are printed, page by page. Each page is painted beside the window, as large as it is shown; until
/// it is there the last picture of it stands, or blank paper.
class PagePreview : public QDialog {
    Q_OBJECT

public:
    PagePreview(std::shared_ptr<const SheetPack> pack, QWidget* parent);
    ~PagePreview() override;

    int page() const { return page_; }
    void showPage(int page);
    /// Times as large as where the whole page is seen.
    double zoom() const { return zoom_; }
    void setZoom(double zoom);
    /// Whether the picture shown is that of the page, as large as it is shown.
    bool isPainted() const { return !isWaiting_; }

signals:
    void printAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;

private:
    class Paper;
    void layOut();
    void ask();

    std::shared_ptr<const SheetPack> pack_;
    int page_ = 0;
    double zoom_ = 1.0;
    bool isWaiting_ = true;
    int askedPx_ = 0;
    int askedPage_ = -1;
    Paper* paper_;
    QScrollArea* area_;
    QLabel* title_;
    QPushButton* before_;
    QPushButton* next_;
    NewestWork work_;
};

}  // namespace yardcast::ui
