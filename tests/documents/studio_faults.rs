//! What cannot be in a studio's file, what clients are told and what was written down: told with its field, and left out of what is computed.

use jiff::civil::date;
use pourbook::job::check::{Wrong, mend, mend_studio};
use pourbook::job::{
    Accepted, Centrifuge, Entry, Equipment, Event, Extra, Flask, FlaskId, Hung, InvestedAs, Job, Line, LineId, Lot, LotId, Making,
    MaterialLot, MetalKind, Mould, Order, OrderId, Pattern, PatternId, PieceId, Place, Price, PriceUnit, Quote, QuoteId, QuoteState,
    Receipt, RecordId, SprueRun, Studio, Tree, TreeId, WaterWeighing,
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
        ("usual_tree.main_diameter_mm", |s| s.usual_tree.main_diameter_mm = number(0.0), |s| s.usual_tree.main_diameter_mm.is_none()),
        ("usual_tree.feed_diameter_mm", |s| s.usual_tree.feed_diameter_mm = number(-3.0), |s| s.usual_tree.feed_diameter_mm.is_none()),
        ("usual_tree.feed_length_mm", |s| s.usual_tree.feed_length_mm = number(9e9), |s| s.usual_tree.feed_length_mm.is_none()),
        ("usual_tree.feed_angle_deg", |s| s.usual_tree.feed_angle_deg = number(400.0), |s| s.usual_tree.feed_angle_deg.is_none()),
        ("usual_tree.gap_mm", |s| s.usual_tree.gap_mm = number(-1.0), |s| s.usual_tree.gap_mm.is_none()),
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
            "moulds.reject_share",
            |s| s.moulds.push(Mould { reject_share: number(1.0), ..Mould::default() }),
            |s| s.moulds[0].reject_share.is_none(),
        ),
        (
            "water_weighings.dry",
            |s| s.water_weighings.push(WaterWeighing { dry: Some(grams("0")), ..WaterWeighing::default() }),
            |s| s.water_weighings[0].dry.is_none(),
        ),
        (
            "water_weighings.water_c",
            |s| s.water_weighings.push(WaterWeighing { water_c: number(41.0), ..WaterWeighing::default() }),
            |s| s.water_weighings[0].water_c.is_none(),
        ),
        // No lighter in water than in air: a scale was misread.
        (
            "water_weighings.both_in_water",
            |s| {
                let [dry, sinker_in_water, both_in_water] = ["10", "20", "30"].map(|text| Some(grams(text)));
                s.water_weighings.push(WaterWeighing { dry, sinker_in_water, both_in_water, ..WaterWeighing::default() });
            },
            |s| s.water_weighings[0].both_in_water.is_none(),
        ),
        (
            "centrifuges.most_rpm",
            |s| s.centrifuges.push(Centrifuge { most_rpm: number(0.0), ..Centrifuge::default() }),
            |s| s.centrifuges[0].most_rpm.is_none(),
        ),
        (
            "centrifuges.counterweight_mm",
            |s| s.centrifuges.push(Centrifuge { counterweight_mm: number(-200.0), ..Centrifuge::default() }),
            |s| s.centrifuges[0].counterweight_mm.is_none(),
        ),
        (
            "centrifuges.heaviest",
            |s| s.centrifuges.push(Centrifuge { heaviest: Some(grams("0")), ..Centrifuge::default() }),
            |s| s.centrifuges[0].heaviest.is_none(),
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
            entry(3, Event::Invested { flask: FlaskId(1), plan: Default::default(), done }),
        ],
        flasks: vec![Flask { id: FlaskId(1), ..Flask::default() }],
        ..Job::default()
    };
    let (mended, faults) = mend(&job);
    let told: Vec<&str> = faults.iter().map(|fault| fault.field).collect();
    assert_eq!(told, ["sprues.count", "tax", "extras.minutes", "event.grams", "event.done.water_c"]);
    assert_eq!(mended.quotes[0].extras[0].amount, Some(money("-10")), "a discount is no fault");
    assert_eq!(mended.record.len(), 2);
    assert_eq!(mend(&mended), (mended, Vec::new()));
}

/// Two orders of two clients, one piece each.
fn two_orders() -> Job {
    let order = |id, client: &str| Order {
        id: OrderId(id),
        client: client.to_owned(),
        lines: vec![Line { id: LineId(id), quantity: 1, ..Line::default() }],
        ..Order::default()
    };
    Job { orders: vec![order(1, "A"), order(2, "B")], ..Job::default() }
}

fn told(job: &Job) -> Vec<String> {
    let (mended, faults) = mend(job);
    assert_eq!(mend(&mended), (mended, Vec::new()), "mended once and for all");
    faults.iter().map(ToString::to_string).collect()
}

#[test]
fn a_quote_points_at_its_own_clients_orders_and_at_lines_that_are_there() {
    let quote = |orders: &[u32]| Quote {
        id: QuoteId(1),
        client: "A".to_owned(),
        orders: orders.iter().copied().map(OrderId).collect(),
        ..Quote::default()
    };
    let with = |quote| Job { quotes: vec![quote], ..two_orders() };
    assert_eq!(told(&with(quote(&[1]))), [""; 0]);
    assert_eq!(
        told(&with(quote(&[1, 2]))),
        ["quote/1, orders: order 2 is not an order of A; a client's quote covers their own orders only"]
    );
    assert_eq!(told(&with(quote(&[1, 7]))), ["quote/1, orders: it points at order/7, which is not in this job"]);
    // Without an order left, a draft would cover all of the client's orders, which nobody said.
    assert!(mend(&with(quote(&[2]))).0.quotes.is_empty());
    let extra = Extra { line: Some(LineId(9)), amount: Some(money("5")), ..Extra::default() };
    let job = with(Quote { extras: vec![extra], ..quote(&[]) });
    assert_eq!(told(&job), ["quote/1, extras.line: it points at line/9, which is not in this job"]);
    assert_eq!(mend(&job).0.quotes[0].extras[0].line, None, "what it is for is still owed");
    let job = with(Quote { state: QuoteState::Superseded { by: QuoteId(3), sent: None }, ..quote(&[]) });
    assert_eq!(told(&job), ["quote/1, state: it points at quote/3, which is not in this job"]);
}

#[test]
fn the_record_and_what_is_answered_for_point_at_what_is_there() {
    let entry = |id, event| Entry { id: RecordId(id), event, ..Entry::default() };
    let rejected = |line, number| Event::Rejected { piece: PieceId { line: LineId(line), number }, defect: String::new() };
    let recorded = |record: Vec<Entry>| Job { record, ..two_orders() };
    assert_eq!(told(&recorded(vec![entry(1, rejected(2, 1))])), [""; 0]);
    assert_eq!(told(&recorded(vec![entry(1, rejected(2, 2))])), ["record/1, event: it points at line/2/piece/2, which is not in this job"]);
    let withdrawn = |of| Event::Withdrawn { entry: RecordId(of), reason: String::new() };
    assert_eq!(told(&recorded(vec![entry(1, rejected(2, 2)), entry(2, withdrawn(1))])), [""; 0], "withdrawn, it says nothing any more");
    assert_eq!(told(&recorded(vec![entry(2, withdrawn(1))])), ["record/2, event: it points at record/1, which is not in this job"]);
    // An entry that takes back what took back nothing takes back nothing either, and only the first is at fault.
    let chain = vec![entry(4, withdrawn(9)), entry(5, withdrawn(4)), entry(6, withdrawn(5))];
    assert_eq!(told(&recorded(chain)), ["record/4, event: it points at record/9, which is not in this job"]);
    let accepted = |place| Job { accepted: vec![Accepted { place, ..Accepted::default() }], ..two_orders() };
    assert_eq!(told(&accepted(Place::Line(LineId(2)))), [""; 0]);
    assert_eq!(told(&accepted(Place::Flask(FlaskId(4)))), ["job, accepted.place: it points at flask/4, which is not in this job"]);
}

#[test]
fn numbers_of_pieces_patterns_and_moulds_are_looked_at() {
    let tree = Tree {
        id: TreeId(1),
        pieces: vec![Hung { line: LineId(1), around_deg: number(7e5), tier: Some(0), ..Hung::default() }],
        ..Tree::default()
    };
    let making = Some(Making { labour_min: number(-5.0), waste_share: number(-0.5) });
    let job = Job {
        trees: vec![tree],
        patterns: vec![Pattern { id: PatternId(1), making, ..Pattern::default() }],
        flasks: vec![Flask { id: FlaskId(1), mould_c: number(-5.0), metal_c: number(60.0), ..Flask::default() }],
        ..two_orders()
    };
    let fields: Vec<&str> = mend(&job).1.iter().map(|fault| fault.field).collect();
    assert_eq!(fields, ["making.labour_min", "making.waste_share", "pieces.around_deg", "pieces.tier", "metal_c", "mould_c"]);
}
