//! Answers that may be missing, and where they came from.

use std::fmt;

use crate::ordered::SmallMap;
use crate::text::Date;

vocabulary! {
    /// Yes or no.
    pub enum YesNo as "answer" {
        /// Yes.
        Yes = "yes", "yes";
        /// No.
        No = "no", "no";
    }
}

vocabulary! {
    /// Who says so.
    pub enum Source as "source" {
        /// The rider, or somebody for the rider, said so.
        Told = "told", "told";
        /// The fitter saw it.
        SeenByFitter = "seen-by-fitter", "seen by the fitter";
        /// A clinician saw it.
        SeenByClinician = "seen-by-clinician", "seen by a clinician";
    }
}

vocabulary! {
    /// What the hand wore when it was seen.
    pub enum Worn as "worn" {
        /// Nothing.
        BareHand = "bare-hand", "bare hand";
        /// A riding glove.
        Glove = "glove", "glove";
        /// A splint.
        Splint = "splint", "splint";
        /// A device.
        Device = "device", "device";
    }
}

/// Where an answer came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Evidence {
    /// Who says so.
    pub source: Source,
    /// When.
    pub date: Option<Date>,
    /// What was worn, if known.
    pub worn: Option<Worn>,
    /// Whether one tap answered many things together, so that nobody asked
    /// about this one singly.
    pub in_one_tap: bool,
}

impl Evidence {
    /// Who says so, and whether it was asked singly.
    pub fn words(&self) -> String {
        if self.in_one_tap {
            format!("{}; in one tap, not asked singly", self.source)
        } else {
            self.source.to_string()
        }
    }

    /// Whether it is the same visit: the same source, day, and thing worn.
    fn is_same_visit(&self, other: &Evidence) -> bool {
        let visit = |evidence: &Evidence| (evidence.source, evidence.date, evidence.worn);
        visit(self) == visit(other)
    }

    /// Who says so, when, and what was worn: "seen by a clinician, 2031-04-30,
    /// splint".
    pub fn in_words(&self) -> String {
        let date = self.date.map(|date| date.to_string());
        let worn = self.worn.map(|worn| worn.to_string());
        let known = [Some(self.words()), date, worn];
        known.into_iter().flatten().collect::<Vec<_>>().join(", ")
    }
}

/// What is said of an answer whose source nobody wrote down.
const NOT_RECORDED: &str = "source not recorded";

/// What was said before somebody else, on another day or wearing something
/// else, said it anew.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Before<T> {
    /// The answer then.
    pub value: T,
    /// Where it came from; `None` is "not recorded".
    pub evidence: Option<Evidence>,
}

/// An answer, or *not asked / not sure*: which is not "no difficulty".
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Answer<T> {
    /// The answer; `None` is not asked or not sure.
    pub value: Option<T>,
    /// Where it came from; `None` with an answer is "not recorded".
    pub evidence: Option<Evidence>,
    /// What it replaced, one answer back: a correction hides nobody's word.
    pub before: Option<Before<T>>,
}

impl<T> Answer<T> {
    /// Not asked, or not sure: try it with the fitter.
    pub const NOT_ASKED: Answer<T> = Answer {
        value: None,
        evidence: None,
        before: None,
    };

    /// An answer whose source is not recorded.
    pub const fn of(value: T) -> Self {
        Answer {
            value: Some(value),
            evidence: None,
            before: None,
        }
    }

    /// An answer with its source.
    pub const fn with(value: T, evidence: Option<Evidence>) -> Self {
        Answer {
            value: Some(value),
            evidence,
            before: None,
        }
    }

    /// Whether somebody asked about it singly, as far as is recorded.
    pub fn was_asked_singly(&self) -> bool {
        let evidence = self.evidence.filter(|evidence| !evidence.in_one_tap);
        self.is_known() && evidence.is_some()
    }

    /// The same with its values in other words.
    pub fn map<M>(self, words: impl Fn(T) -> M) -> Answer<M> {
        Answer {
            value: self.value.map(&words),
            evidence: self.evidence,
            before: self.before.map(|before| Before {
                value: words(before.value),
                evidence: before.evidence,
            }),
        }
    }

    /// The answer without its source and without what it replaced.
    pub fn bare(self) -> Self {
        Answer {
            evidence: None,
            before: None,
            ..self
        }
    }

    /// Whether there is an answer.
    pub const fn is_known(&self) -> bool {
        self.value.is_some()
    }

    /// This answer in place of an earlier one, which is kept as what was said
    /// before. Where source, day and what was worn are the same, somebody
    /// corrects their own word: that replaces it. *Not asked* takes all back.
    #[must_use]
    pub fn after(self, earlier: Answer<T>) -> Answer<T> {
        let before = match earlier.value {
            _ if self.value.is_none() => None,
            Some(value) if !is_same_visit(self.evidence, earlier.evidence) => Some(Before {
                value,
                evidence: earlier.evidence,
            }),
            _ => earlier.before,
        };
        Answer { before, ..self }
    }
}

impl<T: fmt::Display> Answer<T> {
    /// Where the answer came from; `None` without an answer.
    pub fn origin_in_words(&self) -> Option<String> {
        self.value.as_ref()?;
        Some(origin(self.evidence))
    }

    /// What was said before and by whom: "before: takes effort (told,
    /// 2031-04-30)"; `None` where nothing was replaced.
    pub fn before_in_words(&self) -> Option<String> {
        let before = self.before.as_ref()?;
        let origin = origin(before.evidence);
        Some(format!("before: {} ({origin})", before.value))
    }
}

fn is_same_visit(a: Option<Evidence>, b: Option<Evidence>) -> bool {
    match (a, b) {
        (Some(a), Some(b)) => a.is_same_visit(&b),
        (a, b) => a == b,
    }
}

fn origin(evidence: Option<Evidence>) -> String {
    evidence.map_or_else(|| NOT_RECORDED.into(), |evidence| evidence.in_words())
}

impl Answer<YesNo> {
    /// Whether the answer is a clear yes.
    pub fn is_yes(&self) -> bool {
        self.value == Some(YesNo::Yes)
    }
}

impl<T> Default for Answer<T> {
    fn default() -> Self {
        Self::NOT_ASKED
    }
}

/// Answers to the same question about several things; what is absent was not
/// asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asked<K: Ord, T>(SmallMap<K, Answer<T>>);

impl<K: Ord, T> Default for Asked<K, T> {
    fn default() -> Self {
        Asked(SmallMap::new())
    }
}

impl<K: Ord + Copy, T: Copy> Asked<K, T> {
    /// The answer about `key`.
    pub fn get(&self, key: K) -> Answer<T> {
        self.0.get(&key).copied().unwrap_or(Answer::NOT_ASKED)
    }

    /// The bare answer about `key`, without its source.
    pub fn value(&self, key: K) -> Option<T> {
        self.get(key).value
    }

    /// Keeps an answer; *not asked* is kept as absence.
    pub fn set(&mut self, key: K, answer: Answer<T>) {
        if answer.is_known() {
            self.0.insert(key, answer);
        } else {
            self.0.remove(&key);
        }
    }

    /// Keeps an answer in place of an earlier one; see [`Answer::after`].
    pub fn say(&mut self, key: K, answer: Answer<T>) {
        self.set(key, answer.after(self.get(key)));
    }

    /// The known answers in order.
    pub fn iter(&self) -> impl Iterator<Item = (K, Answer<T>)> + '_ {
        self.0.iter().map(|(key, answer)| (*key, *answer))
    }

    /// The answers without their sources.
    pub fn bare(&self) -> Self {
        self.iter()
            .map(|(key, answer)| (key, answer.bare()))
            .collect()
    }

    /// Whether nothing was asked.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl<K: Ord + Copy, T: Copy> FromIterator<(K, Answer<T>)> for Asked<K, T> {
    fn from_iter<I: IntoIterator<Item = (K, Answer<T>)>>(items: I) -> Self {
        let mut asked = Asked::default();
        for (key, answer) in items {
            asked.set(key, answer);
        }
        asked
    }
}
