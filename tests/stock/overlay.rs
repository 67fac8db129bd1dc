//! What a studio may do to the shelf, and what comes back.

use pourbook::stock::{
    Alloy, Base, Crucible, Entry, EntryHash, EntryId, EntryKind, Fault, Flask, Kiln, Overlay, OverlayItem, OverlayNote, OverlayProblem,
    PatternMaterial, Powder, RingRule, RingScale, Shelf, Sourced, StageTable, Trust, put_own,
};

use crate::shelf;

fn id(text: &str) -> EntryId {
    EntryId::new(text).unwrap()
}

fn sterling() -> Alloy {
    shelf().get::<Alloy>("silver-925").unwrap().clone()
}

/// The studio's own sterling, with its measured density.
fn measured() -> Entry {
    let mut alloy = sterling();
    alloy.density_g_cm3 = Sourced::new(10.31, "weighed in water", Trust::Studio).unwrap();
    alloy.into()
}

fn laid(items: Vec<OverlayItem>) -> (Shelf, Vec<OverlayNote>) {
    Shelf::with_overlay(&Overlay(items))
}

fn note(place: usize, text: &str, problem: OverlayProblem) -> OverlayNote {
    OverlayNote { place, id: id(text), problem }
}

#[test]
fn no_overlay_changes_nothing() {
    let (laid, notes) = laid(Vec::new());
    assert!(notes.is_empty());
    assert!(laid.entries().eq(shelf().entries()));
}

#[test]
fn an_own_entry_goes_where_the_studio_has_one() {
    let stands = Entry::from(sterling());
    let mut items = vec![OverlayItem::Hide(id("pewter"))];
    put_own(&mut items, &stands, measured());
    assert_eq!(items[1], OverlayItem::Replace { base_hash: shelf().hash_of("silver-925").unwrap(), entry: measured() });
    assert_eq!(laid(items.clone()).1, []);
    // Weighed again: the studio still has one, made from the same shipped entry.
    let Entry::Alloy(mut again) = measured() else { panic!("an alloy") };
    again.density_g_cm3.value = 10.33;
    put_own(&mut items, &measured(), again.clone().into());
    assert_eq!(items.len(), 2);
    let (laid, notes) = laid(items);
    assert_eq!(notes, []);
    assert!((laid.get::<Alloy>("silver-925").unwrap().density_g_cm3.value - 10.33).abs() < 1e-12);
}

#[test]
fn add_replace_hide() {
    let mut own = sterling();
    own.id = id("studio-sterling");
    let base_hash = shelf().hash_of("silver-925").unwrap();
    let (laid, notes) =
        laid(vec![OverlayItem::Add(own.into()), OverlayItem::Replace { base_hash, entry: measured() }, OverlayItem::Hide(id("pewter"))]);
    assert_eq!(notes, []);
    assert!(laid.get::<Alloy>("studio-sterling").is_some() && laid.is_own("studio-sterling"));
    assert!((laid.get::<Alloy>("silver-925").unwrap().density_g_cm3.value - 10.31).abs() < 1e-12);
    assert!(laid.is_own("silver-925") && !laid.is_own("silver-958"));
    assert_ne!(laid.hash_of("silver-925"), Some(base_hash));
    assert!(laid.get::<Alloy>("pewter").is_none());
    assert_eq!(laid.entries().count(), shelf().entries().count());
    let ids: Vec<&EntryId> = laid.entries().map(|entry| entry.id()).collect();
    assert!(ids.is_sorted());
    assert!((shelf().get::<Alloy>("silver-925").unwrap().density_g_cm3.value - 10.36).abs() < 1e-12, "the shipped shelf stands");
}

#[test]
fn a_changed_base_is_told_and_the_studios_entry_stands() {
    let was = EntryHash::parse("0123456789abcdef0123456789abcdef").unwrap();
    let now = shelf().hash_of("silver-925").unwrap();
    let (laid, notes) = laid(vec![OverlayItem::Hide(id("pewter")), OverlayItem::Replace { base_hash: was, entry: measured() }]);
    assert_eq!(notes, [note(1, "silver-925", OverlayProblem::BaseChanged { was, now })]);
    assert!((laid.get::<Alloy>("silver-925").unwrap().density_g_cm3.value - 10.31).abs() < 1e-12);
}

#[test]
fn items_apply_in_order() {
    let base_hash = shelf().hash_of("silver-925").unwrap();
    // A second change is made on top of the first.
    let second = OverlayItem::Replace { base_hash: measured().hash(), entry: sterling().into() };
    let (shelf_two, notes) = laid(vec![OverlayItem::Replace { base_hash, entry: measured() }, second]);
    assert_eq!(notes, []);
    assert_eq!(shelf_two.hash_of("silver-925"), Some(base_hash));
    // Once hidden, the id is free.
    let (again, notes) = laid(vec![OverlayItem::Hide(id("silver-925")), OverlayItem::Add(measured())]);
    assert_eq!(notes, []);
    assert!(again.is_own("silver-925"));
}

#[test]
fn what_does_not_fit_is_told_with_its_place() {
    let base_hash = shelf().hash_of("silver-925").unwrap();
    let mut stray = sterling();
    stray.id = id("no-such-alloy");
    let mut flask = shelf().get::<Flask>("flask-64x64").unwrap().clone();
    flask.id = id("silver-925");
    let (laid, notes) = laid(vec![
        OverlayItem::Add(measured()),
        OverlayItem::Replace { base_hash, entry: stray.into() },
        OverlayItem::Hide(id("nothing-here")),
        OverlayItem::Replace { base_hash, entry: flask.into() },
        OverlayItem::Hide(id("pewter")),
        OverlayItem::Hide(id("pewter")),
    ]);
    assert_eq!(
        notes,
        [
            note(0, "silver-925", OverlayProblem::IdTaken(EntryKind::Alloy)),
            note(1, "no-such-alloy", OverlayProblem::UnknownId),
            note(2, "nothing-here", OverlayProblem::UnknownId),
            note(3, "silver-925", OverlayProblem::OtherKind { stands: EntryKind::Alloy, given: EntryKind::Flask }),
            note(5, "pewter", OverlayProblem::UnknownId),
        ]
    );
    assert_eq!(laid.hash_of("silver-925"), Some(base_hash), "none of these was applied");
    assert_eq!(laid.entries().count() + 1, shelf().entries().count());
}

#[test]
fn a_faulty_entry_is_told_and_not_applied() {
    let mut wrong = sterling();
    wrong.id = id("wrong");
    wrong.density_g_cm3.value = 0.0;
    wrong.melt_loss.value = 1.5;
    wrong.fineness.as_mut().unwrap().permille = pourbook::stock::Permille::new(926.0).unwrap();
    wrong.solidus_c.as_mut().unwrap().value = 900.0;
    wrong.pour.push(wrong.pour[0].clone());
    wrong.karat = Some(25);
    let expected = vec![
        Fault::NotPositive("density_g_cm3"),
        Fault::NotAShare("melt_loss"),
        Fault::OutOfOrder("solidus_c", "liquidus_c"),
        Fault::SectionTwice,
        Fault::UnderItsMark,
        Fault::KaratAbove24,
    ];
    let (laid, notes) = laid(vec![OverlayItem::Add(wrong.into())]);
    assert_eq!(notes, [note(0, "wrong", OverlayProblem::Faulty(expected))]);
    assert!(laid.get::<Alloy>("wrong").is_none());
}

#[test]
fn faults_of_other_kinds() {
    let mut kiln = shelf().get::<Kiln>("kiln-studio").unwrap().clone();
    kiln.bands[0].fall_k_h = 0.0;
    kiln.bands.swap(0, 1);
    assert_eq!(Entry::from(kiln.clone()).faults(), [Fault::NotPositive("fall_k_h"), Fault::OutOfOrder("bands", "bands")]);
    kiln.bands.clear();
    assert_eq!(Entry::from(kiln).faults(), [Fault::Empty("bands")]);
    let mut flask = shelf().get::<Flask>("flask-64x64").unwrap().clone();
    flask.height_mm = -1.0;
    assert_eq!(Entry::from(flask).faults(), [Fault::NotPositive("height_mm")]);
    let mut powder = shelf().get::<Powder>("powder-gypsum").unwrap().clone();
    powder.stop_ceiling_c.value = 700.0;
    powder.thermal.as_mut().unwrap().k_dry_w_m_k.value = f64::NAN;
    assert_eq!(Entry::from(powder).faults(), [Fault::OutOfOrder("planned_ceiling_c", "stop_ceiling_c"), Fault::NotPositive("k_dry_w_m_k")]);
    let mut material = shelf().get::<PatternMaterial>("resin-castable").unwrap().clone();
    material.linear_shrink.value = -0.1;
    assert_eq!(Entry::from(material).faults(), [Fault::NotAShare("linear_shrink")]);
    let mut scale = shelf().get::<RingScale>("ring-us").unwrap().clone();
    scale.rule = RingRule::Diameter { zero_mm: 11.6332, step_mm: 0.0 };
    (scale.lowest, scale.highest) = (16.0, 0.0);
    assert_eq!(Entry::from(scale).faults(), [Fault::NotPositive("step_mm"), Fault::OutOfOrder("lowest", "highest")]);
    let mut crucible = shelf().get::<Crucible>("crucible-silica-spin").unwrap().clone();
    crucible.usable_cm3.value = 41.0;
    crucible.families.clear();
    assert_eq!(Entry::from(crucible).faults(), [Fault::OutOfOrder("usable_cm3", "total_cm3"), Fault::Empty("families")]);
    let mut table = shelf().get::<StageTable>("stages-wax").unwrap().clone();
    table.rows[1].stages.clear();
    table.rows[2].soak_h = -1.0;
    assert_eq!(Entry::from(table).faults(), [Fault::Empty("stages"), Fault::Negative("soak_h")]);
    let mut base = shelf().get::<Base>("base-64").unwrap().clone();
    base.fits_diameter_mm.clear();
    assert_eq!(Entry::from(base).faults(), [Fault::Empty("fits_diameter_mm")]);
    let mut alloy = sterling();
    alloy.pour[3].metal_c.low = 880.0;
    alloy.pour[0].mould_c.high = 810.0;
    assert_eq!(
        Entry::from(alloy).faults(),
        [Fault::OutOfOrder("pour.mould_c", "solidus_c"), Fault::OutOfOrder("liquidus_c", "pour.metal_c")]
    );
}
