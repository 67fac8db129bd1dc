//! Filling: what drives the metal, how fine a detail it enters, and whether the tree is full before its thinnest wall has frozen.

use super::alloy::AlloyTerms;
use super::book::Id;
use super::finding::{self, Arg};
use super::freeze_time::Freezing;
use super::pass::Pass;
use super::pattern::{PatternFigures, THINNEST};
use super::rule::{givens, inputs, rules};
use super::spin::SpinFigures;
use super::tree::TreeFigures;
use super::value::Cause;
use crate::job::{Drive, Flask, Pattern, Place, Tree};

inputs! {
    /// What the vacuum gauge reads at the pour.
    VACUUM_READ "flask.vacuum-gauge" Vacuum;
    /// Height of the tree.
    HEIGHT_UNKNOWN "fill.height-unknown" Length;
    /// Surface tension of the liquid.
    TENSION "alloy.surface-tension" SurfaceTension;
    /// Diameter of a sprue.
    SPRUE_DIAMETER "fill.sprue-diameter" Length;
    /// How many sprues.
    SPRUE_COUNT "fill.sprue-count" Count;
}

/// A gauge of 25 inches of mercury, in kPa.
pub const VACUUM_KPA: f64 = 85.0;

givens! {
    /// A gauge of 25 inches of mercury.
    VACUUM_DEFAULT "flask.vacuum-gauge" Vacuum = VACUUM_KPA; Article "casters' forum: 25–26 inHg at the casting table, never full, because air comes through the mould"
    /// How much of the gauge's reading reaches the pattern.
    VACUUM_SHARE "fill.vacuum-share" Ratio = 0.5; CommonPractice "mould and leaks take a part; half is on the careful side: common practice, no source"
    /// What a choke lets through of what it would without friction.
    DISCHARGE "fill.discharge" Ratio = 0.8; FromMemory "about 0.8 for a short round choke (from memory)"
    /// Gravity.
    GRAVITY "fill.gravity" Acceleration = 9.806_65; Standard "standard gravity, by definition"
    /// No head is left once the tree is as full as the funnel.
    NO_HEAD "fill.no-head" Pressure = 0.0; Computed "the metal stands level when the tree is full"
}

rules! {
    /// Pressure of a column of metal.
    HEAD "fill.head" (density: Density, gravity: Acceleration, height: Length) -> Pressure
        = Formula "density*gravity*height/1000" { density * gravity * height / 1000.0 };
        Computed "density, gravity, height"
    /// What the vacuum adds at the pattern.
    VACUUM_THERE "fill.vacuum" (gauge: Vacuum, barometer: Pressure, share: Ratio) -> Pressure
        = Formula "min(gauge, barometer)*share" { gauge.min(barometer) * share };
        CommonPractice "the gauge's reading, never more than the barometer's, less what mould and leaks take"
    /// Pressure at the far end under vacuum.
    WITH_VACUUM "fill.pressure" (head: Pressure, vacuum: Pressure) -> Pressure
        = Formula "head + vacuum" { head + vacuum };
        Computed "the metal's own weight and the air above it"
    /// Pressure at the pattern in a spin.
    SPIN_PRESSURE "fill.spin-pressure" (density: Density, speed: Rotation, pattern: Length, metal: Length) -> Pressure
        = Formula "density/2*(2*pi*speed/60)^2*(pattern^2 - metal^2)/1000000" {
            density / 2.0 * (2.0 * std::f64::consts::PI * speed / 60.0).powi(2) * (pattern * pattern - metal * metal) / 1e6
        };
        Computed "½ρω²(R² − r²), R at the pattern, r at the metal's surface"
    /// Speed through the choke.
    VELOCITY "fill.velocity" (discharge: Ratio, pressure: Pressure, density: Density) -> Velocity
        = Formula "discharge*sqrt(2*pressure/density)" { discharge * (2.0 * pressure / density).sqrt() };
        Computed "Torricelli's rule with the choke's discharge"
    /// Mean speed while the tree fills from its far end: the head falls with what stands in it already, and the speed evenly with time.
    MEAN_VELOCITY "fill.mean-velocity" (start: Velocity, end: Velocity) -> Velocity
        = Formula "(start + end)/2" { f64::midpoint(start, end) };
        Computed "bottom filling: the speed falls evenly from the first to the last"
    /// Section of equal rods.
    ROD_SECTION "fill.rod-section" (diameter: Length, count: Count) -> Area
        = Formula "pi/4*diameter^2*count" { std::f64::consts::FRAC_PI_4 * diameter * diameter * count };
        Computed "round rods"
    /// Section of all feed sprues.
    FEEDS_SECTION "fill.feeds-section" (section: Area) -> Area = Sum "sum(section)"; Computed "all runs"
    /// The narrowest that all the metal goes through.
    CHOKE "fill.choke" (trunk: Area, feeds: Area) -> Area
        = Formula "min(trunk, feeds)" { trunk.min(feeds) };
        Computed "main sprue, or all feed sprues together"
    /// How long the tree takes to fill.
    FILL_TIME "fill.time" (volume: Volume, choke: Area, velocity: Velocity) -> Seconds
        = Formula "volume/(choke*velocity)" { volume / (choke * velocity) };
        Computed "volume over what goes through the choke"
    /// The smallest radius the pressure enters.
    DETAIL "fill.detail" (tension: SurfaceTension, pressure: Pressure) -> Length
        = Formula "2*tension/pressure" { 2.0 * tension / pressure };
        Computed "capillary pressure 2γ/r of metal that does not wet the mould"
    /// The radius of a place as thin as the thinnest wall.
    THIN_RADIUS "fill.thin-radius" (wall: Length) -> Length
        = Formula "wall/2" { wall / 2.0 };
        Computed "an edge or a wire as thin as the wall"
    /// The pressure that enters it.
    DETAIL_PRESSURE "fill.detail-pressure" (tension: SurfaceTension, radius: Length) -> Pressure
        = Formula "2*tension/radius" { 2.0 * tension / radius };
        Computed "capillary pressure 2γ/r of metal that does not wet the mould"
}

/// How the metal gets into one flask.
#[derive(Debug, Clone, Copy)]
pub struct FillFigures {
    /// Pressure at the far end of the tree, or at the pattern in a spin.
    pub pressure: Id,
    /// The smallest radius it enters.
    pub detail: Id,
    /// The thinnest wall in the flask, and the pressure a detail as thin asks for.
    pub thinnest: Option<[Id; 2]>,
    /// How long the tree takes to fill, where its sprues are known.
    pub filling: Option<Id>,
    /// How long the thinnest wall takes to freeze; `None` where it is not known, or where the mould is as hot as the metal freezes.
    pub thin_freezes: Option<Id>,
    /// How long the heaviest place takes to freeze.
    pub heavy_freezes: Option<Id>,
    /// The mould is as hot as the metal freezes.
    pub never_freezes: bool,
}

impl<'a> Pass<'a> {
    pub(super) fn flask_fill(
        &mut self,
        flask: &'a Flask,
        (tree, tree_figures): (Option<&'a Tree>, Option<&TreeFigures>),
        (alloy, barometer): (Option<AlloyTerms<'a>>, Id),
        spin: Option<&SpinFigures>,
        (freezing, never): (Option<Freezing>, bool),
        (hung, patterns): (&[&'a Pattern], &[PatternFigures]),
    ) -> FillFigures {
        let place = Place::Flask(flask.id);
        let density =
            alloy.map_or_else(|| self.book.absent(&super::metal::FLASK_ALLOY, place, Cause::NotChosen), |alloy| alloy.liquid_density);
        let [pressure, end] = self.pressures(flask, tree_figures, density, barometer, spin);
        let tension = match alloy {
            Some(alloy) => {
                let tension = alloy.alloy.thermal.as_ref().map(|thermal| &thermal.surface_tension_n_m);
                self.shelf_term_or_absent(&TENSION, &alloy.alloy.id, tension, place)
            }
            None => self.book.absent(&TENSION, place, Cause::NotChosen),
        };
        let detail = self.book.derive(&DETAIL, place, [tension, pressure]);
        let (thin, heavy) = self.thin_and_heavy(hung, patterns);
        let thinnest = thin.map(|wall| {
            let radius = self.book.derive(&THIN_RADIUS, place, [wall]);
            self.detail_found(place, [radius, wall, detail, pressure]);
            [wall, self.book.derive(&DETAIL_PRESSURE, place, [tension, radius])]
        });
        let choke = tree.and_then(|tree| self.choke(tree));
        let filling = choke.zip(tree_figures).map(|(choke, tree)| {
            let discharge = self.book.constant(&DISCHARGE);
            let start = self.book.derive(&VELOCITY, place, [discharge, pressure, density]);
            let end = self.book.derive(&VELOCITY, place, [discharge, end, density]);
            let mean = self.book.derive(&MEAN_VELOCITY, place, [start, end]);
            self.book.derive(&FILL_TIME, place, [tree.volume, choke, mean])
        });
        let thin_freezes = freezing.zip(thin).map(|(freezing, wall)| self.wall_freezes(place, freezing, wall));
        let heavy_freezes = freezing.zip(heavy).map(|(freezing, wall)| self.ball_freezes(place, freezing, wall));
        if let (Some(filling), Some(freezes), Some(wall)) = (filling, thin_freezes, thin)
            && let (Some(fills), Some(frozen)) = (self.book.number(filling), self.book.number(freezes))
            && fills > frozen
        {
            self.find_on(&finding::FREEZES_FIRST, place, filling, vec![Arg::Figure(filling), Arg::Figure(freezes), Arg::Figure(wall)]);
        }
        FillFigures { pressure, detail, thinnest, filling, thin_freezes, heavy_freezes, never_freezes: never }
    }

    /// What drives the metal when the first of it comes to the far end, and when the last does.
    fn pressures(
        &mut self,
        flask: &'a Flask,
        tree: Option<&TreeFigures>,
        density: Id,
        barometer: Id,
        spin: Option<&SpinFigures>,
    ) -> [Id; 2] {
        let place = Place::Flask(flask.id);
        if let Some(spin) = spin {
            let pressure = self.book.derive(&SPIN_PRESSURE, place, [density, spin.speed, spin.pattern_radius, spin.metal_radius]);
            return [pressure; 2];
        }
        let unknown = if tree.is_some() { Cause::NotSaid } else { Cause::NotChosen };
        let height = tree.and_then(|tree| tree.outline.height).unwrap_or_else(|| self.book.absent(&HEIGHT_UNKNOWN, place, unknown));
        let gravity = self.book.constant(&GRAVITY);
        let head = self.book.derive(&HEAD, place, [density, gravity, height]);
        if flask.drive == Drive::Gravity {
            return [head, self.book.constant(&NO_HEAD)];
        }
        let gauge = self.book.entered_or(&VACUUM_READ, place, flask.vacuum_kpa, &VACUUM_DEFAULT);
        let share = self.book.constant(&VACUUM_SHARE);
        let vacuum = self.book.derive(&VACUUM_THERE, place, [gauge, barometer, share]);
        [self.book.derive(&WITH_VACUUM, place, [head, vacuum]), vacuum]
    }

    /// The narrowest section that all the metal goes through, where the main sprue is known.
    fn choke(&mut self, tree: &'a Tree) -> Option<Id> {
        let place = Place::Tree(tree.id);
        let trunk = tree.main_sprue.as_ref()?.diameter_mm?;
        let mut section = |diameter: f64, count: u32| {
            let diameter = self.book.entered(&SPRUE_DIAMETER, place, diameter);
            let count = self.book.entered(&SPRUE_COUNT, place, f64::from(count));
            self.book.derive(&ROD_SECTION, place, [diameter, count])
        };
        let trunk = section(trunk.get(), 1);
        let runs = tree.sprues.iter().filter(|run| run.count > 0);
        let diameters: Option<Vec<(f64, u32)>> = runs.map(|run| Some((run.diameter_mm?.get(), run.count))).collect();
        let Some(feeds) = diameters.filter(|runs| !runs.is_empty()) else { return Some(trunk) };
        let feeds: Vec<Id> = feeds.into_iter().map(|(diameter, count)| section(diameter, count)).collect();
        let feeds = self.book.derive_over(&FEEDS_SECTION, place, &feeds);
        Some(self.book.derive(&CHOKE, place, [trunk, feeds]))
    }

    /// The thinnest wall and the heaviest place of all patterns in the flask, as far as they are known.
    fn thin_and_heavy(&mut self, hung: &[&'a Pattern], patterns: &[PatternFigures]) -> (Option<Id>, Option<Id>) {
        let mut thin: Option<(f64, Id)> = None;
        let mut heavy: Option<(f64, Id)> = None;
        for pattern in hung {
            let figures = super::order::find_pattern(patterns, pattern.id).filter(|figures| self.plausible(figures));
            let walls = figures.and_then(|figures| figures.walls);
            let wall = match pattern.thinnest_mm {
                Some(wall) => Some(self.book.entered(&THINNEST, Place::Pattern(pattern.id), wall.get())),
                None => walls.map(|[thinnest, ..]| thinnest),
            };
            let number = |id: Option<Id>| id.and_then(|id| Some((self.book.number(id)?, id)));
            let (wall, most) = (number(wall), number(walls.map(|[.., heaviest]| heaviest)));
            thin = [thin, wall].into_iter().flatten().min_by(|a, b| a.0.total_cmp(&b.0));
            heavy = [heavy, most].into_iter().flatten().max_by(|a, b| a.0.total_cmp(&b.0));
        }
        (thin.map(|(_, id)| id), heavy.map(|(_, id)| id))
    }

    /// A place as thin as the thinnest wall, finer than the pressure enters.
    fn detail_found(&mut self, place: Place, [radius, wall, detail, pressure]: [Id; 4]) {
        if let (Some(radius_mm), Some(least_mm)) = (self.book.number(radius), self.book.number(detail))
            && radius_mm < least_mm
        {
            self.find_on(&finding::DETAIL_FINE, place, radius, vec![Arg::Figure(wall), Arg::Figure(detail), Arg::Figure(pressure)]);
        }
    }
}
