//! How a session went, in words: no praise, no marks.

use super::{Total, by_contact};
use crate::cockpit::ButtonId;
use crate::plan::Plan;
use crate::record::Practised;
use crate::vocabulary::Vocabulary;

/// What is shown after a session, or of all sessions with a layout.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Report {
    /// Right with the first press: "8 of 10". Calls that showed the button are
    /// among them only where another was pressed first.
    pub right_first: String,
    /// Wrong presses.
    pub wrong: u32,
    /// Calls answered late, where that was asked for.
    pub late: Option<u32>,
    /// Presses by hand and contact, the most first: "left index finger", 12.
    pub contacts: Vec<(String, u32)>,
    /// What was mixed up, the most often first.
    pub confuses: Vec<String>,
    /// The buttons pressed, in balloon order: those that may be marked.
    pub buttons: Vec<ButtonId>,
}

impl Report {
    /// The report of all sessions with a layout.
    pub fn of_total(plan: &Plan, total: &Total) -> Report {
        Report::of(
            plan,
            &Practised {
                layout: total.layout,
                calls: total.calls,
                right_first: total.right_first,
                wrong: total.wrong,
                late: total.late,
                presses: total.presses.clone(),
                mixed_up: total.mixed_up.clone(),
            },
        )
    }

    /// The report of a session with a plan.
    pub fn of(plan: &Plan, session: &Practised) -> Report {
        let contacts = by_contact(plan, &session.presses).into_iter();
        let name = |id: ButtonId| match plan.bike.balloon(id) {
            Some(number) => format!("{number} {}", plan.bike.place_of(id)),
            None => plan.bike.place_of(id),
        };
        let mut mixed = session.mixed_up.clone();
        mixed.sort_unstable_by_key(|m| (std::cmp::Reverse(m.times), m.wanted, m.pressed));
        let confuses = mixed.iter().map(|mix_up| {
            let times = match mix_up.times {
                1 => "once".to_owned(),
                times => format!("{times} times"),
            };
            let (wanted, pressed) = (name(mix_up.wanted), name(mix_up.pressed));
            format!("Wanted {wanted}, pressed {pressed}: {times}.")
        });
        let mut buttons: Vec<ButtonId> = session.presses.iter().map(|(id, _)| *id).collect();
        buttons.extend(mixed.iter().map(|mix_up| mix_up.wanted));
        buttons.retain(|id| plan.bike.button(*id).is_some());
        buttons.sort_unstable_by_key(|id| plan.bike.balloon(*id));
        buttons.dedup();
        Report {
            right_first: match session.calls {
                0 => "none counted yet".into(),
                calls => format!("{} of {calls}", session.right_first),
            },
            wrong: session.wrong,
            late: session.late,
            contacts: contacts
                .map(|(hand, contact, times)| {
                    (format!("{} {}", hand.words(), contact.words()), times)
                })
                .collect(),
            confuses: confuses.collect(),
            buttons,
        }
    }
}
