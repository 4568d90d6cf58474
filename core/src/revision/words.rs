//! Differences in words.

use serde_json::Value;

use crate::cockpit::{ButtonId, ButtonPart, ControlId, HandPosition, HoldRun};
use crate::finding::Place;
use crate::function::Function;
use crate::layout::Hold;
use crate::plan::Plan;
use crate::record::PartKey;
use crate::rider::{Ability, Contact, Difficulty, Evidence, HandPlace, Source, Worn};
use crate::rules;
use crate::shift_plan::ShiftPlanKind;
use crate::text::{Date, capital};
use crate::vocabulary::Vocabulary;

/// One place of a part that differs.
pub(super) struct Change<'a> {
    pub(super) part: &'a PartKey,
    /// The names that lead to it.
    pub(super) names: &'a [String],
    pub(super) was: Option<&'a Value>,
    pub(super) now: Option<&'a Value>,
    pub(super) before: &'a Plan,
    pub(super) after: &'a Plan,
}

impl Change<'_> {
    /// What changed, in a sentence without its full stop, and the places on the
    /// drawing.
    pub(super) fn told(&self) -> (String, Vec<Place>) {
        let names: Vec<&str> = self.names.iter().map(String::as_str).collect();
        let (subject, places) = self.subject(&names);
        let words = match self.kind(&names) {
            Kind::Whole if self.was.is_none() => format!("{subject}: added"),
            Kind::Whole if self.now.is_none() => format!("{subject}: removed"),
            Kind::Whole | Kind::Moved => format!("{subject}: changed"),
            Kind::Answer => format!(
                "{subject}: {}{}, was {}{}",
                self.value(self.now),
                origin(self.now),
                self.value(self.was),
                origin(self.was)
            ),
            Kind::Before => format!("{subject}: changed in what was said before"),
            Kind::Value => format!(
                "{subject}: {}, was {}",
                self.value(self.now),
                self.value(self.was)
            ),
        };
        (capital(&words), places)
    }

    fn kind(&self, names: &[&str]) -> Kind {
        let is_group = |value: Option<&Value>| match value {
            Some(Value::Object(group)) => !["is", "repeats", "does"]
                .iter()
                .any(|n| group.contains_key(*n)),
            Some(Value::Array(items)) => !items.iter().all(Value::is_string),
            _ => false,
        };
        if let Some((was, now)) = self.answers() {
            let same = |name: &str| was.get(name) == now.get(name);
            return match (same("evidence"), same("is")) {
                (false, _) => Kind::Answer,
                (true, false) => Kind::Value,
                (true, true) => Kind::Before,
            };
        }
        let chord = matches!(names, ["chords", _]);
        if names.is_empty() || !chord && (is_group(self.was) || is_group(self.now)) {
            return Kind::Whole;
        }
        match names {
            [.., "at", _] | ["order"] => Kind::Moved,
            _ if names.contains(&"evidence") => Kind::Moved,
            _ => Kind::Value,
        }
    }

    /// Two answers to the same question.
    fn answers(&self) -> Option<(&Group, &Group)> {
        match (self.was, self.now) {
            (Some(Value::Object(was)), Some(Value::Object(now)))
                if was.contains_key("is") && now.contains_key("is") =>
            {
                Some((was, now))
            }
            _ => None,
        }
    }

    fn subject(&self, names: &[&str]) -> (String, Vec<Place>) {
        match self.part {
            PartKey::Layout(id) => self.of_layout(*id, names),
            PartKey::Bike => self.of_bike(names),
            PartKey::Hand(side) => {
                let hand = format!("{side} hand");
                let what = match names {
                    ["abilities", code, ..] => Ability::from_code(code).map(Vocabulary::words),
                    ["contacts", code, ..] => Contact::from_code(code).map(Vocabulary::words),
                    _ => None,
                };
                let what = what.map_or_else(|| spoken(names), str::to_owned);
                (joined(&hand, &what), vec![Place::Hand(*side)])
            }
            PartKey::Rider => match names {
                ["positions", code, ..] => {
                    let position = HandPosition::from_code(code);
                    let places = position.map(Place::Position).into_iter().collect();
                    (format!("riding on the {}", spoken(&[code])), places)
                }
                ["own_words"] => ("the rider’s own words".into(), Vec::new()),
                ["rides", ..] => (
                    "how the rider rides, and what rides asked".into(),
                    Vec::new(),
                ),
                _ => (joined("rider", &spoken(names)), Vec::new()),
            },
            PartKey::Reach => match names {
                [button, ..] => match ButtonId::parse(button) {
                    Some(id) => (
                        format!("{}, reach that was seen", self.place_of(id)),
                        vec![Place::Button(id)],
                    ),
                    None => ("levers pulled together, as tried".into(), Vec::new()),
                },
                [] => ("reach that was seen".into(), Vec::new()),
            },
            PartKey::Road => ("road that is ridden".into(), Vec::new()),
            PartKey::Title => match names {
                ["name"] => ("name of the plan".into(), Vec::new()),
                ["job"] => ("job number".into(), Vec::new()),
                _ => (spoken(names), Vec::new()),
            },
            PartKey::Layouts => match names {
                ["order"] => ("order of the layouts".into(), Vec::new()),
                ["current"] => ("layout in hand".into(), Vec::new()),
                _ => ("layout for the sheet".into(), Vec::new()),
            },
            PartKey::Accepted(finding) => accepted(finding, names),
        }
    }

    fn of_layout(&self, id: crate::layout::LayoutId, names: &[&str]) -> (String, Vec<Place>) {
        let mut layouts = self.after.layouts.iter().chain(&self.before.layouts);
        let name = layouts
            .find(|layout| layout.id == id)
            .map(|layout| layout.name.as_str());
        let layout = format!("layout “{}”", name.unwrap_or_default());
        match names {
            ["taps", button, ..] => self.button(button, ""),
            ["holds", button, ..] => self.button(button, ", kept pressed"),
            ["chords", chord, ..] => {
                let ids: Vec<ButtonId> = chord.split(" + ").filter_map(ButtonId::parse).collect();
                let places: Vec<String> = ids.iter().map(|id| self.place_of(*id)).collect();
                (
                    format!("{} together", places.join(" and ")),
                    ids.into_iter().map(Place::Button).collect(),
                )
            }
            ["name"] => ("name of the layout".into(), Vec::new()),
            _ => (joined(&layout, &spoken(names)), Vec::new()),
        }
    }

    fn of_bike(&self, names: &[&str]) -> (String, Vec<Place>) {
        match names {
            ["bike", "controls", id, "buttons", part, rest @ ..] => {
                let (subject, places) = self.button(&format!("{id}.{part}"), "");
                (joined(&subject, &spoken(&without_at(rest))), places)
            }
            ["bike", "controls", id, rest @ ..] => {
                let (subject, places) = self.control(id);
                (joined(&subject, &spoken(&without_at(rest))), places)
            }
            ["bike", "brakes", "runs", id, rest @ ..] => {
                let (subject, places) = self.control(id);
                let what = if rest.is_empty() {
                    "what it pulls".into()
                } else {
                    spoken(rest)
                };
                (joined(&subject, &what), places)
            }
            ["as_found", button, ..] => self.button(button, ", as found"),
            ["bike", "rings"] => ("chainrings".into(), Vec::new()),
            ["bike", rest @ ..] if !rest.is_empty() => (spoken(&without_at(rest)), Vec::new()),
            _ => (spoken(names), Vec::new()),
        }
    }

    fn button(&self, button: &str, what: &str) -> (String, Vec<Place>) {
        match ButtonId::parse(button) {
            Some(id) => (
                format!("{}{what}", self.place_of(id)),
                vec![Place::Button(id)],
            ),
            None => (button.to_owned(), Vec::new()),
        }
    }

    fn control(&self, id: &str) -> (String, Vec<Place>) {
        let Some(id) = id.parse().ok().map(ControlId) else {
            return ("control".into(), Vec::new());
        };
        let control = (self.after.bike.control(id)).or_else(|| self.before.bike.control(id));
        let place = control.map_or_else(|| format!("control {id}"), |control| control.place());
        (place, vec![Place::Control(id)])
    }

    fn place_of(&self, id: ButtonId) -> String {
        match self.after.bike.button(id) {
            Some(_) => self.after.bike.place_of(id),
            None => self.before.bike.place_of(id),
        }
    }

    fn value(&self, value: Option<&Value>) -> String {
        let nothing = match self.part {
            PartKey::Layout(_) => "blank",
            PartKey::Hand(_) | PartKey::Rider | PartKey::Reach => "not asked",
            _ => "none",
        };
        let names: Vec<&str> = self.names.iter().map(String::as_str).collect();
        match (value, &names[..]) {
            (None | Some(Value::Null), ["as_found", ..]) => "blank".into(),
            (Some(Value::Number(id)), ["current"]) => self.layout_name(id.as_u64()),
            (Some(Value::Object(group)), ["holds", ..]) => hold(group),
            (Some(Value::Object(group)), ["chords", ..]) => said(group.get("function"), nothing),
            (Some(Value::Object(group)), _) => said(group.get("is"), nothing),
            _ => said(value, nothing),
        }
    }

    fn layout_name(&self, id: Option<u64>) -> String {
        let mut layouts = self.after.layouts.iter().chain(&self.before.layouts);
        let found = layouts.find(|layout| Some(u64::from(layout.id.0)) == id);
        found.map_or_else(|| "another".into(), |layout| format!("“{}”", layout.name))
    }
}

enum Kind {
    /// A whole group came or went.
    Whole,
    /// It changed in a way that has no short words.
    Moved,
    /// From one value to another.
    Value,
    /// From one answer to another by somebody else, on another day or wearing
    /// something else.
    Answer,
    /// What was said before the answer.
    Before,
}

type Group = serde_json::Map<String, Value>;

/// The names that lead to the answer about a rider of which a change is a part.
pub(super) fn answer_of<'a>(part: &PartKey, names: &'a [String]) -> Option<&'a [String]> {
    let told = matches!(part, PartKey::Hand(_) | PartKey::Rider);
    let of_answer = |name: &String| matches!(name.as_str(), "is" | "evidence" | "before");
    let at = names.iter().position(of_answer)?;
    (told && at > 0).then_some(&names[..at])
}

/// Who gave an answer, when, and what was worn, in brackets; nothing where
/// there is no answer.
fn origin(answer: Option<&Value>) -> String {
    let Some(answer) = answer.filter(|answer| !answer["is"].is_null()) else {
        return String::new();
    };
    let evidence = &answer["evidence"];
    let code = |name: &str| evidence[name].as_str();
    let Some(source) = code("source").and_then(Source::from_code) else {
        return " (source not recorded)".into();
    };
    let said = Evidence {
        source,
        date: code("date").and_then(Date::parse),
        worn: code("worn").and_then(Worn::from_code),
        in_one_tap: evidence["in_one_tap"].as_bool().unwrap_or(false),
    };
    format!(" ({})", said.in_words())
}

fn accepted(finding: &str, names: &[&str]) -> (String, Vec<Place>) {
    let mut parts = finding.split('|');
    let id = parts.next().unwrap_or_default();
    let title = rules::rule(id).map_or(id, |rule| rule.title);
    let places = parts.filter_map(Place::parse).collect();
    (
        joined(&format!("acceptance of “{title}”"), &spoken(names)),
        places,
    )
}

fn hold(group: &Group) -> String {
    let run = match group.get("repeats") {
        Some(Value::Number(n)) => n
            .as_u64()
            .and_then(|n| u8::try_from(n).ok())
            .map(HoldRun::Cogs),
        Some(_) => Some(HoldRun::ToEnd),
        None => None,
    };
    match run {
        Some(run) => Hold::Repeats(run).to_string(),
        None => said(group.get("does"), "blank"),
    }
}

/// A value in words: codes of what people often change by their words, others
/// as they are spelt.
fn said(value: Option<&Value>, nothing: &str) -> String {
    match value {
        None | Some(Value::Null) => nothing.into(),
        Some(Value::Bool(true)) => "yes".into(),
        Some(Value::Bool(false)) => "no".into(),
        Some(Value::String(text)) if text.is_empty() => "nothing".into(),
        Some(Value::String(text)) => word(text),
        Some(Value::Array(items)) if items.is_empty() => nothing.into(),
        Some(Value::Array(items)) => {
            let items: Vec<String> = items.iter().map(|item| said(Some(item), nothing)).collect();
            items.join(", ")
        }
        Some(Value::Object(_)) => "otherwise".into(),
        Some(number) => number.to_string(),
    }
}

fn word(code: &str) -> String {
    if let Some(function) = Function::from_code(code) {
        return format!("“{function}”");
    }
    let words = [
        Difficulty::from_code(code).map(Vocabulary::words),
        HandPlace::from_code(code).map(Vocabulary::words),
        ShiftPlanKind::from_code(code).map(Vocabulary::words),
        ButtonPart::from_code(code).map(Vocabulary::words),
    ];
    if let Some(words) = words.into_iter().flatten().next() {
        return words.into();
    }
    // Codes are lower case words joined by hyphens; anything else is text.
    let is_code = code
        .bytes()
        .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-');
    if is_code {
        code.replace('-', " ")
    } else {
        format!("“{code}”")
    }
}

/// Names of the format as people say them.
fn spoken(names: &[&str]) -> String {
    let names: Vec<String> = names
        .iter()
        .filter(|name| !matches!(**name, "is" | "evidence"))
        .map(|name| name.replace(['_', '-'], " "))
        .collect();
    names.join(", ")
}

fn without_at<'a>(names: &[&'a str]) -> Vec<&'a str> {
    match names {
        [most @ .., "at", _] => [most, &["place"]].concat(),
        _ => names.to_vec(),
    }
}

fn joined(subject: &str, what: &str) -> String {
    match what {
        "" => subject.to_owned(),
        what => format!("{subject}, {what}"),
    }
}
