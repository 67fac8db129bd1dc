//! What a batch is planned with before anything hangs: the usual tree, the metal of a piece with its feed, what a crucible pours.

use crate::calc::rule::{givens, inputs, rules};

inputs! {
    /// Diameter of the usual main sprue.
    MAIN_DIAMETER "plan.main-diameter" Length;
    /// Diameter of the usual feed.
    FEED_DIAMETER "plan.feed-diameter" Length;
    /// Length of the usual feed.
    FEED_LENGTH "plan.feed-length" Length;
    /// Room between two pieces.
    GAP "plan.gap" Length;
    /// How many of something.
    ONE_OF "plan.count" Count;
    /// Metal of what hangs in a flask.
    HUNG_METAL "plan.hung-metal" Mass;
}

givens! {
    /// A main sprue of 8 mm.
    MAIN_DIAMETER_DEFAULT "plan.main-diameter" Length = 8.0; CommonPractice "a main sprue of about 8 mm for jewellery: common practice, no source"
    /// Feeds of 3 mm.
    FEED_DIAMETER_DEFAULT "plan.feed-diameter" Length = 3.0; CommonPractice "feeds of about 3 mm for rings: common practice, no source"
    /// Feeds of 8 mm.
    FEED_LENGTH_DEFAULT "plan.feed-length" Length = 8.0; CommonPractice "feeds of about 8 mm, as short as the pieces allow: common practice, no source"
    /// A dome of 25 mm.
    DOME_DEFAULT "base.dome-height" Length = 25.0; CommonPractice "as high as that of a wide flask, where no base of the shelf closes it"
}

rules! {
    /// The longest main sprue a flask takes.
    TRUNK_LENGTH "plan.trunk-length" (height: Length, dome: Length, top: Length, feed: Length, angle: Angle) -> Length
        = Formula "max(height - dome - top - feed*abs(cosd(angle)), 0)" {
            (height - dome - top - feed * angle.to_radians().cos().abs()).max(0.0)
        };
        Computed "what is left over the dome, under the room above the tree and the rise of the top feeds"
    /// Metal of a main sprue.
    TRUNK_METAL "plan.trunk-metal" (trunk: Volume, welds: Ratio, density: Density) -> Mass
        = Formula "trunk*(1 + welds)*density" { trunk * (1.0 + welds) * density };
        Computed "volume times density, with welds as on a computed tree"
    /// Metal of a piece with its feed.
    PIECE_WITH_FEED "plan.piece-metal" (piece: Volume, feed: Volume, welds: Ratio, density: Density) -> Mass
        = Formula "(piece + feed)*(1 + welds)*density" { (piece + feed) * (1.0 + welds) * density };
        Computed "volume of pattern and feed times density, with welds as on a computed tree"
    /// Metal that a crucible pours.
    POURABLE "plan.pourable" (usable: Volume, liquid: Density, step: Mass, loss: Ratio) -> Mass
        = Formula "max(usable*liquid - step, 0)*(1 - loss)" { (usable * liquid - step).max(0.0) * (1.0 - loss) };
        Computed "what it may hold molten, less what rounding up and the melt take"
    /// The heaviest tree that a crucible pours, with its button.
    HEAVIEST_TREE "plan.heaviest-tree" (poured: Mass, reserve: Mass, least: Mass, share: Ratio) -> Mass
        = Formula "max(min(poured - reserve - least, (poured - reserve)/(1 + share)), 0)" {
            (poured - reserve - least).min((poured - reserve) / (1.0 + share)).max(0.0)
        };
        Computed "the button is a fixed mass or a share of the tree, whichever is more"
    /// Metal that is left for pieces and their feeds.
    FOR_PIECES "plan.for-pieces" (heaviest: Mass, trunk: Mass) -> Mass
        = Formula "max(heaviest - trunk, 0)" { (heaviest - trunk).max(0.0) };
        Computed "the tree less its main sprue"
    /// Metal of a planned tree.
    PLANNED_TREE "plan.tree-metal" (metal: Mass) -> Mass = Sum "sum(metal)"; Computed "pieces with their feeds, and the main sprue"
}
