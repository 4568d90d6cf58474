//! A review in words: the same on the screen, on paper and as plain text.

use super::{Decided, Demand, Fit, OwnWords, Review, ReviewPage, Sources, Standing, Stopping};
use crate::cockpit::{HandPosition, Wheel};
use crate::finding::{Finding, Place, Role, Severity};
use crate::plan::Plan;
use crate::record::signed;
use crate::rider::{Ability, Day, Difficulty, Side};
use crate::text::{Date, capital, list};
use crate::vocabulary::Vocabulary;

/// A wheel from a position: both days side by side.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoppingRow {
    /// The wheel.
    pub wheel: Wheel,
    /// From where.
    pub position: HandPosition,
    /// Who brakes and who steers on a usual day.
    pub usual: String,
    /// The same on a bad day.
    pub bad: String,
    /// Whether nobody brakes, or only by letting go, on one of the days.
    pub is_out_of_reach: bool,
}

impl ReviewPage {
    /// What changed since the last review that stands, as a lead to the list.
    pub fn since_words(&self) -> String {
        let stands = |decided: &&Decided| !matches!(decided.standing, Standing::Withdrawn { .. });
        let Some(last) = self.decided.iter().find(stands) else {
            return "No review stands yet.".into();
        };
        match &last.standing {
            Standing::ForOlder(since) if since.is_empty() => format!(
                "Changed since the review of revision {}. What changed is not on record here.",
                last.revision.0
            ),
            Standing::ForOlder(_) => {
                format!("Changed since the review of revision {}:", last.revision.0)
            }
            _ => "Nothing was changed since the last review.".into(),
        }
    }

    /// "Revision 12, code K7PF-3QXM".
    pub fn revision_words(&self) -> String {
        format!("Revision {}, code {}", self.revision.0, self.revision.1)
    }

    /// Stopping, a row for each wheel and position.
    pub fn stopping_rows(&self) -> Vec<StoppingRow> {
        let mut rows: Vec<StoppingRow> = Vec::new();
        for line in &self.stopping {
            let same = |row: &StoppingRow| (row.wheel, row.position) == (line.wheel, line.position);
            let at = rows.iter().position(same).unwrap_or_else(|| {
                rows.push(StoppingRow {
                    wheel: line.wheel,
                    position: line.position,
                    usual: String::new(),
                    bad: String::new(),
                    is_out_of_reach: false,
                });
                rows.len() - 1
            });
            let row = &mut rows[at];
            row.is_out_of_reach |= line.brakes.is_out_of_reach();
            match line.day {
                Day::Usual => row.usual = line.words(),
                Day::Bad => row.bad = line.words(),
            }
        }
        rows
    }

    /// How what is asked meets what was answered, as a lead to the table. While
    /// something about hand use must be fixed it says so, whatever the single
    /// answers are.
    pub fn demands_words(&self) -> String {
        let must = |finding: &&Finding| finding.severity == Severity::MustFix;
        let never = self.never.iter().map(|(finding, _)| finding);
        let must_fix = self.open.iter().chain(never).filter(must).count();
        let differ = self.demands.iter().filter(|d| d.fit != Fit::Within).count();
        match (self.demands.len(), differ, must_fix) {
            (0, ..) => "The layout asks nothing of the hands yet.".into(),
            (_, 0, 0) => format!(
                "Nothing that is asked goes beyond what was answered: {}.",
                self.sources.seen_words()
            ),
            (_, 0, 1) => {
                "One by one it meets the answers, but 1 finding below must be fixed.".into()
            }
            (_, 0, n) => {
                format!("One by one it meets the answers, but {n} findings below must be fixed.")
            }
            (n, differ, _) => format!("{differ} of {n} to look at; they stand first."),
        }
    }

    /// What was not asked, put together by hand: "Left hand: braking, pain".
    pub fn not_asked_words(&self) -> Vec<String> {
        let mut groups: Vec<(&str, Vec<&str>)> = Vec::new();
        for said in &self.not_asked {
            let (of, what) = said.split_once(": ").unwrap_or(("asked once", said));
            match groups.iter_mut().find(|(known, _)| *known == of) {
                Some((_, all)) => all.push(what),
                None => groups.push((of, vec![what])),
            }
        }
        let words = |(of, what): (&str, Vec<&str>)| format!("{}: {}", capital(of), what.join("; "));
        groups.into_iter().map(words).collect()
    }
}

impl Stopping {
    /// Who brakes, and who steers meanwhile.
    pub fn words(&self) -> String {
        let brakes = capital(&self.brakes.words());
        match self.steers.is_empty() {
            true => brakes,
            false => format!("{brakes}; {}", self.steers),
        }
    }
}

impl Sources {
    /// "30 answers: 4 told, 26 seen by a clinician".
    pub fn words(&self) -> String {
        let counted = [
            (self.by_clinician, "seen by a clinician"),
            (self.by_fitter, "seen by the fitter"),
            (self.told, "told"),
            (self.not_recorded, "without a source on record"),
        ];
        let parts: Vec<String> = counted
            .iter()
            .filter(|(count, _)| *count > 0)
            .map(|(count, words)| format!("{count} {words}"))
            .collect();
        let one_tap = match self.in_one_tap {
            0 => String::new(),
            n => format!(" {n} of them in one tap, not asked singly."),
        };
        match self.all() {
            0 => "Nothing was answered about the hands.".into(),
            1 => format!("1 answer about the hands: {}.{one_tap}", parts.join(", ")),
            all => format!(
                "{all} answers about the hands: {}.{one_tap}",
                parts.join(", ")
            ),
        }
    }

    /// "3 of 31 answers were seen".
    fn seen_words(&self) -> String {
        let seen = self.by_clinician + self.by_fitter;
        match self.all() {
            1 => format!("{seen} of 1 answer was seen"),
            all => format!("{seen} of {all} answers were seen"),
        }
    }
}

impl Demand {
    /// How hard it is on a day; a dash would read as none.
    pub fn step_words(&self, day: Day) -> &'static str {
        let step = match day {
            Day::Usual => self.usual,
            Day::Bad => self.bad,
        };
        step.map_or("not asked yet", Difficulty::words)
    }

    /// The balloon numbers of its buttons, or the levers by name.
    pub fn where_words(&self, plan: &Plan) -> String {
        let words = |place: &Place| match place.balloon(&plan.bike) {
            Some(number) => number.to_string(),
            None => place.words(&plan.bike),
        };
        // The hand itself is named already.
        let places = self.places.iter().filter(|p| !matches!(p, Place::Hand(_)));
        let places: Vec<String> = places.map(words).collect();
        places.join(", ")
    }
}

impl OwnWords {
    /// When it was said, if that is known.
    pub fn when(&self) -> String {
        match (self.date, self.id) {
            (Some(date), _) => date.to_string(),
            (None, None) => "from the interview".into(),
            (None, Some(_)) => "day not noted".into(),
        }
    }
}

/// The last decision that stands, in a line for the sheet.
pub fn last_decision(plan: &Plan) -> Option<String> {
    let mut decided = super::page::decided(plan).into_iter();
    decided.find_map(|decided| decided.for_the_bench())
}

/// How a decision stands that was given before something changed.
const FOR_OLDER: &str = "Given for an older revision: it does not speak of the plan as it is now.";

impl Decided {
    /// The decision, and before it that it stands no longer, where that is so.
    pub fn title(&self) -> String {
        let decision = self.review.decision.words();
        match self.standing {
            Standing::ForThis => capital(decision),
            Standing::ForOlder(_) => format!("For an older revision: {decision}"),
            Standing::Withdrawn { .. } => format!("Withdrawn: {decision}"),
        }
    }

    /// Who decided, in what role, when.
    fn who(&self) -> String {
        signed(&self.by, Role::Clinician, self.date)
    }

    /// What whoever sets the bike up or goes along must know of it; nothing once it is withdrawn.
    fn for_the_bench(&self) -> Option<String> {
        let who = self.who();
        let decision = self.review.decision.words();
        let stop = self.review.trial.as_ref().map(|trial| &trial.stop_if);
        let stop = stop.filter(|words| !words.is_empty());
        let stop = stop.map_or_else(String::new, |words| format!(" Stop if: {words}."));
        match self.standing {
            Standing::ForThis => Some(format!("{who}: {decision}.{stop}")),
            Standing::ForOlder(_) => Some(format!(
                "{who}, on an older revision: {decision}.{stop} Ask before going on."
            )),
            Standing::Withdrawn { .. } => None,
        }
    }

    /// Who decided, in what role, when, for which revision.
    pub fn heading(&self) -> String {
        let (number, code) = self.revision;
        let who = self.who();
        format!("{who}, for revision {number} ({code})")
    }

    /// How it stands, in a sentence.
    pub fn standing_words(&self) -> String {
        match &self.standing {
            Standing::ForThis => "Given for what the plan says now.".into(),
            Standing::Withdrawn {
                by,
                reason,
                is_older: false,
            } => format!("Withdrawn by {by}: {reason}"),
            Standing::Withdrawn { by, reason, .. } => {
                format!("{FOR_OLDER} Withdrawn by {by}: {reason}")
            }
            Standing::ForOlder(since) => match since.is_empty() {
                true => format!("{FOR_OLDER} What changed since is not on record here."),
                false => format!("{FOR_OLDER} Since then:"),
            },
        }
    }

    /// What changed since, where it is for an older revision.
    pub fn changed_since(&self) -> Vec<String> {
        match &self.standing {
            Standing::ForOlder(since) => since.iter().map(|d| d.words.clone()).collect(),
            _ => Vec::new(),
        }
    }
}

impl Review {
    /// What hands may be seen doing: everything but what only the rider feels.
    pub fn actions() -> impl Iterator<Item = Ability> {
        let all = Ability::ALL.iter().copied();
        all.filter(|ability| *ability != Ability::Comfort)
    }

    /// What it says, each under its name. What was left empty is said to be so
    /// where a reader would miss it.
    pub fn facts(&self, plan: &Plan) -> Vec<(&'static str, String)> {
        let mut facts = vec![("Rests on", self.basis.to_string())];
        let mut add = |name: &'static str, words: String| {
            if !words.is_empty() {
                facts.push((name, words));
            }
        };
        for (button, what) in &self.changes {
            let place = Place::Button(*button);
            let number = place.balloon(&plan.bike).map(|n| format!("{n} "));
            let place = place.words(&plan.bike);
            add(
                "Change",
                format!("{}{place}: {what}", number.unwrap_or_default()),
            );
        }
        if let Some(trial) = &self.trial {
            add("Trial where", trial.place.to_string());
            add("With whom", trial.with.to_string());
            add("Stop if", trial.stop_if.to_string());
            add("Review by", day(trial.review_by));
        }
        let seen = Side::ALL.iter().filter_map(|side| {
            let of = self.seen.iter().filter(|(hand, _)| hand == side);
            let did: Vec<&str> = of.map(|(_, ability)| ability.words()).collect();
            (!did.is_empty()).then(|| format!("{side} hand: {}", did.join("; ")))
        });
        let seen: Vec<String> = seen.collect();
        add("Actions seen", or(seen.join(". "), "none"));
        let worn = self.worn.map(Vocabulary::words).unwrap_or_default();
        add("Worn", or(worn.into(), "not noted"));
        add("Bike", or(self.bike.to_string(), "not noted"));
        add("Conditions", or(self.conditions.to_string(), "none noted"));
        add(
            "Not assessed",
            or(list(&self.not_assessed, "and"), "nothing listed"),
        );
        let agrees = self.rider_agrees.map(Vocabulary::words).unwrap_or_default();
        add("Rider agrees", or(agrees.into(), "not asked"));
        let mut again: Vec<String> = self
            .again_on
            .map(|date| format!("on {date}"))
            .into_iter()
            .collect();
        if !self.again_after.is_empty() {
            again.push(format!("after {}", list(&self.again_after, "or")));
        }
        add(
            "Review again",
            or(again.join(", or "), "no day or event named"),
        );
        facts
    }
}

fn or(words: String, empty: &str) -> String {
    match words.is_empty() {
        true => empty.into(),
        false => words,
    }
}

fn day(date: Option<Date>) -> String {
    date.map(|date| date.to_string()).unwrap_or_default()
}
