//! Practising in time: what is called, pressed, shifted and rolled.

use super::call::what;
use super::course::Course;
use super::fingers::{Act, Fingers};
use super::legs::{Legs, STEP};
use super::{Answer, Call, Gearing, Lesson, Pace, Pressed, RoadView, Scene, Switch};
use crate::cockpit::{ButtonId, ControlId, HoldRun};
use crate::coverage::Via;
use crate::gears::{Kmh, Rpm};
use crate::layout::{Hold, Layout, LayoutId};
use crate::plan::Plan;
use crate::record::Practised;
use crate::ride::physics::Motion;

/// How far ahead the road waits while there is no hurry, in metres.
const WAITS: f64 = 14.0;

/// How far ahead what is called for lies while there is no hurry, in metres.
const LEAD: f64 = 24.0;

/// From an answer to the next call, in seconds.
const REST: f64 = 1.4;

/// How far before the line the road waits for the brake, in metres: what it
/// takes to stop.
const BRAKE_AT: f64 = 8.0;

/// The longest stretch of time taken at once, in seconds: after a pause of the
/// machine nobody is asked for what went by meanwhile.
const LONGEST: f64 = 0.25;

/// Something to be told, read out or spoken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct News {
    /// What kind of thing it is.
    pub kind: NewsKind,
    /// What it says.
    pub words: String,
}

/// What kind of news it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NewsKind {
    /// Something to do.
    Call,
    /// It was the right one.
    Right,
    /// It was another one, or pressed another way.
    Wrong,
}

/// Where the session is.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Phase {
    /// Rolling to the next call, until a time.
    Coming { until: f64 },
    /// A call is open for a place.
    Called { place: f64, is_late: bool },
    /// The shift before a stop is done: the brake is wanted before the line.
    Braking { line: f64 },
    /// It stands, the brake is held.
    Standing,
}

/// What is shown beside the road.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Shown {
    /// What is wanted, in large letters.
    pub headline: String,
    /// How and where, or what was wrong.
    pub hint: String,
    /// Whether the hint says what was wrong.
    pub is_wrong: bool,
    /// Buttons called so far, and the brake levers: where there is little room
    /// these come first.
    pub called: Vec<Switch>,
    /// What lights up, because the button is shown.
    pub lit: Vec<Switch>,
    /// What is down.
    pub down: Vec<Switch>,
    /// The gear, if the teeth are known.
    pub gear: Option<String>,
    /// Turns of the crank in a minute, if gear and wheel are known.
    pub cadence: Option<u32>,
    /// In km/h.
    pub speed: u32,
    /// Whether the road waits.
    pub waits: bool,
}

/// A practice session as it goes on: time comes in, news and views come out.
#[derive(Debug, Clone)]
pub struct Session {
    plan: Plan,
    layout: Layout,
    lesson: Lesson,
    gearing: Option<Gearing>,
    legs: Legs,
    course: Course,
    motion: Motion,
    fingers: Fingers,
    /// Runs of holds: when the next shift comes, how many are left.
    runs: Vec<(ButtonId, f64, u8)>,
    brakes: Vec<ControlId>,
    has_brakes: bool,
    /// The first of two that are pressed one after the other.
    together: Option<Option<ButtonId>>,
    phase: Phase,
    /// In seconds.
    clock: f64,
    left_over: f64,
    wrong: Option<String>,
    news: Vec<News>,
}

impl Session {
    /// A session with a layout; `None` as of [`Lesson::new`].
    pub fn new(plan: &Plan, layout: LayoutId, pace: Pace, seed: u64) -> Option<Session> {
        let lesson = Lesson::new(plan, layout, pace, seed)?;
        let layout = plan.layouts.iter().find(|l| l.id == layout)?.clone();
        let legs = Legs::of(&plan.rides.habits);
        let mut session = Session {
            gearing: Gearing::of(plan, &layout).ok(),
            course: Course::default(),
            motion: legs.start(),
            legs,
            lesson,
            fingers: Fingers::default(),
            runs: Vec::new(),
            brakes: Vec::new(),
            has_brakes: Switch::all(&plan.bike).iter().any(|s| s.is_brake()),
            together: None,
            phase: Phase::Coming { until: 0.0 },
            clock: 0.0,
            left_over: 0.0,
            wrong: None,
            news: Vec::new(),
            plan: plan.clone(),
            layout,
        };
        session.open();
        Some(session)
    }

    /// The lesson, for its settings and results.
    pub fn lesson(&self) -> &Lesson {
        &self.lesson
    }

    /// The lesson, to change its level and whether lateness counts.
    pub fn lesson_mut(&mut self) -> &mut Lesson {
        &mut self.lesson
    }

    /// How it went so far.
    pub fn result(&self) -> &Practised {
        self.lesson.result()
    }

    /// How long it has gone on, in whole seconds.
    pub fn seconds(&self) -> u32 {
        self.clock as u32
    }

    /// What there is to tell since it was last asked.
    pub fn take_news(&mut self) -> Vec<News> {
        std::mem::take(&mut self.news)
    }

    /// What the rider sees of the road.
    pub fn view(&self) -> RoadView {
        RoadView::of(&self.course, self.motion.at)
    }

    /// What comes next on the road, for a picture in words.
    pub fn scene(&self) -> Scene {
        self.lesson.call().map_or(Scene::Flat, |call| call.scene)
    }

    /// Time passes, in seconds.
    pub fn advance(&mut self, seconds: f64) {
        self.left_over += seconds.clamp(0.0, LONGEST);
        while self.left_over >= STEP {
            self.left_over -= STEP;
            self.step();
        }
    }

    /// On to where something is wanted, for a picture that does not move; at
    /// most half a minute.
    pub fn skip(&mut self) {
        for _ in 0..(30.0 / STEP) as u32 {
            let is_open = !matches!(self.phase, Phase::Coming { .. });
            if is_open && (self.waits() || self.lesson.pace().seconds().is_some()) {
                return;
            }
            self.step();
        }
    }

    /// Something goes down.
    pub fn press(&mut self, switch: Switch) {
        match switch {
            Switch::Brake(lever) if !self.brakes.contains(&lever) => {
                self.brakes.push(lever);
                self.brake_pulled();
            }
            Switch::Brake(_) => {}
            Switch::Button(button) if self.together.is_some() => self.gather(button),
            Switch::Button(button) => {
                let acts = self
                    .fingers
                    .press(&self.plan.bike, &self.layout, button, self.clock);
                self.take(acts);
            }
        }
    }

    /// Something is let go.
    pub fn let_go(&mut self, switch: Switch) {
        match switch {
            Switch::Brake(lever) => {
                let pulled = self.brakes.contains(&lever);
                self.brakes.retain(|other| *other != lever);
                if pulled && self.brakes.is_empty() {
                    self.brake_let_go();
                }
            }
            Switch::Button(button) => {
                self.runs.retain(|(other, ..)| *other != button);
                let acts = self.fingers.let_go(&self.plan.bike, &self.layout, button);
                self.take(acts);
            }
        }
    }

    /// Everything is let go without meaning anything.
    pub fn release(&mut self) {
        self.fingers.forget();
        self.runs.clear();
        self.brakes.clear();
        self.together = None;
    }

    /// Whether the layout has buttons that are pressed together.
    pub fn has_chords(&self) -> bool {
        let mut chords = self.layout.chords.iter();
        chords.any(|chord| chord.is_connected(&self.plan.bike))
    }

    /// The next two taps count as pressed together, for who presses with one
    /// finger or one switch; or no longer.
    pub fn press_together(&mut self, on: bool) {
        self.together = on.then_some(None);
    }

    /// Whether the next two taps count as pressed together.
    pub fn presses_together(&self) -> bool {
        self.together.is_some()
    }

    fn gather(&mut self, button: ButtonId) {
        match self.together.flatten() {
            Some(first) if first != button => {
                self.together = None;
                let both = Pressed::Both(first, button);
                self.take(vec![Act::Does(both), Act::Says(both)]);
            }
            _ => self.together = Some(Some(button)),
        }
    }

    fn step(&mut self) {
        self.clock += STEP;
        let trigger = f64::from(self.plan.shift_settings.pace.trigger.0) / 1000.0;
        let acts = self
            .fingers
            .wait(&self.plan.bike, &self.layout, self.clock, trigger);
        self.take(acts);
        self.run_on();
        if !self.waits() {
            let brakes = !self.brakes.is_empty();
            let gearing = self.gearing.as_ref();
            self.motion = self.legs.roll(self.motion, &self.course, gearing, brakes);
            self.course.pass(self.motion.at);
        }
        self.go_on();
    }

    /// Whether the road stands still until something is pressed.
    fn waits(&self) -> bool {
        let no_hurry = self.lesson.pace().seconds().is_none();
        match self.phase {
            Phase::Coming { .. } => false,
            Phase::Called { place, .. } => no_hurry && place - self.motion.at <= WAITS,
            Phase::Braking { line } => self.brakes.is_empty() && line - self.motion.at <= BRAKE_AT,
            Phase::Standing => true,
        }
    }

    fn go_on(&mut self) {
        match self.phase {
            Phase::Coming { until } if self.clock >= until => self.open(),
            Phase::Called { place, is_late } if !is_late && self.motion.at >= place => {
                self.lesson.is_late();
                self.phase = Phase::Called {
                    place,
                    is_late: true,
                };
            }
            Phase::Braking { .. } if self.motion.speed <= 0.0 => {
                self.phase = Phase::Standing;
                self.wrong = None;
                self.tell(NewsKind::Right, self.hint());
                self.tell(NewsKind::Call, format!("{}.", self.headline()));
            }
            Phase::Standing if self.brakes.is_empty() => self.come(),
            _ => {}
        }
    }

    fn come(&mut self) {
        self.phase = Phase::Coming {
            until: self.clock + REST,
        };
    }

    /// Opens the call that the lesson has.
    fn open(&mut self) {
        let Some(call) = self.lesson.call().cloned() else {
            return;
        };
        let lead = match self.lesson.pace().seconds() {
            None => LEAD,
            Some(seconds) => (seconds * self.motion.speed).max(8.0),
        };
        let place = self.motion.at + lead;
        self.course.put(call.scene, place);
        if let Some(gearing) = &mut self.gearing {
            gearing.make_room(call.function, Kmh(self.motion.speed * 3.6));
        }
        self.wrong = None;
        self.phase = Phase::Called {
            place,
            is_late: false,
        };
        self.tell(NewsKind::Call, self.spoken());
    }

    /// The call as it is read out: with the way, where that is shown.
    fn spoken(&self) -> String {
        match self.lesson.shows() {
            Some(_) => format!("{}. {}", self.headline(), self.hint()),
            None => format!("{}.", self.headline()),
        }
    }

    fn take(&mut self, acts: Vec<Act>) {
        for act in acts {
            match act {
                Act::Does(pressed) => {
                    if let Some(gearing) = &mut self.gearing {
                        gearing.press(&self.plan, pressed);
                    }
                }
                Act::Repeats(button) => {
                    // The first shift was made when the button went down.
                    let left = match self.layout.holds.get(&button) {
                        Some(Hold::Repeats(HoldRun::Cogs(most))) => most.saturating_sub(1),
                        Some(Hold::Repeats(HoldRun::ToEnd)) => u8::MAX,
                        _ => 0,
                    };
                    self.runs.push((button, self.clock, left));
                }
                Act::Says(pressed) => self.answer(pressed),
            }
        }
    }

    /// Shifts on for buttons that are kept pressed.
    fn run_on(&mut self) {
        let Some(gearing) = &mut self.gearing else {
            return;
        };
        for (button, next, left) in &mut self.runs {
            if *left > 0 && self.clock >= *next {
                match gearing.run_on(&self.plan, *button) {
                    Some(took) => {
                        *left -= 1;
                        *next = self.clock + f64::from(took.0) / 1000.0;
                    }
                    None => *left = 0,
                }
            }
        }
    }

    fn answer(&mut self, pressed: Pressed) {
        let (Phase::Called { place, .. }, Some(call)) = (self.phase, self.lesson.call().cloned())
        else {
            return;
        };
        match self.lesson.press(pressed) {
            Answer::RightFirst | Answer::Right => self.is_right(&call, place),
            Answer::Wrong { pressed, does } => {
                let words = self.what_was(&pressed, does.map(what));
                self.is_wrong(words);
            }
            Answer::OtherWay => self.is_wrong(other_way(&call).into()),
            Answer::Nothing => {}
        }
    }

    fn is_right(&mut self, call: &Call, place: f64) {
        self.wrong = None;
        self.tell(
            NewsKind::Right,
            format!("Found: {}.", lower(what(call.function))),
        );
        if call.scene == Scene::Stop && self.has_brakes {
            self.phase = Phase::Braking { line: place };
            self.tell(NewsKind::Call, format!("{}.", self.headline()));
        } else {
            self.come();
        }
    }

    fn is_wrong(&mut self, words: String) {
        let said = format!("{words} {}", self.way());
        self.tell(NewsKind::Wrong, said);
        self.wrong = Some(words);
    }

    /// What was pressed instead: "3, left outer paddle, is easier."
    fn what_was(&self, pressed: &[ButtonId], does: Option<&str>) -> String {
        let buttons: Vec<String> = pressed.iter().map(|id| self.name(*id)).collect();
        let buttons = crate::text::list(&buttons, "and");
        match does {
            Some(does) => format!("{buttons}: {}.", lower(does)),
            None => format!("{buttons}: does nothing."),
        }
    }

    fn name(&self, button: ButtonId) -> String {
        let bike = &self.plan.bike;
        match bike.balloon(button) {
            Some(number) => format!("{number} {}", bike.place_of(button)),
            None => bike.place_of(button),
        }
    }

    /// A brake is pulled: wanted, or while a call is open.
    fn brake_pulled(&mut self) {
        if matches!(self.phase, Phase::Braking { .. }) {
            self.wrong = None;
        }
        let stops = self.lesson.call().is_some_and(|c| c.scene == Scene::Stop);
        if stops && matches!(self.phase, Phase::Called { .. }) {
            self.wrong = Some("Shift first, while the wheels still turn; then brake.".into());
            self.tell(
                NewsKind::Wrong,
                "Shift first, while the wheels still turn; then brake.".into(),
            );
        }
    }

    /// All brakes are let go: too early while the wheels still turn.
    fn brake_let_go(&mut self) {
        if matches!(self.phase, Phase::Braking { .. }) {
            let words = "Hold it: keep the brake pulled until you stand.";
            self.wrong = Some(words.into());
            self.tell(NewsKind::Wrong, words.into());
        }
    }

    fn tell(&mut self, kind: NewsKind, words: String) {
        self.news.push(News { kind, words });
    }

    /// What is wanted, in a few words.
    fn headline(&self) -> String {
        match (self.phase, self.lesson.call()) {
            (Phase::Called { .. }, Some(call)) => call.words.clone(),
            (Phase::Braking { .. }, _) => "Now brake: pull and keep".into(),
            (Phase::Standing, _) => "Let the brake go, and ride on".into(),
            _ => "Ride on".into(),
        }
    }

    fn hint(&self) -> String {
        match (self.phase, &self.wrong) {
            (Phase::Called { .. }, Some(wrong)) => format!("{wrong} {}", self.way()),
            (Phase::Called { .. }, None) if self.lesson.shows().is_some() => self.way(),
            (Phase::Called { .. }, None) => self
                .lesson
                .call()
                .map(|call| format!("Hands: {}.", call.position))
                .unwrap_or_default(),
            (Phase::Braking { .. }, Some(wrong)) => wrong.clone(),
            (Phase::Braking { .. }, None) => "Shifted in time. The line is where you stop.".into(),
            (Phase::Standing, _) => "Braked: you stand.".into(),
            (Phase::Coming { .. }, _) => String::new(),
        }
    }

    /// How what is wanted is pressed: "Wanted: 3 left outer paddle."
    fn way(&self) -> String {
        let Some(call) = self.lesson.call() else {
            return String::new();
        };
        match call.answers.first() {
            Some(Via::Tap(id)) if call.keep => {
                format!("Wanted: {}, kept pressed, then let go.", self.name(*id))
            }
            Some(Via::Tap(id)) => format!("Wanted: {}.", self.name(*id)),
            Some(Via::Hold(id)) => format!("Wanted: {}, kept pressed.", self.name(*id)),
            Some(Via::Chord(chord)) => format!(
                "Wanted: {} and {} together.",
                self.name(chord.first),
                self.name(chord.second)
            ),
            None => String::new(),
        }
    }

    /// What is shown beside the road.
    pub fn shown(&self) -> Shown {
        let brakes = || {
            let all = Switch::all(&self.plan.bike).into_iter();
            all.filter(|switch| switch.is_brake())
        };
        let called = self.lesson.buttons().into_iter().map(Switch::Button);
        let lit = match self.phase {
            Phase::Called { .. } => self.lesson.shows().map_or_else(Vec::new, |via| {
                via.buttons().into_iter().map(Switch::Button).collect()
            }),
            Phase::Braking { .. } => brakes().collect(),
            _ => Vec::new(),
        };
        let down = self.fingers.down().chain(self.together.flatten());
        let pulled = self.brakes.iter().copied().map(Switch::Brake);
        let speed = Kmh(self.motion.speed * 3.6);
        let cadence = self.gearing.as_ref().and_then(|g| g.cadence(speed));
        Shown {
            headline: self.headline(),
            hint: self.hint(),
            is_wrong: self.wrong.is_some()
                && matches!(self.phase, Phase::Called { .. } | Phase::Braking { .. }),
            called: called.chain(brakes()).collect(),
            lit,
            down: down.map(Switch::Button).chain(pulled).collect(),
            gear: self.gearing.as_ref().map(Gearing::words),
            cadence: cadence.map(|Rpm(rpm)| libm::round(rpm) as u32),
            speed: libm::round(speed.0) as u32,
            waits: self.waits(),
        }
    }
}

const fn other_way(call: &Call) -> &'static str {
    match call.keep {
        true => "That was a short press.",
        false => "That was kept pressed too long, or not long enough.",
    }
}

fn lower(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|c| c.to_ascii_lowercase());
    first.into_iter().chain(letters).collect()
}
