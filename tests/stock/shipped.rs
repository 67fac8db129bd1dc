//! What holds for every shipped entry, whatever its kind.

use std::collections::{BTreeMap, BTreeSet};

use pourbook::stock::{Alloy, Entry, EntryKind, PatternClass, PatternMaterial, PowderClass, Shelf, StageTable, ron_options, sources};
use serde_json::Value;

use crate::shelf;

const TRUSTS: [&str; 7] = ["Standard", "Published", "Article", "Computed", "CommonPractice", "FromMemory", "Studio"];

/// (source, trust) where `value` is written as a number with its source.
fn provenance(value: &Value) -> Option<(&str, &str)> {
    let [.., source, trust] = value.as_array()?.as_slice() else { return None };
    let (source, trust) = (source.as_str()?, trust.as_str()?);
    TRUSTS.contains(&trust).then_some((source, trust))
}

/// Calls `with_source` on every (source, trust) and `bare` on the field of every number that has none.
fn walk(field: &str, value: &Value, with_source: &mut impl FnMut(&str, &str), bare: &mut impl FnMut(&str)) {
    if let Some((source, trust)) = provenance(value) {
        return with_source(source, trust);
    }
    match value {
        Value::Number(_) => bare(field),
        Value::Array(items) => items.iter().for_each(|item| walk(field, item, with_source, bare)),
        Value::Object(map) => map.iter().for_each(|(name, item)| walk(name, item, with_source, bare)),
        Value::Null | Value::Bool(_) | Value::String(_) => {}
    }
}

fn json(entry: &Entry) -> Value {
    serde_json::to_value(entry).unwrap()
}

#[test]
fn there_is_enough_of_every_kind() {
    let mut counts: BTreeMap<EntryKind, usize> = BTreeMap::new();
    for entry in shelf().entries() {
        *counts.entry(entry.kind()).or_default() += 1;
    }
    let least = [
        (EntryKind::Alloy, 24),
        (EntryKind::Powder, 4),
        (EntryKind::PatternMaterial, 8),
        (EntryKind::Flask, 14),
        (EntryKind::Base, 7),
        (EntryKind::Crucible, 5),
        (EntryKind::Kiln, 3),
        (EntryKind::RingScale, 3),
        (EntryKind::StageTable, 4),
        (EntryKind::MarkingLaw, 5),
    ];
    assert_eq!(least.len(), EntryKind::ALL.len());
    for (kind, least) in least {
        assert!(counts[&kind] >= least, "{kind:?}: {} of {least}", counts[&kind]);
    }
}

#[test]
fn ids_and_names_are_unique_and_ids_are_sorted() {
    let ids: Vec<&str> = shelf().entries().map(|entry| entry.id().as_str()).collect();
    assert!(ids.windows(2).all(|pair| pair[0] < pair[1]), "lookup by id relies on strict order");
    let names: BTreeSet<&str> = shelf().entries().map(|entry| entry.name()).collect();
    assert_eq!(names.len(), ids.len());
}

#[test]
fn no_shipped_entry_contradicts_itself() {
    for entry in shelf().entries() {
        assert_eq!(entry.faults(), [], "{}", entry.id());
    }
}

#[test]
fn every_source_is_defined_and_every_defined_source_is_used() {
    let mut used = BTreeSet::new();
    for entry in shelf().entries() {
        walk("", &json(entry), &mut |source, _| _ = used.insert(source.to_owned()), &mut |_| {});
    }
    let defined: BTreeSet<String> = sources().keys().cloned().collect();
    assert_eq!(used.difference(&defined).collect::<Vec<_>>(), Vec::<&String>::new(), "used but not defined");
    assert_eq!(defined.difference(&used).collect::<Vec<_>>(), Vec::<&String>::new(), "defined but not used");
}

#[test]
fn only_what_was_read_is_called_published() {
    for entry in shelf().entries() {
        let mut check = |source: &str, trust: &str| {
            let read = sources()[source].read;
            let ok = match trust {
                "Standard" | "Published" | "Article" => read,
                "Computed" => source.contains('C') && !source.starts_with('M'),
                "CommonPractice" => source == "P" || source.ends_with("-P"),
                "FromMemory" => source.contains('M') || source.starts_with("C-"),
                _ => false,
            };
            assert!(ok, "{}: source {source} cannot be {trust}", entry.id());
        };
        walk("", &json(entry), &mut check, &mut |_| {});
    }
}

#[test]
fn every_number_carries_its_source() {
    // Each stands under an origin of its own entry or row, or is a whole number or a mark of the entry's own definition.
    let allowed = BTreeSet::from([
        "permille",
        "karat",
        "inner_diameter_mm",
        "height_mm",
        "fits_diameter_mm",
        "from_c",
        "to_c",
        "up_to_c",
        "rise_k_h",
        "fall_k_h",
        "positions",
        "segments",
        "lowest",
        "highest",
        "step",
        "zero_mm",
        "step_mm",
        "up_to_diameter_mm",
        "up_to_height_mm",
        "stages",
        "soak_h",
        // Of a kiln's chamber and controller, and of a hot loading: under the origin of each.
        "width_mm",
        "depth_mm",
        "from_wall_mm",
        "between_mm",
        "least_k_h",
        "most_k_h",
        "most_hold_h",
        "kiln_c",
        "loaded_c",
    ]);
    for entry in shelf().entries() {
        let mut value = json(entry);
        if let Some(alloy) = value.get_mut("Alloy") {
            alloy.as_object_mut().unwrap().remove("composition");
        }
        walk("", &value, &mut |_, _| {}, &mut |field| assert!(allowed.contains(field), "{}: {field} has no source", entry.id()));
    }
}

#[test]
fn written_and_read_again_an_entry_is_the_same() {
    for entry in shelf().entries() {
        let pretty = ron::ser::to_string_pretty(&**entry, ron::ser::PrettyConfig::default()).unwrap();
        let again: Entry = ron_options().from_str(&pretty).unwrap();
        assert_eq!(again, **entry);
        let plain: Entry = ron::from_str(&ron::to_string(&**entry).unwrap()).unwrap();
        assert_eq!(plain, **entry, "plain RON reads what was written, too");
        assert_eq!(Some(again.hash()), shelf().hash_of(entry.id().as_str()));
    }
}

#[test]
fn a_handle_finds_what_the_id_finds() {
    let handle = shelf().handle::<Alloy>("silver-925").unwrap();
    assert!(std::ptr::eq(&raw const shelf()[handle], shelf().get::<Alloy>("silver-925").unwrap()));
    assert!(shelf().handle::<Alloy>("powder-gypsum").is_none());
    assert!(shelf().get::<Alloy>("powder-gypsum").is_none());
    assert!(shelf().find(EntryKind::Powder, "powder-gypsum").is_some());
    assert!(shelf().find(EntryKind::Alloy, "powder-gypsum").is_none());
    assert!(shelf().find(EntryKind::Alloy, "").is_none());
}

#[test]
fn the_published_stage_table_stands_as_printed() {
    // A powder maker's three cycles, source F75: 6, 8 and 12 hours.
    let table = shelf().get::<StageTable>("stages-wax").unwrap();
    assert_eq!(table.hours_include_ramps, None, "the source does not say");
    let totals: Vec<f64> = table.rows.iter().map(|row| row.soak_h + row.stages.iter().map(|stage| stage.hours()).sum::<f64>()).collect();
    assert_eq!(totals, [6.0, 8.0, 12.0]);
    let pairs = |at: usize| -> Vec<(f64, f64)> { table.rows[at].stages.iter().map(|stage| (stage.target_c(), stage.hours())).collect() };
    assert_eq!(pairs(0), [(149.0, 2.0), (371.0, 1.0), (732.0, 2.0)]);
    assert_eq!(pairs(1), [(149.0, 2.0), (371.0, 2.0), (732.0, 3.0)]);
    assert_eq!(pairs(2), [(149.0, 2.0), (315.0, 2.0), (482.0, 2.0), (732.0, 4.0)]);
    assert_eq!(table.row_for(64.0, 64.0), Some(&table.rows[0]));
    assert_eq!(table.row_for(64.0, 76.0), Some(&table.rows[1]));
    assert_eq!(table.row_for(102.0, 203.0), Some(&table.rows[2]));
    assert_eq!(table.row_for(127.0, 203.0), None, "larger than the table goes");
}

#[test]
fn stages_rise_and_stay_under_their_powders_ceilings() {
    for table in shelf().all::<StageTable>() {
        for class in &table.powders {
            let powder = powder_of(shelf(), *class);
            for row in &table.rows {
                assert!(row.stages.windows(2).all(|pair| pair[0].target_c() < pair[1].target_c()), "{}", table.id);
                let top_c = row.stages.last().unwrap().target_c();
                let ceiling = if table.stones { powder.stones_ceiling_c.as_ref().unwrap() } else { &powder.planned_ceiling_c };
                assert!(top_c <= ceiling.value, "{}: {top_c} over {}", table.id, ceiling.value);
            }
        }
        let ordered = |pair: &[pourbook::stock::StageRow]| {
            pair[0].up_to_diameter_mm <= pair[1].up_to_diameter_mm && pair[0].up_to_height_mm <= pair[1].up_to_height_mm
        };
        assert!(table.rows.windows(2).all(ordered), "{}", table.id);
    }
}

#[test]
fn resin_burns_longer_than_wax_and_every_class_has_a_table() {
    let total = |id: &str, at: usize| {
        let row = &shelf().get::<StageTable>(id).unwrap().rows[at];
        row.soak_h + row.stages.iter().map(|stage| stage.hours()).sum::<f64>()
    };
    for at in 0..3 {
        assert!(total("stages-resin", at) > total("stages-wax", at));
    }
    assert!(shelf().get::<StageTable>("stages-resin").unwrap().never_under_data_sheet);
    for material in shelf().all::<PatternMaterial>() {
        // Leaves and seeds have no customary table: the studio tries one.
        let found = shelf().all::<StageTable>().any(|table| table.patterns.contains(&material.class));
        assert!(found || material.class == PatternClass::Organic, "{}", material.id);
    }
}

fn powder_of(shelf: &Shelf, class: PowderClass) -> &pourbook::stock::Powder {
    shelf.all::<pourbook::stock::Powder>().find(|powder| powder.class == class).unwrap()
}

#[test]
fn what_is_printed_of_resin_says_how_it_is_washed_and_cured_and_nothing_else_does() {
    use pourbook::stock::Hazard;
    for material in shelf().all::<PatternMaterial>() {
        let resin = material.hazards.contains(&Hazard::UncuredResin);
        assert_eq!(material.after_print.is_some(), resin, "{}", material.id);
        let Some(after) = &material.after_print else { continue };
        // "At least five minutes of ultraviolet light before the rinse": common practice, no source.
        assert!(after.cure_before_rinse_min.value >= 5.0, "{}", material.id);
        assert!(after.wash_min.low > 0.0 && after.wash_min.high <= 20.0, "{}", material.id);
    }
}
