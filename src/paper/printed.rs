//! The sorts of paper there are, and a document of each as text, as set pages and as a PDF.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::block::{Paper, Raster};
use super::desk::{Desk, SheetInput};
use super::layout::{Format, Laid, lay_out};
use super::pdf::{About, PdfError, pdf};
use super::words::one_line;
use super::{account, kiln, parcel, quote, receipt, set, sheet, slip, what_now};
use crate::job::PatternId;
use crate::quantity::Style;
use crate::texts::{Language, Texts};

/// A sort of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
pub enum Sort {
    /// What stands on the bench, a page a flask.
    #[default]
    Bench,
    /// What hangs at the kiln, a page a load.
    Kiln,
    /// What a client is offered.
    Quote,
    /// What goes through the shop with an order's pieces.
    Slip,
    /// What a client gets for metal they brought.
    Receipt,
    /// What a client's own metal came to.
    Account,
    /// What lies in a parcel that leaves the house.
    Parcel,
    /// What hangs by the bench for when something goes wrong, a page a card.
    WhatNow,
}

impl Sort {
    /// All, in the order of the work.
    pub const ALL: [Self; 8] =
        [Self::Bench, Self::Kiln, Self::Quote, Self::Slip, Self::Receipt, Self::Account, Self::Parcel, Self::WhatNow];

    /// The key of its name.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Bench => "sort-bench",
            Self::Kiln => "sort-kiln",
            Self::Quote => "sort-quote",
            Self::Slip => "sort-slip",
            Self::Receipt => "sort-receipt",
            Self::Account => "sort-account",
            Self::Parcel => "sort-parcel",
            Self::WhatNow => "sort-what-now",
        }
    }

    /// The key of what is said where there is none to print.
    #[must_use]
    pub const fn none_key(self) -> &'static str {
        match self {
            Self::Bench => "sheet-none",
            Self::Kiln => "kiln-none",
            Self::Quote => "quote-none",
            Self::Slip => "slip-none",
            Self::Receipt => "receipt-none",
            Self::Account => "account-none",
            Self::Parcel => "parcel-none",
            Self::WhatNow => "what-now-none",
        }
    }

    /// A word for file names.
    #[must_use]
    pub const fn stem(self) -> &'static str {
        match self {
            Self::Bench => "sheet",
            Self::Kiln => "kiln",
            Self::Quote => "quote",
            Self::Slip => "slip",
            Self::Receipt => "receipt",
            Self::Account => "account",
            Self::Parcel => "parcel",
            Self::WhatNow => "what-now",
        }
    }

    /// Does it leave the house?
    #[must_use]
    pub const fn goes_out(self) -> bool {
        matches!(self, Self::Quote | Self::Receipt | Self::Account | Self::Parcel)
    }
}

/// How a sheet is dressed: its paper, its language, its units.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Dress {
    /// The paper.
    pub format: Format,
    /// The language.
    pub language: Language,
    /// Inches, pennyweights and °F instead of metric units.
    pub trade_units: bool,
    /// Comma for the decimal mark.
    pub comma: bool,
}

impl Dress {
    /// The sentences.
    #[must_use]
    pub fn texts(&self) -> &'static Texts {
        Texts::of(self.language)
    }

    /// Units and digits.
    #[must_use]
    pub fn style(&self) -> Style {
        Style { comma: self.comma, ..if self.trade_units { Style::TRADE } else { Style::METRIC } }
    }
}

/// Pictures that stand on paper.
#[derive(Debug, Clone, Default)]
pub struct Pictures {
    /// Of patterns, from their files.
    pub patterns: BTreeMap<PatternId, Arc<Raster>>,
    /// Of the studio, for its letterhead.
    pub letterhead: Option<Arc<Raster>>,
    /// What could not be read, a sentence each.
    pub complaints: Vec<String>,
}

impl Pictures {
    /// None at all.
    pub const NONE: Self = Self { patterns: BTreeMap::new(), letterhead: None, complaints: Vec::new() };
}

/// A document to print.
#[derive(Debug, Clone, PartialEq)]
pub struct Printed {
    /// Whose it is, by letter code; empty where it is the studio's own.
    pub client: String,
    /// What tells it from others of its sort in the name of a file: letters, digits and `-`.
    pub name: String,
    /// The document.
    pub paper: Paper,
}

/// Every document of a sort. What is for a client stands in a document of its own.
#[must_use]
pub fn papers(input: &SheetInput<'_>, sort: Sort) -> Vec<Printed> {
    let desk = Desk::new(input);
    let own = |paper: Paper| {
        if paper.pages.is_empty() { Vec::new() } else { vec![Printed { client: String::new(), name: String::new(), paper }] }
    };
    match sort {
        Sort::Bench if input.job.flasks.is_empty() && input.job.orders.is_empty() => Vec::new(),
        Sort::Bench => own(sheet::bench_sheet(input)),
        Sort::Kiln => {
            let title = desk.title(Sort::Kiln, "");
            own(Paper { title, pages: kiln::kiln_pages(&desk), ..desk.paper(desk.label("sheet-foot")) })
        }
        Sort::Quote => {
            let number = |id: Option<crate::job::QuoteId>| id.map_or_else(String::new, |id| id.to_string());
            named(quote::quote_papers(input).into_iter().map(|one| (one.client, number(one.quote), one.paper)))
        }
        Sort::Slip => named(input.job.orders.iter().filter(|order| !order.lines.is_empty()).map(|order| {
            let client = one_line(&order.client);
            let title = desk.title(Sort::Slip, &client);
            let paper = Paper { title, pages: vec![slip::slip_page(&desk, order)], ..desk.paper_for(&client, desk.label("slip-foot")) };
            (client, order.id.to_string(), paper)
        })),
        Sort::Receipt => named(receipt::owners(&desk).into_iter().map(|client| {
            let title = desk.title(Sort::Receipt, &client);
            let pages = vec![receipt::receipt_page(&desk, &client)];
            let letterhead = Some(desk.letterhead());
            let paper = Paper { title, letterhead, pages, ..desk.studio_paper(&client, desk.label("receipt-foot")) };
            (client, String::new(), paper)
        })),
        Sort::Account => named(account::owners(&desk).into_iter().map(|client| {
            let title = desk.title(Sort::Account, &client);
            let pages = vec![account::account_page(&desk, &client)];
            let letterhead = Some(desk.letterhead());
            let paper = Paper { title, letterhead, pages, ..desk.paper_for(&client, desk.label("account-foot")) };
            (client, String::new(), paper)
        })),
        // A parcel is nobody's but the workshop's it goes to: it names no client.
        Sort::Parcel => named(parcel::parcels(&desk).into_iter().map(|parcel| {
            let title = desk.say("parcel-of", &[("to", desk.text(&parcel.sent.to).into())]);
            let pages = vec![parcel::parcel_page(&desk, &parcel)];
            let letterhead = Some(desk.letterhead());
            let paper = Paper { title, letterhead, pages, ..desk.paper_for("", desk.label("parcel-foot")) };
            (String::new(), parcel.entry.id.to_string(), paper)
        })),
        Sort::WhatNow => {
            let title = desk.title(Sort::WhatNow, "");
            own(Paper { title, pages: what_now::card_pages(&desk), ..desk.paper(desk.label("sheet-foot")) })
        }
    }
}

/// What a document is called in the name of a file: whose it is and its number.
#[must_use]
pub fn document_name(client: &str, number: &str) -> String {
    let plain: String = format!("{client}-{number}").chars().map(|sign| if sign.is_alphanumeric() { sign } else { '-' }).collect();
    let plain = plain.trim_matches('-');
    if plain.is_empty() { "1".to_owned() } else { plain.to_owned() }
}

/// Documents with names that differ.
fn named(all: impl Iterator<Item = (String, String, Paper)>) -> Vec<Printed> {
    let mut taken = std::collections::BTreeSet::new();
    all.map(|(client, number, paper)| {
        let plain = document_name(&client, &number);
        let mut name = plain.clone();
        let mut next = 2_u32;
        while !taken.insert(name.to_lowercase()) {
            name = format!("{plain}-{next}");
            next += 1;
        }
        Printed { client, name, paper }
    })
    .collect()
}

/// Documents as plain text: lines of at most 100 columns, form feeds between sheets of paper.
#[must_use]
pub fn as_text(printed: &[Printed], sort: Sort, texts: &Texts) -> String {
    if printed.is_empty() {
        return format!("{}\n", texts.label(sort.none_key()));
    }
    printed.iter().map(|one| set::set(&one.paper, texts)).collect::<Vec<_>>().join("\u{c}")
}

/// A document set on pages.
#[must_use]
pub fn as_pages(printed: &Printed, format: Format, texts: &Texts) -> Laid {
    lay_out(&printed.paper, format, texts)
}

/// A document as a PDF.
///
/// # Errors
/// [`PdfError`] where it holds what no PDF may.
pub fn as_pdf(printed: &Printed, format: Format, input: &SheetInput<'_>) -> Result<Vec<u8>, PdfError> {
    let author = one_line(&input.studio.name);
    let about = About { language: input.texts.language().code(), author: &author, on: input.setting.at };
    pdf(&as_pages(printed, format, input.texts), &about)
}
