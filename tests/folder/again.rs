//! A batch once more: what stays behind, and where it is written.

use std::path::Path;

use jiff::civil::date;
use pourbook::files::again::write_again;
use pourbook::files::batch::is_job_name;
use pourbook::files::disk::RealDisk;
use pourbook::job::check::mend;
use pourbook::job::format::{read_job, write_job};
use pourbook::job::{Hung, Job, JobId, LineId, PieceException, PieceId};

fn samples() -> Vec<Job> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs");
    let files = ["first-pour.ron", "mixed-kiln.ron", "fair.ron", "three-trees.ron", "workshop-class.ron", "power-cut.ron", "own-gold.ron"];
    files.iter().map(|file| read_job(&std::fs::read(folder.join(file)).unwrap()).unwrap().document).collect()
}

#[test]
fn everything_that_happened_stays_behind_and_the_rest_is_sound() {
    let today = date(2026, 12, 1);
    for first in samples() {
        let again = first.again(JobId([9; 16]), today);
        assert_eq!(mend(&again).1, [], "{}", first.name);
        assert!(again.record.is_empty() && again.quotes.is_empty() && again.accepted.is_empty());
        assert!(again.burnouts.iter().all(|load| load.pour_at.is_none() && load.log.is_none()));
        assert!(again.melts.iter().all(|melt| melt.charge.is_empty() && melt.consents.is_empty()));
        assert!(again.orders.iter().all(|order| order.taken == Some(today) && order.due.is_none()));
        assert_eq!((again.job_id, again.made), (JobId([9; 16]), Some(today)));
        // What is cast, on what and in what is the same.
        let hung = |job: &Job| job.trees.iter().map(|tree| tree.pieces.len()).collect::<Vec<_>>();
        assert_eq!((hung(&again), again.flasks.len(), &again.patterns), (hung(&first), first.flasks.len(), &first.patterns));
        assert_eq!((&again.name, &again.shelf), (&first.name, &first.shelf));
        // And once more is the same again.
        assert_eq!(again.again(JobId([9; 16]), today), again);
    }
}

#[test]
fn a_remake_is_made_at_the_first_go() {
    let mut job = samples().remove(0);
    let line = &mut job.orders[0].lines[0];
    let (id, before) = (line.id, line.quantity);
    line.quantity += 1;
    let remake_of = Some(PieceId { line: id, number: 1 });
    line.exceptions.insert(before + 1, PieceException { remake_of, ..PieceException::default() });
    job.trees[0].pieces.push(Hung { line: id, numbers: [before + 1].into(), ..Hung::default() });
    let rows = job.trees[0].pieces.len();
    let again = job.again(JobId([9; 16]), date(2026, 12, 1));
    assert_eq!(again.orders[0].lines[0].quantity, before);
    assert!(again.orders[0].lines[0].exceptions.is_empty());
    assert_eq!(again.trees[0].pieces.len(), rows - 1);
    assert!(again.trees[0].pieces.iter().all(|row| row.line != LineId::default()));
}

#[test]
fn it_is_written_beside_the_first_and_over_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let original = folder.path().join("first-pour.ron");
    let job = samples().remove(0);
    std::fs::write(&original, "the first").unwrap();
    std::fs::write(folder.path().join("first-pour again.ron"), "somebody's own").unwrap();
    let written = write_again(&RealDisk, &original, &job).unwrap();
    assert_eq!(written, folder.path().join("first-pour again 2.ron"));
    assert!(is_job_name(&written));
    assert_eq!(std::fs::read_to_string(&written).unwrap(), write_job(&job).unwrap());
    assert_eq!(std::fs::read(&original).unwrap(), b"the first");
    assert_eq!(std::fs::read(folder.path().join("first-pour again.ron")).unwrap(), b"somebody's own");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 3);
    assert!(write_again(&RealDisk, &folder.path().join("no folder/a.ron"), &job).is_err());
}

#[test]
fn jobs_are_told_from_what_else_lies_in_the_folder() {
    for job in ["lilac.ron", "Lilac.RON", "studio 2.ron", "a.b.ron", "lilac (saved beside me).ron", "lilac (saved beside x2).ron"] {
        assert!(is_job_name(&Path::new("/f").join(job)), "{job}");
    }
    // Names as the program's own saves, locks and recovery give them.
    for other in [
        "studio.ron",
        "Studio.ron",
        ".ron",
        ".lilac.ron",
        ".lilac.ron.lock",
        ".pourbook-saving-1a2b3c4d-1.tmp",
        "lilac.ron.hand-edited",
        "lilac (saved beside).ron",
        "lilac (saved beside 12).ron",
        "0123456789abcdef0123456789abcdef.recovery",
        "lilac.stl",
        "ron",
    ] {
        assert!(!is_job_name(&Path::new("/f").join(other)), "{other}");
    }
}
