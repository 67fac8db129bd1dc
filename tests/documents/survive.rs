//! Random documents through text and back.

use pourbook::calc::{Runs, Shelves, recompute};
use pourbook::job::check::{faults, mend};
use pourbook::job::format::{read_job, read_studio, write_job, write_studio};
use pourbook::job::{Job, Place, Studio};
use proptest::prelude::*;

use super::generate;
use super::world::{World, new_book};

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_job_survives_to_the_byte(job in generate::job()) {
        let text = write_job(&job).unwrap();
        let opened = read_job(text.as_bytes()).map_err(|error| TestCaseError::fail(format!("{error}\n{text}")))?;
        prop_assert!(!opened.read_only);
        prop_assert_eq!(opened.format, pourbook::job::format::FORMAT);
        prop_assert_eq!(&opened.document, &job);
        prop_assert_eq!(write_job(&opened.document).unwrap(), text);
    }

    #[test]
    fn any_studio_survives_to_the_byte(studio in generate::studio()) {
        let text = write_studio(&studio).unwrap();
        let opened = read_studio(text.as_bytes()).map_err(|error| TestCaseError::fail(format!("{error}\n{text}")))?;
        prop_assert_eq!(&opened.document, &studio);
        prop_assert_eq!(write_studio(&opened.document).unwrap(), text);
    }

    #[test]
    fn mending_twice_is_mending_once(job in generate::job()) {
        let (mended, _) = mend(&job);
        let (again, left) = mend(&mended);
        prop_assert_eq!(&left, &Vec::new());
        prop_assert_eq!(again, mended);
    }

    #[test]
    fn every_place_is_read_as_it_is_written(job in generate::job()) {
        for accepted in &job.accepted {
            prop_assert_eq!(accepted.place.to_string().parse::<Place>().unwrap(), accepted.place);
        }
    }

    #[test]
    fn any_mended_job_computes_in_any_studio(job in generate::job(), studio in generate::studio()) {
        let (job, _) = mend(&job);
        let mut book = new_book();
        let report = recompute(&job, &studio, &Shelves::new(&job, &studio), &Runs::default(), &World::empty().setting, &mut book);
        prop_assert_eq!(report.flasks.len(), job.flasks.len());
        for line in book.lines() {
            if let Some(number) = line.value.number() {
                prop_assert!(number.is_finite(), "{}", line.origin.key());
            }
            if line.value.cause().is_some() {
                prop_assert!(!book.root_causes(line.id).is_empty());
            }
        }
    }
}

#[test]
fn empty_documents_and_sound_ones_survive() {
    for job in [Job::default(), World::sound().job, World::full().job] {
        assert!(faults(&World::sound().job).is_empty());
        let text = write_job(&job).unwrap();
        assert_eq!(read_job(text.as_bytes()).unwrap().document, job);
    }
    let text = write_studio(&Studio::default()).unwrap();
    assert_eq!(read_studio(text.as_bytes()).unwrap().document, Studio::default());
}
