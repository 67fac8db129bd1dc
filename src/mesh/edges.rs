//! How triangles meet along their edges: which edges are open, which disagree, and which triangles hang together.

use super::radial;
use super::union_find::UnionFind;
use super::weld::Welded;

/// What the edges of a mesh say.
#[derive(Debug, Clone, Default)]
pub(super) struct Links {
    /// The shell of every triangle.
    pub shell_of: Vec<u32>,
    /// How many shells there are.
    pub shells: usize,
    /// Edges used an odd number of times, each with its two points and one of its triangles.
    pub open: Vec<([u32; 2], u32)>,
    /// One triangle of every edge that is used an even number of times, but not as often one way as the other.
    pub mixed: Vec<u32>,
    /// Edges used by more than two triangles.
    pub non_manifold: u32,
    /// True when some edge is used twice in the same direction: only then can a triangle stand there twice.
    pub may_repeat: bool,
}

impl Links {
    /// True when no edge is open and none disagrees.
    pub fn encloses(&self) -> bool {
        self.open.is_empty() && self.mixed.is_empty()
    }
}

/// One use of an edge, kept with the edge's lower point.
#[derive(Debug, Clone, Copy, Default)]
struct Use {
    /// The edge's higher point, doubled, plus one where the triangle runs from the higher to the lower.
    high_and_way: u32,
    triangle: u32,
}

impl Use {
    fn high(self) -> u32 {
        self.high_and_way >> 1
    }

    fn is_forward(self) -> bool {
        self.high_and_way & 1 == 0
    }
}

/// Matches the edges of triangles none of which repeats a corner.
pub(super) fn link(mesh: &Welded) -> Links {
    let (starts, mut uses) = uses_by_low_point(mesh);
    let mut sets = UnionFind::new(mesh.triangles.len());
    let mut links = Links::default();
    for (low, range) in starts.windows(2).enumerate() {
        let here = &mut uses[range[0] as usize..range[1] as usize];
        here.sort_unstable_by_key(|u| (u.high_and_way, u.triangle));
        for edge in here.chunk_by(|a, b| a.high() == b.high()) {
            link_edge(mesh, low as u32, edge, &mut sets, &mut links);
        }
    }
    (links.shell_of, links.shells) = sets.numbered();
    links
}

/// The edges at fault, each by its two points: those that are open, and those whose triangles disagree about what is outside.
pub(super) fn faults(mesh: &Welded) -> [Vec<[u32; 2]>; 2] {
    let (starts, mut uses) = uses_by_low_point(mesh);
    let [mut open, mut mixed] = [Vec::new(), Vec::new()];
    for (low, range) in (0..).zip(starts.windows(2)) {
        let here = &mut uses[range[0] as usize..range[1] as usize];
        here.sort_unstable_by_key(|u| (u.high_and_way, u.triangle));
        for edge in here.chunk_by(|a, b| a.high() == b.high()) {
            let forward = edge.iter().filter(|u| u.is_forward()).count();
            if edge.len() % 2 == 1 {
                open.push([low, edge[0].high()]);
            } else if 2 * forward != edge.len() {
                mixed.push([low, edge[0].high()]);
            }
        }
    }
    [open, mixed]
}

/// Sorts the uses of all edges by their lower point: a counting sort, so that nothing is hashed.
fn uses_by_low_point(mesh: &Welded) -> (Vec<u32>, Vec<Use>) {
    let mut starts = vec![0_u32; mesh.points.len() + 1];
    for triangle in &mesh.triangles {
        for k in 0..3 {
            starts[triangle[k].min(triangle[(k + 1) % 3]) as usize + 1] += 1;
        }
    }
    for at in 1..starts.len() {
        starts[at] += starts[at - 1];
    }
    let mut next = starts.clone();
    let mut uses = vec![Use::default(); 3 * mesh.triangles.len()];
    for (at, triangle) in mesh.triangles.iter().enumerate() {
        for k in 0..3 {
            let (from, to) = (triangle[k], triangle[(k + 1) % 3]);
            let place = &mut next[from.min(to) as usize];
            uses[*place as usize] = Use { high_and_way: from.max(to) << 1 | u32::from(from > to), triangle: at as u32 };
            *place += 1;
        }
    }
    (starts, uses)
}

fn link_edge(mesh: &Welded, low: u32, edge: &[Use], sets: &mut UnionFind, links: &mut Links) {
    if let [one, other] = edge
        && one.is_forward() != other.is_forward()
    {
        sets.unite(one.triangle, other.triangle);
        return;
    }
    let forward = edge.iter().filter(|u| u.is_forward()).count();
    links.may_repeat |= forward > 1 || edge.len() - forward > 1;
    if edge.len() > 2 {
        links.non_manifold += 1;
    }
    if 2 * forward == edge.len() {
        let wings = edge.iter().map(|u| radial::wing(mesh, low, u.high(), u.triangle, u.is_forward())).collect();
        for (a, b) in radial::partners(wings) {
            sets.unite(a, b);
        }
        return;
    }
    if edge.len() % 2 == 1 {
        links.open.push(([low, edge[0].high()], edge[0].triangle));
    } else {
        links.mixed.push(edge[0].triangle);
    }
    for other in &edge[1..] {
        sets.unite(edge[0].triangle, other.triangle);
    }
}
