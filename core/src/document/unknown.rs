//! Parts of a file that this version does not know: found, kept with their
//! owner, put back.

use serde_json::{Map, Value};

use super::list::Item;
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
    named::<v1::Layout>(),
    named::<v1::Chord>(),
    named::<v1::Acceptance>(),
];

/// One step into a file: by name or by place in a list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Step {
    Name(String),
    Place(usize),
}

/// The steps of a path that serde_ignored names.
pub(super) fn steps(path: &serde_ignored::Path<'_>) -> Vec<Step> {
    use serde_ignored::Path;
    match path {
        Path::Root => Vec::new(),
        Path::Map { parent, key } => with(parent, Step::Name(key.clone())),
        Path::Seq { parent, index } => with(parent, Step::Place(*index)),
        Path::Some { parent }
        | Path::NewtypeStruct { parent }
        | Path::NewtypeVariant { parent } => steps(parent),
    }
}

fn with(parent: &serde_ignored::Path<'_>, step: Step) -> Vec<Step> {
    let mut all = steps(parent);
    all.push(step);
    all
}

/// A path as people read it: `bike.controls[3].paint`.
pub(super) fn place(steps: &[Step]) -> String {
    let mut place = String::new();
    for step in steps {
        match step {
            Step::Name(name) if place.is_empty() => place.push_str(name),
            Step::Name(name) => place.extend([".", name]),
            Step::Place(at) => place.push_str(&format!("[{at}]")),
        }
    }
    super::error::tidy(&place)
}

/// What stands at a place of a file, with list items named by what they say of
/// themselves.
pub(super) fn part(file: &Value, steps: &[Step]) -> Option<UnknownPart> {
    let mut here = file;
    let mut path = Vec::new();
    let mut list = "";
    for step in steps {
        match step {
            Step::Name(name) => {
                here = here.get(name)?;
                path.push(name.clone());
                list = name;
            }
            Step::Place(at) => {
                here = here.get(at)?;
                path.push(item_name(list, here).unwrap_or_else(|| at.to_string()));
            }
        }
    }
    Some(UnknownPart {
        path,
        value: here.clone(),
    })
}

fn item_name(list: &str, item: &Value) -> Option<String> {
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
            owner.insert(name.to_owned(), part.value.clone());
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
