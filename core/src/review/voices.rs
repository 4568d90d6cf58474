//! What people said: comments, the rider's own words and marks.

use super::{Audience, MarkKind};
use crate::cockpit::ButtonId;
use crate::document;
use crate::finding::{Finding, Place, Role};
use crate::layout::LayoutId;
use crate::plan::Plan;
use crate::record::{Code, Entry, Matter, Pin, signed};
use crate::revision::code_from;
use crate::rider::Side;
use crate::rules;
use crate::text::{Date, Text, capital, list};
use crate::vocabulary::Vocabulary as _;

/// A comment that stands.
#[derive(Debug, Clone, PartialEq)]
pub struct CommentLine {
    /// The entry.
    pub id: Code,
    /// Who wrote it.
    pub by: Text,
    /// In what role.
    pub role: Role,
    /// When.
    pub date: Option<Date>,
    /// What it is about.
    pub on: Pin,
    /// Who sees it.
    pub audience: Audience,
    /// What it says.
    pub text: Text,
    /// What was added later, each with who wrote it.
    pub addenda: Vec<String>,
}

/// The rider's own words, one after another.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnWords {
    /// The entry; `None` for what the interview has.
    pub id: Option<Code>,
    /// When.
    pub date: Option<Date>,
    /// What the rider said.
    pub text: Text,
}

/// A mark on a button that stands.
#[derive(Debug, Clone, PartialEq)]
pub struct MarkLine {
    /// The entry.
    pub id: Code,
    /// The button.
    pub button: ButtonId,
    /// What the rider says of it.
    pub kind: MarkKind,
    /// More about it; may be empty.
    pub text: Text,
    /// The revision code of what it was said of.
    pub code: Code,
    /// The layouts that are still as the one it was said of; none after a change.
    pub of: Vec<LayoutId>,
}

/// The comments that somebody in this role sees, oldest first.
pub fn comments(plan: &Plan, role: Role) -> Vec<CommentLine> {
    let standing = plan.record.standing();
    standing
        .filter_map(|entry| match &entry.matter {
            Matter::Comment { on, audience, text } if sees(role, *audience) => Some(CommentLine {
                id: entry.id,
                by: entry.by.clone(),
                role: entry.role,
                date: entry.date,
                on: on.clone(),
                audience: *audience,
                text: text.clone(),
                addenda: addenda(plan, entry),
            }),
            _ => None,
        })
        .collect()
}

fn sees(role: Role, audience: Audience) -> bool {
    audience == Audience::Everyone || role != Role::Shop
}

pub(super) fn addenda(plan: &Plan, entry: &Entry) -> Vec<String> {
    let added = plan.record.addenda(entry.id);
    added
        .map(|(entry, text)| format!("{text} ({})", entry.signed()))
        .collect()
}

/// Everything that a comment may be pinned to, with its words: the whole plan,
/// hands, buttons in balloon order, what the rules say.
pub fn pins(plan: &Plan, findings: &[Finding]) -> Vec<(Pin, String)> {
    let hands = Side::ALL.iter().map(|side| Pin::Place(Place::Hand(*side)));
    let buttons = plan.bike.buttons().into_iter();
    let buttons = buttons.map(|(id, ..)| Pin::Place(Place::Button(id)));
    let findings = findings.iter().map(|finding| Pin::Finding(finding.key()));
    let all = [Pin::Whole].into_iter().chain(hands).chain(buttons);
    all.chain(findings)
        .map(|pin| {
            let words = pin.words(plan);
            (pin, words)
        })
        .collect()
}

impl Pin {
    /// What it names, in words: "3 left inner paddle", "finding: …".
    pub fn words(&self, plan: &Plan) -> String {
        let of_place = |place: &Place| {
            let words = place.words(&plan.bike);
            match place.balloon(&plan.bike) {
                Some(number) => format!("{number} {words}"),
                None => words,
            }
        };
        match self {
            Pin::Whole => "the whole plan".into(),
            Pin::Place(place) => of_place(place),
            Pin::Finding(key) => {
                let mut parts = key.split('|');
                let id = parts.next().unwrap_or_default();
                let title = rules::rule(id).map_or(id, |rule| rule.title);
                let places: Vec<String> = parts
                    .filter_map(|key| Some(of_place(&Place::parse(key)?)))
                    .collect();
                match places.is_empty() {
                    true => format!("finding: {title}"),
                    false => format!("finding: {title}: {}", places.join(", ")),
                }
            }
        }
    }
}

/// The rider's own words: those of the interview, then those written since.
pub fn own_words(plan: &Plan) -> Vec<OwnWords> {
    let told = &plan.rider.own_words;
    let mut found: Vec<OwnWords> = Vec::new();
    if !told.is_empty() {
        found.push(OwnWords {
            id: None,
            date: None,
            text: told.clone(),
        });
    }
    found.extend(
        plan.record
            .standing()
            .filter_map(|entry| match &entry.matter {
                Matter::Words(text) => Some(OwnWords {
                    id: Some(entry.id),
                    date: entry.date,
                    text: text.clone(),
                }),
                _ => None,
            }),
    );
    found
}

/// The rider's marks, by the buttons of the bike in balloon order. Of a button marked the same twice,
/// the later stands; what was said of another layout that stands stays beside it.
pub fn marks(plan: &Plan) -> Vec<MarkLine> {
    let said = document::pieces(plan);
    let codes: Vec<(LayoutId, Code)> = (plan.layouts.iter())
        .map(|layout| (layout.id, code_from(&said, plan, layout)))
        .collect();
    let mut found: Vec<MarkLine> = Vec::new();
    for entry in plan.record.standing() {
        let Matter::Mark { button, kind, text } = &entry.matter else {
            continue;
        };
        let same = codes.iter().filter(|(_, code)| *code == entry.code);
        let of: Vec<LayoutId> = same.map(|(id, _)| *id).collect();
        found.retain(|mark| {
            let is_same = (mark.button, mark.kind) == (*button, *kind);
            !is_same || (mark.code != entry.code && !mark.of.is_empty())
        });
        found.push(MarkLine {
            id: entry.id,
            button: *button,
            kind: *kind,
            text: text.clone(),
            code: entry.code,
            of,
        });
    }
    found.sort_unstable_by_key(|mark| (plan.bike.balloon(mark.button), mark.button, mark.kind));
    found
}

impl CommentLine {
    /// Who wrote it and who sees it.
    pub fn heading(&self) -> String {
        let who = signed(&self.by, self.role, self.date);
        format!("{who}; for {}", self.audience)
    }
}

impl MarkLine {
    /// "2 left inner paddle: hurts: after an hour".
    pub fn said(&self, plan: &Plan) -> String {
        let place = Pin::Place(Place::Button(self.button)).words(plan);
        match self.text.is_empty() {
            true => format!("{place}: {}", self.kind),
            false => format!("{place}: {}: {}", self.kind, self.text),
        }
    }

    /// The same at the head of a line, with what it was said of, where that is not the only layout as it
    /// stands.
    pub fn words(&self, plan: &Plan) -> String {
        let of = plan.layouts.iter().filter(|l| self.of.contains(&l.id));
        let of: Vec<String> = of.map(|layout| format!("“{}”", layout.name)).collect();
        let of = match (of.as_slice(), plan.layouts.len()) {
            ([], _) => " (said of an older revision)".to_owned(),
            (_, 1) => String::new(),
            (of, _) => format!(" (said of {})", list(of, "and")),
        };
        format!("{}{of}", capital(&self.said(plan)))
    }

    /// Whether it holds for a layout: it was said of that one, or before a change.
    pub fn holds_for(&self, layout: LayoutId) -> bool {
        self.of.is_empty() || self.of.contains(&layout)
    }
}
