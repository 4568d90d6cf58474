//! Prints every number, a line each: those weighed here, and those that the bench programs of
//! the tests crate report.

use crate::{size, step};
use anyhow::{Context, Result, bail};
use serde::Deserialize;
use std::io::{BufRead, BufReader};
use std::process::Stdio;

/// The same fields, in the same spelling, as `leverwright_tests::number::Number`.
#[derive(Deserialize)]
struct Number {
    name: String,
    value: f64,
    unit: String,
    limit: Option<f64>,
    against: String,
}

/// What a bench program puts before the line that reports a number.
const MARK: &str = "number: ";

/// Measures and prints.
pub fn run() -> Result<()> {
    let mut numbers = Vec::from(bundle()?);
    numbers.extend(measured()?);

    println!(
        "{:<46} {:>12} {:<6} {:>12}  compared with",
        "name", "value", "unit", "limit"
    );
    for number in &numbers {
        println!("{}", line(number));
    }
    let over = numbers.iter().filter(|number| is_over(number)).count();
    println!("{} numbers, {over} over their limits", numbers.len());
    Ok(())
}

fn bundle() -> Result<[Number; 2]> {
    let weight = size::Weight::of_build()?;
    let number = |name: &str, size: usize, limit: usize, against: &str| Number {
        name: name.into(),
        value: size as f64 / 1000.0,
        unit: "KB".into(),
        limit: Some(limit as f64 / 1000.0),
        against: against.into(),
    };
    let bare = "37 KB for a bare page with one button";
    Ok([
        number("first visit, gzip", weight.first(), size::FIRST_LIMIT, bare),
        number(
            "all parts, scripts and styles, gzip",
            weight.all(),
            size::LIMIT,
            bare,
        ),
    ])
}

/// Runs the bench programs, shows what they say, and collects the numbers among it.
fn measured() -> Result<Vec<Number>> {
    step::timed("Measuring", || {
        let mut child = step::cargo("bench -p leverwright-tests --features browser --benches")
            .stdout(Stdio::piped())
            .spawn()
            .context("cannot start cargo bench")?;
        let mut numbers = Vec::new();
        for line in BufReader::new(child.stdout.take().context("no output")?).lines() {
            let line = line?;
            match line.strip_prefix(MARK) {
                Some(fields) => {
                    numbers.push(serde_json::from_str(fields).context(fields.to_owned())?)
                }
                None => eprintln!("{line}"),
            }
        }
        if !child.wait()?.success() {
            bail!("a bench program failed");
        }
        Ok(numbers)
    })
}

fn is_over(number: &Number) -> bool {
    number.limit.is_some_and(|limit| number.value > limit)
}

fn line(number: &Number) -> String {
    let limit = number.limit.map_or("none".to_owned(), rounded);
    let over = if is_over(number) { "  OVER" } else { "" };
    format!(
        "{:<46} {:>12} {:<6} {limit:>12}  {}{over}",
        number.name,
        rounded(number.value),
        number.unit,
        number.against
    )
}

/// Three figures are what such measurements can bear.
fn rounded(value: f64) -> String {
    match value.abs() {
        ..10.0 => format!("{value:.2}"),
        ..100.0 => format!("{value:.1}"),
        _ => format!("{value:.0}"),
    }
}
