//! Serves one folder's files to this machine only.

use std::fs::File;
use std::io;
use std::path::{Component, Path, PathBuf};
use std::sync::Arc;
use std::thread::JoinHandle;
use tiny_http::{Header, Request, Response};

/// Serves from its own thread until it is dropped.
pub struct Server {
    http: Arc<tiny_http::Server>,
    port: u16,
    worker: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves the folder on this port; port 0 means any free one.
    ///
    /// # Errors
    /// When the port is taken.
    pub fn start(folder: PathBuf, port: u16) -> io::Result<Self> {
        let http = tiny_http::Server::http(("127.0.0.1", port)).map_err(io::Error::other)?;
        let http = Arc::new(http);
        let port = http
            .server_addr()
            .to_ip()
            .map_or(port, |address| address.port());
        let listener = Arc::clone(&http);
        let folder = Arc::new(folder);
        let worker = std::thread::spawn(move || {
            for request in listener.incoming_requests() {
                let folder = Arc::clone(&folder);
                // A browser leaves one answer unread while it waits for another,
                // so each is written by a thread of its own.
                std::thread::spawn(move || {
                    // Whoever asked has gone: nobody is left to tell.
                    let _ = answer(&folder, request);
                });
            }
        });
        Ok(Self {
            http,
            port,
            worker: Some(worker),
        })
    }

    /// Such as `http://127.0.0.1:8321`, without a slash at the end.
    pub fn origin(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// Serves until the program is stopped.
    pub fn run(mut self) {
        if let Some(worker) = self.worker.take() {
            // It ends only with the program.
            let _ = worker.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.http.unblock();
        if let Some(worker) = self.worker.take() {
            let _ = worker.join();
        }
    }
}

fn answer(folder: &Path, request: Request) -> io::Result<()> {
    let found =
        file_for(folder, request.url()).and_then(|path| Some((File::open(&path).ok()?, path)));
    match found {
        Some((file, path)) => {
            let kind = mime_guess::from_path(&path).first_or_octet_stream();
            let response = Response::from_file(file)
                .with_header(header("Content-Type", kind.essence_str()))
                .with_header(header("Cache-Control", "no-cache"));
            request.respond(response)
        }
        None => {
            request.respond(Response::from_string("There is no such file.").with_status_code(404))
        }
    }
}

fn header(name: &str, value: &str) -> Header {
    Header::from_bytes(name, value).expect("plain letters make a header")
}

/// The file that an address means. None for an address that would lead out of the folder.
fn file_for(folder: &Path, address: &str) -> Option<PathBuf> {
    let path = address.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = Path::new(if path.is_empty() { "index.html" } else { path });
    let inside = path
        .components()
        .all(|part| matches!(part, Component::Normal(_)));
    let file = folder.join(path);
    (inside && file.is_file()).then_some(file)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn own_folder() -> &'static Path {
        Path::new(env!("CARGO_MANIFEST_DIR"))
    }

    #[test]
    fn files_inside_the_folder_are_found() {
        let found = |address| file_for(own_folder(), address);
        assert_eq!(
            found("/Cargo.toml?now"),
            Some(own_folder().join("Cargo.toml"))
        );
        assert!(found("/src/server.rs").is_some());
        assert!(found("/").is_none(), "no index.html here");
        assert!(found("/src").is_none(), "a folder is no file");
    }

    #[test]
    fn nothing_outside_the_folder_is_found() {
        assert!(own_folder().join("../Cargo.toml").is_file());
        for address in [
            "/../Cargo.toml",
            "/src/../../Cargo.toml",
            "//etc/passwd",
            "Cargo.toml",
            "",
        ] {
            assert_eq!(file_for(own_folder(), address), None, "{address}");
        }
    }
}
