//! A tree of boxes over the triangles of one shell, for finding which triangles are near something.

use super::soup::Triangle;
use super::sums::Span;

/// Triangles in a leaf at most.
const LEAF: usize = 4;

/// A node: a box, and either triangles or two nodes below.
#[derive(Debug, Clone, Copy)]
pub(super) struct Node {
    pub span: Span,
    /// First triangle of a leaf, or the first of two children.
    pub first: u32,
    /// Triangles of a leaf; 0 for a node with children.
    pub count: u32,
}

/// The tree. Node 0 is the whole.
#[derive(Debug, Clone)]
pub(super) struct Tree {
    pub nodes: Vec<Node>,
    pub triangles: Vec<Triangle>,
}

impl Tree {
    /// Builds the tree by halving along the longest side of the box of midpoints.
    pub fn new(mut triangles: Vec<Triangle>) -> Self {
        let whole = Node { span: Span::NOTHING, first: 0, count: triangles.len() as u32 };
        let mut nodes = vec![whole];
        // Nodes still to be split; halving keeps the depth at the logarithm of their number.
        let mut waiting = vec![0_usize];
        while let Some(at) = waiting.pop() {
            let Node { first, count, .. } = nodes[at];
            let here = &mut triangles[first as usize..(first + count) as usize];
            let mut span = Span::NOTHING;
            let mut middles = Span::NOTHING;
            for triangle in here.iter() {
                triangle.iter().for_each(|corner| span.take(*corner));
                middles.take(middle(triangle));
            }
            nodes[at].span = span;
            if here.len() <= LEAF {
                continue;
            }
            let size = middles.size();
            let axis = (0..3).max_by(|&a, &b| size[a].total_cmp(&size[b])).unwrap_or(0);
            let half = here.len() / 2;
            here.select_nth_unstable_by(half, |a, b| middle(a)[axis].total_cmp(&middle(b)[axis]));
            let child = nodes.len() as u32;
            nodes.push(Node { span, first, count: half as u32 });
            nodes.push(Node { span, first: first + half as u32, count: count - half as u32 });
            nodes[at].first = child;
            nodes[at].count = 0;
            waiting.extend([child as usize, child as usize + 1]);
        }
        Self { nodes, triangles }
    }

    /// The triangles of a leaf.
    pub fn leaf(&self, node: &Node) -> &[Triangle] {
        &self.triangles[node.first as usize..(node.first + node.count) as usize]
    }
}

/// A point in the triangle, divided before adding so that nothing overflows.
fn middle(triangle: &Triangle) -> [f32; 3] {
    std::array::from_fn(|axis| triangle[0][axis] / 3.0 + triangle[1][axis] / 3.0 + triangle[2][axis] / 3.0)
}
