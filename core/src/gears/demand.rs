//! What a shift plan asks of the hands: buttons, and presses from gear to gear.

use super::{Gear, Millis, Moved, Press, Ratio, Rpm, Shifting, ShiftingError, SingleRing};
use crate::cockpit::HoldRun;
use crate::function::Function;
use crate::layout::{Hold, Layout};
use crate::plan::Plan;
use crate::shift_plan::ShiftPlanKind;
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// A change of gear that comes up on every ride.
    pub enum UsualMove as "usual move" {
        /// After a stop in a gear for the level.
        FromStop = "from-stop", "start from a stop";
        /// Where the road begins to rise.
        FootOfClimb = "foot-of-climb", "foot of a climb";
        /// Where it falls again.
        OverTop = "over-top", "over the top";
    }
}

impl UsualMove {
    /// From which gear to which, in gear inches: 30 steep, 50 moderate, 70 brisk
    /// on the level, 80 hard on the level (rough use of gear inches, McCullagh,
    /// quoted in general texts on cycling). Which go together is our judgement.
    const fn gear_inches(self) -> (f64, f64) {
        match self {
            UsualMove::FromStop => (70.0, 50.0),
            UsualMove::FootOfClimb => (70.0, 30.0),
            UsualMove::OverTop => (30.0, 80.0),
        }
    }
}

/// Gear inches of a ratio of one where the wheel is not known: of a 28-622 tyre.
const USUAL_DIAMETER: f64 = 26.7;

/// How to get from one gear to another with the fewest presses.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Trip {
    /// Where it starts.
    pub from: Gear,
    /// Where it ends.
    pub to: Gear,
    /// Presses, holds included.
    pub presses: u8,
    /// How many of them are holds.
    pub holds: u8,
    /// How often the front changes.
    pub front_changes: u8,
    /// How long the system is busy, presses following at once.
    pub time: Millis,
}

impl Trip {
    /// What it takes, in words: "9 presses, 2 of them held, 1 front change,
    /// 3.0 s, 4 turns of the crank".
    pub fn words(&self, cadence: Rpm) -> String {
        let counted = |n: u8, one: &str, many: &str| match n {
            1 => format!("1 {one}"),
            n => format!("{n} {many}"),
        };
        let mut words = counted(self.presses, "press", "presses");
        if self.holds > 0 {
            words.push_str(&format!(", {} of them held", self.holds));
        }
        if self.front_changes > 0 {
            words.push_str(", ");
            words.push_str(&counted(
                self.front_changes,
                "front change",
                "front changes",
            ));
        }
        let turns = libm::ceil(self.crank_turns(cadence)) as u8;
        let turns = counted(turns, "turn", "turns");
        format!("{words}, {}, {turns} of the crank", self.time)
    }

    /// Turns of the crank meanwhile.
    pub fn crank_turns(&self, cadence: Rpm) -> f64 {
        self.time.seconds() * cadence.0 / 60.0
    }
}

/// What a shift plan asks of the hands.
#[derive(Debug, Clone, PartialEq)]
pub struct Demand {
    /// The shift plan.
    pub kind: ShiftPlanKind,
    /// The fewest buttons that it can be ridden with.
    pub buttons: u8,
    /// The usual moves.
    pub moves: Vec<(UsualMove, Trip)>,
    /// The most presses from any gear to any other.
    pub worst: u8,
    /// Presses from any gear to any other, on average.
    pub average: f64,
    trips: Vec<Trip>,
    gears: Vec<Gear>,
}

impl Demand {
    /// What a worked-out plan asks, holds given by their functions.
    pub fn of(shifting: &Shifting, holds: &[(Function, HoldRun)]) -> Demand {
        let gears = used(shifting);
        let acts = acts(shifting, holds);
        let mut trips = Vec::new();
        for from in &gears {
            spread(shifting, &gears, *from, &acts, &mut trips);
        }
        let presses = trips.iter().filter(|trip| trip.from != trip.to);
        let (mut worst, mut sum, mut n) = (0, 0.0, 0.0);
        for trip in presses {
            worst = worst.max(trip.presses);
            sum += f64::from(trip.presses);
            n += 1.0;
        }
        let mut demand = Demand {
            kind: shifting.scheme.kind(),
            buttons: fewest_buttons(shifting),
            moves: Vec::new(),
            worst,
            average: if n > 0.0 { sum / n } else { 0.0 },
            trips,
            gears,
        };
        for usual in UsualMove::ALL {
            let (from, to) = usual.gear_inches();
            let moved = demand.between(shifting, inches(shifting, from), inches(shifting, to));
            demand.moves.extend(moved.map(|trip| (*usual, trip)));
        }
        demand
    }

    /// What the shift plan of a plan asks with the holds of its layout in hand.
    ///
    /// # Errors
    /// As of [`Shifting::of`].
    pub fn of_plan(plan: &Plan) -> Result<Demand, ShiftingError> {
        let shifting = Shifting::of(plan)?;
        Ok(Demand::of(
            &shifting,
            &holds(plan.layout(), plan.shift_plan),
        ))
    }

    /// All shift plans side by side, with the holds of the layout in hand; the
    /// single ring by a conversion where the bike has more.
    pub fn side_by_side(plan: &Plan) -> Vec<(ShiftPlanKind, Result<Demand, ShiftingError>)> {
        let with_shifting = all(plan).into_iter();
        let demand =
            |(kind, worked_out): (_, Result<_, _>)| (kind, worked_out.map(|(_, demand)| demand));
        with_shifting.map(demand).collect()
    }

    /// The gears that the plan uses: of a ladder its rungs, else all.
    pub fn gears(&self) -> &[Gear] {
        &self.gears
    }

    /// How to get from one gear to another with the fewest presses; `None` where
    /// the plan does not use one of them, or does not lead there.
    pub fn trip(&self, from: Gear, to: Gear) -> Option<Trip> {
        self.trips
            .iter()
            .find(|trip| (trip.from, trip.to) == (from, to))
            .copied()
    }

    /// The trip with the fewest presses from near one ratio to near another.
    fn between(&self, shifting: &Shifting, from: Ratio, to: Ratio) -> Option<Trip> {
        let off = |gear: Gear, wanted: Ratio| {
            libm::fabs(libm::log(shifting.gears.ratio(gear).0 / wanted.0))
        };
        let start = self.gears.iter().copied().reduce(|best, gear| {
            if off(gear, from) < off(best, from) {
                gear
            } else {
                best
            }
        })?;
        let reached = || self.trips.iter().filter(|trip| trip.from == start);
        let nearest = reached().map(|trip| off(trip.to, to)).reduce(f64::min)?;
        let serves = nearest.max(libm::log(NEAR_ENOUGH));
        reached()
            .filter(|trip| off(trip.to, to) <= serves)
            .min_by_key(|trip| (trip.presses, trip.time))
            .copied()
    }
}

/// A shift plan worked out, with what it asks.
type WorkedOut = Result<(Shifting, Demand), ShiftingError>;

/// Every shift plan worked out.
fn all(plan: &Plan) -> Vec<(ShiftPlanKind, WorkedOut)> {
    let mut all = Vec::new();
    for kind in ShiftPlanKind::ALL {
        let shifting = match plan.bike.drivetrain.gears() {
            Some(gears) if *kind == ShiftPlanKind::SingleRing && gears.rings.len() > 1 => {
                let ring = SingleRing::usual_ring(&gears);
                let single = SingleRing::of(&gears, ring, None).gears;
                Shifting::with(single, *kind, &plan.shift_settings)
            }
            _ => Shifting::under(plan, *kind),
        };
        let holds = holds(plan.layout(), *kind);
        all.push((
            *kind,
            shifting.map(|shifting| {
                let demand = Demand::of(&shifting, &holds);
                (shifting, demand)
            }),
        ));
    }
    all
}

/// What every shift plan asks of the hands, side by side in words.
#[derive(Debug, Clone, PartialEq)]
pub struct SideBySide {
    /// Heads of the columns; the first names the plan.
    pub heads: Vec<String>,
    /// A row for each shift plan.
    pub rows: Vec<PlanRow>,
    /// What one ring would keep and lose, where the bike has more.
    pub single_ring: Option<String>,
}

/// A shift plan among the others.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanRow {
    /// The plan.
    pub kind: ShiftPlanKind,
    /// Whether it is the one in hand.
    pub in_hand: bool,
    /// Its cells after the name, or why there are none.
    pub cells: Result<Vec<String>, String>,
}

impl SideBySide {
    /// The plans of a bike, crank turns counted at a cadence; `way` is from which
    /// gear of the bike to which else is asked, or near them where a plan has
    /// them not.
    pub fn of(plan: &Plan, cadence: Rpm, way: Option<(Gear, Gear)>) -> SideBySide {
        let gears = plan.bike.drivetrain.gears();
        let way = way
            .zip(gears.as_ref())
            .filter(|((from, to), gears)| gears.has(*from) && gears.has(*to));
        let mut heads = vec!["shift plan".to_owned(), "fewest buttons".to_owned()];
        heads.extend(UsualMove::ALL.iter().map(|usual| usual.to_string()));
        heads.extend(
            way.map(|((from, to), gears)| format!("{} to {}", gears.words(from), gears.words(to))),
        );
        heads.push("any gear to any other, presses".into());
        let mut rows = Vec::new();
        let ratios = way.map(|((from, to), gears)| (gears.ratio(from), gears.ratio(to)));
        for (kind, demand) in all(plan) {
            rows.push(PlanRow {
                kind,
                in_hand: kind == plan.shift_plan,
                cells: demand
                    .map(|(shifting, demand)| demand.cells(&shifting, cadence, ratios))
                    .map_err(|error| error.to_string()),
            });
        }
        let several = gears.filter(|gears| gears.rings.len() > 1);
        SideBySide {
            heads,
            rows,
            single_ring: several
                .map(|gears| SingleRing::of(&gears, SingleRing::usual_ring(&gears), None).words()),
        }
    }
}

impl Demand {
    fn cells(&self, shifting: &Shifting, cadence: Rpm, way: Option<(Ratio, Ratio)>) -> Vec<String> {
        let mut cells = vec![self.buttons.to_string()];
        for usual in UsualMove::ALL {
            let trip = self.moves.iter().find(|(found, _)| found == usual);
            cells.push(trip.map_or("–".into(), |(_, trip)| trip.words(cadence)));
        }
        if let Some((from, to)) = way {
            let trip = self.between(shifting, from, to);
            cells.push(trip.map_or("–".into(), |trip| trip.words(cadence)));
        }
        cells.push(format!(
            "{:.1} on average, {} at most",
            self.average, self.worst
        ));
        cells
    }
}

/// Gears within so much of the wanted one serve, as a factor (our judgement:
/// half a usual step).
const NEAR_ENOUGH: f64 = 1.06;

fn inches(shifting: &Shifting, gear_inches: f64) -> Ratio {
    let wheel = shifting.gears.wheel.map(|wheel| wheel.diameter().0 / 25.4);
    Ratio(gear_inches / wheel.unwrap_or(USUAL_DIAMETER))
}

/// The gears that a plan uses.
fn used(shifting: &Shifting) -> Vec<Gear> {
    shifting
        .gears
        .all()
        .filter(|gear| shifting.ladder().is_none_or(|ladder| ladder.has(*gear)))
        .collect()
}

/// The fewest buttons: a toggle serves for both front functions where there are
/// two rings.
fn fewest_buttons(shifting: &Shifting) -> u8 {
    match (shifting.scheme.kind(), shifting.gears.rings.len()) {
        (ShiftPlanKind::SingleRing | ShiftPlanKind::Ladder, _) => 2,
        (_, 2) => 3,
        _ => 4,
    }
}

/// The holds of a layout that repeat a function, as they would be under a shift
/// plan.
fn holds(layout: &Layout, kind: ShiftPlanKind) -> Vec<(Function, HoldRun)> {
    let mut holds = Vec::new();
    for (button, hold) in &layout.holds {
        if let (Hold::Repeats(run), Some(tap)) = (hold, layout.taps.get(button)) {
            holds.push((kind.in_place_of(*tap).unwrap_or(*tap), *run));
        }
    }
    holds
}

/// What can be pressed.
fn acts(shifting: &Shifting, holds: &[(Function, HoldRun)]) -> Vec<Press> {
    let needed = shifting.scheme.kind().needed();
    let mut acts: Vec<Press> = needed
        .iter()
        .map(|function| Press::Tap(*function))
        .collect();
    for (function, run) in holds {
        if needed.contains(function) && *run > HoldRun::Cogs(1) {
            acts.push(Press::Hold(*function, *run));
        }
    }
    acts
}

/// The trips from one gear to every gear that it leads to: by the fewest
/// presses, then the shortest time.
fn spread(shifting: &Shifting, gears: &[Gear], from: Gear, acts: &[Press], trips: &mut Vec<Trip>) {
    let first = trips.len();
    trips.push(Trip {
        from,
        to: from,
        presses: 0,
        holds: 0,
        front_changes: 0,
        time: Millis(0),
    });
    // Gears come in the order of presses, so each is settled when looked at.
    let mut at = first;
    while at < trips.len() {
        let so_far = trips[at];
        for act in acts {
            let Some(moved) = shifting.press(so_far.to, *act) else {
                continue;
            };
            if !gears.contains(&moved.to) {
                continue;
            }
            let longer = one_more(so_far, &moved, *act);
            match trips[first..].iter_mut().find(|trip| trip.to == moved.to) {
                None => trips.push(longer),
                Some(known) => {
                    if (longer.presses, longer.time) < (known.presses, known.time) {
                        *known = longer;
                    }
                }
            }
        }
        at += 1;
    }
}

fn one_more(trip: Trip, moved: &Moved, act: Press) -> Trip {
    Trip {
        to: moved.to,
        presses: trip.presses + 1,
        holds: trip.holds + u8::from(matches!(act, Press::Hold(..))),
        front_changes: trip.front_changes + moved.front_changes() as u8,
        time: Millis(trip.time.0 + moved.time.0),
        ..trip
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{BikeEdit, Edit, LayoutEdit};
    use crate::testing::button;

    fn road() -> Plan {
        template(TemplateId::RoadPlain).plan("Test")
    }

    fn of(plan: &Plan, kind: ShiftPlanKind) -> Demand {
        let all = Demand::side_by_side(plan);
        let found = all.into_iter().find(|(k, _)| *k == kind);
        found
            .expect("all are there")
            .1
            .expect("the gears are known")
    }

    #[test]
    fn a_ladder_does_with_two_buttons_what_takes_separate_ones_three() {
        let plan = road();
        let buttons = |kind| of(&plan, kind).buttons;
        assert_eq!(buttons(ShiftPlanKind::Ladder), 2);
        assert_eq!(buttons(ShiftPlanKind::Separate), 3);
        assert_eq!(buttons(ShiftPlanKind::Paired), 3);
        assert_eq!(buttons(ShiftPlanKind::SingleRing), 2);
    }

    #[test]
    fn presses_are_the_fewest_there_are() {
        let plan = road();
        let separate = of(&plan, ShiftPlanKind::Separate);
        let trip = separate
            .trip(Gear::new(0, 0), Gear::new(1, 11))
            .expect("it leads there");
        assert_eq!((trip.presses, trip.front_changes), (12, 1));
        assert_eq!(
            trip.words(Rpm(60.0)),
            "12 presses, 1 front change, 3.0 s, 3 turns of the crank"
        );
        assert_eq!(separate.worst, 12);
        let ladder = of(&plan, ShiftPlanKind::Ladder);
        let shifting = Shifting::under(&plan, ShiftPlanKind::Ladder).expect("a ladder");
        let rungs = shifting.ladder().expect("a ladder").up.len();
        assert_eq!(usize::from(ladder.worst), rungs - 1);
        assert_eq!(separate.moves.len(), UsualMove::ALL.len());
    }

    #[test]
    fn holds_save_presses() {
        let plan = road();
        let mut held = plan.clone();
        for place in ["right outer paddle", "right inner paddle"] {
            let hold = LayoutEdit::Hold(button(&held, place), Some(Hold::Repeats(HoldRun::ToEnd)));
            held = held.apply(&Edit::Layout(hold)).expect("a hold is possible");
        }
        for kind in ShiftPlanKind::ALL {
            let (without, with) = (of(&plan, *kind), of(&held, *kind));
            assert!(with.average < without.average, "{kind}");
            assert!(with.moves.iter().any(|(_, trip)| trip.holds > 0), "{kind}");
        }
    }

    #[test]
    fn side_by_side_has_a_cell_for_every_head() {
        let plan = road();
        let way = Some((Gear::new(0, 0), Gear::new(1, 11)));
        let table = SideBySide::of(&plan, Rpm(75.0), way);
        assert_eq!(table.heads[5], "34×34 to 50×11");
        for row in &table.rows {
            let cells = row.cells.as_ref().expect("the gears are known");
            assert_eq!(cells.len() + 1, table.heads.len(), "{}", row.kind);
            assert_eq!(row.in_hand, row.kind == ShiftPlanKind::Separate);
        }
        assert!(
            table
                .single_ring
                .is_some_and(|words| words.contains("41 teeth"))
        );
        let gravel = template(TemplateId::Gravel).plan("Test");
        assert_eq!(SideBySide::of(&gravel, Rpm(75.0), None).single_ring, None);
    }

    #[test]
    fn what_is_not_entered_is_said() {
        let plan = road().apply(&Edit::Bike(BikeEdit::Cogs(11))).expect("cogs");
        assert_eq!(
            Demand::of_plan(&plan).map_err(|e| e.to_string()),
            Err(
                "The teeth of the cogs are not entered yet. Count them, or choose a usual set."
                    .into()
            )
        );
    }
}
