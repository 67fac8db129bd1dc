//! Metal from patterns, the button, densities.

use pourbook::job::{ButtonWish, Flask, FlaskId, Tree, TreeId};
use pourbook::stock::{Alloy, Entry, EntryId, OverlayItem, PatternMaterial, Shelf};

use super::table::{Csv, Table, Within};
use super::world::{Outcome, World, grams, said, some, weighed};

/// A shelf entry changed by a studio.
fn changed(id: &str, change: impl FnOnce(&mut Entry)) -> OverlayItem {
    let shipped = Shelf::shipped().entry(id).unwrap();
    let mut entry = Entry::clone(shipped);
    change(&mut entry);
    OverlayItem::Replace { base_hash: shipped.hash(), entry }
}

fn wax_of(density: f64) -> OverlayItem {
    changed("wax-injection", |entry| {
        let Entry::PatternMaterial(PatternMaterial { density_g_cm3, .. }) = entry else { panic!("a material") };
        density_g_cm3.value = density;
    })
}

/// A flask with so much wax on its tree, a button of a tenth, nothing lost.
fn cast(wax_g: &str, wax_density: f64, alloy: &str, alloy_density: f64) -> Outcome {
    let mut world = World::empty();
    world.studio.shelf = vec![
        wax_of(wax_density),
        changed(alloy, |entry| {
            let Entry::Alloy(Alloy { density_g_cm3, .. }) = entry else { panic!("an alloy") };
            density_g_cm3.value = alloy_density;
        }),
    ];
    world.job.trees = vec![Tree { id: TreeId(1), weighed: vec![weighed("wax-injection", wax_g)], ..Tree::default() }];
    world.job.flasks = vec![Flask {
        id: FlaskId(1),
        tree: Some(TreeId(1)),
        alloy: some(alloy),
        button: ButtonWish { least: Some(grams("0")), share: said(0.10) },
        melt_loss: said(0.0),
        ..Flask::default()
    }];
    world.recompute()
}

#[test]
fn published_worked_examples() {
    let mut table = Table::default();
    let outcome = cast("5", 1.0, "gold-14k-yellow", 13.07);
    let charge = outcome.number(outcome.flask().metal.charge);
    table.row("5 g wax, 10 %, × 13.07", "supply-house article on wax trees", 71.885, charge, Within::Printed(3));
    let outcome = cast("5", 1.0, "gold-14k-yellow", 13.5);
    table.row(
        "5 g wax, 10 %, × 13.5",
        "supply-house casting primer",
        74.25,
        outcome.number(outcome.flask().metal.charge),
        Within::Printed(2),
    );
    let outcome = cast("9", 1.0, "silver-925", 10.4);
    let charge = outcome.number(outcome.flask().metal.charge);
    table.row("9 g wax, 10 %, × 10.4", "published example, recomputed", 102.96, charge, Within::Printed(2));
    table.rejected("9 g wax, 10 %, × 10.4", "the same as printed", 99.9, charge, 1.0);
    table.judge(1);
}

#[test]
fn wax_of_095_taken_as_100_makes_the_charge_five_per_cent_short() {
    let right = cast("5", 0.95, "silver-925", 10.36);
    let wrong = cast("5", 1.0, "silver-925", 10.36);
    let (right, wrong) = (right.number(right.flask().metal.charge), wrong.number(wrong.flask().metal.charge));
    let mut table = Table::default();
    table.row("short by %", "computed: 1 − 0.95", 5.0, 100.0 * (1.0 - wrong / right), Within::Amount(1e-9));
    table.row("the need is more by %", "computed: 1/0.95 − 1", 5.3, 100.0 * (right / wrong - 1.0), Within::Printed(1));
    let resin = cast("5", 1.12, "silver-925", 10.36);
    let over = 100.0 * (wrong / resin.number(resin.flask().metal.charge) - 1.0);
    table.row("resin of 1.12 taken as 1.00 orders over by %", "computed: 1.12 − 1", 12.0, over, Within::Amount(1e-9));
    table.judge(1);
}

#[test]
fn materials_on_one_tree_count_apart() {
    // Hand-worked: 4 g of resin at 1.12 and 3 g of sprue wax at 0.93, silver 10.36: 37.000 + 33.419 = 70.419 g.
    let mut world = World::sound();
    world.tree().weighed = vec![weighed("resin-castable", "4"), weighed("wax-sprue", "3")];
    let outcome = world.recompute();
    let shelf = Shelf::shipped();
    let density = |id: &str| shelf.get::<PatternMaterial>(id).unwrap().density_g_cm3.value;
    let by_hand = 4.0 / density("resin-castable") * 10.36 + 3.0 / density("wax-sprue") * 10.36;
    let mut table = Table::default();
    table.row("resin and wax apart, g", "hand-worked", by_hand, outcome.number(outcome.flask().metal.tree), Within::Share(1e-12));
    let as_one = 7.0 / density("resin-castable") * 10.36;
    table.rejected("all of it taken as resin, g", "one density for both", as_one, outcome.number(outcome.flask().metal.tree), 3.0);
    table.judge(1);
}

#[test]
fn one_button_a_flask() {
    // Three rings on one tree: the button is half a troy ounce or a tenth of the tree, once (casters' forum).
    let mut table = Table::default();
    for (wax, button) in [("3", 15.551_738_4), ("30", 0.1 * 30.0 / 0.95 * 10.36)] {
        let mut world = World::sound();
        world.tree().weighed = vec![weighed("wax-injection", wax)];
        let outcome = world.recompute();
        table.row(
            format!("button on {wax} g of wax, g"),
            "half a troy ounce, or 10 % of the tree",
            button,
            outcome.number(outcome.flask().metal.button),
            Within::Share(1e-12),
        );
    }
    table.judge(1);
}

/// 1/ρ = Σ wᵢ/ρᵢ.
fn mixed(parts: &[(f64, f64)]) -> f64 {
    parts.iter().map(|part| part.0).sum::<f64>() / parts.iter().map(|(share, density)| share / density).sum::<f64>()
}

#[test]
fn densities_of_alloys() {
    // The program reads densities from the shelf and computes none from compositions yet: the shelf is held against the rule here.
    let mut table = Table::default();
    let shelf = |id: &str| Shelf::shipped().get::<Alloy>(id).unwrap().density_g_cm3.value;
    table.row("925 silver by the rule", "10.49 and 8.96 g/cm³", 10.357, mixed(&[(925.0, 10.49), (75.0, 8.96)]), Within::Printed(3));
    table.row("925 silver on the shelf", "the rule's 10.357", 10.357, shelf("silver-925"), Within::Share(0.001));
    table.row(
        "583/104/313 by the rule",
        "published worked example, 13.33",
        13.329,
        mixed(&[(583.0, 19.32), (104.0, 10.49), (313.0, 8.96)]),
        Within::Printed(3),
    );
    for (row, id) in [("fine gold", "gold-fine"), ("fine silver", "silver-fine")] {
        let csv = Csv::read("metals/alloy_density.csv");
        let expected = csv.rows().find(|record| record.text("alloy") == row).unwrap().number("inverse_rule_mendeleev");
        table.row(format!("{row} on the shelf"), "element data of another library", expected, shelf(id), Within::Share(0.002));
    }
    // Published lists with an allowance built in are not densities.
    table.rejected("925 silver", "a list of “specific gravities”", 10.8, shelf("silver-925"), 0.3);
    table.rejected("18 k yellow", "the same list", 16.25, shelf("gold-18k-yellow"), 0.3);
    assert!(EntryId::new("gold-18k-yellow").is_some());
    table.judge(1);
}
