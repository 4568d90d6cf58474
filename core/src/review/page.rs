//! The Review page: what a therapist reads, in the order of reading.

use super::demand::demands;
use super::stopping::stopping;
use super::voices::addenda;
use super::{
    CommentLine, Demand, MarkLine, OwnWords, Review, Stopping, comments, marks, own_words,
};
use crate::finding::{Acceptable, Finding, Role};
use crate::plan::Plan;
use crate::record::{Code, Entry, Matter};
use crate::revision::{self, Difference};
use crate::rider::{Answer, Evidence, Side, Source, Subject};
use crate::rules;
use crate::sheet::{NOT_ASSESSED, TitleBlock};
use crate::situation::Situation;
use crate::text::{Date, Text};
use crate::vocabulary::Vocabulary;

/// What a therapist reads, in the order of reading.
#[derive(Debug, Clone, PartialEq)]
pub struct ReviewPage {
    /// The revision: number and code.
    pub revision: (u32, Code),
    /// What the page is about: plan, bike, rider.
    pub title: TitleBlock,
    /// The revision of the last review that stands, if there is one, and what
    /// changed since.
    pub since: Option<(u32, Vec<Difference>)>,
    /// Where the answers about the hands came from.
    pub sources: Sources,
    /// What was not asked: "left hand: braking", or a thing of it.
    pub not_asked: Vec<String>,
    /// What this plan asks nobody about.
    pub not_assessed: &'static [&'static str],
    /// Each wheel from each position, who steers, usual and bad day.
    pub stopping: Vec<Stopping>,
    /// Demand against ability, what does not meet first.
    pub demands: Vec<Demand>,
    /// A hand off the bar, a brake out of reach: findings about them.
    pub off_the_bar: Vec<Finding>,
    /// The rider's own words.
    pub own_words: Vec<OwnWords>,
    /// The rider's marks on buttons.
    pub marks: Vec<MarkLine>,
    /// Open findings about hand use: the shop or a clinician may accept these.
    pub open: Vec<Finding>,
    /// Findings about hand use that were accepted with a reason.
    pub accepted: Vec<Finding>,
    /// Open findings that nobody can accept, each with the reason.
    pub never: Vec<(Finding, &'static str)>,
    /// Open findings about building the bike: the shop's to settle.
    pub for_shop: Vec<Finding>,
    /// Comments.
    pub comments: Vec<CommentLine>,
    /// Decisions, the latest first; several may stand side by side.
    pub decided: Vec<Decided>,
}

/// Where answers about the hands came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Sources {
    /// Told by the rider, or by somebody for the rider.
    pub told: usize,
    /// How many of all came in one tap, so that nobody asked about them singly.
    pub in_one_tap: usize,
    /// Seen by the fitter.
    pub by_fitter: usize,
    /// Seen by a clinician.
    pub by_clinician: usize,
    /// Not recorded.
    pub not_recorded: usize,
}

/// A decision and how it stands now.
#[derive(Debug, Clone, PartialEq)]
pub struct Decided {
    /// The entry.
    pub id: Code,
    /// Who decided; a typed name is not a signature.
    pub by: Text,
    /// When.
    pub date: Option<Date>,
    /// The revision it was given for.
    pub revision: (u32, Code),
    /// The decision.
    pub review: Review,
    /// What was added later, each with who wrote it.
    pub addenda: Vec<String>,
    /// How it stands.
    pub standing: Standing,
}

/// How a decision stands.
#[derive(Debug, Clone, PartialEq)]
pub enum Standing {
    /// For what the plan says now.
    ForThis,
    /// For an older revision; with what changed since.
    ForOlder(Vec<Difference>),
    /// Withdrawn.
    Withdrawn {
        /// By whom and when: "K. Example, clinician, 2031-05-09".
        by: String,
        /// Why.
        reason: Text,
        /// Whether it was given for an older revision.
        is_older: bool,
    },
}

/// Rules about a hand off the bar and brakes out of reach.
const OFF_THE_BAR: &[&str] = &[
    "brake-out-of-reach",
    "wheel-brake-without-lever",
    "brakes-not-pulled-together",
    "press-lets-go-of-steering",
    "position-change-by-only-steering-hand",
    "mounting-brake-not-held",
    "device-release-untested",
];

impl ReviewPage {
    /// The page for the layout in hand, as somebody in this role sees it.
    pub fn of(plan: &Plan, role: Role) -> ReviewPage {
        let situation = Situation::of_layout(plan, plan.layout());
        let findings = rules::findings_in(&situation);
        let open = || findings.iter().filter(|f| plan.acceptance_of(f).is_none());
        let of = |wanted: Acceptable| open().filter(move |f| f.acceptable == wanted).cloned();
        let why = |finding: &Finding| rules::rule(finding.rule).map_or("", |rule| rule.why);
        let decided = decided(plan);
        let stands = |decided: &&Decided| !matches!(decided.standing, Standing::Withdrawn { .. });
        let since = decided.iter().find(stands).map(|decided| {
            let changed = match &decided.standing {
                Standing::ForOlder(since) => since.clone(),
                _ => Vec::new(),
            };
            (decided.revision.0, changed)
        });
        ReviewPage {
            revision: (plan.revision, revision::code(plan)),
            title: TitleBlock::of(&situation),
            since,
            sources: Sources::of(plan),
            not_asked: not_asked(plan),
            not_assessed: NOT_ASSESSED,
            stopping: stopping(&situation),
            demands: demands(&situation),
            off_the_bar: open()
                .filter(|f| OFF_THE_BAR.contains(&f.rule))
                .cloned()
                .collect(),
            own_words: own_words(plan),
            marks: marks(plan),
            open: of(Acceptable::ByClinician).collect(),
            accepted: (findings.iter())
                .filter(|f| f.acceptable == Acceptable::ByClinician)
                .filter(|f| plan.acceptance_of(f).is_some())
                .cloned()
                .collect(),
            for_shop: of(Acceptable::ByShop).collect(),
            never: of(Acceptable::Never)
                .map(|finding| {
                    let why = why(&finding);
                    (finding, why)
                })
                .collect(),
            comments: comments(plan, role),
            decided,
        }
    }
}

pub(super) fn decided(plan: &Plan) -> Vec<Decided> {
    let (code, hands) = (revision::code(plan), revision::hands_code(plan));
    let entries = plan.record.entries.iter().rev();
    entries
        .filter_map(|entry| match &entry.matter {
            Matter::Review(review) => Some(Decided {
                id: entry.id,
                by: entry.by.clone(),
                date: entry.date,
                revision: (entry.revision, entry.code),
                review: review.as_ref().clone(),
                addenda: addenda(plan, entry),
                standing: standing(plan, entry, entry.code == code && entry.hands == hands),
            }),
            _ => None,
        })
        .collect()
}

fn standing(plan: &Plan, entry: &Entry, is_current: bool) -> Standing {
    if let Some((by, reason)) = plan.record.withdrawn(entry.id) {
        return Standing::Withdrawn {
            by: by.signed(),
            reason: reason.clone(),
            is_older: !is_current,
        };
    }
    if is_current {
        return Standing::ForThis;
    }
    let past = revision::plan_at(plan, entry.revision);
    Standing::ForOlder(
        past.map(|past| revision::differences(&past.plan, plan))
            .unwrap_or_default(),
    )
}

impl Sources {
    fn of(plan: &Plan) -> Sources {
        let mut sources = Sources::default();
        for side in Side::ALL {
            let hand = plan.rider.hands.get(*side);
            sources.count(hand.place);
            hand.abilities
                .iter()
                .for_each(|(_, answer)| sources.count(answer));
            hand.contacts
                .iter()
                .for_each(|(_, answer)| sources.count(answer));
            hand.blade_reach
                .iter()
                .for_each(|(_, answer)| sources.count(answer));
            sources.count(hand.pressing);
            sources.count(hand.moves_by_itself);
            sources.count(hand.later);
        }
        sources
    }

    fn count<T>(&mut self, answer: Answer<T>) {
        if answer.value.is_none() {
            return;
        }
        if answer.evidence.is_some_and(|evidence| evidence.in_one_tap) {
            self.in_one_tap += 1;
        }
        match answer.evidence.map(|Evidence { source, .. }| source) {
            Some(Source::Told) => self.told += 1,
            Some(Source::SeenByFitter) => self.by_fitter += 1,
            Some(Source::SeenByClinician) => self.by_clinician += 1,
            None => self.not_recorded += 1,
        }
    }

    /// All answers.
    pub const fn all(&self) -> usize {
        self.told + self.by_fitter + self.by_clinician + self.not_recorded
    }
}

/// What is open of each question, by hand: the question where nothing of it was
/// asked, else what is missing.
fn not_asked(plan: &Plan) -> Vec<String> {
    let mut found = Vec::new();
    for question in plan.rider.open_questions() {
        if question.subject == Subject::Once {
            found.push(question.id.to_string());
            continue;
        }
        for side in Side::ALL {
            let hand = plan.rider.hands.get(*side);
            let open = question.open_items(hand);
            let all = question.items(hand);
            match open.len() == all.len() && !open.is_empty() {
                true => found.push(format!("{side} hand: {}", question.id)),
                false => found.extend(open.iter().map(|item| format!("{side} hand: {item}"))),
            }
        }
    }
    found
}
