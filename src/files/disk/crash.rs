//! What a power cut may leave on a [`super::SimulatedDisk`], listed.
//!
//! The model, common practice read out of POSIX `fsync` and `rename`, which promise nothing of what was not synced:
//! - a file written and not synced holds nothing, the front of its bytes up to any sector, that front filled up with zeros to the full
//!   length, or all of them; its permissions are the old or the new ones;
//! - each change of names not followed by a sync of its folder has happened or not, each independently of the others, in any mixture; two
//!   changes of the *same* name keep their order; one rename is one change (both names or neither);
//! - syncing a file does not sync its name, syncing a folder does not sync the bytes of what stands in it;
//! - what stands in a folder that did not survive is gone with it.

use std::{
    collections::{BTreeMap, BTreeSet},
    path::{Path, PathBuf},
    sync::Arc,
};

use super::{
    Kind, folder_of,
    simulated::Moment,
    world::{Node, World, apply},
};

/// One thing that survived a power cut.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Survivor {
    /// What it is.
    pub kind: Kind,
    /// Where a link leads; empty for all else.
    pub leads_to: PathBuf,
    /// What it holds.
    pub bytes: Arc<[u8]>,
    /// Its permission bits.
    pub mode: u32,
}

/// Everything on the medium after one possible power cut.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct CrashState {
    /// By full path.
    pub files: BTreeMap<PathBuf, Survivor>,
}

impl CrashState {
    /// What the file under this very name holds, links not followed; `None` when no file stands there.
    #[must_use]
    pub fn bytes(&self, path: &Path) -> Option<&[u8]> {
        self.files.get(path).filter(|survivor| survivor.kind == Kind::File).map(|survivor| &*survivor.bytes)
    }
}

/// How finely and how far to list.
#[derive(Debug, Clone, Copy)]
pub struct Listing {
    /// A torn file ends at a multiple of this many bytes (a sector); at least 1.
    pub sector_bytes: usize,
    /// More combinations than this are sampled instead of listed.
    pub most: usize,
    /// Where the sampling starts; the same seed gives the same states.
    pub seed: u64,
}

impl Default for Listing {
    fn default() -> Self {
        Self { sector_bytes: 512, most: 100_000, seed: 1 }
    }
}

/// The states of one moment, each once, in order.
#[derive(Debug)]
pub struct CrashStates {
    /// The states.
    pub states: BTreeSet<CrashState>,
    /// Whether that is all of them; false when they were sampled.
    pub complete: bool,
}

impl Moment {
    /// Every state a power cut right after this call may leave, or a sample of them above the cap.
    #[must_use]
    pub fn crash_states(&self, listing: &Listing) -> CrashStates {
        let choices = Choices::of(&self.world, listing.sector_bytes.max(1));
        let mut states = BTreeSet::new();
        let combinations = choices.combinations();
        let complete = combinations.is_some_and(|count| count <= listing.most);
        if complete {
            for number in 0..combinations.unwrap_or(0) {
                states.insert(choices.state(&self.world, &choices.digits(number)));
            }
        } else {
            let radices = choices.radices();
            let mut random = SplitMix(listing.seed);
            states.insert(choices.state(&self.world, &vec![0; radices.len()]));
            states.insert(choices.state(&self.world, &radices.iter().map(|radix| radix - 1).collect::<Vec<_>>()));
            for _ in 0..listing.most {
                let digits: Vec<usize> = radices.iter().map(|&radix| random.below(radix)).collect();
                states.insert(choices.state(&self.world, &digits));
            }
        }
        CrashStates { states, complete }
    }
}

/// What a file not synced may hold, with its permission bits.
type Torn = (Arc<[u8]>, u32);

/// What is open at one moment: each pending change of names (two ways), and each file not synced (as many ways as it may have been torn).
struct Choices {
    changes: usize,
    files: Vec<(usize, Vec<Torn>)>,
}

impl Choices {
    fn of(world: &World, sector_bytes: usize) -> Self {
        let mut reachable: BTreeSet<usize> = world.kept_names.values().copied().collect();
        reachable.extend(world.pending.iter().flatten().filter_map(|(_, node)| *node));
        let unsure = |node: &&usize| {
            let node = &world.nodes[**node];
            node.bytes != node.kept_bytes || node.mode != node.kept_mode
        };
        let files = reachable.iter().filter(unsure).map(|&node| (node, contents(&world.nodes[node], sector_bytes))).collect();
        Self { changes: world.pending.len(), files }
    }

    fn radices(&self) -> Vec<usize> {
        std::iter::repeat_n(2, self.changes).chain(self.files.iter().map(|(_, contents)| contents.len())).collect()
    }

    fn combinations(&self) -> Option<usize> {
        self.radices().into_iter().try_fold(1_usize, usize::checked_mul)
    }

    /// The number of a combination, written in the mixed radices.
    fn digits(&self, mut number: usize) -> Vec<usize> {
        let mut digit = |radix: usize| {
            let digit = number % radix;
            number /= radix;
            digit
        };
        self.radices().into_iter().map(&mut digit).collect()
    }

    fn state(&self, world: &World, digits: &[usize]) -> CrashState {
        let mut names = world.kept_names.clone();
        for (change, _) in world.pending.iter().zip(digits).filter(|(_, digit)| **digit == 1) {
            apply(&mut names, change);
        }
        let torn: BTreeMap<usize, &Torn> =
            self.files.iter().zip(&digits[self.changes..]).map(|((node, contents), digit)| (*node, &contents[*digit])).collect();
        let mut files = BTreeMap::new();
        // Names come in order, so a folder always comes before what stands in it.
        for (name, number) in names {
            let folder_survived = name == Path::new("/") || files.contains_key(folder_of(&name));
            if folder_survived {
                files.insert(name, survivor(&world.nodes[number], torn.get(&number).copied()));
            }
        }
        CrashState { files }
    }
}

fn survivor(node: &Node, torn: Option<&Torn>) -> Survivor {
    let (bytes, mode) = torn.map_or_else(|| (node.kept_bytes.clone(), node.kept_mode), |(bytes, mode)| (bytes.clone(), *mode));
    Survivor { kind: node.kind, leads_to: node.leads_to.clone(), bytes, mode }
}

/// All that a file not synced may hold, with the permissions it may have.
fn contents(node: &Node, sector_bytes: usize) -> Vec<Torn> {
    let mut bytes: BTreeSet<Arc<[u8]>> = BTreeSet::from([node.kept_bytes.clone(), node.bytes.clone()]);
    if node.bytes != node.kept_bytes {
        for end in (0..node.bytes.len()).step_by(sector_bytes) {
            let mut front = node.bytes[..end].to_vec();
            bytes.insert(front.as_slice().into());
            front.resize(node.bytes.len(), 0);
            bytes.insert(front.into());
        }
    }
    let modes = BTreeSet::from([node.kept_mode, node.mode]);
    bytes.iter().flat_map(|bytes| modes.iter().map(move |&mode| (bytes.clone(), mode))).collect()
}

/// A small random sequence (splitmix64, from memory), so that a sample can be repeated.
struct SplitMix(u64);

impl SplitMix {
    fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^= mixed >> 31;
        usize::try_from(mixed % bound.max(1) as u64).unwrap_or(0)
    }
}
