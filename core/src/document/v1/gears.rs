//! The drivetrain and the shift plan's settings in format 1.

use crate::document::code::Code;
use crate::document::list::{Item, List, Plain};
use crate::document::number::{Length, Whole};
use crate::document::part::Given;
use crate::document::reader::Reader;
use crate::gears::{self, LadderGoal, Millis, Rolling, Sprockets, Teeth};
use crate::limits::{self, MOST_COGS, MOST_RINGS};
use crate::units::Mm;

type RingTeeth = Whole<{ limits::RING_TEETH.from as u32 }, { limits::RING_TEETH.to as u32 }>;
type CogTeeth = Whole<{ limits::COG_TEETH.from as u32 }, { limits::COG_TEETH.to as u32 }>;
type Wrap = Whole<{ limits::WRAP_TEETH.from as u32 }, { limits::WRAP_TEETH.to as u32 }>;
type Difference =
    Whole<{ limits::DIFFERENCE_TEETH.from as u32 }, { limits::DIFFERENCE_TEETH.to as u32 }>;
type Circumference = Length<{ limits::CIRCUMFERENCE.from }, { limits::CIRCUMFERENCE.to }>;
type Crank = Length<{ limits::CRANK.from }, { limits::CRANK.to }>;
type Chainstay = Length<{ limits::CHAINSTAY.from }, { limits::CHAINSTAY.to }>;
type TyreWidth = Whole<{ limits::TYRE_WIDTH.from as u32 }, { limits::TYRE_WIDTH.to as u32 }>;
type Seat = Whole<1, 1000>;
type Time = Whole<1, { limits::LONGEST_MILLIS as u32 }>;
type Ring = Whole<0, { MOST_RINGS as u32 - 1 }>;
type Cog = Whole<0, { MOST_COGS as u32 - 1 }>;

part! {
    /// What is known of the drivetrain. Teeth stand in the order of the gears:
    /// rings from the smallest, cogs from the largest. Lengths are in
    /// millimetres.
    #[derive(Default)]
    pub(super) struct Drivetrain as "a drivetrain" {
        rings (default): Given<Plain<RingTeeth>>,
        cogs (default): Given<Plain<CogTeeth>>,
        tyre (default): Given<Tyre>,
        /// What the driven wheel rolls, where it was measured.
        circumference (default): Given<Circumference>,
        crank (default): Given<Crank>,
        chainstay (default): Given<Chainstay>,
        /// The largest cog that the rear derailleur takes.
        largest_cog (default): Given<CogTeeth>,
        /// The chain that the rear derailleur takes up, in teeth.
        wrap (default): Given<Wrap>,
        /// The most teeth between the largest and the smallest ring.
        front_difference (default): Given<Difference>,
    }
}

part! {
    /// A tyre by its marking of ISO 5775.
    struct Tyre as "a tyre such as {\"width\": 28, \"bead_seat\": 622}" {
        width: TyreWidth,
        bead_seat: Seat,
    }
}

part! {
    /// How the shift plans are tuned. Rings and cogs are counted from 0, from the
    /// easiest gear on.
    #[derive(Default)]
    pub(super) struct Settings as "settings of the shift plan" {
        /// Rear shifts with a shift to the larger ring, where set by hand.
        rear_with_larger (default): Given<Cog>,
        /// Rear shifts with a shift to the smaller ring, where set by hand.
        rear_with_smaller (default): Given<Cog>,
        ladder_goal (default): Given<Code<LadderGoal>>,
        /// Gears that the ladder keeps out of.
        forbidden (default): Given<List<Gear, { limits::MOST_FORBIDDEN }>>,
        /// Crossovers set by hand: for each ring but the largest, in order.
        crossovers (default): Given<List<Crossovers, { MOST_RINGS as usize - 1 }>>,
        /// Whether a hold runs on across a crossover.
        holds_cross (default): Given<bool>,
        pace (default): Given<Pace>,
    }
}

part! {
    /// A gear.
    pub(in crate::document) struct Gear as "a gear such as {\"ring\": 0, \"cog\": 3}" {
        ring: Ring,
        cog: Cog,
    }
}

part! {
    /// Where the front changes between a ring and the next larger.
    pub(in crate::document) struct Crossovers as "two crossovers" {
        /// The smaller of their rings.
        ring: Ring,
        /// The cog left on the way to the larger ring.
        up_leaves: Cog,
        up_lands: Cog,
        /// The cog left on the way to the smaller ring.
        down_leaves: Cog,
        down_lands: Cog,
    }
}

part! {
    /// How fast the system shifts, in thousandths of a second.
    struct Pace as "a pace" {
        trigger: Time,
        rear: Time,
        front: Time,
    }
}

impl Item for Gear {
    const LIST: &'static str = "forbidden";
    const NAMED_BY: &'static [&'static str] = &["ring", "cog"];

    fn name(&self) -> String {
        format!("{} and {}", self.ring.0, self.cog.0)
    }
}

impl Item for Crossovers {
    const LIST: &'static str = "crossovers";
    const NAMED_BY: &'static [&'static str] = &["ring"];

    fn name(&self) -> String {
        self.ring.0.to_string()
    }
}

/// Something that may be left out.
fn given<M, T>(value: Option<M>, write: impl Fn(M) -> T) -> Given<T> {
    Given(value.map(write))
}

fn teeth<const FROM: u32, const TO: u32>(sprockets: &Sprockets) -> Given<Plain<Whole<FROM, TO>>> {
    let of = |teeth: &[Teeth]| Plain(teeth.iter().map(|t| Whole::from(t.0)).collect());
    Given(sprockets.teeth().map(of))
}

fn sprockets<const FROM: u32, const TO: u32>(
    teeth: Option<Plain<Whole<FROM, TO>>>,
    count: u8,
) -> Sprockets {
    match teeth {
        Some(teeth) => Sprockets::Counted(teeth.0.into_iter().map(tooth).collect()),
        None => Sprockets::Number(count),
    }
}

fn tooth<const FROM: u32, const TO: u32>(whole: Whole<FROM, TO>) -> Teeth {
    // The bounds of the type are those of tooth counts.
    Teeth(whole.0 as u8)
}

impl Drivetrain {
    /// What a file says beyond how many rings and cogs there are, if anything.
    pub(super) fn of(drivetrain: &gears::Drivetrain) -> Option<Drivetrain> {
        let derailleurs = drivetrain.derailleurs;
        let (tyre, measured) = match drivetrain.wheel {
            None => (None, None),
            Some(Rolling::Tyre(tyre)) => (Some(tyre), None),
            Some(Rolling::Measured(mm)) => (None, Some(mm)),
        };
        let part = Drivetrain {
            rings: teeth(&drivetrain.rings),
            cogs: teeth(&drivetrain.cogs),
            tyre: given(tyre, |tyre| Tyre {
                width: tyre.width.into(),
                bead_seat: tyre.bead_seat.into(),
            }),
            circumference: given(measured, Circumference::from),
            crank: given(drivetrain.crank, Crank::from),
            chainstay: given(drivetrain.chainstay, Chainstay::from),
            largest_cog: given(derailleurs.largest_cog, |t| t.0.into()),
            wrap: given(derailleurs.wrap, |t| t.0.into()),
            front_difference: given(derailleurs.front_difference, |t| t.0.into()),
        };
        (part != Drivetrain::default()).then_some(part)
    }

    pub(super) fn read(self, rings: u8, cogs: u8) -> gears::Drivetrain {
        let tyre = self.tyre.0.map(|tyre| {
            Rolling::Tyre(gears::Tyre {
                width: tyre.width.into(),
                bead_seat: tyre.bead_seat.into(),
            })
        });
        let measured = self.circumference.0.map(|mm| Rolling::Measured(mm.into()));
        gears::Drivetrain {
            rings: sprockets(self.rings.0, rings),
            cogs: sprockets(self.cogs.0, cogs),
            wheel: tyre.or(measured),
            crank: self.crank.0.map(Mm::from),
            chainstay: self.chainstay.0.map(Mm::from),
            derailleurs: gears::Derailleurs {
                largest_cog: self.largest_cog.0.map(tooth),
                wrap: self.wrap.0.map(tooth),
                front_difference: self.front_difference.0.map(tooth),
            },
        }
    }

    /// Refuses what one field at a time cannot tell.
    pub(super) fn look_through(&self, rings: u8, cogs: u8, reader: &mut Reader) {
        check(&self.rings.0, ("rings", rings), Sprockets::rings, reader);
        check(&self.cogs.0, ("cogs", cogs), Sprockets::cogs, reader);
        if self.tyre.0.is_some() && self.circumference.0.is_some() {
            reader.refuse_at(
                "bike.drivetrain",
                "expected at most one of “tyre” and “circumference”",
            );
        }
        if let Some(tyre) = &self.tyre.0 {
            let seat = tyre.bead_seat.0 as u16;
            if !gears::BEAD_SEATS.contains(&seat) {
                let what = format!("no tyre has a bead seat of {seat} mm");
                reader.refuse_at("bike.drivetrain.tyre.bead_seat", what);
            }
        }
    }
}

/// Refuses teeth that are out of order, repeated, or not as many as the bike has.
fn check<const FROM: u32, const TO: u32>(
    teeth: &Option<Plain<Whole<FROM, TO>>>,
    (name, count): (&str, u8),
    sprockets: fn(&[Teeth]) -> Result<Sprockets, gears::ToothError>,
    reader: &mut Reader,
) {
    let Some(teeth) = teeth else { return };
    let place = format!("bike.drivetrain.{name}");
    let teeth: Vec<Teeth> = teeth.0.iter().copied().map(tooth).collect();
    if teeth.len() != usize::from(count) {
        let found = teeth.len();
        let what = format!("expected {count}, as bike.{name} says, found {found}");
        reader.refuse_at(&place, what);
        return;
    }
    let in_order = match sprockets(&teeth) {
        Ok(Sprockets::Counted(sorted)) => sorted == teeth,
        _ => false,
    };
    if !in_order {
        let ends = if name == "rings" {
            "smallest"
        } else {
            "largest"
        };
        reader.refuse_at(&place, format!("expected each once, from the {ends}"));
    }
}

impl Settings {
    /// What a file says of them, if they are not the usual ones.
    pub(super) fn of(settings: &gears::ShiftSettings) -> Option<Settings> {
        let ladder = &settings.ladder;
        let usual = gears::ShiftSettings::default();
        let forbidden = ladder.forbidden.iter().map(|gear| Gear {
            ring: gear.ring.into(),
            cog: gear.cog.into(),
        });
        let crossovers = ladder
            .by_hand
            .iter()
            .zip(0_u8..)
            .map(|(set, ring)| Crossovers {
                ring: ring.into(),
                up_leaves: set.up.leaves.into(),
                up_lands: set.up.lands.into(),
                down_leaves: set.down.leaves.into(),
                down_lands: set.down.lands.into(),
            });
        let pace = Pace {
            trigger: Whole(settings.pace.trigger.0),
            rear: Whole(settings.pace.rear.0),
            front: Whole(settings.pace.front.0),
        };
        let part = Settings {
            rear_with_larger: given(settings.paired.larger, Cog::from),
            rear_with_smaller: given(settings.paired.smaller, Cog::from),
            ladder_goal: Given((ladder.goal != usual.ladder.goal).then_some(Code(ladder.goal))),
            forbidden: Given((!ladder.forbidden.is_empty()).then(|| List(forbidden.collect()))),
            crossovers: Given((!ladder.by_hand.is_empty()).then(|| List(crossovers.collect()))),
            holds_cross: Given(settings.holds_cross.then_some(true)),
            pace: Given((settings.pace != usual.pace).then_some(pace)),
        };
        (part != Settings::default()).then_some(part)
    }
}

impl Settings {
    /// Refuses what one field at a time cannot tell.
    pub(super) fn look_through(&self, reader: &mut Reader) {
        let Some(crossovers) = &self.crossovers.0 else {
            return;
        };
        if crossovers
            .0
            .iter()
            .zip(0..)
            .any(|(set, ring)| set.ring.0 != ring)
        {
            reader.refuse_at(
                "shift_settings.crossovers",
                "expected one entry for each ring but the largest, from ring 0",
            );
        }
    }
}

impl From<Settings> for gears::ShiftSettings {
    fn from(settings: Settings) -> Self {
        let mut forbidden: Vec<gears::Gear> = Vec::new();
        for gear in settings.forbidden.0.map_or(Vec::new(), |list| list.0) {
            let gear = gears::Gear::new(gear.ring.into(), gear.cog.into());
            if let Err(at) = forbidden.binary_search(&gear) {
                forbidden.insert(at, gear);
            }
        }
        let mut by_hand = Vec::new();
        for set in settings.crossovers.0.map_or(Vec::new(), |list| list.0) {
            by_hand.push(gears::HandCrossovers {
                up: gears::CogMove {
                    leaves: set.up_leaves.into(),
                    lands: set.up_lands.into(),
                },
                down: gears::CogMove {
                    leaves: set.down_leaves.into(),
                    lands: set.down_lands.into(),
                },
            });
        }
        gears::ShiftSettings {
            paired: gears::PairedSettings {
                larger: settings.rear_with_larger.0.map(u8::from),
                smaller: settings.rear_with_smaller.0.map(u8::from),
            },
            ladder: gears::LadderSettings {
                goal: settings
                    .ladder_goal
                    .0
                    .map_or_else(LadderGoal::default, |code| code.0),
                forbidden,
                by_hand,
            },
            holds_cross: settings.holds_cross.0.unwrap_or(false),
            pace: settings
                .pace
                .0
                .map_or_else(gears::Pace::default, |pace| gears::Pace {
                    trigger: Millis(pace.trigger.0),
                    rear: Millis(pace.rear.0),
                    front: Millis(pace.front.0),
                }),
        }
    }
}
