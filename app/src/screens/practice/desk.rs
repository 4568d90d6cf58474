//! What is practised, how far it is, and what is shown of it.

use std::sync::Arc;

use leptos::ev;
use leptos::prelude::*;
use leverwright_core::layout::LayoutId;
use leverwright_core::plan::Plan;
use leverwright_core::practice::{KeySet, NewsKind, RoadView, Session, Shown, Switch};
use leverwright_core::record::Practised;
use web_sys::VisibilityState;

use super::choices::{self, Choices};
use super::pad::{self, PadButton, PadSet};
use super::voice;
use crate::focus::focus_soon;
use crate::settings::Settings;
use crate::workspace::Workspace;

/// The name of the stage on the page, which takes the focus while it runs.
pub const STAGE: &str = "practice-stage";

/// How far it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mode {
    /// Nothing runs.
    Ready,
    /// The road comes.
    Riding,
    /// It stands until it goes on.
    Paused,
    /// It is over, and what came of it is shown.
    Done,
}

/// Which press is waited for, to give it to a button.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Learning {
    /// A key.
    Key(Switch),
    /// A button of a controller.
    Pad(Switch),
}

/// The practice of this screen. A context.
#[derive(Clone, Copy)]
pub struct PracticeDesk {
    pub workspace: Workspace,
    session: StoredValue<Option<Session>>,
    /// Which run of frames is the one that counts.
    run: StoredValue<u32>,
    pads_down: StoredValue<Vec<PadButton>>,
    offered_stop: StoredValue<bool>,
    /// The second and the words of the picture that stands.
    still: StoredValue<(u32, String)>,
    /// Whether the device asks for little motion.
    asks_still: StoredValue<bool>,
    /// How far it is.
    pub mode: RwSignal<Mode>,
    /// Whether a stop is offered.
    pub offers_stop: RwSignal<bool>,
    /// The layout that is practised.
    pub layout: RwSignal<Option<LayoutId>>,
    /// What is chosen.
    pub choices: RwSignal<Choices>,
    /// Which key stands for what.
    pub keys: RwSignal<KeySet>,
    /// Which button of a controller stands for what.
    pub pads: RwSignal<PadSet>,
    /// Which press is waited for.
    pub learning: RwSignal<Option<Learning>>,
    /// What stands beside the road.
    pub shown: RwSignal<Shown>,
    /// What was right last.
    pub last: RwSignal<String>,
    /// The road.
    pub view: RwSignal<RoadView>,
    /// Whether the next two taps count as together.
    pub together: RwSignal<bool>,
    /// Whether the list of buttons to speak of is unfolded before it starts: once
    /// it was seen, it stays.
    pub shows_marks: RwSignal<bool>,
}

impl PracticeDesk {
    /// Nothing is practised yet.
    pub fn new() -> PracticeDesk {
        let workspace = Workspace::here();
        let settings = Settings::here();
        let plan = workspace.plan.get_untracked();
        let plan = plan.as_deref();
        let choices = choices::load(settings.get(), plan);
        let desk = PracticeDesk {
            workspace,
            session: StoredValue::new(None),
            run: StoredValue::new(0),
            pads_down: StoredValue::new(Vec::new()),
            offered_stop: StoredValue::new(false),
            still: StoredValue::new((0, String::new())),
            asks_still: StoredValue::new(false),
            mode: RwSignal::new(Mode::Ready),
            offers_stop: RwSignal::new(false),
            layout: RwSignal::new(None),
            keys: RwSignal::new(
                plan.map_or_else(KeySet::default, |plan| choices::keys(plan, choices.hand)),
            ),
            pads: RwSignal::new(plan.map_or_else(PadSet::new, choices::pads)),
            choices: RwSignal::new(choices),
            learning: RwSignal::new(None),
            shown: RwSignal::new(Shown::default()),
            last: RwSignal::new(String::new()),
            view: RwSignal::new(RoadView::default()),
            together: RwSignal::new(false),
            shows_marks: RwSignal::new(false),
        };
        on_cleanup(voice::hush);
        desk
    }

    /// The desk of the screen.
    pub fn here() -> PracticeDesk {
        expect_context()
    }

    /// The open plan as it stands.
    pub fn plan(self) -> Option<Arc<Plan>> {
        self.workspace.plan.get_untracked()
    }

    /// The layout that is practised: the one in hand, unless another was chosen.
    pub fn layout_of(self, plan: &Plan) -> LayoutId {
        let chosen = self.layout.get();
        chosen
            .filter(|id| plan.layouts.iter().any(|layout| layout.id == *id))
            .unwrap_or(plan.current)
    }

    /// Whether pictures stand still: because it was chosen here, or because the
    /// device asks for little motion.
    fn is_still(self) -> bool {
        self.asks_still.get_value() || self.choices.with_untracked(|choices| choices.is_still)
    }

    /// Changes what is chosen, and keeps it.
    pub fn choose(self, change: impl FnOnce(&mut Choices)) {
        let hand = self.choices.with_untracked(|choices| choices.hand);
        self.choices.update(change);
        let now = self.choices.get_untracked();
        let Some(plan) = self.plan() else { return };
        if now.hand != hand {
            self.keys.set(KeySet::for_hand(&plan, now.hand));
        }
        self.session.update_value(|session| {
            if let Some(session) = session {
                session.lesson_mut().set_pace(now.pace);
                session.lesson_mut().count_late(now.counts_late);
            }
        });
        self.save();
    }

    fn save(self) {
        if let Some(plan) = self.plan() {
            let keys = self.keys.get_untracked();
            let pads = self.pads.get_untracked();
            choices::save(&plan, self.choices.get_untracked(), &keys, &pads);
        }
    }

    /// Begins.
    pub fn start(self) {
        let Some(plan) = self.plan() else { return };
        let choices = self.choices.get_untracked();
        let seed = js_sys::Date::now().to_bits();
        let layout = untrack(|| self.layout_of(&plan));
        let Some(mut session) = Session::new(&plan, layout, choices.pace, seed) else {
            return self.workspace.refuse(
                "No button of this layout can be reached, so there is nothing to practise. Put a function on a button on the Layout screen, or answer on the Rider screen what the hand does.",
            );
        };
        session.lesson_mut().count_late(choices.counts_late);
        self.session.set_value(Some(session));
        self.offered_stop.set_value(false);
        self.together.set(false);
        self.last.set(String::new());
        self.learning.set(None);
        self.mode.set(Mode::Riding);
        self.look_again();
        self.tell();
        focus_soon(STAGE);
        self.run();
    }

    /// Stands still.
    pub fn pause(self) {
        if self.mode.get_untracked() != Mode::Riding {
            return;
        }
        self.release();
        voice::hush();
        self.mode.set(Mode::Paused);
        self.workspace.say("Paused.");
        focus_soon("practice-go-on");
    }

    /// Goes on after a pause.
    pub fn go_on(self) {
        self.offers_stop.set(false);
        self.learning.set(None);
        self.mode.set(Mode::Riding);
        let headline = self.shown.with_untracked(|shown| shown.headline.clone());
        self.workspace.say(headline);
        focus_soon(STAGE);
        self.run();
    }

    /// Ends it: to what came of it, if anything was pressed.
    pub fn stop(self) {
        self.offers_stop.set(false);
        voice::hush();
        let pressed = self
            .result()
            .is_some_and(|result| !result.presses.is_empty());
        self.mode
            .set(if pressed { Mode::Done } else { Mode::Ready });
        focus_soon(if pressed {
            "practice-results"
        } else {
            "practice-start"
        });
    }

    /// Ready for another one.
    pub fn back(self) {
        self.session.set_value(None);
        self.mode.set(Mode::Ready);
        focus_soon("practice-start");
    }

    /// What came of it so far.
    pub fn result(self) -> Option<Practised> {
        self.session
            .with_value(|session| session.as_ref().map(|session| session.result().clone()))
    }

    /// Something goes down.
    pub fn press(self, switch: Switch) {
        self.act(|session| session.press(switch));
    }

    /// A click without a pointer, by key, voice or switch: a tap of a button. A
    /// brake is kept until the next one, for such a click cannot last.
    pub fn click(self, switch: Switch) {
        let is_down = self
            .shown
            .with_untracked(|shown| shown.down.contains(&switch));
        if !is_down {
            self.press(switch);
        }
        if is_down || !switch.is_brake() {
            self.let_go(switch);
        }
    }

    /// Something is let go.
    pub fn let_go(self, switch: Switch) {
        self.act(|session| session.let_go(switch));
    }

    /// Whether the layout has buttons that are pressed together.
    pub fn has_chords(self) -> bool {
        self.session
            .with_value(|session| session.as_ref().is_some_and(Session::has_chords))
    }

    /// The next two taps count as together, or no longer.
    pub fn press_together(self, on: bool) {
        self.act(|session| session.press_together(on));
    }

    fn release(self) {
        self.pads_down.set_value(Vec::new());
        self.act(Session::release);
    }

    fn act(self, act: impl FnOnce(&mut Session)) {
        self.session.update_value(|session| {
            if let Some(session) = session {
                act(session);
            }
        });
        self.look_again();
        self.tell();
    }

    /// Takes a key for what waits for one; whether any did.
    pub fn learn_key(self, key: &str) -> bool {
        let Some(Learning::Key(switch)) = self.learning.get_untracked() else {
            return false;
        };
        let mut taken = key == "Escape";
        if !taken {
            self.keys.update(|keys| taken = keys.put(switch, key));
        }
        match taken {
            true => self.learning.set(None),
            false => self
                .workspace
                .say("That key is not free. Use a letter or the space bar."),
        }
        self.save();
        true
    }

    /// Waits for a press on a controller for something.
    pub fn learn_pad(self, switch: Switch) {
        self.learning.set(Some(Learning::Pad(switch)));
        self.pads_down.set_value(pad::down());
        self.run();
    }

    /// The keys of the hand as they were.
    pub fn usual_keys(self) {
        if let Some(plan) = self.plan() {
            let hand = self.choices.with_untracked(|choices| choices.hand);
            self.keys.set(KeySet::for_hand(&plan, hand));
            self.save();
        }
    }

    /// Runs from frame to frame while something moves or is waited for.
    fn run(self) {
        let query = window().match_media("(prefers-reduced-motion: reduce)");
        let asked = query.ok().flatten().is_some_and(|query| query.matches());
        self.asks_still.set_value(asked);
        self.run.update_value(|run| *run = run.wrapping_add(1));
        self.frame(self.run.get_value(), now());
    }

    fn frame(self, run: u32, last: f64) {
        request_animation_frame(move || {
            // The screen may be gone by now, and its values with it.
            if self.run.try_get_value() != Some(run) {
                return;
            }
            let time = now();
            let pads = pad::down();
            let before = self.pads_down.get_value();
            if pads != before {
                self.pads_changed(&before, &pads);
                self.pads_down.set_value(pads);
            }
            if self.mode.get_untracked() == Mode::Riding {
                self.tick((time - last) / 1000.0);
            } else if !matches!(self.learning.get_untracked(), Some(Learning::Pad(_))) {
                return;
            }
            self.frame(run, time);
        });
    }

    fn pads_changed(self, before: &[PadButton], now: &[PadButton]) {
        let pads = self.pads.get_untracked();
        let meant = |button: &PadButton| {
            let mut pads = pads.iter();
            pads.find(|(_, known)| known == button)
                .map(|(switch, _)| *switch)
        };
        let fresh: Vec<PadButton> = now
            .iter()
            .filter(|b| !before.contains(b))
            .copied()
            .collect();
        if let (Some(Learning::Pad(switch)), Some(button)) =
            (self.learning.get_untracked(), fresh.first())
        {
            self.pads.update(|pads| {
                pads.retain(|(other, known)| *other != switch && known != button);
                pads.push((switch, *button));
            });
            self.learning.set(None);
            self.save();
            self.workspace.say(format!("Taken: {}.", button.words()));
            return;
        }
        if self.mode.get_untracked() == Mode::Riding {
            for switch in before.iter().filter(|b| !now.contains(b)).filter_map(meant) {
                self.let_go(switch);
            }
            for switch in fresh.iter().filter_map(meant) {
                self.press(switch);
            }
        }
    }

    /// Time passes.
    fn tick(self, seconds: f64) {
        let is_still = self.is_still();
        let mut offers = false;
        self.session.update_value(|session| {
            if let Some(session) = session {
                session.advance(seconds);
                if is_still && session.lesson().pace().seconds().is_none() {
                    session.skip();
                }
                offers = session.lesson().offers_stop(session.seconds());
            }
        });
        self.look_again();
        self.tell();
        if offers && !self.offered_stop.get_value() {
            self.offered_stop.set_value(true);
            self.offers_stop.set(true);
            self.pause();
        }
    }

    /// Shows what stands now; pictures that stand still change with what is
    /// wanted and once a second.
    fn look_again(self) {
        let is_still = self.is_still();
        self.session.with_value(|session| {
            let Some(session) = session else { return };
            let shown = session.shown();
            let moment = (session.seconds(), shown.headline.clone());
            if !is_still || self.still.with_value(|still| *still != moment) {
                self.still.set_value(moment);
                set_if_new(self.view, session.view());
            }
            set_if_new(self.shown, shown);
            set_if_new(self.together, session.presses_together());
        });
    }

    /// Says what there is to say.
    fn tell(self) {
        let mut news = Vec::new();
        self.session.update_value(|session| {
            news = session.as_mut().map(Session::take_news).unwrap_or_default();
        });
        if news.is_empty() {
            return;
        }
        for item in &news {
            match item.kind {
                NewsKind::Right => self.last.set(item.words.clone()),
                // What is wanted next stands alone.
                NewsKind::Wrong | NewsKind::Call => self.last.set(String::new()),
            }
        }
        let words: Vec<String> = news.into_iter().map(|item| item.words).collect();
        let words = words.join(" ");
        if self.choices.with_untracked(|choices| choices.speaks) {
            voice::say(&words);
        }
        self.workspace.say(words);
    }

    /// Whoever goes to another window lets go of everything, and is waited for.
    pub fn let_go_when_away(self) {
        let away = window_event_listener(ev::visibilitychange, move |_| {
            if document().visibility_state() == VisibilityState::Hidden {
                self.pause();
            }
        });
        let blurred = window_event_listener(ev::blur, move |_| {
            if self.mode.get_untracked() == Mode::Riding {
                self.release();
            }
        });
        on_cleanup(move || {
            away.remove();
            blurred.remove();
        });
    }
}

/// Sets what follows only if it is another: most frames change little.
fn set_if_new<T: PartialEq + Send + Sync + 'static>(signal: RwSignal<T>, value: T) {
    if signal.with_untracked(|old| *old != value) {
        signal.set(value);
    }
}

/// Milliseconds of a clock that only goes forward.
fn now() -> f64 {
    window()
        .performance()
        .map_or_else(js_sys::Date::now, |clock| clock.now())
}
