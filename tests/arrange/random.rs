//! Tasks of every size: what is given out passes the check, whatever was asked for.

use pourbook::calc::arrange::{CannotArrange, Held, Limits, Task, Wanted, arrange, check};
use pourbook::calc::stand::{Form, Trunk};
use proptest::prelude::*;

use super::apart::spare;
use super::world::{LIMITS, TRUNK, equal, piece};

fn form() -> impl Strategy<Value = Form> {
    let sides = [1.0..25.0_f64, 0.5..14.0_f64, 0.5..10.0_f64];
    let points = prop::collection::vec([0.0..18.0_f64, -6.0..6.0_f64, -5.0..5.0_f64], 1..30);
    prop_oneof![sides.prop_map(Form::Sides), points.prop_map(Form::Hull)]
}

fn wanted() -> impl Strategy<Value = Wanted> {
    let thinnest = prop::option::of(0.3..3.0_f64);
    let held = prop::option::weighted(0.1, (10.0..80.0_f64, -400.0..400.0_f64, -200.0..200.0_f64));
    (form(), 0.0..30.0_f64, thinnest, 0.8..5.0_f64, 2.0..14.0_f64, 15.0..120.0_f64, held).prop_map(
        |(form, weight_g, thinnest_mm, feed_diameter_mm, feed_length_mm, angle_deg, held)| Wanted {
            form,
            weight_g,
            thinnest_mm,
            feed_diameter_mm,
            feed_length_mm,
            angle_deg,
            held: held.map(|(joint_mm, around_deg, twist_deg)| Held { joint_mm, around_deg, twist_deg }),
        },
    )
}

fn task() -> impl Strategy<Value = Task> {
    let limits = (50.0..130.0_f64, 60.0..160.0_f64, [0.0..8.0_f64, 0.0..4.0, 0.0..2.0, 0.0..3.0, 0.0..20.0, 0.0..20.0]);
    let trunk = [4.0..16.0_f64, 10.0..90.0_f64, 0.0..20.0_f64];
    // A few pieces, each some times.
    let pieces = prop::collection::vec((wanted(), 1..4_usize), 0..7);
    (trunk, limits, pieces, -6..=3_i32, any::<bool>(), any::<bool>()).prop_map(
        |(trunk, (inner, height, room), pieces, power, large, kept)| {
            let times = if large { 2.0_f64.powi(power) } else { 1.0 };
            let [diameter_mm, length_mm, dome_mm] = trunk.map(|x| times * x);
            let [wall_mm, between_mm, feeds_mm, trunk_mm, top_mm, bottom_mm] = room.map(|x| times * x);
            let limits = Limits {
                inner_diameter_mm: times * inner,
                height_mm: times * height,
                wall_mm,
                between_mm,
                feeds_mm: Some(feeds_mm).filter(|_| kept),
                trunk_mm,
                top_mm,
                bottom_mm,
            };
            let many = |(wanted, many): (Wanted, usize)| vec![sized(&wanted, times); if wanted.held.is_some() { 1 } else { many }];
            Task { trunk: Trunk { diameter_mm, length_mm, dome_mm }, pieces: pieces.into_iter().flat_map(many).collect(), limits }
        },
    )
}

/// The same piece so many times as large.
fn sized(wanted: &Wanted, times: f64) -> Wanted {
    let form = match &wanted.form {
        Form::Sides(sides) => Form::Sides(sides.map(|side| times * side)),
        Form::Hull(points) => Form::Hull(points.iter().map(|point| point.map(|x| times * x)).collect()),
    };
    Wanted {
        form,
        feed_diameter_mm: times * wanted.feed_diameter_mm,
        feed_length_mm: times * wanted.feed_length_mm,
        held: wanted.held.map(|held| Held { joint_mm: times * held.joint_mm, ..held }),
        ..wanted.clone()
    }
}

/// The task of those pieces alone that hang.
fn part(task: &Task, hangs: &[Option<pourbook::calc::stand::Hang>]) -> Task {
    let pieces = task.pieces.iter().zip(hangs).filter(|(_, hang)| hang.is_some()).map(|(wanted, _)| wanted.clone());
    Task { pieces: pieces.collect(), ..task.clone() }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_given_out_passes_the_check(task in task()) {
        match arrange(&task, 12_000, &|_| true) {
            Ok(found) => {
                prop_assert_eq!(check(&task, &found.hangs), Ok(()));
                let spare = spare(&task, &found.hangs);
                prop_assert!(spare > -1e-5 * task.limits.height_mm, "{}", spare);
            }
            Err(CannotArrange::RoomFor { most, of, hangs, .. }) => {
                prop_assert!(most < of && of == task.pieces.len() && hangs.len() == of);
                let hung: Vec<_> = hangs.iter().flatten().cloned().collect();
                prop_assert_eq!(hung.len(), most);
                prop_assert_eq!(check(&part(&task, &hangs), &hung), Ok(()));
            }
            Err(CannotArrange::TooWide { needs_mm, has_mm, .. }
                | CannotArrange::TooHigh { needs_mm, has_mm, .. }
                | CannotArrange::FeedTooShort { needs_mm, has_mm, .. }
                | CannotArrange::TrunkTooShort { needs_mm, has_mm, .. }
                | CannotArrange::TrunkTooThick { needs_mm, has_mm }
                | CannotArrange::TrunkTooLong { needs_mm, has_mm }) => prop_assert!(needs_mm > has_mm),
            Err(CannotArrange::Held(_)) => prop_assert!(task.pieces.iter().any(|wanted| wanted.held.is_some())),
            Err(CannotArrange::BadFlask | CannotArrange::BadPiece { .. }) => prop_assert!(false, "all sizes are sizes"),
        }
    }
}

#[test]
fn none_one_and_three_hundred() {
    let bead = Wanted { feed_diameter_mm: 1.0, feed_length_mm: 6.0, ..piece(Form::Sides([3.0; 3]), 0.2, 1.0) };
    let none = arrange(&equal(0, &bead), 1000, &|_| true).unwrap();
    assert!(none.hangs.is_empty() && none.cost.total == 0.0);
    assert_eq!(arrange(&equal(1, &bead), 1000, &|_| true).unwrap().hangs.len(), 1);
    // In a usual flask there is not room for so many; in a large one there is.
    let begun = std::time::Instant::now();
    let CannotArrange::RoomFor { most, of, .. } = arrange(&equal(300, &bead), 200_000, &|_| true).unwrap_err() else { panic!() };
    println!("300 beads: room for {most} in {:.2} s", begun.elapsed().as_secs_f64());
    assert!(most > 80 && of == 300);
    let trunk = Trunk { diameter_mm: 20.0, length_mm: 160.0, ..TRUNK };
    let limits = Limits { inner_diameter_mm: 120.0, height_mm: 200.0, ..LIMITS };
    let large = Task { trunk, limits, ..equal(300, &bead) };
    let begun = std::time::Instant::now();
    let found = arrange(&large, 200_000, &|_| true).unwrap();
    println!("300 beads in a large flask: {:.2} s, {:?}", begun.elapsed().as_secs_f64(), found.cost);
    check(&large, &found.hangs).unwrap();
}

#[test]
fn a_tree_of_any_size_is_the_same_tree() {
    let one = piece(Form::Sides([12.0, 6.0, 4.0]), 2.0, 1.0);
    for times in [0.01, 1.0, 500.0] {
        let task = Task {
            trunk: Trunk { diameter_mm: 8.0 * times, length_mm: 60.0 * times, dome_mm: 15.0 * times },
            pieces: vec![sized(&one, times); 10],
            limits: Limits {
                inner_diameter_mm: 89.0 * times,
                height_mm: 102.0 * times,
                wall_mm: 6.0 * times,
                between_mm: 2.0 * times,
                feeds_mm: Some(0.5 * times),
                trunk_mm: 2.0 * times,
                top_mm: 12.0 * times,
                bottom_mm: 10.0 * times,
            },
        };
        let found = arrange(&task, 50_000, &|_| true).unwrap_or_else(|why| panic!("{times}: {why:?}"));
        check(&task, &found.hangs).unwrap();
        assert!(found.cost.total < 1e-9, "{times}: {:?}", found.cost);
    }
}
