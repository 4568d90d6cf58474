//! Parts of a file that this version does not know: found, kept with their
//! owner, put back.

use std::sync::Arc;

use serde_json::{Map, Value};

use super::list::Item;
use super::part::{Place, Step};
use super::{current, v1};
use crate::plan::{Plan, UnknownPart};

/// The fields that name the items of a list.
const fn named<T: Item>() -> (&'static str, &'static [&'static str]) {
    (T::LIST, T::NAMED_BY)
}

/// The lists whose items have names.
const LISTS: &[(&str, &[&str])] = &[
    named::<v1::Control>(),
    named::<v1::Button>(),
    named::<v1::SeenReach>(),
    named::<v1::WheelBrake>(),
    named::<v1::BrakeRun>(),
    named::<v1::PulledTogether>(),
    named::<v1::ThumbWork>(),
    named::<v1::Gear>(),
    named::<v1::Crossovers>(),
    named::<v1::Layout>(),
    named::<v1::Chord>(),
    named::<v1::Acceptance>(),
    named::<v1::Remembered>(),
    named::<v1::Stamp>(),
    named::<v1::Revision>(),
    named::<v1::PartStep>(),
    named::<v1::Was>(),
    named::<v1::Entry>(),
    named::<v1::Observed>(),
    named::<v1::Change>(),
    named::<v1::Pressed>(),
    named::<v1::MixUp>(),
];

/// What stands at a place of a file, with list items named by what they say of
/// themselves.
pub(super) fn part(at: &Place<'_>) -> UnknownPart {
    let mut path = Vec::new();
    let mut list = "";
    for place in at.steps() {
        match place.step {
            Step::Top => {}
            Step::Named(name) => {
                path.push(name.to_owned());
                list = name;
            }
            Step::Item(n) => path.push(item_name(list, place.value).unwrap_or(n.to_string())),
        }
    }
    UnknownPart {
        path,
        value: Arc::new(at.value.clone()),
    }
}

/// Whether the items of a list have names.
pub(super) fn is_list_of_names(list: &str) -> bool {
    LISTS.iter().any(|(name, _)| *name == list)
}

/// What an item of a list is called.
pub(super) fn item_name(list: &str, item: &Value) -> Option<String> {
    let (_, fields) = LISTS.iter().find(|(name, _)| *name == list)?;
    let values: Option<Vec<String>> = fields
        .iter()
        .map(|field| match item.get(field)? {
            Value::String(text) => Some(text.clone()),
            other => Some(other.to_string()),
        })
        .collect();
    Some(values?.join(" + "))
}

/// Puts unknown parts back to their owners; those whose owner is gone are left
/// out, and so are those whose name means something now.
pub(super) fn put_back(file: &mut Value, parts: &[UnknownPart]) {
    for part in parts {
        if let Some((owner, name)) = owner(file, part) {
            owner.insert(name.to_owned(), part.value.as_ref().clone());
        }
    }
}

/// The group that owns an unknown part, and the part's name in it.
fn owner<'a, 'p>(
    file: &'a mut Value,
    part: &'p UnknownPart,
) -> Option<(&'a mut Map<String, Value>, &'p str)> {
    let (name, path) = part.path.split_last()?;
    let mut here = file;
    let mut list = "";
    for step in path {
        here = match here {
            Value::Object(map) => map.get_mut(step)?,
            Value::Array(items) => items
                .iter_mut()
                .find(|item| item_name(list, item).as_deref() == Some(step))?,
            _ => return None,
        };
        list = step;
    }
    let owner = here.as_object_mut()?;
    (!owner.contains_key(name)).then_some((owner, name))
}

/// Drops the unknown parts whose owner is no longer in the plan, so that a
/// later owner of the same name does not inherit them.
pub(crate) fn drop_ownerless(plan: &mut Plan) {
    if plan.unknown.is_empty() {
        return;
    }
    let mut file = current(plan);
    plan.unknown.retain(|part| owner(&mut file, part).is_some());
}
