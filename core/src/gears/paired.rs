//! The paired plan: a front shift brings rear shifts, so that the rider feels a
//! net step.

use crate::plan::Plan;

use super::{Direction, Gear, Gears, PairedSettings, Percent};

/// The net step that a ring change is made for (our judgement: about one and a
/// half usual steps; less does nothing that a cog would not, more leaves the
/// legs behind). The count that cancels the change is not it: riders change
/// rings to get somewhere.
pub const USEFUL_STEP: Percent = Percent(17.0);

/// The most rear shifts that one front shift brings (common practice).
pub const MOST_REAR_SHIFTS: u8 = 4;

impl Paired {
    /// The most rear shifts that are offered.
    pub const MOST: u8 = MOST_REAR_SHIFTS;
}

/// The net steps of one front change, by cog and by count, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NetStepTable {
    /// Which front change: "34 to 50, steps in percent, above zero is harder".
    pub title: String,
    /// The numbers of rear shifts.
    pub counts: Vec<u8>,
    /// The number that is in hand.
    pub chosen: u8,
    /// For each cog the gear that it starts from, and the step for each number:
    /// "+19", or a dash where the cassette ends before.
    pub rows: Vec<(String, Vec<String>)>,
}

impl NetStepTable {
    /// The tables of a plan, up before down, from the smallest ring; empty until
    /// the teeth are entered.
    pub fn all(plan: &Plan) -> Vec<NetStepTable> {
        let Some(gears) = plan.bike.drivetrain.gears() else {
            return Vec::new();
        };
        let paired = Paired::of(&gears, plan.shift_settings.paired);
        let mut tables = Vec::new();
        for ring in 1..gears.rings.len() as u8 {
            tables.push(net_step_table(
                &gears,
                ring - 1,
                Direction::Up,
                paired.larger,
            ));
            tables.push(net_step_table(
                &gears,
                ring,
                Direction::Down,
                paired.smaller,
            ));
        }
        tables
    }
}

fn net_step_table(gears: &Gears, ring: u8, way: Direction, chosen: u8) -> NetStepTable {
    let to = match way {
        Direction::Up => ring + 1,
        Direction::Down => ring.saturating_sub(1),
    };
    let teeth = |ring: u8| gears.rings[usize::from(ring)];
    let mut counts: Vec<u8> = (0..=MOST_REAR_SHIFTS).collect();
    if !counts.contains(&chosen) {
        counts.push(chosen);
    }
    let mut rows: Vec<(String, Vec<String>)> = Vec::new();
    for count in &counts {
        for (at, net) in net_steps(gears, ring, way, *count).iter().enumerate() {
            if rows.len() <= at {
                rows.push((gears.words(net.from), Vec::new()));
            }
            rows[at].1.push(match net.short {
                true => "–".into(),
                false => format!("{:+.0}", libm::round(net.step.0) + 0.0),
            });
        }
    }
    NetStepTable {
        title: format!(
            "{} to {}: step in percent by rear shifts, above zero is harder",
            teeth(ring),
            teeth(to)
        ),
        counts,
        chosen,
        rows,
    }
}

/// How many rear shifts go with a front shift.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Paired {
    /// With a shift to the larger ring: so many to larger cogs.
    pub larger: u8,
    /// With a shift to the smaller ring: so many to smaller cogs.
    pub smaller: u8,
}

impl Paired {
    /// The counts set by hand, else those whose net step comes nearest to
    /// [`USEFUL_STEP`].
    pub fn of(gears: &Gears, settings: PairedSettings) -> Paired {
        Paired {
            larger: settings
                .larger
                .unwrap_or_else(|| usual(gears, Direction::Up)),
            smaller: settings
                .smaller
                .unwrap_or_else(|| usual(gears, Direction::Down)),
        }
    }

    /// Where a front shift leads: one ring on, the rear as many cogs back as are
    /// set, or as there are.
    pub fn shift(self, gears: &Gears, from: Gear, way: Direction) -> Option<Gear> {
        let count = match way {
            Direction::Up => self.larger,
            Direction::Down => self.smaller,
        };
        landed(gears, from, way, count)
    }
}

fn landed(gears: &Gears, from: Gear, way: Direction, count: u8) -> Option<Gear> {
    let last = gears.cogs.len() as u8 - 1;
    let to = match way {
        Direction::Up => Gear {
            ring: from.ring + 1,
            cog: from.cog.saturating_sub(count),
        },
        Direction::Down => Gear {
            ring: from.ring.checked_sub(1)?,
            cog: (from.cog + count).min(last),
        },
    };
    gears.has(to).then_some(to)
}

/// What a rider feels of one front change with its rear shifts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NetStep {
    /// Where it starts.
    pub from: Gear,
    /// Where it ends.
    pub to: Gear,
    /// The step: above zero is harder.
    pub step: Percent,
    /// How the cadence changes at the same speed.
    pub cadence: Percent,
    /// Whether fewer cogs were left than are set.
    pub short: bool,
}

/// The net step of a front change with a number of rear shifts, from every cog
/// of the ring it leaves.
///
/// `ring` is the ring that it leaves, 0 for the smallest. Empty where there is
/// no ring to go to.
pub fn net_steps(gears: &Gears, ring: u8, way: Direction, count: u8) -> Vec<NetStep> {
    let mut steps = Vec::new();
    for cog in 0..gears.cogs.len() as u8 {
        let from = Gear { ring, cog };
        let Some(to) = landed(gears, from, way, count).filter(|_| gears.has(from)) else {
            continue;
        };
        steps.push(NetStep {
            from,
            to,
            step: gears.step(from, to),
            cadence: gears.cadence_change(from, to),
            short: from.cogs_to(to).unsigned_abs() != count,
        });
    }
    steps
}

/// The count whose net steps come nearest to the useful one, over all front
/// changes that way and all cogs that have so many beside them.
fn usual(gears: &Gears, way: Direction) -> u8 {
    let wanted = libm::log(1.0 + USEFUL_STEP.0 / 100.0);
    let mut best = (0, f64::INFINITY);
    for count in 0..=MOST_REAR_SHIFTS {
        let (mut off, mut n) = (0.0, 0.0);
        for ring in 0..gears.rings.len() as u8 {
            for net in net_steps(gears, ring, way, count) {
                if !net.short {
                    // Of a front change one way only what goes that way is of use.
                    let felt = libm::log(1.0 + net.step.0 / 100.0);
                    let felt = if way == Direction::Up { felt } else { -felt };
                    off += libm::fabs(felt - wanted);
                    n += 1.0;
                }
            }
        }
        if n > 0.0 && off / n < best.1 {
            best = (count, off / n);
        }
    }
    best.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::gears::testing::gears;

    /// *Common practice*: with 50/34 and 11-34, three cogs nearly cancel the ring
    /// change in the middle of the cassette, and two are the usual choice.
    #[test]
    fn two_is_the_usual_choice_and_three_nearly_cancel() {
        let gears = gears("34 50", "11 12 13 14 15 17 19 21 24 27 30 34");
        assert_eq!(
            Paired::of(&gears, PairedSettings::default()),
            Paired {
                larger: 2,
                smaller: 2
            }
        );
        let three = net_steps(&gears, 0, Direction::Up, 3);
        let middle = three.iter().find(|n| gears.words(n.from) == "34×17");
        let middle = middle.expect("there is such a gear");
        assert_eq!(gears.words(middle.to), "50×24");
        assert!(
            middle.step.0 > 0.0 && middle.step.0 < 5.0,
            "{}",
            middle.step
        );
        assert!(middle.cadence.0 < 0.0);
    }

    #[test]
    fn a_count_set_by_hand_stands() {
        let gears = gears("34 50", "11 13 15 17 19 21 24 28");
        let settings = PairedSettings {
            larger: Some(3),
            smaller: None,
        };
        assert_eq!(Paired::of(&gears, settings).larger, 3);
    }

    #[test]
    fn where_cogs_run_out_it_moves_as_many_as_there_are() {
        let gears = gears("34 50", "11 13 15 17 19");
        let paired = Paired {
            larger: 2,
            smaller: 2,
        };
        let to = paired.shift(&gears, Gear::new(0, 1), Direction::Up);
        assert_eq!(to, Some(Gear::new(1, 0)));
        assert_eq!(paired.shift(&gears, Gear::new(1, 0), Direction::Up), None);
        assert_eq!(paired.shift(&gears, Gear::new(0, 0), Direction::Down), None);
        assert!(net_steps(&gears, 0, Direction::Down, 2).is_empty());
        assert!(net_steps(&gears, 9, Direction::Down, 2).is_empty());
    }

    #[test]
    fn the_table_says_what_the_legs_feel_for_every_count() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let tables = NetStepTable::all(&plan);
        assert_eq!(tables.len(), 2);
        let up = &tables[0];
        assert!(up.title.starts_with("34 to 50:"));
        assert_eq!(up.counts, [0, 1, 2, 3, 4]);
        assert_eq!(up.chosen, 2);
        // 34×17 to 50×21, two cogs back: 50/21 over 34/17.
        let row = up.rows.iter().find(|(from, _)| from == "34×17");
        assert_eq!(row.map(|(_, steps)| steps[2].as_str()), Some("+19"));
        assert_eq!(up.rows[0].1[1], "–");
    }
}
