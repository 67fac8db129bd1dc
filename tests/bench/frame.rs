//! How long a frame takes on every page of a batch of 5 000 pieces, layout and tessellation, without a display.
//!
//! `cargo bench --bench frame` prints the median of each page; `cargo bench --bench frame -- --test` draws each once. A page may take 1.5 ms.

#![allow(missing_docs, clippy::unwrap_used, clippy::print_stdout, reason = "a bench prints, and may stop where it stands")]

#[cfg(not(feature = "window"))]
fn main() {}

#[cfg(feature = "window")]
fn main() {
    window::measure();
}

#[cfg(feature = "window")]
mod window {
    use std::sync::Arc;
    use std::time::Instant;

    use eframe::egui::{Context, Pos2, RawInput, Rect, vec2};
    use jiff::civil::date;
    use pourbook::app::page::Page;
    use pourbook::app::theme;
    use pourbook::app::window::Window;
    use pourbook::files::disk::RealDisk;
    use pourbook::files::preferences::Preferences;
    use pourbook::job::{
        Burnout, BurnoutId, Flask, FlaskId, Hung, Line, LineId, Order, OrderId, Pattern, PatternId, Programme, Tree, TreeId, WeighedPart,
        Weighing,
    };
    use pourbook::quantity::Grams;
    use pourbook::stock::EntryId;

    const LINES: u32 = 5_000;

    fn net(grams: f64) -> Option<Weighing> {
        Grams::from_f64(grams).map(Weighing::Net)
    }

    fn job(job: &mut pourbook::job::Job) {
        let line = |number: u32| Line {
            id: LineId(number),
            design: format!("shell {number}"),
            quantity: 1,
            alloy: EntryId::new("silver-925"),
            pattern: Some(PatternId(number.div_ceil(10))),
            ..Line::default()
        };
        let orders = (0..40).map(|n| Order {
            id: OrderId(n + 1),
            client: format!("K{n}"),
            lines: (1..=LINES).filter(|number| number % 40 == n).map(line).collect(),
            ..Order::default()
        });
        job.orders = orders.collect();
        job.patterns = (1..=LINES.div_ceil(10))
            .map(|n| Pattern {
                id: PatternId(n),
                name: format!("shell {n}"),
                material: EntryId::new("wax-injection"),
                weighed: net(0.8),
                ..Pattern::default()
            })
            .collect();
        job.trees = (0..12)
            .map(|n| Tree {
                id: TreeId(n + 1),
                base: EntryId::new("base-89"),
                pieces: (1..=LINES).filter(|line| line % 12 == n).map(|line| Hung { line: LineId(line), ..Hung::default() }).collect(),
                weighed: vec![WeighedPart { material: EntryId::new("wax-injection"), weight: net(20.0), scale: String::new() }],
                ..Tree::default()
            })
            .collect();
        job.flasks = (1..=12)
            .map(|n| Flask {
                id: FlaskId(n),
                scratch: n.to_string(),
                vessel: EntryId::new("flask-89x102"),
                tree: Some(TreeId(n)),
                powder: EntryId::new("powder-gypsum"),
                burnout: Some(BurnoutId(1)),
                ..Flask::default()
            })
            .collect();
        job.burnouts = vec![Burnout {
            id: BurnoutId(1),
            kiln: EntryId::new("kiln-studio"),
            programme: EntryId::new("stages-wax").map(Programme::Table),
            pour_at: Some(date(2026, 12, 3).at(9, 30, 0, 0)),
            ..Burnout::default()
        }];
    }

    /// Sections that fold away.
    const FOLDS: [&str; 17] = [
        "batch-about",
        "orders-take-on",
        "orders-more",
        "orders-single-pieces",
        "orders-line-more",
        "patterns-more",
        "trees-parts",
        "heat-more",
        "melt-more",
        "settings-letterhead",
        "settings-site",
        "settings-hands",
        "settings-prices",
        "settings-money",
        "settings-lots",
        "settings-shelf",
        "working-what-if",
    ];

    fn frame(ctx: &Context, window: &mut Window) -> (f64, f64) {
        let input = RawInput { screen_rect: Some(Rect::from_min_size(Pos2::ZERO, vec2(1280.0, 800.0))), ..RawInput::default() };
        let begun = Instant::now();
        let mut output = ctx.run_ui(input, |ui| window.ui(ui));
        let drawn = begun.elapsed().as_secs_f64() * 1e3;
        let begun = Instant::now();
        let shapes = std::mem::take(&mut output.shapes);
        let meshes = ctx.tessellate(shapes, output.pixels_per_point);
        let tessellated = begun.elapsed().as_secs_f64() * 1e3;
        assert!(!meshes.is_empty());
        output.drop_without_applying_deltas();
        (drawn, tessellated)
    }

    pub fn measure() {
        let rounds = if std::env::args().any(|word| word == "--test") { 1 } else { 200 };
        let ctx = Context::default();
        theme::install(&ctx);
        let mut window = Window::on(Arc::new(RealDisk), date(2026, 11, 25), Preferences::default());
        window.workbook.edit("fill", job);
        window.logic(&ctx);
        println!("{:<22} {:>9} {:>9} {:>9}", "page", "layout ms", "tess. ms", "in all");
        let mut worst = 0.0_f64;
        for (page, open) in Page::RAIL.into_iter().flat_map(|page| [(page, false), (page, true)]) {
            window.workbook.view.page = page;
            window.workbook.view.unfolded = FOLDS.into_iter().filter(|_| open).collect();
            for _ in 0..3.min(rounds) {
                frame(&ctx, &mut window);
            }
            let mut times: Vec<(f64, f64)> = (0..rounds).map(|_| frame(&ctx, &mut window)).collect();
            times.sort_by(|a, b| (a.0 + a.1).total_cmp(&(b.0 + b.1)));
            let (drawn, tessellated) = times[times.len() / 2];
            worst = worst.max(drawn + tessellated);
            let name = format!("{page:?}{}", if open { ", unfolded" } else { "" });
            println!("{name:<22} {drawn:>9.3} {tessellated:>9.3} {:>9.3}", drawn + tessellated);
        }
        println!("the slowest page takes {worst:.2} ms");
    }
}
