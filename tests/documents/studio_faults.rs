//! What cannot be in a studio's file, what clients are told and what was written down: told with its field, and left out of what is computed.

use jiff::civil::date;
use pourbook::job::check::{Wrong, mend, mend_studio};
use pourbook::job::{
    Entry, Equipment, Event, Extra, InvestedAs, Job, Lot, LotId, MaterialLot, MetalKind, Place, Price, PriceUnit, Quote, QuoteId, Receipt,
    RecordId, SprueRun, Studio, Tree, TreeId,
};
use pourbook::quantity::{Finite, Grams, Money};

fn number(value: f64) -> Option<Finite> {
    Some(Finite::new(value).unwrap())
}

fn grams(text: &str) -> Grams {
    Grams::new(text.parse().unwrap()).unwrap()
}

fn money(text: &str) -> Money {
    Money::new(text.parse().unwrap()).unwrap()
}

fn price(amount: &str) -> Price {
    Price { of: "Ag".to_owned(), amount: money(amount), per: PriceUnit::TroyOunce, on: Some(date(2026, 11, 24)), note: String::new() }
}

fn lot(label: &str, received: &str) -> Lot {
    Lot { id: LotId(label.to_owned()), receipts: vec![Receipt { grams: grams(received), ..Receipt::default() }], ..Lot::default() }
}

/// One thing wrong, the field it is told with, and whether the mended studio holds it no longer.
type Case = (&'static str, fn(&mut Studio), fn(&Studio) -> bool);

#[test]
fn every_fault_of_a_studio_is_told_and_left_out() {
    let cases: &[Case] = &[
        ("prices.amount", |s| s.prices.push(price("-3")), |s| s.prices.is_empty()),
        ("prices.amount", |s| s.prices.push(price("0")), |s| s.prices.is_empty()),
        ("balance_step", |s| s.balance_step = Some(grams("0")), |s| s.balance_step.is_none()),
        ("balance_step", |s| s.balance_step = Some(grams("-0.1")), |s| s.balance_step.is_none()),
        ("bowl_cm3", |s| s.bowl_cm3 = number(-4.0), |s| s.bowl_cm3.is_none()),
        ("money.tax", |s| s.money.tax = number(20.0), |s| s.money.tax.is_none()),
        ("money.hour", |s| s.money.hour = Some(money("-1")), |s| s.money.hour.is_none()),
        ("money.metal_premium", |s| s.money.metal_premium = number(-1.0), |s| s.money.metal_premium.is_none()),
        ("site.barometer_kpa", |s| s.site.barometer_kpa = number(1013.0), |s| s.site.barometer_kpa.is_none()),
        (
            "lots.fineness_permille",
            |s| s.lots.push(Lot { fineness_permille: number(9250.0), ..lot("S", "5") }),
            |s| s.lots[0].fineness_permille.is_none(),
        ),
        ("lots.receipts.grams", |s| s.lots.push(lot("S", "-5")), |s| s.lots[0].receipts.is_empty()),
        ("lots.id", |s| s.lots.extend([lot("S", "5"), lot("S", "6")]), |s| s.lots.len() == 1),
        (
            "materials.gloss_off_min",
            |s| s.materials.push(MaterialLot { gloss_off_min: number(0.0), ..MaterialLot::default() }),
            |s| s.materials[0].gloss_off_min.is_none(),
        ),
        (
            "equipment.offset_k",
            |s| s.equipment.push(Equipment { offset_k: number(900.0), ..Equipment::default() }),
            |s| s.equipment[0].offset_k.is_none(),
        ),
    ];
    for (field, breaks, gone) in cases {
        let mut studio = Studio::default();
        breaks(&mut studio);
        let (mended, faults) = mend_studio(&studio);
        assert_eq!(faults.iter().map(|fault| fault.field).collect::<Vec<_>>(), [*field]);
        assert!(faults[0].place == Place::Studio && gone(&mended), "{field}");
        assert_eq!(mend_studio(&mended), (mended, Vec::new()), "{field} is mended once and for all");
    }
}

#[test]
fn a_label_given_twice_is_named() {
    let studio = Studio { lots: vec![lot("S-1", "5"), lot("S-1", "6")], ..Studio::default() };
    assert_eq!(mend_studio(&studio).1[0].what, Wrong::LabelTwice("S-1".to_owned()));
}

#[test]
fn absurd_sprues_quotes_and_records_are_told() {
    let entry = |id, event| Entry { id: RecordId(id), event, ..Entry::default() };
    let metal = |weight| Event::Metal { melt: None, flask: None, what: MetalKind::Beads, grams: grams(weight) };
    let done = InvestedAs { water_c: number(300.0), ..InvestedAs::default() };
    let job = Job {
        trees: vec![Tree { id: TreeId(1), sprues: vec![SprueRun { count: u32::MAX, ..SprueRun::default() }], ..Tree::default() }],
        quotes: vec![Quote {
            id: QuoteId(1),
            tax: number(19.0),
            extras: vec![Extra { minutes: number(-5.0), amount: Some(money("-10")), ..Extra::default() }],
            ..Quote::default()
        }],
        record: vec![
            entry(1, metal("-3")),
            entry(2, metal("3")),
            entry(3, Event::Invested { flask: Default::default(), plan: Default::default(), done }),
        ],
        ..Job::default()
    };
    let (mended, faults) = mend(&job);
    let told: Vec<&str> = faults.iter().map(|fault| fault.field).collect();
    assert_eq!(told, ["sprues.count", "tax", "extras.minutes", "event.grams", "event.done.water_c"]);
    assert_eq!(mended.quotes[0].extras[0].amount, Some(money("-10")), "a discount is no fault");
    assert_eq!(mended.record.len(), 2);
    assert_eq!(mend(&mended), (mended, Vec::new()));
}
