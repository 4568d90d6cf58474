//! What is found while a file becomes a plan: notes for the reader, and the
//! first thing that cannot be.

use super::DocumentError;
use crate::cockpit::{Bike, ButtonId, ControlId, Freedom};
use crate::plan::Plan;
use crate::shift_plan::ShiftPlanKind;
use crate::text::Text;

vocabulary! {
    /// What a note is about.
    pub enum NoteKind as "note" {
        /// Something was changed so that it can be kept.
        Mended = "mended", "mended";
        /// Something this version does not know is kept as it came.
        Unknown = "unknown", "not known";
        /// Something names what is not there; it is kept and does nothing.
        Loose = "loose", "names nothing";
    }
}

/// Something that people should know about a file that was opened.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    /// What it is about.
    pub kind: NoteKind,
    /// The place inside the plan: `layouts[0].name`.
    pub place: String,
    /// A sentence for the reader.
    pub words: String,
}

/// Longest name of an accepted finding, in characters.
pub(super) const LONGEST_FINDING: usize = 2000;

/// Collects what is found on the way from a file to a plan.
#[derive(Default)]
pub(super) struct Reader {
    pub(super) notes: Vec<Note>,
    refused: Option<DocumentError>,
}

impl Reader {
    /// Notes something about a place.
    pub(super) fn note(&mut self, kind: NoteKind, place: &str, words: String) {
        self.notes.push(Note {
            kind,
            place: place.to_owned(),
            words,
        });
    }

    /// Something cannot be; what was refused first is what the reader is told.
    pub(super) fn refuse(&mut self, place: &str, what: impl Into<String>) {
        self.refused
            .get_or_insert_with(|| DocumentError::at(place, what));
    }

    /// Text made fit to keep, with a note where that changed it.
    pub(super) fn text(&mut self, place: &str, raw: &str) -> Text {
        let text = Text::new(raw);
        if text.as_str() != raw {
            let what = if raw.chars().count() > Text::LIMIT {
                format!("It was longer than {} characters and was cut.", Text::LIMIT)
            } else {
                "Blanks at its ends and characters that do not print were taken out.".into()
            };
            self.note(NoteKind::Mended, place, what);
        }
        text
    }

    /// Looks up everything the plan names. A lever or a layout in hand that is
    /// not there is refused; what is said of a missing button is kept with a
    /// note, and a rule speaks of it.
    pub(super) fn look_up(mut self, plan: &Plan) -> Result<Vec<Note>, DocumentError> {
        self.layouts(plan);
        self.brakes(&plan.bike);
        self.copies(&plan.bike);
        self.shift_plan(plan);
        for (at, acceptance) in plan.accepted.iter().enumerate() {
            if acceptance.finding.chars().count() > LONGEST_FINDING {
                self.refuse(
                    &format!("accepted[{at}].finding"),
                    format!("expected at most {LONGEST_FINDING} characters"),
                );
            }
        }
        self.loose(&plan.bike, "as_found", plan.as_found.keys().copied());
        match self.refused {
            Some(error) => Err(error),
            None => Ok(self.notes),
        }
    }

    fn layouts(&mut self, plan: &Plan) {
        if plan.layouts.is_empty() {
            self.refuse("layouts", "a plan has at least one layout");
        } else if !plan.layouts.iter().any(|l| l.id == plan.current) {
            let current = plan.current.0;
            self.refuse(
                "current",
                format!("there is no layout with the id {current}"),
            );
        }
        for (at, layout) in plan.layouts.iter().enumerate() {
            for (c, chord) in layout.chords.iter().enumerate() {
                if chord.first == chord.second {
                    self.refuse(
                        &format!("layouts[{at}].chords[{c}]"),
                        "expected two different buttons",
                    );
                }
            }
            let place = format!("layouts[{at}]");
            self.loose(&plan.bike, &place, layout.buttons_named());
        }
    }

    fn brakes(&mut self, bike: &Bike) {
        for (at, run) in bike.brakes.runs.iter().enumerate() {
            self.lever(bike, run.lever, &format!("bike.brakes.runs[{at}].lever"));
        }
        for (at, pair) in bike.brakes.together.iter().enumerate() {
            let place = format!("bike.brakes.together[{at}]");
            self.lever(bike, pair.first, &format!("{place}.first"));
            self.lever(bike, pair.second, &format!("{place}.second"));
        }
    }

    fn lever(&mut self, bike: &Bike, id: ControlId, place: &str) {
        match bike.control(id) {
            None => self.refuse(place, format!("there is no control with the id {id}")),
            Some(control) if control.blade.is_none() => {
                self.refuse(place, format!("control {id} has no brake blade"));
            }
            Some(_) => {}
        }
    }

    fn copies(&mut self, bike: &Bike) {
        for (at, control) in bike.controls.iter().enumerate() {
            for (b, button) in control.buttons.iter().enumerate() {
                let Freedom::Copies(original) = button.freedom else {
                    continue;
                };
                let place = format!("bike.controls[{at}].buttons[{b}].copies");
                if original == control.button_id(button.part) {
                    self.refuse(&place, "a button cannot copy itself");
                } else {
                    self.loose(bike, &place, [original]);
                }
            }
        }
    }

    fn shift_plan(&mut self, plan: &Plan) {
        let rings = plan.bike.rings;
        if (plan.shift_plan == ShiftPlanKind::SingleRing) == plan.bike.has_front_derailleur() {
            self.refuse(
                "shift_plan",
                format!(
                    "the {} plan does not go with bike.rings, which is {rings}",
                    plan.shift_plan
                ),
            );
        }
    }

    fn loose(&mut self, bike: &Bike, place: &str, buttons: impl IntoIterator<Item = ButtonId>) {
        let missing: Vec<String> = (buttons.into_iter())
            .filter(|id| bike.button(*id).is_none())
            .map(|id| id.to_string())
            .collect();
        if !missing.is_empty() {
            let words = format!(
                "It names buttons that are not on the bike: {}. They are kept and do nothing.",
                super::error::tidy(&missing.join(", "))
            );
            self.note(NoteKind::Loose, place, words);
        }
    }
}
