//! The button table.

use std::fmt;

use crate::cockpit::{Bike, Button, ButtonId, Control, Ease, Freedom, HandPosition};
use crate::coverage::press_of;
use crate::function::Function;
use crate::layout::{Hold, Layout};
use crate::ordered;
use crate::plan::Plan;
use crate::rider::{Contact, Day, Side};
use crate::situation::Situation;

/// A button's row.
#[derive(Debug, Clone, PartialEq)]
pub struct ButtonRow {
    /// Its balloon number.
    pub number: usize,
    /// The button.
    pub id: ButtonId,
    /// Where it is.
    pub place: String,
    /// What a tap did when the bike came in.
    pub was: Was,
    /// What a tap does now.
    pub now: Now,
    /// What keeping it pressed does.
    pub hold: Option<Hold>,
    /// What it does together with another button.
    pub chords: Vec<ChordWith>,
    /// Which hand and contact press it.
    pub pressed: Pressed,
}

impl ButtonRow {
    /// Whether a tap does something else than it did; `None` where what was
    /// found is not known.
    pub fn changed(&self) -> Option<bool> {
        match self.was {
            Was::NotNoted => None,
            Was::NewButton => Some(true),
            Was::Found(function) => Some(function != self.now.function()),
        }
    }
}

/// What a tap did when the bike came in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Was {
    /// Nobody wrote it down.
    NotNoted,
    /// The button was not on the bike.
    NewButton,
    /// It did this, or nothing.
    Found(Option<Function>),
}

impl fmt::Display for Was {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Was::NotNoted => f.write_str("not noted"),
            Was::NewButton => f.write_str("new"),
            Was::Found(None) => f.write_str("blank"),
            Was::Found(Some(function)) => function.fmt(f),
        }
    }
}

/// What a tap does now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Now {
    /// Its control is unplugged: nothing.
    Unplugged,
    /// Left blank: nothing.
    Blank,
    /// What it was given.
    Given(Function),
    /// What it is fixed to.
    Fixed(Function),
    /// What another button does.
    Copies {
        /// The other button's balloon.
        number: Option<usize>,
        /// What that one does.
        function: Option<Function>,
    },
}

impl Now {
    /// The function, if it has one.
    pub const fn function(self) -> Option<Function> {
        match self {
            Now::Unplugged | Now::Blank => None,
            Now::Given(function) | Now::Fixed(function) => Some(function),
            Now::Copies { function, .. } => function,
        }
    }
}

impl fmt::Display for Now {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Now::Unplugged => f.write_str("unplugged"),
            Now::Blank => f.write_str("blank"),
            Now::Given(function) => function.fmt(f),
            Now::Fixed(function) => write!(f, "{function} (fixed)"),
            Now::Copies { number, function } => {
                match function {
                    Some(function) => function.fmt(f)?,
                    None => f.write_str("blank")?,
                }
                match number {
                    Some(number) => write!(f, " (copies {number})"),
                    None => f.write_str(" (copies a missing button)"),
                }
            }
        }
    }
}

/// What a button does together with another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ChordWith {
    /// The other button's balloon; `None` if it is not on the bike.
    pub number: Option<usize>,
    /// What both do together.
    pub function: Function,
}

impl fmt::Display for ChordWith {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.number {
            Some(number) => write!(f, "with {number}: {}", self.function),
            None => write!(f, "with a missing button: {}", self.function),
        }
    }
}

/// Who presses a button.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pressed {
    /// Whether pressing does anything.
    pub live: bool,
    /// Hands and contacts, easiest position first.
    pub by: Vec<PressedBy>,
    /// Used positions from which nobody presses it.
    pub not_from: Vec<HandPosition>,
}

/// One hand and contact that press a button.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PressedBy {
    /// The hand.
    pub hand: Side,
    /// The contact.
    pub contact: Contact,
    /// Whether it stays where it is.
    pub ease: Ease,
    /// From these positions.
    pub from: Vec<HandPosition>,
}

impl fmt::Display for PressedBy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.hand, self.contact)?;
        match self.ease {
            Ease::Natural | Ease::Stretch => Ok(()),
            Ease::Move => f.write_str(", hand moves"),
            Ease::CrossOver => f.write_str(", hand crosses over"),
        }
    }
}

impl fmt::Display for Pressed {
    /// Nothing for a button that does nothing. Positions are named only where
    /// they make a difference.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.live {
            return Ok(());
        }
        if self.by.is_empty() {
            return f.write_str("no hand presses it");
        }
        let everywhere = self.by.len() == 1 && self.not_from.is_empty();
        for (at, by) in self.by.iter().enumerate() {
            if at > 0 {
                f.write_str("; ")?;
            }
            by.fmt(f)?;
            if !everywhere {
                let from: Vec<String> = by.from.iter().map(HandPosition::to_string).collect();
                write!(f, " ({})", from.join(", "))?;
            }
        }
        Ok(())
    }
}

/// Every button once, in balloon order.
pub(super) fn rows(situation: &Situation<'_>) -> Vec<ButtonRow> {
    let (plan, layout) = (situation.plan, situation.layout);
    plan.bike
        .buttons()
        .into_iter()
        .enumerate()
        .map(|(at, (id, control, button))| ButtonRow {
            number: at + 1,
            id,
            place: control.place_of(id.part),
            was: was(plan, id),
            now: now(&plan.bike, layout, id, control, button),
            hold: layout.holds.get(&id).copied().filter(|_| control.connected),
            chords: chords(&plan.bike, layout, id, control),
            pressed: pressed(situation, id),
        })
        .collect()
}

fn was(plan: &Plan, id: ButtonId) -> Was {
    if plan.as_found.is_empty() {
        return Was::NotNoted;
    }
    match plan.as_found.get(&id) {
        Some(function) => Was::Found(*function),
        None => Was::NewButton,
    }
}

fn now(bike: &Bike, layout: &Layout, id: ButtonId, control: &Control, button: &Button) -> Now {
    let tap = layout.tap(bike, id);
    match (&button.freedom, tap) {
        _ if !control.connected => Now::Unplugged,
        (Freedom::Copies(original), function) => Now::Copies {
            number: bike.balloon(*original),
            function,
        },
        (Freedom::Fixed(function), _) => Now::Fixed(*function),
        (_, Some(function)) => Now::Given(function),
        (_, None) => Now::Blank,
    }
}

fn chords(bike: &Bike, layout: &Layout, id: ButtonId, control: &Control) -> Vec<ChordWith> {
    if !control.connected {
        return Vec::new();
    }
    layout
        .chords
        .iter()
        .filter(|chord| chord.includes(id))
        .map(|chord| ChordWith {
            number: bike.balloon(if chord.first == id {
                chord.second
            } else {
                chord.first
            }),
            function: chord.function,
        })
        .collect()
}

fn pressed(situation: &Situation<'_>, id: ButtonId) -> Pressed {
    let plan = situation.plan;
    let mut by: Vec<PressedBy> = Vec::new();
    let mut not_from = Vec::new();
    for position in situation.positions() {
        let cell = press_of(plan, id, *position, Day::Usual);
        let Some(way) = cell.way() else {
            not_from.push(*position);
            continue;
        };
        let moves = |ease: Ease| ease > Ease::Stretch;
        let same = by.iter_mut().find(|p| {
            (p.hand, p.contact) == (way.hand, way.contact) && moves(p.ease) == moves(way.ease)
        });
        match same {
            Some(known) => known.from.push(*position),
            None => by.push(PressedBy {
                hand: way.hand,
                contact: way.contact,
                ease: way.ease,
                from: vec![*position],
            }),
        }
    }
    ordered::sort_by_key(&mut by, |p| p.ease);
    Pressed {
        live: situation.layout.is_live(&plan.bike, id),
        by,
        not_from,
    }
}
