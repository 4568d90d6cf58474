//! What the rules about the ladder share.

use crate::edit::{Edit, GearEdit};
use crate::finding::Fix;
pub(super) use crate::gears::MOST_LANDING;
use crate::gears::{CogMove, Crossover, Gears, Ladder, LadderGoal, WIDE_STEP};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

/// How many cogs a crossover is moved for a fix.
const NEAR: i8 = 3;

/// The ladder with its gears, where that is the plan and it works.
pub(super) fn of<'a>(situation: &'a Situation<'_>) -> Option<(&'a Gears, &'a Ladder)> {
    let shifting = situation.shifting().ok()?;
    Some((&shifting.gears, shifting.ladder()?))
}

/// A number of cogs in words.
pub(super) fn cogs(n: u8) -> String {
    match n {
        0 => "no cog".into(),
        1 => "one cog".into(),
        n => format!("{n} cogs"),
    }
}

/// Other crossovers in place of one: those worked out, then the same one
/// elsewhere, nearest first.
pub(super) fn other_crossovers(situation: &Situation<'_>, crossover: Crossover) -> Vec<Fix> {
    let settings = &situation.plan.shift_settings.ladder;
    let mut fixes = Vec::new();
    if !settings.by_hand.is_empty() {
        fixes.push(Fix {
            label: "Take the crossovers worked out".into(),
            edit: Edit::Gears(GearEdit::CrossoversWorkedOut),
        });
    }
    for goal in LadderGoal::ALL
        .iter()
        .filter(|goal| **goal != settings.goal)
    {
        fixes.push(Fix {
            label: format!("Take another ladder: {goal}"),
            edit: Edit::Gears(GearEdit::LadderGoal(*goal)),
        });
    }
    if let Some((gears, ladder)) = of(situation) {
        for off in 1..=NEAR {
            for off in [off, -off] {
                fixes.extend(moved(gears, ladder, crossover, off));
            }
        }
    }
    fixes
}

/// The crossover that many cogs harder, landing where it moves few cogs and is
/// no wide step; `None` where there is none such.
fn moved(gears: &Gears, ladder: &Ladder, crossover: Crossover, off: i8) -> Option<Fix> {
    let from = crossover
        .from
        .harder_by(off)
        .filter(|gear| gears.has(*gear))?;
    let cassette = 0..gears.cogs.len() as u8;
    let landing = |cog| Crossover {
        to: crate::gears::Gear {
            cog,
            ..crossover.to
        },
        from,
        ..crossover
    };
    let fits = |c: &Crossover| {
        let step = c.step(gears);
        c.cogs() <= MOST_LANDING && step.0 > 0.0 && step <= WIDE_STEP
    };
    let found = cassette
        .map(landing)
        .filter(fits)
        .min_by_key(Crossover::cogs)?;
    let cogs: CogMove = found.cog_move();
    let moves = ladder.crossover(crossover.pair(), crossover.way)? != found;
    moves.then(|| Fix {
        label: format!(
            "Cross over from {} to {}",
            gears.words(found.from),
            gears.words(found.to)
        ),
        edit: Edit::Gears(GearEdit::Crossover(crossover.pair(), crossover.way, cogs)),
    })
}

#[cfg(test)]
pub(super) mod testing {
    use crate::edit::PlanEdit;
    use crate::rules::testing::{Setup, drop_bar};
    use crate::shift_plan::ShiftPlanKind;

    /// The road drop bar as a ladder on its right paddles.
    pub(in crate::rules) fn ladder() -> Setup {
        let ladder = PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder);
        drop_bar().edit(&crate::edit::Edit::Plan(ladder))
    }
}
