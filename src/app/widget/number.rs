//! Fields for numbers: any unit of the kind is taken and converted, and what stands there is what was meant, to the last digit.

use eframe::egui::{Id, Ui};

use super::entry::{Entry, Refusal, entry};
use crate::app::cx::Cx;
use crate::quantity::{Finite, Grams, Habits, Kind, Money, Style, parse, parse_grams, parse_money, print};

/// A field for a number.
#[derive(Debug, Clone, Copy)]
pub struct Number<'a> {
    /// From a stable key of the document.
    pub id: Id,
    /// Its name.
    pub name: &'a str,
    /// What it measures.
    pub kind: Kind,
    /// What stands in it, in the kind's unit.
    pub now: Option<f64>,
    /// What rules where nothing stands in it.
    pub default: Option<f64>,
    /// Its width.
    pub width: f32,
    /// For hands with gloves.
    pub large: bool,
}

impl<'a> Number<'a> {
    /// An empty field of the usual width.
    #[must_use]
    pub fn new(id: Id, name: &'a str, kind: Kind) -> Self {
        Self { id, name, kind, now: None, default: None, width: super::row::FIELD, large: false }
    }

    /// With what stands in it.
    #[must_use]
    pub fn now(self, now: Option<f64>) -> Self {
        Self { now, ..self }
    }

    /// With a default.
    #[must_use]
    pub fn default(self, default: Option<f64>) -> Self {
        Self { default, ..self }
    }

    /// With another width.
    #[must_use]
    pub fn width(self, width: f32) -> Self {
        Self { width, ..self }
    }

    /// Large.
    #[must_use]
    pub fn large(self) -> Self {
        Self { large: true, ..self }
    }

    fn show(&self, ui: &mut Ui, cx: &Cx<'_>, read: impl Fn(&str) -> Result<(), Refusal>) -> Option<String> {
        let unit = if self.kind == Kind::Duration { "" } else { cx.style.units.of(self.kind).symbol };
        let text = |value: f64| typed(value, self.kind, cx.style);
        // A default is offered as its figure is printed: to sensible digits, and none that are not there.
        let offered = |value: f64| {
            let (whole, printed) = (text(value), print(value, self.kind, cx.style).number);
            if printed.len() < whole.len() && self.kind != Kind::Duration { printed } else { whole }
        };
        let field = Entry {
            default: self.default.map(offered),
            unit,
            width: self.width,
            right: true,
            large: self.large,
            ..Entry::new(self.id, self.name, self.now.map(text).unwrap_or_default())
        };
        entry(ui, &field, &cx.tokens, |text| if text.is_empty() { Ok(()) } else { read(text) })
    }
}

/// A number as it stands in a field: to the last digit in the kind's own unit, finely in any other.
#[must_use]
pub fn typed(value: f64, kind: Kind, style: &Style) -> String {
    if kind == Kind::Duration {
        return print(value, kind, style).to_string();
    }
    let own = style.units.of(kind).symbol == kind.units()[0].symbol;
    if own {
        let rounded = (value * 1e6).round() / 1e6;
        let text = if rounded.abs() < 1e15 { format!("{rounded}") } else { format!("{value}") };
        return text.replace('-', "\u{2212}");
    }
    print(value, kind, &style.finer()).number
}

/// Why an entry was refused, with its readings.
#[must_use]
pub fn refusal(error: crate::quantity::EntryError) -> Refusal {
    let readings = error.readings.iter().map(|reading| (reading.says.clone(), reading.text.clone())).collect();
    Refusal { says: error.to_string(), readings }
}

/// A field for a number. `Some(None)` wishes for the default.
pub fn number(ui: &mut Ui, cx: &Cx<'_>, field: &Number<'_>) -> Option<Option<Finite>> {
    signed(ui, cx, field, false)
}

/// The same where a number below nought has a meaning.
pub fn signed(ui: &mut Ui, cx: &Cx<'_>, field: &Number<'_>, signed: bool) -> Option<Option<Finite>> {
    let habits = Habits { signed, ..cx.habits() };
    let text = field.show(ui, cx, |text| parse(text, field.kind, &habits).map(drop).map_err(refusal))?;
    Some(parse(&text, field.kind, &habits).ok().and_then(|parsed| Finite::new(parsed.value)))
}

/// A field for weighed grams.
pub fn grams(ui: &mut Ui, cx: &Cx<'_>, field: &Number<'_>) -> Option<Option<Grams>> {
    let habits = cx.habits();
    let text = field.show(ui, cx, |text| parse_grams(text, &habits).map(drop).map_err(refusal))?;
    Some(parse_grams(&text, &habits).ok())
}

/// A field for money.
pub fn money(ui: &mut Ui, cx: &Cx<'_>, field: &Number<'_>) -> Option<Option<Money>> {
    let habits = Habits { signed: true, ..cx.habits() };
    let text = field.show(ui, cx, |text| parse_money(text, &habits).map(drop).map_err(refusal))?;
    Some(parse_money(&text, &habits).ok())
}

/// A field for a count of things, at least one.
pub fn count(ui: &mut Ui, cx: &Cx<'_>, field: &Number<'_>) -> Option<Option<u32>> {
    let found = number(ui, cx, field)?;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count is whole and within what the kind allows")]
    Some(found.map(|count| count.get().clamp(0.0, f64::from(u32::MAX)) as u32))
}

/// A field for seconds: a bare number is taken for them, and any other time is turned into them. What stands in the field is in seconds too.
pub fn seconds(ui: &mut Ui, cx: &Cx<'_>, field: &Number<'_>) -> Option<Option<Finite>> {
    let habits = cx.habits();
    let read = |text: &str| {
        // A bare number would be minutes in any other field for a time.
        let bare = text.chars().all(|sign| sign.is_ascii_digit() || matches!(sign, '.' | ',' | ' '));
        parse(&if bare { format!("{text} s") } else { text.to_owned() }, Kind::Duration, &habits)
    };
    let shown = field.now.map(|seconds| typed(seconds, Kind::Count, cx.style)).unwrap_or_default();
    let place = Entry { unit: "s", width: field.width, right: true, ..Entry::new(field.id, field.name, shown) };
    let text = entry(ui, &place, &cx.tokens, |text| if text.is_empty() { Ok(()) } else { read(text).map(drop).map_err(refusal) })?;
    // To the microsecond, so that 2.8 s come back as 2.8 and not as their sixtieth times sixty.
    Some(read(&text).ok().and_then(|parsed| Finite::new((parsed.value * 60.0 * 1e6).round() / 1e6)))
}
