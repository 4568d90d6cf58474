//! Serves one folder's files to this machine only.

use std::fs::File;
use std::io::{self, Write};
use std::path::{Component, Path, PathBuf};
use std::sync::Arc;
use std::thread::JoinHandle;
use tiny_http::{Method, Request};

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

/// Answers, and asks for the connection to be closed: tiny_http 0.12 may leave a
/// new connection waiting until an older one ends, and a browser would keep all
/// of its own open. Its `Response` does not let that header through.
fn answer(folder: &Path, request: Request) -> io::Result<()> {
    let path = file_for(folder, request.url());
    let bodyless = *request.method() == Method::Head;
    let mut out = request.into_writer();
    let Some(path) = path else {
        let words = "There is no such file.";
        head(&mut out, "404 Not Found", "text/plain", words.len() as u64)?;
        out.write_all(words.as_bytes())?;
        return out.flush();
    };
    let mut file = File::open(&path)?;
    let kind = mime_guess::from_path(&path).first_or_octet_stream();
    let length = file.metadata()?.len();
    head(&mut out, "200 OK", kind.essence_str(), length)?;
    if !bodyless {
        io::copy(&mut file, &mut out)?;
    }
    out.flush()
}

/// The head of an answer (RFC 9112).
fn head(out: &mut impl Write, status: &str, kind: &str, length: u64) -> io::Result<()> {
    write!(
        out,
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {length}\r\n\
         Cache-Control: no-cache\r\nConnection: close\r\n\r\n"
    )
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
    use std::io::{BufRead, BufReader, Read};
    use std::net::TcpStream;
    use std::time::Duration;

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

    /// One file, and the connection, which is kept like a browser's unless the
    /// server says that it is at its end.
    fn fetch(address: &str) -> io::Result<(Vec<u8>, Option<BufReader<TcpStream>>)> {
        let mut stream = TcpStream::connect(address)?;
        stream.set_read_timeout(Some(Duration::from_secs(10)))?;
        stream.write_all(b"GET /Cargo.toml HTTP/1.1\r\nHost: here\r\n\r\n")?;
        let mut lines = BufReader::new(stream);
        let (mut length, mut ends) = (0, false);
        loop {
            let mut line = String::new();
            lines.read_line(&mut line)?;
            ends |= line.trim() == "Connection: close";
            if line.trim().is_empty() {
                break;
            }
            if let Some(value) = line.strip_prefix("Content-Length: ") {
                length = value.trim().parse().map_err(io::Error::other)?;
            }
        }
        let mut body = vec![0; length];
        lines.read_exact(&mut body)?;
        Ok((body, (!ends).then_some(lines)))
    }

    #[test]
    fn connections_opened_at_once_are_all_answered() {
        let server = Server::start(own_folder().to_owned(), 0).expect("a free port");
        let address = server.origin().replace("http://", "");
        let whole = std::fs::read(own_folder().join("Cargo.toml")).expect("the file is there");
        for _ in 0..50 {
            std::thread::scope(|scope| {
                let fetches: Vec<_> = (0..8).map(|_| scope.spawn(|| fetch(&address))).collect();
                let answers: Vec<_> = fetches
                    .into_iter()
                    .map(|fetched| fetched.join().expect("no panic").expect("an answer"))
                    .collect();
                assert!(answers.iter().all(|(body, _)| *body == whole));
                assert!(answers.iter().all(|(_, kept)| kept.is_none()));
            });
        }
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
