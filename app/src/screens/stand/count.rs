//! Seconds counted where they are seen, for hands that are on a lever.

use std::time::Duration;

use leptos::prelude::*;

use crate::erase::view_of;
use crate::workspace::Workspace;

/// Seconds to take hold before the count begins.
const LEAD: i32 = 3;

/// A count that may be ignored: it decides nothing.
#[component]
pub fn Count(seconds: u8) -> impl IntoView {
    let workspace = Workspace::here();
    let total = i32::from(seconds);
    // Seconds that are over, below zero while hands take hold.
    let over = RwSignal::new(None::<i32>);
    // A count begun anew ends the one before.
    let turn = StoredValue::new(0_u32);
    let start = move |_| {
        turn.update_value(|turn| *turn += 1);
        over.set(Some(-LEAD));
        workspace.say(format!("Take hold. It begins in {LEAD} seconds."));
        let counting = Counting {
            workspace,
            over,
            turn: (turn, turn.get_value()),
            total,
        };
        counting.tick(1 - LEAD);
    };
    let label = move || match over.get() {
        None => format!("Count {total} seconds"),
        Some(_) => format!("Count {total} seconds again"),
    };
    view! {
        <div class="step-count">
            <button type="button" on:click=start>{label}</button>
            {view_of(move || over.get().map(|over| said(over, total)))}
        </div>
    }
}

fn said(over: i32, total: i32) -> impl IntoView {
    let (number, words) = match over {
        ..0 => (-over, "take hold"),
        over if over < total => (over, "keep on"),
        over => (over, "let go"),
    };
    view! { <p class="count-now" class:done=over == total><strong>{number}</strong>" "{words}</p> }
}

/// A count in hand.
#[derive(Clone, Copy)]
struct Counting {
    workspace: Workspace,
    over: RwSignal<Option<i32>>,
    /// The count that holds, and this one.
    turn: (StoredValue<u32>, u32),
    total: i32,
}

impl Counting {
    /// Shows one second more after a second. The step may be gone by then, and
    /// its values with it.
    fn tick(self, now: i32) {
        let next = move || {
            let (turn, mine) = self.turn;
            if turn.try_get_value() != Some(mine) {
                return;
            }
            self.over.set(Some(now));
            if now == 0 {
                self.workspace.say("Now.");
            }
            match now < self.total {
                true => self.tick(now + 1),
                false => self.workspace.say(format!("{now} seconds. Let go.")),
            }
        };
        set_timeout(next, Duration::from_secs(1));
    }
}
