//! Answers that may be missing, and where they came from.

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
}

/// An answer, or *not asked / not sure*: which is not "no difficulty".
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Answer<T> {
    /// The answer; `None` is not asked or not sure.
    pub value: Option<T>,
    /// Where it came from; `None` with an answer is "not recorded".
    pub evidence: Option<Evidence>,
}

impl<T> Answer<T> {
    /// Not asked, or not sure: try it with the fitter.
    pub const NOT_ASKED: Answer<T> = Answer {
        value: None,
        evidence: None,
    };

    /// An answer whose source is not recorded.
    pub const fn of(value: T) -> Self {
        Answer {
            value: Some(value),
            evidence: None,
        }
    }

    /// An answer with its source.
    pub const fn with(value: T, evidence: Option<Evidence>) -> Self {
        Answer {
            value: Some(value),
            evidence,
        }
    }

    /// The answer without its source.
    pub fn bare(self) -> Self {
        Answer {
            evidence: None,
            ..self
        }
    }

    /// Whether there is an answer.
    pub const fn is_known(&self) -> bool {
        self.value.is_some()
    }
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
