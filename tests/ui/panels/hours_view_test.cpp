#include <algorithm>

#include <QTabBar>
#include <QTest>

#include "panel_fixture.h"
#include "ui/panels/hours_view.h"
#include "ui/panels/lifting_card.h"
#include "ui/panels/line_view.h"
#include "ui/wording/figures.h"
#include "ui/wording/readiness_names.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

constexpr char kSample[] = "corner-kitchen.yardplan";

struct Shown : PanelFixture {
    LiftingCard card{document, selection, live};
    explicit Shown(const Plan& plan) : PanelFixture(plan)
    {
        card.setOpened(true);
        card.resize(340, 620);
        card.show();
        (void)QTest::qWaitForWindowExposed(&card);
        (void)QTest::qWaitFor([this] { return live.isReadinessKnown(); }, 20000);
    }
    HoursView* view() const { return card.findChild<HoursView*>(); }
    LineView* when() const
    {
        for (LineView* table : card.findChildren<LineView*>()) {
            if (table->accessibleName() == QLatin1String("When")) return table;
        }
        return nullptr;
    }
    void turnTo(const QString& name) const
    {
        auto* tabs = card.findChild<QTabBar*>();
        for (int i = 0; i < tabs->count(); ++i) {
            if (tabs->tabText(i) == name) tabs->setCurrentIndex(i);
        }
    }
    const Line& line(const QString& key) const { return when()->lineModel().line(when()->lineModel().rowOf(key)); }
};

Plan withSeason(Plan plan)
{
    MonthWeather january;
    january.month = 1;
    january.lowC = -8.0;
    january.highC = 1.0;
    MonthWeather june;
    june.month = 6;
    june.lowC = 13.0;
    june.highC = 23.0;
    plan.season = {january, june};
    return plan;
}

}  // namespace

class HoursViewTest : public QObject {
    Q_OBJECT

private slots:
    void theChartStandsAboveItsTableOnly()
    {
        Shown s(samplePlan(kSample));
        QVERIFY(s.live.isReadinessKnown());
        QVERIFY(!s.view()->isVisible());
        s.turnTo(QStringLiteral("When"));
        QVERIFY(s.view()->isVisible());
        QTRY_VERIFY(s.view()->height() >= s.view()->sizeHint().height());
        keepPicture(s.card.grab(), QStringLiteral("hours-light"));
        s.turnTo(QStringLiteral("Hands"));
        QVERIFY(!s.view()->isVisible());
    }

    void itShowsTheChosenOrTheSlowest()
    {
        Shown s(samplePlan(kSample));
        s.turnTo(QStringLiteral("When"));
        double last = 0.0;
        for (const CastingHoursPtr& hours : s.live.assessment()->hours) {
            if (hours->governing()) last = std::max(last, hours->governing()->cautiousH);
        }
        QCOMPARE(s.view()->chart().groups.size(), std::size_t(1));
        double shown = 0.0;
        for (const HoursBar& bar : s.view()->chart().groups.front().bars) {
            if (bar.planned) shown = std::max(shown, bar.cautiousH);
        }
        QVERIFY(shown >= last);
        for (const CastingHoursPtr& hours : s.live.assessment()->hours) {
            s.selection.setParts({QString::fromStdString(hours->part)});
            bool found = false;
            for (const HoursGroup& group : s.view()->chart().groups) {
                found = found || std::ranges::find(group.castings, hours->casting) != group.castings.end();
            }
            QVERIFY2(found, hours->casting.c_str());
        }
    }

    void theTableHasEveryCastingMixAndMonth()
    {
        Shown s(withSeason(samplePlan(kSample)));
        s.turnTo(QStringLiteral("When"));
        const Assessment& assessment = *s.live.assessment();
        std::size_t told = 0;
        for (const CastingHoursPtr& hours : assessment.hours) {
            const QString first = QString::fromStdString(hours->casting);
            if (s.when()->lineModel().rowOf(first) < 0) continue;  // alike to one that was told
            ++told;
            QCOMPARE(s.line(first + QStringLiteral("|plan")).cells[2], plannedHourText(hours->planH));
            for (const EarliestHour& hour : hours->ways) {
                const Line& line = s.line(first + QLatin1Char('|') + QLatin1String(handlingWayWord(hour.way)));
                if (!hour.possible) continue;
                QCOMPARE(line.cells[1], waitText(hour.likelyH));
                QCOMPARE(line.cells[2], waitText(hour.cautiousH));
            }
        }
        QVERIFY(told > 1 && told < assessment.hours.size());
        QVERIFY(!assessment.gain.empty());
        for (const GainCurve& gain : assessment.gain) {
            for (const int days : {1, 2, 3, 7}) {
                const auto at = std::ranges::find(gain.h, 24.0 * days);
                QVERIFY(at != gain.h.end());
                const Line& line = s.line(QStringLiteral("gain|%1|%2").arg(QString::fromStdString(gain.mix)).arg(days));
                QCOMPARE(line.cells[1], percentText(100.0 * gain.share[std::size_t(at - gain.h.begin())]));
            }
        }
        QCOMPARE(s.line(QStringLiteral("season|1")).cells[2], QStringLiteral("not fit"));
        QCOMPARE(s.line(QStringLiteral("season|6")).cells[2], QStringLiteral("1"));
        s.when()->scrollToBottom();
        QTRY_VERIFY(s.view()->height() >= s.view()->sizeHint().height());
        keepPicture(s.card.grab(), QStringLiteral("hours-season"));
    }

    void whileNewHoursAreSoughtItSaysSo()
    {
        Shown s(samplePlan(kSample));
        s.turnTo(QStringLiteral("When"));
        const int height = s.view()->sizeHint().height();
        const QString words = s.view()->accessibleName();
        QVERIFY(words.contains(QStringLiteral("plan")));
        s.view()->setChart({}, true);
        QCOMPARE(s.view()->sizeHint().height(), height);
        QVERIFY(s.view()->accessibleName().contains(QStringLiteral("being found")));
        s.view()->setChart({}, false);
        QVERIFY(!s.view()->accessibleName().contains(QStringLiteral("being found")));
    }
};

QTEST_MAIN(HoursViewTest)
#include "hours_view_test.moc"
