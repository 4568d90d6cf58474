//! What is written into the record: only ever added to.

use std::sync::Arc;

use super::EditError;
use super::plan::find_layout;
use crate::cockpit::ButtonId;
use crate::document;
use crate::finding::{Place, Role};
use crate::layout::LayoutId;
use crate::limits::{MEASURED, MOST_KEPT};
use crate::plan::Plan;
use crate::proof;
use crate::record::{Check, Code, Entry, Matter, Pin, Step};
use crate::review::{Audience, MOST_CHANGES, Review};
use crate::revision;
use crate::text::{Date, Text};

/// Something is written into the record.
#[derive(Debug, Clone, PartialEq)]
pub struct RecordEdit {
    /// Who writes it; a typed name is not a signature.
    pub by: Text,
    /// In what role.
    pub role: Role,
    /// The day.
    pub date: Option<Date>,
    /// The layout it is about; `None` is the one in hand.
    pub layout: Option<LayoutId>,
    /// What is written.
    pub matter: Matter,
}

impl RecordEdit {
    pub(super) fn label(&self) -> String {
        match &self.matter {
            Matter::Review(_) => "write a review".into(),
            Matter::Addendum { .. } => "add to an entry".into(),
            Matter::Withdrawn { .. } => "withdraw an entry".into(),
            Matter::Comment { .. } => "comment".into(),
            Matter::Words(_) => "write the rider’s own words".into(),
            Matter::Mark { kind, .. } => format!("mark a button: {kind}"),
            Matter::Step(step) => format!("{}: {}", step.check, step.outcome),
            Matter::Again(check) => format!("begin the {check} again"),
            Matter::Practice(_) => "keep a practice session".into(),
            Matter::Sent(_) => "send a practice session along".into(),
            Matter::Other => "write into the record".into(),
        }
    }

    pub(super) fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        // Merged plans may hold more; room is left for them.
        const MOST: usize = MOST_KEPT / 4;
        if plan.record.entries.len() >= MOST {
            return Err(EditError::TooMany {
                what: "entries in its record",
                limit: MOST,
            });
        }
        self.may_write(plan)?;
        let about = match self.layout {
            Some(id) => find_layout(plan, id)?,
            None => plan.layout(),
        };
        let turn = plan.record.entries.iter().map(|entry| entry.turn).max();
        let mut entry = Entry {
            id: Code::of(""),
            turn: turn.unwrap_or(0).saturating_add(1),
            by: self.by.clone(),
            role: self.role,
            date: self.date,
            revision: plan.revision,
            code: revision::code_of(plan, about),
            hands: revision::hands_code(plan),
            matter: self.matter.clone(),
        };
        entry.id = Code::of(&document::entry(&entry));
        plan.record.entries.push(Arc::new(entry));
        plan.record.put_in_order();
        Ok(())
    }

    /// A day to look at it again is not before the day of the review.
    fn is_to_come(&self, review: &Review) -> Result<(), EditError> {
        let by = review.trial.as_ref().and_then(|trial| trial.review_by);
        let past = |day: &Date| self.date.is_some_and(|today| *day < today);
        match by.into_iter().chain(review.again_on).find(past) {
            Some(day) => refuse(&format!(
                "{day} is before the day of this review. Choose a later day to review it again."
            )),
            None => Ok(()),
        }
    }

    fn may_write(&self, plan: &Plan) -> Result<(), EditError> {
        match &self.matter {
            Matter::Review(review) => {
                self.only(&[Role::Clinician], "A review")?;
                self.needs_name("A review")?;
                review.is_whole()?;
                self.is_to_come(review)?;
                if review.changes.len() > MOST_CHANGES {
                    return Err(EditError::TooMany {
                        what: "changes in one review",
                        limit: MOST_CHANGES,
                    });
                }
                let twice = |at: usize, button: ButtonId| {
                    review.changes[..at]
                        .iter()
                        .any(|(other, _)| *other == button)
                };
                for (at, (button, _)) in review.changes.iter().enumerate() {
                    on_bike(plan, *button)?;
                    if twice(at, *button) {
                        return refuse(
                            "A button is named twice among the changes. Put both into one.",
                        );
                    }
                }
                once(&review.seen)?;
                once(&review.not_assessed)?;
                once(&review.again_after)
            }
            Matter::Addendum { to, text } => {
                self.find(plan, *to)?;
                written(text, "An addendum")
            }
            Matter::Withdrawn { what, reason } => self.may_withdraw(plan, *what, reason),
            Matter::Comment { on, audience, text } => {
                written(text, "A comment")?;
                if *audience == Audience::RiderAndClinician && self.role == Role::Shop {
                    return refuse(
                        "A comment for rider and clinician only is written by one of them. Choose everyone.",
                    );
                }
                match on {
                    Pin::Place(Place::Button(button)) => on_bike(plan, *button),
                    Pin::Place(Place::Hand(_)) | Pin::Finding(_) | Pin::Whole => Ok(()),
                    Pin::Place(_) => refuse(
                        "A comment is pinned to a button, a hand, a finding or the whole plan. Choose one of them.",
                    ),
                }
            }
            Matter::Words(text) => {
                self.only(&[Role::Rider], "What stands among the rider’s own words")?;
                written(text, "An entry of own words")
            }
            Matter::Mark { button, .. } => {
                self.only(&[Role::Rider], "A mark on a button")?;
                on_bike(plan, *button)
            }
            Matter::Step(step) => self.may_step(plan, step),
            Matter::Again(check) => self.may_check(*check),
            Matter::Practice(practised) => {
                self.only(&[Role::Rider], "A practice session")?;
                match plan.layouts.iter().any(|l| l.id == practised.layout) {
                    true => Ok(()),
                    false => Err(EditError::NoSuchLayout),
                }
            }
            Matter::Sent(id) => {
                self.only(&[Role::Rider], "Sending a practice session")?;
                match self.find(plan, *id)?.matter {
                    Matter::Practice(_) => Ok(()),
                    _ => refuse("Only a practice session is sent along. Choose one."),
                }
            }
            Matter::Other => refuse("An entry says something. Choose what to write."),
        }
    }

    /// Who wrote something may withdraw it, and nobody else.
    fn may_withdraw(&self, plan: &Plan, what: Code, reason: &Text) -> Result<(), EditError> {
        let entry = self.find(plan, what)?;
        if !entry.is_by(&self.by, self.role) {
            return Err(EditError::NotPossible(format!(
                "Only {} may withdraw this entry. Write a comment instead.",
                whose(entry)
            )));
        }
        if plan.record.withdrawn(what).is_some() {
            return refuse("This entry is withdrawn already. Nothing more is needed.");
        }
        match &entry.matter {
            Matter::Withdrawn { .. } | Matter::Addendum { .. } | Matter::Step(_) => {
                refuse("Such an entry cannot be withdrawn. Add to it, or do the step again.")
            }
            Matter::Review(_) => written(reason, "Withdrawing a review"),
            _ => Ok(()),
        }
    }

    fn may_step(&self, plan: &Plan, step: &Step) -> Result<(), EditError> {
        self.may_check(step.check)?;
        if let Some(words) = proof::refusal(plan, step) {
            return refuse(words);
        }
        if step.step == proof::PROVED {
            self.needs_name("The last word of a check")?;
        }
        match step.measured {
            Some(mm) => super::rider::within("What is measured", mm, MEASURED),
            None => Ok(()),
        }
    }

    fn may_check(&self, check: Check) -> Result<(), EditError> {
        match check {
            Check::Stand => self.only(&[Role::Shop], "The stand check"),
            Check::Rider => self.only(&[Role::Shop, Role::Rider], "The rider check"),
            Check::FirstRide => self.only(&[Role::Shop, Role::Rider], "The first-ride record"),
        }
    }

    fn find<'a>(&self, plan: &'a Plan, id: Code) -> Result<&'a Entry, EditError> {
        plan.record.entry(id).ok_or_else(|| {
            EditError::NotPossible(format!(
                "Entry {id} is not in this plan. Choose one that is."
            ))
        })
    }

    fn only(&self, roles: &[Role], what: &str) -> Result<(), EditError> {
        if roles.contains(&self.role) {
            return Ok(());
        }
        let who = crate::text::list(roles, "or");
        Err(EditError::NotPossible(format!(
            "{what} is for the {who} to write. Hand the plan over, or write a comment."
        )))
    }

    fn needs_name(&self, what: &str) -> Result<(), EditError> {
        match self.by.is_empty() {
            true => Err(EditError::NotPossible(format!(
                "{what} needs a name. Write who gives it; a typed name is not a signature."
            ))),
            false => Ok(()),
        }
    }
}

fn whose(entry: &Entry) -> String {
    match entry.by.as_str() {
        "" => format!("the {}", entry.role),
        name => format!("{name} ({})", entry.role),
    }
}

fn once<T: PartialEq>(items: &[T]) -> Result<(), EditError> {
    let twice = |at: usize| items[..at].contains(&items[at]);
    match (0..items.len()).any(twice) {
        true => refuse("Something is named twice in the review. Take one of the two out."),
        false => Ok(()),
    }
}

fn refuse(words: &str) -> Result<(), EditError> {
    Err(EditError::NotPossible(words.into()))
}

fn written(text: &Text, what: &str) -> Result<(), EditError> {
    match text.is_empty() {
        true => Err(EditError::NotPossible(format!(
            "{what} needs words. Write some."
        ))),
        false => Ok(()),
    }
}

fn on_bike(plan: &Plan, button: ButtonId) -> Result<(), EditError> {
    match plan.bike.button(button) {
        Some(_) => Ok(()),
        None => Err(EditError::NoSuchButton {
            place: button.part.to_string(),
        }),
    }
}
