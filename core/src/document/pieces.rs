//! A plan taken apart into the pieces that are merged one by one, in the form
//! in which files have them, and put together again.
//!
//! Working on what is written means that every field of the format, those that
//! this version does not know included, is compared, merged and looked back at
//! without being named again.

use serde_json::{Map, Value};

use super::unknown::item_name;
use super::{DocumentError, current, read_value, unknown};
use crate::layout::LayoutId;
use crate::plan::Plan;
use crate::record::{PartKey, Record, Was};
use crate::rider::Side;
use crate::vocabulary::Vocabulary;

/// What of rides is about the road; the rest is about the rider.
const ROAD: &[&str] = &["road", "imported"];

/// What each part of a plan says, in the order of the parts.
pub(crate) type Pieces = Vec<(PartKey, Value)>;

/// Takes a plan apart. Its record stays aside.
pub(crate) fn pieces(plan: &Plan) -> Pieces {
    let bare = Plan {
        record: Record::default(),
        ..plan.clone()
    };
    let mut file = current(&bare);
    unknown::put_back(&mut file, &plan.unknown);
    let mut file = match file {
        Value::Object(file) => file,
        _ => Map::new(),
    };
    for name in ["leverwright", "format", "revision"] {
        file.shift_remove(name);
    }
    let mut pieces = vec![(PartKey::Title, some_of(&mut file, &["name", "job", "date"]))];
    let mut rider = object(&taken(&mut file, "rider"));
    let mut rides = object(&taken(&mut file, "rides"));
    pieces.push((PartKey::Road, some_of(&mut rides, ROAD)));
    rider.insert("rides".into(), rides.into());
    for side in Side::ALL {
        pieces.push((PartKey::Hand(*side), taken(&mut rider, side.code())));
    }
    pieces.push((PartKey::Rider, rider.into()));
    pieces.push((PartKey::Reach, take_reach(&mut file)));
    let layouts = items(taken(&mut file, "layouts"));
    let order = layouts.iter().map(|layout| layout["id"].clone()).collect();
    let mut choice = some_of(&mut file, &["current", "chosen"]);
    choice["order"] = Value::Array(order);
    pieces.push((PartKey::Layouts, choice));
    for layout in layouts {
        let id = layout["id"].as_u64().unwrap_or_default();
        let key = PartKey::Layout(LayoutId(u16::try_from(id).unwrap_or_default()));
        pieces.push((key, layout));
    }
    for acceptance in items(taken(&mut file, "accepted")) {
        let finding = acceptance["finding"].as_str().unwrap_or_default();
        pieces.push((PartKey::Accepted(finding.to_owned()), acceptance));
    }
    pieces.push((PartKey::Bike, file.into()));
    pieces.sort_unstable_by(|(a, _), (b, _)| a.cmp(b));
    pieces
}

/// A plan put together from pieces, of which those that are absent are `null`.
///
/// # Errors
/// When what the pieces say together cannot be.
pub(crate) fn assemble(pieces: &[(PartKey, Value)], revision: u32) -> Result<Plan, DocumentError> {
    let mut file = Map::new();
    file.insert("leverwright".into(), "plan".into());
    file.insert("format".into(), super::FORMAT.into());
    file.insert("revision".into(), revision.into());
    let mut rider = object(find(pieces, &PartKey::Rider));
    for side in Side::ALL {
        let hand = find(pieces, &PartKey::Hand(*side));
        rider.insert(side.code().to_owned(), hand.clone());
    }
    let mut rides = object(&taken(&mut rider, "rides"));
    rides.extend(object(find(pieces, &PartKey::Road)));
    file.insert("rides".into(), rides.into());
    file.extend(object(find(pieces, &PartKey::Title)));
    file.insert("rider".into(), rider.into());
    file.extend(object(find(pieces, &PartKey::Bike)));
    put_reach(&mut file, find(pieces, &PartKey::Reach));
    put_layouts(&mut file, pieces);
    let accepted = pieces
        .iter()
        .filter(|(key, value)| matches!(key, PartKey::Accepted(_)) && !value.is_null());
    let accepted = accepted.map(|(_, value)| value.clone()).collect();
    file.insert("accepted".into(), Value::Array(accepted));
    read_value(Value::Object(file)).map(|opened| opened.plan)
}

fn put_layouts(file: &mut Map<String, Value>, pieces: &[(PartKey, Value)]) {
    let mut choice = object(find(pieces, &PartKey::Layouts));
    let order = items(taken(&mut choice, "order"));
    let place = |layout: &Value| {
        let id = &layout["id"];
        order.iter().position(|in_order| in_order == id)
    };
    let layouts = pieces
        .iter()
        .filter(|(key, value)| matches!(key, PartKey::Layout(_)) && !value.is_null());
    let mut layouts: Vec<&Value> = layouts.map(|(_, layout)| layout).collect();
    layouts.sort_unstable_by_key(|layout| {
        (place(layout).unwrap_or(usize::MAX), layout["id"].as_u64())
    });
    let is_there = |id: &Value| layouts.iter().any(|layout| layout["id"] == *id);
    if !choice.get("current").is_some_and(is_there) {
        let first = layouts.first().map_or(Value::Null, |l| l["id"].clone());
        choice.insert("current".into(), first);
    }
    if !choice.get("chosen").is_some_and(|c| is_there(&c["layout"])) {
        choice.shift_remove("chosen");
    }
    let layouts = layouts.into_iter().cloned().collect();
    file.insert("layouts".into(), Value::Array(layouts));
    file.extend(choice);
}

/// What a piece says; null where it is absent.
pub(crate) fn find<'a>(pieces: &'a [(PartKey, Value)], part: &PartKey) -> &'a Value {
    match pieces.binary_search_by(|(key, _)| key.cmp(part)) {
        Ok(at) => &pieces[at].1,
        Err(_) => &Value::Null,
    }
}

/// Looks at the pieces of two plans together, part by part.
pub(crate) fn side_by_side<'a>(
    a: &'a [(PartKey, Value)],
    b: &'a [(PartKey, Value)],
    mut each: impl FnMut(&'a PartKey, &'a Value, &'a Value),
) {
    let mut parts: Vec<&PartKey> = a.iter().chain(b).map(|(key, _)| key).collect();
    parts.sort_unstable();
    parts.dedup();
    for part in parts {
        each(part, find(a, part), find(b, part));
    }
}

/// Everything about reach that was seen on this rider, by button or by pair of
/// levers, taken out of the bike.
fn take_reach(file: &mut Map<String, Value>) -> Value {
    let mut reach = Map::new();
    let bike = file.get_mut("bike");
    for (name, owner, field) in bike.into_iter().flat_map(owners_of_reach) {
        let empty = match field {
            SEEN => Value::Array(Vec::new()),
            _ => no_answer(),
        };
        if let Some(seen) = owner.get_mut(field).filter(|seen| **seen != empty) {
            reach.insert(name, std::mem::replace(seen, empty));
        }
    }
    reach.into()
}

fn put_reach(file: &mut Map<String, Value>, reach: &Value) {
    let bike = file.get_mut("bike");
    for (name, owner, field) in bike.into_iter().flat_map(owners_of_reach) {
        if let (Some(seen), Value::Object(owner)) = (reach.get(&name), owner) {
            owner.insert(field.to_owned(), seen.clone());
        }
    }
}

const SEEN: &str = "seen_reach";
const TRIED: &str = "tried";

fn no_answer() -> Value {
    serde_json::json!({ "is": null })
}

/// The buttons and the pairs of levers of a bike, each with its name and the
/// field that tells of this rider.
fn owners_of_reach(bike: &mut Value) -> Vec<(String, &mut Value, &'static str)> {
    let mut owners = Vec::new();
    let Some(bike) = bike.as_object_mut() else {
        return owners;
    };
    for (name, value) in bike {
        match (name.as_str(), value) {
            ("controls", Value::Array(controls)) => {
                for control in controls {
                    let id = control["id"].to_string();
                    let buttons = control.get_mut("buttons").and_then(Value::as_array_mut);
                    for button in buttons.into_iter().flatten() {
                        let part = button["part"].as_str().unwrap_or_default();
                        owners.push((format!("{id}.{part}"), button, SEEN));
                    }
                }
            }
            ("brakes", brakes) => {
                let together = brakes.get_mut("together").and_then(Value::as_array_mut);
                for pair in together.into_iter().flatten() {
                    let name = item_name("together", pair).unwrap_or_default();
                    owners.push((name, pair, TRIED));
                }
            }
            _ => {}
        }
    }
    owners
}

/// What stood where, for looking back from `now` to `was`.
pub(crate) fn differences(was: &Value, now: &Value) -> Vec<Was> {
    let mut found = Vec::new();
    compare("", "", was, now, &mut found);
    found
}

fn compare(path: &str, list: &str, was: &Value, now: &Value, found: &mut Vec<Was>) {
    match (was, now) {
        _ if was == now => {}
        (Value::Object(a), Value::Object(b)) => {
            for (name, was) in a {
                let now = b.get(name);
                entry(path, name, Some(was), now, found);
            }
            for (name, now) in b.iter().filter(|(name, _)| !a.contains_key(*name)) {
                entry(path, name, None, Some(now), found);
            }
        }
        (Value::Array(a), Value::Array(b)) if are_named(list, a) && are_named(list, b) => {
            let in_b = |name: &str| b.iter().find(|i| is_called(list, i, name));
            let in_a = |name: &str| a.iter().any(|i| is_called(list, i, name));
            for (name, item) in a.iter().filter_map(|i| Some((item_name(list, i)?, i))) {
                entry(path, &name, Some(item), in_b(&name), found);
            }
            for (name, item) in b.iter().filter_map(|i| Some((item_name(list, i)?, i))) {
                if !in_a(&name) {
                    entry(path, &name, None, Some(item), found);
                }
            }
        }
        _ => found.push(Was {
            path: path.to_owned(),
            value: (!was.is_null() || !path.is_empty()).then(|| was.clone()),
        }),
    }
}

fn entry(around: &str, name: &str, was: Option<&Value>, now: Option<&Value>, found: &mut Vec<Was>) {
    let path = format!("{around}/{}", name.replace('~', "~0").replace('/', "~1"));
    match (was, now) {
        (Some(was), Some(now)) => compare(&path, name, was, now, found),
        (was, _) => found.push(Was {
            path,
            value: was.cloned(),
        }),
    }
}

fn are_named(list: &str, items: &[Value]) -> bool {
    items.iter().all(|item| item_name(list, item).is_some()) && unknown::is_list_of_names(list)
}

fn is_called(list: &str, item: &Value, name: &str) -> bool {
    item_name(list, item).as_deref() == Some(name)
}

/// Puts back what stood at places of a piece.
pub(crate) fn put_was(piece: &mut Value, was: &[Was]) {
    for was in was.iter().rev() {
        if was.path.is_empty() {
            *piece = was.value.clone().unwrap_or(Value::Null);
        } else {
            let names: Vec<String> = steps(&was.path);
            put_at(piece, "", &names, was.value.as_ref());
        }
    }
}

/// The names of a path.
pub(crate) fn steps(path: &str) -> Vec<String> {
    let names = path.split('/').skip(1);
    names
        .map(|n| n.replace("~1", "/").replace("~0", "~"))
        .collect()
}

fn put_at(here: &mut Value, list: &str, names: &[String], value: Option<&Value>) {
    let [name, rest @ ..] = names else { return };
    match here {
        Value::Object(map) if rest.is_empty() => match value {
            Some(value) => drop(map.insert(name.clone(), value.clone())),
            None => drop(map.shift_remove(name)),
        },
        Value::Object(map) => {
            if let Some(deeper) = map.get_mut(name) {
                put_at(deeper, name, rest, value);
            }
        }
        Value::Array(items) => {
            let at = items.iter().position(|item| is_called(list, item, name));
            match (at, rest, value) {
                (Some(at), [], Some(value)) => items[at] = value.clone(),
                (Some(at), [], None) => drop(items.remove(at)),
                (Some(at), ..) => put_at(&mut items[at], name, rest, value),
                (None, [], Some(value)) => items.push(value.clone()),
                (None, ..) => {}
            }
        }
        _ => {}
    }
}

/// What stands at a place of a piece.
pub(crate) fn at<'a>(piece: &'a Value, names: &[String]) -> Option<&'a Value> {
    let mut here = piece;
    let mut list = "";
    for name in names {
        here = match here {
            Value::Object(map) => map.get(name)?,
            Value::Array(items) => items.iter().find(|item| is_called(list, item, name))?,
            _ => return None,
        };
        list = name;
    }
    (!here.is_null() || !names.is_empty()).then_some(here)
}

fn taken(file: &mut Map<String, Value>, name: &str) -> Value {
    file.shift_remove(name).unwrap_or(Value::Null)
}

fn some_of(file: &mut Map<String, Value>, names: &[&str]) -> Value {
    let mut some = Map::new();
    for name in names {
        if let Some(value) = file.shift_remove(*name) {
            some.insert((*name).to_owned(), value);
        }
    }
    some.into()
}

fn items(list: Value) -> Vec<Value> {
    match list {
        Value::Array(items) => items,
        _ => Vec::new(),
    }
}

fn object(value: &Value) -> Map<String, Value> {
    value.as_object().cloned().unwrap_or_default()
}
