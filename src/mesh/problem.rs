//! What is wrong with a pattern file, or worth knowing before metal is weighed.

use super::Union;
use std::fmt;

/// A unit a file was probably drawn in when its numbers make no sense as mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FileUnit {
    /// 1000 mm.
    Metre,
    /// 25.4 mm.
    Inch,
    /// 10 mm.
    Centimetre,
    /// A thousandth of an inch, 0.0254 mm.
    Mil,
    /// 0.001 mm.
    Micrometre,
}

impl FileUnit {
    /// How many mm one such unit is. Exact.
    #[must_use]
    pub fn mm(self) -> f64 {
        match self {
            Self::Metre => 1000.0,
            Self::Inch => 25.4,
            Self::Centimetre => 10.0,
            Self::Mil => 0.0254,
            Self::Micrometre => 0.001,
        }
    }

    /// The unit's name in the plural.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Metre => "metres",
            Self::Inch => "inches",
            Self::Centimetre => "centimetres",
            Self::Mil => "thousandths of an inch",
            Self::Micrometre => "micrometres",
        }
    }
}

/// Something about a mesh that a person must know. Volumes are in mm³.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Problem {
    /// Edges where the surface ends. There is no volume.
    Open {
        /// How many edges have no partner.
        edges: u32,
    },
    /// Edges where the two sides disagree about what is outside. There is no volume.
    MixedWinding {
        /// How many edges.
        edges: u32,
    },
    /// Shells wound so that the material lies outside; measured as if turned.
    InsideOut {
        /// How many outermost shells.
        shells: u32,
    },
    /// Cavities no investment can enter: they pour solid.
    SealedVoid {
        /// How many cavities.
        voids: u32,
        /// Their volume together, less any solid loose inside them.
        void_mm3: f64,
    },
    /// Shells whose surfaces pass through each other. What they have in common is counted once, where that could be worked out.
    OverlappingShells {
        /// How many pairs of shells.
        pairs: u32,
        /// The fill is at least this.
        at_least_mm3: f64,
        /// The fill is at most this: the solids added up.
        at_most_mm3: f64,
        /// What the file fills, what overlaps counted once. Nothing where the overlap is too intricate to be worked out: then there is no volume.
        union: Option<Union>,
    },
    /// Solids that lie wholly inside another solid. They are counted once.
    NestedSameWinding {
        /// How many inner shells.
        shells: u32,
        /// What a plain sum would count twice.
        counted_twice_mm3: f64,
    },
    /// Too many shells or contacts to settle whether they overlap.
    OverlapNotSettled {
        /// The fill is at most this.
        at_most_mm3: f64,
    },
    /// The same triangle more than once; each is counted once.
    DuplicateTriangles {
        /// How many were left out.
        triangles: u32,
    },
    /// Triangles without area.
    Degenerate {
        /// How many.
        triangles: u32,
    },
    /// Edges where more than two triangles meet.
    NonManifoldEdges {
        /// How many edges.
        edges: u32,
    },
    /// The surface was open only by hair-fine gaps, which were closed for measuring.
    SeamsClosed {
        /// How many corners were brought together.
        corners: u32,
        /// The widest gap in mm.
        widest_gap_mm: f64,
    },
    /// Closed shells that enclose nothing.
    Flat {
        /// How many shells.
        shells: u32,
    },
    /// A size no casting of this trade has.
    AbsurdSize {
        /// The longest side of the box in mm.
        largest_mm: f64,
        /// The unit the file was probably drawn in.
        probable_unit: Option<FileUnit>,
    },
    /// The model stands so far from the origin that the file's numbers are coarse.
    FarFromOrigin {
        /// The step between neighbouring numbers there, in mm.
        step_mm: f64,
    },
    /// The last line of the text looks cut off; every triangle is there.
    LastLineCut,
}

impl Problem {
    /// A name that stays the same from version to version.
    #[must_use]
    pub fn key(&self) -> &'static str {
        match self {
            Self::Open { .. } => "open",
            Self::MixedWinding { .. } => "mixed-winding",
            Self::InsideOut { .. } => "inside-out",
            Self::SealedVoid { .. } => "sealed-void",
            Self::OverlappingShells { .. } => "overlapping-shells",
            Self::NestedSameWinding { .. } => "nested-same-winding",
            Self::OverlapNotSettled { .. } => "overlap-not-settled",
            Self::DuplicateTriangles { .. } => "duplicate-triangles",
            Self::Degenerate { .. } => "degenerate-triangles",
            Self::NonManifoldEdges { .. } => "non-manifold-edges",
            Self::SeamsClosed { .. } => "seams-closed",
            Self::Flat { .. } => "flat-shells",
            Self::AbsurdSize { .. } => "absurd-size",
            Self::FarFromOrigin { .. } => "far-from-origin",
            Self::LastLineCut => "last-line-cut",
        }
    }

    /// True when the file's volume is no number because of this.
    #[must_use]
    pub fn leaves_no_volume(&self) -> bool {
        matches!(
            self,
            Self::Open { .. } | Self::MixedWinding { .. } | Self::OverlappingShells { union: None, .. } | Self::OverlapNotSettled { .. }
        )
    }
}

/// So many of a thing: "1 edge", "6 edges".
struct Many(u32, &'static str);

impl fmt::Display for Many {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}{}", self.0, self.1, if self.0 == 1 { "" } else { "s" })
    }
}

impl fmt::Display for Problem {
    /// A plain English sentence for the terminal.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Open { edges } => {
                write!(f, "The surface is open at {}, so it has no volume. Close it and export again.", Many(*edges, "edge"))
            }
            Self::MixedWinding { edges } => {
                write!(
                    f,
                    "Triangles disagree about what is outside at {}, so there is no volume. Repair the model and export again.",
                    Many(*edges, "edge")
                )
            }
            Self::InsideOut { shells } => {
                write!(f, "Wound inside out: {}. Measured as if turned the right way.", Many(*shells, "solid"))
            }
            Self::SealedVoid { voids, void_mm3 } => write!(
                f,
                "Sealed: {} of {void_mm3:.2} mm³ in all. No investment gets in, so it pours solid, and the metal is counted with it filled.",
                Many(*voids, "void")
            ),
            Self::OverlappingShells { pairs, at_most_mm3, union: Some(union), .. } => write!(
                f,
                "Solids pass through each other, {}. Together they fill {:.2} mm³, what they share counted once; added up plainly they would make \
                 {at_most_mm3:.2} mm³, {:.2} too much.",
                Many(*pairs, "pair"),
                union.volume_mm3,
                at_most_mm3 - union.volume_mm3
            ),
            Self::OverlappingShells { pairs, at_least_mm3, at_most_mm3, union: None } => write!(
                f,
                "Solids pass through each other, {}, too intricately to work out what they share. Together they fill at least {at_least_mm3:.2} \
                 and not more than {at_most_mm3:.2} mm³. Unite them where they were drawn for the true figure.",
                Many(*pairs, "pair")
            ),
            Self::NestedSameWinding { shells, counted_twice_mm3 } => write!(
                f,
                "Wholly inside another solid: {} of {counted_twice_mm3:.2} mm³ in all, counted once. If a cavity was meant, its surface must face inward.",
                Many(*shells, "solid")
            ),
            Self::OverlapNotSettled { at_most_mm3 } => {
                write!(f, "Too many parts touch to tell which overlap. They fill not more than {at_most_mm3:.2} mm³.")
            }
            Self::DuplicateTriangles { triangles } => {
                write!(f, "Standing in the file again and left out: {}.", Many(*triangles, "triangle"))
            }
            Self::Degenerate { triangles } => write!(f, "Without area and counted for nothing: {}.", Many(*triangles, "triangle")),
            Self::NonManifoldEdges { edges } => {
                write!(f, "More than two triangles meet at {}: parts touch along a line.", Many(*edges, "edge"))
            }
            Self::SeamsClosed { corners, widest_gap_mm } => {
                write!(
                    f,
                    "Seams did not quite meet at {} (at most {widest_gap_mm:.7} mm apart). They were closed for measuring.",
                    Many(*corners, "corner")
                )
            }
            Self::Flat { shells } => write!(f, "Enclosing nothing and counted for nothing: {}.", Many(*shells, "closed sheet")),
            Self::AbsurdSize { largest_mm, probable_unit: Some(unit) } => write!(
                f,
                "Its longest side reads as {largest_mm} mm. The file was probably drawn in {}: then it is {:.4} mm.",
                unit.name(),
                largest_mm * unit.mm()
            ),
            Self::AbsurdSize { largest_mm, probable_unit: None } => {
                write!(f, "Its longest side reads as {largest_mm} mm. Check the unit it was drawn in.")
            }
            Self::FarFromOrigin { step_mm } => {
                write!(
                    f,
                    "It stands far from the origin, where the file can only tell points {step_mm:.7} mm apart. Move it to the origin and export again."
                )
            }
            Self::LastLineCut => write!(f, "The last line of the file looks cut off; every triangle is there."),
        }
    }
}
