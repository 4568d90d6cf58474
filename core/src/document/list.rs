//! Lists and tables as files have them: not too long, nothing twice.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::marker::PhantomData;

use serde::de::{self, Deserialize, Deserializer, SeqAccess, Visitor};
use serde::ser::{Serialize, Serializer};

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

impl<T: Serialize, const MOST: usize> Serialize for List<T, MOST> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(&self.0)
    }
}

impl<'de, T: Item + Deserialize<'de>, const MOST: usize> Deserialize<'de> for List<T, MOST> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Items<T, const MOST: usize>(PhantomData<T>);

        impl<'de, T: Item + Deserialize<'de>, const MOST: usize> Visitor<'de> for Items<T, MOST> {
            type Value = List<T, MOST>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "a list of at most {MOST}")
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Self::Value, A::Error> {
                let mut list: Vec<T> = Vec::new();
                let mut names = BTreeSet::new();
                while let Some(item) = items.next_element::<T>()? {
                    if list.len() == MOST {
                        return Err(de::Error::custom(format_args!(
                            "expected at most {MOST}, found more"
                        )));
                    }
                    if !names.insert(item.name()) {
                        return Err(de::Error::custom(format_args!(
                            "two have the same {} ({})",
                            T::NAMED_BY.join(" and "),
                            item.name()
                        )));
                    }
                    list.push(item);
                }
                Ok(List(list))
            }
        }

        deserializer.deserialize_seq(Items(PhantomData))
    }
}

/// A plain list of codes, of a sensible length.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Plain<T>(pub(super) Vec<T>);

impl<T> Plain<T> {
    const MOST: usize = 64;
}

impl<T: Serialize> Serialize for Plain<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(&self.0)
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Plain<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let list = Vec::deserialize(deserializer)?;
        if list.len() > Self::MOST {
            return Err(de::Error::custom(format_args!(
                "expected at most {}, found {}",
                Self::MOST,
                list.len()
            )));
        }
        Ok(Plain(list))
    }
}

/// Values by keys from a closed or checked set.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Table<K, V>(pub(super) BTreeMap<K, V>);

impl<K, V> Table<K, V> {
    /// More than a bike has buttons.
    const MOST: usize = 256;
}

impl<K: Ord, V> FromIterator<(K, V)> for Table<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(entries: I) -> Self {
        Table(entries.into_iter().collect())
    }
}

impl<K: Serialize, V: Serialize> Serialize for Table<K, V> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(&self.0)
    }
}

impl<'de, K, V> Deserialize<'de> for Table<K, V>
where
    K: Ord + Deserialize<'de>,
    V: Deserialize<'de>,
{
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let table = BTreeMap::deserialize(deserializer)?;
        if table.len() > Self::MOST {
            return Err(de::Error::custom(format_args!(
                "expected at most {}, found {}",
                Self::MOST,
                table.len()
            )));
        }
        Ok(Table(table))
    }
}

#[cfg(feature = "schema")]
mod schema {
    use super::{List, Plain, Table};
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
            json_schema!({ "type": "array", "items": items, "maxItems": Self::MOST })
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
                "maxProperties": Self::MOST,
            })
        }
    }
}
