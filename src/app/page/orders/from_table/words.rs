//! What columns are called, and what is wrong with a row, in words.

use crate::app::cx::Cx;
use crate::app::names;
use crate::files::order_table::{Caution, CellAt, Reason, Role};
use crate::paper::words::{date_words, one_line};
use crate::stock::EntryId;

/// What a column may be, as it is offered.
pub const ROLES: [Role; 12] = [
    Role::Ignored,
    Role::Client,
    Role::Reference,
    Role::Design,
    Role::Quantity,
    Role::Alloy,
    Role::Size,
    Role::Due,
    Role::Taken,
    Role::Price,
    Role::PatternFile,
    Role::Notes,
];

/// The key of what a column is.
pub const fn role_key(role: Role) -> &'static str {
    match role {
        Role::Client => "table-role-client",
        Role::Design => "table-role-design",
        Role::Quantity => "table-role-quantity",
        Role::Alloy => "table-role-alloy",
        Role::Size => "table-role-size",
        Role::Due => "table-role-due",
        Role::Taken => "table-role-taken",
        Role::Reference => "table-role-reference",
        Role::Price => "table-role-price",
        Role::Notes => "table-role-notes",
        Role::PatternFile => "table-role-file",
        Role::Ignored => "table-role-ignored",
    }
}

/// Why a row cannot be taken in.
pub fn reason(cx: &Cx<'_>, reason: &Reason) -> String {
    let cell = |key: &str, cell: &CellAt| cx.say(key, &[("cell", one_line(&cell.text).into())]);
    match reason {
        Reason::NoClient { .. } => cx.label("table-row-no-client"),
        Reason::NoDesign { .. } => cx.label("table-row-no-design"),
        Reason::NoQuantity { .. } => cx.label("table-row-no-quantity"),
        Reason::NotANumber(at) => cell("table-row-no-number", at),
        Reason::AmbiguousNumber { cell: at, readings } => cx.say(
            "table-row-two-numbers",
            &[("cell", one_line(&at.text).into()), ("one", (&readings[0]).into()), ("other", (&readings[1]).into())],
        ),
        Reason::QuantityNotWhole(at) => cell("table-row-not-whole", at),
        Reason::QuantityZero(at) => cell("table-row-zero", at),
        Reason::QuantityNegative(at) => cell("table-row-negative", at),
        Reason::QuantityTooLarge { cell: at, most } => {
            cx.say("table-row-too-many", &[("cell", one_line(&at.text).into()), ("most", most.to_string().into())])
        }
        Reason::UnknownAlloy { cell: at, .. } => cell("table-row-no-alloy", at),
        Reason::SeveralAlloys { cell: at, fitting } => {
            let named = fitting.iter().filter_map(|id| EntryId::new(id)).map(|id| names::entry(cx, &id)).collect::<Vec<_>>().join(", ");
            cx.say("table-row-several-alloys", &[("cell", one_line(&at.text).into()), ("alloys", named.into())])
        }
        Reason::NotADate(at) => cell("table-row-no-date", at),
        Reason::AmbiguousDate { cell: at, readings } => {
            let day = |at: usize| date_words(readings[at], cx.texts);
            cx.say("table-row-two-dates", &[("cell", one_line(&at.text).into()), ("one", day(0).into()), ("other", day(1).into())])
        }
        Reason::DateBeforeTaken { due, taken } => {
            cx.say("table-row-due-before", &[("due", date_words(*due, cx.texts).into()), ("taken", date_words(*taken, cx.texts).into())])
        }
        Reason::PriceNegative(at) => cell("table-row-price", at),
        Reason::SizeUnreadable(at) => cell("table-row-size", at),
        Reason::TooManyCells { cells, columns } => cx.say("table-row-cells", &[("cells", (*cells).into()), ("columns", (*columns).into())]),
        Reason::SpreadsheetFault(at) => cell("table-row-fault", at),
        Reason::TooLong { cell: at, most } => cx.say("table-row-long", &[("cell", one_line(&at.text).into()), ("most", (*most).into())]),
    }
}

/// What to look at in a row that can be taken in.
pub fn caution(cx: &Cx<'_>, caution: &Caution) -> String {
    match caution {
        Caution::Repeat { of_line } => cx.say("table-row-repeat", &[("line", of_line.to_string().into())]),
        Caution::DuePast => cx.label("table-row-due-past"),
        Caution::DueFarOff => cx.label("table-row-due-far"),
        Caution::TakenInFuture => cx.label("table-row-taken-later"),
    }
}
