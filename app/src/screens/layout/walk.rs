//! How arrow keys walk the buttons.

use leverwright_core::cockpit::{BarSide, ButtonId};
use leverwright_core::ordered;

/// Where an arrow key leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// Up the column; from its top to the end of the column before.
    Up,
    /// Down the column; from its end to the top of the next one.
    Down,
    /// To the column on the left, at about the same height.
    Left,
    /// To the column on the right, at about the same height.
    Right,
    /// To the very first.
    First,
    /// To the very last.
    Last,
}

impl Step {
    /// The step that a key stands for.
    pub fn of_key(key: &str) -> Option<Step> {
        Some(match key {
            "ArrowUp" => Step::Up,
            "ArrowDown" => Step::Down,
            "ArrowLeft" => Step::Left,
            "ArrowRight" => Step::Right,
            "Home" => Step::First,
            "End" => Step::Last,
            _ => return None,
        })
    }
}

/// A button as the walk sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stop {
    /// The button.
    pub button: ButtonId,
    /// Its column.
    pub side: BarSide,
    /// How far down it stands, in any unit.
    pub down: f64,
}

/// The stops column by column, each from the top down: the order in which Down
/// alone visits all of them.
pub fn in_order(mut stops: Vec<Stop>) -> Vec<Stop> {
    ordered::sort_by(&mut stops, |a, b| {
        a.side.cmp(&b.side).then(a.down.total_cmp(&b.down))
    });
    stops
}

/// Where a step leads from a button; `None` stays. `stops` are [`in_order`].
pub fn walk(stops: &[Stop], from: ButtonId, step: Step) -> Option<ButtonId> {
    let at = stops.iter().position(|stop| stop.button == from)?;
    let last = stops.len() - 1;
    let to = match step {
        Step::First => &stops[0],
        Step::Last => &stops[last],
        Step::Down => &stops[if at == last { 0 } else { at + 1 }],
        Step::Up => &stops[if at == 0 { last } else { at - 1 }],
        Step::Left => beside(stops, &stops[at], |side, here| side < here)?,
        Step::Right => beside(stops, &stops[at], |side, here| side > here)?,
    };
    Some(to.button)
}

/// The stop nearest in height in the nearest column on one side.
fn beside<'a>(
    stops: &'a [Stop],
    here: &Stop,
    is_there: impl Fn(BarSide, BarSide) -> bool,
) -> Option<&'a Stop> {
    let columns = stops.iter().map(|stop| stop.side);
    let away = |side: BarSide| (side as i8 - here.side as i8).abs();
    let column = columns
        .filter(|side| is_there(*side, here.side))
        .min_by_key(|side| away(*side))?;
    let heights = stops.iter().filter(|stop| stop.side == column);
    heights.min_by(|a, b| {
        let off = |stop: &Stop| (stop.down - here.down).abs();
        off(a).total_cmp(&off(b))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use leverwright_core::cockpit::{ButtonPart, ControlId};

    fn stop(control: u16, side: BarSide, down: f64) -> Stop {
        Stop {
            button: ButtonId {
                control: ControlId(control),
                part: ButtonPart::Single,
            },
            side,
            down,
        }
    }

    fn cockpit() -> Vec<Stop> {
        in_order(vec![
            stop(4, BarSide::Right, 100.0),
            stop(1, BarSide::Left, 10.0),
            stop(3, BarSide::Right, 20.0),
            stop(2, BarSide::Left, 90.0),
            stop(5, BarSide::Centre, 200.0),
        ])
    }

    fn steps(from: u16, steps: &[Step]) -> Vec<u16> {
        let stops = cockpit();
        let mut here = stop(from, BarSide::Left, 0.0).button;
        let taken = steps.iter().map(|step| {
            here = walk(&stops, here, *step).unwrap_or(here);
            here.control.0
        });
        taken.collect()
    }

    #[test]
    fn down_alone_visits_every_button_and_comes_round() {
        assert_eq!(steps(1, &[Step::Down; 5]), [2, 5, 3, 4, 1]);
        assert_eq!(steps(1, &[Step::Up; 5]), [4, 3, 5, 2, 1]);
    }

    #[test]
    fn left_and_right_cross_the_bar_at_the_same_height() {
        assert_eq!(steps(2, &[Step::Right]), [5]);
        assert_eq!(steps(5, &[Step::Right, Step::Left]), [4, 5]);
        assert_eq!(steps(1, &[Step::Left]), [1]);
        assert_eq!(steps(4, &[Step::Right]), [4]);
    }

    #[test]
    fn without_a_middle_the_sides_are_neighbours() {
        let stops: Vec<Stop> = cockpit()
            .into_iter()
            .filter(|stop| stop.side != BarSide::Centre)
            .collect();
        let left = stop(2, BarSide::Left, 90.0).button;
        let right = walk(&stops, left, Step::Right).expect("there is a right side");
        assert_eq!(right.control.0, 4);
    }

    #[test]
    fn home_and_end_lead_to_the_ends() {
        assert_eq!(steps(5, &[Step::First, Step::Last]), [1, 4]);
    }

    #[test]
    fn keys_have_their_steps() {
        assert_eq!(Step::of_key("ArrowUp"), Some(Step::Up));
        assert_eq!(Step::of_key("End"), Some(Step::Last));
        assert_eq!(Step::of_key("a"), None);
    }
}
