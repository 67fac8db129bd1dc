//! The shaded view: areas of what is seen against closed forms, what is hit against where it lies, and pictures that must be alike.

use pourbook::mesh::look::{
    Axis, Camera, Cut, Hit, Keep, Lines, Model, Paint, Palette, Picture, Plain, Quality, Scene, StandardView, Tones, pick, render,
};
use pourbook::mesh::{Limits, Triangle, Unwatched, Watch, read_file};
use std::f64::consts::PI;

use super::shapes::{ball, block, mapped, moved, torus, turned};

const CUT: [u8; 3] = [250, 10, 10];
const TWICE: [u8; 3] = [10, 10, 250];
/// The far tone is the material's own, so that only light makes a difference.
const TONES: Tones =
    Tones { material: [200, 200, 200], inner: [200, 200, 200], cut: CUT, cut_twice: TWICE, outline: [0, 0, 0], far: [200, 200, 200] };
const SIZE: [u32; 2] = [320, 240];

fn model(triangles: &[Triangle]) -> Model {
    Model::new(triangles, &Unwatched).unwrap()
}

fn scene(model: &Model, camera: Camera, cut: Option<Cut>) -> Scene<'_> {
    Scene { model, camera, cut, paint: &Plain, lines: &[], tones: TONES }
}

fn seen(model: &Model, camera: Camera, cut: Option<Cut>, quality: Quality) -> Picture {
    render(&scene(model, camera, cut), SIZE, quality, 2, &Unwatched).unwrap()
}

/// Covered area in px².
fn covered(picture: &Picture) -> f64 {
    picture.rgba.chunks_exact(4).map(|pixel| f64::from(pixel[3]) / 255.0).sum()
}

/// Area in px² of pixels of a colour.
fn coloured(picture: &Picture, colour: [u8; 3]) -> f64 {
    picture.rgba.chunks_exact(4).filter(|pixel| pixel[..3] == colour && pixel[3] == 255).count() as f64
}

fn inside_out(triangles: &[Triangle]) -> Vec<Triangle> {
    turned(triangles)
}

#[test]
fn a_sphere_covers_pi_r_squared_at_every_zoom() {
    let model = model(&moved(&ball(6.0, 90, 180), [40.0, -3.0, 7.0]));
    for zoom in [0.3, 0.7, 1.0] {
        for quality in [Quality::Turning, Quality::Rest] {
            let camera = Camera { zoom, ..Camera::default() };
            let picture = seen(&model, camera, None, quality);
            let radius = 6.0 * picture.projection().px_per_mm();
            let share = covered(&picture) / (PI * radius * radius);
            assert!((share - 1.0).abs() < 0.006 / zoom, "{share} at {zoom}, {quality:?}");
        }
    }
}

#[test]
fn a_place_is_hidden_by_what_lies_before_it() {
    let model = model(&ball(6.0, 90, 180));
    let picture = seen(&model, Camera::default(), None, Quality::Turning);
    let onto = picture.projection();
    let scale = onto.px_per_mm();
    let [x, y, near] = onto.place(model.centre_mm());
    // 3.6 and 4.8 make 6: the front and the back of the ball over one pixel, and a place before all of it.
    let at = |deep_mm: f64| onto.point_mm([x + 3.6 * scale, y, near + deep_mm * scale]);
    assert!(!picture.hides(at(4.8), 0.2));
    assert!(picture.hides(at(-4.8), 0.2) && picture.hides(at(0.0), 0.2));
    assert!(!picture.hides(at(9.0), 0.2));
    // Beside the ball and outside the picture there is nothing to hide anything.
    assert!(!picture.hides(onto.point_mm([x + 6.5 * scale, y, near]), 0.2));
    assert!(!picture.hides(onto.point_mm([-5.0, y, near - 50.0]), 0.2));
    let cut = Cut { axis: Axis::Y, at: 0.5, keep: Keep::Above };
    let front = Camera::default().seen_from(StandardView::Front);
    let whole = seen(&model, front, None, Quality::Turning);
    let half = seen(&model, front, Some(cut), Quality::Turning);
    let back = [0.0, 6.0, 0.0];
    assert!(whole.hides(back, 0.2));
    assert!(half.hides(back, 0.2), "the face of the cut lies before it");
}

#[test]
fn what_is_hit_is_where_it_lies() {
    let triangles = ball(6.0, 60, 120);
    let model = model(&triangles);
    let camera = Camera { zoom: 0.9, yaw_deg: 63.0, pitch_deg: -20.0, pan_mm: [1.0, -0.5] };
    for quality in [Quality::Turning, Quality::Rest] {
        let picture = seen(&model, camera, None, quality);
        let half_px_mm = 0.5 / picture.projection().px_per_mm();
        let mut hits = 0;
        for (x, y) in (0..SIZE[0]).step_by(7).flat_map(|x| (0..SIZE[1]).step_by(7).map(move |y| (x, y))) {
            let Some(hit) = picture.hit_at(x, y) else { continue };
            hits += 1;
            assert_eq!(picture.triangle_at(x, y), hit.triangle);
            let again = pick(&scene(&model, camera, None), SIZE, [x, y]).unwrap();
            assert!((0..3).all(|axis| (again.point_mm[axis] - hit.point_mm[axis]).abs() < 1e-4), "{hit:?} {again:?}");
            // The triangle lies round the pixel, and the point on the ball: 60 × 120 facets stay within 1 % of its radius.
            let [a, b, c] = triangles[hit.triangle.unwrap() as usize].map(|corner| picture.projection().place(corner.map(f64::from)));
            let centre = [f64::from(x) + 0.5, f64::from(y) + 0.5];
            for axis in 0..2 {
                assert!(a[axis].min(b[axis]).min(c[axis]) - 0.5 <= centre[axis] && centre[axis] <= a[axis].max(b[axis]).max(c[axis]) + 0.5);
            }
            let radius = hit.point_mm.iter().map(|part| part * part).sum::<f64>().sqrt();
            assert!((radius - 6.0).abs() < 0.06, "{radius}");
            let back = picture.projection().place(hit.point_mm);
            assert!((back[0] - centre[0]).abs() < 0.5 && (back[1] - centre[1]).abs() < 0.5, "{back:?}, half a pixel is {half_px_mm} mm");
        }
        assert!(hits > 500);
    }
}

#[test]
fn a_cut_ball_shows_a_disc() {
    let model = model(&ball(6.0, 90, 180));
    for (at, axis, view) in [(0.5, Axis::Z, StandardView::Top), (0.7, Axis::Z, StandardView::Top), (0.35, Axis::X, StandardView::Right)] {
        let picture = seen(&model, Camera::from(view), Some(Cut { axis, at, keep: Keep::Below }), Quality::Turning);
        let scale = picture.projection().px_per_mm();
        // A plane h from the middle of a ball of radius r cuts a disc of radius sqrt(r² - h²); its rim is an outline one pixel wide.
        let h = 12.0 * (at - 0.5);
        let radius = (36.0 - h * h).sqrt() * scale;
        let found = coloured(&picture, CUT);
        let (least, most) = (PI * (radius - 2.0).powi(2), PI * radius * radius);
        assert!(least < found && found < 1.01 * most, "{found} of {most} at {at}");
        let middle = picture.hit_at(SIZE[0] / 2, SIZE[1] / 2).unwrap();
        assert_eq!(middle.triangle, None);
        assert!((middle.point_mm[axis.index()] - h).abs() < 1e-3, "{middle:?}");
    }
}

#[test]
fn a_cut_seen_slantwise_is_an_ellipse_and_from_behind_is_not_seen() {
    let model = model(&ball(6.0, 90, 180));
    let cut = Cut { axis: Axis::Z, at: 0.5, keep: Keep::Below };
    let picture = seen(&model, Camera { pitch_deg: 30.0, ..Camera::default() }, Some(cut), Quality::Turning);
    let radius = 6.0 * picture.projection().px_per_mm();
    // A disc seen 30° above its plane: half as high as wide.
    let share = coloured(&picture, CUT) / (PI * radius * radius * 0.5);
    assert!((0.95..1.0).contains(&share), "{share}");
    let below = seen(&model, Camera { pitch_deg: -30.0, ..Camera::default() }, Some(cut), Quality::Turning);
    assert!(coloured(&below, CUT) < 1.0);
    assert!(covered(&below) > 0.5 * PI * radius * radius);
}

#[test]
fn a_face_that_lies_in_the_cut_goes_with_what_is_cut_away() {
    // The small block ends just where the large one is cut.
    let blocks = model(&[block([0.0; 3], [8.0, 6.0, 12.0]), block([10.0, 0.0, 0.0], [13.0, 3.0, 4.0])].concat());
    let cut = Some(Cut { axis: Axis::Y, at: 0.5, keep: Keep::Above });
    for camera in [Camera::default(), Camera::from(StandardView::Front), Camera { zoom: 1.7, yaw_deg: -21.0, ..Camera::default() }] {
        let picture = seen(&blocks, camera, cut, Quality::Turning);
        let [x, y, _] = picture.projection().place([11.5, 3.0, 2.0]);
        assert_eq!(picture.hit_at(x as u32, y as u32), None, "nothing is left of it");
        let [x, y, _] = picture.projection().place([4.0, 3.0, 6.0]);
        assert_eq!(picture.hit_at(x as u32, y as u32).map(|hit| hit.triangle), Some(None), "a cut goes through the other");
    }
}

#[test]
fn a_hollow_ball_shows_a_ring_and_two_in_one_another_show_it() {
    let hollow = model(&[ball(6.0, 90, 180), inside_out(&ball(4.0, 80, 160))].concat());
    let cut = Some(Cut { axis: Axis::Y, at: 0.5, keep: Keep::Above });
    let picture = seen(&hollow, Camera::from(StandardView::Front), cut, Quality::Turning);
    let scale = picture.projection().px_per_mm();
    let ring = PI * (36.0 - 16.0) * scale * scale;
    // Its two rims are lines of a pixel.
    let rims = 2.0 * PI * 10.0 * scale;
    let found = coloured(&picture, CUT);
    assert!(ring - 1.5 * rims < found && found < 1.01 * ring, "{found} of {ring}");
    assert!(picture.triangle_at(SIZE[0] / 2, SIZE[1] / 2).is_some(), "one looks into the hollow");
    let solid = model(&[ball(6.0, 90, 180), ball(4.0, 80, 160)].concat());
    let picture = seen(&solid, Camera::from(StandardView::Front), cut, Quality::Turning);
    let twice = coloured(&picture, TWICE) / (PI * 16.0 * scale * scale);
    assert!((0.93..1.01).contains(&twice), "{twice}");
}

#[test]
fn a_cube_from_its_corner_shows_three_greys() {
    let picture = seen(&model(&block([0.0; 3], [10.0; 3])), Camera::default(), None, Quality::Rest);
    let mut greys = std::collections::BTreeMap::<u8, u32>::new();
    for pixel in picture.rgba.chunks_exact(4).filter(|pixel| pixel[3] == 255) {
        *greys.entry(pixel[0]).or_default() += 1;
    }
    let large: Vec<u8> = greys.into_iter().filter(|(_, many)| *many > 1500).map(|(grey, _)| grey).collect();
    assert_eq!(large.len(), 3, "{large:?}");
    assert!(large.windows(2).all(|pair| pair[1] - pair[0] > 12), "{large:?}");
}

#[test]
fn winding_changes_nothing() {
    let right = [ball(6.0, 40, 80), inside_out(&ball(4.0, 40, 80))].concat();
    let wrong = inside_out(&right);
    for cut in [None, Some(Cut { axis: Axis::Y, at: 0.45, keep: Keep::Above })] {
        let one = seen(&model(&right), Camera::default(), cut, Quality::Rest);
        let other = seen(&model(&wrong), Camera::default(), cut, Quality::Rest);
        let differ = one.rgba.iter().zip(&other.rgba).filter(|(a, b)| a.abs_diff(**b) > 2).count();
        assert!(differ < 40, "{differ} parts differ");
    }
}

#[test]
fn turning_all_the_way_round_comes_back() {
    let still = model(&mapped(&torus(9.0, 1.5, 60, 30), |[x, y, z]| [x, y * 1.2, z + 0.1 * x]));
    let start = Camera { zoom: 1.7, pan_mm: [0.4, 0.2], ..Camera::default() };
    let mut round = start;
    for _ in 0..24 {
        round = round.turned(15.0, 0.0);
    }
    assert!((round.yaw_deg - start.yaw_deg).abs() < 1e-9);
    assert_eq!(seen(&still, start, None, Quality::Turning).rgba, seen(&still, round, None, Quality::Turning).rgba);
    assert_eq!(start.dragged([90.0, -20.0], SIZE).dragged([-90.0, 20.0], SIZE), start);
    // Turning the pattern one way is going round it the other way.
    let (sin, cos) = 40_f64.to_radians().sin_cos();
    let spun = model(&mapped(still.triangles(), |[x, y, z]| [x * cos - y * sin, x * sin + y * cos, z]));
    let gone = Camera::default().turned(40.0, 0.0);
    let (one, other) = (seen(&spun, gone, None, Quality::Rest), seen(&still, Camera::default(), None, Quality::Rest));
    let scale = one.projection().px_per_mm() / other.projection().px_per_mm();
    assert!((covered(&one) / covered(&other) / (scale * scale) - 1.0).abs() < 0.004);
}

#[test]
fn the_axes_of_the_eye_are_square_and_standard_sides_face_their_side() {
    for (view, towards) in [
        (StandardView::Front, [0.0, -1.0, 0.0]),
        (StandardView::Back, [0.0, 1.0, 0.0]),
        (StandardView::Left, [-1.0, 0.0, 0.0]),
        (StandardView::Right, [1.0, 0.0, 0.0]),
        (StandardView::Top, [0.0, 0.0, 1.0]),
        (StandardView::Bottom, [0.0, 0.0, -1.0]),
    ] {
        let eye = Camera::from(view).axes()[2];
        assert!((0..3).all(|axis| (eye[axis] - f64::from(towards[axis] as f32)).abs() < 1e-12), "{view:?}: {eye:?}");
    }
    for step in 0..50 {
        let axes = Camera { yaw_deg: f64::from(step) * 7.3 - 180.0, pitch_deg: f64::from(step) * 3.6 - 90.0, ..Camera::default() }.axes();
        let dot = |a: [f64; 3], b: [f64; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        for a in 0..3 {
            for b in 0..3 {
                assert!((dot(axes[a], axes[b]) - f64::from(u8::from(a == b))).abs() < 1e-12);
            }
        }
        let [r, u, n] = axes;
        let cross = [r[1] * u[2] - r[2] * u[1], r[2] * u[0] - r[0] * u[2], r[0] * u[1] - r[1] * u[0]];
        assert!((dot(cross, n) - 1.0).abs() < 1e-12, "right-handed: nothing is mirrored");
    }
}

#[test]
fn what_lies_under_the_pointer_stays_there() {
    let model = model(&torus(9.0, 1.5, 60, 30));
    let camera = Camera { zoom: 2.0, ..Camera::default() };
    let at = [101.0, 77.0];
    let before = pourbook::mesh::look::Projection::new(&camera, &model, SIZE).point_mm([at[0], at[1], 0.0]);
    let nearer = camera.zoomed(1.6, at, &model, SIZE);
    let after = pourbook::mesh::look::Projection::new(&nearer, &model, SIZE).place(before);
    assert!((after[0] - at[0]).abs() < 1e-6 && (after[1] - at[1]).abs() < 1e-6, "{after:?}");
    let pulled = camera.panned([12.0, -7.0], &model, SIZE);
    let after = pourbook::mesh::look::Projection::new(&pulled, &model, SIZE).place(before);
    assert!((after[0] - at[0] - 12.0).abs() < 1e-6 && (after[1] - at[1] + 7.0).abs() < 1e-6, "{after:?}");
    assert_eq!(pulled.fitted(), Camera::default());
}

/// Every triangle in four, its sides halved.
fn finer(triangles: &[Triangle]) -> Vec<Triangle> {
    let mid = |a: [f32; 3], b: [f32; 3]| std::array::from_fn(|axis| a[axis] / 2.0 + b[axis] / 2.0);
    triangles
        .iter()
        .flat_map(|[a, b, c]| {
            let (ab, bc, ca) = (mid(*a, *b), mid(*b, *c), mid(*c, *a));
            [[*a, ab, ca], [ab, *b, bc], [ca, bc, *c], [ab, bc, ca]]
        })
        .collect()
}

#[test]
fn the_stand_in_has_the_outline_of_the_whole() {
    let filigree = filigree();
    // A foil of a hundredth of a millimetre, far thinner than the stand-in's grain.
    let foil = (0..5).fold(block([0.0; 3], [12.0, 9.0, 0.01]), |shape, _| finer(&shape));
    for (name, triangles, most) in
        [("torus", torus(9.6, 1.1, 300, 150), 12_000), ("filigree", finer(&finer(&filigree)), 24_000), ("foil", foil, 3_000)]
    {
        let model = Model::with_stand_in(&triangles, most, &Unwatched).unwrap();
        assert!(!model.is_light() && model.light_triangles() <= most, "{name}: {} triangles", model.light_triangles());
        assert!(model.light_triangles() > most / 5, "{name}: only {} triangles", model.light_triangles());
        for camera in
            [Camera::default(), Camera::from(StandardView::Top).turned(10.0, -12.0), Camera::from(StandardView::Right).turned(5.0, 8.0)]
        {
            let whole = render(&scene(&model, camera, None), [640, 480], Quality::Rest, 2, &Unwatched).unwrap();
            let light = render(&scene(&model, camera, None), [640, 480], Quality::Turning, 2, &Unwatched).unwrap();
            let share = covered(&light) / covered(&whole);
            assert!((share - 1.0).abs() < 0.02, "{name}: {share}");
        }
    }
}

/// A lattice of thin bars bent to a band.
fn filigree() -> Vec<Triangle> {
    let bars = (0..24).flat_map(|at| {
        let x = 2.5 * f64::from(at);
        let bar = |low: [f32; 3], high: [f32; 3]| moved(&(0..2).fold(block(low, high), |shape, _| finer(&shape)), [x, 0.0, 0.0]);
        [bar([0.0, 0.0, 0.0], [0.5, 0.5, 6.0]), bar([0.5, 0.0, 0.0], [2.5, 0.5, 0.6]), bar([0.5, 0.0, 5.4], [2.5, 0.5, 6.0])].concat()
    });
    mapped(&bars.collect::<Vec<Triangle>>(), |[x, y, z]| {
        let angle = x / 60.0 * 2.0 * PI;
        [(9.5 + y) * angle.cos(), (9.5 + y) * angle.sin(), z]
    })
}

#[test]
fn paint_and_lines_are_seen_and_hidden_lines_are_fainter() {
    let triangles = block([0.0; 3], [10.0; 3]);
    let model = model(&triangles);
    // The top of the block is its third and fourth triangle.
    let paint =
        Palette { colours: vec![[0, 220, 0]], of: triangles.iter().enumerate().map(|(at, _)| if at / 2 == 1 { 0 } else { 9 }).collect() };
    assert_eq!(paint.colour(2), Some([0, 220, 0]));
    let red = |edges: &[[[f32; 3]; 2]]| {
        let lines = &[Lines { segments: edges, colour: [255, 0, 0], width_px: 3.0 }];
        let painted = Scene { paint: &paint, lines, ..scene(&model, Camera::default(), None) };
        let picture = render(&painted, SIZE, Quality::Turning, 1, &Unwatched).unwrap();
        let is = |of: fn(&[u8]) -> bool| picture.rgba.chunks_exact(4).filter(|pixel| of(pixel)).count();
        (is(|p| p[0] == 255 && p[1] == 0), is(|p| i32::from(p[0]) > i32::from(p[1].max(p[2])) + 25), is(|p| p[1] > 100 && p[0] == 0))
    };
    let (none, warm, green) = red(&[]);
    assert!(none == 0 && warm == 0 && green > 1500, "{none} {warm} {green}");
    // An edge that meets the eye, and the one at the far side of the block below.
    let (full, _, _) = red(&[[[10.0, 0.0, 0.0], [10.0, 0.0, 10.0]]]);
    assert!(full > 150, "{full}");
    let (full, faint, _) = red(&[[[0.0, 10.0, 0.0], [0.0, 10.0, 10.0]]]);
    assert!(full < 12 && faint > 100, "{full} {faint}");
}

#[test]
fn two_threads_draw_what_one_does() {
    let model = model(&torus(9.0, 1.5, 60, 30));
    let cut = Some(Cut { axis: Axis::X, at: 0.4, keep: Keep::Below });
    let lines = [Lines { segments: &[[[-10.0, 0.0, 0.0], [10.0, 0.0, 5.0]]], colour: [255, 0, 0], width_px: 2.0 }];
    let scene = Scene { lines: &lines, ..scene(&model, Camera::default(), cut) };
    let by = |threads| render(&scene, [321, 239], Quality::Rest, threads, &Unwatched).unwrap();
    let (one, two) = (by(1), by(2));
    // Places are rounded otherwise where a band begins elsewhere: by a hair, and only pixels on an edge can tell.
    let differ = one.rgba.chunks_exact(4).zip(two.rgba.chunks_exact(4)).filter(|(a, b)| a != b).count();
    assert!(differ < 60, "{differ} pixels differ");
    let other = (0..321 * 239).filter(|at| one.triangle_at(at % 321, at / 321) != two.triangle_at(at % 321, at / 321)).count();
    assert!(other < 20, "{other} triangles differ");
}

struct Stop;

impl Watch for Stop {
    fn go_on(&self, _share: f64) -> bool {
        false
    }
}

#[test]
fn odd_input_is_borne() {
    assert!(Model::new(&[], &Unwatched).is_none());
    assert!(Model::new(&[[[1.0, 2.0, 3.0]; 3]], &Unwatched).is_none());
    assert!(Model::new(&[[[f32::NAN; 3]; 3]], &Unwatched).is_none());
    assert!(Model::new(&ball(1.0, 20, 20), &Stop).is_none());
    let ball_model = model(&ball(1.0, 20, 20));
    assert!(render(&scene(&ball_model, Camera::default(), None), SIZE, Quality::Rest, 2, &Stop).is_none());
    let huge = [[0.0, 0.0, 0.0], [f32::MAX, 0.0, 0.0], [0.0, f32::MAX, -f32::MAX]];
    let sliver = [[0.0, 0.0, 0.0], [1.0, 1.0, 1.0], [2.0, 2.0, 2.0]];
    let bad = [[f32::NAN, 0.0, 0.0], [1.0, f32::INFINITY, 0.0], [0.0, 1.0, 0.0]];
    let sets = [
        vec![huge, sliver],
        mapped(&ball(1.0, 12, 12), |p| p.map(|part| part * 1e-30)),
        moved(&ball(0.01, 12, 12), [30_000.0; 3]),
        vec![sliver],
        [ball(1.0, 12, 12), vec![bad, [[5.0; 3]; 3]]].concat(),
    ];
    for triangles in sets {
        for most in [100, 100_000] {
            let many: Vec<Triangle> = triangles.iter().cycle().take(triangles.len().max(120)).copied().collect();
            let model = Model::with_stand_in(&many, most, &Unwatched).unwrap();
            for camera in
                [Camera::default(), Camera::from(StandardView::Top), Camera { zoom: 400.0, pan_mm: [1e9, -1e9], ..Camera::default() }]
            {
                for cut in
                    [None, Some(Cut { axis: Axis::Z, at: 0.5, keep: Keep::Below }), Some(Cut { axis: Axis::X, at: 7.0, keep: Keep::Above })]
                {
                    for quality in [Quality::Turning, Quality::Rest] {
                        let picture = render(&scene(&model, camera, cut), [40, 1], quality, 2, &Unwatched).unwrap();
                        let _: Vec<Option<Hit>> = (0..41).map(|x| picture.hit_at(x, 0)).collect();
                    }
                }
            }
        }
    }
    assert_eq!(render(&scene(&ball_model, Camera::default(), None), [0, 0], Quality::Rest, 2, &Unwatched).unwrap().size_px, [1, 1]);
}

#[test]
fn a_file_is_shared_and_a_far_tiny_one_is_seen() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("far.stl");
    std::fs::write(&path, super::shapes::stl(&moved(&block([0.0; 3], [0.05; 3]), [900.0, 900.0, 900.0]))).unwrap();
    let soup = std::sync::Arc::new(read_file(&path, &Limits::default()).unwrap());
    let model = Model::of(std::sync::Arc::clone(&soup), &Unwatched).unwrap();
    assert_eq!(model.triangles().as_ptr(), soup.triangles().as_ptr());
    let picture = seen(&model, Camera::from(StandardView::Front), None, Quality::Rest);
    // A face of a cube within the ball round it.
    let side = 0.05 * picture.projection().px_per_mm();
    assert!((covered(&picture) / (side * side) - 1.0).abs() < 0.02);
}
