//! Ladders as people would look at them.

use super::*;
use crate::gears::LadderGoal;
use crate::gears::testing::{ROAD_12, gears};

fn settings(goal: LadderGoal) -> LadderSettings {
    LadderSettings {
        goal,
        ..LadderSettings::default()
    }
}

fn best(gears: &Gears, goal: LadderGoal) -> Ladder {
    Ladder::of(gears, &settings(goal)).expect("there is a ladder")
}

/// Crossovers in words: "34×17 > 50×21".
fn crossovers(gears: &Gears, ladder: &Ladder) -> Vec<String> {
    let words = |c: &Crossover| format!("{} > {}", gears.words(c.from), gears.words(c.to));
    ladder.crossovers().iter().map(words).collect()
}

#[test]
fn a_road_ladder_lands_on_two_cogs() {
    let gears = gears("34 50", ROAD_12);
    let ladder = best(&gears, LadderGoal::Even);
    assert_eq!(
        crossovers(&gears, &ladder),
        ["34×15 > 50×19", "50×27 > 34×21"]
    );
}

#[test]
fn a_comfortable_ladder_leaves_the_large_ring_early() {
    let gears = gears("34 50", ROAD_12);
    let ladder = best(&gears, LadderGoal::Comfort);
    for crossover in ladder.crossovers() {
        assert_eq!(crossover.cogs(), 2);
        if crossover.way == Direction::Down {
            assert!(crossover.from.cog >= 2);
        }
    }
}
