//! Powders and pattern materials.

use pourbook::stock::{Liquid, PatternClass, PatternMaterial, Powder, PowderClass};

use crate::shelf;

fn powder(id: &str) -> &'static Powder {
    shelf().get::<Powder>(id).unwrap()
}

#[test]
fn the_four_classes_are_there() {
    for class in [PowderClass::GypsumGeneral, PowderClass::GypsumResin, PowderClass::GypsumStones, PowderClass::Phosphate] {
        assert!(shelf().all::<Powder>().any(|powder| powder.class == class), "{class:?}");
    }
}

#[test]
fn water_ratios_of_general_powder() {
    let powder = powder("powder-gypsum");
    assert!((powder.ratio.value - 0.40).abs() < 1e-12, "common practice, no source");
    assert!((powder.ratio_fast.as_ref().unwrap().value - 0.36).abs() < 1e-12, "common practice, no source");
    // 38 heavy, 39 medium, 40 fine per 100: source F50.
    assert_eq!([powder.ratio_heavy.value, powder.ratio_medium.value, powder.ratio_fine.value], [0.38, 0.39, 0.40]);
}

#[test]
fn slurry_of_general_powder() {
    // Pencil: ρ = (1 + w)/(1/ρ_p + w/ρ_w) with w 0.40, ρ_p 2.55, ρ_w 0.998: 1/(0.392157 + 0.400802) = 1.2611 g of powder per cm³,
    // times 1.4 = 1.7655 g/cm³ of slurry.
    let powder = powder("powder-gypsum");
    let per_cm3 = 1.0 / (1.0 / powder.density_g_cm3.value + powder.ratio.value / powder.liquid_density_g_cm3.value);
    assert!((per_cm3 - 1.2611).abs() < 5e-5, "{per_cm3}");
    assert!((per_cm3 * (1.0 + powder.ratio.value) - 1.7655).abs() < 5e-5);
}

#[test]
fn ratios_and_ceilings_stand_in_order() {
    for powder in shelf().all::<Powder>() {
        let ratios = [&powder.ratio, &powder.ratio_fine, &powder.ratio_medium, &powder.ratio_heavy];
        for ratio in ratios.into_iter().chain(&powder.ratio_fast) {
            assert!(powder.ratio_range.contains(ratio.value), "{}", powder.id);
        }
        assert!(
            powder.ratio_heavy.value <= powder.ratio_medium.value && powder.ratio_medium.value <= powder.ratio_fine.value,
            "{}",
            powder.id
        );
        assert!(powder.planned_ceiling_c.value < powder.stop_ceiling_c.value, "{}", powder.id);
        assert!(powder.stones_ceiling_c.iter().all(|stones| stones.value < powder.planned_ceiling_c.value), "{}", powder.id);
        assert!(powder.density_range.contains(powder.density_g_cm3.value), "{}", powder.id);
        assert_eq!(powder.liquid == Liquid::Water, powder.class.is_gypsum(), "{}", powder.id);
        assert!(powder.stand_min_h.value <= powder.set_h.low, "{}", powder.id);
    }
}

#[test]
fn published_ceilings() {
    for powder in shelf().all::<Powder>().filter(|powder| powder.class.is_gypsum()) {
        assert!((powder.planned_ceiling_c.value - 750.0).abs() < 1e-9, "source F70");
        assert!((powder.stop_ceiling_c.value - 788.0).abs() < 1e-9, "source F69, 1450 °F");
    }
    let stones = |id: &str| powder(id).stones_ceiling_c.as_ref().map(|ceiling| ceiling.value);
    assert_eq!(stones("powder-gypsum"), Some(454.0), "source F57");
    assert_eq!(stones("powder-gypsum-stones"), Some(510.0), "source F79");
    assert_eq!(stones("powder-gypsum-resin"), None);
    assert_eq!(stones("powder-phosphate"), None);
}

#[test]
fn the_steps_of_the_clock_end_inside_their_window() {
    for powder in shelf().all::<Powder>() {
        let end = powder.mix_min.value + powder.bowl_vacuum_min.value + powder.pour_min.value + powder.flask_vacuum_min.value;
        assert!(end >= powder.finish_not_before_min.value, "{}: {end} is early, water marks", powder.id);
        assert!(end <= powder.gloss_off_min.low - powder.finish_before_gloss_off_min.high, "{}: {end} is late", powder.id);
        let poured = end - powder.flask_vacuum_min.value;
        assert!(poured <= powder.gloss_off_min.low - powder.stop_pouring_before_gloss_off_min.high, "{}: poured at {poured}", powder.id);
        assert!(end <= powder.working_time_min.high, "{}", powder.id);
    }
}

#[test]
fn gypsum_gives_up_its_water_as_the_enthalpies_say() {
    // Pencil: gypsum to anhydrite II and vapour is 609 kJ per kg of gypsum in all, and a kg of hemihydrate becomes 1.1862 kg of gypsum.
    for powder in shelf().all::<Powder>().filter(|powder| powder.class.is_gypsum()) {
        let thermal = powder.thermal.as_ref().unwrap();
        let total: f64 = thermal.latent.iter().map(|step| step.kj_per_kg_binder.value).sum();
        assert!((total - 609.0 * 1.1862).abs() < 5.0, "{}: {total}", powder.id);
        assert!((thermal.bound_water_per_binder.value - 0.1862).abs() < 1e-9);
        assert!(thermal.k_dry_range.contains(thermal.k_dry_w_m_k.value) && thermal.k_wet_range.contains(thermal.k_wet_w_m_k.value));
        assert!(thermal.binder_range.contains(thermal.binder_fraction.value));
        assert!(thermal.latent.iter().all(|step| step.from_c < step.to_c));
    }
}

#[test]
fn a_curve_is_straight_between_its_points_and_level_beyond() {
    let cp = &powder("powder-gypsum").thermal.as_ref().unwrap().cp_dry_kj_kg_k;
    for (at_c, expected) in [(0.0, 0.85), (25.0, 0.85), (112.5, 0.91), (200.0, 0.97), (300.0, 1.035), (800.0, 1.12), (900.0, 1.12)] {
        assert!((cp.at(at_c) - expected).abs() < 1e-12, "{at_c}: {}", cp.at(at_c));
    }
}

#[test]
fn resin_keeps_off_the_wall_and_needs_air_and_hours() {
    for material in shelf().all::<PatternMaterial>() {
        let resin = matches!(material.class, PatternClass::CastableResin | PatternClass::WaxFilledPrint | PatternClass::Pla);
        // 6 mm: source F113; 10 mm for resin: source F88.
        assert!((material.wall_clearance_mm.value - if resin { 10.0 } else { 6.0 }).abs() < 1e-12, "{}", material.id);
        assert!(material.burnout.above_700_h.low >= if resin { 2.0 } else { 1.0 }, "{}", material.id);
        assert!(material.burnout.needs_air, "{}", material.id);
        assert!(!(resin && (material.burnout.melts_out || material.burnout.dewax)), "{}", material.id);
        assert!(!material.burnout.dewax || material.burnout.melts_out, "{}", material.id);
        assert!(material.density_range.contains(material.density_g_cm3.value), "{}", material.id);
    }
}
