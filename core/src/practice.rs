//! Practice at home, without the bike: which button, not how hard.
//!
//! A [`Lesson`] calls for functions and listens to presses. It begins with one
//! button and no clock, adds another once a button is found three times in a
//! row, and comes back to the rider's own mix-ups. A [`Gearing`] answers each
//! press with the gear. A [`Session`] puts both on a road: time and what goes
//! down and up come in, what is wanted and a [`RoadView`] come out. It has no
//! clock: seconds and a seed come in as arguments. What comes of it is a
//! [`Practised`] that stays with the rider until it is sent.

mod call;
mod course;
mod fingers;
mod gearing;
mod keys;
mod legs;
mod lesson;
mod report;
mod session;
mod switch;
#[cfg(test)]
mod tests;
mod view;

pub use call::{Call, Pace, Pressed, Scene};
pub use course::Course;
pub use fingers::TOGETHER;
pub use gearing::Gearing;
pub use keys::{KeySet, MOVABLE, printed};
pub use lesson::{Answer, Lesson};
pub use report::Report;
pub use session::{News, NewsKind, Session, Shown};
pub use switch::Switch;
pub use view::{HIGH, RoadView, WIDE};

use crate::cockpit::ButtonId;
use crate::coverage;
use crate::layout::LayoutId;
use crate::plan::Plan;
use crate::record::{Code, Matter, MixUp, Practised};
use crate::rider::{Contact, Day, Side};

/// What is said on the screen.
pub const GLASS: &str = "Glass teaches which button, not how hard it is to press.";

/// After so many seconds a stop is offered.
pub const OFFER_STOP_AFTER: u32 = 180;

/// How practice with a layout went, over all sessions.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Total {
    /// The layout.
    pub layout: LayoutId,
    /// Sessions.
    pub sessions: usize,
    /// Calls answered.
    pub calls: u32,
    /// Right with the first press.
    pub right_first: u32,
    /// Wrong presses.
    pub wrong: u32,
    /// Calls answered late, where the rider asked for that.
    pub late: Option<u32>,
    /// Presses of each button.
    pub presses: Vec<(ButtonId, u32)>,
    /// Presses by hand and contact, the most first.
    pub by_contact: Vec<(Side, Contact, u32)>,
    /// What confuses, the most often first.
    pub mixed_up: Vec<MixUp>,
    /// Whether the rider sends them along.
    pub sent: bool,
}

/// How practice with a layout went; `None` before the first session.
pub fn total(plan: &Plan, layout: LayoutId) -> Option<Total> {
    let mut sum = Practised {
        layout,
        calls: 0,
        right_first: 0,
        wrong: 0,
        late: None,
        presses: Vec::new(),
        mixed_up: Vec::new(),
    };
    let mut sessions = 0;
    for entry in plan.record.standing() {
        match &entry.matter {
            Matter::Practice(session) if session.layout == layout => {
                add(&mut sum, session);
                sessions += 1;
            }
            _ => {}
        }
    }
    (sessions > 0).then(|| Total {
        layout,
        sessions,
        calls: sum.calls,
        right_first: sum.right_first,
        wrong: sum.wrong,
        late: sum.late,
        by_contact: by_contact(plan, &sum.presses),
        presses: sum.presses,
        mixed_up: sum.mixed_up,
        sent: unsent(plan, layout).is_empty(),
    })
}

/// Kept sessions with a layout that the rider does not send along yet.
pub fn unsent(plan: &Plan, layout: LayoutId) -> Vec<Code> {
    let is_sent = |id: Code| {
        let mut entries = plan.record.entries.iter();
        entries.any(|entry| entry.matter == Matter::Sent(id))
    };
    let sessions = plan.record.standing().filter(|entry| match &entry.matter {
        Matter::Practice(session) => session.layout == layout && !is_sent(entry.id),
        _ => false,
    });
    sessions.map(|entry| entry.id).collect()
}

fn add(sum: &mut Practised, session: &Practised) {
    sum.calls = sum.calls.saturating_add(session.calls);
    sum.right_first = sum.right_first.saturating_add(session.right_first);
    sum.wrong = sum.wrong.saturating_add(session.wrong);
    if let Some(late) = session.late {
        sum.late = Some(sum.late.unwrap_or(0).saturating_add(late));
    }
    for (button, times) in &session.presses {
        count(&mut sum.presses, *button, *times);
    }
    for mix_up in &session.mixed_up {
        mixed(
            &mut sum.mixed_up,
            mix_up.wanted,
            mix_up.pressed,
            mix_up.times,
        );
    }
    sum.mixed_up
        .sort_unstable_by_key(|m| (std::cmp::Reverse(m.times), m.wanted, m.pressed));
}

fn count(presses: &mut Vec<(ButtonId, u32)>, button: ButtonId, times: u32) {
    match presses.iter_mut().find(|(known, _)| *known == button) {
        Some((_, sum)) => *sum = sum.saturating_add(times),
        None => presses.push((button, times)),
    }
}

fn mixed(all: &mut Vec<MixUp>, wanted: ButtonId, pressed: ButtonId, times: u32) {
    match all
        .iter_mut()
        .find(|m| (m.wanted, m.pressed) == (wanted, pressed))
    {
        Some(known) => known.times = known.times.saturating_add(times),
        None => all.push(MixUp {
            wanted,
            pressed,
            times,
        }),
    }
}

/// Presses by the hand and contact that best reach each button on a usual day.
fn by_contact(plan: &Plan, presses: &[(ButtonId, u32)]) -> Vec<(Side, Contact, u32)> {
    let mut found: Vec<(Side, Contact, u32)> = Vec::new();
    for (button, times) in presses {
        let positions = plan.positions_used();
        let mut cells = positions
            .iter()
            .map(|p| coverage::press_of(plan, *button, *p, Day::Usual));
        let Some(way) = cells.find_map(|cell| cell.way().copied()) else {
            continue;
        };
        match found
            .iter_mut()
            .find(|(hand, contact, _)| (*hand, *contact) == (way.hand, way.contact))
        {
            Some((_, _, sum)) => *sum = sum.saturating_add(*times),
            None => found.push((way.hand, way.contact, *times)),
        }
    }
    found.sort_unstable_by_key(|(hand, contact, times)| {
        (std::cmp::Reverse(*times), *hand, *contact)
    });
    found
}
