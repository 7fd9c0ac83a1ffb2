#include "ui/look/theme.h"

#include <QApplication>
#include <QEvent>
#include <QFontDatabase>
#include <QFontMetricsF>
#include <QScopedValueRollback>

#include "ui/look/quiet_style.h"

namespace yardcast::ui {

bool isDark(const QPalette& palette)
{
    return palette.color(QPalette::Window).lightnessF() < palette.color(QPalette::WindowText).lightnessF();
}

Ink inkOf(const QPalette& palette) { return isDark(palette) ? darkInk() : lightInk(); }

QColor mixed(const QColor& a, const QColor& b, double share)
{
    const auto channel = [share](double from, double to) { return from + (to - from) * share; };
    return QColor::fromRgbF(static_cast<float>(channel(a.redF(), b.redF())),
                            static_cast<float>(channel(a.greenF(), b.greenF())),
                            static_cast<float>(channel(a.blueF(), b.blueF())));
}

QColor outlineOf(const Ink& ink) { return mixed(ink.line, ink.pencil, 0.65); }

QColor disabledOf(const Ink& ink) { return mixed(ink.pencil, ink.card, 0.4); }

QPalette paletteOf(const Ink& ink)
{
    QPalette palette;
    const auto set = [&](QPalette::ColorRole role, const QColor& colour) { palette.setColor(role, colour); };
    set(QPalette::Window, ink.card);
    set(QPalette::WindowText, ink.ink);
    set(QPalette::Base, ink.sheet);
    set(QPalette::AlternateBase, mixed(ink.sheet, ink.card, 0.5));
    set(QPalette::Text, ink.ink);
    set(QPalette::PlaceholderText, ink.pencil);
    set(QPalette::Button, ink.card);
    set(QPalette::ButtonText, ink.ink);
    set(QPalette::BrightText, ink.stop);
    set(QPalette::ToolTipBase, ink.sheet);
    set(QPalette::ToolTipText, ink.ink);
    set(QPalette::Highlight, ink.chosen);
    set(QPalette::HighlightedText, ink.sheet);
    set(QPalette::Link, ink.chosen);
    set(QPalette::LinkVisited, ink.chosen);
    set(QPalette::Light, mixed(ink.card, ink.sheet, 0.5));
    set(QPalette::Midlight, mixed(ink.card, ink.line, 0.3));
    set(QPalette::Mid, ink.line);
    set(QPalette::Dark, outlineOf(ink));
    set(QPalette::Shadow, ink.dark ? QColor(Qt::black) : ink.pencil);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::HighlightedText}) {
        palette.setColor(QPalette::Disabled, role, disabledOf(ink));
    }
    palette.setColor(QPalette::Disabled, QPalette::Base, ink.card);
    palette.setColor(QPalette::Disabled, QPalette::Highlight, ink.line);
    return palette;
}

namespace {

bool hasTabularDigits(const QFont& font)
{
    const QFontMetricsF metrics(font);
    const double zero = metrics.horizontalAdvance(QLatin1Char('0'));
    for (char digit = '1'; digit <= '9'; ++digit) {
        if (qAbs(metrics.horizontalAdvance(QLatin1Char(digit)) - zero) > 0.01) return false;
    }
    return true;
}

}  // namespace

QFont figureFont(const QFont& text)
{
    if (hasTabularDigits(text)) return text;
    for (const char* family : {"Noto Sans", "DejaVu Sans", "Liberation Sans", "Arial", "Helvetica"}) {
        QFont font = text;
        font.setFamily(QString::fromLatin1(family));
        if (QFontDatabase::hasFamily(font.family()) && hasTabularDigits(font)) return font;
    }
    QFont fixed = QFontDatabase::systemFont(QFontDatabase::FixedFont);
    if (text.pointSizeF() > 0) {
        fixed.setPointSizeF(text.pointSizeF());
    } else {
        fixed.setPixelSize(text.pixelSize());
    }
    return fixed;
}

QFont bigFigureFont(const QFont& text)
{
    QFont font = figureFont(text);
    if (font.pointSizeF() > 0) {
        font.setPointSizeF(text.pointSizeF() * 1.6);
    } else {
        font.setPixelSize(qRound(text.pixelSize() * 1.6));
    }
    font.setWeight(QFont::DemiBold);
    return font;
}

Theme::Theme(QApplication& application, Appearance appearance)
    : QObject(&application), application_(application), style_(new QuietStyle), appearance_(appearance)
{
    application.setStyle(style_);
    application.installEventFilter(this);
    apply();
}

void Theme::setAppearance(Appearance appearance)
{
    if (appearance_ == appearance) return;
    appearance_ = appearance;
    apply();
}

void Theme::apply()
{
    const QScopedValueRollback guard(applying_, true);
    bool dark = appearance_ == Appearance::dark;
    if (appearance_ == Appearance::asSystem) {
        // Ours has to be taken off to see what the desktop asks for.
        QApplication::setPalette(QPalette());
        dark = isDark(QApplication::palette());
    }
    ink_ = dark ? darkInk() : lightInk();
    style_->setInk(ink_);
    QApplication::setPalette(paletteOf(ink_));
    emit inkChanged(ink_);
}

bool Theme::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::ThemeChange && !applying_ && appearance_ == Appearance::asSystem) {
        QMetaObject::invokeMethod(this, &Theme::apply, Qt::QueuedConnection);
    }
    return QObject::eventFilter(watched, event);
}

}  // namespace yardcast::ui
