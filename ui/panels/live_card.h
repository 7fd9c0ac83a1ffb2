#pragma once

#include <functional>
#include <optional>

#include <QTimer>
#include <QWidget>

#include "core/assess/assessment.h"
#include "ui/panels/figure_popover.h"
#include "ui/panels/line_model.h"

class QLabel;
class QStackedWidget;
class QTabBar;
class QToolButton;
class QVBoxLayout;

namespace yardcast::ui {

class FigureButton;
class LineView;
class LiveAssessment;
class PlanDocument;
class Selection;

/// What a card shows while it is closed: a big figure with its unit, and at most three lines.
struct CardSummary {
    struct Figure {
        QString code{}; ///< of the note behind it (ui/wording/figure_notes.h), or empty
        QString text{};
        QString unit{}; ///< of the big figure only
        std::optional<Severity> mark{};
    };
    bool empty = false; ///< nothing to speak about yet: the card says what to do next
    Figure big;
    QList<Figure> lines;
};

/// A live card of the side panels. It follows the assessment while it can be seen, and shows in lighter ink what is
/// older than the plan. Opened it is a table; a line leads to the parts it comes from, and the part under the pointer
/// marks its lines.
class LiveCard : public QWidget {
    Q_OBJECT

public:
    LiveCard(const QString& name, PlanDocument& document, Selection& selection, LiveAssessment& live,
             QWidget* parent = nullptr);

    bool isOpened() const { return opened_; }
    void setOpened(bool opened);
    /// How long the figures may be older than the plan before they are shown in lighter ink; 0 is at once.
    void setStaleAfterMs(int ms) { staleTimer_.setInterval(ms); }

signals:
    void openedChanged(bool opened);
    /// A figure was clicked; the card itself shows the note.
    void figureAsked(const QString& code);
    /// A line was chosen: its parts are to be brought into view.
    void partsAsked(const QStringList& parts);

protected:
    /// In words: what to do so that this card has something to say.
    void setEmptyText(const QString& text);
    LineView* addTable(const QString& title, const QList<LineColumn>& columns);
    /// Above and below the tables; both are shown with them.
    void addToolRow(QWidget* widget);
    void addFootnote(QWidget* widget);
    /// Between the row of tabs and the tables: it may come and go with one of them, and the tabs keep their place.
    void addBelowTabs(QWidget* widget);
    /// Fills the tables again without a new assessment (a filter has changed).
    void refillTables();

    virtual CardSummary summarise(const Plan& plan, const Assessment& assessment) const = 0;
    virtual void fillTables(const Plan& plan, const Assessment& assessment) = 0;
    /// This plan's values behind a figure.
    virtual QList<FigureValue> valuesBehind(const QString& code, const Plan& plan,
                                            const Assessment& assessment) const = 0;
    /// Calls `visit` with every subject (part, casting, mix) of a line.
    virtual void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                               const std::function<void(const std::string&)>& visit) const = 0;

    const AssessmentPtr& shownAssessment() const { return assessment_; }
    const PlanPtr& shownPlan() const { return plan_; }
    Selection& selection() const { return selection_; }

    QStringList partsOf(const LineView& view, const Line& line) const;
    /// Whether what is shown is not yet what belongs to the plan: it is in lighter ink then.
    virtual bool isStale() const;
    /// Called when what is shown goes into lighter ink and out of it.
    virtual void staleChanged(bool stale);
    /// Reads the assessment again; `summarise` may have more to go by than that.
    void refresh();
    LiveAssessment& live() const { return live_; }
    PlanDocument& document() const { return document_; }
    /// A figure of the summary was clicked.
    virtual void figureClicked(const QString& code, const QWidget& beside);
    /// What stands behind the figures of a line; nothing where the code is empty.
    struct LineNote {
        QString code{};
        QList<FigureValue> values{};
    };
    virtual LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                            const Assessment& assessment) const;
    /// Another line is current; -1 for none.
    virtual void lineBecameCurrent(const LineView& view, int row);

    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void fill();
    void planChanged();
    void waitForNew();
    void showStale(bool stale);
    void markPointedAt();
    void watch(LineView* view);
    void showNote(const QString& code, const QList<FigureValue>& values, const QRect& beside);

    PlanDocument& document_;
    Selection& selection_;
    LiveAssessment& live_;
    AssessmentPtr assessment_;
    PlanPtr plan_;
    bool opened_ = false;
    bool filling_ = false;
    QTimer staleTimer_;

    FigureButton* big_;
    QList<FigureButton*> lines_;
    QToolButton* opener_;
    QLabel* empty_;
    QWidget* summary_;
    QWidget* details_;
    QTabBar* tabs_;
    QStackedWidget* tables_;
    QVBoxLayout* detailsColumn_;
    QList<LineView*> views_;
};

}  // namespace yardcast::ui
