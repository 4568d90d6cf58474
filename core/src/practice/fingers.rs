//! What fingers mean: a tap, a hold, two together. As the bike takes it.

use super::Pressed;
use crate::cockpit::{Bike, ButtonId};
use crate::layout::{Hold, Layout};

/// Two buttons count as pressed together within so many seconds (our judgement:
/// a hand that is slow to close still makes it, and a tap does not seem late).
pub const TOGETHER: f64 = 0.3;

/// What comes of pressing and letting go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Act {
    /// The bike does this now.
    Does(Pressed),
    /// This is what was pressed, as an answer to a call.
    Says(Pressed),
    /// A button that is kept pressed begins to repeat.
    Repeats(ButtonId),
}

/// The buttons that are down.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Fingers {
    down: Vec<Down>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Down {
    button: ButtonId,
    since: f64,
    state: State,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum State {
    /// It may still become a hold or one of two.
    Open,
    /// It repeats.
    Held,
    /// Nothing more comes of it.
    Told,
}

impl Fingers {
    /// Buttons that are down.
    pub fn down(&self) -> impl Iterator<Item = ButtonId> + '_ {
        self.down.iter().map(|down| down.button)
    }

    /// A button goes down at a time in seconds.
    pub fn press(&mut self, bike: &Bike, layout: &Layout, button: ButtonId, now: f64) -> Vec<Act> {
        if self.down().any(|down| down == button) {
            return Vec::new();
        }
        let partner = self.down.iter_mut().find(|other| {
            other.state == State::Open && is_chord(bike, layout, other.button, button)
        });
        let mut state = State::Open;
        let mut acts = Vec::new();
        if let Some(partner) = partner {
            partner.state = State::Told;
            state = State::Told;
            let both = Pressed::Both(partner.button, button);
            acts = vec![Act::Does(both), Act::Says(both)];
        } else {
            let tap = Pressed::Tap(button);
            match (
                hold_of(bike, layout, button),
                in_chord(bike, layout, button),
            ) {
                (None, false) => {
                    state = State::Told;
                    acts = vec![Act::Does(tap), Act::Says(tap)];
                }
                // A hold shifts at once and then again.
                (Some(Hold::Repeats(_)), false) => acts = vec![Act::Does(tap)],
                _ => {}
            }
        }
        self.down.push(Down {
            button,
            since: now,
            state,
        });
        acts
    }

    /// A button is let go.
    pub fn let_go(&mut self, bike: &Bike, layout: &Layout, button: ButtonId) -> Vec<Act> {
        let Some(at) = self.down.iter().position(|down| down.button == button) else {
            return Vec::new();
        };
        match self.down.remove(at).state {
            State::Told => Vec::new(),
            State::Held => vec![Act::Says(Pressed::Held(button))],
            State::Open => tapped(bike, layout, button),
        }
    }

    /// Time passes. `trigger` is how long a button is kept pressed until a hold
    /// begins, in seconds.
    pub fn wait(&mut self, bike: &Bike, layout: &Layout, now: f64, trigger: f64) -> Vec<Act> {
        let mut acts = Vec::new();
        for down in &mut self.down {
            if down.state != State::Open {
                continue;
            }
            let (button, lasted) = (down.button, now - down.since);
            match hold_of(bike, layout, button) {
                Some(Hold::Repeats(_)) if lasted >= trigger => {
                    down.state = State::Held;
                    acts.push(Act::Repeats(button));
                }
                Some(Hold::Does(_)) if lasted >= trigger => {
                    down.state = State::Told;
                    let held = Pressed::Held(button);
                    acts.extend([Act::Does(held), Act::Says(held)]);
                }
                None if lasted >= TOGETHER => {
                    down.state = State::Told;
                    acts.extend(tapped(bike, layout, button));
                }
                _ => {}
            }
        }
        acts
    }

    /// Everything is let go without meaning anything: the page went out of sight.
    pub fn forget(&mut self) {
        self.down.clear();
    }
}

/// A tap that is known to be one only now.
fn tapped(bike: &Bike, layout: &Layout, button: ButtonId) -> Vec<Act> {
    let tap = Pressed::Tap(button);
    let was_done = matches!(hold_of(bike, layout, button), Some(Hold::Repeats(_)))
        && !in_chord(bike, layout, button);
    match was_done {
        true => vec![Act::Says(tap)],
        false => vec![Act::Does(tap), Act::Says(tap)],
    }
}

fn hold_of(bike: &Bike, layout: &Layout, button: ButtonId) -> Option<Hold> {
    let hold = layout.holds.get(&button).copied();
    hold.filter(|_| layout.is_live(bike, button))
}

fn in_chord(bike: &Bike, layout: &Layout, button: ButtonId) -> bool {
    let mut chords = layout.chords.iter();
    chords.any(|chord| chord.is_connected(bike) && chord.includes(button))
}

fn is_chord(bike: &Bike, layout: &Layout, a: ButtonId, b: ButtonId) -> bool {
    let mut chords = layout.chords.iter();
    chords.any(|chord| chord.is_connected(bike) && chord.includes(a) && chord.includes(b))
}
