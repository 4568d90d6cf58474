//! What differs between two JSON values, as a value of its own.
//!
//! Written for undo beside a plan: short where little differs, whatever the
//! place. It says nothing of the order of fields, which carries no meaning.

use serde_json::{Map, Value, json};

/// Names what follows in a change.
const FIELDS: &str = "fields";
const ITEMS: &str = "items";
const SPLICE: &str = "splice";
const INSTEAD: &str = "instead";

/// What makes `to` of `from`; `None` where they are alike.
pub fn between(from: &Value, to: &Value) -> Option<Value> {
    if from == to {
        return None;
    }
    Some(match (from, to) {
        (Value::Object(from), Value::Object(to)) => fields(from, to),
        (Value::Array(from), Value::Array(to)) => items(from, to),
        _ => json!([INSTEAD, to]),
    })
}

fn fields(from: &Map<String, Value>, to: &Map<String, Value>) -> Value {
    let mut changed = Map::new();
    for (name, value) in to {
        let change = match from.get(name) {
            Some(was) => between(was, value),
            None => Some(json!([INSTEAD, value])),
        };
        if let Some(change) = change {
            changed.insert(name.clone(), change);
        }
    }
    let gone: Vec<&String> = from.keys().filter(|name| !to.contains_key(*name)).collect();
    json!([FIELDS, changed, gone])
}

fn items(from: &[Value], to: &[Value]) -> Value {
    if from.len() == to.len() {
        let pairs = from.iter().zip(to).enumerate();
        let changed: Vec<Value> = pairs
            .filter_map(|(at, (a, b))| Some(json!([at, between(a, b)?])))
            .collect();
        return json!([ITEMS, changed]);
    }
    let alike = |(a, b): &(&Value, &Value)| a == b;
    let front = from.iter().zip(to).take_while(alike).count();
    let (a, b) = (&from[front..], &to[front..]);
    let back = a.iter().rev().zip(b.iter().rev()).take_while(alike).count();
    json!([SPLICE, front, a.len() - back, b[..b.len() - back]])
}

/// The value that a change makes of another. `None` where it does not fit.
pub fn apply(change: &Value, mut to: Value) -> Option<Value> {
    make(change, &mut to)?;
    Some(to)
}

fn make(change: &Value, at: &mut Value) -> Option<()> {
    let number = |value: &Value| usize::try_from(value.as_u64()?).ok();
    match (change.as_array()?.as_slice(), at) {
        ([kind, value], at) if kind == INSTEAD => *at = value.clone(),
        ([kind, changed, gone], Value::Object(fields)) if kind == FIELDS => {
            for (name, change) in changed.as_object()? {
                make(change, fields.entry(name).or_insert(Value::Null))?;
            }
            for name in gone.as_array()? {
                fields.shift_remove(name.as_str()?)?;
            }
        }
        ([kind, changed], Value::Array(items)) if kind == ITEMS => {
            for pair in changed.as_array()? {
                let item = items.get_mut(number(pair.get(0)?)?)?;
                make(pair.get(1)?, item)?;
            }
        }
        ([kind, front, cut, put], Value::Array(items)) if kind == SPLICE => {
            let front = number(front)?;
            let end = front.checked_add(number(cut)?)?;
            if end > items.len() {
                return None;
            }
            items.splice(front..end, put.as_array()?.iter().cloned());
        }
        _ => return None,
    }
    Some(())
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use serde_json::{Value, json};

    use super::{apply, between};

    fn any_value() -> impl Strategy<Value = Value> {
        let leaf = prop_oneof![
            Just(Value::Null),
            (0..4_u8).prop_map(Value::from),
            "[ab]{0,2}".prop_map(Value::from),
        ];
        leaf.prop_recursive(4, 24, 4, |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 0..4).prop_map(Value::from),
                prop::collection::btree_map("[abc]", inner, 0..4)
                    .prop_map(|fields| fields.into_iter().collect()),
            ]
        })
    }

    proptest! {
        #[test]
        fn a_change_makes_the_one_of_the_other(from in any_value(), to in any_value()) {
            let Some(change) = between(&from, &to) else {
                prop_assert_eq!(from, to);
                return Ok(());
            };
            prop_assert_eq!(apply(&change, from), Some(to));
        }

        #[test]
        fn what_does_not_fit_is_refused_and_never_panics(change in any_value(), to in any_value()) {
            let _ = apply(&change, to);
        }
    }

    #[test]
    fn an_item_more_is_one_item_long() {
        let from = json!({"list": [1, 2, 3], "same": "words"});
        let to = json!({"list": [1, 2, 9, 3], "same": "words"});
        let change = between(&from, &to).expect("a change");
        assert_eq!(
            change,
            json!(["fields", {"list": ["splice", 2, 0, [9]]}, []])
        );
    }
}
