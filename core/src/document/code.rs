//! Closed lists of words as files have them: by their codes.

use serde_json::Value;

use super::list::Key;
use super::part::{Part, Place, Refused};
use super::reader::Reader;
use crate::vocabulary::Vocabulary;

/// A choice of a closed list, written as its code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Code<T>(pub(super) T);

/// Up to this many codes are told to somebody who wrote another one.
const MOST_TOLD: usize = 7;

/// What would have been right: "left or right".
fn expected(name: &str, codes: &[&str]) -> String {
    match codes.split_last() {
        Some((last, [])) => (*last).to_owned(),
        Some((last, others)) if codes.len() <= MOST_TOLD => {
            format!("{} or {last}", others.join(", "))
        }
        _ => {
            let article = if name.starts_with(['a', 'e', 'i', 'o', 'u']) {
                "an"
            } else {
                "a"
            };
            format!("{article} {name} such as {}", codes[..3].join(", "))
        }
    }
}

fn codes<T: Vocabulary>() -> Vec<&'static str> {
    T::ALL.iter().map(|item| item.code()).collect()
}

impl<T: Vocabulary> Part for Code<T> {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        at.value
            .as_str()
            .and_then(T::from_code)
            .map(Code)
            .ok_or_else(|| reader.expected(at, &expected(T::NAME, &codes::<T>())))
    }

    fn write(&self) -> Value {
        self.0.code().into()
    }
}

impl<T: Vocabulary> Key for Code<T> {
    fn parse(text: &str) -> Option<Self> {
        T::from_code(text).map(Code)
    }

    fn spell(&self) -> String {
        self.0.code().to_owned()
    }

    fn expected() -> String {
        expected(T::NAME, &codes::<T>())
    }
}

#[cfg(feature = "schema")]
impl<T: Vocabulary> schemars::JsonSchema for Code<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        T::NAME.replace(' ', "_").into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "enum": codes::<T>() })
    }
}

#[cfg(test)]
mod tests {
    use super::Code;
    use crate::cockpit::{ControlKind, Joint};
    use crate::document::list::Key;
    use crate::function::Function;
    use crate::rider::Side;

    #[test]
    fn tells_what_would_have_been_right() {
        assert_eq!(Code::<Side>::expected(), "left or right");
        assert_eq!(
            Code::<Joint>::expected(),
            "direct, dual-pull, cable-doubler or hose-splitter"
        );
        assert_eq!(
            Code::<Function>::expected(),
            "a function such as rear-harder, rear-easier, front-larger"
        );
        assert!(Code::<ControlKind>::expected().contains("sprint-button"));
    }
}
