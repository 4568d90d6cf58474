//! What the parts of the Layout screen share.

use std::sync::Arc;
use std::time::Duration;

use leptos::prelude::*;
use leverwright_core::cockpit::{BarSide, Bike, ButtonId, HandPosition};
use leverwright_core::drawing::Picture;
use leverwright_core::edit::{Edit, LayoutEdit};
use leverwright_core::finding::Severity;
use leverwright_core::function::Function;
use leverwright_core::lights::Lights;
use leverwright_core::ordered::SmallMap;
use leverwright_core::plan::Plan;
use leverwright_core::rider::{Day, Side};
use leverwright_core::slot::Slot;

use super::room::Room;
use super::words::{capitalised, load_words};
use crate::after_paint::a_frame_behind;
use crate::changes::changes_of;
use crate::gesture::{At, Gesture, Load, Spot, Tapped, put};
use crate::settings::Settings;
use crate::workspace::{Offer, Status, Workspace};

/// What a button answers to what is carried.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Answer {
    /// It takes it.
    Takes,
    /// It is what is carried.
    Carried,
    /// It does not take it, and why.
    Refuses(String),
}

/// What is carried, over what, and what the buttons answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Carrying {
    /// What is carried.
    pub load: Option<Load>,
    /// Whether it is dragged.
    pub drags: bool,
    /// The place under a drag.
    pub over: Option<Spot>,
    answers: Arc<SmallMap<ButtonId, Answer>>,
    /// The buttons that show what letting go here would make of them.
    foreseen: Vec<ButtonId>,
}

impl Carrying {
    /// Whether a button shows what letting go here would make of it.
    pub fn is_foreseen(&self, id: ButtonId) -> bool {
        self.foreseen.contains(&id)
    }

    /// What a button answers; `None` while nothing is carried.
    pub fn answer(&self, id: ButtonId) -> Option<&Answer> {
        self.answers.get(&id)
    }
}

/// What a hand is shown to reach.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reaching {
    /// The hand.
    pub hand: Side,
    /// From where.
    pub from: HandPosition,
}

/// The state of the screen; a context.
#[derive(Clone, Copy)]
pub struct Bench {
    pub workspace: Workspace,
    /// The slots in balloon order.
    pub slots: Memo<Arc<Vec<Slot>>>,
    /// As [`Self::slots`], but while a drag rests over a place as they would be once it lets go there.
    /// Not so by keys: a button that is read out as the focus comes to it says what it does.
    seen: Memo<Arc<Vec<Slot>>>,
    /// As they are seen, a frame behind, for the drawing.
    pub drawn: RwSignal<Arc<Vec<Slot>>>,
    /// The drawing for the room there is.
    pub picture: RwSignal<Option<Arc<Picture>>>,
    /// The room for the drawing.
    pub room: RwSignal<Room>,
    /// What lights up on the drawing.
    pub lights: Memo<Lights>,
    /// How much the finding weighs that lights it.
    pub weight: Memo<Option<Severity>>,
    gesture: RwSignal<Gesture>,
    /// What is carried.
    pub load: Memo<Option<Load>>,
    /// The place under a drag.
    pub over: Memo<Option<Spot>>,
    answers: Memo<Arc<SmallMap<ButtonId, Answer>>>,
    /// How what is carried shows on buttons and tray, a frame behind: what a drop changes is seen first.
    pub shown: RwSignal<Carrying>,
    /// The button where the focus was last.
    pub current: RwSignal<Option<ButtonId>>,
    /// The button that the Tab key leads to: where the focus was last, else the first.
    pub stop: RwSignal<Option<ButtonId>>,
    /// The refusal to be told and the button that refuses: the one under a drag, else the last one
    /// tried, until it is dismissed.
    pub told: RwSignal<Option<(ButtonId, String)>>,
    /// The tray's item that the Tab key leads to.
    pub current_item: RwSignal<Option<Load>>,
    /// The button whose menu is open.
    pub menu: RwSignal<Option<ButtonId>>,
    /// A refusal, told at its button until something else is done.
    pub why: RwSignal<Option<(ButtonId, String)>>,
    /// Whose reach is shown.
    pub reaching: RwSignal<Option<Reaching>>,
    /// The day that coverage and reach are shown for.
    pub day: RwSignal<Day>,
}

impl Bench {
    pub fn new() -> Bench {
        let workspace = Workspace::here();
        let of_plan = move |plan: &Option<Arc<Plan>>| plan.as_deref().map(Slot::all);
        let slots = Memo::new(move |_| Arc::new(workspace.plan.with(of_plan).unwrap_or_default()));
        let settled = workspace.settled;
        let bike = Memo::new(move |_| settled.with(|now| Some(now.as_ref()?.0.bike.clone())));
        let settings = Settings::here();
        let room = RwSignal::new(Room::UNKNOWN);
        // Set, not worked out in place: every slot follows it for its seat, and would be asked after
        // each change of the layout whether it still is where it was.
        let picture = RwSignal::new(None);
        Effect::new(move |_| {
            let (room, lists) = (room.get(), settings.get().lists);
            picture.set(bike.with(|bike| {
                let bike = bike.as_ref()?;
                let sheet = room.sheet(lists, tallest_column(bike))?;
                Some(Arc::new(Picture::of(bike, sheet)))
            }));
        });
        let lights = Memo::new(move |_| {
            let lit = workspace.lit.get();
            settled.with(|now| match now {
                Some((plan, _)) => Lights::of(plan, &lit),
                None => Lights::default(),
            })
        });
        let weight = Memo::new(move |_| {
            let (_, derived) = settled.get()?;
            let lit = workspace.lit.get();
            let finding = derived.findings.iter().find(|f| f.places == lit)?;
            Some(finding.severity)
        });
        let gesture = RwSignal::new(Gesture::default());
        let load = Memo::new(move |_| gesture.with(Gesture::load));
        let over = Memo::new(move |_| gesture.with(|g| g.dragged()?.over));
        let answers = Memo::new(move |_| {
            let answers = load.get().zip(workspace.plan.get());
            Arc::new(answers.map_or_else(SmallMap::new, |(load, plan)| answers_to(load, &plan)))
        });
        let drags = Memo::new(move |_| gesture.with(|g| g.dragged().is_some()));
        let seen = Memo::new(move |_| {
            let foreseen = drags.get().then(|| workspace.foreseen_plan()).flatten();
            foreseen.map_or_else(|| slots.get(), |plan| Arc::new(Slot::all(&plan)))
        });
        let drawn = a_frame_behind(move || seen.get());
        let shown = a_frame_behind(move || Carrying {
            load: load.get(),
            drags: drags.get(),
            over: over.get(),
            answers: answers.get(),
            foreseen: differing(&slots.get(), &seen.get()),
        });
        let current = RwSignal::new(None);
        let stop = changes_of(move || {
            slots.with(|all: &Arc<Vec<Slot>>| {
                let known = |id: &ButtonId| all.iter().any(|slot| slot.button == *id);
                let last = current.get().filter(known);
                last.or_else(|| all.first().map(|slot| slot.button))
            })
        });
        let why = RwSignal::new(None);
        let told = changes_of(move || match over.get() {
            Some(Spot::Button(id)) => match answers.with(|answers| answers.get(&id).cloned()) {
                Some(Answer::Refuses(why)) => Some((id, why)),
                _ => why.get(),
            },
            _ => why.get(),
        });
        let bench = Bench {
            workspace,
            slots,
            seen,
            drawn,
            picture,
            room,
            lights,
            weight,
            gesture,
            load,
            over,
            answers,
            shown,
            current,
            stop,
            told,
            current_item: RwSignal::new(None),
            menu: RwSignal::new(None),
            why,
            reaching: RwSignal::new(None),
            day: workspace.day,
        };
        bench.show_what_is_in_hand();
        bench.foresee_what_is_carried();
        bench
    }

    /// Keeps the line near the thumb at what is carried, and at how to begin.
    fn show_what_is_in_hand(self) {
        let workspace = self.workspace;
        workspace
            .hint
            .set(Some("Tap a function, then a button; or hold and drag."));
        Effect::new(move |_| {
            let carried = self.load.get().map(|load| Status {
                text: self.carrying_words(load),
                trouble: false,
                offers: vec![Offer::new("Cancel", move || {
                    self.let_go();
                })],
            });
            workspace.in_hand.set(carried);
        });
        on_cleanup(move || {
            workspace.hint.set(None);
            workspace.in_hand.set(None);
        });
    }

    /// While what is carried rests over a place, findings are shown as they would be once it is let
    /// go there.
    fn foresee_what_is_carried(self) {
        let workspace = self.workspace;
        let aim = Memo::new(move |_| {
            self.gesture
                .with(|g| g.dragged().map(|drag| (g.load(), drag.over)))
        });
        Effect::new(move |_| {
            if self.load.get().is_none() {
                return workspace.stop_foreseeing();
            }
            let Some(rests) = aim.get() else { return };
            let foresee = move || {
                if self.is_gone() || aim.get_untracked() != Some(rests) {
                    return;
                }
                match rests
                    .0
                    .zip(rests.1)
                    .and_then(|(load, spot)| put(load, spot))
                {
                    Some(edit) => workspace.foresee(&edit),
                    None => workspace.stop_foreseeing(),
                }
            };
            set_timeout(foresee, REST);
        });
        on_cleanup(move || workspace.stop_foreseeing());
    }

    /// The focus leaves a button, or the button leaves the page.
    pub fn focus_out(self) {
        if !self.is_gone() && !self.is_dragging() {
            self.workspace.stop_foreseeing();
        }
    }

    /// What is carried and what to do with it, and for a button what it does.
    fn carrying_words(self, load: Load) -> String {
        match load {
            Load::Function(_) => format!("Carrying {}: tap a button.", load_words(self, load)),
            Load::Blank => "Carrying blank: tap a button to clear it.".into(),
            Load::Button(id) => {
                let Some(slot) = self.slot(id) else {
                    return String::new();
                };
                let does = slot.look.function.map(Function::effect);
                let does = does.map_or_else(|| slot.look.words(), str::to_owned);
                let (number, place) = (slot.number, slot.place);
                format!("{number} {place}: {does}. Tap a function for it, or a button to swap.")
            }
        }
    }

    pub fn here() -> Bench {
        expect_context()
    }

    /// Reads the plan and follows it, a frame behind; `None` only for a moment while it is closed.
    pub fn plan<T>(self, read: impl FnOnce(&Plan) -> T) -> Option<T> {
        let settled = self.workspace.settled;
        settled.with(|now| now.as_ref().map(|(plan, _)| read(plan)))
    }

    fn plan_untracked<T>(self, read: impl FnOnce(&Plan) -> T) -> Option<T> {
        let plan = self.workspace.plan;
        plan.with_untracked(|plan| plan.as_deref().map(read))
    }

    /// What a button shows; `None` once it is off the bike.
    pub fn slot(self, id: ButtonId) -> Option<Slot> {
        self.slots
            .with(|slots| slots.iter().find(|slot| slot.button == id).cloned())
    }

    /// What is seen on a button: what it does, or would once what rests over a place is let go there.
    pub fn seen(self, id: ButtonId) -> Option<Slot> {
        self.seen
            .with(|slots| slots.iter().find(|slot| slot.button == id).cloned())
    }

    /// What a button answers to what is carried; `None` while nothing is.
    pub fn answer(self, id: ButtonId) -> Option<Answer> {
        self.answers.with(|answers| answers.get(&id).cloned())
    }

    /// The refusal told at a button, if one is.
    pub fn refusal_at(self, id: ButtonId) -> Option<String> {
        let (at, why) = self.why.get()?;
        (at == id).then_some(why)
    }

    /// Where the drag is, once it carries.
    pub fn drag_at(self) -> Option<At> {
        self.gesture.with(|g| g.dragged().map(|drag| drag.at))
    }

    /// Whether a pointer is down on something that can be carried.
    pub fn is_pressed(self) -> bool {
        self.gesture.with_untracked(Gesture::is_pressed)
    }

    /// Whether a drag carries something.
    pub fn is_dragging(self) -> bool {
        self.gesture.with_untracked(|g| g.dragged().is_some())
    }

    /// A pointer goes down, on something that can be carried or elsewhere.
    pub fn pointer_down(self, load: Option<(i32, Load, At)>) {
        self.gesture.update(|gesture| match load {
            Some((pointer, load, at)) => gesture.press(pointer, load, at),
            None => gesture.settle(),
        });
    }

    /// A finger goes down on something that can be carried.
    pub fn finger_down(self, pointer: i32, load: Load, at: At) {
        self.gesture
            .update(|gesture| gesture.press_to_hold(pointer, load, at));
    }

    /// Whether the screen is gone: what comes later finds no gesture.
    pub fn is_gone(self) -> bool {
        self.gesture.is_disposed()
    }

    /// A finger was kept where it went down; whether it carries now.
    pub fn finger_held(self, pointer: i32) -> bool {
        let mut lifted = false;
        self.gesture.maybe_update(|gesture| {
            lifted = gesture.held(pointer);
            lifted
        });
        if lifted {
            self.say_lifted();
        }
        lifted
    }

    /// A pointer that is down moves.
    pub fn pointer_move(self, pointer: i32, at: At, over: Option<Spot>) {
        let mut lifted = false;
        self.gesture
            .update(|gesture| lifted = gesture.move_to(pointer, at, over));
        if lifted {
            self.say_lifted();
        }
    }

    fn say_lifted(self) {
        if let Some(load) = self.load.get_untracked() {
            self.why.set(None);
            self.workspace
                .say(format!("{} picked up.", self.words_of(load)));
        }
    }

    /// A pointer goes up.
    pub fn pointer_up(self, pointer: i32) {
        let mut dropped = None;
        self.gesture
            .update(|gesture| dropped = gesture.release(pointer));
        match dropped {
            Some((load, Some(spot))) => self.put_down(load, spot),
            Some((load, None)) => self.say_let_go(load),
            None => {}
        }
    }

    /// The browser takes a pointer away.
    pub fn pointer_lost(self, pointer: i32) {
        if self.is_pressed() {
            self.gesture.update(|gesture| gesture.lose(pointer));
        }
    }

    /// Lets everything go; whether anything was carried or told.
    pub fn let_go(self) -> Option<Load> {
        let mut load = None;
        self.gesture.update(|gesture| load = gesture.let_go());
        self.why.set(None);
        if let Some(load) = load {
            self.say_let_go(load);
        }
        load
    }

    /// Something is tapped, clicked or pressed by a key; what it came to.
    pub fn tap(self, load: Load, by_pointer: bool) -> Tapped {
        let mut is_past = false;
        // Nothing shows it.
        self.gesture.maybe_update(|gesture| {
            is_past = gesture.ends_with_click() && by_pointer;
            false
        });
        if is_past {
            return Tapped::Nothing;
        }
        self.why.set(None);
        if self.refuses_to_be_picked_up(load) {
            return Tapped::Nothing;
        }
        let mut tapped = Tapped::Nothing;
        self.gesture.update(|gesture| tapped = gesture.tap(load));
        match tapped {
            Tapped::Nothing => {}
            Tapped::PickedUp(load) => self.say_picked_up(load),
            Tapped::LetGo(load) => self.say_let_go(load),
            Tapped::PutDown(load, spot) => self.put_down(load, spot),
        }
        tapped
    }

    /// A button that takes nothing says why when it is tapped with nothing in
    /// hand.
    fn refuses_to_be_picked_up(self, load: Load) -> bool {
        let (Load::Button(id), None) = (load, self.load.get_untracked()) else {
            return false;
        };
        let clear = Edit::Layout(LayoutEdit::ClearButton(id));
        let refusal = self.plan_untracked(|plan| plan.apply(&clear).err());
        match refusal.flatten() {
            Some(error) => {
                self.workspace.show_refusal(&error);
                self.refuse_at(id, error.to_string());
                true
            }
            None => false,
        }
    }

    /// Whether there is something on a button, or in the tray, to be dragged.
    pub fn can_drag(self, load: Load) -> bool {
        match load {
            Load::Button(id) => untrack(|| self.slot(id)).is_some_and(|slot| slot.has_load),
            Load::Function(_) | Load::Blank => true,
        }
    }

    /// Takes everything off a button.
    pub fn clear(self, id: ButtonId) {
        self.commit_at(id, &Edit::Layout(LayoutEdit::ClearButton(id)));
    }

    fn put_down(self, load: Load, spot: Spot) {
        let at = match (spot, load) {
            (Spot::Button(id), _) | (Spot::Tray | Spot::Away, Load::Button(id)) => Some(id),
            (Spot::Tray | Spot::Away, Load::Function(_) | Load::Blank) => None,
        };
        match (at, put(load, spot)) {
            (Some(id), Some(edit)) => self.commit_at(id, &edit),
            _ => self.say_let_go(load),
        }
    }

    /// Makes a change about a button; a refusal is told at that button.
    pub fn commit_at(self, id: ButtonId, edit: &Edit) {
        let label = self.plan_untracked(|plan| edit.label(plan));
        match self.workspace.try_commit(edit) {
            Ok(()) => {
                self.why.set(None);
                self.say_done(&label.unwrap_or_default());
            }
            Err(error) => {
                self.workspace.show_refusal(&error);
                self.refuse_at(id, error.to_string());
            }
        }
    }

    /// Makes a change about the whole layout; a refusal stays as a message.
    /// Whether it was made.
    pub fn commit(self, edit: Edit) -> bool {
        let label = self.plan_untracked(|plan| edit.label(plan));
        self.let_go_silently();
        let made = self.workspace.commit(edit);
        if made {
            self.say_done(&label.unwrap_or_default());
        }
        made
    }

    /// What was in hand before the whole layout changed is in hand no longer.
    fn let_go_silently(self) {
        self.gesture.update(|gesture| {
            gesture.let_go();
        });
        self.why.set(None);
    }

    fn refuse_at(self, id: ButtonId, why: String) {
        self.workspace.say(why.clone());
        self.why.set(Some((id, why)));
    }

    /// Says what was done and how many findings stand now.
    pub fn say_done(self, label: &str) {
        let tally = self.workspace.tally().unwrap_or_default();
        self.workspace
            .say(format!("{}. Findings: {tally}.", capitalised(label)));
    }

    fn say_picked_up(self, load: Load) {
        let next = match load {
            Load::Button(_) => "Choose a function for it, or a button to swap with.",
            Load::Function(_) | Load::Blank => "Choose a button.",
        };
        self.workspace
            .say(format!("{} picked up. {next}", self.words_of(load)));
    }

    fn say_let_go(self, load: Load) {
        self.workspace
            .say(format!("{} let go. Nothing changed.", self.words_of(load)));
    }

    /// Says how a button answers to what is carried; what was picked up first,
    /// where it is new.
    pub fn say_answer(self, id: ButtonId, picked_up: Option<Load>) {
        let Some(answer) = untrack(|| self.answer(id)) else {
            return;
        };
        let place = untrack(|| self.slot(id)).map_or_else(String::new, |slot| slot.place);
        let place = capitalised(&place);
        let edit = self
            .load
            .get_untracked()
            .and_then(|load| put(load, Spot::Button(id)));
        match &edit {
            Some(edit) => self.workspace.foresee(edit),
            None => self.workspace.stop_foreseeing(),
        }
        let then = edit.and_then(|edit| untrack(|| self.workspace.tally_after(&edit)));
        let answer = match answer {
            Answer::Takes => match then {
                Some(tally) => {
                    format!("{place}: takes it. Enter puts it down. Findings then: {tally}.")
                }
                None => format!("{place}: takes it. Enter puts it down."),
            },
            Answer::Carried => format!("{place}: Enter lets it go."),
            Answer::Refuses(why) => why,
        };
        let picked_up = picked_up.map_or_else(String::new, |load| {
            format!("{} picked up. ", self.words_of(load))
        });
        self.workspace.say(format!("{picked_up}{answer}"));
    }

    fn words_of(self, load: Load) -> String {
        capitalised(&untrack(|| load_words(self, load)))
    }
}

/// How long a pointer rests over a place before findings are shown for it: longer than a place is
/// passed over, shorter than a hand waits before it lets go (our judgement).
const REST: Duration = Duration::from_millis(100);

/// The buttons that are not the same in both.
fn differing(slots: &[Slot], others: &[Slot]) -> Vec<ButtonId> {
    let pairs = slots.iter().zip(others);
    let unlike = pairs.filter(|(one, other)| one != other);
    unlike.map(|(slot, _)| slot.button).collect()
}

/// How many buttons the side with most of them has.
fn tallest_column(bike: &Bike) -> usize {
    let buttons = bike.buttons();
    let on = |side: BarSide| buttons.iter().filter(|(_, c, _)| c.side == side).count();
    on(BarSide::Left).max(on(BarSide::Right))
}

/// What every button answers.
fn answers_to(load: Load, plan: &Plan) -> SmallMap<ButtonId, Answer> {
    let buttons = plan.bike.buttons().into_iter();
    let answers = buttons.map(|(id, ..)| {
        let answer = match put(load, Spot::Button(id)) {
            None => Answer::Carried,
            Some(edit) => match plan.apply(&edit) {
                Ok(_) => Answer::Takes,
                Err(error) => Answer::Refuses(error.to_string()),
            },
        };
        (id, answer)
    });
    answers.collect()
}
