//! Behind two web servers that speak TLS, with their configuration as the README has it: read from there, with other
//! ports and paths. Needs nginx, the Apache HTTP server, OpenSSL and curl of Debian's packages.

use std::fs;
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use tempfile::TempDir;

use super::at_work::Host;
use crate::browser::drive;
use crate::delivered::photographs::{most, of_the_first};
use crate::project::Project;
use crate::trades::code::{book, code_on};

const README: &str = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/README.md"));
const SHEET: &str = "installer/trades/kitchen/setter.html";

/// The block of the README in that language, that begins so.
fn block(language: &str, begins: &str) -> &'static str {
    let fence = format!("```{language}\n");
    let mut blocks = README.split(&fence).skip(1).filter_map(|rest| rest.split("```").next());
    blocks.find(|block| block.starts_with(begins)).unwrap_or_else(|| panic!("the README has no {language} of {begins}"))
}

/// A web server at work; it ends with the test.
struct Proxy {
    child: Child,
    log: PathBuf,
}

impl Drop for Proxy {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Proxy {
    /// Started with a whole configuration in a folder; at work once its port is open.
    fn start(folder: &Path, program: &str, arguments: &[&str], config: &str, port: u16) -> Self {
        fs::write(folder.join("whole.conf"), config).unwrap();
        let log = folder.join("proxy.log");
        let mut command = Command::new(program);
        command.args(arguments).arg(folder.join("whole.conf")).stdout(Stdio::null());
        command.stderr(fs::File::create(&log).unwrap());
        let child = command.spawn().unwrap_or_else(|error| panic!("{program}: {error}; `tests/run` installs it"));
        let proxy = Self { child, log };
        let began = Instant::now();
        while TcpStream::connect(("127.0.0.1", port)).is_err() {
            let said = fs::read_to_string(&proxy.log).unwrap_or_default();
            assert!(began.elapsed() < Duration::from_secs(30), "{program} does not listen: {said}");
            std::thread::sleep(Duration::from_millis(50));
        }
        proxy
    }
}

/// The README's configuration with the ports and paths of a test.
fn as_written(language: &str, begins: &str, place: &Place) -> String {
    let of = |name: &str| place.folder().join(name).display().to_string();
    let text = block(language, begins);
    let mut told = text.to_owned();
    for (written, here) in [
        ("/etc/letsencrypt/live/firm.example/fullchain.pem".to_owned(), of("cert.pem")),
        ("/etc/letsencrypt/live/firm.example/privkey.pem".to_owned(), of("key.pem")),
        ("127.0.0.1:8420".to_owned(), place.host.address.clone()),
    ] {
        assert!(told.contains(&written), "{written} is not in {text}");
        told = told.replace(&written, &here);
    }
    told
}

fn nginx(place: &Place) -> Proxy {
    let (folder, port) = (place.folder().display().to_string(), place.port);
    let site =
        as_written("nginx", "server {", place).replace("listen 443 ssl", &format!("listen 127.0.0.1:{port} ssl"));
    let temporary: String = ["client_body", "proxy", "fastcgi", "uwsgi", "scgi"]
        .map(|kind| format!("    {kind}_temp_path {folder}/{kind};\n"))
        .concat();
    let config = format!(
        "daemon off;\nmaster_process off;\npid {folder}/pid;\nerror_log stderr;\nevents {{}}\n\
         http {{\n    access_log off;\n{temporary}{site}}}\n"
    );
    Proxy::start(place.folder(), "/usr/sbin/nginx", &["-p", &folder, "-e", "stderr", "-c"], &config, port)
}

fn apache(place: &Place) -> Proxy {
    let (folder, port) = (place.folder().display().to_string(), place.port);
    let site = as_written("apache", "<VirtualHost *:443>", place).replace("*:443", &format!("127.0.0.1:{port}"));
    let modules: String = ["mpm_event", "authz_core", "ssl", "proxy", "proxy_http"]
        .map(|name| format!("LoadModule {name}_module /usr/lib/apache2/modules/mod_{name}.so\n"))
        .concat();
    let config = format!(
        "ServerRoot {folder}\nPidFile {folder}/pid\nDefaultRuntimeDir {folder}\nServerName localhost\n\
         ErrorLog /dev/stderr\nUser www-data\nGroup www-data\n{modules}Listen 127.0.0.1:{port} https\n{site}"
    );
    Proxy::start(place.folder(), "/usr/sbin/apache2", &["-DFOREGROUND", "-f"], &config, port)
}

/// Two books, published where the README says, and the server of both.
struct Place {
    folder: TempDir,
    books: [Project; 2],
    host: Host,
    port: u16,
}

impl Place {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let port = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port();
        certificate(folder.path());
        let books = ["elm-row", "alder-court"].map(|name| {
            let found = block("yaml", "published at").replace("elm-row", name);
            let book = book(&found.replace("firm.example", &format!("firm.example:{port}")));
            std::os::unix::fs::symlink(book.root(), folder.path().join(name)).unwrap();
            book.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
            let site = book.root().join("site");
            book.run(["publish", "--out", site.to_str().unwrap(), "--today", "2027-01-15"]).exits(0);
            book
        });
        let line = block("sh", "bookmatch host").trim();
        let arguments: Vec<&str> = line.split(' ').skip(2).collect();
        let host = Host::start_in(folder.path(), &arguments);
        Self { folder, books, host, port }
    }

    fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// What is answered to `curl` from an address of this machine: the status, where it ended, and the body.
    fn ask(&self, from: &str, path: &str, more: &[&str]) -> (u16, String, String) {
        let port = self.port;
        let output = Command::new("curl")
            .args(["--silent", "--show-error", "--location", "--max-time", "30", "--noproxy", "*", "--interface", from])
            .args([
                "--resolve",
                &format!("firm.example:{port}:127.0.0.1"),
                "--write-out",
                "\n%{http_code} %{url_effective}",
            ])
            .arg("--cacert")
            .arg(self.folder().join("cert.pem"))
            .args(more)
            .arg(format!("https://firm.example:{port}{path}"))
            .output()
            .expect("curl; `tests/run` installs it");
        let told = String::from_utf8_lossy(&output.stdout).into_owned();
        assert!(output.status.success(), "{path}: {}", String::from_utf8_lossy(&output.stderr));
        let (body, last) = told.rsplit_once('\n').unwrap();
        let (status, url) = last.split_once(' ').unwrap();
        (status.parse().unwrap(), url.to_owned(), body.to_owned())
    }

    /// An answer of somebody who has no key.
    fn response(&self) -> Value {
        let issue = fs::read(self.books[0].root().join("record/issues/0001.json")).unwrap();
        let issue: Value = serde_json::from_slice(&issue).unwrap();
        let item = &issue["items"][0];
        json!({
            "format": "bookmatch response 1", "book": issue["book"], "issue": 1, "who": "ada", "nonce": "0".repeat(32),
            "made": "2027-01-15T10:00:00Z",
            "items": [{"room": item["room"], "item": item["item"], "mark": item["mark"], "decision": "rejected"}],
            "signed": {"name": "Ada Marrowby", "statement": "I have seen it.", "drawing": ""},
        })
    }
}

/// A certificate for `firm.example` that nobody but the test trusts.
fn certificate(folder: &Path) {
    let of = |name: &str| folder.join(name).display().to_string();
    let made = Command::new("openssl")
        .args(["req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-days", "2"])
        .args(["-subj", "/CN=firm.example", "-addext", "subjectAltName=DNS:firm.example"])
        .args(["-keyout", &of("key.pem"), "-out", &of("cert.pem")])
        .output()
        .expect("openssl; `tests/run` installs it");
    assert!(made.status.success(), "{}", String::from_utf8_lossy(&made.stderr));
}

/// Pages, answers, the code on a sheet, and whom the server counts, all through the web server.
fn whole(place: Place, _proxy: Proxy) {
    let page = |path: &str| place.ask("127.0.0.2", path, &[]);
    for (name, leads) in [("elm-row", "/books/elm-row/client/"), ("alder-court", "/books/alder-court/client/")] {
        let (status, url, body) = page(&format!("/books/{name}"));
        assert!(status == 200 && url.ends_with(leads) && body.contains("Issue 1"), "{status} {url}");
    }
    assert_eq!(page("/books/elm-row/installer").0, 200);
    for none in ["/books/", "/books/elm-row/office/", "/books/none/client/", "/elm-row/client/"] {
        assert_eq!(page(none).0, 404, "{none}");
    }
    let response = place.response().to_string();
    let post = |book: &str, from: &str, says: &str| {
        place.ask(from, &format!("/books/{book}/responses"), &["--header", says, "--data-binary", &response])
    };
    let (status, _, told) = post("elm-row", "127.0.0.3", "x-a: b");
    assert!(status == 200 && told.contains("recorded as unsigned"), "{status} {told}");
    assert_eq!(post("alder-court", "127.0.0.3", "x-a: b").0, 400, "it is of the other book");
    // Twenty at once are let through of one sender, whatever the sender writes.
    let forged: Vec<u16> =
        (0..26).map(|n| post("elm-row", "127.0.0.4", &format!("x-forwarded-for: 198.51.100.{n}")).0).collect();
    assert!(forged.contains(&429), "{forged:?}");
    assert_eq!(post("elm-row", "127.0.0.5", "x-a: b").0, 200, "another sender is not held up");
    // As much as goes with one delivery is let through.
    let delivery = of_the_first(&place.books[0], &most());
    let file = format!("@{}", delivery.display());
    let (status, _, told) = place.ask("127.0.0.6", "/books/elm-row/responses", &["--data-binary", &file]);
    assert!(status == 200 && told.contains("recorded to be confirmed"), "{status} {told}");
    the_code_leads_to_its_page(&place);
    let log = place.host.ends();
    assert!(
        log.contains("elm-row: 127.0.0.3 response 200") && log.contains("elm-row: 127.0.0.4 response 429"),
        "{log}"
    );
    assert!(log.contains("alder-court: 127.0.0.3 response 400, not recorded: it is of another book"), "{log}");
    assert!(!log.contains("198.51.100.") && !log.contains("127.0.0.1 response"), "{log}");
}

/// In Chromium, by the address in the code as an independent reader reads it.
fn the_code_leads_to_its_page(place: &Place) {
    let (_, _, sheet) = place.ask("127.0.0.2", &format!("/books/elm-row/{SHEET}"), &[]);
    let code = code_on(&sheet).expect("a code on the sheet");
    let port = place.port;
    assert!(code.starts_with(&format!("https://firm.example:{port}/books/elm-row/{SHEET}#paper-")), "{code}");
    drive("by_code.mjs", &[&code, "firm.example"]);
}

#[test]
fn behind_nginx_as_the_readme_has_it() {
    let place = Place::new();
    let proxy = nginx(&place);
    whole(place, proxy);
}

#[test]
fn behind_the_apache_http_server_as_the_readme_has_it() {
    let place = Place::new();
    let proxy = apache(&place);
    whole(place, proxy);
}
