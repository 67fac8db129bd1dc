//! Random documents: anything that the types allow, sensible or not.

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::{Date, DateTime, Time};
use pourbook::job::*;
use pourbook::quantity::{Finite, Grams, Money};
use pourbook::stock::{Entry, EntryId, OverlayItem, Section, Shelf};
use proptest::collection::{btree_map, btree_set, vec};
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;
use rust_decimal::Decimal;

/// A struct's strategy from its fields' strategies.
macro_rules! made {
    ($type:ident { $($field:ident: $strategy:expr),+ $(,)? }) => {
        made!(@nest [$($field: $strategy),+] $type [$($field)+])
    };
    (@nest [$($field:ident: $strategy:expr),+] $type:ident [$($name:ident)+]) => {{
        // Boxed one by one, so that a struct of twenty fields needs no tuple of twenty.
        let start: BoxedStrategy<$type> = Just($type::default()).boxed();
        $(
            let start = (start, $strategy).prop_map(|(mut made, value)| { made.$field = value; made }).boxed();
        )+
        start
    }};
}

fn text() -> BoxedStrategy<String> {
    prop_oneof![
        3 => Just(String::new()),
        3 => "[a-zA-Z0-9 .,;:()\\[\\]{}\"'#/*\\\\\\n\\t-]{0,12}",
        1 => ".{0,8}",
        1 => select(vec!["\"", "r#\"raw\"#", "// no comment", "/* none */", "\u{feff}", "ﬂask Ø 76×102 mm", "\r\n", "\u{0}", "a\\", "(", ")"])
            .prop_map(str::to_owned),
    ]
    .boxed()
}

fn finite() -> BoxedStrategy<Finite> {
    let any = any::<f64>().prop_filter_map("finite", Finite::new);
    let usual = (-1_000_000_i32..1_000_000).prop_map(|number| Finite::new(f64::from(number) / 1000.0).unwrap());
    let odd = select(vec![0.0, -0.0, 1e-300, 5e-324, f64::MAX, f64::MIN, 0.1, 1e15, 1e16, 1e21, 1.0 / 3.0]);
    prop_oneof![3 => usual, 1 => any, 1 => odd.prop_map(|number| Finite::new(number).unwrap())].boxed()
}

fn grams() -> BoxedStrategy<Grams> {
    let any = (-99_999_999_999_999_i64..100_000_000_000_000).prop_map(|number| Grams::new(Decimal::new(number, 6)).unwrap());
    let usual = (0_i64..1_000_000).prop_map(|number| Grams::new(Decimal::new(number, 2)).unwrap());
    prop_oneof![any, usual].boxed()
}

fn money() -> BoxedStrategy<Money> {
    (-999_999_999_999_999_i64..1_000_000_000_000_000).prop_map(|number| Money::new(Decimal::new(number, 4)).unwrap()).boxed()
}

fn day() -> BoxedStrategy<Date> {
    (-2000_i16..=9999, 1_i8..=12, 1_i8..=28).prop_map(|(year, month, day)| Date::new(year, month, day).unwrap()).boxed()
}

fn clock() -> BoxedStrategy<Time> {
    (0_i8..24, 0_i8..60, 0_i8..60, select(vec![0, 1, 500_000_000, 999_999_999]))
        .prop_map(|(hour, minute, second, nanosecond)| Time::new(hour, minute, second, nanosecond).unwrap())
        .boxed()
}

fn moment() -> BoxedStrategy<DateTime> {
    (day(), clock()).prop_map(|(day, time)| DateTime::from_parts(day, time)).boxed()
}

fn entry_id() -> BoxedStrategy<EntryId> {
    let shipped: Vec<EntryId> = Shelf::shipped().entries().map(|entry| entry.id().clone()).collect();
    prop_oneof![4 => select(shipped), 1 => "[a-z][a-z0-9]{0,6}".prop_map(|id| EntryId::new(&id).unwrap())].boxed()
}

fn entry() -> BoxedStrategy<Entry> {
    select(Shelf::shipped().entries().map(|entry| Entry::clone(entry)).collect::<Vec<_>>()).boxed()
}

fn small() -> BoxedStrategy<u32> {
    prop_oneof![8 => 0_u32..6, 1 => any::<u32>()].boxed()
}

fn few<T: std::fmt::Debug + Clone + 'static>(strategy: impl Strategy<Value = T> + 'static) -> BoxedStrategy<Vec<T>> {
    vec(strategy, 0..3).boxed()
}

fn job_id() -> BoxedStrategy<JobId> {
    any::<[u8; 16]>().prop_map(JobId).boxed()
}

fn piece() -> BoxedStrategy<PieceId> {
    (small(), small()).prop_map(|(line, number)| PieceId { line: LineId(line), number }).boxed()
}

fn weighing() -> BoxedStrategy<Weighing> {
    let gross = (grams(), of(grams())).prop_map(|(weight, tare)| Weighing::Gross { weight, tare });
    prop_oneof![grams().prop_map(Weighing::Net), gross].boxed()
}

fn size() -> BoxedStrategy<Size> {
    prop_oneof![text().prop_map(Size::Free), (entry_id(), text()).prop_map(|(scale, size)| Size::Ring { scale, size })].boxed()
}

fn section() -> BoxedStrategy<Section> {
    select(vec![Section::Filigree, Section::Thin, Section::Medium, Section::Heavy]).boxed()
}

fn place() -> BoxedStrategy<Place> {
    (small(), small(), 0..15)
        .prop_map(|(one, other, which)| match which {
            0 => Place::Job,
            1 => Place::Studio,
            2 => Place::Order(OrderId(one)),
            3 => Place::Line(LineId(one)),
            4 => Place::Piece(PieceId { line: LineId(one), number: other }),
            5 => Place::Pattern(PatternId(one)),
            6 => Place::Tree(TreeId(one)),
            7 => Place::TreeRow(TreeId(one), other),
            8 => Place::Flask(FlaskId(one)),
            9 => Place::Mix(FlaskId(one), other),
            10 => Place::Burnout(BurnoutId(one)),
            11 => Place::Stage(BurnoutId(one), other),
            12 => Place::Melt(MeltId(one)),
            13 => Place::Print(PrintId(one)),
            _ => Place::Quote(QuoteId(one)),
        })
        .boxed()
}

fn site() -> BoxedStrategy<Site> {
    made!(Site { zone: text(), altitude_m: of(finite()), barometer_kpa: of(finite()), room_c: of(finite()), water_c: of(finite()) })
}

fn exception() -> BoxedStrategy<PieceException> {
    let from = (job_id(), piece()).prop_map(|(job, piece)| From { job, piece });
    made!(PieceException {
        from: of(from),
        size: of(size()),
        pattern: of(small().prop_map(PatternId)),
        remake_of: of(piece()),
        irreplaceable: any::<bool>(),
        cancelled: any::<bool>(),
        notes: text(),
    })
}

fn order() -> BoxedStrategy<Order> {
    let exceptions: BoxedStrategy<BTreeMap<u32, PieceException>> = btree_map(small(), exception(), 0..3).boxed();
    let finished = made!(Finished { x_mm: of(finite()), y_mm: of(finite()), z_mm: of(finite()) });
    let line = made!(Line {
        id: small().prop_map(LineId),
        design: text(),
        quantity: small(),
        alloy: of(entry_id()),
        size: of(size()),
        band_mm: of(finite()),
        comfort_fit: any::<bool>(),
        comfort_mm: of(finite()),
        finished: finished,
        finishing_opens_mm: of(finite()),
        finishing_takes_mm: of(finite()),
        pattern: of(small().prop_map(PatternId)),
        due: of(day()),
        set: text(),
        mark_permille: of(finite()),
        finish: text(),
        finishing_min: of(finite()),
        exceptions: exceptions,
        notes: text(),
    });
    made!(Order {
        id: small().prop_map(OrderId),
        client: text(),
        taken: of(day()),
        due: of(day()),
        lines: few(line),
        agreed_loss: of(finite()),
        notes: text(),
    })
}

fn pattern() -> BoxedStrategy<Pattern> {
    let unit =
        select(vec![FileUnit::Millimetre, FileUnit::Centimetre, FileUnit::Inch, FileUnit::Metre, FileUnit::Mil, FileUnit::Micrometre]);
    let sides = || (finite(), finite(), finite()).prop_map(|(x, y, z)| [x, y, z]);
    let kept = made!(KeptMeasures {
        volume: of(finite()),
        fills: of(finite()),
        area: of(finite()),
        size: of(sides()),
        void: of(finite()),
        walls: of(sides())
    });
    let what = select(vec![NoGoKind::Texture, NoGoKind::Seat, NoGoKind::Mark]);
    let sprue = made!(SpruePoint { at: of(sides()), ball: of(finite()), modulus: of(finite()) });
    let no_go = made!(NoGo { at: of(sides()), radius: of(finite()), what: what });
    let file = made!(PatternFile {
        path: text(),
        hash: of(text()),
        unit: unit,
        scale: of(finite()),
        bore_mm: of(finite()),
        no_go: few(no_go),
        sprue: of(sprue),
        kept: of(kept)
    });
    let making = made!(Making { labour_min: of(finite()), waste_share: of(finite()) });
    let extents = (finite(), finite(), finite()).prop_map(|(along, across, deep)| Extents { along, across, deep });
    made!(Pattern {
        id: small().prop_map(PatternId),
        name: text(),
        material: of(entry_id()),
        weighed: of(weighing()),
        file: of(file),
        extents_mm: of(extents),
        section: of(section()),
        thinnest_mm: of(finite()),
        irreplaceable: any::<bool>(),
        stones: any::<bool>(),
        void_drained: any::<bool>(),
        making: of(making),
        mould: text(),
        notes: text(),
    })
}

fn print_run() -> BoxedStrategy<PrintRun> {
    let row = made!(PrintRow {
        pattern: small().prop_map(PatternId),
        count: small(),
        x_mm: of(finite()),
        y_mm: of(finite()),
        height_mm: of(finite()),
    });
    made!(PrintRun {
        id: small().prop_map(PrintId),
        name: text(),
        printer: text(),
        material: of(entry_id()),
        rows: few(row),
        washed_min: of(finite()),
        cured_before_rinse_min: of(finite()),
        rinsed: any::<bool>(),
        surface_clean: of(any::<bool>()),
        notes: text(),
    })
}

fn printer() -> BoxedStrategy<Printer> {
    let setting = made!(PrintSetting {
        material: of(entry_id()),
        layer_mm: of(finite()),
        base_layers: of(small()),
        base_exposure_s: of(finite()),
        exposure_s: of(finite()),
        move_s: of(finite()),
        supports_share: of(finite()),
        price_per_kg: of(money()),
        notes: text(),
    });
    made!(Printer {
        name: text(),
        plate_x_mm: of(finite()),
        plate_y_mm: of(finite()),
        height_mm: of(finite()),
        gap_mm: of(finite()),
        settings: few(setting),
        notes: text(),
    })
}

fn calibration() -> BoxedStrategy<Calibration> {
    let gauge = made!(Gauge { axis: select(Axis::ALL.to_vec()), nominal_mm: of(finite()), measured_mm: of(finite()) });
    made!(Calibration {
        name: text(),
        printer: text(),
        material: of(entry_id()),
        on: of(day()),
        rows: vec(gauge, 0..8).boxed(),
        wanted_mm: of(finite()),
        accepted: any::<bool>(),
        recheck: of(day()),
        notes: text(),
    })
}

fn tree() -> BoxedStrategy<Tree> {
    let numbers: BoxedStrategy<BTreeSet<u32>> = btree_set(small(), 0..4).boxed();
    let hung = made!(Hung { line: small().prop_map(LineId), numbers: numbers, tier: of(small()), around_deg: of(finite()) });
    let part = made!(WeighedPart { material: of(entry_id()), weight: of(weighing()), scale: text() });
    let main = made!(MainSprue { material: of(entry_id()), diameter_mm: of(finite()), length_mm: of(finite()) });
    let run = made!(SprueRun {
        material: of(entry_id()),
        count: small(),
        diameter_mm: of(finite()),
        length_mm: of(finite()),
        angle_deg: of(finite()),
    });
    let envelope = made!(Envelope { diameter_mm: of(finite()), height_mm: of(finite()) });
    made!(Tree {
        id: small().prop_map(TreeId),
        name: text(),
        base: of(entry_id()),
        base_number: text(),
        pieces: few(hung),
        weighed: few(part),
        main_sprue: of(main),
        sprues: few(run),
        envelope: of(envelope),
        notes: text(),
    })
}

fn centrifuge() -> BoxedStrategy<Centrifuge> {
    made!(Centrifuge {
        name: text(),
        rpm: of(finite()),
        most_rpm: of(finite()),
        metal_mm: of(finite()),
        pattern_mm: of(finite()),
        flask_mm: of(finite()),
        crucible_mm: of(finite()),
        counterweight_mm: of(finite()),
        crucible: of(grams()),
        cradle: of(grams()),
        most_counterweight: of(grams()),
        widest_mm: of(finite()),
        highest_mm: of(finite()),
        heaviest: of(grams()),
        notes: text(),
    })
}

fn flask() -> BoxedStrategy<Flask> {
    let spin = made!(Spin {
        machine: text(),
        rpm: of(finite()),
        metal_mm: of(finite()),
        pattern_mm: of(finite()),
        loaded: of(grams()),
        counterweight: of(grams()),
    });
    let button = made!(ButtonWish { least: of(grams()), share: of(finite()) });
    made!(Flask {
        id: small().prop_map(FlaskId),
        scratch: text(),
        vessel: of(entry_id()),
        tree: of(small().prop_map(TreeId)),
        alloy: of(entry_id()),
        section: of(section()),
        collar_mm: of(finite()),
        powder: of(entry_id()),
        powder_lot: text(),
        ratio: of(finite()),
        spill_share: of(finite()),
        bowl_cm3: of(finite()),
        water_c: of(finite()),
        burnout: of(small().prop_map(BurnoutId)),
        kiln_position: text(),
        melt: of(small().prop_map(MeltId)),
        turn: of(small()),
        drive: select(vec![Drive::Gravity, Drive::Vacuum, Drive::Centrifugal]),
        vacuum_kpa: of(finite()),
        spin: spin,
        button: button,
        reserve: of(grams()),
        melt_loss: of(finite()),
        metal_c: of(finite()),
        mould_c: of(finite()),
        before_dewax: of(grams()),
        after_dewax: of(grams()),
        floor_mm: of([finite(), finite()]),
        trial: any::<bool>(),
        notes: text(),
    })
}

fn burnout() -> BoxedStrategy<Burnout> {
    let segment = made!(Segment { target_c: of(finite()), ramp_k_h: of(finite()), ramp_min: of(finite()), hold_min: finite() });
    let programme = prop_oneof![entry_id().prop_map(Programme::Table), few(segment).prop_map(Programme::Segments)];
    let step = || select(WorkStep::ALL.to_vec());
    let log = made!(KilnReadings { file: text(), start: of(moment()), points: few((finite(), finite()).boxed()), notes: text() });
    made!(Burnout {
        id: small().prop_map(BurnoutId),
        name: text(),
        kiln: of(entry_id()),
        programme: of(programme),
        hours_include_ramps: of(any::<bool>()),
        dewax_min: of(finite()),
        pour_at: of(moment()),
        start_c: of(finite()),
        sheet: few(made!(SheetHours { from_c: finite(), to_c: finite(), minutes: finite() })),
        pins: btree_map(step(), moment(), 0..3),
        step_minutes: btree_map(step(), finite(), 0..3),
        starts_itself: any::<bool>(),
        log: of(log),
        notes: text(),
    })
}

fn lot_id() -> BoxedStrategy<LotId> {
    text().prop_map(LotId).boxed()
}

fn melt() -> BoxedStrategy<Melt> {
    let draw = made!(Draw { lot: lot_id(), grams: grams(), notes: text() });
    let consent = made!(Consent { client: text(), paper: text() });
    made!(Melt {
        id: small().prop_map(MeltId),
        name: text(),
        crucible: of(entry_id()),
        target_permille: of(finite()),
        charge: few(draw),
        consents: few(consent),
        notes: text(),
    })
}

fn quote() -> BoxedStrategy<Quote> {
    let line = made!(FrozenLine {
        line: small().prop_map(LineId),
        text: text(),
        quantity: small(),
        grams: grams(),
        per_gram: money(),
        metal: money(),
        other: money(),
        sum: money(),
    });
    let price = made!(FrozenPrice { of: text(), per_gram: money(), on: of(day()) });
    let sent = made!(FrozenQuote {
        on: of(day()),
        lines: few(line),
        prices: few(price),
        net: money(),
        tax: money(),
        total: money(),
        currency: text(),
    });
    let accepted = (day(), sent.clone(), of(grams())).prop_map(|(on, sent, fixed)| QuoteState::Accepted { on, sent, fixed });
    let state = prop_oneof![
        Just(QuoteState::Draft),
        sent.clone().prop_map(QuoteState::Sent),
        accepted,
        (small().prop_map(QuoteId), of(sent)).prop_map(|(by, sent)| QuoteState::Superseded { by, sent }),
        day().prop_map(|on| QuoteState::Declined { on }),
    ];
    let extra = made!(Extra { line: of(small().prop_map(LineId)), what: text(), minutes: of(finite()), amount: of(money()) });
    made!(Quote {
        id: small().prop_map(QuoteId),
        client: text(),
        orders: few(small().prop_map(OrderId)),
        made: of(day()),
        valid_until: of(day()),
        margin: of(finite()),
        tax: of(finite()),
        deposit: of(money()),
        extras: few(extra),
        terms: text(),
        state: state,
        notes: text(),
    })
}

fn event() -> BoxedStrategy<Event> {
    let figure = made!(FrozenFigure { rule: text(), place: place(), value: finite() });
    let plan = made!(Frozen { figures: few(figure), shelf: few(text()) });
    let invested = made!(InvestedAs {
        lot: text(),
        scale: text(),
        room_c: of(finite()),
        powder: of(grams()),
        water: of(grams()),
        water_c: of(finite()),
        gloss_off_min: of(finite()),
        vacuum_kpa: of(finite()),
    });
    let poured = made!(PouredAs { metal_c: of(finite()), mould_c: of(finite()), charge: of(grams()), quench_min: of(finite()) });
    let stage = select(vec![PieceStage::Made, PieceStage::BurntOut, PieceStage::CutOff, PieceStage::Out, PieceStage::Delivered]);
    let metal = select(vec![MetalKind::Charged, MetalKind::NoFill, MetalKind::Sweeps, MetalKind::SpruesAndButton]);
    let flask = || small().prop_map(FlaskId);
    let did = select(vec![KilnDid::Read, KilnDid::WentIn, KilnDid::CameOut]);
    let sent =
        made!(SentOut { what_for: select(OutFor::ALL.to_vec()), to: text(), carrier: text(), promised: of(day()), weight: of(grams()) });
    let back = made!(CameBack { weight: of(grams()), failed: few(piece()) });
    let measures = made!(Measures { model_mm: of(finite()), pattern_mm: of(finite()), cast_mm: of(finite()), finished_mm: of(finite()) });
    let rework = made!(Rework {
        by: select(ReworkBy::ALL.to_vec()),
        added: of(grams()),
        added_permille: of(finite()),
        taken: of(grams()),
        size: of(size()),
    });
    prop_oneof![
        Just(Event::Remark),
        (few(piece()), stage).prop_map(|(pieces, stage)| Event::Reached { pieces, stage }),
        (small(), of(weighing())).prop_map(|(id, weight)| Event::Pattern { pattern: PatternId(id), weight }),
        (small(), of(weighing())).prop_map(|(id, weight)| Event::TreeWeighed { tree: TreeId(id), weight }),
        (flask(), plan.clone(), invested).prop_map(|(flask, plan, done)| Event::Invested { flask, plan, done }),
        (small(), of(finite()), did).prop_map(|(id, temperature_c, did)| Event::Kiln { burnout: BurnoutId(id), temperature_c, did }),
        (few(piece()), sent).prop_map(|(pieces, sent)| Event::SentOut { pieces, sent }),
        (select(vec![BenchStep::Weigh, BenchStep::Rest, BenchStep::Quench]), place(), any::<u32>())
            .prop_map(|(step, of, seconds)| Event::Timed { step, of, seconds }),
        (small(), few(piece()), back).prop_map(|(sent, pieces, back)| Event::CameBack { sent: RecordId(sent), pieces, back }),
        (flask(), plan, poured).prop_map(|(flask, plan, done)| Event::Poured { flask, plan, done }),
        (of(small().prop_map(MeltId)), of(flask()), metal, grams()).prop_map(|(melt, flask, what, grams)| Event::Metal {
            melt,
            flask,
            what,
            grams
        }),
        (piece(), any::<bool>(), grams(), of(select(FinishStep::ALL.to_vec())))
            .prop_map(|(piece, finished, grams, after)| Event::PieceWeighed { piece, finished, grams, after }),
        (piece(), text(), measures).prop_map(|(piece, what, measures)| Event::Measured { piece, what, measures }),
        (piece(), rework).prop_map(|(piece, rework)| Event::Reworked { piece, rework }),
        (text(), of(small().prop_map(MeltId)), of(lot_id()), grams()).prop_map(|(client, melt, lot, grams)| Event::HandedBack {
            client,
            melt,
            lot,
            grams
        }),
        (piece(), text()).prop_map(|(piece, defect)| Event::Rejected { piece, defect }),
        (small(), text()).prop_map(|(id, reason)| Event::Withdrawn { entry: RecordId(id), reason }),
    ]
    .boxed()
}

/// Any job at all.
pub fn job() -> BoxedStrategy<Job> {
    let record = made!(Entry_ {
        id: small().prop_map(RecordId),
        at: of(moment()),
        hands: text(),
        event: event(),
        photos: few(text()),
        notes: text(),
    });
    let accepted =
        made!(Accepted { finding: text(), place: place(), value: of(finite()), hands: text(), reason: text(), at: of(moment()) });
    let copied = entry().prop_map(|entry| carry::Copied { hash: entry.hash(), entry });
    made!(Job {
        job_id: job_id(),
        name: text(),
        made: of(day()),
        site: site(),
        orders: few(order()),
        patterns: few(pattern()),
        prints: few(print_run()),
        trees: few(tree()),
        flasks: few(flask()),
        burnouts: few(burnout()),
        melts: few(melt()),
        quotes: few(quote()),
        record: few(record),
        accepted: few(accepted),
        shelf: few(copied),
        notes: text(),
    })
}

/// The record's entry; the shelf's has the same name.
type Entry_ = pourbook::job::Entry;

/// Any studio at all.
pub fn studio() -> BoxedStrategy<Studio> {
    let hand = made!(Hand { initials: text(), role: select(vec![Role::Apprentice, Role::Caster, Role::Master]) });
    let terms = made!(Terms {
        currency: text(),
        hour: of(money()),
        kwh: of(money()),
        margin: of(finite()),
        metal_premium: of(finite()),
        tax: of(finite()),
        price_days: of(small()),
        quote_days: of(small()),
        words: text(),
    });
    let receipt = made!(Receipt { on: of(day()), grams: grams(), paid: of(money()), paper: text(), from_job: of(job_id()) });
    let kind = select(vec![LotKind::NewMetal, LotKind::FineMetal, LotKind::MasterAlloy, LotKind::Scrap, LotKind::Refining]);
    let lot = made!(Lot {
        id: lot_id(),
        what: kind,
        alloy: of(entry_id()),
        metal: text(),
        fineness_permille: of(finite()),
        assay: text(),
        owner: text(),
        melts: small(),
        soldered: any::<bool>(),
        receipts: few(receipt),
        notes: text(),
    });
    let found = made!(Found { lot: lot_id(), grams: grams(), book: grams() });
    let stocktake = made!(Stocktake { at: of(moment()), hands: text(), found: few(found), jobs: few(job_id()) });
    let unit = select(vec![PriceUnit::Gram, PriceUnit::TroyOunce, PriceUnit::Kilogram]);
    let price = made!(Price { of: text(), amount: money(), per: unit, on: of(day()), note: text() });
    let mould = made!(Mould {
        number: text(),
        drawer: text(),
        design: text(),
        master: text(),
        rubber_shrink: of(finite()),
        wax: of(entry_id()),
        wax_c: of(finite()),
        pressure_kpa: of(finite()),
        shot: of(grams()),
        reject_share: of(finite()),
        notes: text(),
    });
    let weighed = made!(WaterWeighing {
        material: of(entry_id()),
        on: of(day()),
        dry: of(grams()),
        sinker_in_water: of(grams()),
        both_in_water: of(grams()),
        water_c: of(finite()),
        notes: text(),
    });
    let material = made!(MaterialLot {
        label: text(),
        entry: of(entry_id()),
        opened: of(day()),
        until: of(day()),
        gloss_off_min: of(finite()),
        notes: text(),
    });
    let equipment = made!(Equipment {
        label: text(),
        entry: of(entry_id()),
        kind: text(),
        tare: of(grams()),
        family: text(),
        uses: small(),
        resolution: of(grams()),
        offset_k: of(finite()),
        checked: of(day()),
        next_check: of(day()),
        notes: text(),
    });
    let learned =
        made!(Learned { key: text(), entry: of(entry_id()), mean: finite(), spread: of(finite()), jobs: small(), accepted: of(day()) });
    let overlay = prop_oneof![
        entry().prop_map(OverlayItem::Add),
        entry().prop_map(|entry| OverlayItem::Replace { base_hash: entry.hash(), entry }),
        entry_id().prop_map(OverlayItem::Hide),
    ];
    let flask_stock = made!(FlaskStock { entry: of(entry_id()), count: of(small()), notes: text() });
    let usual_tree = made!(UsualTree {
        main_diameter_mm: of(finite()),
        feed_diameter_mm: of(finite()),
        feed_length_mm: of(finite()),
        feed_angle_deg: of(finite()),
        gap_mm: of(finite()),
    });
    let hours = made!(WorkingHours { day: select(Day::ALL.to_vec()), from: of(clock()), to: of(clock()) });
    made!(Studio {
        studio_id: job_id(),
        hours: few(hours),
        days_off: few(day()),
        name: text(),
        address: few(text()),
        letterhead: text(),
        site: site(),
        hands: few(hand),
        money: terms,
        marking: of(entry_id()),
        balance_step: of(grams()),
        bowl_cm3: of(finite()),
        flasks: few(flask_stock),
        usual_tree: usual_tree,
        shelf: few(overlay),
        lots: few(lot),
        stocktakes: few(stocktake),
        prices: few(price),
        moulds: few(mould),
        water_weighings: few(weighed),
        materials: few(material),
        equipment: few(equipment),
        centrifuges: few(centrifuge()),
        printers: few(printer()),
        calibrations: few(calibration()),
        learned: few(learned),
        notes: text(),
    })
}
