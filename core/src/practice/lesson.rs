//! A lesson: which call comes next, and what a press was.

use super::call::{scene_for, words};
use super::{Call, OFFER_STOP_AFTER, Pace, Pressed, count, mixed};
use crate::cockpit::{ButtonId, HandPosition};
use crate::coverage::{Via, ways_to};
use crate::function::Function;
use crate::layout::{Hold, Layout, LayoutId};
use crate::plan::Plan;
use crate::record::Practised;
use crate::rider::Day;
use crate::situation::Situation;

/// So many times in a row a button is found before another is added.
const FOUND: u8 = 3;

/// So many times a mix-up comes back.
const AGAIN: u8 = 2;

/// A practice session with one layout.
#[derive(Debug, Clone)]
pub struct Lesson {
    plan: Plan,
    layout: Layout,
    pace: Pace,
    /// Every function that can be practised, what is needed most first.
    known: Vec<Known>,
    /// How many of them are called.
    active: usize,
    /// What was mixed up and is to come back, by its place in `known`.
    again: Vec<(usize, u8)>,
    call: Option<(usize, Call)>,
    /// Whether the button was shown when the call came.
    is_new: bool,
    missed: bool,
    turn: u32,
    random: u64,
    result: Practised,
}

#[derive(Debug, Clone)]
struct Known {
    function: Function,
    position: HandPosition,
    answers: Vec<Via>,
    /// How often it was called.
    called: u32,
    /// Found in a row.
    found: u8,
}

/// What a press was.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Answer {
    /// Right with the first press.
    RightFirst,
    /// Right after a wrong one.
    Right,
    /// Another button, and what it does.
    Wrong {
        /// What was pressed.
        pressed: Vec<ButtonId>,
        /// What it does; `None`: nothing.
        does: Option<Function>,
    },
    /// The right button, kept where a tap was wanted, or tapped where it was to
    /// be kept.
    OtherWay,
    /// No call is open.
    Nothing,
}

impl Lesson {
    /// A lesson with a layout; `None` where the plan has no such layout or
    /// nothing on it can be reached. The same seed gives the same lesson.
    pub fn new(plan: &Plan, layout: LayoutId, pace: Pace, seed: u64) -> Option<Lesson> {
        let layout = plan.layouts.iter().find(|l| l.id == layout)?.clone();
        let known = known(&Situation::of_layout(plan, &layout));
        if known.is_empty() {
            return None;
        }
        let mut lesson = Lesson {
            plan: plan.clone(),
            pace,
            known,
            active: 1,
            again: Vec::new(),
            call: None,
            is_new: false,
            missed: false,
            turn: 0,
            random: seed,
            result: Practised {
                layout: layout.id,
                calls: 0,
                right_first: 0,
                wrong: 0,
                late: None,
                presses: Vec::new(),
                mixed_up: Vec::new(),
            },
            layout,
        };
        lesson.next();
        Some(lesson)
    }

    /// The call that is open.
    pub fn call(&self) -> Option<&Call> {
        self.call.as_ref().map(|(_, call)| call)
    }

    /// The level.
    pub fn pace(&self) -> Pace {
        self.pace
    }

    /// The way that is shown: at the first call of a function, and after a wrong
    /// press. Calls that came with the button shown count only where another was
    /// pressed first.
    pub fn shows(&self) -> Option<Via> {
        let (_, call) = self.call.as_ref()?;
        (self.is_new || self.missed)
            .then(|| call.answers.first().copied())
            .flatten()
    }

    /// Whether calls answered late are counted from now on.
    pub fn count_late(&mut self, count: bool) {
        self.result.late = match count {
            true => self.result.late.or(Some(0)),
            false => None,
        };
    }

    /// The place of the call that is open was reached before it was answered.
    pub(super) fn is_late(&mut self) {
        if let Some(late) = &mut self.result.late {
            *late = late.saturating_add(1);
        }
    }

    /// Takes another level from the next call on.
    pub fn set_pace(&mut self, pace: Pace) {
        self.pace = pace;
    }

    /// Buttons that are called so far: these are shown first.
    pub fn buttons(&self) -> Vec<ButtonId> {
        let mut found = Vec::new();
        for via in self.known[..self.active]
            .iter()
            .flat_map(|known| &known.answers)
        {
            for button in via.buttons() {
                if !found.contains(&button) {
                    found.push(button);
                }
            }
        }
        found
    }

    /// What a press does on the bike, for the gear shown on the screen.
    pub fn does(&self, pressed: Pressed) -> Option<Function> {
        pressed.does(&self.plan, &self.layout)
    }

    /// Takes a press. After a right one the next call is open.
    pub fn press(&mut self, pressed: Pressed) -> Answer {
        let Some((at, call)) = self.call.clone() else {
            return Answer::Nothing;
        };
        for button in pressed.buttons() {
            count(&mut self.result.presses, button, 1);
        }
        if call
            .answers
            .iter()
            .any(|via| is_meant(pressed, *via, call.keep))
        {
            return self.right(at);
        }
        let same_buttons = |via: &Via| {
            let wanted = via.buttons();
            pressed
                .buttons()
                .iter()
                .all(|button| wanted.contains(button))
        };
        if call
            .answers
            .iter()
            .any(|via| same_buttons(via) && !matches!(via, Via::Chord(_)))
        {
            self.miss();
            return Answer::OtherWay;
        }
        self.wrong(at, &call, pressed)
    }

    fn right(&mut self, at: usize) -> Answer {
        let first = !self.missed;
        if first && !self.is_new {
            self.result.calls += 1;
            self.result.right_first += 1;
        }
        if first {
            let known = &mut self.known[at];
            known.found = known.found.saturating_add(1);
        }
        let all_found = self.known[..self.active]
            .iter()
            .all(|known| known.found >= FOUND);
        if all_found && self.again.is_empty() && self.active < self.known.len() {
            self.active += 1;
        }
        self.next();
        if first {
            Answer::RightFirst
        } else {
            Answer::Right
        }
    }

    /// The call counts from its first wrong press on, also where it came with the
    /// button shown: or every call would be right first and some presses wrong.
    fn miss(&mut self) {
        self.result.calls += u32::from(!self.missed);
        self.missed = true;
    }

    fn wrong(&mut self, at: usize, call: &Call, pressed: Pressed) -> Answer {
        self.result.wrong += 1;
        self.miss();
        self.known[at].found = 0;
        let wanted = call
            .answers
            .first()
            .and_then(|via| via.buttons().first().copied());
        if let Some((wanted, other)) = wanted.zip(pressed.buttons().first().copied()) {
            mixed(&mut self.result.mixed_up, wanted, other, 1);
        }
        let does = self.does(pressed);
        // Both of what was mixed up come back, so that they are told apart.
        let other =
            does.and_then(|does| self.known.iter().position(|known| known.function == does));
        for at in [Some(at), other].into_iter().flatten() {
            match self.again.iter_mut().find(|(known, _)| *known == at) {
                Some((_, times)) => *times = AGAIN,
                None => self.again.push((at, AGAIN)),
            }
        }
        Answer::Wrong {
            pressed: pressed.buttons(),
            does,
        }
    }

    /// Opens the next call.
    fn next(&mut self) {
        let last = self.call.as_ref().map(|(at, _)| *at);
        let at = self.choose(last);
        self.turn += 1;
        self.missed = false;
        let known = &mut self.known[at];
        self.is_new = known.called == 0;
        known.called = known.called.saturating_add(1);
        let known = &self.known[at];
        let scene = scene_for(known.function, known.called);
        // Keeping and letting go comes once a tap is found, every fourth time.
        let has_hold = known.answers.iter().any(|via| self.repeats(*via));
        let keep = has_hold && known.found >= FOUND && self.turn.is_multiple_of(4);
        self.call = Some((
            at,
            Call {
                scene,
                function: known.function,
                words: words(known.function, scene, keep),
                position: known.position,
                answers: known.answers.clone(),
                keep,
            },
        ));
    }

    fn choose(&mut self, last: Option<usize>) -> usize {
        // Mix-ups come back with something else in between.
        let alone = self.active == 1;
        let waiting = self
            .again
            .iter()
            .position(|(at, _)| alone || Some(*at) != last);
        if let Some(place) = waiting.filter(|_| self.turn.is_multiple_of(2) || alone) {
            let (at, times) = &mut self.again[place];
            let at = *at;
            *times -= 1;
            if *times == 0 {
                self.again.remove(place);
            }
            return at;
        }
        let others: Vec<usize> = (0..self.active).filter(|at| Some(*at) != last).collect();
        // What is newest comes every other time, so that it is learnt.
        let newest = self.active - 1;
        if others.contains(&newest) && self.known[newest].found < FOUND {
            return newest;
        }
        match others.len() {
            0 => 0,
            count => others[(self.random() % count as u64) as usize],
        }
    }

    fn repeats(&self, via: Via) -> bool {
        let Via::Tap(id) = via else { return false };
        matches!(self.layout.holds.get(&id), Some(Hold::Repeats(_)))
    }

    /// SplitMix64 (Steele, Lea, Flood 2014; *from memory*): enough to mix calls.
    fn random(&mut self) -> u64 {
        self.random = self.random.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.random;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Whether a stop is offered after so many seconds.
    pub fn offers_stop(&self, seconds: u32) -> bool {
        seconds >= OFFER_STOP_AFTER
    }

    /// How it went so far.
    pub fn result(&self) -> &Practised {
        &self.result
    }
}

/// Whether a press is what was called for: a kept press answers a tap only
/// where it is to be kept.
fn is_meant(pressed: Pressed, via: Via, keep: bool) -> bool {
    match (pressed, via) {
        (Pressed::Held(a), Via::Tap(b)) => keep && a == b,
        (Pressed::Tap(_), Via::Tap(_)) => !keep && pressed.is(via),
        _ => pressed.is(via),
    }
}

/// What can be practised: the functions that are reached from some position in
/// use, those that the shift plan needs first.
fn known(situation: &Situation<'_>) -> Vec<Known> {
    let mut rows: Vec<_> = situation.coverage.rows.iter().collect();
    rows.sort_unstable_by_key(|row| (!row.needed, is_late(row.function), row.function));
    let known = rows.into_iter().filter_map(|row| {
        let mut positions = situation.positions().iter();
        let position =
            positions.find(|position| situation.callable_from(row.function, **position))?;
        let cell = situation
            .coverage
            .cell(row.function, *position, Day::Usual)?;
        // The best first: it is the one that is shown.
        let mut answers: Vec<Via> = cell.way().map(|way| way.via).into_iter().collect();
        let (plan, layout) = (situation.plan, situation.layout);
        for way in ways_to(plan, layout, row.function, *position, Day::Usual) {
            if way.is_usable() && !answers.contains(&way.via) {
                answers.push(way.via);
            }
        }
        (!answers.is_empty()).then_some(Known {
            function: row.function,
            position: *position,
            answers,
            called: 0,
            found: 0,
        })
    });
    known.collect()
}

/// Easier comes first: it is wanted most in a hurry.
const fn is_late(function: Function) -> bool {
    !matches!(function, Function::RearEasier | Function::RungDown)
}
