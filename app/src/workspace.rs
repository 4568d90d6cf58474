//! What is open on the desk: one plan with its history, and what follows from
//! it.

mod foresight;

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::coverage::Coverage;
use leverwright_core::edit::{Edit, EditError, PlanEdit};
use leverwright_core::finding::{Finding, Place, Role};
use leverwright_core::history::History;
use leverwright_core::plan::Plan;
use leverwright_core::record::Desk;
use leverwright_core::rider::Day;
use leverwright_core::rules;
use leverwright_core::sheet::{Paper, SheetOptions};
use leverwright_core::situation::Situation;
use leverwright_core::summary::{self, Summary};
use leverwright_core::tally::Tally;
use leverwright_core::text::{Date, Text};

use crate::after_paint::a_frame_behind;
use crate::changes::changes_of;
use crate::drafts::Drafts;
use crate::evidence::EvidenceChoice;
use crate::parts;
use crate::route::Route;
use crate::today::today;
use crate::words::capitalised;
use foresight::Foresight;
pub use foresight::Seen;

/// The open plan and everything derived from it. A context: fetch it with
/// [`Workspace::here`] in a component's body and move the copy into closures.
///
/// Data flows one way: event, edit, plan, derived views, drawing.
#[derive(Clone, Copy)]
pub struct Workspace {
    history: RwSignal<Option<History>>,
    foresight: Foresight,
    /// Changes whenever another plan comes onto the desk, or none: what was worked out for the one
    /// before goes.
    pub opened: Trigger,
    /// The plan as it stands; `None` while no plan is open.
    pub plan: Memo<Option<Arc<Plan>>>,
    /// What follows from the plan for the layout in hand.
    pub derived: Memo<Option<Arc<Derived>>>,
    /// The plan and what follows from it as findings show them: as it stands, or as a foreseen
    /// change would leave it.
    pub seen: RwSignal<Option<Seen>>,
    /// The plan with what follows from it, a frame behind: for what need not hold up what a change
    /// is watched for.
    pub settled: RwSignal<Option<Settled>>,
    /// Places that the finding under pointer or focus lights up.
    pub lit: RwSignal<Vec<Place>>,
    /// What the live region says next.
    pub spoken: RwSignal<String>,
    /// What was done last, and how it is taken back; until the next act.
    pub status: RwSignal<Option<Status>>,
    /// What is carried, in place of what was done last.
    pub in_hand: RwSignal<Option<Status>>,
    /// How to begin, where nothing was done and nothing is carried.
    pub hint: RwSignal<Option<&'static str>>,
    /// Where the way back from a rule's page leads: the name of an element.
    pub left_at: RwSignal<Option<String>>,
    /// Messages that stay until dismissed, newest first.
    pub notices: RwSignal<Vec<Notice>>,
    /// How the setup sheet is printed.
    pub print: RwSignal<SheetOptions>,
    /// Where answers about the rider come from now; kept for as long as the plan
    /// is open, whatever screen is shown.
    pub evidence: RwSignal<EvidenceChoice>,
    /// The day that coverage and reach are shown for, whatever screen was shown
    /// in between.
    pub day: RwSignal<Day>,
    /// Who signed last, until the page is closed; kept nowhere.
    pub signer: RwSignal<String>,
    /// In what role somebody sits here, once that was said.
    pub role: RwSignal<Option<Role>>,
    /// The day that stands beside what is written; today unless another is set.
    pub dated: RwSignal<Option<Date>>,
    /// What is typed but not recorded yet.
    pub drafts: Drafts,
}

/// A plan with what follows from it.
pub type Settled = (Arc<Plan>, Arc<Derived>);

/// What follows from a plan for the layout in hand.
#[derive(Debug, Clone, PartialEq)]
pub struct Derived {
    /// The coverage table.
    pub coverage: Coverage,
    /// What the rules say.
    pub findings: Vec<Finding>,
    /// The layout in a few words.
    pub summary: Summary,
}

/// One line near the thumb: what is carried, was done or was refused.
#[derive(Clone)]
pub struct Status {
    /// What it says.
    pub text: String,
    /// Whether something was refused.
    pub trouble: bool,
    /// What may be done about it.
    pub offers: Vec<Offer>,
}

/// A message that stays until dismissed.
#[derive(Clone)]
pub struct Notice {
    /// Tells messages apart.
    pub id: NoticeId,
    /// What it says.
    pub text: String,
    /// Whether something was refused or went wrong.
    pub trouble: bool,
    /// What may be done about it.
    pub offers: Vec<Offer>,
}

/// The identity of a message.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct NoticeId(u32);

/// Something that may be done about a message: a button of it.
#[derive(Clone)]
pub struct Offer {
    /// What the button says.
    pub label: String,
    /// What it does; the message goes. It outlives the view that made it, so it
    /// is no [`Callback`], which ends with its view.
    pub act: Arc<dyn Fn() + Send + Sync>,
}

impl Offer {
    /// An offer under a label.
    pub fn new(label: impl Into<String>, act: impl Fn() + Send + Sync + 'static) -> Self {
        Offer {
            label: label.into(),
            act: Arc::new(act),
        }
    }
}

impl Workspace {
    /// An empty desk.
    pub fn new() -> Self {
        let history = RwSignal::new(None::<History>);
        let plan = Memo::new(move |_| history.with(|h| h.as_ref().map(History::shared_plan)));
        let foresight = Foresight::new();
        let derived = Memo::new(move |_| {
            let plan = plan.get()?;
            let foreseen = foresight.derived(&plan);
            Some(foreseen.unwrap_or_else(|| Arc::new((parts::desk().derive)(&plan))))
        });
        let seen = changes_of(move || {
            let plan = plan.get()?;
            foresight.of(&plan).or_else(|| {
                Some(Seen {
                    derived: derived.get()?,
                    plan,
                })
            })
        });
        Workspace {
            history,
            foresight,
            opened: Trigger::new(),
            plan,
            derived,
            seen,
            settled: a_frame_behind(move || plan.get().zip(derived.get())),
            lit: RwSignal::new(Vec::new()),
            spoken: RwSignal::new(String::new()),
            status: RwSignal::new(None),
            in_hand: RwSignal::new(None),
            hint: RwSignal::new(None),
            left_at: RwSignal::new(None),
            notices: RwSignal::new(Vec::new()),
            print: RwSignal::new(usual_print()),
            evidence: RwSignal::new(EvidenceChoice::default()),
            day: RwSignal::new(Day::Usual),
            signer: RwSignal::new(String::new()),
            role: RwSignal::new(None),
            dated: RwSignal::new(today()),
            drafts: Drafts::new(),
        }
    }

    /// The workspace that [`crate::App`] provides.
    pub fn here() -> Self {
        expect_context()
    }

    /// Who stands beside a change: a name only where somebody said who sits
    /// here.
    pub fn desk(self) -> Desk {
        let role = self.role.get_untracked();
        let by = match role {
            Some(_) => Text::new(&self.signer.get_untracked()),
            None => Text::default(),
        };
        Desk {
            by,
            role,
            date: self.dated.get_untracked().or_else(today),
        }
    }

    /// Puts a plan on the desk in place of what was there.
    pub fn open(self, mut history: History) {
        history.sit_down(self.desk());
        // Hand details are left out until they are asked for, plan by plan.
        self.print.update(|options| options.hand_page = false);
        // What one rider wore and who saw it says nothing about the next.
        self.evidence.set(EvidenceChoice::default());
        self.day.set(Day::Usual);
        self.drafts.clear();
        self.history.set(Some(history));
        self.status.set(None);
        self.lit.set(Vec::new());
        self.opened.notify();
    }

    /// Clears the desk.
    pub fn close(self) {
        self.drafts.clear();
        self.history.set(None);
        self.status.set(None);
        self.lit.set(Vec::new());
        self.opened.notify();
    }

    /// The plan with its undo, as it stands.
    pub fn history(self) -> Option<History> {
        self.history.get_untracked()
    }

    /// Reads the plan with its undo, which may be long, as it stands.
    pub fn with_history<T>(self, read: impl FnOnce(&History) -> T) -> Option<T> {
        self.history
            .with_untracked(|history| history.as_ref().map(read))
    }

    /// Makes a change. A refusal is told in words; whether it was made.
    pub fn commit(self, edit: Edit) -> bool {
        match self.try_commit(&edit) {
            Ok(()) => true,
            Err(error) => {
                self.say(error.to_string());
                self.show_refusal(&error);
                false
            }
        }
    }

    /// Shows why a change was refused, with the way to where it is cured.
    pub fn show_refusal(self, error: &EditError) {
        let to_bike = error
            .is_cured_on_bike()
            .then(|| Offer::new("Go to Bike", || Route::Bike.go()));
        let ok = Offer::new("OK", move || self.status.set(None));
        self.status.set(Some(Status {
            text: error.to_string(),
            trouble: true,
            offers: to_bike.into_iter().chain([ok]).collect(),
        }));
    }

    /// Says and shows what was done, with a way to take it back. Labels read as
    /// orders, so a word before them says that it is done.
    fn show_done(self, how: &str, label: &str, lapsed_before: usize) {
        let tally = self.tally().map(|tally| format!(" {tally}."));
        let tally = tally.unwrap_or_default();
        let lapsed = match self.lapsed() > lapsed_before {
            true => " What was accepted rests on this, and is open again.",
            false => "",
        };
        let done = format!("{how}: {label}.{tally}{lapsed}");
        self.say(done.clone());
        self.show(done, vec![Offer::new("Undo this", move || self.undo())]);
    }

    fn lapsed(self) -> usize {
        let plan = self.plan.get_untracked();
        plan.map_or(0, |plan| plan.lapsed_acceptances())
    }

    /// Shows what was done, until the next act.
    pub fn show(self, text: impl Into<String>, offers: Vec<Offer>) {
        self.status.set(Some(Status {
            text: text.into(),
            trouble: false,
            offers,
        }));
    }

    /// Says and shows what was done.
    pub fn report(self, text: impl Into<String>) {
        let text = text.into();
        self.say(text.clone());
        self.show(text, Vec::new());
    }

    /// How many findings stand open; none where no plan is open.
    pub fn tally(self) -> Option<Tally> {
        let plan = self.plan.get_untracked()?;
        let derived = self.derived.get_untracked()?;
        Some(Tally::of(&plan, &derived.findings))
    }

    /// Makes a change, or says why not.
    pub fn try_commit(self, edit: &Edit) -> Result<(), EditError> {
        let mut outcome = Ok(());
        let (before, lapsed) = (self.revision(), self.lapsed());
        let desk = self.desk();
        let mut foreseen = self.foresight.take();
        self.history.maybe_update(|history| {
            let Some(history) = history else { return false };
            history.sit_down(desk);
            outcome = match foreseen.take() {
                Some(foreseen) => (parts::desk().commit_foreseen)(history, edit, foreseen),
                None => (parts::desk().commit)(history, edit),
            };
            outcome.is_ok()
        });
        if outcome.is_ok() {
            let selects = matches!(edit, Edit::Plan(PlanEdit::SelectLayout(_)));
            match untrack(|| self.undo_label()) {
                Some(label) if self.revision() != before && !selects => {
                    self.show_done("Done", &label, lapsed);
                }
                // What is written into the record shows where it was written, and
                // undo does not take it back.
                _ if matches!(edit, Edit::Record(_)) => self.status.set(None),
                _ if self.revision() == before => self.show_unchanged(edit),
                _ => self.status.set(None),
            }
        }
        outcome
    }

    /// Says that it is so already.
    fn show_unchanged(self, edit: &Edit) {
        let label = self.plan.with_untracked(|plan| {
            plan.as_deref()
                .map(|plan| (parts::desk().label)(edit, plan))
        });
        let label = capitalised(&label.unwrap_or_default());
        self.show(format!("{label}: it is so already."), Vec::new());
    }

    fn revision(self) -> Option<u32> {
        self.history
            .with_untracked(|history| history.as_ref().map(|h| h.plan().revision))
    }

    /// Changes the history itself, for what cannot be an edit: removing hand
    /// details from undo, too.
    pub fn change_history(self, change: impl FnOnce(&mut History)) {
        self.status.set(None);
        self.history.update(|history| {
            if let Some(history) = history {
                change(history);
            }
        });
    }

    /// Takes the last change back.
    pub fn undo(self) {
        let label = untrack(|| self.undo_label());
        self.change_history(|history| {
            (parts::desk().undo)(history);
        });
        match label {
            Some(label) => {
                let again = Offer::new("Redo this", move || self.redo());
                self.show(format!("Undone: {label}."), vec![again]);
                self.say(format!("Undone: {label}."));
            }
            None => self.say("Nothing to undo."),
        }
    }

    /// Makes the last undone change again.
    pub fn redo(self) {
        let (label, lapsed) = (untrack(|| self.redo_label()), self.lapsed());
        self.change_history(|history| {
            (parts::desk().redo)(history);
        });
        match label {
            Some(label) => self.show_done("Redone", &label, lapsed),
            None => self.say("Nothing to redo."),
        }
    }

    /// What undo would take back.
    pub fn undo_label(self) -> Option<String> {
        self.history
            .with(|h| h.as_ref()?.undo_label().map(str::to_owned))
    }

    /// What redo would make again.
    pub fn redo_label(self) -> Option<String> {
        self.history
            .with(|h| h.as_ref()?.redo_label().map(str::to_owned))
    }

    /// Says something through the live region.
    pub fn say(self, text: impl Into<String>) {
        let text = text.into();
        // The same words twice would be no change and so not be read again.
        self.spoken.update(|spoken| {
            *spoken = match *spoken == text {
                true => format!("{text}\u{a0}"),
                false => text,
            };
        });
    }

    /// Leaves a message until it is dismissed.
    pub fn tell(self, text: impl Into<String>) {
        self.leave(text.into(), false, Vec::new());
    }

    /// Leaves word of a refusal or of trouble until it is dismissed.
    pub fn refuse(self, text: &str) {
        self.leave(text.to_owned(), true, Vec::new());
    }

    /// Leaves a message with buttons until one of them is pressed or it is
    /// dismissed. One that says the same goes.
    pub fn leave(self, text: String, trouble: bool, offers: Vec<Offer>) -> NoticeId {
        self.say(text.clone());
        let mut id = NoticeId(0);
        self.notices.update(|notices| {
            id = NoticeId(notices.first().map_or(0, |newest| newest.id.0 + 1));
            notices.retain(|notice| notice.text != text);
            let notice = Notice {
                id,
                text,
                trouble,
                offers,
            };
            notices.insert(0, notice);
        });
        id
    }

    /// Takes a message away.
    pub fn dismiss(self, id: NoticeId) {
        self.notices
            .update(|notices| notices.retain(|notice| notice.id != id));
    }
}

/// The paper usual where the browser's language is spoken.
fn usual_print() -> SheetOptions {
    let language = window().navigator().language().unwrap_or_default();
    SheetOptions {
        paper: Paper::usual(&language),
        ..SheetOptions::default()
    }
}

impl Derived {
    /// Works everything out.
    pub fn of(plan: &Plan) -> Derived {
        let situation = Situation::of(plan);
        let findings = rules::findings_in(&situation);
        let summary = summary::of(&situation);
        Derived {
            coverage: situation.coverage,
            findings,
            summary,
        }
    }
}
