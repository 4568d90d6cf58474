//! A revision: who changed what when, and how it was before.

use serde_json::Value;

use super::{Code, PartKey, Version};
use crate::finding::Role;
use crate::text::{Date, Text};

/// A change that was made, with what is needed to look back before it.
#[derive(Debug, Clone, PartialEq)]
pub struct Revision {
    /// Tells apart what different people changed under the same number.
    pub id: Code,
    /// Its number, the plan's `revision` after the change.
    pub number: u32,
    /// Who made it; empty where nobody said.
    pub by: Text,
    /// In what role.
    pub role: Option<Role>,
    /// When.
    pub date: Option<Date>,
    /// What the change is called.
    pub what: Text,
    /// The revision code after it.
    pub code: Code,
    /// The parts that it changed.
    pub parts: Vec<PartStep>,
}

/// What a revision changed in one part.
#[derive(Debug, Clone, PartialEq)]
pub struct PartStep {
    /// The part.
    pub part: PartKey,
    /// The version before.
    pub from: Version,
    /// The digest after it.
    pub to: Code,
    /// What stood there before, place by place.
    pub was: Vec<Was>,
}

impl Revision {
    /// Who made it and when: "K. Example, clinician, 2031-05-09"; what nobody
    /// said is left out.
    pub fn signed(&self) -> String {
        let name = (!self.by.is_empty()).then(|| self.by.to_string());
        let role = self.role.map(|role| role.to_string());
        let date = self.date.map(|date| date.to_string());
        let said: Vec<String> = [name, role, date].into_iter().flatten().collect();
        match said.is_empty() {
            true => "not noted".into(),
            false => said.join(", "),
        }
    }
}

impl PartStep {
    /// The version that a revision with this number made.
    pub const fn version(&self, number: u32) -> Version {
        Version {
            revision: number,
            code: self.to,
        }
    }
}

/// What stood at one place of a part before a change.
#[derive(Debug, Clone, PartialEq)]
pub struct Was {
    /// The place within the part as a JSON Pointer (RFC 6901), items of lists
    /// by what they are called; empty for the whole part.
    pub path: String,
    /// What stood there; `None` for nothing.
    pub value: Option<Value>,
}
