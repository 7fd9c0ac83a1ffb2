#pragma once

#include <string>
#include <vector>

#include "ui/drawing/mould_painter.h"
#include "ui/drawing/running_dimensions.h"

/// Inner seam of the pictures of moulds: everything that is written over and around them.
namespace yardcast::ui {

/// Words at the sides, the front, the marked corner, the head: what both pictures have.
class PictureFrame {
public:
    struct Words {
        Hand hand = Hand::asItStands;
        QString title;
        QString below;
        QString left;       ///< may have two lines
        QString right;
        QString front;
    };
    /// `body` is the thing, `around` what has to stay clear about it (dimensions); drawing mm.
    PictureFrame(const QRectF& body, const QRectF& around, QPointF corner, const Words& words, const PaintStyle& style);
    QRectF bounds() const { return bounds_; }
    void paint(QPainter& painter) const;

private:
    void paintSide(QPainter& painter, double x, const QString& text, double angleDeg) const;

    QRectF body_;
    QRectF around_;
    QPointF corner_;
    Words words_;
    PaintStyle style_;
    double unit_;
    double sideMm_ = 0.0;
    QSizeF head_;
    QRectF bounds_;
};

class MouldMarks {
public:
    MouldMarks(const MouldSubject& subject, const MouldLook& look, const PaintStyle& style);
    QRectF bounds() const { return frame().bounds(); }
    void paint(QPainter& painter) const;

private:
    struct Balloon {
        QString text;
        QPointF anchor;     ///< in what it stands for
        QRectF home;        ///< box of that
        QPointF at;
        QSizeF size;
        bool marked = false;
    };
    PictureFrame frame() const;
    void addRows();
    void addCutouts(RunningRow& across, RunningRow& up) const;
    std::vector<Balloon> balloons(const std::vector<QRectF>& taken) const;
    /// The two ends of the cut, outside the boards.
    std::vector<QRectF> sectionMarks() const;
    void paintSectionMarks(QPainter& painter) const;
    void paintDiagonals(QPainter& painter, std::vector<QRectF>& taken) const;
    struct CutoutName {
        QString text;
        QRectF box;
    };
    std::vector<CutoutName> cutoutNames() const;
    void paintLeader(QPainter& painter, const Balloon& balloon) const;
    void paintBalloon(QPainter& painter, const Balloon& balloon) const;

    const MouldSubject& subject_;
    const MouldLook& look_;
    PaintStyle style_;
    double unit_;
    QRectF body_;       ///< boards
    QRectF inside_;
    QPointF corner_;
    std::vector<RunningRow> rows_;
};

class StandingMarks {
public:
    StandingMarks(const MouldSubject& subject, const PaintStyle& style);
    QRectF bounds() const { return frame().bounds(); }
    void paint(QPainter& painter) const;

private:
    PictureFrame frame() const;

    const MouldSubject& subject_;
    PaintStyle style_;
    QRectF body_;
};

}  // namespace yardcast::ui
