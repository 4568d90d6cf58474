//! How hands press one button.

use super::{Via, Way, harder};
use crate::cockpit::{BarSide, Button, ButtonId, Control, Ease, HandPosition, Press};
use crate::plan::Plan;
use crate::reach::{self, Reach};
use crate::rider::{Ability, Contact, Day, Difficulty, Hand, Side};
use crate::vocabulary::Vocabulary;

/// How each working hand presses a button from a position on a day, whatever
/// the button does; presses that a hand cannot make are there as step 4.
pub fn presses(plan: &Plan, id: ButtonId, position: HandPosition, day: Day) -> Vec<Way> {
    let Some((control, button)) = plan.bike.button(id) else {
        return Vec::new();
    };
    let mut ways = Vec::new();
    for side in Side::ALL {
        let hand = plan.rider.hands.get(*side);
        if !hand.works() {
            continue;
        }
        let own = control.side == BarSide::from(*side) || control.side == BarSide::Centre;
        let reaches = if own {
            reach::of_button(control, button, position)
        } else {
            crossing_over(control, button)
        };
        let in_use = reaches.iter().filter(|r| is_in_use(hand, r.contact));
        ways.extend(in_use.map(|reach| Way {
            via: Via::Tap(id),
            hand: *side,
            contact: reach.contact,
            ease: reach.ease,
            step: step(hand, button, reach, day),
            reason: reach.reason,
        }));
    }
    ways
}

/// A hand that crosses over leaves its place, so its position does not matter:
/// it presses with what presses there from anywhere.
fn crossing_over(control: &Control, button: &Button) -> Vec<Reach> {
    let target = reach::Target::of_button(control, button);
    let mut reaches: Vec<Reach> = Vec::new();
    let natural = reach::REACH
        .iter()
        .filter(|row| row.target == target && row.ease == Ease::Natural)
        .flat_map(|row| row.contacts);
    for contact in natural {
        if !reaches.iter().any(|reach| reach.contact == *contact) {
            reaches.push(Reach {
                contact: *contact,
                ease: Ease::CrossOver,
                reason: "the other hand must let go and cross over",
            });
        }
    }
    reaches
}

/// What a hand makes of one press: the hardest of pressing with the contact, of
/// swinging a paddle where the press is a sweep, and of moving along the bar
/// where the hand must leave its place.
fn step(hand: &Hand, button: &Button, reach: &Reach, day: Day) -> Option<Difficulty> {
    let mut step = hand.press_step(reach.contact, button.press, day);
    if reach.ease >= Ease::Move {
        step = harder(step, hand.step(Ability::MovesAlong, day));
    }
    step
}

/// Digits are in use until said otherwise; other contacts only once answered.
fn is_in_use(hand: &Hand, contact: Contact) -> bool {
    contact.is_digit() || hand.contacts.value(contact).is_some()
}

impl Hand {
    /// How hard pressing a button with a contact is on a day: the harder of the
    /// contact's own step and of swinging a paddle, where the press is a sweep.
    /// `None` is not asked.
    pub fn press_step(&self, contact: Contact, press: Press, day: Day) -> Option<Difficulty> {
        let own = self.contact_step(contact, day);
        match press {
            Press::Short => own,
            Press::Sweep => harder(own, self.step(Ability::SwingsPaddle, day)),
        }
    }
}
