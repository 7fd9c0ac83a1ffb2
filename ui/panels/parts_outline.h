#pragma once

#include <QWidget>

class QLabel;
class QTreeView;

namespace yardcast::ui {

class LiveAssessment;
class OutlineModel;
class PlanDocument;
class Selection;

/// The list of parts with their cutouts and of what stands on the site. What is chosen here is chosen on the sheet, and
/// the other way round. F2 or a double click renames.
class PartsOutline : public QWidget {
    Q_OBJECT

public:
    PartsOutline(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

    QTreeView& view() const { return *view_; }

signals:
    /// Enter on a part or one of its cutouts: it is to be brought into view.
    void partsAsked(const QStringList& parts);

protected:
    void showEvent(QShowEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void refresh();
    void takeSelection();
    void showSelection();
    void useInk();

    PlanDocument& document_;
    Selection& selection_;
    OutlineModel* model_;
    QTreeView* view_;
    QLabel* empty_;
    bool following_ = false;
};

}  // namespace yardcast::ui
