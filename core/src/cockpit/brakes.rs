//! Brakes as plumbing: lever, cable or hose, joint, wheel brakes.

use super::ControlId;
use crate::rider::{Answer, Side, YesNo};

vocabulary! {
    /// A wheel.
    pub enum Wheel as "wheel" {
        /// The only front wheel.
        Front = "front", "front wheel";
        /// The left of two front wheels.
        FrontLeft = "front-left", "left front wheel";
        /// The right of two front wheels.
        FrontRight = "front-right", "right front wheel";
        /// The only rear wheel.
        Rear = "rear", "rear wheel";
        /// The left of two rear wheels.
        RearLeft = "rear-left", "left rear wheel";
        /// The right of two rear wheels.
        RearRight = "rear-right", "right rear wheel";
    }
}

impl Wheel {
    /// Whether it is at the front.
    pub const fn is_front(self) -> bool {
        matches!(self, Wheel::Front | Wheel::FrontLeft | Wheel::FrontRight)
    }

    /// The wheel beside it on the same axle, if any.
    pub const fn beside(self) -> Option<Wheel> {
        match self {
            Wheel::Front | Wheel::Rear => None,
            Wheel::FrontLeft => Some(Wheel::FrontRight),
            Wheel::FrontRight => Some(Wheel::FrontLeft),
            Wheel::RearLeft => Some(Wheel::RearRight),
            Wheel::RearRight => Some(Wheel::RearLeft),
        }
    }
}

vocabulary! {
    /// What carries the pull.
    pub enum Medium as "brake line" {
        /// A cable.
        Cable = "cable", "cable";
        /// A hydraulic hose.
        Hose = "hose", "hose";
    }
}

vocabulary! {
    /// The kind of wheel brake.
    pub enum BrakeKind as "wheel brake" {
        /// Acts on the rim.
        Rim = "rim", "rim brake";
        /// Acts on a disc.
        Disc = "disc", "disc brake";
        /// Acts in a drum.
        Drum = "drum", "drum brake";
    }
}

vocabulary! {
    /// What lies between one lever and its wheel brakes.
    pub enum Joint as "brake joint" {
        /// Nothing: one lever, one line, one wheel brake.
        Direct = "direct", "one line";
        /// A lever made to pull two cables.
        DualPull = "dual-pull", "dual-pull lever, two cables";
        /// One cable made into two.
        CableDoubler = "cable-doubler", "cable doubler";
        /// One hose made into two.
        HoseSplitter = "hose-splitter", "hose splitter";
    }
}

/// One lever and the wheel brakes it pulls.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BrakeRun {
    /// The control whose blade pulls.
    pub lever: ControlId,
    /// What carries the pull.
    pub medium: Medium,
    /// What lies between.
    pub joint: Joint,
    /// Whether lever throw was tested with this joint: each wheel brake works
    /// fully before the blade comes near the bar.
    pub throw_tested: Answer<YesNo>,
    /// The wheels it brakes.
    pub wheels: Vec<Wheel>,
}

impl BrakeRun {
    /// How many joints of its kind lie between this lever and its wheels. A
    /// dual-pull lever is one; each joint makes one line into two, so a further
    /// wheel takes a further one.
    pub fn joints(&self) -> Vec<Joint> {
        let ends = self.wheels.len();
        match self.joint {
            Joint::Direct => Vec::new(),
            Joint::DualPull => {
                let further = match self.medium {
                    Medium::Cable => Joint::CableDoubler,
                    Medium::Hose => Joint::HoseSplitter,
                };
                let mut joints = vec![Joint::DualPull];
                joints.extend(std::iter::repeat_n(further, ends.saturating_sub(2)));
                joints
            }
            joint => vec![joint; ends.saturating_sub(1).max(1)],
        }
    }

    /// The joints in words, in order from the lever: "dual-pull lever, two
    /// cables, then a cable doubler to the left rear wheel and right rear
    /// wheel"; `None` for one line.
    pub fn joints_in_words(&self) -> Option<String> {
        let joints = self.joints();
        let first = joints.first()?;
        let axle = self.wheels.iter().find_map(|wheel| {
            let beside = wheel.beside().filter(|other| self.wheels.contains(other))?;
            Some((*wheel, beside))
        });
        Some(match (joints.get(1), axle) {
            (None, _) => first.to_string(),
            (Some(second), Some((one, other))) if joints.len() == 2 => {
                format!("{first}, then a {second} to the {one} and the {other}")
            }
            (Some(second), _) if second == first => format!("{} × {first}", joints.len()),
            (Some(second), _) => format!("{first}, then {} × {second}", joints.len() - 1),
        })
    }
}

/// A brake at a wheel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WheelBrake {
    /// The wheel.
    pub wheel: Wheel,
    /// The kind.
    pub kind: BrakeKind,
    /// For two wheels on one axle: whether both were seen to brake alike.
    pub balanced: Answer<YesNo>,
}

/// Two levers that one hand pulls together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PulledTogether {
    /// The hand.
    pub hand: Side,
    /// One lever.
    pub first: ControlId,
    /// The other.
    pub second: ControlId,
    /// Whether it was tried.
    pub tried: Answer<YesNo>,
}

/// All the brakes.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Brakes {
    /// The brakes at the wheels.
    pub wheels: Vec<WheelBrake>,
    /// What pulls them.
    pub runs: Vec<BrakeRun>,
    /// Levers that one hand pulls together.
    pub together: Vec<PulledTogether>,
}

impl Brakes {
    /// What the lever pulls.
    pub fn run(&self, lever: ControlId) -> Option<&BrakeRun> {
        self.runs.iter().find(|run| run.lever == lever)
    }

    /// The levers that brake a wheel.
    pub fn levers_of(&self, wheel: Wheel) -> impl Iterator<Item = &BrakeRun> {
        self.runs
            .iter()
            .filter(move |run| run.wheels.contains(&wheel))
    }
}
