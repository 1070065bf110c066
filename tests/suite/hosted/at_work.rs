//! A server at work, and whoever asks it something.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::path::Path;
use std::process::{Child, ChildStderr, Command, Stdio};
use std::time::Duration;

use tempfile::TempDir;

use crate::issued::IssuedBook;

/// A book of which `odile` alone approves.
pub const PROJECT: &str = "title: Elm Row\ncurrency: USD\napprovers:\n  - {id: odile, name: Odile Quillarn}\n";

/// A server at work; it ends with the test.
pub struct Host {
    child: Child,
    log: BufReader<ChildStderr>,
    said: String,
    /// Where it listens: `127.0.0.1:40021`.
    pub address: String,
}

impl Host {
    /// Started with these arguments, on a free port; at work once this returns.
    pub fn start(arguments: &[&str]) -> Self {
        Self::start_in(Path::new("."), arguments)
    }

    /// The same, run in a folder.
    pub fn start_in(folder: &Path, arguments: &[&str]) -> Self {
        let mut command = Command::new(env!("CARGO_BIN_EXE_bookmatch"));
        command
            .current_dir(folder)
            .arg("host")
            .args(arguments)
            .args(["--address", "127.0.0.1:0"])
            .stderr(Stdio::piped());
        let mut child = command.spawn().unwrap();
        let mut log = BufReader::new(child.stderr.take().unwrap());
        let mut said = String::new();
        while !said.contains("serving at http://") {
            assert!(log.read_line(&mut said).unwrap() > 0, "it ended: {said}");
        }
        let address = said.split("http://").nth(1).unwrap().split('/').next().unwrap().to_owned();
        Self { child, log, said, address }
    }

    /// Ended as Ctrl-C does; all that it said.
    pub fn ends(mut self) -> String {
        let pid = self.child.id().to_string();
        Command::new("kill").args(["-INT", &pid]).status().unwrap();
        self.log.read_to_string(&mut self.said).unwrap();
        assert!(self.child.wait().unwrap().success(), "{}", self.said);
        std::mem::take(&mut self.said)
    }
}

impl Drop for Host {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// The book, with a folder as if it was published: a page for the client and one for the office.
pub fn published(book: &IssuedBook, project: &str) -> TempDir {
    std::fs::write(book.path().join("book.yaml"), project).unwrap();
    let folder = tempfile::tempdir().unwrap();
    pages(folder.path(), "Elm Row");
    folder
}

/// A page for the client and one for the office.
pub fn pages(folder: &Path, title: &str) {
    let client = format!("<title>{title}</title>");
    for (path, text) in [("client/index.html", client.as_str()), ("office/index.html", "costs")] {
        let place = folder.join(path);
        std::fs::create_dir_all(place.parent().unwrap()).unwrap();
        std::fs::write(place, text).unwrap();
    }
}

/// What is answered; `head` is the method and the path.
pub fn ask(address: &str, head: &str, body: &[u8]) -> String {
    ask_from([127, 0, 0, 1], address, head, body)
}

/// What is answered to somebody at another address of this machine.
pub fn ask_from(from: [u8; 4], address: &str, head: &str, body: &[u8]) -> String {
    let mut stream = connected(from, address);
    stream.set_read_timeout(Some(Duration::from_secs(30))).unwrap();
    let first = if head.contains("HTTP/1.1") { head.to_owned() } else { format!("{head} HTTP/1.1\r\nx-a:") };
    write!(stream, "{first} b\r\nhost: {address}\r\nconnection: close\r\ncontent-length: {}\r\n\r\n", body.len())
        .unwrap();
    stream.write_all(body).unwrap();
    let mut told = String::new();
    stream.read_to_string(&mut told).unwrap();
    told
}

fn connected(from: [u8; 4], address: &str) -> TcpStream {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    let stream = runtime.block_on(async {
        let socket = tokio::net::TcpSocket::new_v4().unwrap();
        socket.bind((Ipv4Addr::from(from), 0).into()).unwrap();
        socket.connect(address.parse().unwrap()).await.unwrap().into_std().unwrap()
    });
    stream.set_nonblocking(false).unwrap();
    stream
}

pub fn without_date(answer: &str) -> String {
    answer.lines().filter(|line| !line.to_lowercase().starts_with("date:")).collect::<Vec<_>>().join("\n")
}
