//! The plans of this browser and this page, and which of them is open.

mod acts;
mod autosave;
mod conflict;
mod files;
mod handed_on;
mod remind;

pub use files::in_words;

use std::sync::Arc;

use gloo_storage::{LocalStorage, SessionStorage, Storage};
use leptos::prelude::*;
use leverwright_core::history::History;
use leverwright_core::ordered::{self, SmallMap};
use leverwright_core::plan::Plan;
use leverwright_core::text::Text;

use super::browser::{BrowserDrawer, is_available, is_shared_here};
use super::free_name::free_name;
use super::plan_id::PlanId;
use super::record::{Keeping, Record, Standing};
use super::shelf::{self, Damaged};
use super::tabs::Tabs;
use super::undo;
use crate::parts::{self, Part};
use crate::workspace::Workspace;

/// Where a tab keeps which plan it has open, so that a reload finds it.
const OPEN_HERE: &str = "leverwright/open";

/// Where the browser keeps which plan was opened last, for a new tab.
const OPENED_LAST: &str = "leverwright/last";

/// The plans of this browser and this page. A context: fetch it with
/// [`Library::here`].
#[derive(Clone, Copy)]
pub struct Library {
    workspace: Workspace,
    /// What is known of the open plan's place in the store.
    desk: RwSignal<Option<Record>>,
    /// Plans that were opened in this page and put aside, with their undo.
    aside: StoredValue<SmallMap<PlanId, (Record, History)>>,
    /// Every plan, as last looked at.
    pub cards: RwSignal<Vec<Card>>,
    /// Whether new plans are kept in this page only, because others use this
    /// computer. Kept for this tab alone, so that reloading does not forget it
    /// and closing leaves nothing behind.
    pub shared_computer: RwSignal<bool>,
    /// How far keeping the open plan has come.
    standing: Memo<Option<Standing>>,
    /// Whether a save is due.
    due: StoredValue<bool>,
    tabs: Tabs,
}

/// A plan in the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Card {
    /// Its name in the store.
    pub id: PlanId,
    /// Where it is kept.
    pub keeping: Keeping,
    /// The newest copy that can be read.
    pub plan: Option<Arc<Plan>>,
    /// When it was saved, in milliseconds since 1970.
    pub saved: Option<u64>,
    /// Copies that cannot be read.
    pub damaged: Vec<Damaged>,
}

impl Library {
    /// The library, keeping the workspace's plan from now on. The plan that was
    /// open in this tab, or else in this browser, is opened.
    pub fn load(workspace: Workspace) -> Self {
        let desk = RwSignal::new(None::<Record>);
        let standing = Memo::new(move |_| {
            let plan = workspace.plan.get()?;
            desk.with(|record| Some(record.as_ref()?.standing(&plan)))
        });
        let library = Library {
            workspace,
            desk,
            aside: StoredValue::new(SmallMap::new()),
            cards: RwSignal::new(Vec::new()),
            shared_computer: RwSignal::new(!is_available() || is_shared_here()),
            standing,
            due: StoredValue::new(false),
            tabs: Tabs::open(fresh_bits()),
        };
        library.open_last();
        library.keep_saving();
        library.keep_reminding();
        library
    }

    /// The library that [`crate::App`] provides.
    pub fn here() -> Self {
        expect_context()
    }

    /// How far keeping the open plan has come.
    pub fn standing(self) -> Option<Standing> {
        self.standing.get()
    }

    /// Whether the open plan is open in another tab, too.
    pub fn is_open_elsewhere(self) -> bool {
        self.tabs.others.with(|others| !others.is_empty())
    }

    /// Which plan is open.
    pub fn open_id(self) -> Option<PlanId> {
        self.desk.with(|desk| desk.as_ref().map(|d| d.id.clone()))
    }

    /// Puts a copy of a plan on the desk under a name that none in the list has,
    /// and keeps it.
    pub fn start_afresh(self, plan: &Plan) {
        let name = self.free_name(plan.name.as_str());
        self.start(plan.clone(), &name);
        self.workspace.report(format!("“{name}” is open."));
    }

    /// A name for a new plan that none in the list has.
    fn free_name(self, wanted: &str) -> String {
        self.look_again();
        let taken: Vec<String> = self.cards.with_untracked(|cards| {
            let plans = cards.iter().filter_map(|card| card.plan.as_ref());
            plans.map(|plan| plan.name.to_string()).collect()
        });
        free_name(wanted, &taken)
    }

    /// Puts a new plan on the desk under a name and keeps it.
    fn start(self, mut plan: Plan, name: &str) {
        plan.name = Text::new(name);
        self.put_aside();
        let keeping = match self.shared_computer.get_untracked() {
            true => Keeping::InPage,
            false => Keeping::InBrowser,
        };
        let record = Record::new(PlanId::from_bits(fresh_bits()), keeping);
        self.lay_out(record, History::new(plan));
        self.save_now();
        self.look_again();
    }

    /// Opens a plan; whether it could be read.
    pub fn open(self, id: &PlanId) -> bool {
        if self.is_open(id) {
            return true;
        }
        self.put_aside();
        let Some((record, history)) = self.take_up(id) else {
            self.workspace
                .refuse("That plan cannot be read any more. Choose another one.");
            self.look_again();
            return false;
        };
        self.lay_out(record, history);
        true
    }

    fn open_last(self) {
        if !is_available() {
            self.workspace.refuse(
                "This browser keeps nothing for this page: plans are gone when it is closed. \
                 Export them as files.",
            );
            return;
        }
        let here: Option<String> = SessionStorage::get(OPEN_HERE).ok();
        let last: Option<String> = LocalStorage::get(OPENED_LAST).ok();
        let id = here.or(last).and_then(|id| PlanId::parse(&id));
        let found = id.and_then(|id| self.read(&id));
        if let Some((record, history)) = found {
            self.lay_out(record, history);
        }
    }

    /// Puts a plan on the empty desk.
    fn lay_out(self, record: Record, history: History) {
        if record.keeping == Keeping::InBrowser && is_available() {
            let id = record.id.to_string();
            // Without room, a reload finds no plan open: a small loss.
            let _ = SessionStorage::set(OPEN_HERE, &id);
            let _ = LocalStorage::set(OPENED_LAST, &id);
            self.tabs.opened(&id);
        } else {
            self.tabs.closed();
            self.forget_opened();
        }
        self.desk.set(Some(record));
        self.workspace.open(history);
    }

    /// Forgets which plan is open, so that nothing of it stays in the browser.
    fn forget_opened(self) {
        if is_available() {
            SessionStorage::delete(OPEN_HERE);
            LocalStorage::delete(OPENED_LAST);
        }
    }

    /// Forgets that a plan was open, if it was this one.
    fn forget_if_opened(self, id: &PlanId) {
        if !is_available() {
            return;
        }
        let id = Some(id.to_string());
        if SessionStorage::get(OPEN_HERE).ok() == id {
            SessionStorage::delete(OPEN_HERE);
        }
        if LocalStorage::get(OPENED_LAST).ok() == id {
            LocalStorage::delete(OPENED_LAST);
        }
    }

    /// Saves the open plan, and clears the desk; its undo stays in this page.
    fn put_aside(self) {
        self.save_now();
        let desk = self.desk.get_untracked();
        if let (Some(record), Some(history)) = (desk, self.workspace.history()) {
            self.tabs.closed();
            self.aside.update_value(|aside| {
                aside.insert(record.id.clone(), (record, history));
            });
        }
        self.desk.set(None);
        self.workspace.close();
    }

    /// A plan that was put aside, with its undo, or as it lies in the store.
    /// What another tab saved meanwhile counts, unless something here was not
    /// saved.
    fn take_up(self, id: &PlanId) -> Option<(Record, History)> {
        let aside = self.aside.try_update_value(|aside| aside.remove(id));
        let Some((record, history)) = aside.flatten() else {
            return self.read(id);
        };
        let known = record.known.as_ref();
        let current = record.keeping == Keeping::InPage
            || record.unsaved.is_some()
            || shelf::unchanged(&BrowserDrawer, id, known).is_ok();
        match current {
            true => Some((record, history)),
            false => self.read(id),
        }
    }

    /// A plan as it lies in the store.
    fn read(self, id: &PlanId) -> Option<(Record, History)> {
        let found = shelf::find(&BrowserDrawer, id, read_document);
        let (slot, plan) = found.best?;
        let plan = Arc::new(plan);
        self.tell_damaged(&plan, slot.saved, &found.damaged);
        let record = Record {
            known: found.known,
            aside: found.damaged.into_iter().map(|d| d.key).collect(),
            saved: Some(Arc::clone(&plan)),
            ..Record::new(id.clone(), Keeping::InBrowser)
        };
        let mut history = History::new(Arc::unwrap_or_clone(plan));
        if let Some(undo) = undo::find(&BrowserDrawer, id, &slot.stamp()) {
            (parts::desk().recall)(&mut history, &undo);
        }
        Some((record, history))
    }

    /// Looks at every plan again, for the list.
    pub fn look_again(self) {
        // Another tab may have kept the first plan before this one can read it.
        if keeps_plans() && !Part::Desk.is_here() {
            return parts::once_here(Part::Desk, self.workspace, move || self.look_again());
        }
        let mut cards: Vec<Card> = shelf::plans(&BrowserDrawer)
            .into_iter()
            .map(|id| {
                let found = shelf::find(&BrowserDrawer, &id, read_document);
                let (slot, plan) = found.best.unzip();
                Card {
                    id,
                    keeping: Keeping::InBrowser,
                    plan: plan.map(Arc::new),
                    saved: slot.map(|slot| slot.saved),
                    damaged: found.damaged,
                }
            })
            .collect();
        cards.extend(self.cards_in_page());
        ordered::sort_by_key(&mut cards, |card| {
            std::cmp::Reverse(card.saved.unwrap_or(u64::MAX))
        });
        self.cards.set(cards);
    }

    /// Plans that are nowhere but in this page.
    fn cards_in_page(self) -> Vec<Card> {
        let card = |record: &Record, plan: Arc<Plan>| {
            (record.known.is_none()).then(|| Card {
                id: record.id.clone(),
                keeping: record.keeping,
                plan: Some(plan),
                saved: None,
                damaged: Vec::new(),
            })
        };
        let open = self.desk.with_untracked(|desk| {
            let plan = self.workspace.plan.get_untracked()?;
            card(desk.as_ref()?, plan)
        });
        let aside = self.aside.with_value(|aside| {
            aside
                .values()
                .filter_map(|(record, history)| card(record, history.shared_plan()))
                .collect::<Vec<_>>()
        });
        open.into_iter().chain(aside).collect()
    }
}

/// Whether this browser keeps any plan.
pub fn keeps_plans() -> bool {
    is_available() && !shelf::plans(&BrowserDrawer).is_empty()
}

/// Reads the document in a copy.
fn read_document(text: &str) -> Result<Plan, String> {
    (parts::desk().read)(text.as_bytes()).map(|opened| opened.plan)
}

/// The time, in milliseconds since 1970.
fn now() -> u64 {
    js_sys::Date::now() as u64
}

/// Random bits, for names that nobody else gives out.
fn fresh_bits() -> u64 {
    let mut bytes = [0; 8];
    let filled = window()
        .crypto()
        .and_then(|crypto| crypto.get_random_values_with_u8_array(&mut bytes));
    match filled {
        Ok(_) => u64::from_le_bytes(bytes),
        Err(_) => js_sys::Math::random().to_bits(),
    }
}
