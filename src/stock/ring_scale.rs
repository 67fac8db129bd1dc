//! Ring sizes to inner diameters and back.

use serde::{Deserialize, Serialize};

use super::id::EntryId;
use super::sourced::{Origin, Sourced, finite};

/// How a scale counts.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum RingRule {
    /// The size is the inner circumference in mm.
    Circumference,
    /// The inner diameter grows by a step for each whole size.
    Diameter {
        /// Inner diameter of size 0, mm.
        #[serde(deserialize_with = "finite")]
        zero_mm: f64,
        /// Growth of the diameter a size, mm.
        #[serde(deserialize_with = "finite")]
        step_mm: f64,
    },
    /// Letters A to Z, then Z+1 and on; A counts 1. The inner circumference grows by a step for each letter.
    Letters {
        /// Inner circumference of what would stand before A, mm.
        #[serde(deserialize_with = "finite")]
        zero_mm: f64,
        /// Growth of the circumference a letter, mm.
        #[serde(deserialize_with = "finite")]
        step_mm: f64,
    },
}

/// A scale of ring sizes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RingScale {
    /// Slug.
    pub id: EntryId,
    /// Name in the trade's words.
    pub name: String,
    /// How it counts.
    pub rule: RingRule,
    /// Lowest size (a letter scale counts A as 1).
    #[serde(deserialize_with = "finite")]
    pub lowest: f64,
    /// Highest size.
    #[serde(deserialize_with = "finite")]
    pub highest: f64,
    /// Smallest step between sizes.
    #[serde(deserialize_with = "finite")]
    pub step: f64,
    /// Source of rule and ends.
    pub origin: Origin,
    /// How far charts and sticks of this scale differ in inner diameter, ± mm.
    pub tolerance_mm: Sourced,
    /// Anything else worth reading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
}

/// Why something is no size of a scale.
#[derive(Debug, Clone, PartialEq)]
pub enum SizeError {
    /// The text is not a size of this scale at all.
    NotASize {
        /// What was typed.
        text: String,
        /// A size as this scale writes it.
        example: String,
    },
    /// It lies below or above the scale.
    OffScale {
        /// Lowest size as written.
        lowest: String,
        /// Highest size as written.
        highest: String,
    },
    /// It lies between two sizes.
    Between {
        /// The size below, as written.
        below: String,
        /// The size above, as written.
        above: String,
    },
}

/// The size nearest to a diameter.
#[derive(Debug, Clone, PartialEq)]
pub struct NearestSize {
    /// The size as a number (a letter scale counts A as 1).
    pub size: f64,
    /// The size as written.
    pub label: String,
    /// Its inner diameter, mm.
    pub inner_diameter_mm: f64,
    /// Diameter asked for less the size's, mm.
    pub off_mm: f64,
}

impl RingScale {
    /// The inner diameter of a size as a person writes it: `54`, `6 1/4`, `6.25`, `6¼`, `M½`, `Z+2`.
    ///
    /// # Errors
    /// [`SizeError`] where the text is no size, lies off the scale or between two sizes.
    pub fn inner_diameter_mm(&self, text: &str) -> Result<f64, SizeError> {
        let not = || SizeError::NotASize { text: text.trim().to_owned(), example: self.label(self.middle()) };
        let size = match self.rule {
            RingRule::Letters { .. } => letter_number(text),
            RingRule::Circumference | RingRule::Diameter { .. } => plain_number(text),
        };
        self.inner_diameter_of(size.ok_or_else(not)?)
    }

    /// The inner diameter of a size as a number, mm.
    ///
    /// # Errors
    /// [`SizeError`] where it lies off the scale or between two sizes.
    pub fn inner_diameter_of(&self, size: f64) -> Result<f64, SizeError> {
        if !(self.lowest..=self.highest).contains(&size) {
            return Err(self.off_scale());
        }
        let steps = (size - self.lowest) / self.step;
        if (steps - steps.round()).abs() > 1e-6 {
            let at = |count: f64| self.label(self.lowest + count * self.step);
            return Err(SizeError::Between { below: at(steps.floor()), above: at(steps.ceil()) });
        }
        Ok(self.diameter(size))
    }

    /// The size nearest to an inner diameter.
    ///
    /// # Errors
    /// [`SizeError::OffScale`] where the diameter lies more than half a step beyond an end of the scale.
    pub fn nearest(&self, inner_diameter_mm: f64) -> Result<NearestSize, SizeError> {
        let steps = (self.size_of(inner_diameter_mm) - self.lowest) / self.step;
        let last = ((self.highest - self.lowest) / self.step).round();
        if !(-0.5..=last + 0.5).contains(&steps) {
            return Err(self.off_scale());
        }
        let size = self.lowest + steps.round().clamp(0.0, last) * self.step;
        let diameter_mm = self.diameter(size);
        Ok(NearestSize { size, label: self.label(size), inner_diameter_mm: diameter_mm, off_mm: inner_diameter_mm - diameter_mm })
    }

    /// Every size of the scale from the lowest, as numbers.
    pub fn sizes(&self) -> impl Iterator<Item = f64> + '_ {
        (0_u32..).map(|count| self.lowest + f64::from(count) * self.step).take_while(|&size| size <= self.highest + 1e-9)
    }

    /// By how much the inner diameter grows a whole size, mm.
    #[must_use]
    pub fn diameter_a_size_mm(&self) -> f64 {
        match self.rule {
            RingRule::Circumference => 1.0 / std::f64::consts::PI,
            RingRule::Diameter { step_mm, .. } => step_mm,
            RingRule::Letters { step_mm, .. } => step_mm / std::f64::consts::PI,
        }
    }

    /// A size as the scale writes it: `54.5`, `6.25`, `M 1/2`, `Z+2`.
    #[must_use]
    pub fn label(&self, size: f64) -> String {
        if !matches!(self.rule, RingRule::Letters { .. }) {
            return format!("{size}");
        }
        let whole = size.floor();
        let half = if size - whole >= 0.5 { " 1/2" } else { "" };
        // Sizes are small whole numbers here, 1 to a few dozen.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let number = whole.max(1.0) as u32;
        match number {
            1..=26 => format!("{}{half}", char::from(b'A' - 1 + u8::try_from(number).unwrap_or(26))),
            beyond => format!("Z+{}{half}", beyond - 26),
        }
    }

    fn middle(&self) -> f64 {
        let steps = ((self.highest - self.lowest) / self.step / 2.0).floor();
        self.lowest + steps * self.step
    }

    fn off_scale(&self) -> SizeError {
        SizeError::OffScale { lowest: self.label(self.lowest), highest: self.label(self.highest) }
    }

    fn diameter(&self, size: f64) -> f64 {
        match self.rule {
            RingRule::Circumference => size / std::f64::consts::PI,
            RingRule::Diameter { zero_mm, step_mm } => zero_mm + step_mm * size,
            RingRule::Letters { zero_mm, step_mm } => (zero_mm + step_mm * size) / std::f64::consts::PI,
        }
    }

    fn size_of(&self, diameter_mm: f64) -> f64 {
        match self.rule {
            RingRule::Circumference => diameter_mm * std::f64::consts::PI,
            RingRule::Diameter { zero_mm, step_mm } => (diameter_mm - zero_mm) / step_mm,
            RingRule::Letters { zero_mm, step_mm } => (diameter_mm * std::f64::consts::PI - zero_mm) / step_mm,
        }
    }
}

/// The fraction a text ends with, and what stands before it.
fn split_fraction(text: &str) -> (&str, f64) {
    const FRACTIONS: [(&str, f64); 6] = [("1/4", 0.25), ("1/2", 0.5), ("3/4", 0.75), ("¼", 0.25), ("½", 0.5), ("¾", 0.75)];
    FRACTIONS.iter().find_map(|&(sign, value)| text.strip_suffix(sign).map(|rest| (rest.trim_end(), value))).unwrap_or((text, 0.0))
}

/// `6`, `6.25`, `6,25`, `6 1/4`, `6¼`; `None` for anything else.
fn plain_number(text: &str) -> Option<f64> {
    let text = text.trim();
    let (whole, fraction) = split_fraction(text);
    let touching = whole.len() < text.len() && text[whole.len()..].starts_with(|sign: char| sign.is_ascii_digit());
    // "61/4" could mean 6 1/4 or 61/4: not guessed.
    if touching && !whole.is_empty() {
        return None;
    }
    if whole.is_empty() && fraction > 0.0 {
        return Some(fraction);
    }
    let plain = whole.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.' || byte == b',');
    let number: f64 = plain.then(|| whole.replace(',', "."))?.parse().ok()?;
    (fraction == 0.0 || number.fract() == 0.0).then_some(number + fraction)
}

/// `M`, `m½`, `M 1/2`, `Z+1`, `Z + 1 1/2`; `None` for anything else.
fn letter_number(text: &str) -> Option<f64> {
    let text = text.trim().to_ascii_uppercase();
    let mut letters = text.chars();
    let letter = letters.next().filter(char::is_ascii_uppercase)?;
    let number = f64::from(u32::from(letter) - u32::from('A') + 1);
    let rest = letters.as_str().trim_start();
    let Some(beyond) = rest.strip_prefix('+') else {
        let (nothing, fraction) = split_fraction(rest);
        return nothing.is_empty().then_some(number + fraction);
    };
    let beyond = plain_number(beyond)?;
    (letter == 'Z' && beyond >= 1.0).then_some(number + beyond)
}
