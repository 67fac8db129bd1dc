//! Inputs and rules of a kiln load.

use crate::calc::rule::{inputs, rules};

inputs! {
    /// Target of a stage.
    TARGET "stage.target" Temperature;
    /// Hours of a stage as the table prints them.
    HOURS "stage.hours" Duration;
    /// Hold of a segment.
    HOLD "stage.hold-asked" Duration;
    /// Ramp of a segment, as asked.
    RAMP_RATE "stage.ramp-rate" TemperatureRate;
    /// Minutes of a segment's ramp, as asked.
    RAMP_MINUTES "stage.ramp-asked" Duration;
    /// The kiln's fastest rise or fall in a band.
    KILN_RATE "kiln.rate" TemperatureRate;
    /// Where a band of the kiln ends.
    KILN_BAND "kiln.band" Temperature;
    /// The kiln when it is loaded.
    START "burnout.start" Temperature;
    /// The pour, by the clock on the wall.
    POUR_AT "burnout.pour-at" Moment;
    /// A hot kiln once the wet load is in.
    LOADED "burnout.loaded" Temperature;
    /// A hot kiln before the load.
    HOT_KILN "burnout.hot-kiln" Temperature;
    /// Steam dewaxing.
    DEWAX "burnout.dewax" Duration;
    /// The kiln chosen.
    NO_KILN "burnout.kiln" Duration;
}

rules! {
    /// Time the kiln needs between two temperatures within one of its bands.
    RAMP_PART "stage.ramp-part" (start: Temperature, end: Temperature, rate: TemperatureRate) -> Duration
        = Formula "60*abs(end - start)/rate" { 60.0 * (end - start).abs() / rate };
        Computed "difference over the kiln's own rate in this band"
    /// Time the kiln needs for a ramp.
    RAMP "stage.ramp" (part: Duration) -> Duration = Sum "sum(part)"; Computed "band by band"
    /// Time a ramp takes that was asked for as a rate.
    RAMP_AT_RATE "stage.ramp-at-rate" (start: Temperature, end: Temperature, rate: TemperatureRate) -> Duration
        = Formula "60*abs(end - start)/rate" { 60.0 * (end - start).abs() / rate };
        Computed "difference over the rate asked for"
    /// The ramp as it will be: what was asked, or what the kiln needs.
    RAMP_TAKEN "stage.ramp-taken" (asked: Duration, kiln: Duration) -> Duration
        = Formula "max(asked, kiln)" { asked.max(kiln) };
        Computed "a kiln rises and falls no faster than it can"
    /// A stage whose hours include the ramp.
    STAGE_INCLUDING "stage.minutes-including" (hours: Duration, ramp: Duration) -> Duration
        = Formula "max(hours, ramp)" { hours.max(ramp) };
        Computed "the table's hours with the way there in them"
    /// A stage whose hours come on top of the ramp.
    STAGE_BESIDES "stage.minutes-besides" (hours: Duration, ramp: Duration) -> Duration
        = Formula "hours + ramp" { hours + ramp };
        Computed "the way there, then the table's hours"
    /// What is left to hold where the hours include the ramp.
    HOLD_INCLUDING "stage.hold" (hours: Duration, ramp: Duration) -> Duration
        = Formula "max(hours - ramp, 0)" { (hours - ramp).max(0.0) };
        Computed "the table's hours less the way there"
    /// The programme where a table's hours include the ramps.
    TOTAL_INCLUDING "burnout.total-including" (stage: Duration) -> Duration = Sum "sum(stage)"; Computed "all stages"
    /// The programme where a table's hours come on top of the ramps.
    TOTAL_BESIDES "burnout.total-besides" (stage: Duration) -> Duration = Sum "sum(stage)"; Computed "all stages"
    /// The programme as it will be run.
    TOTAL "burnout.total" (stage: Duration) -> Duration = Sum "sum(stage)"; Computed "all stages, ramps and holds"
    /// When the kiln is started.
    KILN_START "burnout.kiln-start" (pour: Moment, total: Duration) -> Moment
        = Formula "pour - total" { pour - total };
        Computed "backwards from the pour"
    /// When steam dewaxing starts.
    DEWAX_START "burnout.dewax-start" (start: Moment, dewax: Duration) -> Moment
        = Formula "start - dewax" { start - dewax };
        Computed "straight from the steam into the warm kiln"
    /// When a kiln is lit that must be hot when it is loaded.
    LIT_AT "burnout.lit-at" (start: Moment, ramp: Duration) -> Moment
        = Formula "start - ramp" { start - ramp };
        Computed "as fast as the kiln rises, from the room"
    /// When a stage is over.
    STAGE_END "stage.end" (start: Moment, minutes: Duration) -> Moment
        = Formula "start + minutes" { start + minutes };
        Computed "one stage after the other"
    /// The highest target.
    TOP "burnout.top" (target: Temperature) -> Temperature = Most "max(target)"; Computed "the highest stage"
    /// The mould's temperature the load ends at.
    SOAK_TARGET "burnout.soak-target" (mould: Temperature) -> Temperature = Most "max(mould)"; CommonPractice "hottest mould first, the kiln falls for the others"
    /// Time held at 700 °C and above.
    HOT_TIME "burnout.time-above-700" (hold: Duration) -> Duration = Sum "sum(hold)"; Computed "holds of the stages at 700 °C and above; ramps not counted"
}
