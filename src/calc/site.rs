//! Where the work is done: barometer, water, and the gauge reading at which water boils.

use super::book::{Book, Id};
use super::pass::Pass;
use super::rule::{givens, inputs, rules};
use crate::job::Place;
use crate::quantity::Finite;

inputs! {
    /// Height above the sea.
    ALTITUDE "site.altitude" Altitude;
    /// Station pressure read today.
    BAROMETER "site.barometer-read" Pressure;
    /// Room temperature.
    ROOM "site.room" Temperature;
    /// Temperature of the mixing water.
    WATER "site.water" Temperature;
}

givens! {
    /// Sea level, where nobody said how high the studio lies.
    SEA_LEVEL "site.altitude" Altitude = 0.0; CommonPractice "assumed until the studio's height is entered"
    /// Room and water where nobody said.
    ROOM_DEFAULT "site.room" Temperature = 21.0; Article "trade article: water and powder at 21–22 °C (70–72 °F)"
    /// Mixing water where nobody said.
    WATER_DEFAULT "site.water" Temperature = 21.0; Article "trade article: water and powder at 21–22 °C (70–72 °F)"
}

rules! {
    /// Pressure of the air at a height.
    BAROMETER_AT "vacuum.barometer" (altitude: Altitude) -> Pressure
        = Lookup "ISO 2533 standard atmosphere: 101.325·(1 − 0.0065·altitude/288.15)^5.255876" { standard_atmosphere_kpa(altitude) };
        FromMemory "ISO 2533, standard atmosphere (formula from memory, table values met)"
    /// Pressure at which water boils at a temperature.
    SATURATION "vacuum.saturation" (water: Temperature) -> Pressure
        = Lookup "IAPWS-IF97 region 4, equation 30, at the water's temperature" { saturation_kpa(water) };
        Published "IAPWS Industrial Formulation 1997, region 4"
    /// What the gauge must read before the water in the bowl boils.
    GAUGE "vacuum.gauge-to-boil" (barometer: Pressure, saturation: Pressure) -> Vacuum
        = Formula "barometer - saturation" { barometer - saturation };
        Computed "a gauge reads the difference from the air around it"
}

/// Air pressure in kPa at `altitude_m`, ISO 2533 up to 11 km.
#[must_use]
pub fn standard_atmosphere_kpa(altitude_m: f64) -> f64 {
    101.325 * (1.0 - 0.0065 * altitude_m / 288.15).powf(5.255_876)
}

/// Saturation pressure of water in kPa at `water_c` (0 to 370 °C), IAPWS-IF97 region 4; NaN outside.
#[must_use]
pub fn saturation_kpa(water_c: f64) -> f64 {
    const N: [f64; 10] = [
        0.116_705_214_527_67e4,
        -0.724_213_167_032_06e6,
        -0.170_738_469_400_92e2,
        0.120_208_247_024_70e5,
        -0.323_255_503_223_33e7,
        0.149_151_086_135_30e2,
        -0.482_326_573_615_91e4,
        0.405_113_405_420_57e6,
        -0.238_555_575_678_49,
        0.650_175_348_447_98e3,
    ];
    if !(0.0..=370.0).contains(&water_c) {
        return f64::NAN;
    }
    let t_k = water_c + 273.15;
    let theta = t_k + N[8] / (t_k - N[9]);
    let a = theta * theta + N[0] * theta + N[1];
    let b = N[2] * theta * theta + N[3] * theta + N[4];
    let c = N[5] * theta * theta + N[6] * theta + N[7];
    let root = 2.0 * c / (-b + (b * b - 4.0 * a * c).sqrt());
    root.powi(4) * 1000.0
}

/// Figures of the place.
#[derive(Debug, Clone, Copy)]
pub struct SiteFigures {
    /// Air pressure.
    pub barometer: Id,
    /// Room temperature.
    pub room: Id,
    /// Temperature of the mixing water.
    pub water: Id,
}

impl Pass<'_> {
    pub(super) fn site(&mut self) -> SiteFigures {
        let (job, studio) = (&self.job.site, &self.studio.site);
        let said = |book: &mut Book, input, in_job: Option<Finite>, in_studio: Option<Finite>| match (in_job, in_studio) {
            (Some(number), _) => Some(book.entered(input, Place::Job, number.get())),
            (None, Some(number)) => Some(book.studio(input, number.get())),
            (None, None) => None,
        };
        // What the job says of its place beats the studio, in whichever way it says it: a batch cast up a mountain has no use for the
        // studio's barometer.
        let of_studio = |number: Option<Finite>| number.filter(|_| job.altitude_m.is_none());
        let barometer = said(self.book, &BAROMETER, job.barometer_kpa, of_studio(studio.barometer_kpa)).unwrap_or_else(|| {
            let altitude =
                said(self.book, &ALTITUDE, job.altitude_m, studio.altitude_m).unwrap_or_else(|| self.book.assumed(&SEA_LEVEL, Place::Job));
            self.book.derive(&BAROMETER_AT, Place::Job, [altitude])
        });
        let room = said(self.book, &ROOM, job.room_c, studio.room_c).unwrap_or_else(|| self.book.assumed(&ROOM_DEFAULT, Place::Job));
        let water = said(self.book, &WATER, job.water_c, studio.water_c).unwrap_or_else(|| self.book.assumed(&WATER_DEFAULT, Place::Job));
        SiteFigures { barometer, room, water }
    }
}
