use super::{Sight, USUAL, on_sample};
use pourbook::app::page::Page;
use pourbook::job::BurnoutId;

#[test]
#[ignore = "to look at"]
fn look() {
    std::fs::create_dir_all("/tmp/look").unwrap();
    for (name, load, width, height, dark, folds) in [
        ("k1", 1, 1280.0, 1300.0, false, false),
        ("k1d", 1, 1024.0, 3000.0, true, false),
        ("k1f", 1, 1280.0, 4300.0, false, true),
        ("k1s", 1, 1024.0, 700.0, false, false),
    ] {
        let mut harness = on_sample("power-cut.ron", Sight { width, height, dark, ..USUAL });
        harness.state_mut().workbook.view.page = Page::Burnout;
        harness.state_mut().workbook.view.burnout = Some(BurnoutId(load));
        if folds {
            for fold in ["floor-heading", "keyed-heading", "night-heading", "heat-more"] {
                harness.state_mut().workbook.view.unfolded.insert(fold);
            }
            harness.run();
            harness.state_mut().workbook.seek_night();
            for _ in 0..600 {
                if harness.state().workbook.nights.found().is_some() {
                    break;
                }
                std::thread::sleep(std::time::Duration::from_millis(100));
                harness.run_steps(1);
            }
        }
        harness.run();
        harness.render().unwrap().save(format!("/tmp/look/{name}.png")).unwrap();
    }
    let mut harness = on_sample("power-cut.ron", Sight { width: 1280.0, height: 1400.0, ..USUAL });
    harness.state_mut().workbook.view.page = Page::Settings;
    harness.state_mut().workbook.view.unfolded.insert("settings-hours");
    harness.run();
    harness.render().unwrap().save("/tmp/look/settings.png").unwrap();
}
