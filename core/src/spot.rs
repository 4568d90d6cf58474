//! Where something is noted or mended: a screen, and a field on it.

use crate::cockpit::{Bike, Control, ControlId, HandPosition, Wheel};
use crate::finding::{Finding, Place};
use crate::plan::Plan;
use crate::rider::{Ability, Contact, Question, QuestionId, Rider, Side, Subject};
use crate::rules;
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// A screen on which something is noted.
    pub enum Screen as "screen" {
        /// What the hands can do.
        Rider = "rider", "Rider";
        /// The bike and what is on it.
        Bike = "bike", "Bike";
        /// Which button does what.
        Layout = "layout", "Layout";
        /// Rings, cogs, wheel, and how the derailleurs work together.
        Gears = "gears", "Gears";
    }
}

/// A field in which something is noted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Spot {
    /// The answers to a question about a hand.
    Hand(Side, QuestionId),
    /// Whether the device on a hand lets go in a fall.
    Device(Side),
    /// How much a hand position is used.
    Position(HandPosition),
    /// The side from which the rider mounts.
    Mounting,
    /// The hand that holds a brake while mounting.
    MountingBrake,
    /// The side on which the front brake is expected.
    FrontBrakeHabit,
    /// A control, its ports and its blade.
    Control(ControlId),
    /// All controls.
    Controls,
    /// All brakes.
    Brakes,
    /// Whether the throw of a lever was tested.
    Throw(ControlId),
    /// Whether a parking latch was tried.
    Latch(ControlId),
    /// How far a lever's blade lies from the bar.
    Blade(ControlId),
    /// Whether the two wheels of an axle brake alike; the left one stands for
    /// both.
    Axle(Wheel),
    /// Other work for a thumb.
    ThumbWork,
    /// Whether a chain catcher is fitted.
    ChainCatcher,
    /// What the shift system can program.
    System,
    /// What the buttons do.
    Buttons,
    /// Teeth of the chainrings.
    Rings,
    /// Teeth of the cogs.
    Cogs,
    /// What the derailleurs take.
    Derailleurs,
    /// The shift plan.
    ShiftPlan,
    /// The crossovers of the ladder.
    Crossovers,
    /// Whether holds run on across a crossover.
    HoldsCross,
}

impl Spot {
    /// The screen it is on.
    pub const fn screen(self) -> Screen {
        match self {
            Spot::Hand(..)
            | Spot::Device(_)
            | Spot::Position(_)
            | Spot::Mounting
            | Spot::MountingBrake
            | Spot::FrontBrakeHabit => Screen::Rider,
            Spot::Buttons => Screen::Layout,
            Spot::Rings
            | Spot::Cogs
            | Spot::Derailleurs
            | Spot::ShiftPlan
            | Spot::Crossovers
            | Spot::HoldsCross => Screen::Gears,
            _ => Screen::Bike,
        }
    }

    /// The name of its field on that screen.
    pub fn key(self) -> String {
        match self {
            Spot::Hand(side, question) => format!("{}-{}", side.code(), first_field(question)),
            Spot::Device(side) => format!("{}-releases", side.code()),
            Spot::Position(position) => format!("position-{}", position.code()),
            Spot::Mounting => "mounts".into(),
            Spot::MountingBrake => "holds-brake".into(),
            Spot::FrontBrakeHabit => "front-brake".into(),
            Spot::Control(id) => format!("control-{id}"),
            Spot::Controls => "controls".into(),
            Spot::Brakes => "brakes".into(),
            Spot::Throw(id) => format!("throw-{id}"),
            Spot::Latch(id) => format!("latch-{id}"),
            Spot::Blade(id) => format!("blade-{id}"),
            Spot::Axle(wheel) if wheel.is_front() => "balanced-front".into(),
            Spot::Axle(_) => "balanced-rear".into(),
            Spot::ThumbWork => "thumb-work".into(),
            Spot::ChainCatcher => "chain-catcher".into(),
            Spot::System => "system".into(),
            Spot::Buttons => "buttons".into(),
            Spot::Rings => "rings".into(),
            Spot::Cogs => "cogs".into(),
            Spot::Derailleurs => "derailleurs".into(),
            Spot::ShiftPlan => "shift-plan".into(),
            Spot::Crossovers => "crossovers".into(),
            Spot::HoldsCross => "holds-cross".into(),
        }
    }

    /// What it is called in a link: "pain, left hand".
    pub fn words(self, bike: &Bike) -> String {
        let place = |id| {
            bike.control(id)
                .map_or_else(|| format!("control {id}"), Control::place)
        };
        match self {
            Spot::Hand(side, question) => format!("{question}, {side} hand"),
            Spot::Device(side) => format!("device on the {side} hand"),
            Spot::Position(position) => format!("how much the rider uses the {position}"),
            Spot::Mounting => "mounting".into(),
            Spot::MountingBrake => "brake held while mounting".into(),
            Spot::FrontBrakeHabit => "where the front brake is expected".into(),
            Spot::Control(id) => place(id),
            Spot::Controls => "controls".into(),
            Spot::Brakes => "brakes".into(),
            Spot::Throw(id) => format!("throw test of the {}", place(id)),
            Spot::Latch(id) => format!("parking latch of the {}", place(id)),
            Spot::Blade(id) => format!("blade of the {}", place(id)),
            Spot::Axle(wheel) if wheel.is_front() => "balance of the front wheels".into(),
            Spot::Axle(_) => "balance of the rear wheels".into(),
            Spot::ThumbWork => "other work for a thumb".into(),
            Spot::ChainCatcher => "chain catcher".into(),
            Spot::System => "what the shift system can program".into(),
            Spot::Buttons => "what the buttons do".into(),
            Spot::Rings => "teeth of the chainrings".into(),
            Spot::Cogs => "teeth of the cogs".into(),
            Spot::Derailleurs => "what the derailleurs take".into(),
            Spot::ShiftPlan => "shift plan".into(),
            Spot::Crossovers => "crossovers of the ladder".into(),
            Spot::HoldsCross => "holds at crossovers".into(),
        }
    }
}

/// The first field of a question about a hand.
fn first_field(question: QuestionId) -> &'static str {
    match question {
        QuestionId::Place | QuestionId::Positions => "place",
        QuestionId::Holding => Ability::StaysOn.code(),
        QuestionId::Steering => Ability::SteersAlone.code(),
        QuestionId::Pressing => Contact::Thumb.code(),
        QuestionId::Paddle => Ability::SwingsPaddle.code(),
        QuestionId::HoldAndLetGo => Ability::KeepsPressed.code(),
        QuestionId::Braking => Ability::BrakesHard.code(),
        QuestionId::Moving => Ability::MovesAlong.code(),
        QuestionId::Feeling => Ability::TellsApart.code(),
        QuestionId::Comfort => Ability::Comfort.code(),
        QuestionId::OnItsOwn => "moves",
    }
}

impl Question {
    /// Where what is still open of the question is answered.
    pub fn open_spots(&self, plan: &Plan) -> Vec<Spot> {
        let rider: &Rider = &plan.rider;
        match self.subject {
            Subject::EachHand => Side::ALL
                .iter()
                .filter(|side| self.is_open_for(rider, **side))
                .map(|side| Spot::Hand(*side, self.id))
                .collect(),
            Subject::Once => {
                let positions = plan.bike.bar.kind.positions().iter();
                let open = positions.filter(|p| rider.positions.value(**p).is_none());
                let mounting = (!rider.mounts_from.is_known()).then_some(Spot::Mounting);
                open.map(|p| Spot::Position(*p)).chain(mounting).collect()
            }
        }
    }
}

impl Finding {
    /// Where what it speaks of is noted or mended, most telling first.
    pub fn spots(&self, plan: &Plan) -> Vec<Spot> {
        let mut spots = rules::noted(self, plan);
        let mut seen = Vec::new();
        spots.retain(|spot| {
            !seen.contains(spot) && {
                seen.push(*spot);
                true
            }
        });
        spots
    }

    /// The first hand it is about.
    pub(crate) fn hand(&self) -> Option<Side> {
        self.places.iter().find_map(|place| match place {
            Place::Hand(side) => Some(*side),
            _ => None,
        })
    }

    /// The first control it is about, its buttons included.
    pub(crate) fn control(&self) -> Option<ControlId> {
        self.places.iter().find_map(|place| match place {
            Place::Control(id) => Some(*id),
            Place::Button(id) => Some(id.control),
            _ => None,
        })
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{BikeEdit, BrakeEdit, Edit, PlanEdit, RiderEdit};
    use crate::finding::Acceptable;
    use crate::rider::{Answer, HandPlace, Use};
    use crate::shift_plan::ShiftPlanKind;
    use crate::testing::plan_from_document;

    fn spots(plan: &Plan, rule: &str) -> Vec<(Screen, String, String)> {
        let found = rules::findings(plan);
        let finding = found.iter().find(|f| f.rule == rule).expect("it fires");
        let spots = finding.spots(plan).into_iter();
        spots
            .map(|spot| (spot.screen(), spot.key(), spot.words(&plan.bike)))
            .collect()
    }

    #[test]
    fn an_untested_throw_leads_to_its_field_on_the_bike() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let lever = plan.bike.brakes.runs[0].lever;
        let joined = Edit::Brakes(BrakeEdit::AllOnLever(lever));
        let plan = plan.apply(&joined).expect("a lever brakes");
        assert_eq!(
            spots(&plan, "brake-throw-untested"),
            [(
                Screen::Bike,
                format!("throw-{lever}"),
                format!(
                    "throw test of the {}",
                    plan.bike.control(lever).expect("it is there").place()
                )
            )]
        );
    }

    #[test]
    fn teeth_that_are_not_entered_lead_to_their_field_on_the_gears() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let ladder = Edit::Plan(PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder));
        let plan = [ladder, Edit::Bike(BikeEdit::Cogs(11))]
            .iter()
            .fold(plan, |plan, edit| plan.apply(edit).expect("it can be"));
        let spot = (Screen::Gears, "cogs".into(), "teeth of the cogs".into());
        assert_eq!(spots(&plan, "gears-not-entered"), [spot]);
    }

    #[test]
    fn a_brake_out_of_reach_leads_to_the_brakes_and_to_the_use_of_the_position() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let tops = RiderEdit::Position(HandPosition::Tops, Answer::of(Use::Sometimes));
        let plan = plan.apply(&Edit::Rider(tops)).expect("it can be said");
        let found: Vec<(Screen, String)> = spots(&plan, "brake-out-of-reach")
            .into_iter()
            .map(|(screen, key, _)| (screen, key))
            .collect();
        assert_eq!(
            found,
            [
                (Screen::Bike, "brakes".to_owned()),
                (Screen::Rider, "position-tops".to_owned())
            ]
        );
    }

    #[test]
    fn what_was_not_asked_leads_to_each_open_question_of_the_hand() {
        let plan = template(TemplateId::FlatSingle).plan("Test");
        let all = RiderEdit::HandDoesAll(Side::Left, None);
        let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
        let plan = [all, rests].into_iter().fold(plan, |plan, edit| {
            plan.apply(&Edit::Rider(edit)).expect("it can be said")
        });
        let keys: Vec<String> = spots(&plan, "not-asked-yet")
            .into_iter()
            .map(|(_, key, _)| key)
            .collect();
        assert_eq!(keys, ["left-comfort", "left-moves"]);
    }

    proptest! {
        /// Whoever reads that something can never be accepted is shown where to
        /// mend it; and so is whoever reads anything else.
        #[test]
        fn every_finding_leads_somewhere(plan in plan_from_document()) {
            for finding in rules::findings(&plan) {
                let spots = finding.spots(&plan);
                prop_assert!(!spots.is_empty(), "{:?}", finding);
                let elsewhere = spots.iter().any(|spot| *spot != Spot::Buttons);
                let shifts = finding.rule == "press-lets-go-of-steering";
                if finding.acceptable == Acceptable::Never && !shifts {
                    prop_assert!(elsewhere, "{:?}", finding);
                }
                for spot in spots {
                    prop_assert!(!spot.key().contains(' ') && !spot.words(&plan.bike).is_empty());
                }
            }
        }
    }
}
