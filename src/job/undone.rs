//! What becomes of the record when a change that was already saved is taken back: nothing is taken out, it is withdrawn.

use std::collections::BTreeMap;

use jiff::civil::DateTime;

use super::record::{Entry, Event, standing};
use super::{RecordId, continues};

/// The record of a state that is gone back to, as it may stand beside what the file says already. `saved` is the file's, `restored` that of the
/// state; entries that are withdrawn for it are dated and give the reason.
///
/// What counts afterwards is what counted in that state, in its order: from the first entry that differs on, what the file says is withdrawn, and
/// what the state says is said again behind it.
#[must_use]
pub fn go_back(saved: &[Entry], restored: &[Entry], at: Option<DateTime>, reason: &str) -> Vec<Entry> {
    if continues(saved, restored) {
        return restored.to_vec();
    }
    let mut record = saved.to_vec();
    let mut last = saved.iter().chain(restored).map(|entry| entry.id.0).max().unwrap_or(0);
    let mut next = || {
        last += 1;
        RecordId(last)
    };
    let (stand, wanted): (Vec<&Entry>, Vec<&Entry>) = (standing(saved).collect(), standing(restored).collect());
    let common = stand.iter().zip(&wanted).take_while(|(a, b)| a == b).count();
    for entry in &stand[common..] {
        let event = Event::Withdrawn { entry: entry.id, reason: reason.to_owned() };
        record.push(Entry { id: next(), at, hands: entry.hands.clone(), event, ..Entry::default() });
    }
    // What is said again has another number, and what pointed at it points there.
    let mut now = BTreeMap::new();
    for entry in &wanted[common..] {
        let mut again = Entry { id: next(), ..Entry::clone(entry) };
        now.insert(entry.id, again.id);
        if let Event::CameBack { sent, .. } = &mut again.event
            && let Some(id) = now.get(sent)
        {
            *sent = *id;
        }
        record.push(again);
    }
    record
}

#[cfg(test)]
mod tests {
    use super::*;

    fn entry(id: u32) -> Entry {
        Entry { id: RecordId(id), notes: format!("{id}"), ..Entry::default() }
    }

    fn withdrawal(id: u32, of: u32) -> Entry {
        Entry { id: RecordId(id), event: Event::Withdrawn { entry: RecordId(of), reason: String::new() }, ..Entry::default() }
    }

    fn says(record: &[Entry]) -> Vec<&str> {
        standing(record).map(|entry| entry.notes.as_str()).collect()
    }

    #[test]
    fn what_was_saved_stays_and_no_longer_counts() {
        let saved = [entry(1), entry(2), entry(3)];
        let record = go_back(&saved, &saved[..1], None, "taken back");
        assert!(continues(&saved, &record));
        assert_eq!(says(&record), ["1"]);
        // Not yet saved, it goes without a trace.
        assert_eq!(go_back(&saved[..1], &saved[..1], None, ""), [entry(1)]);
        // Back again and further back.
        let further = go_back(&record, &[], None, "taken back");
        assert!(continues(&record, &further));
        assert_eq!(says(&further), [""; 0]);
    }

    #[test]
    fn a_withdrawal_that_is_taken_back_lets_its_entry_be_said_again() {
        let saved = [entry(1), withdrawal(2, 1)];
        let record = go_back(&saved, &saved[..1], None, "taken back");
        assert!(continues(&saved, &record));
        assert_eq!(says(&record), ["1"]);
        // Both at once are nothing.
        assert_eq!(go_back(&saved, &[], None, "taken back"), saved);
    }

    #[test]
    fn order_and_pointers_are_those_of_the_state() {
        use crate::job::{CameBack, SentOut};
        let sent = Entry { event: Event::SentOut { pieces: Vec::new(), sent: SentOut::default() }, ..entry(5) };
        let back = |of| Event::CameBack { sent: RecordId(of), pieces: Vec::new(), back: CameBack::default() };
        let both = [sent, Entry { event: back(5), ..entry(6) }];
        // Withdrawn by mistake and saved: taken back, the parcel stands before what came back of it, which names it.
        let saved = [both[0].clone(), both[1].clone(), withdrawal(7, 5)];
        let record = go_back(&saved, &both, None, "taken back");
        assert!(continues(&saved, &record));
        assert_eq!(says(&record), ["5", "6"]);
        let ids: Vec<&Entry> = standing(&record).collect();
        assert_eq!(ids[1].event, back(ids[0].id.0));
        // A withdrawal that is done again counts again.
        let again = go_back(&[entry(1), entry(2), withdrawal(3, 2)], &[entry(1), entry(2), withdrawal(3, 1)], None, "taken back");
        assert_eq!(says(&again), ["2"]);
    }

    #[test]
    fn what_the_state_says_beyond_the_file_is_written_after_it() {
        let record = go_back(&[entry(1), entry(2)], &[entry(1), entry(7)], None, "taken back");
        assert_eq!(says(&record), ["1", "7"]);
    }
}
