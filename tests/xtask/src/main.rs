//! `cargo xtask COMMAND`: everything between a fresh clone and a tested, served release build.

mod build;
mod numbers;
mod offline;
mod one_file;
mod program;
mod rides;
mod serve;
mod setup;
mod size;
mod step;
mod test;

use anyhow::{Result, bail};
use setup::For;
use std::process::ExitCode;

const HELP: &str = "\
cargo xtask COMMAND

  serve [PORT]       build the release app and serve it
  test               run every check and every test
  numbers            measure and print all numbers, a line each
  walk [FILTER]      only the browser walk-throughs, on the build in target/dist
  shots [DIR] [ROUTE…]  pictures of the build's screens, wide and narrow, light and dark
  build              build the release app into target/dist
  size               weigh the build in target/dist against its limit
  setup              install what building and testing need

Each command first sees to what it needs.";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let (command, rest) = match arguments.split_first() {
        Some((command, rest)) => (command.as_str(), rest),
        None => ("help", [].as_slice()),
    };
    match run(command, rest) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\ncargo xtask {command}: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(command: &str, rest: &[String]) -> Result<()> {
    match command {
        "help" | "--help" | "-h" => println!("{HELP}"),
        "setup" => setup::run(For::Testing)?,
        "build" => {
            setup::run(For::Building)?;
            build::run()?;
        }
        "serve" => {
            setup::run(For::Building)?;
            build::run()?;
            serve::run(rest.first().map(String::as_str))?;
        }
        "size" => size::check()?,
        "test" => test::run()?,
        "walk" => {
            setup::run(For::Testing)?;
            test::walk(rest)?;
        }
        "shots" => {
            setup::run(For::Testing)?;
            test::shots(rest)?;
        }
        "numbers" => {
            setup::run(For::Testing)?;
            build::run()?;
            numbers::run()?;
        }
        unknown => bail!("no such command: {unknown}\n\n{HELP}"),
    }
    Ok(())
}
