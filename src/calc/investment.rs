//! Investment: slurry, powder, water, mixes, the mixing clock.

use super::book::Id;
use super::burnout::table_of;
use super::finding::{self, Arg};
use super::metal::ceil_to;
use super::pass::Pass;
use super::rule::{givens, inputs, rules};
use super::site::{GAUGE, SATURATION, SiteFigures, WATER};
use super::tree::TreeFigures;
use super::value::Cause;
use crate::job::{Flask, Place};
use crate::stock::{Base, Flask as Vessel, Powder, StageTable};

inputs! {
    /// Inner diameter of the flask.
    DIAMETER "flask.inner-diameter" Length;
    /// Inner height of the flask.
    HEIGHT "flask.height" Length;
    /// Height of the collar.
    COLLAR "flask.collar" Length;
    /// Volume of the base's dome.
    DOME "base.dome" Volume;
    /// Slurry mixed beyond what is needed.
    SPILL "mix.spill" Ratio;
    /// Density of the powder's grains.
    POWDER_DENSITY "powder.density" Density;
    /// Density of the liquid.
    LIQUID "powder.liquid-density" Density;
    /// Liquid to powder by weight.
    RATIO "mix.ratio" Ratio;
    /// The mixing bowl.
    BOWL "mix.bowl" Volume;
    /// How many times its volume the slurry rises under vacuum.
    RISE "powder.slurry-rise" Ratio;
    /// Mixing.
    MIX_MIN "powder.mix" Duration;
    /// The bowl under vacuum.
    BOWL_VACUUM "powder.bowl-vacuum" Duration;
    /// Pouring.
    POUR_MIN "powder.pour" Duration;
    /// The flask under vacuum.
    FLASK_VACUUM "powder.flask-vacuum" Duration;
    /// Loss of shine.
    GLOSS_OFF "powder.gloss-off" Duration;
    /// All is done so long before.
    BEFORE_GLOSS_OFF "powder.finish-before" Duration;
    /// The flask chosen.
    VESSEL "flask.vessel" Length;
}

givens! {
    /// No collar.
    NO_COLLAR "flask.collar" Length = 0.0; CommonPractice "none until one is entered"
    /// A tenth for spill.
    SPILL_DEFAULT "mix.spill" Ratio = 0.10; CommonPractice "published flask tables carry 10 % and more for spill"
    /// A bowl of five litres.
    BOWL_DEFAULT "mix.bowl" Volume = 5000.0; CommonPractice "assumed until the studio's bowl is entered"
    /// No dome where no base is chosen.
    NO_DOME "base.dome" Volume = 0.0; CommonPractice "no base chosen: nothing taken off, so rather too much slurry"
    /// Powder is weighed to the gram.
    POWDER_STEP_DEFAULT "mix.powder-step" Mass = 1.0; CommonPractice "powder weighed to the gram"
}

rules! {
    /// Inside of the flask with its collar.
    FLASK_VOLUME "flask.volume" (diameter: Length, height: Length, collar: Length) -> Volume
        = Formula "pi/4*diameter^2*(height + collar)/1000" { std::f64::consts::FRAC_PI_4 * diameter * diameter * (height + collar) / 1000.0 };
        Computed "a cylinder"
    /// Slurry to be mixed.
    SLURRY "mix.slurry" (flask: Volume, tree: Volume, dome: Volume, spill: Ratio) -> Volume
        = Formula "max(flask - tree - dome, 0)*(1 + spill)" { (flask - tree - dome).max(0.0) * (1.0 + spill) };
        Computed "what the flask holds less tree and dome, and something for spill"
    /// Powder in a cubic centimetre of slurry.
    POWDER_IN_SLURRY "mix.powder-in-slurry" (powder: Density, ratio: Ratio, liquid: Density) -> Density
        = Formula "1/(1/powder + ratio/liquid)" { 1.0 / (1.0 / powder + ratio / liquid) };
        Computed "volumes of powder and liquid add up"
    /// Density of the slurry.
    SLURRY_DENSITY "mix.slurry-density" (powder: Density, ratio: Ratio, liquid: Density) -> Density
        = Formula "(1 + ratio)/(1/powder + ratio/liquid)" { (1.0 + ratio) / (1.0 / powder + ratio / liquid) };
        Computed "masses and volumes of powder and liquid add up"
    /// Powder for the flask.
    POWDER "mix.powder" (slurry: Volume, each: Density) -> Mass
        = Formula "slurry*each" { slurry * each };
        Computed "volume times powder in a cubic centimetre"
    /// Powder as it is weighed out, up to the next step.
    POWDER_WEIGHED "mix.powder-weighed" (powder: Mass, step: Mass) -> Mass
        = Decimal "ceilto(powder, step)" { ceil_to(powder, step) };
        CommonPractice "rounded up: a flask filled short is lost"
    /// Water, or the powder's own liquid.
    WATER_WEIGHED "mix.water" (powder: Mass, ratio: Ratio) -> Mass
        = Formula "powder*ratio" { powder * ratio };
        Computed "by weight, from the powder as it is weighed out"
    /// How many mixes the bowl asks for.
    MIXES "mix.mixes" (slurry: Volume, rise: Ratio, bowl: Volume) -> Count
        = Formula "ceil(slurry*rise/bowl)" { (slurry * rise / bowl).ceil() };
        CommonPractice "slurry rises to two or three times its volume under vacuum and must not reach the rim"
    /// Powder of one mix.
    POWDER_OF_MIX "mix.powder-of-mix" (powder: Mass, mixes: Count) -> Mass
        = Formula "powder/mixes" { powder / mixes };
        Computed "equal mixes"
    /// Liquid of one mix.
    WATER_OF_MIX "mix.water-of-mix" (water: Mass, mixes: Count) -> Mass
        = Formula "water/mixes" { water / mixes };
        Computed "equal mixes"
    /// The clock when the bowl comes out of the vacuum.
    BOWL_OVER "mix.bowl-over" (mix: Duration, bowl: Duration) -> Duration
        = Formula "mix + bowl" { mix + bowl };
        Computed "one step after the other"
    /// The clock when the flask is full.
    POUR_OVER "mix.pour-over" (mix: Duration, bowl: Duration, pour: Duration) -> Duration
        = Formula "mix + bowl + pour" { mix + bowl + pour };
        Computed "one step after the other"
    /// From powder in the water to the flask left alone.
    MIX_CLOCK "mix.clock" (mix: Duration, bowl: Duration, pour: Duration, flask: Duration) -> Duration
        = Formula "mix + bowl + pour + flask" { mix + bowl + pour + flask };
        Article "trade article: mix, bowl under vacuum, pour, flask under vacuum"
    /// When the flask must stand still.
    FINISH_BY "mix.finish-by" (gloss_off: Duration, before: Duration) -> Duration
        = Formula "gloss_off - before" { gloss_off - before };
        Article "trade article: finish before gloss-off; the gloss-off measured for this lot today rules"
}

/// Investment figures of one flask.
#[derive(Debug, Clone, Copy)]
pub struct MixFigures {
    /// Inside of the flask.
    pub flask_volume: Id,
    /// Slurry.
    pub slurry: Id,
    /// Density of the slurry.
    pub slurry_density: Id,
    /// Powder in a cubic centimetre of it: the fired mould's density.
    pub powder_in_slurry: Id,
    /// Liquid to powder by weight.
    pub ratio: Id,
    /// Powder, as weighed out.
    pub powder: Id,
    /// Liquid.
    pub water: Id,
    /// Mixes.
    pub mixes: Id,
    /// Powder of one mix.
    pub powder_of_mix: Id,
    /// Liquid of one mix.
    pub water_of_mix: Id,
    /// From powder in the water to the flask left alone.
    pub clock: Id,
    /// The steps of that clock: mix, bowl, pour, flask.
    pub steps: [Id; 4],
    /// The clock when each of them is over.
    pub over: [Id; 4],
    /// When the flask must stand still.
    pub finish_by: Id,
    /// Temperature of the water.
    pub water_c: Id,
    /// What the gauge must read before the water boils.
    pub gauge: Id,
}

impl<'a> Pass<'a> {
    pub(super) fn flask_mix(
        &mut self,
        flask: &'a Flask,
        vessel: Option<&'a Vessel>,
        base: Option<&'a Base>,
        powder: Option<&'a Powder>,
        tree: Option<&TreeFigures>,
        site: &SiteFigures,
    ) -> MixFigures {
        let place = Place::Flask(flask.id);
        let flask_volume = self.flask_volume(flask, vessel);
        let tree_volume = tree.map_or_else(|| self.book.absent(&super::metal::FLASK_TREE, place, Cause::NotChosen), |tree| tree.volume);
        let dome = match base {
            Some(base) => self.shelf_term(&DOME, &base.id, &base.dome_cm3),
            None => self.book.assumed(&NO_DOME, place),
        };
        let spill = self.book.entered_or(&SPILL, place, flask.spill_share, &SPILL_DEFAULT);
        let slurry = self.book.derive(&SLURRY, place, [flask_volume, tree_volume, dome, spill]);
        if self.book.number(slurry).is_some_and(|slurry| slurry <= 0.0) {
            self.find_on(&finding::TREE_OVER_FLASK, place, tree_volume, vec![Arg::Figure(tree_volume), Arg::Figure(flask_volume)]);
        }
        let (density, liquid) = match powder {
            Some(powder) => (
                self.shelf_term(&POWDER_DENSITY, &powder.id, &powder.density_g_cm3),
                self.shelf_term(&LIQUID, &powder.id, &powder.liquid_density_g_cm3),
            ),
            None => (self.book.absent(&POWDER_DENSITY, place, Cause::NotChosen), self.book.absent(&LIQUID, place, Cause::NotChosen)),
        };
        let ratio = self.ratio(flask, powder);
        let each = self.book.derive(&POWDER_IN_SLURRY, place, [density, ratio, liquid]);
        let slurry_density = self.book.derive(&SLURRY_DENSITY, place, [density, ratio, liquid]);
        let exact = self.book.derive(&POWDER, place, [slurry, each]);
        let step = self.book.assumed(&POWDER_STEP_DEFAULT, place);
        let weighed = self.book.derive(&POWDER_WEIGHED, place, [exact, step]);
        let water = self.book.derive(&WATER_WEIGHED, place, [weighed, ratio]);
        let (mixes, powder_of_mix, water_of_mix) = self.mixes(flask, powder, slurry, weighed, water);
        let (steps, clock, finish_by) = self.mix_clock(flask, powder);
        let water_c = match flask.water_c {
            Some(number) => self.book.entered(&WATER, place, number.get()),
            None => site.water,
        };
        let saturation = self.book.derive(&SATURATION, place, [water_c]);
        let gauge = self.book.derive(&GAUGE, place, [site.barometer, saturation]);
        MixFigures {
            flask_volume,
            slurry,
            slurry_density,
            powder_in_slurry: each,
            ratio,
            powder: weighed,
            water,
            mixes,
            powder_of_mix,
            water_of_mix,
            clock,
            steps,
            over: self.steps_over(place, steps, clock),
            finish_by,
            water_c,
            gauge,
        }
    }

    fn steps_over(&mut self, place: Place, [mix, bowl, pour, _]: [Id; 4], clock: Id) -> [Id; 4] {
        let bowl_over = self.book.derive(&BOWL_OVER, place, [mix, bowl]);
        let pour_over = self.book.derive(&POUR_OVER, place, [mix, bowl, pour]);
        [mix, bowl_over, pour_over, clock]
    }

    fn flask_volume(&mut self, flask: &'a Flask, vessel: Option<&'a Vessel>) -> Id {
        let place = Place::Flask(flask.id);
        let collar = self.book.entered_or(&COLLAR, place, flask.collar_mm, &NO_COLLAR);
        let (diameter, height) = self.vessel_size(vessel, place);
        self.book.derive(&FLASK_VOLUME, place, [diameter, height, collar])
    }

    /// Inner diameter and height of the steel.
    pub(super) fn vessel_size(&mut self, vessel: Option<&'a Vessel>, place: Place) -> (Id, Id) {
        match vessel {
            Some(vessel) => {
                let origin = &vessel.origin;
                (
                    self.book.shelf_number(&DIAMETER, &vessel.id, vessel.inner_diameter_mm, origin.source(), origin.trust()),
                    self.book.shelf_number(&HEIGHT, &vessel.id, vessel.height_mm, origin.source(), origin.trust()),
                )
            }
            None => (self.book.absent(&VESSEL, place, Cause::NotChosen), self.book.absent(&VESSEL, place, Cause::NotChosen)),
        }
    }

    /// Is the flask's load burnt out by a fast schedule?
    fn burnt_fast(&self, flask: &Flask) -> bool {
        let load = self.job.burnouts.iter().find(|load| Some(load.id) == flask.burnout);
        let table = load.and_then(table_of).and_then(|id| self.shelf.get::<StageTable>(id.as_str()));
        table.is_some_and(|table| table.fast.is_some())
    }

    fn ratio(&mut self, flask: &'a Flask, powder: Option<&'a Powder>) -> Id {
        let place = Place::Flask(flask.id);
        let ratio = match (flask.ratio, powder) {
            (Some(ratio), _) => self.book.entered(&RATIO, place, ratio.get()),
            (None, Some(powder)) => {
                let thick = powder.ratio_fast.as_ref().filter(|_| self.burnt_fast(flask));
                match thick {
                    Some(thick) => self.shelf_term(&super::burnout::THICK_MIX, &powder.id, thick),
                    None => self.shelf_term(&RATIO, &powder.id, &powder.ratio),
                }
            }
            (None, None) => self.book.absent(&RATIO, place, Cause::NotChosen),
        };
        if let (Some(value), Some(powder)) = (self.book.number(ratio), powder)
            && !powder.ratio_range.contains(value)
        {
            let span = &powder.ratio_range;
            let low = self.book.shelf_number(&RATIO, &powder.id, span.low, &span.source, span.trust);
            let high = self.book.shelf_number(&RATIO, &powder.id, span.high, &span.source, span.trust);
            self.find_on(&finding::RATIO_OUTSIDE, place, ratio, vec![Arg::Figure(ratio), Arg::Figure(low), Arg::Figure(high)]);
        }
        ratio
    }

    fn mixes(&mut self, flask: &'a Flask, powder: Option<&'a Powder>, slurry: Id, weighed: Id, water: Id) -> (Id, Id, Id) {
        let place = Place::Flask(flask.id);
        let bowl = match (flask.bowl_cm3, self.studio.bowl_cm3) {
            (Some(bowl), _) => self.book.entered(&BOWL, place, bowl.get()),
            (None, Some(bowl)) => self.book.studio(&BOWL, bowl.get()),
            (None, None) => self.book.assumed(&BOWL_DEFAULT, place),
        };
        let rise = match powder {
            // The higher end: slurry over the rim is lost, and so is the pump's oil.
            Some(powder) => {
                let span = &powder.slurry_rise;
                self.book.shelf_number(&RISE, &powder.id, span.high, &span.source, span.trust)
            }
            None => self.book.absent(&RISE, place, Cause::NotChosen),
        };
        let mixes = self.book.derive(&MIXES, place, [slurry, rise, bowl]);
        let powder_of_mix = self.book.derive(&POWDER_OF_MIX, place, [weighed, mixes]);
        let water_of_mix = self.book.derive(&WATER_OF_MIX, place, [water, mixes]);
        if self.book.number(mixes).is_some_and(|mixes| mixes > 1.0) {
            self.find_on(&finding::SEVERAL_MIXES, place, mixes, vec![Arg::Figure(mixes), Arg::Figure(bowl)]);
        }
        (mixes, powder_of_mix, water_of_mix)
    }

    fn mix_clock(&mut self, flask: &'a Flask, powder: Option<&'a Powder>) -> ([Id; 4], Id, Id) {
        let place = Place::Flask(flask.id);
        let Some(powder) = powder else {
            let absent = [&MIX_MIN, &BOWL_VACUUM, &POUR_MIN, &FLASK_VACUUM].map(|input| self.book.absent(input, place, Cause::NotChosen));
            let clock = self.book.derive(&MIX_CLOCK, place, absent);
            let gloss_off = self.book.absent(&GLOSS_OFF, place, Cause::NotChosen);
            let before = self.book.absent(&BEFORE_GLOSS_OFF, place, Cause::NotChosen);
            return (absent, clock, self.book.derive(&FINISH_BY, place, [gloss_off, before]));
        };
        let steps = [
            self.shelf_term(&MIX_MIN, &powder.id, &powder.mix_min),
            self.shelf_term(&BOWL_VACUUM, &powder.id, &powder.bowl_vacuum_min),
            self.shelf_term(&POUR_MIN, &powder.id, &powder.pour_min),
            self.shelf_term(&FLASK_VACUUM, &powder.id, &powder.flask_vacuum_min),
        ];
        let clock = self.book.derive(&MIX_CLOCK, place, steps);
        // A drum of another powder lends nothing.
        let of_this =
            |lot: &&crate::job::MaterialLot| lot.label == flask.powder_lot && lot.entry.as_ref().is_none_or(|of| *of == powder.id);
        let named = !flask.powder_lot.trim().is_empty();
        let lot = self.studio.materials.iter().find(of_this).filter(|_| named);
        if named && lot.is_none() {
            self.find(&finding::POWDER_LOT_UNKNOWN, place, vec![Arg::Text(flask.powder_lot.clone())]);
        }
        let gloss_off = match lot.and_then(|lot| lot.gloss_off_min) {
            Some(measured) => self.book.studio(&GLOSS_OFF, measured.get()),
            None => {
                let span = &powder.gloss_off_min;
                self.book.shelf_number(&GLOSS_OFF, &powder.id, span.low, &span.source, span.trust)
            }
        };
        let span = &powder.finish_before_gloss_off_min;
        let before = self.book.shelf_number(&BEFORE_GLOSS_OFF, &powder.id, span.low, &span.source, span.trust);
        let finish_by = self.book.derive(&FINISH_BY, place, [gloss_off, before]);
        if let (Some(takes), Some(until)) = (self.book.number(clock), self.book.number(finish_by))
            && takes > until
        {
            self.find_on(&finding::MIX_OUTRUNS, place, clock, vec![Arg::Figure(clock), Arg::Figure(finish_by)]);
        }
        if let Some(lot) = lot
            && let Some(until) = lot.until.filter(|until| *until < self.setting.at)
        {
            self.find(&finding::POWDER_OLD, place, vec![Arg::Text(lot.label.clone()), Arg::Text(until.to_string())]);
        }
        (steps, clock, finish_by)
    }
}
