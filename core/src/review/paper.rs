//! The review on paper and as plain text: typed parts in the order of reading.

use super::{Decided, Demand, ReviewPage};
use crate::finding::Finding;
use crate::plan::Plan;
use crate::rider::Day;
use crate::sheet::{ABOUT_A_PLAN, SIGNATURE_NOTE};
use crate::slot::Slot;
use crate::text::{Date, capital, list};
use crate::vocabulary::Vocabulary;

/// A part of the printed review.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PaperPart {
    /// Its heading.
    pub heading: &'static str,
    /// What stands under it.
    pub blocks: Vec<Block>,
}

/// What stands in a part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Block {
    /// A paragraph.
    Line(String),
    /// A list.
    Items(Vec<String>),
    /// A table: the heads of its columns, then its rows, as wide as the heads.
    Table(Vec<&'static str>, Vec<Vec<String>>),
    /// Something with a name of its own: who decided, and what.
    Named(String, Vec<String>),
    /// A line to write on, with what belongs there.
    ToFillIn(&'static str),
}

/// What a table says before its first row is known to be missing.
const NOTHING: &str = "Nothing.";

impl ReviewPage {
    /// The parts in the order of reading. `plan` is the one the page is of,
    /// `on` the day of printing.
    pub fn parts(&self, plan: &Plan, on: Option<Date>) -> Vec<PaperPart> {
        let part = |heading, blocks| PaperPart { heading, blocks };
        vec![
            part("Whom it is about", whom(plan, on)),
            part("Revision and answers", self.about(plan)),
            part("Stopping", vec![self.stopping_table()]),
            part(
                "What is asked of each hand",
                vec![
                    Block::Line(self.demands_words()),
                    demand_table(&self.demands, plan),
                ],
            ),
            part(
                "Hand off the bar, brake out of reach",
                findings(&self.off_the_bar, plan),
            ),
            part("In the rider’s own words", self.said_by_rider(plan)),
            part("Findings about hand use", self.hand_use(plan)),
            part("Comments", self.comment_blocks(plan)),
            part("Decisions", self.decisions(plan)),
            part("Signature", signature()),
            part(
                "Cautions",
                vec![Block::Items(
                    ABOUT_A_PLAN.iter().map(|c| (*c).to_owned()).collect(),
                )],
            ),
        ]
    }

    /// The whole page as plain text.
    pub fn to_text(&self, plan: &Plan, on: Option<Date>) -> String {
        let mut lines = vec![format!("== Review == {}", self.title.running_head())];
        lines.extend(self.title.running_fields());
        for part in self.parts(plan, on) {
            lines.push(String::new());
            lines.push(format!("-- {} --", part.heading));
            for block in part.blocks {
                lines.extend(block.lines());
            }
        }
        lines.join("\n") + "\n"
    }

    fn about(&self, plan: &Plan) -> Vec<Block> {
        let mut blocks = vec![
            Block::Line(format!("{}.", self.revision_words())),
            Block::Line(self.since_words()),
        ];
        if let Some((_, since)) = &self.since {
            blocks.extend(items(since.iter().map(|d| d.words.clone())));
        }
        blocks.push(Block::Line(self.sources.words()));
        match self.not_asked.is_empty() {
            true => blocks.push(Block::Line("Everything that matters was asked.".into())),
            false => {
                blocks.push(Block::Line(
                    "Not asked yet, which is not “no difficulty”:".into(),
                ));
                blocks.push(Block::Items(self.not_asked_words()));
            }
        }
        let never = list(self.not_assessed, "and");
        blocks.push(Block::Line(format!("This plan asks nobody about {never}.")));
        let slots = Slot::all(plan).into_iter();
        let buttons = slots.map(|slot| slot.words());
        blocks.extend(named("The buttons by their numbers", buttons.collect()));
        blocks
    }

    fn stopping_table(&self) -> Block {
        let rows = self.stopping_rows().into_iter().map(|row| {
            let from = format!("{}, {}", capital(row.wheel.words()), row.position);
            vec![from, row.usual, row.bad]
        });
        let heads = vec!["Wheel, from", "Usual day", "Bad day"];
        Block::Table(heads, rows.collect())
    }

    fn said_by_rider(&self, plan: &Plan) -> Vec<Block> {
        let said = self
            .own_words
            .iter()
            .map(|own| format!("“{}” ({})", own.text, own.when()));
        let marks = self.marks.iter().map(|mark| mark.words(plan));
        or_nothing(said.chain(marks))
    }

    fn hand_use(&self, plan: &Plan) -> Vec<Block> {
        let mut blocks = findings(&self.open, plan);
        let accepted = self.accepted.iter().filter_map(|finding| {
            let acceptance = plan.acceptance_of(finding)?;
            let who = crate::record::signed(&acceptance.by, acceptance.role, acceptance.date);
            Some(format!(
                "{} Accepted ({who}): {}",
                finding_words(finding, plan),
                acceptance.reason
            ))
        });
        blocks.extend(named("Accepted with a reason", accepted.collect()));
        // The reason stands once below all that it is about.
        let alike = self.never.chunk_by(|(_, a), (_, b)| a == b);
        let never = alike.flat_map(|alike| {
            let said = alike
                .iter()
                .map(|(finding, _)| finding_words(finding, plan));
            said.chain([format!("Why: {}", alike[0].1)])
        });
        blocks.extend(named("Can never be accepted", never.collect()));
        let shop = self
            .for_shop
            .iter()
            .map(|finding| finding_words(finding, plan));
        blocks.extend(named("For the shop to settle", shop.collect()));
        blocks
    }

    fn comment_blocks(&self, plan: &Plan) -> Vec<Block> {
        or_nothing(self.comments.iter().flat_map(|comment| {
            let own = format!(
                "{}: {} ({})",
                capital(&comment.on.words(plan)),
                comment.text,
                comment.heading()
            );
            let added = comment.addenda.iter().map(|text| format!("Added: {text}"));
            [own].into_iter().chain(added).collect::<Vec<_>>()
        }))
    }

    fn decisions(&self, plan: &Plan) -> Vec<Block> {
        if self.decided.is_empty() {
            return vec![Block::Line("No decision is recorded yet.".into())];
        }
        self.decided
            .iter()
            .map(|decided| decision(decided, plan))
            .collect()
    }
}

fn decision(decided: &Decided, plan: &Plan) -> Block {
    let facts = decided.review.facts(plan).into_iter();
    let mut lines: Vec<String> = facts
        .map(|(name, words)| format!("{name}: {words}"))
        .collect();
    let mut head = vec![decided.heading(), decided.standing_words()];
    head.extend(decided.changed_since());
    lines.splice(0..0, head);
    lines.extend(decided.addenda.iter().map(|text| format!("Added: {text}")));
    Block::Named(decided.title(), lines)
}

fn demand_table(demands: &[Demand], plan: &Plan) -> Block {
    let rows = demands.iter().map(|demand| {
        vec![
            capital(&demand.who()),
            demand.asked.clone(),
            demand.where_words(plan),
            demand.step_words(Day::Usual).into(),
            demand.step_words(Day::Bad).into(),
            demand.fit.to_string(),
        ]
    });
    let heads = vec![
        "Who",
        "What is asked",
        "Where",
        "Usual day",
        "Bad day",
        "How they meet",
    ];
    Block::Table(heads, rows.collect())
}

fn findings(all: &[Finding], plan: &Plan) -> Vec<Block> {
    or_nothing(all.iter().map(|finding| finding_words(finding, plan)))
}

/// How much it weighs, what it says, and on which buttons.
fn finding_words(finding: &Finding, plan: &Plan) -> String {
    let numbers: Vec<String> = finding
        .places
        .iter()
        .filter_map(|place| place.balloon(&plan.bike))
        .map(|number| number.to_string())
        .collect();
    let at = match numbers.is_empty() {
        true => String::new(),
        false => format!(" (on {})", numbers.join(", ")),
    };
    let weight = capital(finding.severity.words());
    format!("{weight}: {}{at}", finding.message)
}

/// The rider as the shop says, a line for the clinic's own name or number, the
/// day of printing.
fn whom(plan: &Plan, on: Option<Date>) -> Vec<Block> {
    let nickname = plan.rider.nickname.as_str();
    let rider = match nickname.is_empty() {
        true => "Rider: no nickname noted.".into(),
        false => format!("Rider, as called in the shop: {nickname}."),
    };
    let printed = on.map(|date| Block::Line(format!("Printed on {date}.")));
    [Block::Line(rider), Block::ToFillIn("Name or record number")]
        .into_iter()
        .chain(printed)
        .collect()
}

fn signature() -> Vec<Block> {
    vec![
        Block::Line(SIGNATURE_NOTE.into()),
        Block::ToFillIn("Name and role"),
        Block::ToFillIn("Signature"),
        Block::ToFillIn("Date"),
    ]
}

fn items(all: impl Iterator<Item = String>) -> Option<Block> {
    let all: Vec<String> = all.collect();
    (!all.is_empty()).then_some(Block::Items(all))
}

fn named(name: &str, all: Vec<String>) -> Option<Block> {
    (!all.is_empty()).then(|| Block::Named(name.into(), all))
}

fn or_nothing(all: impl Iterator<Item = String>) -> Vec<Block> {
    vec![items(all).unwrap_or_else(|| Block::Line(NOTHING.into()))]
}

impl Block {
    fn lines(self) -> Vec<String> {
        let item = |words: String| format!("- {words}");
        match self {
            Block::Line(words) => vec![words],
            Block::Items(all) => all.into_iter().map(item).collect(),
            Block::Named(name, all) => [format!("* {name}")]
                .into_iter()
                .chain(all.into_iter().map(item))
                .collect(),
            Block::Table(heads, rows) => {
                let rows = rows.into_iter().map(|row| row.join(" | "));
                [heads.join(" | ")].into_iter().chain(rows).collect()
            }
            Block::ToFillIn(name) => vec![format!("{name}: ____________________")],
        }
    }
}
