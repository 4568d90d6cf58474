//! Changes to the drivetrain and to how the shift plan is tuned.

use super::EditError;
use super::rider::within;
use crate::gears::{
    CogMove, Derailleurs, Direction, Gear, Ladder, LadderGoal, LadderSettings, Millis, Pace,
    PresetId, Rolling, ShiftingError, Sprockets, Teeth,
};
use crate::limits;
use crate::plan::Plan;
use crate::shift_plan::ShiftPlanKind;
use crate::units::Mm;

/// A change to the drivetrain or to how the shift plan is tuned.
#[derive(Debug, Clone, PartialEq)]
pub enum GearEdit {
    /// Teeth of the rings, from either end. With another number of them, the
    /// shift plan follows where it must.
    Rings(Vec<Teeth>),
    /// Teeth of the cogs, from either end.
    Cogs(Vec<Teeth>),
    /// Rings and cogs of a usual set; wheel, crank and derailleurs stay.
    Preset(PresetId),
    /// What the driven wheel rolls.
    Wheel(Option<Rolling>),
    /// Length of the crank.
    Crank(Option<Mm>),
    /// From the bottom bracket to the rear axle.
    Chainstay(Option<Mm>),
    /// What the derailleurs take.
    Derailleurs(Derailleurs),
    /// How many rear shifts a front shift that way brings; `None` is as worked
    /// out.
    RearShifts(Direction, Option<u8>),
    /// What the ladder aims at; crossovers set by hand are given up.
    LadderGoal(LadderGoal),
    /// The crossover between a ring, from 0, and the next larger, set by hand.
    Crossover(u8, Direction, CogMove),
    /// Crossovers set by hand are given up for those worked out.
    CrossoversWorkedOut,
    /// Whether the ladder keeps out of a gear.
    Forbid(Gear, bool),
    /// Whether a hold runs on across a crossover.
    HoldsCross(bool),
    /// How fast the system shifts.
    Pace(Pace),
}

impl GearEdit {
    pub(super) fn label(&self, plan: &Plan) -> String {
        let gear = |gear: &Gear| match plan.bike.drivetrain.gears() {
            Some(gears) if gears.has(*gear) => gears.words(*gear),
            _ => gear.to_string(),
        };
        match self {
            GearEdit::Rings(_) => "teeth of the chainrings".into(),
            GearEdit::Cogs(_) => "teeth of the cogs".into(),
            GearEdit::Preset(preset) => format!("drivetrain: {preset}"),
            GearEdit::Wheel(_) => "what the wheel rolls".into(),
            GearEdit::Crank(_) => "length of the crank".into(),
            GearEdit::Chainstay(_) => "length of the chainstay".into(),
            GearEdit::Derailleurs(_) => "what the derailleurs take".into(),
            GearEdit::RearShifts(..) => "rear shifts with a front shift".into(),
            GearEdit::LadderGoal(goal) => format!("ladder: {goal}"),
            GearEdit::Crossover(_, way, _) => format!("move the crossover {way}"),
            GearEdit::CrossoversWorkedOut => "crossovers as worked out".into(),
            GearEdit::Forbid(g, true) => format!("keep the ladder out of {}", gear(g)),
            GearEdit::Forbid(g, false) => format!("let the ladder use {}", gear(g)),
            GearEdit::HoldsCross(true) => "let holds cross over".into(),
            GearEdit::HoldsCross(false) => "stop holds at crossovers".into(),
            GearEdit::Pace(_) => "pace of the shift system".into(),
        }
    }

    pub(super) fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        let drivetrain = &mut plan.bike.drivetrain;
        let settings = &mut plan.shift_settings;
        match self {
            GearEdit::Rings(teeth) => set_rings(plan, Sprockets::rings(teeth)?),
            GearEdit::Cogs(teeth) => set_cogs(plan, Sprockets::cogs(teeth)?),
            GearEdit::Preset(preset) => {
                let usual = preset.drivetrain();
                set_rings(plan, usual.rings);
                set_cogs(plan, usual.cogs);
            }
            GearEdit::Wheel(rolling) => {
                match rolling {
                    Some(Rolling::Tyre(tyre)) => {
                        crate::gears::Tyre::new(tyre.width, tyre.bead_seat)?;
                    }
                    Some(Rolling::Measured(mm)) => {
                        Rolling::measured(*mm)?;
                    }
                    None => {}
                }
                drivetrain.wheel = *rolling;
            }
            GearEdit::Crank(length) => {
                if let Some(mm) = length {
                    within("The length of a crank", *mm, limits::CRANK)?;
                }
                drivetrain.crank = *length;
            }
            GearEdit::Chainstay(length) => {
                if let Some(mm) = length {
                    within("The length of a chainstay", *mm, limits::CHAINSTAY)?;
                }
                drivetrain.chainstay = *length;
            }
            GearEdit::Derailleurs(derailleurs) => {
                let Derailleurs {
                    largest_cog,
                    wrap,
                    front_difference,
                } = *derailleurs;
                teeth("The largest cog", largest_cog, limits::COG_TEETH)?;
                teeth(
                    "What the rear derailleur takes up",
                    wrap,
                    limits::WRAP_TEETH,
                )?;
                teeth(
                    "The difference between the rings",
                    front_difference,
                    limits::DIFFERENCE_TEETH,
                )?;
                drivetrain.derailleurs = *derailleurs;
            }
            GearEdit::RearShifts(way, count) => {
                if let Some(n) = count.filter(|n| *n >= limits::MOST_COGS) {
                    return Err(EditError::OutOfRange {
                        what: "The number of rear shifts",
                        value: n.to_string(),
                        from: "0".into(),
                        to: (limits::MOST_COGS - 1).to_string(),
                    });
                }
                match way {
                    Direction::Up => settings.paired.larger = *count,
                    Direction::Down => settings.paired.smaller = *count,
                }
            }
            GearEdit::LadderGoal(goal) => {
                settings.ladder.goal = *goal;
                settings.ladder.by_hand.clear();
            }
            GearEdit::Crossover(pair, way, cogs) => set_crossover(plan, *pair, *way, *cogs)?,
            GearEdit::CrossoversWorkedOut => settings.ladder.by_hand.clear(),
            GearEdit::Forbid(gear, forbidden) => forbid(plan, *gear, *forbidden)?,
            GearEdit::HoldsCross(cross) => settings.holds_cross = *cross,
            GearEdit::Pace(pace) => {
                for (what, time) in [
                    ("The trigger time", pace.trigger),
                    ("The time of a rear shift", pace.rear),
                    ("The time of a front shift", pace.front),
                ] {
                    millis(what, time)?;
                }
                settings.pace = *pace;
            }
        }
        Ok(())
    }
}

fn teeth(
    what: &'static str,
    teeth: Option<Teeth>,
    span: limits::TeethSpan,
) -> Result<(), EditError> {
    match teeth {
        Some(Teeth(n)) if !span.holds(n) => Err(EditError::OutOfRange {
            what,
            value: format!("{n} teeth"),
            from: span.from.to_string(),
            to: span.to.to_string(),
        }),
        _ => Ok(()),
    }
}

fn millis(what: &'static str, time: Millis) -> Result<(), EditError> {
    if (1..=u32::from(limits::LONGEST_MILLIS)).contains(&time.0) {
        return Ok(());
    }
    Err(EditError::OutOfRange {
        what,
        value: format!("{} ms", time.0),
        from: "1".into(),
        to: format!("{} ms", limits::LONGEST_MILLIS),
    })
}

/// Gives the bike other rings. The shift plan follows where it must; what names
/// gears by their places goes where their number changes.
pub(super) fn set_rings(plan: &mut Plan, rings: Sprockets) {
    let before = plan.bike.rings();
    plan.bike.drivetrain.rings = rings;
    if plan.bike.rings() != before {
        forget_places(&mut plan.shift_settings.ladder);
    }
    let single = plan.shift_plan == ShiftPlanKind::SingleRing;
    if single == plan.bike.has_front_derailleur() {
        plan.shift_plan = ShiftPlanKind::usual(&plan.bike);
    }
}

/// Gives the bike other cogs; what names gears by their places goes where their
/// number changes.
pub(super) fn set_cogs(plan: &mut Plan, cogs: Sprockets) {
    let before = plan.bike.cogs();
    plan.bike.drivetrain.cogs = cogs;
    if plan.bike.cogs() != before {
        forget_places(&mut plan.shift_settings.ladder);
    }
}

/// With another number of rings or cogs, the places mean other gears.
fn forget_places(ladder: &mut LadderSettings) {
    ladder.forbidden.clear();
    ladder.by_hand.clear();
}

/// Sets one crossover by hand; the others stay where they are now.
fn set_crossover(
    plan: &mut Plan,
    pair: u8,
    way: Direction,
    cogs: CogMove,
) -> Result<(), EditError> {
    let drivetrain = &plan.bike.drivetrain;
    let Some(gears) = drivetrain.gears() else {
        let what = drivetrain.not_entered().unwrap_or("gears");
        return Err(EditError::Shifting(ShiftingError::NotEntered { what }));
    };
    if pair + 1 >= plan.bike.rings() {
        return Err(EditError::NotPossible(
            "There is no larger ring to change to. Choose one of the crossovers shown.".into(),
        ));
    }
    let settings = &plan.shift_settings.ladder;
    let sets = match &settings.by_hand[..] {
        [] => Ladder::of(&gears, settings)
            .map_err(ShiftingError::from)?
            .as_set_by_hand(&gears),
        sets => sets.to_vec(),
    };
    let mut ladder = LadderSettings {
        by_hand: sets,
        ..settings.clone()
    };
    match ladder.by_hand.get_mut(usize::from(pair)) {
        Some(set) => *set.way_mut(way) = cogs,
        None => return Err(ShiftingError::from(crate::gears::LadderError::OtherGears).into()),
    }
    Ladder::of(&gears, &ladder).map_err(ShiftingError::from)?;
    plan.shift_settings.ladder = ladder;
    Ok(())
}

fn forbid(plan: &mut Plan, gear: Gear, forbidden: bool) -> Result<(), EditError> {
    let there = gear.ring < plan.bike.rings() && gear.cog < plan.bike.cogs();
    let list = &mut plan.shift_settings.ladder.forbidden;
    match list.binary_search(&gear) {
        Ok(at) if !forbidden => {
            list.remove(at);
        }
        Err(at) if forbidden => {
            if !there {
                return Err(EditError::NotPossible(
                    "There is no such gear on this bike. Choose one of the gears shown.".into(),
                ));
            }
            list.insert(at, gear);
        }
        _ => {}
    }
    Ok(())
}
