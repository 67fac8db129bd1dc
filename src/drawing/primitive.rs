//! What drawings are made of. Lengths are millimetres, x to the right and y upwards; type is sized by whoever paints.

/// A place in a drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Upwards.
    pub y: f64,
}

/// A place in a drawing.
#[must_use]
pub const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

/// What a stroke, an area or a word is there for; colours follow from it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// The ground.
    Ground,
    /// Investment.
    Mould,
    /// Steel.
    Steel,
    /// The base's dome.
    Dome,
    /// Sprues.
    Sprue,
    /// Lines and words of the drawing.
    Ink,
    /// What is less important.
    Label,
    /// Too little room.
    Caution,
    /// No room at all.
    Stop,
    /// A piece, by the place of its order in the key.
    Piece(usize),
    /// What is written on a piece.
    OnPiece,
}

/// Which point of a word stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The middle of its left side.
    Left,
    /// The middle of it.
    Middle,
    /// The middle of its right side.
    Right,
}

/// Something to be drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum Primitive {
    /// A line.
    Line {
        /// From here.
        from: Point,
        /// To here.
        to: Point,
        /// Its width, in points of the type.
        width: f32,
        /// Broken, for what is an outline only.
        broken: bool,
        /// What it is for.
        role: Role,
    },
    /// An area; its corners turn one way only.
    Polygon {
        /// The corners.
        corners: Vec<Point>,
        /// What fills it.
        fill: Role,
    },
    /// The sides of a solid thing that face the eye, from the farthest to the nearest.
    Facets {
        /// Their corners.
        corners: Vec<[Point; 3]>,
        /// How much light falls on each, from 0 to 1.
        light: Vec<f32>,
        /// What they are of.
        fill: Role,
    },
    /// A disc or a ring.
    Circle {
        /// Its centre.
        centre: Point,
        /// Its radius.
        radius: f64,
        /// What fills it.
        fill: Option<Role>,
        /// What goes round it.
        edge: Option<Role>,
    },
    /// Words.
    Text {
        /// Where.
        place: Point,
        /// The words.
        words: String,
        /// Which point of them stands there.
        anchor: Anchor,
        /// What they are for.
        role: Role,
        /// They are left out where a ring of this radius cannot hold them.
        within: Option<f64>,
    },
}

/// A drawing and the rectangle it needs.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// What it is made of, from the back to the front.
    pub primitives: Vec<Primitive>,
    /// Its lower left corner.
    pub from: Point,
    /// Its upper right corner.
    pub to: Point,
}

impl Picture {
    /// An empty one.
    #[must_use]
    pub const fn new(from: Point, to: Point) -> Self {
        Self { primitives: Vec::new(), from, to }
    }

    /// Makes the picture large enough for the areas, discs and lines that stand in it so far.
    pub fn embrace(&mut self) {
        let mut hold = |point: Point, around: f64| {
            self.from = at(self.from.x.min(point.x - around), self.from.y.min(point.y - around));
            self.to = at(self.to.x.max(point.x + around), self.to.y.max(point.y + around));
        };
        for primitive in &self.primitives {
            match primitive {
                Primitive::Line { from, to, .. } => [from, to].into_iter().for_each(|end| hold(*end, 0.0)),
                Primitive::Polygon { corners, .. } => corners.iter().for_each(|corner| hold(*corner, 0.0)),
                Primitive::Facets { corners, .. } => corners.iter().flatten().for_each(|corner| hold(*corner, 0.0)),
                Primitive::Circle { centre, radius, .. } => hold(*centre, *radius),
                Primitive::Text { .. } => {}
            }
        }
    }

    /// A line.
    pub fn line(&mut self, from: Point, to: Point, width: f32, role: Role) {
        self.primitives.push(Primitive::Line { from, to, width, broken: false, role });
    }

    /// A broken line.
    pub fn broken(&mut self, from: Point, to: Point, role: Role) {
        self.primitives.push(Primitive::Line { from, to, width: 1.0, broken: true, role });
    }

    /// An upright rectangle between two corners.
    pub fn block(&mut self, from: Point, to: Point, fill: Role) {
        let corners = vec![from, at(to.x, from.y), to, at(from.x, to.y)];
        self.primitives.push(Primitive::Polygon { corners, fill });
    }

    /// An area.
    pub fn area(&mut self, corners: Vec<Point>, fill: Role) {
        self.primitives.push(Primitive::Polygon { corners, fill });
    }

    /// The sides of a solid thing.
    pub fn facets(&mut self, corners: Vec<[Point; 3]>, light: Vec<f32>, fill: Role) {
        self.primitives.push(Primitive::Facets { corners, light, fill });
    }

    /// A disc or a ring.
    pub fn circle(&mut self, centre: Point, radius: f64, fill: Option<Role>, edge: Option<Role>) {
        self.primitives.push(Primitive::Circle { centre, radius, fill, edge });
    }

    /// Words.
    pub fn text(&mut self, place: Point, words: &str, anchor: Anchor, role: Role) {
        self.primitives.push(Primitive::Text { place, words: words.to_owned(), anchor, role, within: None });
    }

    /// Words in a ring, left out where it is too small for them.
    pub fn text_within(&mut self, place: Point, words: String, radius: f64, role: Role) {
        self.primitives.push(Primitive::Text { place, words, anchor: Anchor::Middle, role, within: Some(radius) });
    }
}
