//! Shelf text: entries, and the studio's overlay.

use pourbook::stock::{Entry, Overlay, OverlayProblem, Shelf, ron_options};

/// Bytes as a list of entries and as an overlay.
///
/// # Panics
/// Where what is read is not the same once written and read again, where looking for faults panics, and where a faulty entry gets on the
/// shelf or a sound one is lost.
pub fn check(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    match Shelf::read_entries("entries", text) {
        Ok(entries) => entries.iter().for_each(check_entry),
        Err(error) => assert!(error.line > 0 && error.column > 0, "{error}"),
    }
    match Overlay::parse("overlay", text) {
        Ok(overlay) => check_overlay(&overlay),
        Err(error) => assert!(error.line > 0 && error.column > 0, "{error}"),
    }
}

fn check_entry(entry: &Entry) {
    let sound = entry.faults().is_empty();
    let text = ron_options().to_string(std::slice::from_ref(entry)).expect("an entry can be written");
    let again = Shelf::read_entries("again", &text).unwrap_or_else(|error| panic!("{error}: {text}"));
    assert_eq!(again.as_slice(), std::slice::from_ref(entry));
    assert_eq!(again[0].hash(), entry.hash());
    let shelf = Shelf::shipped().laid_over([entry]);
    let stands = shelf.entry(entry.id().as_str()).is_some_and(|stands| stands.as_ref() == entry);
    assert_eq!(stands, sound || Shelf::shipped().entry(entry.id().as_str()).is_some_and(|shipped| shipped.as_ref() == entry));
    if sound {
        use_entry(entry);
    }
}

/// Asks a sound entry for what is computed from it on the shelf itself.
fn use_entry(entry: &Entry) {
    match entry {
        Entry::Alloy(alloy) => {
            let answers = [alloy.highest_pour_c(), alloy.karat_permille()];
            assert!(answers.into_iter().flatten().all(f64::is_finite));
        }
        Entry::Kiln(kiln) => {
            let _ = kiln.band_at(450.0);
        }
        Entry::Flask(flask) => assert!(!flask.volume_cm3().is_nan()),
        Entry::RingScale(scale) => {
            for size in scale.sizes().take(64) {
                let label = scale.label(size);
                let _ = (scale.inner_diameter_of(size), scale.inner_diameter_mm(&label));
            }
            let _ = (scale.nearest(17.3), scale.inner_diameter_mm("7 1/2"), scale.inner_diameter_mm("N½"));
        }
        Entry::StageTable(table) => {
            let _ = table.row_for(76.0, 102.0);
        }
        _ => {}
    }
}

fn check_overlay(overlay: &Overlay) {
    let text = ron_options().to_string(overlay).expect("an overlay can be written");
    let again = Overlay::parse("again", &text).unwrap_or_else(|error| panic!("{error}: {text}"));
    assert_eq!(again, *overlay);
    let (shelf, notes) = Shelf::with_overlay(overlay);
    for note in &notes {
        assert_eq!(overlay.0.get(note.place).map(|item| item.id()), Some(&note.id));
        assert!(!matches!(&note.problem, OverlayProblem::Faulty(faults) if faults.is_empty()));
    }
    assert!(shelf.entries().all(|entry| !shelf.is_own(entry.id().as_str()) || entry.faults().is_empty()), "a faulty entry is on the shelf");
    let ids: Vec<_> = shelf.entries().map(|entry| entry.id()).collect();
    assert!(ids.windows(2).all(|pair| pair[0] < pair[1]), "the shelf is sorted, each id once");
    crate::planted(overlay.0.iter().any(|item| matches!(item, pourbook::stock::OverlayItem::Hide(id) if id.as_str() != "base-89")));
}
