//! Where the temperature falls: power cuts, and the kiln left to cool.

/// Falls of less than this are the kiln's own regulating (common practice, no source).
const LEAST_DROP_K: f64 = 15.0;
/// The temperature has turned when it goes this far the other way.
const TURN_K: f64 = 5.0;
/// A change of less than this is noise of the reading.
const NOISE_K: f64 = 2.0;
/// A fall that stands still this long is over.
const STILL_MIN: f64 = 30.0;

/// A stretch in which the temperature falls.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TemperatureDrop {
    /// Minute of the last reading before the fall.
    pub start_min: f64,
    /// Temperature there in °C.
    pub start_c: f64,
    /// Minute at which the fall has come to its end, within the noise of the reading.
    pub fallen_min: f64,
    /// Lowest temperature in °C.
    pub lowest_c: f64,
    /// Minute at which the temperature begins to rise again; where it does not, the end of the fall.
    pub end_min: f64,
    /// True where the temperature rises again right after this fall.
    pub recovers: bool,
    /// Mean rate of the fall in K/h, above 0.
    pub rate_k_h: f64,
}

/// Finds the falls of a curve of minutes and °C, minutes rising. A fall ends where the temperature rises again or stands still for half an hour;
/// whether it should have fallen is not asked. Ripples of less than 15 K are none.
#[must_use]
pub fn find_drops(points: &[[f64; 2]]) -> Vec<TemperatureDrop> {
    let mut drops = Vec::new();
    for [peak, trough] in falls(points) {
        let from = drops.len();
        split(&points[peak..=trough], &mut drops);
        let rises = points[trough..].iter().any(|point| point[1] >= points[trough][1] + TURN_K);
        if let Some(last) = drops[from..].last_mut().filter(|_| rises) {
            last.recovers = true;
            last.end_min = points[trough][0];
        }
    }
    drops
}

/// Pairs of a high and the last low after it, told apart by turns of [`TURN_K`].
fn falls(points: &[[f64; 2]]) -> Vec<[usize; 2]> {
    let (mut found, mut high, mut low) = (Vec::new(), 0, None);
    for (at, point) in points.iter().enumerate() {
        match low {
            // Rising: a higher point moves the peak, a much lower one begins a fall.
            None if point[1] >= points[high][1] => high = at,
            None if point[1] <= points[high][1] - TURN_K => low = Some(at),
            None => {}
            Some(lowest) if point[1] <= points[lowest][1] => low = Some(at),
            Some(lowest) if point[1] >= points[lowest][1] + TURN_K => {
                found.push([high, lowest]);
                (high, low) = (at, None);
            }
            Some(_) => {}
        }
    }
    found.extend(low.map(|lowest| [high, lowest]));
    found
}

/// Parts a fall where it stands still, and keeps the parts that are deep enough.
fn split(points: &[[f64; 2]], drops: &mut Vec<TemperatureDrop>) {
    let Some(&first) = points.first() else { return };
    // The reading that made the present level, the reading before this one, and where the fall began.
    let (mut level, mut before) = (first, first);
    let mut fall: Option<Fall> = None;
    for &point in points {
        let falls = point[1] <= level[1] - NOISE_K;
        if falls {
            fall.get_or_insert(Fall { start: before, end: point, lowest_c: point[1] }).end = point;
            level = point;
        }
        if let Some(fall) = &mut fall {
            fall.lowest_c = fall.lowest_c.min(point[1]);
        }
        if !falls && point[0] - level[0] > STILL_MIN {
            drops.extend(fall.take().and_then(Fall::drop));
        }
        before = point;
    }
    drops.extend(fall.and_then(Fall::drop));
}

/// A fall between two readings.
struct Fall {
    start: [f64; 2],
    end: [f64; 2],
    lowest_c: f64,
}

impl Fall {
    fn drop(self) -> Option<TemperatureDrop> {
        let Self { start, end, lowest_c } = self;
        let hours = (end[0] - start[0]) / 60.0;
        (start[1] - end[1] >= LEAST_DROP_K && hours > 0.0).then(|| TemperatureDrop {
            start_min: start[0],
            start_c: start[1],
            fallen_min: end[0],
            lowest_c,
            end_min: end[0],
            recovers: false,
            rate_k_h: (start[1] - end[1]) / hours,
        })
    }
}
