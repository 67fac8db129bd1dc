//! Flasks, bases, crucibles, kilns.

use pourbook::stock::{Alloy, Base, Crucible, CrucibleMaterial, Family, Flask, FlaskWall, Kiln, Powder};

use crate::shelf;

#[test]
fn flask_volumes_are_those_of_the_table() {
    // Pencil table, π/4·Ø²·H in exact inches, cm³ rounded; 76×76 is 347.49999 and stands as 348.
    let table = [
        ("51×64", 129.0),
        ("64×64", 201.0),
        ("64×76", 241.0),
        ("64×102", 322.0),
        ("76×76", 348.0),
        ("76×102", 463.0),
        ("89×76", 473.0),
        ("89×102", 631.0),
        ("89×127", 788.0),
        ("102×102", 824.0),
        ("102×152", 1236.0),
        ("102×203", 1647.0),
        ("127×203", 2574.0),
        ("152×203", 3707.0),
    ];
    for (printed, cm3) in table {
        let flask = shelf().all::<Flask>().find(|flask| flask.to_string() == printed && flask.wall == FlaskWall::Solid).expect(printed);
        assert!((flask.volume_cm3() - cm3).abs() <= 0.5001, "{printed}: {}", flask.volume_cm3());
        assert_eq!(flask.id.as_str(), format!("flask-{}", printed.replace('×', "x")));
    }
    assert!(shelf().all::<Flask>().any(|flask| flask.wall == FlaskWall::Perforated));
}

#[test]
fn every_flask_has_a_base_whose_dome_fits_in() {
    for flask in shelf().all::<Flask>() {
        let base = shelf().all::<Base>().find(|base| base.fits(flask.inner_diameter_mm)).unwrap_or_else(|| panic!("{}", flask.id));
        assert!(base.dome_height_mm.value < flask.height_mm / 2.0, "{}", flask.id);
        assert!(base.dome_cm3.value < 0.2 * flask.volume_cm3(), "{}", flask.id);
        assert!(base.funnel_cm3.value < base.dome_cm3.value, "{}", base.id);
    }
    assert!(!shelf().get::<Base>("base-64").unwrap().fits(76.2));
}

#[test]
fn crucibles_melt_what_they_bear() {
    for crucible in shelf().all::<Crucible>() {
        assert!(crucible.usable_cm3.value < crucible.total_cm3.value, "{}", crucible.id);
        // Platinum and palladium take up carbon.
        let carbon = matches!(crucible.material, CrucibleMaterial::Graphite | CrucibleMaterial::ClayGraphite);
        let noble = crucible.families.iter().any(|family| matches!(family, Family::Platinum | Family::Palladium));
        assert!(!(carbon && noble), "{}", crucible.id);
    }
    for alloy in shelf().all::<Alloy>() {
        let pours_at_c = alloy.highest_pour_c().unwrap();
        let found =
            shelf().all::<Crucible>().any(|crucible| crucible.families.contains(&alloy.family) && crucible.ceiling_c.value >= pours_at_c);
        assert!(found, "{}: no crucible bears {pours_at_c} °C", alloy.id);
    }
}

#[test]
fn kilns_rise_and_fall_by_band() {
    for kiln in shelf().all::<Kiln>() {
        assert!((kiln.bands.last().unwrap().up_to_c - kiln.ceiling_c.value).abs() < 1e-9, "{}: bands reach the ceiling", kiln.id);
        for pair in kiln.bands.windows(2) {
            // Less power is left and more heat is lost the hotter it is.
            assert!(
                pair[0].up_to_c < pair[1].up_to_c && pair[0].rise_k_h >= pair[1].rise_k_h && pair[0].fall_k_h <= pair[1].fall_k_h,
                "{}",
                kiln.id
            );
        }
        let bands = &kiln.bands;
        assert_eq!(kiln.band_at(20.0), bands.first());
        assert_eq!(kiln.band_at(bands[0].up_to_c), bands.get(1), "a band holds below its end");
        assert_eq!(kiln.band_at(3000.0), bands.last());
    }
    let hottest = shelf().all::<Powder>().map(|powder| powder.planned_ceiling_c.value).fold(0.0, f64::max);
    assert!(shelf().all::<Kiln>().any(|kiln| kiln.ceiling_c.value >= hottest));
}
