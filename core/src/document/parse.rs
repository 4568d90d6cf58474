//! From bytes to JSON, stricter than JSON asks: not too long, not too deep,
//! nothing named twice.

use std::cell::RefCell;
use std::fmt;

use serde::de::{self, DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value};
use serde_path_to_error::Track;

use super::error::{place, plain, tidy};
use super::{DocumentError, MOST_BYTES};

/// How deep values may be nested; a plan uses ten levels.
pub(super) const MOST_LEVELS: usize = 32;

/// The JSON value in a file.
pub(super) fn json(bytes: &[u8]) -> Result<Value, DocumentError> {
    if bytes.len() > MOST_BYTES {
        return Err(DocumentError::TooLarge {
            bytes: bytes.len(),
            most: MOST_BYTES,
        });
    }
    let text = std::str::from_utf8(bytes).map_err(|error| DocumentError::NotText {
        byte: error.valid_up_to() + 1,
    })?;
    // Some editors put a mark before the text.
    let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(DocumentError::Empty);
    }
    let fault = RefCell::new(None);
    let strict = Strict {
        level: 0,
        fault: &fault,
    };
    let mut track = Track::new();
    let mut json = serde_json::Deserializer::from_str(text);
    let value = strict
        .deserialize(serde_path_to_error::Deserializer::new(
            &mut json, &mut track,
        ))
        .map_err(|error| refusal(fault.take(), &track.path(), &error))?;
    json.end()
        .map_err(|error| refusal(None, &Track::new().path(), &error))?;
    Ok(value)
}

fn refusal(
    fault: Option<Fault>,
    path: &serde_path_to_error::Path,
    error: &serde_json::Error,
) -> DocumentError {
    let place = place(path);
    let (line, column) = (error.line(), error.column());
    match fault {
        Some(Fault::TooDeep) => DocumentError::TooDeep {
            most: MOST_LEVELS,
            place,
        },
        Some(Fault::Twice(name)) => DocumentError::NotJson {
            line,
            column,
            place,
            what: format!("“{}” stands there twice", tidy(&name)),
        },
        None if error.is_eof() => DocumentError::Truncated {
            line,
            column,
            place,
        },
        None => DocumentError::NotJson {
            line,
            column,
            place,
            what: tidy(plain(&error.to_string())),
        },
    }
}

/// What JSON allows and a plan does not.
enum Fault {
    TooDeep,
    Twice(String),
}

/// Builds a [`Value`] at a level of nesting.
#[derive(Clone, Copy)]
struct Strict<'a> {
    level: usize,
    fault: &'a RefCell<Option<Fault>>,
}

impl Strict<'_> {
    fn deeper<E: de::Error>(self) -> Result<Self, E> {
        if self.level == MOST_LEVELS {
            return Err(self.refuse(Fault::TooDeep));
        }
        Ok(Strict {
            level: self.level + 1,
            ..self
        })
    }

    fn refuse<E: de::Error>(self, fault: Fault) -> E {
        self.fault.replace(Some(fault));
        E::custom("refused")
    }
}

impl<'de> DeserializeSeed<'de> for Strict<'_> {
    type Value = Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Strict<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E: de::Error>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E: de::Error>(self, value: bool) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_i64<E: de::Error>(self, value: i64) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_u64<E: de::Error>(self, value: u64) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_f64<E: de::Error>(self, value: f64) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_str<E: de::Error>(self, value: &str) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
        let inside = self.deeper()?;
        let mut list = Vec::new();
        while let Some(item) = items.next_element_seed(inside)? {
            list.push(item);
        }
        Ok(list.into())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Value, A::Error> {
        let inside = self.deeper()?;
        let mut map = Map::new();
        while let Some(name) = entries.next_key::<String>()? {
            if map.contains_key(&name) {
                return Err(self.refuse(Fault::Twice(name)));
            }
            map.insert(name, entries.next_value_seed(inside)?);
        }
        Ok(map.into())
    }
}
