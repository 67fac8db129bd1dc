//! What is read off the heat of a mould, and what it is computed with.

use crate::calc::rule::{inputs, rules};

inputs! {
    /// From the start of the kiln until the core is dry.
    DRY_AFTER "heat.dry-after" Duration;
    /// From the start of the kiln until the core is so hot that wax has burnt.
    BURNT_AFTER "heat.burnt-after" Duration;
    /// How long the core is hot enough to burn carbon.
    CARBON_TIME "heat.carbon-time" Duration;
    /// The hottest the core becomes.
    CORE_TOP "heat.core-top" Temperature;
    /// The core at the pour.
    CORE_AT_POUR "heat.core-at-pour" Temperature;
    /// The outermost cavity at the pour.
    CAVITY_AT_POUR "heat.cavity-at-pour" Temperature;
    /// Wall and core apart while cristobalite changes.
    APART_CRISTOBALITE "heat.apart-cristobalite" TemperatureDifference;
    /// Wall and core apart while quartz changes.
    APART_QUARTZ "heat.apart-quartz" TemperatureDifference;
    /// Minutes on the bench until the outermost cavity leaves its range.
    OUT_FOR "heat.out-for" Duration;
    /// When the kiln's log begins.
    LOG_START "heat.log-start" Moment;
    /// The hottest a log says.
    LOG_TOP "heat.log-top" Temperature;
    /// The coldest a fired mould's corner became in a fall of the kiln.
    CORNER_LOW "heat.corner-low" Temperature;
    /// The corner at the end of the log.
    CORNER_NOW "heat.corner-now" Temperature;
    /// The core at the end of the log.
    CORE_NOW "heat.core-now" Temperature;
    /// Heat that a mould takes in.
    HEAT "heat.heat" Energy;
}

rules! {
    /// When the core is dry.
    DRY_AT "heat.dry-at" (start: Moment, minutes: Duration) -> Moment
        = Formula "start + minutes" { start + minutes };
        Computed "the kiln's start, and the minutes that the heat run found"
    /// When the core is so hot that wax has burnt.
    BURNT_AT "heat.burnt-at" (start: Moment, minutes: Duration) -> Moment
        = Formula "start + minutes" { start + minutes };
        Computed "the kiln's start, and the minutes that the heat run found"
    /// Heat for the moulds of a load.
    LOAD_HEAT "heat.load" (mould: Energy) -> Energy = Sum "sum(mould)"; Computed "all its moulds"
}
