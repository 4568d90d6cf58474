//! What a rule says.

use crate::cockpit::{Bike, ButtonId, Control, ControlId, HandPosition, ThumbWorkKind, Wheel};
use crate::edit::Edit;
use crate::function::Function;
use crate::gears::{Exceeded, Gear};
use crate::rider::Side;
use crate::text::{Date, Text};
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// How much a finding weighs, heaviest first.
    pub enum Severity as "severity" {
        /// Must be fixed before the bike is ridden.
        MustFix = "must-fix", "must fix";
        /// Must be looked at by somebody who then decides.
        Check = "check", "check";
        /// Good to know.
        GoodToKnow = "good-to-know", "good to know";
    }
}

vocabulary! {
    /// Who may accept a finding that stands.
    pub enum Acceptable as "acceptance" {
        /// Nobody: while it stands, the sheet says NOT READY.
        Never = "never", "can never be accepted";
        /// The shop: it is about building the bike, or about whether a brake is
        /// there, is reached, holds and lets go.
        ByShop = "by-shop", "only the shop can accept it, with a reason";
        /// The shop or a clinician: it is about how hands are used.
        ByClinician = "by-clinician", "the shop or a clinician may accept it with a reason";
    }
}

impl Acceptable {
    /// Who may accept such a finding, as a sentence.
    pub const fn who(self) -> &'static str {
        match self {
            Acceptable::Never => "This can never be accepted.",
            Acceptable::ByShop => "Only the shop may accept this.",
            Acceptable::ByClinician => "The shop or a clinician may accept this.",
        }
    }

    /// What somebody in this role does instead of accepting such a finding;
    /// `None` where the role may accept it.
    pub fn instead(self, role: Role) -> Option<&'static str> {
        match (self, role) {
            _ if self.by(role) => None,
            (Acceptable::Never, _) => Some("This can never be accepted: change the plan."),
            (_, Role::Rider) => Some(
                "Not in this role. Say what you think of it in your own words, or leave a comment on it.",
            ),
            _ => Some("This one is for the shop: leave a comment on it."),
        }
    }

    /// Whether somebody in this role may accept such a finding.
    pub fn by(self, role: Role) -> bool {
        match (self, role) {
            (Acceptable::Never, _) | (_, Role::Rider) => false,
            (Acceptable::ByShop | Acceptable::ByClinician, Role::Shop) => true,
            (_, Role::Clinician) => self == Acceptable::ByClinician,
        }
    }
}

/// A place that a finding is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// A button.
    Button(ButtonId),
    /// A control, its blade above all.
    Control(ControlId),
    /// A hand.
    Hand(Side),
    /// A hand position.
    Position(HandPosition),
    /// A function.
    Function(Function),
    /// A wheel.
    Wheel(Wheel),
    /// Other work for a thumb: the bell and so on.
    ThumbWork(ThumbWorkKind),
    /// A gear.
    Gear(Gear),
    /// What a derailleur takes.
    Derailleur(Exceeded),
}

impl Place {
    /// A stable name for files and page elements.
    pub fn key(&self) -> String {
        match self {
            Place::Button(id) => format!("button:{id}"),
            Place::Control(id) => format!("control:{id}"),
            Place::Hand(side) => format!("hand:{}", side.code()),
            Place::Position(position) => format!("position:{}", position.code()),
            Place::Function(function) => format!("function:{}", function.code()),
            Place::Wheel(wheel) => format!("wheel:{}", wheel.code()),
            Place::ThumbWork(kind) => format!("thumb-work:{}", kind.code()),
            Place::Gear(gear) => format!("gear:{}.{}", gear.ring, gear.cog),
            Place::Derailleur(what) => format!("derailleur:{}", what.code()),
        }
    }

    /// Reads what [`Place::key`] gives.
    pub fn parse(key: &str) -> Option<Place> {
        let (kind, name) = key.split_once(':')?;
        let place = match kind {
            "button" => Place::Button(ButtonId::parse(name)?),
            "control" => Place::Control(ControlId(name.parse().ok()?)),
            "hand" => Place::Hand(Side::from_code(name)?),
            "position" => Place::Position(HandPosition::from_code(name)?),
            "function" => Place::Function(Function::from_code(name)?),
            "wheel" => Place::Wheel(Wheel::from_code(name)?),
            "thumb-work" => Place::ThumbWork(ThumbWorkKind::from_code(name)?),
            _ => return None,
        };
        (place.key() == key).then_some(place)
    }

    /// The place in words: "left inner paddle", "right hand".
    pub fn words(&self, bike: &Bike) -> String {
        match self {
            Place::Button(id) => bike.place_of(*id),
            Place::Control(id) => bike
                .control(*id)
                .map_or_else(|| format!("control {id}"), Control::place),
            Place::Hand(side) => format!("{side} hand"),
            Place::Position(position) => position.to_string(),
            Place::Function(function) => format!("“{function}”"),
            Place::Wheel(wheel) => wheel.to_string(),
            Place::ThumbWork(kind) => kind.to_string(),
            Place::Gear(gear) => match bike.drivetrain.gears() {
                Some(gears) if gears.has(*gear) => gears.words(*gear),
                _ => gear.to_string(),
            },
            Place::Derailleur(what) => what.to_string(),
        }
    }

    /// The balloon number, where the place is a button.
    pub fn balloon(&self, bike: &Bike) -> Option<usize> {
        match self {
            Place::Button(id) => bike.balloon(*id),
            _ => None,
        }
    }
}

/// A change that would remove a finding.
#[derive(Debug, Clone, PartialEq)]
pub struct Fix {
    /// What it does, as on a button: "Leave it blank".
    pub label: String,
    /// The change.
    pub edit: Edit,
}

/// What a rule says about a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// The rule that says it, by its stable name.
    pub rule: &'static str,
    /// How much it weighs here.
    pub severity: Severity,
    /// Who may accept it.
    pub acceptable: Acceptable,
    /// What it is about, most telling first.
    pub places: Vec<Place>,
    /// One or two sentences for all three readers.
    pub message: String,
    /// Changes that remove it without adding a must-fix finding, best first. A
    /// rule only proposes them; [`crate::rules::findings`] tries each and keeps
    /// those that do.
    pub fixes: Vec<Fix>,
}

impl Finding {
    /// A stable name of this finding, the same as long as it is about the same
    /// places.
    pub fn key(&self) -> String {
        let mut key = String::from(self.rule);
        for place in &self.places {
            key.push('|');
            key.push_str(&place.key());
        }
        key
    }
}

vocabulary! {
    /// In what role somebody acts.
    pub enum Role as "role" {
        /// The setup technician.
        Shop = "shop", "shop";
        /// The rider.
        Rider = "rider", "rider";
        /// A clinician.
        Clinician = "clinician", "clinician";
    }
}

/// A finding accepted with a reason.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Acceptance {
    /// The finding, by [`Finding::key`].
    pub finding: String,
    /// Why it may stand.
    pub reason: Text,
    /// Who says so; a typed name is not a signature. Without one nobody accepted
    /// anything.
    pub by: Text,
    /// In what role.
    pub role: Role,
    /// When.
    pub date: Option<Date>,
    /// Whether hands, controls or positions it rests on have changed since. It
    /// does not count any more, and stays so that people see what was decided.
    pub lapsed: bool,
}

impl Acceptance {
    /// Whether the accepted finding is about a control or one of its buttons.
    pub fn is_about(&self, control: ControlId) -> bool {
        let itself = Place::Control(control).key();
        let its_buttons = format!("button:{control}.");
        self.finding
            .split('|')
            .any(|place| place == itself || place.starts_with(&its_buttons))
    }
}
