//! The cards for when something goes wrong: one press from anywhere, read from afar, and everything behind them as it was left.

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers, Shape, epaint::ClippedShape};
use egui_kittest::Harness;
use egui_kittest::kittest::{AccessKitNode, NodeT, Queryable, by};
use pourbook::app::dialog::{Dialog, Then};
use pourbook::app::page::Page;
use pourbook::app::what_now::Cards;
use pourbook::app::window::Window;
use pourbook::paper::what_now::Trouble;

use super::hands::{Hands, Way, words};
use super::shapes::{Seen, faults, texts};
use super::{Sight, USUAL, empty, on_sample};

fn press(harness: &mut Harness<'static, Window>, key: Key) {
    harness.key_press(key);
    harness.run();
}

fn cards(harness: &Harness<'static, Window>) -> Option<Cards> {
    harness.state().workbook.view.cards
}

fn focused(harness: &Harness<'static, Window>) -> Option<String> {
    let node = harness.query_all(by().predicate(|node: &AccessKitNode<'_>| node.is_focused())).next()?;
    node.accesskit_node().label()
}

/// Words with their size in points.
fn sizes(shapes: &[ClippedShape]) -> Vec<(String, f32)> {
    fn collect(shape: &Shape, found: &mut Vec<(String, f32)>) {
        match shape {
            Shape::Vec(shapes) => shapes.iter().for_each(|shape| collect(shape, found)),
            Shape::Text(text) => {
                let size = text.galley.job.sections.iter().map(|section| section.format.font_id.size).fold(f32::INFINITY, f32::min);
                found.push((text.galley.job.text.clone(), size));
            }
            _ => {}
        }
    }
    let mut found = Vec::new();
    shapes.iter().for_each(|clipped| collect(&clipped.shape, &mut found));
    found
}

/// What is seen, to be held against what is seen later.
fn sight(harness: &Harness<'static, Window>) -> Vec<(String, [i32; 2])> {
    let at = |seen: Seen| (seen.words, [seen.ink.left().round() as i32, seen.ink.top().round() as i32]);
    texts(&harness.output().shapes).into_iter().map(at).collect()
}

#[test]
fn every_card_is_reached_by_keys_alone_and_escape_restores_the_page() {
    for page in [Page::Start, Page::Burnout, Page::Settings] {
        let mut harness = on_sample("mixed-kiln.ron", USUAL);
        harness.state_mut().workbook.view.page = page;
        harness.run();
        for _ in 0..12 {
            press(&mut harness, Key::Tab);
        }
        let (before, seen) = (focused(&harness), sight(&harness));
        let figures = [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6, Key::Num7, Key::Num8, Key::Num9];
        for (key, trouble) in figures.into_iter().zip(Trouble::ALL) {
            press(&mut harness, Key::F2);
            assert_eq!(cards(&harness), Some(Cards::List));
            press(&mut harness, key);
            assert_eq!(cards(&harness), Some(Cards::One(trouble)), "{key:?}");
            assert_eq!(focused(&harness).as_deref(), Some(words(trouble.key()).as_str()), "it is said what was opened");
            press(&mut harness, Key::Escape);
            assert_eq!(cards(&harness), Some(Cards::List));
            press(&mut harness, Key::Escape);
            assert_eq!(cards(&harness), None);
            assert_eq!(harness.state().workbook.view.page, page);
            assert_eq!(focused(&harness), before, "{page:?}");
            assert_eq!(sight(&harness), seen, "{page:?} is seen as before");
        }
        // The same key leads straight back.
        press(&mut harness, Key::F2);
        press(&mut harness, Key::Num9);
        press(&mut harness, Key::F2);
        assert_eq!((cards(&harness), focused(&harness)), (None, before));
        assert!(!harness.state().workbook.is_changed());
    }
}

#[test]
fn arrows_and_enter_choose_and_arrows_turn() {
    let mut harness = on_sample("first-pour.ron", USUAL);
    press(&mut harness, Key::F2);
    assert_eq!(focused(&harness), Some(words("card-kiln-off-title")), "the first card has the focus");
    press(&mut harness, Key::ArrowRight);
    press(&mut harness, Key::ArrowDown);
    assert_eq!(focused(&harness), Some(words("card-crucible-title")), "beside the first, and below that");
    press(&mut harness, Key::Enter);
    assert_eq!(cards(&harness), Some(Cards::One(Trouble::Crucible)));
    for (key, trouble) in [
        (Key::ArrowRight, Trouble::Spill),
        (Key::ArrowLeft, Trouble::Crucible),
        (Key::Num9, Trouble::Burn),
        (Key::ArrowRight, Trouble::KilnOff),
        (Key::ArrowLeft, Trouble::Burn),
    ] {
        press(&mut harness, key);
        assert_eq!(cards(&harness), Some(Cards::One(trouble)), "{key:?}");
    }
}

#[test]
fn every_card_is_reached_by_mouse_and_left_by_mouse() {
    let mut hands = Hands::new(on_sample("mixed-kiln.ron", USUAL), Way::Mouse);
    hands.go(Page::Burnout);
    for trouble in Trouble::ALL {
        hands.press(&words("do-what-now"));
        hands.press(&words(trouble.key()));
        assert_eq!(cards(&hands.harness), Some(Cards::One(trouble)));
        hands.press(&words("cards-key-list"));
        hands.press(&words("cards-key-leave"));
        assert_eq!((cards(&hands.harness), hands.harness.state().workbook.view.page), (None, Page::Burnout));
    }
    hands.press(&words("do-what-now"));
    hands.press(&words("card-spin-title"));
    hands.press(&words("cards-key-next"));
    assert_eq!(cards(&hands.harness), Some(Cards::One(Trouble::Fume)));
}

#[test]
fn the_finder_knows_every_card() {
    let mut harness = on_sample("mixed-kiln.ron", USUAL);
    for trouble in Trouble::ALL {
        harness.key_press_modifiers(Modifiers::COMMAND, Key::K);
        harness.run();
        harness.get_by_role_and_label(Role::TextInput, &words("top-find-hint")).type_text(&words(trouble.key()));
        harness.run();
        press(&mut harness, Key::Enter);
        assert_eq!(cards(&harness), Some(Cards::One(trouble)));
        press(&mut harness, Key::F2);
        assert_eq!(cards(&harness), None);
    }
}

#[test]
fn what_was_written_is_taken_and_the_hand_is_back_in_its_field() {
    let mut harness = empty(USUAL);
    let field = "tree and base on the scale";
    harness.get_by_role_and_label(Role::TextInput, field).focus();
    harness.run();
    harness.get_by_role_and_label(Role::TextInput, field).type_text("143.8");
    harness.run();
    press(&mut harness, Key::F2);
    press(&mut harness, Key::Num6);
    assert_eq!(cards(&harness), Some(Cards::One(Trouble::Spill)), "a figure chooses a card, and is written nowhere");
    press(&mut harness, Key::Escape);
    press(&mut harness, Key::Escape);
    let node = harness.get_by_role_and_label(Role::TextInput, field);
    assert!(node.is_focused());
    assert!(node.value().unwrap_or_default().contains("143.8"), "{:?}", node.value());
    assert_eq!(harness.state().workbook.history.undo_name(), Some("weigh the tree"));
}

#[test]
fn a_question_waits_behind_the_cards() {
    let mut harness = empty(USUAL);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::O);
    harness.run();
    let asked = harness.state().dialog.clone();
    assert!(asked.is_some());
    press(&mut harness, Key::F2);
    assert_eq!(cards(&harness), Some(Cards::List));
    assert_eq!(harness.query_all_by_label(&words("open-title")).count(), 0, "the question is not in the way");
    press(&mut harness, Key::Escape);
    assert_eq!((cards(&harness), harness.state().dialog.clone()), (None, asked));
    assert!(harness.query_all_by_label(&words("open-title")).count() > 0);
    // A window that is closed asks before the cards, so that it is seen.
    let field = "tree and base on the scale";
    press(&mut harness, Key::Escape);
    assert_eq!(harness.state().dialog, None, "Escape is the question's again");
    harness.get_by_role_and_label(Role::TextInput, field).focus();
    harness.run();
    assert_eq!(focused(&harness).as_deref(), Some(field));
    harness.get_by_role_and_label(Role::TextInput, field).type_text("143.8");
    press(&mut harness, Key::Enter);
    assert!(harness.state().workbook.is_changed(), "something would be lost");
    press(&mut harness, Key::F2);
    harness.input_mut().viewports.entry(eframe::egui::ViewportId::ROOT).or_default().events.push(eframe::egui::ViewportEvent::Close);
    harness.step();
    harness.run();
    let window = harness.state();
    assert_eq!((window.dialog.clone(), cards(&harness)), (Some(Dialog::Close(Then::Quit)), None));
}

#[test]
fn the_bench_view_goes_on_where_it_was() {
    let mut harness = on_sample("first-pour.ron", USUAL);
    press(&mut harness, Key::F5);
    press(&mut harness, Key::Space);
    press(&mut harness, Key::Space);
    press(&mut harness, Key::F2);
    press(&mut harness, Key::Num3);
    assert_eq!(cards(&harness), Some(Cards::One(Trouble::PumpDead)));
    press(&mut harness, Key::Escape);
    press(&mut harness, Key::Escape);
    assert_eq!((cards(&harness), harness.state().workbook.view.bench), (None, Some(2)));
    harness.get_by_label(&words("bench-key-what-now")).click();
    harness.run();
    assert_eq!(cards(&harness), Some(Cards::List));
}

#[test]
fn cards_show_what_the_batch_knows_large() {
    let mut harness = on_sample("mixed-kiln.ron", Sight { height: 1400.0, ..USUAL });
    for (key, says) in [(Key::Num1, "flasks"), (Key::Num2, "788\u{202F}°C"), (Key::Num3, "°C")] {
        press(&mut harness, Key::F2);
        press(&mut harness, key);
        let seen = sizes(&harness.output().shapes);
        assert!(seen.iter().any(|(words, size)| words.contains(says) && *size >= 29.0), "{says}: {seen:?}");
        press(&mut harness, Key::F2);
    }
}

/// Looks at what is seen now: nothing cut at the sides, nothing over anything, no text missing, type as large as is promised.
fn look(harness: &Harness<'static, Window>, at: &str, told: &mut Vec<String>) -> Vec<String> {
    let shapes = &harness.output().shapes;
    let seen = texts(shapes);
    told.extend(faults(&seen).into_iter().map(|fault| format!("{at}: {fault}")));
    told.extend(seen.iter().filter(|text| text.words.contains('«')).map(|text| format!("{at}: {}", text.words)));
    let small = sizes(shapes).into_iter().filter(|(_, size)| *size < 17.0);
    told.extend(small.map(|(words, size)| format!("{at}: “{words}” is {size} pt")));
    let visible = seen.iter().filter(|text| text.clip.contains_rect(text.ink.shrink(1.0)));
    visible.map(|text| text.words.trim().to_owned()).collect()
}

#[test]
fn nothing_is_cut_in_any_window_and_all_of_it_comes_into_sight() {
    let mut told = Vec::new();
    for (width, height) in [(1280.0, 800.0), (1024.0, 700.0)] {
        for (dark, zoom, trade) in [(false, 100, false), (true, 150, true), (true, 100, false)] {
            let sight = Sight { width, height, dark, zoom, trade };
            let mut harness = on_sample("mixed-kiln.ron", sight);
            press(&mut harness, Key::F2);
            look(&harness, &format!("{sight:?} list"), &mut told);
            press(&mut harness, Key::Num1);
            for trouble in Trouble::ALL {
                assert_eq!(cards(&harness), Some(Cards::One(trouble)));
                let at = format!("{sight:?} {trouble:?}");
                let mut seen = look(&harness, &at, &mut told);
                for _ in 0..12 {
                    press(&mut harness, Key::ArrowDown);
                    press(&mut harness, Key::ArrowDown);
                    seen.extend(look(&harness, &at, &mut told));
                }
                let all = seen.join(" ");
                let says = |key: &str| words(key).split(' ').all(|word| all.contains(word));
                let steps = says(&trouble.key().replace("title", "7")) && says(&trouble.key().replace("title", "help"));
                assert!(steps && says("sheet-foot"), "{at}: {all}");
                press(&mut harness, Key::ArrowRight);
            }
        }
    }
    assert!(told.is_empty(), "{} faults:\n{}", told.len(), told.join("\n"));
}

#[test]
fn title_and_steps_are_large() {
    let mut harness = on_sample("first-pour.ron", Sight { width: 1024.0, height: 700.0, ..USUAL });
    press(&mut harness, Key::F2);
    press(&mut harness, Key::Num9);
    let seen = sizes(&harness.output().shapes);
    let size = |key: &str| seen.iter().find(|(said, _)| *said == words(key)).map_or(0.0, |(_, size)| *size);
    assert!(size("card-burn-title") >= 44.0, "{seen:?}");
    for key in ["card-burn-1", "card-burn-4", "card-burn-never-1", "card-burn-help"] {
        assert!(size(key) >= 24.0, "{key}: {seen:?}");
    }
    let plain = by().predicate(|node: &AccessKitNode<'_>| node.role() == Role::Heading);
    assert!(harness.query_all(plain).any(|node| node.accesskit_node().label() == Some(words("card-burn-title"))));
}

#[test]
fn the_top_line_has_room_for_the_button_beside_a_long_name_and_a_long_undo() {
    let mut told = Vec::new();
    for (width, zoom) in [(1024.0, 100), (1024.0, 150), (1149.0, 100), (1280.0, 100)] {
        let mut harness = on_sample("mixed-kiln.ron", Sight { width, height: 700.0, zoom, ..USUAL });
        let workbook = &mut harness.state_mut().workbook;
        for name in ["a first change of the batch with a long name", "a second change of the batch with a long name"] {
            workbook.edit(name.to_owned(), move |job| job.name = format!("{name}, and a batch of many words"));
        }
        workbook.undo();
        harness.run();
        told.extend(faults(&texts(&harness.output().shapes)).into_iter().map(|fault| format!("{width} {zoom}: {fault}")));
        assert!(harness.query_all_by_label(&words("do-what-now")).count() > 0);
    }
    assert!(told.is_empty(), "{}", told.join("\n"));
}
