//! Print runs, printers and calibrations: how they are written, what cannot be in them, and what lets go of them.

use jiff::civil::date;
use pourbook::job::check::{let_go, mend, mend_studio};
use pourbook::job::format::{read_job, read_studio, write_job, write_studio};
use pourbook::job::{
    Accepted, Axis, Calibration, Gauge, Job, Pattern, PatternId, Place, PrintId, PrintRow, PrintRun, PrintSetting, Printer, Studio,
};

use super::world::{money, said, some};

const RUN: &str = r#"(format: 2, readable_since: 1,
  patterns: [
    (
      id: 4,
    ),
  ],
  prints: [
    (
      id: 1,
      name: "Monday",
      printer: "by the window",
      material: "resin-castable",
      rows: [
        (
          pattern: 4,
          count: 6,
          x_mm: 21.5,
          y_mm: 8.0,
          height_mm: 26.0,
        ),
      ],
      washed_min: 4.0,
      cured_before_rinse_min: 5.0,
      rinsed: true,
      surface_clean: false,
      notes: "white film",
    ),
  ],
)
"#;

const PRINTER: &str = r#"(format: 2, readable_since: 1,
  printers: [
    (
      name: "by the window",
      plate_x_mm: 120.0,
      plate_y_mm: 68.0,
      height_mm: 150.0,
      gap_mm: 2.0,
      settings: [
        (
          material: "resin-castable",
          layer_mm: 0.05,
          base_layers: 6,
          base_exposure_s: 30.0,
          exposure_s: 2.5,
          move_s: 6.0,
          supports_share: 0.2,
          price_per_kg: 190.0,
          notes: "warm room",
        ),
      ],
      notes: "lamp new in May",
    ),
  ],
  calibrations: [
    (
      name: "blocks",
      printer: "by the window",
      material: "resin-castable",
      on: "2026-02-20",
      rows: [
        (
          nominal_mm: 10.0,
          measured_mm: 9.96,
        ),
        (
          axis: Z,
          nominal_mm: 20.0,
          measured_mm: 20.05,
        ),
      ],
      wanted_mm: 17.2,
      accepted: true,
      recheck: "2026-08-20",
      notes: "calliper 2",
    ),
  ],
)
"#;

fn row(pattern: u32, count: u32) -> PrintRow {
    PrintRow { pattern: PatternId(pattern), count, ..PrintRow::default() }
}

fn job(rows: Vec<PrintRow>) -> Job {
    Job {
        patterns: vec![Pattern { id: PatternId(4), ..Pattern::default() }],
        prints: vec![PrintRun { id: PrintId(1), rows, ..PrintRun::default() }],
        ..Job::default()
    }
}

#[test]
fn a_run_is_written_as_a_person_would() {
    let mut said_so = job(vec![PrintRow { x_mm: said(21.5), y_mm: said(8.0), height_mm: said(26.0), ..row(4, 6) }]);
    let run = &mut said_so.prints[0];
    (run.name, run.printer, run.notes) = ("Monday".to_owned(), "by the window".to_owned(), "white film".to_owned());
    (run.material, run.rinsed, run.surface_clean) = (some("resin-castable"), true, Some(false));
    (run.washed_min, run.cured_before_rinse_min) = (said(4.0), said(5.0));
    assert_eq!(write_job(&said_so).unwrap(), RUN);
    assert_eq!(read_job(RUN.as_bytes()).unwrap().document, said_so);
    assert_eq!(mend(&said_so), (said_so, Vec::new()));
}

#[test]
fn a_printer_and_its_calibration_are_written_as_a_person_would() {
    let setting = PrintSetting {
        material: some("resin-castable"),
        layer_mm: said(0.05),
        base_layers: Some(6),
        base_exposure_s: said(30.0),
        exposure_s: said(2.5),
        move_s: said(6.0),
        supports_share: said(0.2),
        price_per_kg: Some(money("190")),
        notes: "warm room".to_owned(),
    };
    let printer = Printer {
        name: "by the window".to_owned(),
        plate_x_mm: said(120.0),
        plate_y_mm: said(68.0),
        height_mm: said(150.0),
        gap_mm: said(2.0),
        settings: vec![setting],
        notes: "lamp new in May".to_owned(),
    };
    let gauge = |axis, nominal, measured| Gauge { axis, nominal_mm: said(nominal), measured_mm: said(measured) };
    let calibration = Calibration {
        name: "blocks".to_owned(),
        printer: "by the window".to_owned(),
        material: some("resin-castable"),
        on: Some(date(2026, 2, 20)),
        rows: vec![gauge(Axis::X, 10.0, 9.96), gauge(Axis::Z, 20.0, 20.05)],
        wanted_mm: said(17.2),
        accepted: true,
        recheck: Some(date(2026, 8, 20)),
        notes: "calliper 2".to_owned(),
    };
    let studio = Studio { printers: vec![printer], calibrations: vec![calibration], ..Studio::default() };
    assert_eq!(write_studio(&studio).unwrap(), PRINTER);
    assert_eq!(read_studio(PRINTER.as_bytes()).unwrap().document, studio);
    assert_eq!(mend_studio(&studio), (studio, Vec::new()));
}

#[test]
fn what_cannot_be_in_a_run_is_told_and_left_out() {
    let cases: [(&str, Job); 9] = [
        ("rows.pattern", job(vec![row(9, 1)])),
        ("rows.count", job(vec![row(4, 0)])),
        ("rows.count", job(vec![row(4, u32::MAX)])),
        ("rows.x_mm", job(vec![PrintRow { x_mm: said(-3.0), ..row(4, 1) }])),
        ("rows.y_mm", job(vec![PrintRow { y_mm: said(0.0), ..row(4, 1) }])),
        ("rows.height_mm", job(vec![PrintRow { height_mm: said(1e9), ..row(4, 1) }])),
        ("rows", job(vec![row(4, 1); 101])),
        ("washed_min", Job { prints: vec![PrintRun { id: PrintId(1), washed_min: said(-1.0), ..PrintRun::default() }], ..Job::default() }),
        (
            "cured_before_rinse_min",
            Job { prints: vec![PrintRun { id: PrintId(1), cured_before_rinse_min: said(-5.0), ..PrintRun::default() }], ..Job::default() },
        ),
    ];
    for (field, broken) in cases {
        let (mended, faults) = mend(&broken);
        assert_eq!(faults.iter().map(|fault| (fault.place, fault.field)).collect::<Vec<_>>(), [(Place::Print(PrintId(1)), field)]);
        assert_ne!(mended, broken);
        assert_eq!(mend(&mended), (mended, Vec::new()), "{field} is mended once and for all");
    }
    let mut twice = job(vec![row(4, 1)]);
    twice.prints.push(PrintRun { id: PrintId(1), name: "again".to_owned(), ..PrintRun::default() });
    let (mended, faults) = mend(&twice);
    assert_eq!((mended.prints.len(), faults.len(), faults[0].field), (1, 1, "id"));
}

#[test]
fn what_cannot_be_in_a_printer_or_calibration_is_told_and_left_out() {
    type Case = (&'static str, fn(&mut Studio));
    fn printer(studio: &mut Studio) -> &mut Printer {
        studio.printers.push(Printer { settings: vec![PrintSetting::default()], ..Printer::default() });
        studio.printers.last_mut().unwrap()
    }
    fn calibration(studio: &mut Studio) -> &mut Calibration {
        studio.calibrations.push(Calibration { rows: vec![Gauge::default()], ..Calibration::default() });
        studio.calibrations.last_mut().unwrap()
    }
    let cases: &[Case] = &[
        ("printers.plate_x_mm", |s| printer(s).plate_x_mm = said(-1.0)),
        ("printers.plate_y_mm", |s| printer(s).plate_y_mm = said(1e9)),
        ("printers.height_mm", |s| printer(s).height_mm = said(0.0)),
        ("printers.gap_mm", |s| printer(s).gap_mm = said(-2.0)),
        ("printers.settings", |s| printer(s).settings = vec![PrintSetting::default(); 101]),
        ("printers.settings.layer_mm", |s| printer(s).settings[0].layer_mm = said(0.0)),
        ("printers.settings.base_layers", |s| printer(s).settings[0].base_layers = Some(u32::MAX)),
        ("printers.settings.base_exposure_s", |s| printer(s).settings[0].base_exposure_s = said(-1.0)),
        ("printers.settings.exposure_s", |s| printer(s).settings[0].exposure_s = said(1e6)),
        ("printers.settings.move_s", |s| printer(s).settings[0].move_s = said(-0.5)),
        ("printers.settings.supports_share", |s| printer(s).settings[0].supports_share = said(-0.1)),
        ("printers.settings.price_per_kg", |s| printer(s).settings[0].price_per_kg = Some(money("-190"))),
        ("printers.name", |s| s.printers = vec![Printer { name: "one".to_owned(), ..Printer::default() }; 2]),
        ("calibrations.rows", |s| calibration(s).rows = vec![Gauge::default(); 1001]),
        ("calibrations.wanted_mm", |s| calibration(s).wanted_mm = said(-1.0)),
        ("calibrations.rows.nominal_mm", |s| calibration(s).rows[0].nominal_mm = said(0.0)),
        ("calibrations.rows.measured_mm", |s| calibration(s).rows[0].measured_mm = said(-9.9)),
    ];
    for (field, breaks) in cases {
        let mut studio = Studio::default();
        breaks(&mut studio);
        let (mended, faults) = mend_studio(&studio);
        assert_eq!(faults.iter().map(|fault| (fault.place, fault.field)).collect::<Vec<_>>(), [(Place::Studio, *field)]);
        assert_eq!(mend_studio(&mended), (mended, Vec::new()), "{field} is mended once and for all");
    }
}

#[test]
fn what_is_taken_out_leaves_nothing_behind_in_a_run() {
    let mut left = job(vec![row(4, 2)]);
    left.accepted.push(Accepted { place: Place::Print(PrintId(1)), ..Accepted::default() });
    left.patterns.clear();
    let_go(&mut left);
    assert!(left.prints[0].rows.is_empty());
    assert_eq!(left.accepted.len(), 1, "the run is still there");
    left.prints.clear();
    let_go(&mut left);
    assert!(left.accepted.is_empty());
    assert_eq!(mend(&left).1, Vec::new());
}
