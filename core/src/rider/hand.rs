//! One hand.

use super::{
    Ability, Answer, Asked, Contact, Difficulty, Evidence, MAIN_CONTACTS, Side, Standing, YesNo,
    digits,
};
use crate::cockpit::HandPosition;
use crate::units::Mm;
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// What the hand does while riding.
    pub enum HandPlace as "place of the hand" {
        /// Goes along with the rider from position to position and works there.
        Works = "works", "works on the bar";
        /// Rests on the bar; it does not press.
        Rests = "rests", "rests on the bar and does not press";
        /// Is not on the bar.
        OffBar = "off-bar", "is off the bar";
    }
}

vocabulary! {
    /// Whether the contacts of a hand move one by one.
    pub enum Pressing as "way of pressing" {
        /// One contact can press alone.
        OneAlone = "one-alone", "one alone";
        /// The fingers move all together.
        AllTogether = "all-together", "all together";
    }
}

vocabulary! {
    /// What becomes of the hand after an hour or in the cold.
    pub enum Later as "later" {
        /// The same.
        Same = "same", "the same";
        /// One step harder.
        OneStepHarder = "one-step-harder", "one step harder";
        /// Do not count on it.
        DoNotCountOnIt = "do-not-count-on-it", "do not count on it";
    }
}

vocabulary! {
    /// The day for which something is asked.
    pub enum Day as "day" {
        /// As answered.
        Usual = "usual", "usual day";
        /// After an hour, in the cold, on a bad day.
        Bad = "bad", "bad day";
    }
}

vocabulary! {
    /// How a device acts on a control.
    pub enum Acts as "way a device acts" {
        /// It pushes.
        Pushes = "pushes", "pushes";
        /// It pulls.
        Pulls = "pulls", "pulls";
        /// It pushes and pulls.
        Both = "both", "pushes and pulls";
    }
}

/// A strap, splint or prosthetic device that joins the hand to the bar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Device {
    /// Whether it lets go by itself in a fall, tried and seen.
    pub releases_in_fall: Answer<YesNo>,
    /// Whether it pushes or pulls.
    pub acts: Answer<Acts>,
}

impl Device {
    /// What is said of it now, with what was said before.
    pub(crate) fn after(self, earlier: Option<Device>) -> Device {
        let Some(earlier) = earlier else { return self };
        let releases = self.releases_in_fall;
        Device {
            releases_in_fall: match releases == earlier.releases_in_fall {
                true => releases,
                false => releases.after(earlier.releases_in_fall),
            },
            acts: match self.acts == earlier.acts {
                true => self.acts,
                false => self.acts.after(earlier.acts),
            },
        }
    }
}

/// What is known of one hand.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Hand {
    /// What it does while riding.
    pub place: Answer<HandPlace>,
    /// How hard each thing is.
    pub abilities: Asked<Ability, Difficulty>,
    /// How hard pressing is with each contact. Beyond the digits, what is not
    /// asked is not in use.
    pub contacts: Asked<Contact, Difficulty>,
    /// Whether contacts press one by one.
    pub pressing: Answer<Pressing>,
    /// Whether the arm tightens or moves by itself on effort or startle.
    pub moves_by_itself: Answer<YesNo>,
    /// What becomes of it after an hour or in the cold.
    pub later: Answer<Later>,
    /// Which part hurts while riding or next morning; asked on request.
    pub hurts: Asked<Contact, YesNo>,
    /// Farthest brake blade it can reach and pull, measured from the bar, per
    /// position.
    pub blade_reach: Asked<HandPosition, Mm>,
    /// A device on the hand, if any.
    pub device: Option<Device>,
}

impl Hand {
    /// A hand that rides, steers, presses and brakes without difficulty, in one
    /// tap. Pain, what the arm does by itself, what becomes of it later, and the
    /// ring and little finger are not said by that: they stay not asked.
    pub fn does_all(evidence: Option<Evidence>) -> Hand {
        let at_once = Answer::with(Difficulty::None, together(evidence));
        let said = Ability::ALL.iter().filter(|a| **a != Ability::Comfort);
        Hand {
            place: Answer::with(HandPlace::Works, evidence),
            abilities: said.map(|ability| (*ability, at_once)).collect(),
            contacts: MAIN_CONTACTS.iter().map(|c| (*c, at_once)).collect(),
            pressing: Answer::with(Pressing::OneAlone, together(evidence)),
            ..Hand::default()
        }
    }

    /// A hand that presses, steers and brakes nothing, in one tap: it rests on
    /// the bar, or is off it. Whether it stays on, keeps steady, lets go, feels
    /// or hurts is not said by that and stays not asked.
    pub fn does_nothing(place: HandPlace, evidence: Option<Evidence>) -> Hand {
        let at_once = Answer::with(Difficulty::Complete, together(evidence));
        let said = Ability::ALL.iter().filter(|ability| ability.is_work());
        Hand {
            place: Answer::with(place, evidence),
            abilities: said.map(|ability| (*ability, at_once)).collect(),
            contacts: digits().map(|c| (c, at_once)).collect(),
            ..Hand::default()
        }
    }

    /// Whether another tells the same about the hand, whoever says so.
    pub fn same_answers(&self, other: &Hand) -> bool {
        self.without_evidence() == other.without_evidence()
    }

    /// Whether everything that another tells about abilities, contacts, place
    /// and pressing is told here, too, whoever says so.
    pub fn tells(&self, other: &Hand) -> bool {
        let place = other.place.value.is_none() || self.place.value == other.place.value;
        let pressing =
            other.pressing.value.is_none() || self.pressing.value == other.pressing.value;
        let mut abilities = other.abilities.iter();
        let mut contacts = other.contacts.iter();
        place
            && pressing
            && abilities.all(|(ability, answer)| self.abilities.value(ability) == answer.value)
            && contacts.all(|(contact, answer)| self.contacts.value(contact) == answer.value)
    }

    fn without_evidence(&self) -> Hand {
        Hand {
            place: self.place.bare(),
            abilities: self.abilities.bare(),
            contacts: self.contacts.bare(),
            pressing: self.pressing.bare(),
            moves_by_itself: self.moves_by_itself.bare(),
            later: self.later.bare(),
            hurts: self.hurts.bare(),
            blade_reach: self.blade_reach.bare(),
            device: self.device.map(|device| Device {
                releases_in_fall: device.releases_in_fall.bare(),
                acts: device.acts.bare(),
            }),
        }
    }

    /// Whether the hand works controls at all. Not asked counts as working;
    /// a finding says that it was not asked.
    pub fn works(&self) -> bool {
        matches!(self.place.value, None | Some(HandPlace::Works))
    }

    /// Whether the hand is on the bar.
    pub fn on_bar(&self) -> bool {
        self.place.value != Some(HandPlace::OffBar)
    }

    /// How hard something is on a given day; `None` is not asked.
    pub fn step(&self, ability: Ability, day: Day) -> Option<Difficulty> {
        self.on_day(self.abilities.value(ability), day)
    }

    /// How hard pressing with a contact is on a given day; `None` is not asked.
    pub fn contact_step(&self, contact: Contact, day: Day) -> Option<Difficulty> {
        self.on_day(self.contacts.value(contact), day)
    }

    /// A step as somebody said it for a day: for a bad day that nobody asked
    /// about it is `None`, where [`Hand::step`] takes the usual day. What the
    /// hand does not do on a usual day it does not do then.
    pub fn told(&self, step: Option<Difficulty>, day: Day) -> Option<Difficulty> {
        let is_said =
            day == Day::Usual || self.later.is_known() || step == Some(Difficulty::Complete);
        step.filter(|_| is_said)
    }

    /// Whether the hand works and nobody asked what becomes of it on a bad day.
    pub fn bad_day_is_open(&self) -> bool {
        self.works() && !self.later.is_known()
    }

    /// Whether the step for an ability on a usual day is at least `step`.
    /// Not asked is not "at least" anything.
    pub fn at_least(&self, ability: Ability, step: Difficulty) -> bool {
        self.step(ability, Day::Usual).is_some_and(|s| s >= step)
    }

    /// Whether it may press unawares what lies under it: it is on the bar, and
    /// letting go or keeping steady takes great effort, or the arm moves by
    /// itself. A hand that rests may do so until somebody said that it keeps
    /// steady and lets go (our judgement): nothing under it is of use anyway.
    pub fn may_press_unawares(&self) -> bool {
        let rests = self.place.value == Some(HandPlace::Rests);
        let takes_great_effort = |ability| match self.step(ability, Day::Usual) {
            Some(step) => step >= Difficulty::Severe,
            None => rests,
        };
        self.on_bar()
            && (takes_great_effort(Ability::LetsGo)
                || takes_great_effort(Ability::Steady)
                || self.moves_by_itself.is_yes())
    }

    /// Whether it may be counted on to steer: it works, and steering alone is
    /// not step 3 or 4. Not asked is counted on here; a finding of its own says
    /// that it was not asked.
    pub fn steers(&self) -> bool {
        self.works()
            && self
                .step(Ability::SteersAlone, Day::Usual)
                .is_none_or(|step| step.standing() == Standing::Able)
    }

    /// A hand that is not to be counted on does nothing then, whatever was not
    /// asked about it.
    fn on_day(&self, step: Option<Difficulty>, day: Day) -> Option<Difficulty> {
        match (day, self.later.value) {
            (Day::Usual, _) | (Day::Bad, None | Some(Later::Same)) => step,
            (Day::Bad, Some(Later::OneStepHarder)) => step.map(Difficulty::one_harder),
            (Day::Bad, Some(Later::DoNotCountOnIt)) => Some(Difficulty::Complete),
        }
    }
}

/// What is kept with answers that one tap gives together.
fn together(evidence: Option<Evidence>) -> Option<Evidence> {
    evidence.map(|evidence| Evidence {
        in_one_tap: true,
        ..evidence
    })
}

/// Both hands.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Hands {
    /// The left hand.
    pub left: Hand,
    /// The right hand.
    pub right: Hand,
}

impl Hands {
    /// The hand of this side.
    pub fn get(&self, side: Side) -> &Hand {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }

    /// The hand of this side, to change.
    pub fn get_mut(&mut self, side: Side) -> &mut Hand {
        match side {
            Side::Left => &mut self.left,
            Side::Right => &mut self.right,
        }
    }

    /// The sides whose hands may be counted on to steer.
    pub fn steering(&self) -> Vec<Side> {
        let sides = Side::ALL.iter().copied();
        sides.filter(|side| self.get(*side).steers()).collect()
    }

    /// Whether the other hand steers while this one is off its place.
    pub fn steer_without(&self, side: Side) -> bool {
        self.get(side.other()).steers()
    }

    /// Of which hands that work nobody asked about a bad day: "bad day not
    /// asked", "bad day not asked of the left hand".
    pub fn bad_day_open(&self) -> Option<String> {
        let open = Side::ALL
            .iter()
            .filter(|side| self.get(**side).bad_day_is_open());
        match &open.collect::<Vec<_>>()[..] {
            [] => None,
            [side] if self.get(side.other()).works() => {
                Some(format!("bad day not asked of the {side} hand"))
            }
            _ => Some("bad day not asked".into()),
        }
    }

    /// Left and right exchanged.
    pub fn mirrored(&self) -> Hands {
        Hands {
            left: self.right.clone(),
            right: self.left.clone(),
        }
    }
}
