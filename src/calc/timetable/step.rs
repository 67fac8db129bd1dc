//! Steps of a casting night, the waits between them, and pins.

/// Names a step in a timetable; the caller chooses the numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct StepKey(pub u32);

/// Something there is only one of, such as a kiln; the caller chooses the numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Resource(pub u32);

/// When a step needs somebody. The moments at which hours begin and end still count as within them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Hands {
    /// From its start to its end without a break: investing, building the tree, washing, loading.
    All,
    /// To start it; then it runs by itself: a print, a kiln switched on by hand.
    Start,
    /// When it is over.
    End,
    /// To start it and when it is over: steam dewaxing.
    Both,
    /// Never; it may begin by itself: setting, a kiln started by its controller.
    None,
}

/// The wait after a step until what follows it: the next step, or the pour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gap {
    /// The least, in min; no plan goes below it, only a pin does.
    pub least_min: f64,
    /// The most, in min; nothing where it may wait as long as it likes.
    pub most_min: Option<f64>,
    /// No plan exceeds the most, only a pin does. Otherwise it is exceeded where nothing else is possible in working hours, and that is
    /// told.
    pub strict: bool,
    /// What stays taken up while it waits: a loaded kiln whose controller counts down.
    pub keeps: Option<Resource>,
}

impl Gap {
    /// At once: never longer, never shorter. What begins by itself when the other ends, or must not cool between.
    pub const AT_ONCE: Self = Self { least_min: 0.0, most_min: Some(0.0), strict: true, keeps: None };
    /// Any wait.
    pub const ANY: Self = Self { least_min: 0.0, most_min: None, strict: false, keeps: None };

    /// A wait that should be at most so long, in min.
    #[must_use]
    pub const fn at_most(most_min: f64) -> Self {
        Self { least_min: 0.0, most_min: Some(most_min), strict: false, keeps: None }
    }

    /// A wait of at least so long, in min.
    #[must_use]
    pub const fn at_least(least_min: f64) -> Self {
        Self { least_min, most_min: None, strict: false, keeps: None }
    }
}

/// A step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// Its name.
    pub key: StepKey,
    /// How long it takes, in min of time that really passes.
    pub minutes: f64,
    /// When it needs somebody.
    pub needs: Hands,
    /// What it has to itself while it runs.
    pub uses: Option<Resource>,
    /// The wait after it.
    pub then: Gap,
}

/// What a pin says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PinKind {
    /// Somebody wants it to begin then; what comes after it stays as it was planned.
    Wished,
    /// It began then; what comes after it reckons with that.
    Done,
}

/// A step whose start is settled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pin {
    /// The step.
    pub key: StepKey,
    /// Its start, in minutes since the Unix epoch.
    pub start: f64,
    /// What the pin says.
    pub kind: PinKind,
}

impl Pin {
    /// A start that is wished for.
    #[must_use]
    pub const fn wished(key: StepKey, start: f64) -> Self {
        Self { key, start, kind: PinKind::Wished }
    }

    /// A start that was.
    #[must_use]
    pub const fn done(key: StepKey, start: f64) -> Self {
        Self { key, start, kind: PinKind::Done }
    }
}
