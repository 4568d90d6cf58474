//! The whole build in one page, for a computer that may open files but not serve or install them.
//!
//! Style sheets and scripts stand inline, the program as packed text. The page's content security
//! policy names them by their SHA-256, so that nothing else can run, and allows no request at all.

use anyhow::{Context, Result, ensure};
use base64::{Engine, prelude::BASE64_STANDARD};
use flate2::{Compression, write::GzEncoder};
use sha2::{Digest, Sha256};
use std::fs;
use std::io::Write;
use std::path::PathBuf;
use xtask::tools;

/// The file's name in the build.
pub const NAME: &str = "leverwright.html";

/// Where app/site/boot.js goes on the same in both pages.
const SHARED_FROM: &str = "try {\n";

/// Unpacks a part of the program that stands in the page.
const UNPACK: &str = "\
function unpacked(part) {
  const text = document.getElementById(part).textContent.trim();
  const packed = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const bytes = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(bytes, { headers: { 'Content-Type': 'application/wasm' } });
}
";

/// Starts with the first part, as app/site/boot.js goes on to.
const FIRST: &str = "\
const init = __wbg_init;
const program = unpacked('program');
";

/// Writes the page beside the build's files.
pub fn write() -> Result<()> {
    let page = page(&Parts::of_build()?)?;
    fs::write(tools::dist().join(NAME), page).context("cannot write the single file")
}

/// What goes into the page.
struct Parts {
    /// Every style sheet, in order.
    styles: String,
    /// The program's own script, a module.
    glue: String,
    /// The script that fetches the other parts, a module.
    fetcher: String,
    /// app/site/boot.js.
    boot: String,
    /// The first part of the WebAssembly program.
    program: Vec<u8>,
    /// The other parts, by the names of their files.
    parts: Vec<(String, Vec<u8>)>,
    /// The icon, SVG.
    icon: Vec<u8>,
}

impl Parts {
    fn of_build() -> Result<Parts> {
        let html = fs::read_to_string(tools::dist().join("index.html"))?;
        let styles: Vec<String> = addresses(&html, "<link rel=\"stylesheet\" href=\"")
            .map(read)
            .collect::<Result<_>>()?;
        let one = |before: &'static str| {
            let found = addresses(&html, before).next();
            found.with_context(|| format!("index.html has no {before}"))
        };
        let [glue, fetcher] = addresses(&html, "<link rel=\"modulepreload\" href=\"")
            .map(read)
            .collect::<Result<Vec<_>>>()?
            .try_into()
            .ok()
            .context("index.html has other than two scripts of the program")?;
        let mut parts = Vec::new();
        for address in addresses(&fetcher, "fetch(new URL(\"") {
            parts.push((address.to_owned(), fs::read(file(address))?));
        }
        Ok(Parts {
            styles: styles.concat(),
            glue,
            fetcher,
            parts,
            boot: fs::read_to_string(tools::root().join("app/site/boot.js"))?,
            program: fs::read(file(one("<link rel=\"preload\" as=\"fetch\" href=\"")?))?,
            icon: fs::read(file("icon.svg"))?,
        })
    }
}

/// What stands between `before` and the next quote, wherever it does.
fn addresses<'a>(html: &'a str, before: &'a str) -> impl Iterator<Item = &'a str> {
    addresses_until(html, before, '"')
}

fn addresses_until<'a>(text: &'a str, before: &'a str, end: char) -> impl Iterator<Item = &'a str> {
    text.split(before)
        .skip(1)
        .filter_map(move |rest| rest.split(end).next())
}

fn file(address: &str) -> PathBuf {
    tools::dist().join(address.trim_start_matches("./"))
}

fn read(address: &str) -> Result<String> {
    fs::read_to_string(file(address)).with_context(|| format!("the build has no {address}"))
}

fn page(parts: &Parts) -> Result<String> {
    let script = script(parts)?;
    let styles = format!("\n{}", parts.styles);
    // Neither may end its own element.
    ensure!(!script.contains("</script"), "a script holds `</script`");
    ensure!(!styles.contains("</style"), "a style sheet holds `</style`");
    let policy = format!(
        "default-src 'none'; script-src {} 'wasm-unsafe-eval'; style-src {}; img-src data:; \
         base-uri 'none'; form-action 'none'",
        source(&script),
        source(&styles)
    );
    let icon = BASE64_STANDARD.encode(&parts.icon);
    let mut program = element("program", &parts.program)?;
    for (name, part) in &parts.parts {
        program.push_str(&element(name, part)?);
    }
    Ok(format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n\
         <meta charset=\"utf-8\">\n<title>Leverwright</title>\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <link rel=\"icon\" href=\"data:image/svg+xml;base64,{icon}\">\n\
         <style>{styles}</style>\n</head>\n<body>\n\
         <noscript>Leverwright runs in the browser and needs JavaScript switched on.</noscript>\n\
         {program}\
         <script type=\"module\">{script}</script>\n</body>\n</html>\n"
    ))
}

/// A part of the program, as text that nothing runs by itself.
fn element(id: &str, part: &[u8]) -> Result<String> {
    let packed = BASE64_STANDARD.encode(packed(part)?);
    Ok(format!(
        "<script type=\"text/plain\" id=\"{id}\">{packed}</script>\n"
    ))
}

/// What fetches the other parts, the program's script, then what starts it.
fn script(parts: &Parts) -> Result<String> {
    let fetcher = fetcher(&parts.fetcher)?;
    let (glue, _) = parts
        .glue
        .rsplit_once("\nexport {")
        .context("the program's script exports nothing")?;
    let glue: String = glue.split_inclusive('\n').map(imported).collect();
    let (_, start) = parts
        .boot
        .split_once(SHARED_FROM)
        .context("app/site/boot.js has no line `try {`")?;
    Ok(format!(
        "\n{UNPACK}{fetcher}{glue}\n{FIRST}{SHARED_FROM}{start}"
    ))
}

/// The script that fetches the other parts, as part of the one script: it takes them from the
/// page, and what it exports is called `parts`.
fn fetcher(script: &str) -> Result<String> {
    let exports: Vec<&str> = addresses_until(script, "\nexport const ", ' ').collect();
    ensure!(
        !exports.is_empty(),
        "the script for the parts exports nothing"
    );
    let kept: String = script
        .split_inclusive('\n')
        .filter(|line| !line.starts_with("import "))
        .collect();
    let inline = kept
        .replace("\nexport const ", "\nconst ")
        .replace("fetch(new URL(", "Promise.resolve(unpacked(")
        .replace(", import.meta.url))", "))");
    Ok(format!(
        "{inline}const parts = {{ {} }};\n",
        exports.join(", ")
    ))
}

/// A line of the program's script; one that imports the parts names them instead.
fn imported(line: &str) -> String {
    match line
        .strip_prefix("import * as ")
        .and_then(|rest| rest.split_once(" from "))
    {
        Some((name, _)) => format!("const {name} = parts;\n"),
        None => line.to_owned(),
    }
}

/// How the policy names an inline script or style sheet (CSP Level 3, section 2.3.1).
fn source(text: &str) -> String {
    let digest = Sha256::digest(text.as_bytes());
    format!("'sha256-{}'", BASE64_STANDARD.encode(digest))
}

fn packed(program: &[u8]) -> Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(program)?;
    Ok(encoder.finish()?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts() -> Parts {
        Parts {
            styles: "body { margin: 0 }".to_owned(),
            glue: "import * as import1 from \"./parts.js\"\nfunction __wbg_init() { import1; }\n\
                   export { __wbg_init as default };\n"
                .to_owned(),
            fetcher: "import { initSync } from \"./glue.js\";\n\
                      const load = () => fetch(new URL(\"./desk.wasm\", import.meta.url));\n\
                      export const load_desk = load;\n"
                .to_owned(),
            parts: vec![("./desk.wasm".to_owned(), vec![0, 97])],
            boot: "const program = 1;\ntry {\n  init();\n} catch {}\n".to_owned(),
            program: vec![0, 97, 115, 109],
            icon: b"<svg/>".to_vec(),
        }
    }

    #[test]
    fn the_page_asks_for_no_other_file() {
        let page = page(&parts()).expect("a page");
        for asks in ["src=", "export", "import ", "href=\"."] {
            assert!(!page.contains(asks), "{asks} in {page}");
        }
        assert!(page.contains("margin: 0"));
    }

    #[test]
    fn the_other_parts_are_taken_from_the_page() {
        let page = page(&parts()).expect("a page");
        for line in [
            "Promise.resolve(unpacked(\"./desk.wasm\"))",
            "const load_desk = load;",
            "const parts = { load_desk };",
            "const import1 = parts;",
            "<script type=\"text/plain\" id=\"./desk.wasm\">",
        ] {
            assert!(page.contains(line), "{line} in {page}");
        }
        assert!(!page.contains("fetch("), "{page}");
    }

    #[test]
    fn an_element_cannot_be_ended_from_within() {
        let mut ends = parts();
        ends.glue.insert_str(0, "const words = '</script>';");
        assert!(page(&ends).is_err());
        let mut ends = parts();
        ends.styles.push_str("</style>");
        assert!(page(&ends).is_err());
    }

    /// The example of CSP Level 3, section 8.3.
    #[test]
    fn sources_are_named_as_the_standard_does() {
        assert_eq!(
            source("alert('Hello, world.');"),
            "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='"
        );
    }
}
