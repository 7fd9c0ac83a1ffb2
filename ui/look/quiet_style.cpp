#include "ui/look/quiet_style.h"

#include <QAbstractItemView>
#include <QAbstractScrollArea>
#include <QApplication>
#include <QComboBox>
#include <QMainWindow>
#include <QPainter>
#include <QPainterPath>
#include <QStyleOption>
#include <QToolButton>

#include "ui/look/theme.h"

namespace yardcast::ui {

namespace {

constexpr double kCornerPx = 3.0;

bool isOn(const QStyleOption& option, QStyle::StateFlag flag) { return option.state.testFlag(flag); }

/// A rectangle whose one-pixel outline lies on whole pixels.
QRectF outlineRect(const QRect& rect, double widthPx)
{
    return QRectF(rect).adjusted(widthPx / 2, widthPx / 2, -widthPx / 2, -widthPx / 2);
}

}  // namespace

QuietStyle::QuietStyle() : QProxyStyle(QStringLiteral("Fusion")) { setObjectName(QStringLiteral("quiet")); }

int QuietStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const
{
    switch (metric) {
    case PM_LayoutLeftMargin:
    case PM_LayoutTopMargin:
    case PM_LayoutRightMargin:
    case PM_LayoutBottomMargin:
    case PM_LayoutHorizontalSpacing: return 2 * kStepPx;
    case PM_LayoutVerticalSpacing: return kStepPx;
    case PM_ButtonMargin: return 2 * kStepPx;
    case PM_DefaultFrameWidth: return 1;
    case PM_ComboBoxFrameWidth: return 1;
    case PM_ButtonShiftHorizontal:
    case PM_ButtonShiftVertical: return 0;
    case PM_FocusFrameHMargin:
    case PM_FocusFrameVMargin: return 2;
    case PM_ScrollBarExtent: return 3 * kStepPx;
    case PM_ScrollBarSliderMin: return kTargetPx;
    case PM_ScrollView_ScrollBarSpacing: return 0;
    case PM_ScrollView_ScrollBarOverlap: return 0;
    case PM_IndicatorWidth:
    case PM_IndicatorHeight:
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight: return 18;
    case PM_CheckBoxLabelSpacing:
    case PM_RadioButtonLabelSpacing: return 2 * kStepPx;
    case PM_SmallIconSize:
    case PM_ButtonIconSize:
    case PM_ListViewIconSize:
    case PM_TabBarIconSize: return 20;
    case PM_ToolBarIconSize: return 24;
    case PM_ToolBarItemSpacing: return 2;
    case PM_ToolBarFrameWidth: return 0;
    case PM_ToolBarItemMargin: return kStepPx;
    case PM_MenuVMargin:
    case PM_MenuHMargin: return kStepPx;
    case PM_MenuPanelWidth: return 1;
    case PM_HeaderMargin: return kStepPx;
    case PM_TabBarTabHSpace:
        // The tabs of docks are many in little room.
        return (widget && qobject_cast<const QMainWindow*>(widget->parentWidget()) ? 2 : 4) * kStepPx;
    case PM_TabBarTabVSpace: return 3 * kStepPx;
    case PM_TabBarTabShiftVertical:
    case PM_TabBarTabShiftHorizontal: return 0;
    case PM_TabBarTabOverlap:
    case PM_TabBarBaseOverlap: return 0;
    case PM_DockWidgetSeparatorExtent:
    case PM_SplitterWidth: return kStepPx + 1;
    case PM_DockWidgetFrameWidth: return 0;
    case PM_DockWidgetTitleMargin: return kStepPx;
    case PM_DockWidgetTitleBarButtonMargin: return kStepPx + 2;
    case PM_TreeViewIndentation: return 5 * kStepPx;
    default: return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int QuietStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                          QStyleHintReturn* answer) const
{
    switch (hint) {
    case SH_EtchDisabledText:
    case SH_DitherDisabledText:
    case SH_ScrollView_FrameOnlyAroundContents:
    case SH_ComboBox_Popup:
    case SH_ItemView_ActivateItemOnSingleClick:
    case SH_DockWidget_ButtonsHaveFrame:
    case SH_DialogButtonBox_ButtonsHaveIcons:
    case SH_Widget_Animation_Duration: return 0;
    case SH_ItemView_ShowDecorationSelected: return 1;
    case SH_TabBar_Alignment: return Qt::AlignLeft;
    case SH_TabBar_ElideMode: return Qt::ElideRight;
    case SH_Table_GridLineColor: return static_cast<int>(ink_.line.rgb());
    default: return QProxyStyle::styleHint(hint, option, widget, answer);
    }
}

QSize QuietStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                                   const QWidget* widget) const
{
    QSize size = QProxyStyle::sizeFromContents(type, option, contents, widget);
    switch (type) {
    case CT_PushButton: return QSize(qMax(size.width(), 64), qMax(contents.height() + 2 * kStepPx, kTargetPx));
    case CT_ToolButton: return QSize(qMax(size.width(), kTargetPx), qMax(size.height(), kTargetPx));
    case CT_LineEdit:
    case CT_SpinBox:
    case CT_ComboBox:
    case CT_CheckBox:
    case CT_RadioButton:
    case CT_HeaderSection:
    case CT_ItemViewItem: return QSize(size.width(), qMax(size.height(), kTargetPx));
    case CT_MenuItem: {
        const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
        if (item && item->menuItemType == QStyleOptionMenuItem::Separator) return size;
        return QSize(size.width() + 2 * kStepPx, qMax(size.height(), kTargetPx));
    }
    case CT_TabBarTab: return QSize(size.width(), qMax(size.height(), kTargetPx));
    default: return size;
    }
}

QRect QuietStyle::subElementRect(SubElement element, const QStyleOption* option, const QWidget* widget) const
{
    if (element == SE_LineEditContents && option) {
        return option->rect.adjusted(2 * kStepPx - 2, 1, -(2 * kStepPx - 2), -1);
    }
    if (const auto* dock = qstyleoption_cast<const QStyleOptionDockWidget*>(option); dock && !dock->verticalTitleBar) {
        const QRect& bar = dock->rect;
        const int buttons = (dock->closable ? 1 : 0) + (dock->floatable ? 1 : 0);
        QRect button(bar.right() + 1 - kTargetPx, bar.center().y() - kTargetPx / 2 + 1, kTargetPx, kTargetPx);
        if (element == SE_DockWidgetCloseButton) return dock->closable ? button : QRect();
        if (dock->closable) button.translate(-kTargetPx, 0);
        if (element == SE_DockWidgetFloatButton) return dock->floatable ? button : QRect();
        if (element == SE_DockWidgetTitleBarText)
            return bar.adjusted(3 * kStepPx, 0, -buttons * kTargetPx - kStepPx, 0);
    }
    return QProxyStyle::subElementRect(element, option, widget);
}

QColor QuietStyle::onHover(const QStyleOption& option, const QColor& rest) const
{
    if (!isOn(option, State_Enabled)) return rest;
    if (isOn(option, State_Sunken)) return mixed(rest, ink_.ink, 0.14);
    if (isOn(option, State_MouseOver)) return mixed(rest, ink_.ink, 0.07);
    return rest;
}

void QuietStyle::drawButtonPanel(const QStyleOption& option, QPainter& painter, bool frame) const
{
    const bool checked = isOn(option, State_On);
    const bool focused = isOn(option, State_HasFocus) && isOn(option, State_KeyboardFocusChange);
    const QColor surface = option.palette.color(QPalette::Window);
    const QColor rest = checked ? mixed(surface, ink_.chosen, 0.18) : surface;
    const QColor fill = onHover(option, rest);
    const bool quiet = !frame && !checked && fill == rest;
    if (quiet && !focused) return;

    const double width = focused ? 2.0 : 1.0;
    QColor edge = frame ? outlineOf(ink_) : fill;
    if (checked || focused) edge = ink_.chosen;
    if (!isOn(option, State_Enabled)) edge = ink_.line;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(edge, width));
    painter.setBrush(quiet ? QBrush(Qt::NoBrush) : QBrush(fill));
    painter.drawRoundedRect(outlineRect(option.rect, width), kCornerPx, kCornerPx);
    painter.restore();
}

void QuietStyle::drawFieldPanel(const QStyleOption& option, QPainter& painter) const
{
    const bool focused = isOn(option, State_HasFocus);
    const bool enabled = isOn(option, State_Enabled);
    const double width = focused ? 2.0 : 1.0;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(!enabled ? ink_.line : focused ? ink_.chosen : outlineOf(ink_), width));
    painter.setBrush(option.palette.color(QPalette::Base));
    painter.drawRoundedRect(outlineRect(option.rect, width), kCornerPx, kCornerPx);
    painter.restore();
}

void QuietStyle::drawArrow(Qt::ArrowType way, const QStyleOption& option, QPainter& painter) const
{
    constexpr double half = 4.0;
    const QPointF middle = QRectF(option.rect).center();
    QPolygonF chevron{QPointF(-half, -half / 2), QPointF(0, half / 2), QPointF(half, -half / 2)};
    QTransform turn;
    turn.translate(middle.x(), middle.y());
    if (way == Qt::UpArrow) turn.rotate(180);
    if (way == Qt::LeftArrow) turn.rotate(90);
    if (way == Qt::RightArrow) turn.rotate(-90);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(isOn(option, State_Enabled) ? ink_.ink : disabledOf(ink_), 1.75, Qt::SolidLine, Qt::RoundCap,
                        Qt::RoundJoin));
    painter.drawPolyline(turn.map(chevron));
    painter.restore();
}

void QuietStyle::drawCheckBox(const QStyleOption& option, QPainter& painter) const
{
    const bool enabled = isOn(option, State_Enabled);
    const bool filled = isOn(option, State_On) || isOn(option, State_NoChange);
    const QColor mark = enabled ? ink_.chosen : disabledOf(ink_);
    const bool focused = isOn(option, State_HasFocus) && isOn(option, State_KeyboardFocusChange);
    const double width = focused ? 2.0 : 1.0;
    QRect box(0, 0, 16, 16);
    box.moveCenter(option.rect.center());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(filled || focused ? mark : enabled ? outlineOf(ink_) : ink_.line, width));
    painter.setBrush(filled ? mark : onHover(option, ink_.sheet));
    painter.drawRoundedRect(outlineRect(box, width), kCornerPx, kCornerPx);
    painter.setPen(QPen(ink_.sheet, 2.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const QPointF at = box.topLeft();
    if (isOn(option, State_NoChange)) {
        painter.drawLine(at + QPointF(4, 8), at + QPointF(12, 8));
    } else if (filled) {
        painter.drawPolyline(QPolygonF{at + QPointF(4, 8.5), at + QPointF(7, 11.5), at + QPointF(12, 5)});
    }
    painter.restore();
}

void QuietStyle::drawRadio(const QStyleOption& option, QPainter& painter) const
{
    const bool enabled = isOn(option, State_Enabled);
    const bool on = isOn(option, State_On);
    const QColor mark = enabled ? ink_.chosen : disabledOf(ink_);
    QRect box(0, 0, 16, 16);
    box.moveCenter(option.rect.center());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(on ? mark : enabled ? outlineOf(ink_) : ink_.line, on ? 2.0 : 1.0));
    painter.setBrush(onHover(option, ink_.sheet));
    painter.drawEllipse(outlineRect(box, 1.0));
    if (on) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(mark);
        painter.drawEllipse(QRectF(box).center(), 4.0, 4.0);
    }
    painter.restore();
}

void QuietStyle::drawTab(const QStyleOption& option, QPainter& painter) const
{
    const bool chosen = isOn(option, State_Selected);
    const QColor surface = option.palette.color(QPalette::Window);
    painter.fillRect(option.rect, chosen ? surface : onHover(option, surface));
    const auto* tab = qstyleoption_cast<const QStyleOptionTab*>(&option);
    const bool below = tab && (tab->shape == QTabBar::RoundedSouth || tab->shape == QTabBar::TriangularSouth);
    const QRect& rect = option.rect;
    const QRect underline(rect.left(), below ? rect.top() : rect.bottom() - 1, rect.width(), 2);
    if (chosen) {
        painter.fillRect(underline, ink_.chosen);
    } else {
        painter.fillRect(QRect(rect.left(), below ? rect.top() : rect.bottom(), rect.width(), 1), ink_.line);
    }
    if (isOn(option, State_HasFocus) && isOn(option, State_KeyboardFocusChange)) {
        painter.setPen(QPen(ink_.chosen, 1.0, Qt::DotLine));
        painter.drawRect(option.rect.adjusted(3, 3, -4, -4));
    }
}

void QuietStyle::drawHeader(const QStyleOption& option, QPainter& painter) const
{
    painter.fillRect(option.rect, option.palette.color(QPalette::Window));
    painter.fillRect(QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), 1), ink_.line);
}

void QuietStyle::drawScrollBar(const QStyleOptionComplex& option, QPainter& painter, const QWidget* widget) const
{
    const QRect slider = subControlRect(CC_ScrollBar, &option, SC_ScrollBarSlider, widget);
    painter.fillRect(option.rect, option.palette.color(QPalette::Window));
    const bool held = option.activeSubControls.testFlag(SC_ScrollBarSlider) && isOn(option, State_Sunken);
    const bool over = option.activeSubControls.testFlag(SC_ScrollBarSlider) && isOn(option, State_MouseOver);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(mixed(ink_.line, ink_.pencil, held ? 0.9 : over ? 0.6 : 0.35));
    const QRectF thumb = QRectF(slider).adjusted(3, 3, -3, -3);
    painter.drawRoundedRect(thumb, 3, 3);
    painter.restore();
}

void QuietStyle::drawComboBox(const QStyleOptionComplex& option, QPainter& painter, const QWidget* widget) const
{
    drawFieldPanel(option, painter);
    QStyleOption arrow(option);
    arrow.rect = subControlRect(CC_ComboBox, &option, SC_ComboBoxArrow, widget);
    drawArrow(Qt::DownArrow, arrow, painter);
}

void QuietStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const
{
    switch (element) {
    case PE_PanelButtonCommand: drawButtonPanel(*option, *painter, true); return;
    case PE_PanelButtonTool: {
        const auto* button = qobject_cast<const QToolButton*>(widget);
        drawButtonPanel(*option, *painter, button && !button->autoRaise());
        return;
    }
    case PE_FrameButtonTool:
    case PE_FrameDefaultButton: return;
    case PE_PanelLineEdit:
        // A field inside a box (combo, spin, table cell) has no panel of its own.
        if (const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option); frame && frame->lineWidth > 0) {
            drawFieldPanel(*option, *painter);
        } else {
            painter->fillRect(option->rect, option->palette.color(QPalette::Base));
        }
        return;
    case PE_FrameLineEdit: return;
    case PE_Frame: {
        const bool focused = isOn(*option, State_HasFocus) && qobject_cast<const QAbstractItemView*>(widget);
        painter->save();
        painter->setPen(focused ? ink_.chosen : ink_.line);
        painter->drawRect(option->rect.adjusted(0, 0, -1, -1));
        painter->restore();
        return;
    }
    case PE_FrameMenu:
    case PE_PanelTipLabel:
        painter->save();
        painter->setPen(outlineOf(ink_));
        if (element == PE_PanelTipLabel) painter->setBrush(option->palette.color(QPalette::ToolTipBase));
        painter->drawRect(option->rect.adjusted(0, 0, -1, -1));
        painter->restore();
        return;
    case PE_FrameDockWidget:
    case PE_FrameTabBarBase:
    case PE_FrameTabWidget: return;
    case PE_FrameFocusRect:
        if (widget && widget->inherits("QPushButton")) return;
        if (widget && widget->inherits("QToolButton")) {
            // One without a frame has no panel that could show it.
            if (!isOn(*option, State_KeyboardFocusChange)) return;
            painter->save();
            painter->setRenderHint(QPainter::Antialiasing);
            painter->setPen(QPen(ink_.chosen, 2.0));
            painter->setBrush(Qt::NoBrush);
            painter->drawRoundedRect(outlineRect(widget->rect(), 2.0), kCornerPx, kCornerPx);
            painter->restore();
            return;
        }
        if (qobject_cast<const QAbstractItemView*>(widget)) return;
        painter->save();
        painter->setPen(QPen(ink_.chosen, 1.0));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(option->rect.adjusted(0, 0, -1, -1));
        painter->restore();
        return;
    case PE_IndicatorCheckBox:
    case PE_IndicatorItemViewItemCheck: drawCheckBox(*option, *painter); return;
    case PE_IndicatorRadioButton: drawRadio(*option, *painter); return;
    case PE_IndicatorArrowDown: drawArrow(Qt::DownArrow, *option, *painter); return;
    case PE_IndicatorArrowUp: drawArrow(Qt::UpArrow, *option, *painter); return;
    case PE_IndicatorArrowLeft: drawArrow(Qt::LeftArrow, *option, *painter); return;
    case PE_IndicatorArrowRight: drawArrow(Qt::RightArrow, *option, *painter); return;
    case PE_IndicatorBranch:
        if (isOn(*option, State_Children)) {
            drawArrow(isOn(*option, State_Open) ? Qt::DownArrow : Qt::RightArrow, *option, *painter);
        }
        return;
    case PE_IndicatorDockWidgetResizeHandle: painter->fillRect(option->rect, ink_.bench); return;
    default: QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

void QuietStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                             const QWidget* widget) const
{
    switch (element) {
    case CE_PushButtonBevel: drawButtonPanel(*option, *painter, true); return;
    case CE_TabBarTabShape: drawTab(*option, *painter); return;
    case CE_HeaderSection:
    case CE_HeaderEmptyArea: drawHeader(*option, *painter); return;
    case CE_DockWidgetTitle:
        if (const auto* title = qstyleoption_cast<const QStyleOptionDockWidget*>(option); title && widget) {
            QStyleOptionDockWidget whole(*title);
            const QString text = widget->property(kWholeTitle).toString();
            if (!text.isEmpty()) whole.title = text;
            QProxyStyle::drawControl(element, &whole, painter, widget);
            return;
        }
        QProxyStyle::drawControl(element, option, painter, widget);
        return;
    case CE_Splitter: painter->fillRect(option->rect, ink_.bench); return;
    case CE_ToolBar: painter->fillRect(option->rect, option->palette.color(QPalette::Window)); return;
    case CE_MenuBarEmptyArea: painter->fillRect(option->rect, option->palette.color(QPalette::Window)); return;
    case CE_MenuItem:
    case CE_MenuBarItem:
        if (const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option)) {
            // Pale, so that icons in ink stay readable on it.
            QStyleOptionMenuItem pale(*item);
            pale.palette.setColor(QPalette::Highlight, mixed(ink_.sheet, ink_.chosen, 0.22));
            pale.palette.setColor(QPalette::HighlightedText, ink_.ink);
            QProxyStyle::drawControl(element, &pale, painter, widget);
            return;
        }
        QProxyStyle::drawControl(element, option, painter, widget);
        return;
    default: QProxyStyle::drawControl(element, option, painter, widget);
    }
}

void QuietStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                                    const QWidget* widget) const
{
    switch (control) {
    case CC_ScrollBar: drawScrollBar(*option, *painter, widget); return;
    case CC_ComboBox: drawComboBox(*option, *painter, widget); return;
    default: QProxyStyle::drawComplexControl(control, option, painter, widget);
    }
}

void QuietStyle::polish(QWidget* widget)
{
    QProxyStyle::polish(widget);
    if (qobject_cast<QAbstractButton*>(widget) || qobject_cast<QComboBox*>(widget)) {
        widget->setAttribute(Qt::WA_Hover, true);
    }
}

}  // namespace yardcast::ui
