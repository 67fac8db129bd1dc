//! How long a picture of the shaded view takes, 640 by 480 pixels, two threads.
//!
//! `cargo bench --bench look` prints medians for 200 000 and 5 million triangles; `-- --smoke`, and any run that is not `cargo bench`, looks at
//! a small one once. While it turns a picture may take 33 ms.
#![allow(missing_docs, clippy::unwrap_used, clippy::print_stdout, reason = "a bench prints, and may stop where it stands")]

use pourbook::mesh::Unwatched;
use pourbook::mesh::look::{Axis, Camera, Cut, Keep, Model, Plain, Quality, Scene, Tones, pick, render};
use std::time::Instant;

mod knurl;

const TONES: Tones = Tones {
    material: [220, 210, 190],
    inner: [150, 160, 180],
    cut: [220, 170, 120],
    cut_twice: [180, 120, 60],
    outline: [30, 30, 30],
    far: [240, 235, 225],
};
const SIZE: [u32; 2] = [640, 480];

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let smoke = arguments.iter().any(|a| a == "--smoke" || a == "--test") || !arguments.iter().any(|a| a == "--bench");
    let sizes: &[(usize, usize)] = if smoke { &[(400, 100)] } else { &[(500, 200), (2500, 1000)] };
    for (around, across) in sizes {
        let triangles = knurl::band(*around, *across);
        let begun = Instant::now();
        let model = Model::new(&triangles, &Unwatched).unwrap();
        println!("{} triangles: made ready in {:.0} ms, {} while turning", triangles.len(), ms(begun), model.light_triangles());
        drop(triangles);
        for (name, cut) in [("whole", None), ("cut", Some(Cut { axis: Axis::Y, at: 0.5, keep: Keep::Above }))] {
            for (quality, rounds) in [(Quality::Turning, if smoke { 1 } else { 31 }), (Quality::Rest, if smoke { 1 } else { 3 })] {
                let mut times: Vec<f64> = (0..rounds)
                    .map(|round| {
                        let camera = Camera::default().turned(7.0 * f64::from(round), 0.0);
                        let scene = Scene { model: &model, camera, cut, paint: &Plain, lines: &[], tones: TONES };
                        let begun = Instant::now();
                        let picture = render(&scene, SIZE, quality, 2, &Unwatched).unwrap();
                        assert!(picture.rgba.chunks_exact(4).any(|pixel| pixel[3] == 255));
                        ms(begun)
                    })
                    .collect();
                times.sort_by(f64::total_cmp);
                let (best, median, worst) = (times[0], times[times.len() / 2], times[times.len() - 1]);
                println!("  {name}, {quality:?}: {median:.1} ms, {best:.1} to {worst:.1} ms");
            }
        }
        let scene = Scene { model: &model, camera: Camera::default(), cut: None, paint: &Plain, lines: &[], tones: TONES };
        let begun = Instant::now();
        let hit = pick(&scene, SIZE, [SIZE[0] / 2, SIZE[1] / 2 + 80]);
        println!("  picking among all: {:.1} ms, {}", ms(begun), if hit.is_some() { "hit" } else { "nothing there" });
    }
}

fn ms(since: Instant) -> f64 {
    1000.0 * since.elapsed().as_secs_f64()
}
