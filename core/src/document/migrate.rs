//! From an older format to the next, step by step, until it is current.

use serde_json::{Map, Value};

use super::DocumentError;

/// How a file of one format becomes one of the next.
pub(super) struct Migration {
    /// The format it starts from.
    pub(super) from: u64,
    /// What the newer format changed, as told to the reader of the file.
    pub(super) change: &'static str,
    /// Makes the change; the format number is set by [`run`].
    pub(super) make: fn(&mut Map<String, Value>) -> Result<(), DocumentError>,
}

/// The migrations, one for each format before the current one. Format 1 is
/// the first, so there is none yet.
pub(super) const ALL: &[Migration] = &[];

/// Brings a file up to the format after the last migration. Gives what the
/// migrations changed, in order.
pub(super) fn run(
    file: &mut Map<String, Value>,
    migrations: &[Migration],
) -> Result<Vec<&'static str>, DocumentError> {
    let oldest = migrations.first().map_or(1, |migration| migration.from);
    let newest = oldest + migrations.len() as u64;
    let format = format_of(file)?;
    if format > newest {
        return Err(DocumentError::Newer { format, newest });
    }
    if format < oldest {
        return Err(DocumentError::at(
            "format",
            format!("expected a number from {oldest} to {newest}, found {format}"),
        ));
    }
    let mut changes = Vec::new();
    for migration in migrations.iter().filter(|m| m.from >= format) {
        (migration.make)(file)?;
        file.insert("format".into(), (migration.from + 1).into());
        changes.push(migration.change);
    }
    Ok(changes)
}

fn format_of(file: &Map<String, Value>) -> Result<u64, DocumentError> {
    let format = file
        .get("format")
        .ok_or_else(|| DocumentError::at("format", "the format number is missing"))?;
    format.as_u64().ok_or_else(|| {
        DocumentError::at("format", format!("expected a whole number, found {format}"))
    })
}

#[cfg(test)]
mod tests {
    use super::{ALL, DocumentError, Map, Migration, Value, run};
    use crate::document::FORMAT;
    use serde_json::json;

    /// Three formats that never were: the colour got a place of its own, then
    /// another spelling.
    const INVENTED: &[Migration] = &[
        Migration {
            from: 1,
            change: "the paint has a group of its own",
            make: |file| {
                let colour = file
                    .remove("colour")
                    .ok_or_else(|| DocumentError::at("colour", "it is missing"))?;
                file.insert("paint".into(), json!({ "colour": colour }));
                Ok(())
            },
        },
        Migration {
            from: 2,
            change: "the colour is spelt otherwise",
            make: |file| {
                if let Some(Value::Object(paint)) = file.get_mut("paint")
                    && let Some(colour) = paint.remove("colour")
                {
                    paint.insert("color".into(), colour);
                }
                Ok(())
            },
        },
    ];

    fn file(json: Value) -> Map<String, Value> {
        match json {
            Value::Object(map) => map,
            other => panic!("{other} is no file"),
        }
    }

    #[test]
    fn each_format_is_brought_up_step_by_step() {
        let newest = file(json!({ "format": 3, "paint": { "color": "green" } }));
        for (old, steps) in [
            (json!({ "format": 1, "colour": "green" }), 2),
            (json!({ "format": 2, "paint": { "colour": "green" } }), 1),
            (json!({ "format": 3, "paint": { "color": "green" } }), 0),
        ] {
            let mut file = file(old);
            assert_eq!(run(&mut file, INVENTED).map(|c| c.len()), Ok(steps));
            assert_eq!(file, newest);
        }
    }

    #[test]
    fn a_migration_may_refuse() {
        let refused = run(&mut file(json!({ "format": 1 })), INVENTED);
        assert_eq!(refused, Err(DocumentError::at("colour", "it is missing")));
    }

    #[test]
    fn newer_older_and_strange_formats_are_refused() {
        let run = |format: Value| run(&mut file(json!({ "format": format })), INVENTED);
        assert_eq!(
            run(json!(4)),
            Err(DocumentError::Newer {
                format: 4,
                newest: 3
            })
        );
        for strange in [json!(0), json!(-1), json!(1.5), json!("1"), json!(null)] {
            assert!(matches!(run(strange), Err(DocumentError::At { .. })));
        }
    }

    #[test]
    fn the_table_leads_without_a_gap_to_the_current_format() {
        for (at, migration) in ALL.iter().enumerate() {
            assert_eq!(migration.from, 1 + at as u64);
        }
        assert_eq!(FORMAT, 1 + ALL.len() as u64);
    }
}
