//! What a plan says where not everything goes: who waits, and why.

use pourbook::calc::plan::{Company, Group, STEPS, Size, Why, Wish, check, plan};

fn piece(grams: u64) -> Group {
    Group { alloy: 0, metal_mg: 1000 * grams, places: vec![1; 2], fits: vec![true; 2], mould_c: 500..=600, company: Company::Any, due: 0 }
}

fn shelf(groups: Vec<Group>) -> Wish {
    let size = |grams: u64, places: u32, volume: u64| Size { metal_mg: vec![1000 * grams], places, volume_mm3: volume, stock: None };
    Wish { alloys: 1, sizes: vec![size(30, 4, 200), size(100, 8, 700)], groups, locks: Vec::new(), most_flasks: None }
}

fn planned(wish: &Wish) -> pourbook::calc::plan::Plan {
    let found = plan(wish, STEPS, &|_| true);
    check(wish, &found).unwrap();
    found
}

#[test]
fn what_fits_nowhere_says_why() {
    let wish = shelf(vec![
        Group { fits: vec![false, false], ..piece(5) },
        piece(101),
        Group { places: vec![9; 2], ..piece(5) },
        Group { fits: vec![true, false], ..piece(31) },
        #[allow(clippy::reversed_empty_ranges, reason = "that is the contradiction")]
        Group { mould_c: 600..=500, ..piece(5) },
        piece(5),
    ]);
    let found = planned(&wish);
    assert_eq!(
        found.left,
        [
            (0, Why::FitsNone),
            (1, Why::TooMuchMetal { most_mg: 100_000 }),
            (2, Why::TooManyPlaces { size: 1 }),
            (3, Why::TooMuchMetal { most_mg: 30_000 }),
            (4, Why::Contradiction),
        ]
    );
    assert_eq!(found.flasks.len(), 1);
    assert_eq!(found.flasks[0].size, 0, "the smallest that does");
}

#[test]
fn those_due_first_go_first_where_the_kiln_is_full() {
    let due = |due: i64| Group { due, ..piece(60) };
    let mut wish = shelf(vec![due(3), due(1), due(2), Group { due: 9, ..piece(20) }]);
    wish.most_flasks = Some(2);
    let found = planned(&wish);
    // Three flasks of sixty grams would be wanted. The small one still finds room beside.
    assert_eq!(found.left, [(0, Why::NoRoom)]);
    assert_eq!(found.flasks.len(), 2);
}

#[test]
fn an_experiment_stands_beside_nothing_that_cannot_be_made_again() {
    let of = |company| Group { company, ..piece(5) };
    let found = planned(&shelf(vec![of(Company::Irreplaceable), of(Company::Trial), of(Company::Any)]));
    assert_eq!(found.flasks.len(), 2);
    assert!(found.bound.flasks == 2, "{:?}", found.bound);
}

#[test]
fn moulds_that_share_no_temperature_share_no_flask() {
    let at = |low: i32, high: i32| Group { mould_c: low..=high, ..piece(5) };
    // The middle one goes with either.
    let found = planned(&shelf(vec![at(450, 500), at(480, 560), at(550, 620)]));
    assert_eq!(found.flasks.len(), 2);
    assert_eq!(planned(&shelf(vec![at(450, 500), at(500, 560)])).flasks.len(), 1, "one temperature is enough");
}

#[test]
fn a_piece_takes_more_of_a_small_tree_than_of_a_large_one() {
    // Four of the small tree's four places, two of the large one's eight.
    let wide = || Group { places: vec![4, 2], ..piece(5) };
    let found = planned(&shelf(vec![wide(), wide(), wide(), wide()]));
    assert_eq!((found.flasks.len(), found.flasks[0].size), (1, 1));
    let wish = shelf(vec![wide()]);
    assert_eq!(planned(&wish).flasks[0].size, 0);
    assert!(planned(&wish).is_proven(&wish));
    // Of nine in three the small tree would lack five, the large one an eighth.
    let found = planned(&shelf(vec![Group { places: vec![9, 9], ..piece(5) }, Group { places: vec![4, 9], ..piece(50) }]));
    assert_eq!(found.left, [(0, Why::TooManyPlaces { size: 1 }), (1, Why::TooMuchMetal { most_mg: 30_000 })]);
}

#[test]
fn few_flasks_come_before_little_investment() {
    // Two small ones would take 400, one large one takes 700 and is one flask.
    let found = planned(&shelf(vec![piece(25), piece(25)]));
    assert_eq!((found.flasks.len(), found.flasks[0].size), (1, 1));
    assert!(found.is_proven(&shelf(vec![piece(25), piece(25)])));
}

#[test]
fn a_size_that_runs_out_is_shared_where_it_saves_most() {
    let size = |grams: u64, volume: u64, stock| Size { metal_mg: vec![1000 * grams; 2], places: 8, volume_mm3: volume, stock };
    // One flask of the middle size: either alloy could use it in place of the large one, and both by themselves would take it.
    let groups = [0, 1].map(|alloy| Group { alloy, places: vec![1; 3], fits: vec![true; 3], ..piece(40) });
    let wish = Wish {
        alloys: 2,
        sizes: vec![size(30, 200, None), size(50, 400, Some(1)), size(100, 700, None)],
        groups: groups.into(),
        ..Wish::default()
    };
    let found = planned(&wish);
    assert_eq!((found.flasks.len(), found.volume_mm3(&wish)), (2, 1100));
    assert!(found.is_proven(&wish), "{:?}", found.bound);
}

#[test]
fn nothing_to_cast_takes_no_flask() {
    let found = planned(&shelf(Vec::new()));
    assert!(found.flasks.is_empty() && found.left.is_empty());
}
