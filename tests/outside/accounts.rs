//! Clients' own metal, repairs and marks: worked by hand in exact fractions, by a published alloying problem, and by what assay offices publish.

use jiff::civil::date;
use pourbook::calc::marking::{MarkAsked, asked};
use pourbook::job::{
    Entry, Event, FlaskId, LineId, LotId, MeltId, MetalKind, PieceId, PouredAs, Receipt, RecordId, Rework, ReworkBy, Size,
};
use pourbook::stock::{Alloy, Element, MarkingLaw, Shelf};

use super::table::{Table, Within};
use super::world::{Outcome, World, draw, grams, lot, said, some};

fn piece(number: u32) -> PieceId {
    PieceId { line: LineId(1), number }
}

fn happened(world: &mut World, events: Vec<Event>) {
    let at = Some(date(2026, 11, 25).at(10, 0, 0, 0));
    world.job.record = (1..).zip(events).map(|(id, event)| Entry { id: RecordId(id), at, event, ..Entry::default() }).collect();
}

fn poured() -> Event {
    Event::Poured { flask: FlaskId(1), plan: Default::default(), done: PouredAs::default() }
}

fn weighs(number: u32, weight: &str) -> Event {
    Event::PieceWeighed { piece: piece(number), finished: false, grams: grams(weight), after: None }
}

/// A client's scrap of 586 ‰ and 8.15 g of the studio's of 585 ‰, in one melt: 20 g.
fn own_gold(events: Vec<Event>) -> World {
    let mut world = World::sound();
    world.line().alloy = some("gold-14k-yellow");
    world.job.orders[0].client = "H".to_owned();
    world.job.orders[0].agreed_loss = said(0.03);
    let mut theirs = lot("H-1", "gold-14k-yellow");
    (theirs.owner, theirs.metal, theirs.fineness_permille) = ("H".to_owned(), "Au".to_owned(), said(586.0));
    theirs.receipts = vec![Receipt { grams: grams("11.85"), ..Receipt::default() }];
    let mut ours = lot("G-2", "gold-14k-yellow");
    (ours.metal, ours.fineness_permille) = ("Au".to_owned(), said(585.0));
    ours.receipts = vec![Receipt { grams: grams("60"), ..Receipt::default() }];
    world.studio.lots = vec![theirs, ours];
    world.melt().charge = vec![draw("H-1", "11.85"), draw("G-2", "8.15")];
    happened(&mut world, events);
    world
}

fn account(world: &World) -> (Outcome, pourbook::calc::ClientAccount) {
    let outcome = world.recompute();
    let account = outcome.report.client_accounts[0].clone();
    (outcome, account)
}

/// By hand, in thousandths of a milligram of fine gold: the melt holds 11.85·586 + 8.15·585 = 11 711.85 in 20 g, which is 585.5925 ‰.
/// Castings of 3.40 and 3.20 g hold 3.8649105 g, three hundredths of that is 0.115947315 g, sprues of 12.10 g hold 7.08566925 g, and
/// 6.9441 g came in. What a statement of casting for others comes to is common practice, no source.
#[test]
fn a_clients_account_comes_to_what_is_worked_by_hand() {
    let pieces = pieces_of(&World::sound());
    let mut events = vec![poured(), weighs(1, "3.40"), weighs(2, "3.20")];
    events.extend((3..=pieces).map(|number| Event::Rejected { piece: piece(number), defect: "no-fill".to_owned() }));
    events.push(Event::HandedBack { client: "H".to_owned(), melt: Some(MeltId(1)), lot: None, grams: grams("12.10") });
    let world = own_gold(events);
    let (outcome, account) = account(&world);
    let mut table = Table::default();
    let hand = "by hand, exact fractions";
    for (figure, id, expected) in [
        ("deposit", account.deposit, 6.9441),
        ("castings", account.cast, 3.864_910_5),
        ("handed back", account.back, 7.085_669_25),
        ("loss agreed", account.loss, 0.115_947_315),
        ("balance", account.balance, 6.9441 - 3.864_910_5 - 7.085_669_25 - 0.115_947_315),
    ] {
        table.row(figure, hand, expected, outcome.number(id), Within::Amount(1e-6));
    }
    table.judge(1);
    assert_eq!((account.client.as_str(), account.metal.as_str(), account.castings.len()), ("H", "Au", 2));
}

fn pieces_of(world: &World) -> u32 {
    world.job.orders[0].lines[0].quantity
}

#[test]
fn what_was_not_weighed_leaves_the_account_open_and_what_was_not_poured_is_not_in_it() {
    let (outcome, account) = account(&own_gold(vec![weighs(1, "3.40")]));
    assert_eq!(outcome.number(account.cast), 0.0, "nothing was poured");
    assert!((outcome.number(account.balance) - 6.9441).abs() < 1e-9);
    let (outcome, account) = self::account(&own_gold(vec![poured(), weighs(1, "3.40")]));
    assert!(outcome.book.number(account.balance).is_none(), "the others were not weighed");
    assert_eq!(outcome.roots(account.balance)[0], "client.casting");
    // All of a flask on the scale at once.
    let together = Event::Metal { melt: None, flask: Some(FlaskId(1)), what: MetalKind::GoodPieces, grams: grams("6.60") };
    let (outcome, account) = self::account(&own_gold(vec![poured(), together]));
    assert!((outcome.number(account.cast) - 3.864_910_5).abs() < 1e-6);
    // Solder that a repair added is the studio's: what was cast is what it weighed before.
    let rework = Rework { by: ReworkBy::Solder, added: Some(grams("0.30")), added_permille: said(400.0), ..Rework::default() };
    let pieces = pieces_of(&World::sound());
    let mut events = vec![poured(), weighs(1, "6.60")];
    events.extend((2..=pieces).map(|number| Event::Rejected { piece: piece(number), defect: "no-fill".to_owned() }));
    events.extend([Event::Reworked { piece: piece(1), rework }, weighs(1, "6.90")]);
    let (outcome, account) = self::account(&own_gold(events));
    assert!((outcome.number(account.cast) - 3.864_910_5).abs() < 1e-6);
}

#[test]
fn metal_handed_back_as_it_came_is_drawn_from_its_lot() {
    let back =
        |weight: &str| Event::HandedBack { client: "H".to_owned(), melt: None, lot: Some(LotId("H-1".to_owned())), grams: grams(weight) };
    let mut world = own_gold(vec![back("5.00")]);
    world.melt().charge = vec![draw("H-1", "6.85"), draw("G-2", "13.15")];
    let (outcome, account) = account(&world);
    assert!((outcome.number(account.back) - 2.93).abs() < 1e-9, "5 g of 586 ‰");
    assert!(!outcome.keys().contains(&"lot-short"));
    world.job.record[0].event = back("5.01");
    assert!(world.recompute().keys().contains(&"lot-short"), "more than ever came in");
}

/// 25 dwt of 14 karat and 10 dwt of metal without gold make 10 karat: the worked problem of the trade's textbooks (25 dwt 14→10 k: 10 dwt), as
/// supply houses print it. A repair mixes by the same rule, whatever is joined.
#[test]
fn a_repair_mixes_as_alloys_do() {
    let mut world = World::sound();
    world.line().alloy = some("gold-14k-yellow");
    world.studio.lots.clear();
    world.melt().charge.clear();
    let rework = Rework { by: ReworkBy::Solder, added: Some(grams("10")), added_permille: said(0.0), ..Rework::default() };
    happened(&mut world, vec![weighs(1, "25"), Event::Reworked { piece: piece(1), rework }]);
    let outcome = world.recompute();
    let found = &outcome.report.reworks[0];
    let own = Shelf::shipped().get::<Alloy>("gold-14k-yellow").unwrap().composition.of(Element::Au).get();
    let mut table = Table::default();
    let ten_karat = own * 10.0 / 14.0;
    table.row(
        "14 k with 10 parts in 35 joined",
        "textbook problem, 25 dwt from 14 to 10 k",
        ten_karat,
        outcome.number(found.fineness.unwrap()),
        Within::Amount(1e-6),
    );
    table.row("its weight", "by hand", 35.0, outcome.number(found.after), Within::Amount(1e-9));
    table.judge(1);
}

#[test]
fn a_weld_of_its_own_wire_lowers_nothing_and_solder_of_nobody_knows_what_is_not_known() {
    let fineness = |rework: Rework| {
        let mut world = World::sound();
        happened(&mut world, vec![weighs(1, "4.00"), Event::Reworked { piece: piece(1), rework }]);
        let outcome = world.recompute();
        outcome.report.reworks[0].fineness.map(|id| outcome.book.number(id))
    };
    let weld = Rework { added: Some(grams("0.20")), ..Rework::default() };
    assert_eq!(fineness(weld.clone()), Some(Some(925.0)));
    assert_eq!(fineness(Rework { by: ReworkBy::Solder, ..weld }), Some(None), "its solder was not said");
    assert_eq!(fineness(Rework { size: Some(Size::Free("55".to_owned())), by: ReworkBy::Stretch, ..Rework::default() }), None);
    // 0.5 g cut out, 0.5 g of 650 ‰ put in: (3.5·925 + 0.5·650)/4.
    let patched = Rework {
        by: ReworkBy::Solder,
        taken: Some(grams("0.50")),
        added: Some(grams("0.50")),
        added_permille: said(650.0),
        ..Rework::default()
    };
    assert_eq!(fineness(patched), Some(Some(890.625)));
}

/// Weights by the country profiles of the Hallmarking Convention (hallmarkingconvention.org/en/country-profile/united-kingdom: 0.5 g, 1 g, 1 g,
/// 7.78 g for platinum, gold, palladium, silver; /ireland: none; /finland: voluntary, 1 g, 1 g, 1 g, 10 g), the bound “less than” by an assay
/// office's course (United Kingdom), “igual ou inferior” by Law 98/2015, article 9 (Portugal).
#[test]
fn marks_are_asked_for_as_the_assay_offices_publish() {
    let law = |id: &str| Shelf::shipped().get::<MarkingLaw>(id).unwrap().clone();
    let of = |id: &str, metal, weight: f64| asked(&law(id), Some(metal), Some(weight));
    for (metal, light) in [(Element::Pt, 0.5), (Element::Au, 1.0), (Element::Pd, 1.0), (Element::Ag, 7.78)] {
        assert_eq!(of("marking-uk", metal, light - 0.01), MarkAsked::Exempt, "{metal:?}");
        assert_eq!(of("marking-uk", metal, light), MarkAsked::Needed, "less than, {metal:?}");
        assert_eq!(of("marking-ireland", metal, 0.1), MarkAsked::Needed, "no exemption by weight");
        assert_eq!(of("marking-finland", metal, 100.0), MarkAsked::Nothing, "voluntary");
    }
    assert_eq!(of("marking-portugal", Element::Ag, 2.0), MarkAsked::Exempt, "up to");
    assert_eq!(of("marking-portugal", Element::Ag, 2.01), MarkAsked::Needed);
    assert_eq!(asked(&law("marking-uk"), Some(Element::Ag), None), MarkAsked::NotWeighed);
    assert_eq!(asked(&law("marking-uk"), None, Some(9.0)), MarkAsked::Nothing, "no precious metal");
    // 958.4 is struck as 958; Portugal's list was not read, so nothing is called illegal there.
    assert!(law("marking-uk").is_legal(Element::Ag, 958.4) && !law("marking-uk").is_legal(Element::Ag, 835.0));
    assert!(law("marking-portugal").is_legal(Element::Ag, 835.0));
}

#[test]
fn silver_alloyed_into_a_clients_gold_makes_no_castings_of_silver() {
    let mut world = own_gold(vec![poured(), weighs(1, "6.60")]);
    let pieces = pieces_of(&world);
    let next = world.job.record.len() as u32 + 1;
    world.job.record.extend((next..).zip(2..=pieces).map(|(id, number)| Entry {
        id: RecordId(id),
        event: Event::Rejected { piece: piece(number), defect: "no-fill".to_owned() },
        ..Entry::default()
    }));
    let mut silver = lot("H-2", "silver-925");
    (silver.owner, silver.metal, silver.fineness_permille) = ("H".to_owned(), "Ag".to_owned(), said(999.0));
    silver.receipts = vec![Receipt { grams: grams("5"), ..Receipt::default() }];
    world.studio.lots.push(silver);
    world.melt().charge.push(draw("H-2", "1.00"));
    let outcome = world.recompute();
    let cast: Vec<(&str, usize)> =
        outcome.report.client_accounts.iter().map(|account| (account.metal.as_str(), account.castings.len())).collect();
    assert_eq!(cast, [("Ag", 0), ("Au", 1)]);
}

#[test]
fn what_is_rejected_after_the_flask_was_weighed_leaves_its_castings_open() {
    let together = Event::Metal { melt: None, flask: Some(FlaskId(1)), what: MetalKind::GoodPieces, grams: grams("6.60") };
    let rejected = Event::Rejected { piece: piece(1), defect: "porosity".to_owned() };
    let cast = |events: Vec<Event>| {
        let (outcome, account) = account(&own_gold(events));
        outcome.book.number(account.cast)
    };
    assert!(cast(vec![poured(), rejected.clone(), together.clone()]).is_some(), "it was not on the scale");
    assert_eq!(cast(vec![poured(), together, rejected]), None, "it was");
}

/// A ring under the exemption that metal was added to has to be weighed again before anything is said of it; one that was stretched has not.
#[test]
fn a_piece_that_grew_is_weighed_again() {
    use pourbook::calc::PieceWeights;
    let weight = |rework: Rework| {
        let mut world = World::sound();
        happened(&mut world, vec![weighs(1, "0.95"), Event::Reworked { piece: piece(1), rework }]);
        let weights = PieceWeights::of(&world.job);
        (weights.cast(piece(1)), weights.now(piece(1)))
    };
    assert_eq!(weight(Rework { added: Some(grams("0.12")), ..Rework::default() }), (Some(grams("0.95")), None));
    assert_eq!(weight(Rework { by: ReworkBy::Stretch, ..Rework::default() }), (Some(grams("0.95")), Some(grams("0.95"))));
    let law = Shelf::shipped().get::<MarkingLaw>("marking-netherlands").unwrap();
    assert_eq!(asked(law, Some(Element::Pd), Some(9.0)), MarkAsked::Nothing, "voluntary for palladium there");
    assert_eq!(asked(law, Some(Element::Ag), Some(9.0)), MarkAsked::Needed);
}
