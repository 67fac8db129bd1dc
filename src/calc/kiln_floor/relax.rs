//! Flasks that push each other apart until none is too near.

use super::room::{Dice, FINE_MM, Point, Task, apart};

/// So many rounds of pushing before a flask is put elsewhere.
const ROUNDS: usize = 400;

/// After so many rounds the worst pair must be nearer to its end by this share, or they are stuck.
const LOOK_EVERY: usize = 40;
const STUCK: f64 = 0.8;

/// So often a flask is put elsewhere before all begin anew.
const ELSEWHERE: usize = 12;

/// Looks for room in a grid of so many points a side.
const GRID: usize = 14;

/// Flasks as a search moves them: their numbers in the task, and where they are.
#[derive(Debug, Clone)]
pub(super) struct Loose {
    pub flasks: Vec<usize>,
    pub at: Vec<Point>,
}

impl Loose {
    /// Pushes until none is too near, or the rounds are used. By how much the worst pair is too near, in mm; it takes `steps`, one for each pair
    /// that is looked at.
    pub fn push(&mut self, task: &Task, rounds: usize, steps: &mut u64) -> f64 {
        let many = self.flasks.len();
        let radius: Vec<f64> = self.flasks.iter().map(|flask| task.radius[*flask]).collect();
        let held: Vec<bool> = self.flasks.iter().map(|flask| task.held[*flask].is_some()).collect();
        let mut before = f64::INFINITY;
        for round in 0..=rounds {
            let mut worst = 0.0;
            for one in 0..many {
                if !held[one] {
                    self.at[one] = task.clamp(radius[one], self.at[one]);
                }
            }
            for one in 0..many {
                for other in one + 1..many {
                    let needs = radius[one] + radius[other] + task.floor.gap_mm;
                    let (x, y) = (self.at[other][0] - self.at[one][0], self.at[other][1] - self.at[one][1]);
                    let square = x * x + y * y;
                    if square >= needs * needs || held[one] && held[other] {
                        continue;
                    }
                    let far = square.sqrt();
                    worst = f64::max(worst, needs - far);
                    // The last round only looks.
                    if round < rounds {
                        self.part(task, [one, other], [x, y], far, needs, [held[one], held[other]]);
                    }
                }
            }
            *steps = steps.saturating_sub((many * many / 2) as u64);
            if worst <= 0.5 * FINE_MM || *steps == 0 {
                break;
            }
            if round % LOOK_EVERY == 0 {
                if worst > STUCK * before {
                    break;
                }
                before = worst;
            }
        }
        self.worst(task)
    }

    /// Moves two apart as far as they are too near, and a little more, so that an end is reached.
    fn part(&mut self, task: &Task, [one, other]: [usize; 2], [x, y]: [f64; 2], far: f64, needs: f64, held: [bool; 2]) {
        let way = if far > 1e-9 { [x / far, y / far] } else { [0.6, 0.8] };
        let push = (needs - far) * 1.02 + 0.1 * FINE_MM;
        let [here, there] = match held {
            [true, _] => [0.0, push],
            [_, true] => [push, 0.0],
            _ => [0.5 * push; 2],
        };
        for (axis, part) in way.into_iter().enumerate() {
            self.at[one][axis] -= here * part;
            self.at[other][axis] += there * part;
        }
        let radius = |at: usize| task.radius[self.flasks[at]];
        let (first, second) = (radius(one), radius(other));
        if !held[0] {
            self.at[one] = task.clamp(first, self.at[one]);
        }
        if !held[1] {
            self.at[other] = task.clamp(second, self.at[other]);
        }
    }

    /// By how much the worst pair is too near, in mm.
    pub fn worst(&self, task: &Task) -> f64 {
        (0..self.at.len()).map(|one| self.too_near(task, one)[0]).fold(0.0, f64::max)
    }

    /// By how much a flask is too near to its nearest, and to all together, in mm. What is held does not count among itself.
    fn too_near(&self, task: &Task, one: usize) -> [f64; 2] {
        let is_held = |at: usize| task.held[self.flasks[at]].is_some();
        let mut near = [0.0_f64; 2];
        for other in 0..self.at.len() {
            if other == one || is_held(one) && is_held(other) {
                continue;
            }
            let by = (task.needs(self.flasks[one], self.flasks[other]) - apart(self.at[one], self.at[other])).max(0.0);
            near = [near[0].max(by), near[1] + by];
        }
        near
    }

    /// Puts the flask that is most in the way where there is most room for it.
    fn elsewhere(&mut self, task: &Task, dice: &mut Dice) {
        let loose = (0..self.at.len()).filter(|at| task.held[self.flasks[*at]].is_none());
        let crowded: Vec<(f64, usize)> = loose.map(|at| (self.too_near(task, at)[1] * (0.5 + dice.roll()), at)).collect();
        let Some((_, worst)) = crowded.into_iter().max_by(|a, b| a.0.total_cmp(&b.0)) else { return };
        let radius = task.radius[self.flasks[worst]];
        let [width, depth] = task.floor.shape.sides_mm();
        let shift = [dice.roll(), dice.roll()];
        let mut best: Option<(f64, Point)> = None;
        for cell in 0..GRID * GRID {
            let place = [(cell % GRID) as f64 + shift[0], (cell / GRID) as f64 + shift[1]];
            let at = task.clamp(radius, [place[0] / GRID as f64 * width, place[1] / GRID as f64 * depth]);
            let others = (0..self.at.len()).filter(|other| *other != worst);
            let room = others.map(|other| apart(at, self.at[other]) - task.needs(self.flasks[worst], self.flasks[other]));
            let room = room.fold(f64::INFINITY, f64::min);
            if best.is_none_or(|(most, _)| room > most) {
                best = Some((room, at));
            }
        }
        if let Some((_, at)) = best {
            self.at[worst] = at;
        }
    }

    /// Pushes, puts flasks elsewhere, begins anew, until all stand or no steps are left.
    pub fn settle(mut self, task: &Task, steps: &mut u64) -> Option<Self> {
        let mut dice = Dice(0x5851_f42d_4c95_7f2d);
        loop {
            for _ in 0..ELSEWHERE {
                if self.push(task, ROUNDS, steps) <= FINE_MM {
                    return Some(self);
                }
                if *steps == 0 {
                    return None;
                }
                self.elsewhere(task, &mut dice);
            }
            for (at, flask) in self.flasks.iter().enumerate() {
                self.at[at] = task.held[*flask].unwrap_or_else(|| dice.place(&task.floor));
            }
        }
    }
}
