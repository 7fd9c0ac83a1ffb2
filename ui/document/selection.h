#pragma once

#include <QObject>
#include <QString>
#include <QStringList>

namespace yardcast::ui {

class PlanDocument;

/// A cutout within a counter; empty when none is chosen.
struct CutoutRef {
    QString part;
    QString cutout;
    bool isEmpty() const { return cutout.isEmpty(); }
    friend bool operator==(const CutoutRef&, const CutoutRef&) = default;
};

/// What is chosen, what the pointer is over, and what a line in a panel points at. What no longer exists in the
/// plan drops out by itself.
class Selection : public QObject {
    Q_OBJECT

public:
    explicit Selection(PlanDocument& document, QObject* parent = nullptr);

    const QStringList& parts() const { return parts_; }
    const CutoutRef& cutout() const { return cutout_; }
    const QString& fixture() const { return fixture_; }
    bool isEmpty() const { return parts_.isEmpty() && cutout_.isEmpty() && fixture_.isEmpty(); }
    bool contains(const QString& part) const { return parts_.contains(part); }

    void setParts(const QStringList& ids);
    void toggle(const QString& id);
    /// Chooses a cutout; its counter is then the only chosen part.
    void setCutout(const CutoutRef& ref);
    void setFixture(const QString& id);
    void clear();

    const QString& hovered() const { return hovered_; }
    void setHovered(const QString& part);

    /// Parts that a line of a panel comes from.
    const QStringList& highlighted() const { return highlighted_; }
    void setHighlighted(const QStringList& parts);

signals:
    void chosenChanged();
    void hoveredChanged();
    void highlightedChanged();

private:
    void dropMissing();

    PlanDocument& document_;
    QStringList parts_;
    CutoutRef cutout_;
    QString fixture_;
    QString hovered_;
    QStringList highlighted_;
};

}  // namespace yardcast::ui
