//! The program: compiled, split into the parts that app/src/parts.rs tells of, bound to the page
//! and made small.

use crate::step;
use anyhow::{Context, Result, ensure};
use sha2::{Digest, Sha256};
use std::fs;
use std::path::{Path, PathBuf};
use xtask::tools;

/// What the program is compiled for, and how: the profile in Cargo.toml.
const TARGET: &str = "wasm32-unknown-unknown";
const PROFILE: &str = "wasm-release";
const NAME: &str = "leverwright";

/// Where app/site/index.html names the program.
const PLACE: &str = "<!-- program -->";

/// A file of the build: its name and what is in it.
pub type File = (String, Vec<u8>);

/// Builds into target/program, and reads what came of it under names that tell builds apart.
pub fn build() -> Result<Vec<File>> {
    let made = tools::root().join("target/program");
    let (split, bound) = (made.join("split"), made.join("bound"));
    // Parts of an older build must not come along.
    let _ = fs::remove_dir_all(&made);
    compile()?;
    let whole = tools::root().join(format!("target/{TARGET}/{PROFILE}/{NAME}.wasm"));
    step::run(
        "Splitting the program into parts",
        step::command("wasm-split-cli")
            .args([&whole, &split])
            .args(["--out-name", NAME])
            .env("RUST_LOG", "error"),
    )?;
    step::run(
        "Binding the program to the page",
        step::command("wasm-bindgen")
            .arg(split.join(format!("{NAME}.wasm")))
            .args(["--target", "web", "--no-typescript", "--out-name", NAME])
            // The other parts put their functions into its table.
            .arg("--keep-lld-exports")
            .arg("--out-dir")
            .arg(&bound),
    )?;
    fs::remove_file(split.join(format!("{NAME}.wasm")))?;
    let mut files = Vec::new();
    for file in files_in(&split)?.into_iter().chain(files_in(&bound)?) {
        if file.extension().is_some_and(|ending| ending == "wasm") {
            make_small(&file)?;
        }
        let name = file.file_name().unwrap_or_default().to_string_lossy();
        files.push((name.into_owned(), fs::read(&file)?));
    }
    named(files)
}

fn compile() -> Result<()> {
    let mut cargo = step::cargo("rustc --locked -p leverwright-app --features parts");
    cargo.args(["--bin", NAME, "--target", TARGET, "--profile", PROFILE]);
    // What refers to what: parts are told apart by it.
    cargo.args(["--", "-Clink-arg=--emit-relocs"]);
    step::run("Compiling the program", &mut cargo)
}

/// Functions that are named alike are built alike: side by side they pack better.
fn make_small(file: &Path) -> Result<()> {
    let name = file.file_name().unwrap_or_default().display();
    step::run(
        &format!("Making {name} small"),
        step::command("wasm-opt")
            .args(["-Oz", "--reorder-functions-by-name"])
            .arg(file)
            .arg("-o")
            .arg(file),
    )
}

fn files_in(folder: &Path) -> Result<Vec<PathBuf>> {
    let entries = fs::read_dir(folder).with_context(|| format!("no {}", folder.display()))?;
    let mut files = Vec::new();
    for entry in entries {
        files.push(entry?.path());
    }
    files.sort();
    Ok(files)
}

/// The files under their names in the build, which hold a number made from all of them: they
/// name each other, and none may be used with those of another build.
fn named(files: Vec<File>) -> Result<Vec<File>> {
    let number = number(&files);
    let names: Vec<(String, String)> = files
        .iter()
        .map(|(name, _)| (name.clone(), name_in_build(name, &number)))
        .collect();
    let renamed = files.into_iter().map(|(old, content)| {
        let new = name_in_build(&old, &number);
        if !old.ends_with(".js") {
            return Ok((new, content));
        }
        let mut script = String::from_utf8(content).with_context(|| format!("{old} is no text"))?;
        for (old, new) in &names {
            // The program itself knows its imports by their old names, which are therefore left.
            for before in ["from ", "new URL("] {
                for quote in ['"', '\''] {
                    script = script.replace(
                        &format!("{before}{quote}./{old}{quote}"),
                        &format!("{before}{quote}./{new}{quote}"),
                    );
                }
            }
        }
        Ok((new, script.into_bytes()))
    });
    renamed.collect()
}

fn name_in_build(name: &str, number: &str) -> String {
    let (stem, ending) = name.rsplit_once('.').unwrap_or((name, ""));
    let stem = match stem {
        "__wasm_split" => "parts",
        "leverwright_bg" => NAME,
        _ => stem.strip_prefix("split_").unwrap_or(stem),
    };
    format!("{stem}-{number}.{ending}")
}

/// Differs as soon as one byte of one file does, or a name.
pub fn number(files: &[File]) -> String {
    let mut hash = Sha256::new();
    for (name, content) in files {
        hash.update(name.as_bytes());
        hash.update((content.len() as u64).to_le_bytes());
        hash.update(content);
    }
    let digest = hash.finalize();
    digest[..8]
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// Puts the program's files into the build, and names in the page those that it starts with.
pub fn put_into(dist: &Path, files: &[File]) -> Result<()> {
    for (name, content) in files {
        fs::write(dist.join(name), content).with_context(|| format!("cannot write {name}"))?;
    }
    let page = dist.join("index.html");
    let html = fs::read_to_string(&page).context("the build has no index.html")?;
    fs::write(page, with_program(&html, files)?).context("cannot write index.html")
}

fn with_program(html: &str, files: &[File]) -> Result<String> {
    ensure!(html.contains(PLACE), "index.html has no {PLACE}");
    let one = |stem: &str, ending: &str| {
        let mut names = files.iter().map(|(name, _)| name);
        names
            .find(|name| name.starts_with(&format!("{stem}-")) && name.ends_with(ending))
            .with_context(|| format!("the program has no {stem}{ending}"))
    };
    let (glue, program) = (one(NAME, ".js")?, one(NAME, ".wasm")?);
    let parts = one("parts", ".js")?;
    // app/site/boot.js starts the first script.
    let links = format!(
        "<link rel=\"modulepreload\" href=\"./{glue}\" crossorigin=\"anonymous\">\
         <link rel=\"modulepreload\" href=\"./{parts}\" crossorigin=\"anonymous\">\
         <link rel=\"preload\" as=\"fetch\" href=\"./{program}\" type=\"application/wasm\" \
         crossorigin=\"anonymous\">"
    );
    Ok(html.replacen(PLACE, &links, 1))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(name: &str, content: &str) -> File {
        (name.to_owned(), content.as_bytes().to_vec())
    }

    fn program() -> Vec<File> {
        vec![
            file(
                "__wasm_split.js",
                "import { a } from \"./leverwright.js\"; fetch(new URL(\"./split_desk.wasm\", at))",
            ),
            file(
                "leverwright.js",
                "import * as parts from './__wasm_split.js'\n{ './__wasm_split.js': parts }",
            ),
            file("leverwright_bg.wasm", "first"),
            file("split_desk.wasm", "desk"),
        ]
    }

    #[test]
    fn files_name_each_other_as_they_are_called_in_the_build() {
        let files = named(program()).expect("all scripts are text");
        let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
        let number = names[3]
            .strip_prefix("desk-")
            .and_then(|rest| rest.strip_suffix(".wasm"));
        let number = number.expect("the desk's name");
        assert_eq!(
            names,
            [
                format!("parts-{number}.js"),
                format!("leverwright-{number}.js"),
                format!("leverwright-{number}.wasm"),
                format!("desk-{number}.wasm"),
            ]
        );
        let script = |at: usize| String::from_utf8(files[at].1.clone()).expect("text");
        assert!(
            script(0).contains(&format!("\"./leverwright-{number}.js\"")),
            "{}",
            script(0)
        );
        assert!(
            script(0).contains(&format!("\"./desk-{number}.wasm\"")),
            "{}",
            script(0)
        );
        assert!(
            script(1).contains(&format!("from './parts-{number}.js'")),
            "{}",
            script(1)
        );
    }

    #[test]
    fn every_name_follows_every_byte() {
        let mut other = program();
        other[3].1.push(b'.');
        let (one, other) = (
            named(program()).expect("names"),
            named(other).expect("names"),
        );
        for ((a, _), (b, _)) in one.iter().zip(&other) {
            assert_ne!(a, b);
        }
    }

    #[test]
    fn the_page_starts_with_the_first_part_only() {
        let files = named(program()).expect("names");
        let html = with_program("<head><!-- program --></head>", &files).expect("links");
        assert!(
            html.contains("rel=\"preload\" as=\"fetch\" href=\"./leverwright-"),
            "{html}"
        );
        assert!(!html.contains("desk-"), "{html}");
        assert!(with_program("<head></head>", &files).is_err());
        assert!(with_program("<head><!-- program --></head>", &files[..1]).is_err());
    }
}
