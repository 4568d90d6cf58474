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

/// Where app/boot.js goes on the same in both pages.
const SHARED_FROM: &str = "try {\n";

/// Unpacks the program that stands in the page.
const UNPACK: &str = "\
const init = __wbg_init;
const packed = Uint8Array.from(atob(document.getElementById('program').textContent.trim()), \
(letter) => letter.charCodeAt(0));
const unpacked = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
const program = new Response(unpacked).arrayBuffer();
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
    /// app/boot.js.
    boot: String,
    /// The WebAssembly program.
    program: Vec<u8>,
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
        Ok(Parts {
            styles: styles.concat(),
            glue: read(one("<link rel=\"modulepreload\" href=\"")?)?,
            boot: fs::read_to_string(tools::root().join("app/boot.js"))?,
            program: fs::read(file(one("<link rel=\"preload\" as=\"fetch\" href=\"")?))?,
            icon: fs::read(file("icon.svg"))?,
        })
    }
}

/// What stands between `before` and the next quote, wherever it does.
fn addresses<'a>(html: &'a str, before: &'a str) -> impl Iterator<Item = &'a str> {
    html.split(before)
        .skip(1)
        .filter_map(|rest| rest.split('"').next())
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
    let program = BASE64_STANDARD.encode(packed(&parts.program)?);
    Ok(format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n\
         <meta charset=\"utf-8\">\n<title>Leverwright</title>\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <link rel=\"icon\" href=\"data:image/svg+xml;base64,{icon}\">\n\
         <style>{styles}</style>\n</head>\n<body>\n\
         <noscript>Leverwright runs in the browser and needs JavaScript switched on.</noscript>\n\
         <script type=\"text/plain\" id=\"program\">{program}</script>\n\
         <script type=\"module\">{script}</script>\n</body>\n</html>\n"
    ))
}

/// The program's script, then what starts it.
fn script(parts: &Parts) -> Result<String> {
    let (glue, _) = parts
        .glue
        .rsplit_once("\nexport {")
        .context("the program's script exports nothing")?;
    let (_, start) = parts
        .boot
        .split_once(SHARED_FROM)
        .context("app/boot.js has no line `try {`")?;
    Ok(format!("\n{glue}\n{UNPACK}{SHARED_FROM}{start}"))
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
            glue: "function __wbg_init() {}\nexport { __wbg_init as default };\n".to_owned(),
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
