//! The service worker of a build: it keeps exactly the build's files, under a number made from
//! what is in them.

use crate::one_file;
use crate::program::{File, number};
use anyhow::{Context, Result, ensure};
use std::fs;
use std::path::Path;
use xtask::tools;

/// The file's name in the build. It never changes: browsers look under it for a newer one.
pub const NAME: &str = "service-worker.js";

/// Writes the worker beside the build's files.
pub fn write() -> Result<()> {
    let source = fs::read_to_string(tools::root().join("app/site").join(NAME))
        .context("cannot read the service worker")?;
    let files = files(&tools::dist())?;
    let worker = with_build(&source, &files)?;
    fs::write(tools::dist().join(NAME), worker).context("cannot write the service worker")
}

/// The build's files by name, without the worker itself and without the single file, which is a
/// second build of its own.
fn files(dist: &Path) -> Result<Vec<File>> {
    let mut files = Vec::new();
    for entry in fs::read_dir(dist).context("no build in target/dist")? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        ensure!(
            entry.file_type()?.is_file(),
            "the build has a folder, {name}: the service worker would leave it out"
        );
        if name != NAME && name != one_file::NAME {
            files.push((name, fs::read(entry.path())?));
        }
    }
    files.sort();
    Ok(files)
}

/// The worker with the build's number and the names of its files.
fn with_build(source: &str, files: &[File]) -> Result<String> {
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    let lines = [
        (
            "const BUILD = 'none';",
            format!("const BUILD = '{}';", number(files)),
        ),
        (
            "const FILES = [];",
            format!("const FILES = {};", serde_json::to_string(&names)?),
        ),
    ];
    let mut worker = source.to_owned();
    for (empty, filled) in lines {
        ensure!(worker.contains(empty), "{NAME} has no line `{empty}`");
        worker = worker.replacen(empty, &filled, 1);
    }
    Ok(worker)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(name: &str, content: &str) -> File {
        (name.to_owned(), content.as_bytes().to_vec())
    }

    #[test]
    fn the_number_follows_every_byte_and_every_name() {
        let before = number(&[file("a.js", "one"), file("b.css", "two")]);
        assert_eq!(before, number(&[file("a.js", "one"), file("b.css", "two")]));
        for other in [
            [file("a.js", "one"), file("b.css", "twp")],
            [file("c.js", "one"), file("b.css", "two")],
            [file("a.js", "onet"), file("b.css", "wo")],
        ] {
            assert_ne!(before, number(&other));
        }
    }

    #[test]
    fn the_worker_names_the_files() {
        let worker = with_build(
            "const BUILD = 'none';\nconst FILES = [];\n",
            &[file("index.html", ""), file("a\"b.js", "")],
        );
        let worker = worker.expect("both lines are there");
        assert!(
            worker.contains(r#"const FILES = ["index.html","a\"b.js"];"#),
            "{worker}"
        );
        assert!(with_build("const FILES = [];", &[]).is_err());
    }
}
