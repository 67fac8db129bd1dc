//! The usual cautions: chosen by what is in a flask, and claiming nothing.

use pourbook::paper::sheet;
use pourbook::stock::{Alloy, Composition, Element, Entry as ShelfEntry, EntryId, OverlayItem, Permille, Shelf};

use crate::jobs::{Ready, order_book, quick_start, studio, three_flasks};
use crate::sheet::{flask_page, sound, unwrapped};

#[test]
fn cautions_are_chosen_by_what_is_in_the_flask() {
    let ready = Ready::new(three_flasks(), studio());
    let text = sheet(&ready.input());
    let page = |flask| unwrapped(&flask_page(&text, flask));
    let (silver, brass, platinum) = (page(1), page(2), page(3));
    let only = |words: &str, here: [bool; 3]| {
        let found = [&silver, &brass, &platinum].map(|page| page.contains(words));
        assert_eq!(found, here, "{words}");
    };
    only("Zinc burns off as white fume", [false, true, false]);
    only("Lead fume", [false, true, false]);
    only("Uncured resin", [false, true, false]);
    only("Wash solvent", [false, true, false]);
    only("Resin burns with sharp", [false, true, false]);
    only("gives off ammonia", [false, false, true]);
    only("mixing liquid stings", [false, false, true]);
    only("too bright for bare eyes", [false, false, true]);
    only("spinning arm", [false, false, true]);
    only("Gasket whole", [true, false, false]);
    only("Carving dust", [false, false, true]);
    only("throws steam and scalding mud", [true, true, false]);
    only("Never quench this flask", [false, false, true]);
    only("Steam and running wax scald", [true, true, true]);
    for words in [
        "breathable silica",
        "Broken mould is silica dust",
        "bell jar",
        "Burnout gives off fume",
        "may not glow",
        "Damp or greasy metal",
        "Where a torch is used",
        "are acids",
    ] {
        only(words, [true, true, true]);
    }
    only("hazards are not listed here", [false, false, false]);
}

/// A studio's own alloy that says nothing of its hazards: its composition does.
#[test]
fn cautions_come_from_the_composition_too() {
    let silver = Shelf::shipped().get::<Alloy>("silver-925").unwrap().clone();
    let part = |element, permille| (element, Permille::new(permille).unwrap());
    let parts = vec![part(Element::Ag, 925.0), part(Element::Cu, 45.0), part(Element::Cd, 20.0), part(Element::Be, 10.0)];
    let own =
        Alloy { id: EntryId::new("own-silver").unwrap(), composition: Composition::new(parts).unwrap(), hazards: Vec::new(), ..silver };
    let mut job = quick_start();
    job.flasks[0].alloy = EntryId::new("own-silver");
    let mut studio = studio();
    studio.shelf = vec![OverlayItem::Add(ShelfEntry::Alloy(own))];
    let text = unwrapped(&sheet(&Ready::new(job, studio).input()));
    assert!(text.contains("Cadmium fume kills") && text.contains("Beryllium fume"), "{text}");
}

#[test]
fn what_is_not_chosen_is_a_hazard_that_is_not_listed() {
    let mut job = quick_start();
    job.flasks[0].alloy = None;
    job.flasks[0].powder = None;
    let text = sheet(&Ready::new(job, studio()).input());
    let page = unwrapped(&text);
    assert!(page.contains("The alloy is not chosen, so its hazards are not listed here."));
    assert!(page.contains("The powder is not chosen, so its hazards are not listed here."));
    assert!(page.contains("breathable silica"), "an unknown powder is taken for a dusty one");
    assert!(page.contains("Not known without alloy of the flask, powder."), "{page}");
    sound(&text);
}

#[test]
fn nothing_claims_that_a_step_is_safe() {
    for job in [quick_start(), three_flasks(), order_book()] {
        let text = unwrapped(&sheet(&Ready::new(job, studio()).input())).to_lowercase();
        let rest = text.replace("nothing printed here makes a step safe", "");
        assert!(!rest.contains("safe"), "{rest}");
    }
}
