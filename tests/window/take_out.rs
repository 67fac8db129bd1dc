//! Whatever is taken out of a batch, nothing is left that points at it; and what the record tells of stays.

use eframe::egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::job::{Job, Place};

use super::hands::words;
use super::layout::unfold;
use super::{Sight, USUAL, looked_at, on_sample};

/// Everything that can be taken out, with the button that does it.
fn all(job: &Job) -> Vec<(Place, &'static str)> {
    let mut places: Vec<(Place, &'static str)> = job.orders.iter().map(|order| (Place::Order(order.id), "orders-remove")).collect();
    places.extend(job.lines().map(|(_, line)| (Place::Line(line.id), "orders-remove-line")));
    places.extend(job.patterns.iter().map(|pattern| (Place::Pattern(pattern.id), "patterns-remove")));
    places.extend(job.prints.iter().map(|run| (Place::Print(run.id), "prints-remove")));
    places.extend(job.trees.iter().map(|tree| (Place::Tree(tree.id), "trees-remove")));
    places.extend(job.flasks.iter().map(|flask| (Place::Flask(flask.id), "flasks-remove")));
    places.extend(job.burnouts.iter().map(|load| (Place::Burnout(load.id), "heat-remove")));
    places.extend(job.melts.iter().map(|melt| (Place::Melt(melt.id), "melt-remove")));
    places
}

fn faults(window: &Window) -> Vec<String> {
    window.workbook.computed.faults.iter().map(ToString::to_string).collect()
}

#[test]
fn nothing_points_at_what_was_taken_out() {
    let (mut taken, mut stayed) = (0, 0);
    for sample in ["first-pour.ron", "mixed-kiln.ron", "workshop-class.ron", "order-book.ron"] {
        let mut harness = on_sample(sample, Sight { height: 5600.0, ..USUAL });
        let before = faults(harness.state());
        let job = harness.state().workbook.job.clone();
        for (place, key) in all(&job) {
            harness.state_mut().workbook.view.go_to(place, &job);
            looked_at(&mut harness);
            if harness.query_all_by_label(&words(key)).count() == 0 {
                unfold(&mut harness);
            }
            let name = words(key);
            let button = harness.get_by_label(&name);
            if button.accesskit_node().is_disabled() {
                stayed += 1;
                continue;
            }
            button.click();
            harness.run();
            assert_ne!(harness.state().workbook.job, job, "{sample} {place}");
            let left: Vec<String> = faults(harness.state()).into_iter().filter(|fault| !before.contains(fault)).collect();
            assert!(left.is_empty(), "{sample}: {place} was taken out, and left {left:?}");
            harness.state_mut().workbook.undo();
            assert_eq!(harness.state().workbook.job, job);
            taken += 1;
        }
    }
    assert!(taken > 60 && stayed > 4, "{taken} taken out, {stayed} stayed");
}

#[test]
fn fewer_pieces_leave_nothing_said_of_more() {
    let mut harness = on_sample("mixed-kiln.ron", USUAL);
    let job = harness.state().workbook.job.clone();
    for (order, line) in job.lines().filter(|(_, line)| line.quantity > 1) {
        harness.state_mut().workbook.view.page = Page::Orders;
        harness.state_mut().workbook.view.go_to(Place::Line(line.id), &job);
        harness.run();
        harness.get_by_role_and_label(Role::TextInput, &words("orders-quantity")).focus();
        harness.run();
        harness.get_by_role_and_label(Role::TextInput, &words("orders-quantity")).type_text("1");
        harness.key_press(eframe::egui::Key::Enter);
        harness.run();
        let window = harness.state();
        let now = window.workbook.job.lines().find(|(_, other)| other.id == line.id).unwrap().1.clone();
        assert_eq!(now.quantity, 1, "{}", order.client);
        assert!(now.exceptions.keys().all(|number| *number == 1));
        assert!(faults(window).is_empty(), "{:?}", faults(window));
        harness.state_mut().workbook.undo();
    }
}
