#pragma once

#include <QProxyStyle>

#include "ui/look/ink.h"

namespace yardcast::ui {

/// Property of a dock: what its title bar says where its tab says it shorter.
inline constexpr auto kWholeTitle = "wholeTitle";

/// Flat, hairlines, spacing in steps of 4 px, targets of at least 28 px; what it does not draw itself is drawn
/// by the neutral base style in our palette.
class QuietStyle : public QProxyStyle {
    Q_OBJECT

public:
    QuietStyle();

    void setInk(const Ink& ink) { ink_ = ink; }

    int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* answer) const override;
    QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                           const QWidget* widget) const override;
    QRect subElementRect(SubElement element, const QStyleOption* option, const QWidget* widget) const override;
    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                            const QWidget* widget) const override;
    void polish(QWidget* widget) override;
    using QProxyStyle::polish;

private:
    void drawButtonPanel(const QStyleOption& option, QPainter& painter, bool frame) const;
    void drawFieldPanel(const QStyleOption& option, QPainter& painter) const;
    void drawArrow(Qt::ArrowType way, const QStyleOption& option, QPainter& painter) const;
    void drawCheckBox(const QStyleOption& option, QPainter& painter) const;
    void drawRadio(const QStyleOption& option, QPainter& painter) const;
    void drawTab(const QStyleOption& option, QPainter& painter) const;
    void drawHeader(const QStyleOption& option, QPainter& painter) const;
    void drawScrollBar(const QStyleOptionComplex& option, QPainter& painter, const QWidget* widget) const;
    void drawComboBox(const QStyleOptionComplex& option, QPainter& painter, const QWidget* widget) const;
    QColor onHover(const QStyleOption& option, const QColor& rest) const;

    Ink ink_ = lightInk();
};

}  // namespace yardcast::ui
