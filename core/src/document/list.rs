//! Lists and tables as files have them: not too long, nothing twice.

use serde_json::{Map, Value};

use super::part::{Part, Place, Refused};
use super::reader::Reader;
use crate::ordered;

/// An item of a list that is named by what it says itself.
pub(super) trait Item {
    /// The list in which such items stand.
    const LIST: &'static str;
    /// The fields that together name the item.
    const NAMED_BY: &'static [&'static str];
    /// The name, the same for what may not stand in one list twice.
    fn name(&self) -> String;
}

/// A list of at most `MOST` items, each with a name of its own.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct List<T, const MOST: usize>(pub(super) Vec<T>);

impl<T: Part + Item, const MOST: usize> Part for List<T, MOST> {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let items = at.items(MOST, reader)?;
        let mut list = Vec::with_capacity(items.len());
        let mut names = Vec::with_capacity(items.len());
        for (n, value) in items.iter().enumerate() {
            let item = T::read(&at.item(n, value), reader)?;
            names.push(item.name());
            list.push(item);
        }
        nothing_twice(at, &names, T::NAMED_BY, reader)?;
        Ok(List(list))
    }

    fn write(&self) -> Value {
        Value::Array(self.0.iter().map(T::write).collect())
    }
}

fn nothing_twice(
    at: &Place<'_>,
    names: &[String],
    named_by: &[&str],
    reader: &mut Reader,
) -> Result<(), Refused> {
    let mut sorted: Vec<&String> = names.iter().collect();
    ordered::sort(&mut sorted);
    match sorted.windows(2).find(|pair| pair[0] == pair[1]) {
        None => Ok(()),
        Some(pair) => {
            let (what, name) = (named_by.join(" and "), pair[0]);
            Err(reader.refuse(at, format!("two have the same {what} ({name})")))
        }
    }
}

/// A plain list of codes, of a sensible length.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Plain<T>(pub(super) Vec<T>);

/// The most entries of a plain list.
const MOST_PLAIN: usize = 64;

impl<T: Part> Part for Plain<T> {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let items = at.items(MOST_PLAIN, reader)?;
        let mut list = Vec::with_capacity(items.len());
        for (n, value) in items.iter().enumerate() {
            list.push(T::read(&at.item(n, value), reader)?);
        }
        Ok(Plain(list))
    }

    fn write(&self) -> Value {
        Value::Array(self.0.iter().map(T::write).collect())
    }
}

/// A name in a table.
pub(super) trait Key: Sized {
    /// What a text names, if it names something.
    fn parse(text: &str) -> Option<Self>;
    /// How it is written.
    fn spell(&self) -> String;
    /// What would have been right.
    fn expected() -> String;
}

/// Values by keys from a closed or checked set; each key is spelt in one way,
/// so none stands there twice.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Table<K, V>(pub(super) Vec<(K, V)>);

/// More entries than a bike has buttons.
const MOST_ENTRIES: usize = 256;

impl<K, V> FromIterator<(K, V)> for Table<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(entries: I) -> Self {
        Table(entries.into_iter().collect())
    }
}

impl<K: Key, V: Part> Part for Table<K, V> {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let entries = table(at, reader)?;
        let mut table = Vec::with_capacity(entries.len());
        for (name, value) in entries {
            let at = at.named(name, value);
            let Some(key) = K::parse(name) else {
                return Err(reader.expected_name(&at, &K::expected()));
            };
            table.push((key, V::read(&at, reader)?));
        }
        Ok(Table(table))
    }

    fn write(&self) -> Value {
        let mut table = Map::new();
        for (key, value) in &self.0 {
            table.insert(key.spell(), value.write());
        }
        table.into()
    }
}

fn table<'a>(at: &Place<'a>, reader: &mut Reader) -> Result<&'a Map<String, Value>, Refused> {
    let entries = at.group("a table", reader)?;
    let found = entries.len();
    if found > MOST_ENTRIES {
        let what = format!("expected at most {MOST_ENTRIES}, found {found}");
        return Err(reader.refuse(at, what));
    }
    Ok(entries)
}

#[cfg(feature = "schema")]
mod schema {
    use super::{List, MOST_ENTRIES, MOST_PLAIN, Plain, Table};
    use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
    use std::borrow::Cow;

    impl<T: JsonSchema, const MOST: usize> JsonSchema for List<T, MOST> {
        fn inline_schema() -> bool {
            true
        }

        fn schema_name() -> Cow<'static, str> {
            format!("ListOf{}", T::schema_name()).into()
        }

        fn json_schema(generator: &mut SchemaGenerator) -> Schema {
            let items = generator.subschema_for::<T>();
            json_schema!({ "type": "array", "items": items, "maxItems": MOST })
        }
    }

    impl<T: JsonSchema> JsonSchema for Plain<T> {
        fn inline_schema() -> bool {
            true
        }

        fn schema_name() -> Cow<'static, str> {
            format!("PlainListOf{}", T::schema_name()).into()
        }

        fn json_schema(generator: &mut SchemaGenerator) -> Schema {
            let items = generator.subschema_for::<T>();
            json_schema!({ "type": "array", "items": items, "maxItems": MOST_PLAIN })
        }
    }

    impl<K: JsonSchema, V: JsonSchema> JsonSchema for Table<K, V> {
        fn inline_schema() -> bool {
            true
        }

        fn schema_name() -> Cow<'static, str> {
            format!("{}By{}", V::schema_name(), K::schema_name()).into()
        }

        fn json_schema(generator: &mut SchemaGenerator) -> Schema {
            let names = generator.subschema_for::<K>();
            let values = generator.subschema_for::<V>();
            json_schema!({
                "type": "object",
                "propertyNames": names,
                "additionalProperties": values,
                "maxProperties": MOST_ENTRIES,
            })
        }
    }
}
