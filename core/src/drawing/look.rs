//! What a slot says: place in a few words, function, and how the button stands.

use super::icons::Icon;
use crate::cockpit::{Bike, ButtonId, ButtonPart, Control, ControlKind, Freedom, Zone};
use crate::function::Function;
use crate::layout::Layout;

/// How a button stands, told by line and words on the drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Plugged in or paired, and may be given any function.
    Free,
    /// May be given only some functions.
    Limited,
    /// Does what the button with this balloon number does.
    Copies(Option<usize>),
    /// Its function cannot be changed.
    Fixed,
    /// Unplugged: does nothing.
    Unplugged,
}

impl Standing {
    /// Class name for the style sheet.
    pub const fn class(self) -> &'static str {
        match self {
            Standing::Free => "free",
            Standing::Limited => "limited",
            Standing::Copies(_) => "copies",
            Standing::Fixed => "fixed",
            Standing::Unplugged => "unplugged",
        }
    }

    /// A word beside the place; none where there is nothing to add.
    pub fn words(self) -> Option<String> {
        match self {
            Standing::Free => None,
            Standing::Limited => Some("limited".into()),
            Standing::Copies(Some(number)) => Some(format!("copies {number}")),
            Standing::Copies(None) => Some("copies".into()),
            Standing::Fixed => Some("fixed".into()),
            // The slot's second line says so.
            Standing::Unplugged => None,
        }
    }
}

/// What the slot of a button says in one layout.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Look {
    /// Where it is, in at most 16 characters: "inner paddle", "tops, near". The side is told
    /// by where the slot stands.
    pub place: String,
    /// What a tap does.
    pub function: Option<Function>,
    /// Whether pressing it does anything: tap, hold or chord.
    pub live: bool,
    /// How it stands.
    pub standing: Standing,
}

impl Look {
    /// The look of a button; `None` if it is not on the bike.
    pub fn of(bike: &Bike, layout: &Layout, button: ButtonId) -> Option<Look> {
        let (control, found) = bike.button(button)?;
        let standing = if control.connected {
            match &found.freedom {
                Freedom::Free => Standing::Free,
                Freedom::Limited(_) => Standing::Limited,
                Freedom::Copies(original) => Standing::Copies(bike.balloon(*original)),
                Freedom::Fixed(_) => Standing::Fixed,
            }
        } else {
            Standing::Unplugged
        };
        Some(Look {
            place: short_place(control, button.part),
            function: layout.tap(bike, button),
            live: layout.is_live(bike, button),
            standing,
        })
    }

    /// What a tap does, in words.
    pub fn words(&self) -> String {
        match self.function {
            Some(function) => function.to_string(),
            None if self.standing == Standing::Unplugged => "unplugged".into(),
            None if self.live => "no tap".into(),
            None => "left blank".into(),
        }
    }

    /// The icons beside the words: what it works on, and which way.
    pub fn icons(&self) -> Vec<Icon> {
        match self.function {
            Some(function) => {
                let (what, way) = Icon::of_function(function);
                std::iter::once(what).chain(way).collect()
            }
            None if self.standing == Standing::Unplugged => vec![Icon::Unplug],
            None => vec![Icon::Blank],
        }
    }
}

fn short_place(control: &Control, part: ButtonPart) -> String {
    let where_to = match control.zone {
        Zone::Hoods => "hood",
        Zone::Tops => "tops",
        Zone::Drops => "drops",
        Zone::Stem => "stem",
        Zone::Tip => "tip",
        Zone::BaseBar => "base bar",
        Zone::Grip => "thumb",
        Zone::SideGrip => "side grip",
    };
    let which = match part {
        ButtonPart::Near => "near",
        ButtonPart::Far => "far",
        ButtonPart::Upper => "upper",
        ButtonPart::Lower => "lower",
        ButtonPart::Single => "button",
        _ => return part.to_string(),
    };
    match (control.kind, part) {
        (ControlKind::SprintButton, ButtonPart::Single) => "sprint button".into(),
        (_, ButtonPart::Single) => format!("{where_to} button"),
        _ => format!("{where_to}, {which}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::vocabulary::Vocabulary;
    use std::collections::BTreeSet;

    #[test]
    fn places_are_short_and_differ_within_a_side() {
        for id in TemplateId::ALL {
            let plan = template(*id).plan("Test");
            let mut seen = BTreeSet::new();
            for (button, control, _) in plan.bike.buttons() {
                let look = Look::of(&plan.bike, plan.layout(), button).expect("it is on the bike");
                assert!(look.place.len() <= 16, "{id}: {}", look.place);
                assert!(
                    seen.insert((control.side, look.place.clone())),
                    "{id}: {}",
                    look.place
                );
            }
        }
    }

    #[test]
    fn a_sprint_button_is_fixed_until_it_is_unplugged() {
        let mut plan = template(TemplateId::RoadPods).plan("Test");
        let at = plan
            .bike
            .controls
            .iter()
            .position(|c| c.kind == ControlKind::SprintButton)
            .expect("it has one");
        let button = plan.bike.controls[at].button_id(ButtonPart::Single);
        let look = |plan: &crate::plan::Plan| {
            Look::of(&plan.bike, plan.layout(), button).expect("it is on the bike")
        };
        assert_eq!(look(&plan).standing, Standing::Fixed);
        assert!(look(&plan).function.is_some());
        plan.bike.controls[at].connected = false;
        assert_eq!(look(&plan).standing, Standing::Unplugged);
        assert!(!look(&plan).live);
        assert_eq!(look(&plan).words(), "unplugged");
    }

    #[test]
    fn a_copying_button_names_the_balloon_that_it_copies() {
        let mut plan = template(TemplateId::RoadPods).plan("Test");
        let ids: Vec<ButtonId> = plan.bike.buttons().iter().map(|(id, ..)| *id).collect();
        let (from, to) = (ids[0], ids[1]);
        for control in &mut plan.bike.controls {
            for button in &mut control.buttons {
                let id = ButtonId {
                    control: control.id,
                    part: button.part,
                };
                if id == to {
                    button.freedom = Freedom::Copies(from);
                }
            }
        }
        let look = Look::of(&plan.bike, plan.layout(), to).expect("it is on the bike");
        assert_eq!(look.standing.words().as_deref(), Some("copies 1"));
    }
}
