//! What a ride asks of each contact and hand, counted while it goes.

use std::collections::VecDeque;

use super::event::{Clash, Event, What};
use crate::rider::{Contact, Side};
use crate::vocabulary::Vocabulary;

/// Presses with gaps below this belong to one burst, in seconds.
pub const BURST_GAP: f64 = 3.0;

/// So many presses make a burst (our judgement: two are one act).
pub const BURST_LEAST: u32 = 3;

/// What a ride asks of one contact, or of one hand with all its contacts.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Work {
    /// Presses, a hold counted once.
    pub presses: u32,
    /// Presses in the worst minute.
    pub worst_minute: u32,
    /// Presses in the worst ten minutes.
    pub worst_ten_minutes: u32,
    /// Runs of [`BURST_LEAST`] presses and more with gaps below [`BURST_GAP`].
    pub bursts: u32,
    /// Presses of the longest burst.
    pub longest_burst: u32,
    /// The longest time without a press or a pull, in seconds.
    pub longest_rest: f64,
    /// Holds.
    pub holds: u32,
    /// The longest hold, in seconds.
    pub longest_hold: f64,
    /// All holds together, in seconds.
    pub held: f64,
    /// Brake pulls.
    pub pulls: u32,
    /// The longest unbroken pull, in seconds.
    pub longest_pull: f64,
    /// All pulls together, in seconds.
    pub pulled: f64,
    /// Presses while the same hand brakes; of a contact, while that contact
    /// brakes.
    pub clashes: u32,
    /// Presses in each third of the road.
    pub thirds: [u32; 3],
}

/// What a ride asks of one hand beyond presses and pulls.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HandWork {
    /// Presses and pulls with all contacts.
    pub work: Work,
    /// Presses while a contact of this hand brakes and that very contact
    /// presses.
    pub same_contact: u32,
    /// Shifts that waited because the hand braked.
    pub delays: u32,
    /// The longest wait, in seconds.
    pub longest_delay: f64,
    /// Moves along the bar.
    pub moves: u32,
    /// How often the hand left its place to press or pull.
    pub offs: u32,
    /// The highest speed while it left its place or moved, in m/s.
    pub fastest_off: f64,
    /// How often its brake was wanted while it was away.
    pub wanted: u32,
    /// For how long at worst, in seconds.
    pub longest_wanted: f64,
}

/// What a ride asks in all.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Load {
    /// Each contact that pressed or pulled, in order of hand and contact.
    pub contacts: Vec<(Side, Contact, Work)>,
    /// The left hand.
    pub left: HandWork,
    /// The right hand.
    pub right: HandWork,
    /// Presses that moved the front derailleur.
    pub front: u32,
    /// Shifts that could not be called up where they were wanted.
    pub missing: u32,
    /// Times that a brake was wanted and no hand pulled one.
    pub unbraked: u32,
    /// How long each third of the road took, in seconds.
    pub seconds: [f64; 3],
}

impl Load {
    /// What is asked of a hand; a hand without work has zeros.
    pub fn hand(&self, side: Side) -> &HandWork {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }

    /// How long the ride took, in hours.
    pub fn hours(&self) -> f64 {
        self.seconds.iter().sum::<f64>() / 3600.0
    }

    /// How often something comes in an hour.
    pub fn per_hour(&self, count: u32) -> f64 {
        match self.hours() {
            hours if hours > 0.0 => f64::from(count) / hours,
            _ => 0.0,
        }
    }

    /// The presses of both hands.
    pub fn presses(&self) -> u32 {
        self.left.work.presses + self.right.work.presses
    }

    /// The brake pulls of both hands.
    pub fn pulls(&self) -> u32 {
        self.left.work.pulls + self.right.work.pulls
    }

    /// Whether the hands pull brakes more often than they press buttons.
    pub fn is_mostly_braking(&self) -> bool {
        self.pulls() > self.presses()
    }

    /// Presses in an hour of the first and of the last third of the road.
    pub fn first_and_last(&self, work: &Work) -> [f64; 2] {
        [0, 2].map(|third| match self.seconds[third] {
            seconds if seconds > 0.0 => f64::from(work.thirds[third]) * 3600.0 / seconds,
            _ => 0.0,
        })
    }
}

/// Counts one contact or hand while the ride goes. What it remembers of the
/// past is bounded by what one can press in ten minutes.
#[derive(Debug, Clone, Default)]
struct Counter {
    work: Work,
    recent: VecDeque<f64>,
    burst: u32,
    rest_since: f64,
}

impl Counter {
    fn press(&mut self, time: f64, held: f64, third: usize) {
        let work = &mut self.work;
        work.presses += 1;
        work.thirds[third] += 1;
        if held > 0.0 {
            work.holds += 1;
            work.longest_hold = work.longest_hold.max(held);
            work.held += held;
        }
        let last = self.recent.back().copied();
        self.burst = match last {
            Some(last) if time - last < BURST_GAP => self.burst + 1,
            _ => 1,
        };
        work.bursts += u32::from(self.burst == BURST_LEAST);
        if self.burst >= BURST_LEAST {
            work.longest_burst = work.longest_burst.max(self.burst);
        }
        self.recent.push_back(time);
        while self
            .recent
            .front()
            .is_some_and(|first| time - first >= 600.0)
        {
            self.recent.pop_front();
        }
        let in_minute = self.recent.iter().rev().take_while(|t| time - **t < 60.0);
        work.worst_minute = work.worst_minute.max(in_minute.count() as u32);
        work.worst_ten_minutes = work.worst_ten_minutes.max(self.recent.len() as u32);
        self.rests_until(time, time + held);
    }

    fn pull(&mut self, time: f64, seconds: f64) {
        self.work.pulls += 1;
        self.work.longest_pull = self.work.longest_pull.max(seconds);
        self.work.pulled += seconds;
        self.rests_until(time, time + seconds);
    }

    fn rests_until(&mut self, time: f64, busy: f64) {
        let rest = time - self.rest_since;
        self.work.longest_rest = self.work.longest_rest.max(rest);
        self.rest_since = self.rest_since.max(busy);
    }

    /// What came of it by a time.
    fn by(&self, time: f64) -> Work {
        let mut work = self.work.clone();
        work.longest_rest = work.longest_rest.max(time - self.rest_since);
        work
    }
}

/// Counts a ride while it goes.
#[derive(Debug, Clone, Default)]
pub(super) struct Counters {
    contacts: Vec<(Side, Contact, Counter)>,
    hands: [Counter; 2],
    /// All but the work of the counters.
    load: Load,
}

impl Counters {
    /// Time spent in a third of the road.
    pub(super) fn spend(&mut self, third: usize, seconds: f64) {
        self.load.seconds[third] += seconds;
    }

    /// Counts an event in a third of the road.
    pub(super) fn count(&mut self, event: &Event, third: usize, front: bool) {
        let time = event.time;
        match event.what {
            What::Press {
                hand,
                contact,
                held,
                clash,
                ..
            } => {
                self.load.front += u32::from(front);
                let of_contact = self.contact(hand, contact);
                of_contact.press(time, held, third);
                of_contact.work.clashes += u32::from(clash == Clash::Contact);
                let of_hand = &mut self.hands[hand as usize];
                of_hand.press(time, held, third);
                of_hand.work.clashes += u32::from(clash != Clash::No);
                self.hand(hand).same_contact += u32::from(clash == Clash::Contact);
            }
            What::Pull {
                hand,
                contact,
                seconds,
                ..
            } => {
                self.contact(hand, contact).pull(time, seconds);
                self.hands[hand as usize].pull(time, seconds);
            }
            What::Delay { hand, seconds, .. } => {
                let hand = self.hand(hand);
                hand.delays += 1;
                hand.longest_delay = hand.longest_delay.max(seconds);
            }
            What::Move { hand, .. } => {
                let hand = self.hand(hand);
                hand.moves += 1;
                hand.fastest_off = hand.fastest_off.max(event.speed);
            }
            What::Off { hand } => {
                let hand = self.hand(hand);
                hand.offs += 1;
                hand.fastest_off = hand.fastest_off.max(event.speed);
            }
            What::Wanted { hand, seconds } => {
                let hand = self.hand(hand);
                hand.wanted += 1;
                hand.longest_wanted = hand.longest_wanted.max(seconds);
            }
            What::Missing { .. } => self.load.missing += 1,
            What::NoBrake => self.load.unbraked += 1,
        }
    }

    fn hand(&mut self, side: Side) -> &mut HandWork {
        match side {
            Side::Left => &mut self.load.left,
            Side::Right => &mut self.load.right,
        }
    }

    fn contact(&mut self, hand: Side, contact: Contact) -> &mut Counter {
        let key = (hand, contact);
        let at = self.contacts.iter().position(|(h, c, _)| (*h, *c) >= key);
        let at = at.unwrap_or(self.contacts.len());
        let is_there = self
            .contacts
            .get(at)
            .is_some_and(|(h, c, _)| (*h, *c) == key);
        if !is_there {
            self.contacts
                .insert(at, (hand, contact, Counter::default()));
        }
        &mut self.contacts[at].2
    }

    /// What the ride asked by a time.
    pub(super) fn by(&self, time: f64) -> Load {
        let mut load = self.load.clone();
        for side in Side::ALL {
            let work = self.hands[*side as usize].by(time);
            match side {
                Side::Left => load.left.work = work,
                Side::Right => load.right.work = work,
            }
        }
        for (hand, contact, counter) in &self.contacts {
            load.contacts.push((*hand, *contact, counter.by(time)));
        }
        load
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cockpit::{ButtonId, ButtonPart, ControlId};
    use crate::coverage::Via;
    use crate::function::Function;

    fn press(time: f64, hand: Side, contact: Contact, held: f64, clash: Clash) -> Event {
        let button = ButtonId {
            control: ControlId(1),
            part: ButtonPart::Near,
        };
        Event {
            time,
            at: time,
            speed: 5.0,
            what: What::Press {
                function: Function::RearEasier,
                via: Via::Tap(button),
                hand,
                contact,
                held,
                clash,
                from: 0,
                to: 1,
            },
        }
    }

    fn counted(events: &[Event], end: f64) -> Load {
        let mut counters = Counters::default();
        for event in events {
            counters.count(event, ((event.time / end * 3.0) as usize).min(2), false);
        }
        (0..3).for_each(|third| counters.spend(third, end / 3.0));
        counters.by(end)
    }

    #[test]
    fn windows_bursts_and_rests() {
        let times = [10.0, 11.0, 12.0, 30.0, 65.0, 70.5, 700.0];
        let events = times.map(|t| press(t, Side::Left, Contact::Thumb, 0.0, Clash::No));
        let load = counted(&events, 900.0);
        let work = &load.left.work;
        assert_eq!(
            (work.presses, work.worst_minute, work.worst_ten_minutes),
            (7, 5, 6)
        );
        assert_eq!((work.bursts, work.longest_burst), (1, 3));
        assert_eq!(work.longest_rest, 700.0 - 70.5);
        assert_eq!(work.thirds, [6, 0, 1]);
        assert_eq!(load.per_hour(work.presses), 28.0);
        assert_eq!(load.first_and_last(work), [72.0, 12.0]);
        assert_eq!(load.right, {
            let mut idle = HandWork::default();
            idle.work.longest_rest = 900.0;
            idle
        });
    }

    #[test]
    fn holds_and_clashes_are_told_apart() {
        let load = counted(
            &[
                press(5.0, Side::Right, Contact::Index, 1.2, Clash::No),
                press(20.0, Side::Right, Contact::Index, 0.0, Clash::Contact),
                press(40.0, Side::Right, Contact::Thumb, 0.8, Clash::Hand),
            ],
            60.0,
        );
        let hand = &load.right;
        assert_eq!(
            (hand.work.holds, hand.work.longest_hold, hand.work.held),
            (2, 1.2, 2.0)
        );
        assert_eq!((hand.work.clashes, hand.same_contact), (2, 1));
        let by_contact: Vec<_> = load
            .contacts
            .iter()
            .map(|(_, c, w)| (*c, w.clashes))
            .collect();
        assert_eq!(by_contact, [(Contact::Thumb, 0), (Contact::Index, 1)]);
    }
}
