//! Serves the release build to this machine only.

use crate::tools;
use anyhow::{Context, Result};
use file_serve::ServerBuilder;
use std::net::TcpListener;

const PORT: u16 = 8321;

/// Serves until stopped.
pub fn run(port: Option<&str>) -> Result<()> {
    let wanted = port
        .map(str::parse)
        .transpose()
        .context("PORT is a number up to 65535")?;
    let port = free_port(wanted.unwrap_or(PORT))?;
    eprintln!("\n  Leverwright is ready. Open  http://localhost:{port}/\n  Ctrl+C stops it.\n");
    ServerBuilder::new(tools::dist())
        .port(port)
        .serve()
        .map_err(|error| anyhow::anyhow!("cannot serve on port {port}: {error}"))
}

/// The wanted port, or any free one where it is taken.
fn free_port(wanted: u16) -> Result<u16> {
    let listener = TcpListener::bind(("localhost", wanted))
        .or_else(|_| TcpListener::bind(("localhost", 0)))
        .context("cannot open a port")?;
    Ok(listener.local_addr()?.port())
}
