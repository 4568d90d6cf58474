//! Serves the release build.

use anyhow::{Context, Result};
use std::io;
use xtask::server::Server;
use xtask::tools;

const PORT: u16 = 8321;

/// Serves until stopped.
pub fn run(port: Option<&str>) -> Result<()> {
    let wanted = port.map(str::parse).transpose();
    let wanted = wanted
        .context("PORT is a number up to 65535")?
        .unwrap_or(PORT);
    let server = on_port(wanted).context("cannot open a port")?;
    eprintln!(
        "\n  Leverwright is ready. Open  {}/\n  Ctrl+C stops it.\n",
        server.origin()
    );
    server.run();
    Ok(())
}

/// On the wanted port, or on any free one where it is taken.
fn on_port(wanted: u16) -> io::Result<Server> {
    Server::start(tools::dist(), wanted).or_else(|_| Server::start(tools::dist(), 0))
}
