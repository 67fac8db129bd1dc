//! `pourbook findings`: what must be known, Stops first; exit 1 while a Stop stands that nobody signed for.

use std::fmt::Write as _;
use std::path::Path;

use super::args::Day;
use super::open::Computed;
use super::out::Out;
use super::{BAD_INPUT, FINE, STOPPED, json};
use crate::calc::{Finding, Weight};
use crate::paper::words::finding_sentence;
use crate::quantity::Style;

pub(super) fn print(path: &Path, as_json: bool, day: &Day, out: &mut Out) -> u8 {
    let Some(computed) = Computed::open(path, day, out) else { return BAD_INPUT };
    let words = computed.words(&Style::METRIC);
    if as_json {
        out.data(&format!("{:#}", json::findings(&computed, &words)));
    } else {
        let mut text = counts(&computed.report.findings);
        for finding in &computed.report.findings {
            let sentence = finding_sentence(finding, &computed.book, &words);
            let _ = write!(text, "{:<8} {}  {sentence}", json::weight_key(finding.kind.weight).to_uppercase(), finding.place);
            if let Some(accepted) = finding.accepted.and_then(|index| computed.batch.sound.accepted.get(index)) {
                let _ = write!(text, " [{} answers for it: {}]", accepted.hands, accepted.reason);
            }
            text.push('\n');
        }
        out.data(&text);
    }
    match (computed.faulty, computed.report.findings.iter().any(Finding::stands)) {
        (true, _) => BAD_INPUT,
        (false, true) => STOPPED,
        (false, false) => FINE,
    }
}

fn counts(findings: &[Finding]) -> String {
    let count = |weight| findings.iter().filter(|finding| finding.kind.weight == weight).count();
    format!("{} Stop, {} Caution, {} Note\n", count(Weight::Stop), count(Weight::Caution), count(Weight::Note))
}
